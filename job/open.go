package job

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// byteOrderMark stands at the start of some files; RFC 8259 section 8.1 lets a
// reader pass over it.
var byteOrderMark = []byte("\xEF\xBB\xBF")

// open reads the raw tree, or gives the one fault that stops everything.
func open(data []byte) (*node, *located) {
	stop := func(at int, code string, args ...trace.Arg) (*node, *located) {
		return nil, &located{trace.Fault{Message: trace.Message{Code: code, Args: args}}, at}
	}
	if len(data) > MaxBytes {
		return stop(0, CodeTooLarge, trace.Str("limit", fmt.Sprintf("%d MiB", MaxBytes>>20)))
	}
	if at := invalidAt(data); at >= 0 {
		return stop(at, CodeEncoding, trace.Str("found", fmt.Sprintf("% X", data[at:min(at+4, len(data))])))
	}
	text := data
	if bytes.HasPrefix(data, byteOrderMark) { // blanked, so that places stay true
		text = append([]byte("   "), data[len(byteOrderMark):]...)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return stop(0, CodeNoText)
	}
	root, at, err := parse(text)
	switch {
	case errors.Is(err, errDepth):
		return stop(at, CodeTooDeep, trace.Str("limit", strconv.Itoa(MaxDepth)))
	case errors.Is(err, errValues):
		return stop(at, CodeTooMany, trace.Str("limit", strconv.Itoa(MaxValues)))
	case err != nil:
		code, at := explain(text, at, err)
		found := "" // nothing more to show at the end of the file
		if at < len(text) {
			line, _, _ := bytes.Cut(text[at:min(len(text), at+8*snippetRunes)], []byte{'\n'})
			found = snippet(string(line))
		}
		return stop(at, code, trace.Str("found", found), trace.Str("limit", strconv.Itoa(MaxDepth)))
	case root.kind != '{':
		return stop(root.at, CodeNoObject, trace.Str("found", snippet(string(data[root.at:min(root.end, root.at+8*snippetRunes)]))))
	}
	return root, nil
}

// invalidAt finds the first byte that is not UTF-8, -1 when all is well.
func invalidAt(data []byte) int {
	if utf8.Valid(data) {
		return -1
	}
	for at := 0; at < len(data); {
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
	return -1
}

// version checks format and version and upgrades an older document. False
// when this is no job that can be read.
func (d *decoder) version(root *node) bool {
	if n := root.get("format"); n != nil && n.kind == '"' && n.text != FormatName {
		d.push("format")
		d.add(n.at, CodeFormat, trace.Str("found", snippet(n.text)), trace.Str("expected", FormatName))
		return false
	}
	n := root.get("version")
	if n == nil || n.kind != '0' {
		return true // told as missing or of the wrong sort, with the rest
	}
	v, err := strconv.Atoi(n.text)
	if err != nil || v < 0 || v > Version {
		code := CodeNewer
		if f, _ := strconv.ParseFloat(n.text, 64); f < Version {
			code = CodeVersionOdd
		}
		d.push("version")
		d.add(n.at, code, trace.Str("found", snippet(n.text)), trace.Str("newest", strconv.Itoa(Version)))
		return false
	}
	d.upgrade(root, v)
	return true
}

// units looks up what the rest needs to be read: the units of bare numbers, the
// marks of numbers and the currency of amounts, wherever they stand in the file.
func (d *decoder) units(root *node) {
	if n := root.only("units"); n != nil && n.kind == '"' {
		d.system, d.spoken = systemOf(n.text)
	}
	said := func(part, name string) string {
		if p := root.get(part); p != nil {
			if n := p.only(name); n != nil && n.kind == '"' {
				return n.text
			}
		}
		return ""
	}
	peek := Job{Numbers: Numbers{Decimal: said("numbers", "decimal"), Thousands: said("numbers", "thousands")}}
	if c := said("site", "currency"); validCurrency(c) {
		peek.Site.Currency = c
	}
	if d.system.Is(unit.Metric) {
		peek.Units = metricUnits
	}
	d.style = peek.Style()
	d.system = d.system.With(d.style.Marks)
}

// metricUnits is the word of the document for metric units.
const metricUnits = "metric"

func systemOf(word string) (s unit.System, ok bool) {
	switch word {
	case "us":
		return unit.US, true
	case metricUnits:
		return unit.Metric, true
	}
	return unit.US, false
}

// System gives the units in which the job's bare numbers are read and its
// answer is shown, with the marks that its numbers are written with. A job whose units are not said (Decode tells it as a fault)
// is shown in US units.
func (j *Job) System() unit.System {
	s, _ := systemOf(j.Units)
	return s.With(j.Style().Marks)
}
