package dxf

import (
	"strings"
	"unicode"

	"plashet/drawing"
)

// capital is how tall a capital letter is beside the size of its letters, of the
// family that the style names (a test measures its H).
const capital = 0.729

// text writes a line of letters.
func (e *encoder) text(layer string, t drawing.Text) {
	s := escaped(t.Text)
	if s == "" {
		return
	}
	e.begin("TEXT", layer, "AcDbText", drawing.Pen{Ink: t.Ink})
	at := e.world(t.At)
	e.at(10, at)
	e.real(40, t.Size*capital*e.perMM)
	e.put(1, s)
	if t.Turn != 0 {
		e.real(50, turned(-t.Turn))
	}
	if t.Anchor != drawing.Start {
		e.whole(72, int(t.Anchor)) // 1 middle, 2 right
		e.at(11, at)
	}
	e.put(100, "AcDbText")
}

// escaped makes a text fit for one group: no line breaks or other control
// characters, and neither per cent signs nor carets that would be read as
// control codes. What is no character becomes U+FFFD.
func escaped(s string) string {
	var b strings.Builder
	double := strings.Contains(s, "%%")
	for _, r := range s {
		switch {
		case unicode.IsControl(r) || r == '\u2028' || r == '\u2029':
			b.WriteByte(' ')
		case r == '%' && double:
			b.WriteString("%%%")
		case r == '^':
			b.WriteString("^ ")
		default:
			b.WriteRune(r)
		}
	}
	return strings.TrimRight(b.String(), " ")
}
