package job

import (
	"strings"

	"plashet/engine/trace"
)

// twoWays adds to the fault of a number that can be read in two ways what would be
// typed for either, as "plain" and "decimal": 1410 mm, or 1.4100 mm, where the zero
// behind keeps it from being asked again. Reads gives what a text is read as, if the
// field takes it. Where it takes one alone that is "likely": still asked, for the
// slip may lie elsewhere. Nothing is offered where both are one value. The mark of
// decimals is a point unless a comma is said.
func twoWays(m *trace.Message, found, text string, comma bool, reads func(string) (string, bool)) {
	at := strings.LastIndex(text, found)
	if found == "" || at < 0 {
		return
	}
	put := func(number string) string { return text[:at] + number + text[at+len(found):] }
	marks := strings.NewReplacer(",", "", ".", "")
	plain, parted := put(marks.Replace(found)), ""
	if i := strings.LastIndexAny(found, ",."); i >= 0 {
		mark := "."
		if comma {
			mark = ","
		}
		parted = put(marks.Replace(found[:i]) + mark + found[i+1:] + "0")
	}
	one, ok := reads(plain)
	other, fine := reads(parted)
	switch {
	case ok && fine && one != other:
		m.Args = append(m.Args, trace.Str("plain", plain), trace.Str("decimal", parted))
	case ok && !fine:
		m.Args = append(m.Args, trace.Str("likely", plain))
	case fine && !ok:
		m.Args = append(m.Args, trace.Str("likely", parted))
	}
}

// Ways gives the readings that a fault offers to be typed instead: two, the one that
// its field takes, or none.
func Ways(m trace.Message) []string {
	var out []string
	for _, name := range []string{"plain", "decimal", "likely"} {
		for _, a := range m.Args {
			if a.Name == name && a.Text != "" && (m.Code == CodeReadAmbiguous || m.Code == CodeReadUnclear) {
				out = append(out, a.Text)
			}
		}
	}
	return out
}

// waysOf writes the whole of a level into the readings of its offset.
func waysOf(m *trace.Message, text, rest string) {
	before, whole := strings.CutSuffix(text, rest)
	for i := range m.Args {
		if a := &m.Args[i]; a.Name == "plain" || a.Name == "decimal" || a.Name == "likely" {
			if a.Text = before + a.Text; !whole {
				a.Text = ""
			}
		}
	}
}
