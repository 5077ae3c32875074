package job

import (
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// entryForm is the plan of a quantity written as an object.
var entryForm = compile(reflect.TypeFor[entryObject](), map[reflect.Type]*form{})

// entryObject is how a quantity is written when more than its value is told.
type entryObject struct {
	Value     string `json:"value" want:"must" doc:"the value, as a text or a bare number" eg:"60 ft"`
	Source    Origin `json:"source,omitempty" one-of:"measured,sheet,rule,guess" doc:"where it comes from: measured on site, read on a maker's sheet, a rule of thumb, a guess"`
	Tolerance string `json:"tolerance,omitempty" doc:"how far off it may be, to both sides: in the field's own units, or as a share of the value" eg:"1/8 in"`
	Note      string `json:"note,omitempty" doc:"remark" eg:"by laser"`
}

// quantity reads an entry: a text, a bare number, or an object with both and
// its source, tolerance and note.
func (d *decoder) quantity(n *node, fd *field, v reflect.Value) {
	q := v.Addr().Interface().(quantity)
	if n.kind == '{' {
		d.entry(n, fd, q)
		return
	}
	var r raw
	if d.reading(n, fd, &r) {
		q.store(r)
	}
}

// entry reads the object form. A fault in source, tolerance or note voids only
// these; a fault in the value voids the entry.
func (d *decoder) entry(n *node, fd *field, q quantity) {
	var o entryObject
	var r raw
	var value, tolerance *node
	// The texts of the object are read as any object is; value and tolerance may
	// be numbers too, so they are taken out first.
	texts := node{kind: '{', at: n.at, end: n.end}
	for _, m := range n.members {
		if m.value.kind == '0' && (m.name == "value" || m.name == "tolerance") {
			m.value.kind = '"'
		}
		texts.members = append(texts.members, m)
	}
	value, tolerance = n.get("value"), n.get("tolerance")
	d.object(&texts, entryForm, reflect.ValueOf(&o).Elem())
	if o.Value == "" {
		return
	}
	d.push("value")
	ok := d.reading(value, fd, &r)
	d.pop()
	if !ok {
		return
	}
	r.Source, r.Note = o.Source, o.Note
	if o.Tolerance != "" {
		d.push("tolerance")
		if m := fd.readTolerance(o.Tolerance, tolerance.kind == '0', d.system, &r); m != nil {
			d.add(tolerance.at, m.Code, m.Args...)
		}
		d.pop()
	}
	q.store(r)
}

// reading reads the value of an entry; false when the field stays empty.
func (d *decoder) reading(n *node, fd *field, r *raw) bool {
	if n.kind != '"' && n.kind != '0' {
		args := []trace.Arg{trace.Str("found", d.typed(n)), trace.Str("example", fd.example(d.system))}
		if u := fd.kind.UnitName(d.system); u != "" {
			d.add(n.at, wrong(n, CodeWantUnit), append(args, trace.Str("unit", u))...)
		} else {
			d.add(n.at, wrong(n, CodeWantQuantity), args...)
		}
		return false
	}
	if n.text == "" {
		d.empty(n, fd)
		return false
	}
	m := fd.read(n.text, n.kind == '0', d.system, r)
	if !d.spoken && (m == nil || n.kind == '0') {
		// The fault in the units has been told. A text with its unit means the
		// same in both systems; what does not stays empty.
		var other raw
		if fd.read(n.text, n.kind == '0', unit.Metric, &other) != nil || m != nil || other.SI != r.SI {
			return false
		}
	}
	if m != nil {
		d.add(n.at, m.Code, m.Args...)
		return false
	}
	return true
}

// read reads a quantity as typed into r.
func (f *field) read(text string, number bool, s unit.System, r *raw) *trace.Message {
	if m := checkLength(text, MaxRunes); m != nil {
		return m
	}
	point, rest := "", text
	if f.shape == shapeLevel {
		var ok bool
		if point, rest, ok = splitLevel(text); !ok {
			return &trace.Message{Code: CodeReadLevel, Args: []trace.Arg{
				trace.Str("found", snippet(text)), trace.Str("example", f.example(s)),
			}}
		}
	}
	si := 0.0
	if rest != "" {
		read, m := f.parse(rest, number, s)
		if m != nil {
			m.Args[0] = trace.Str("found", snippet(text))
			waysOf(m, text, rest)
			return m
		}
		si = read.SI
	}
	if si < f.lo || si > f.hi {
		return &trace.Message{Code: CodeRange, Args: f.beyond(text, si)}
	}
	*r = raw{Text: text, Bare: number, SI: si, Point: point}
	return nil
}

// parse reads a text in the field's kind. JSON may write a number with an
// exponent, which people do not: it is spelt out first.
func (f *field) parse(text string, number bool, s unit.System) (unit.Reading, *trace.Message) {
	if number && strings.ContainsAny(text, "eE") {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || math.Abs(v) > 1e15 {
			m := parseFault(&unit.ParseError{Code: unit.CodeRange, Found: text}, text, f.example(s), s.Marks())
			return unit.Reading{}, &m
		}
		text = strconv.FormatFloat(v, 'f', -1, 64)
	}
	plain := text
	if number && strings.Contains(text, ".") {
		plain += "0" // the point of a JSON number marks decimals, also before three digits
	}
	read, err := unit.Parse(plain, f.kind, s)
	if err == nil && (math.IsNaN(read.SI) || math.IsInf(read.SI, 0)) {
		err = &unit.ParseError{Code: unit.CodeRange, Found: text}
	}
	if err != nil {
		pe, ok := errors.AsType[*unit.ParseError](err)
		if !ok {
			pe = &unit.ParseError{Code: unit.CodeNumber, Found: text}
		}
		m := parseFault(pe, text, f.example(s), s.Marks())
		if pe.Code == unit.CodeAmbiguous {
			twoWays(&m, pe.Found, text, s.Marks().Said && s.Marks().Decimal == unit.Comma, func(t string) (string, bool) {
				r, err := unit.Parse(t, f.kind, s)
				return strconv.FormatFloat(r.SI, 'g', -1, 64), err == nil && r.SI >= f.lo && r.SI <= f.hi
			})
		}
		return unit.Reading{}, &m
	}
	return read, nil
}

// splitLevel splits "@name + 2 in" into name and offset. The sign of the offset
// has a blank before it and a figure behind it, so that names may hold hyphens.
func splitLevel(text string) (point, offset string, ok bool) {
	name, found := strings.CutPrefix(strings.TrimSpace(text), "@")
	if !found {
		return "", text, true
	}
	if at, sign, behind := offsetAt(name); at >= 0 {
		name, offset = name[:at], sign+behind
	}
	name = strings.TrimSpace(name)
	return name, offset, name != ""
}

// offsetAt finds the sign that starts an offset: the first plus or minus (or
// the dash that word processors make of it) with a blank before it and, blanks
// aside, a figure behind it. at is -1 when there is none.
func offsetAt(name string) (at int, sign, behind string) {
	blank := false
	for i, r := range name {
		isSign := r == '+' || r == '-' || r == '\u2212' || r == '\u2013'
		if !blank || !isSign {
			blank = unicode.IsSpace(r)
			continue
		}
		behind = strings.TrimSpace(name[i+utf8.RuneLen(r):])
		if first, _ := utf8.DecodeRuneInString(behind); unicode.IsNumber(first) || first == '.' {
			if r != '+' {
				sign = "-"
			}
			return i, sign, behind
		}
		blank = false
	}
	return -1, "", ""
}

// readTolerance reads how far off a value may be. "2 %" is that share of the
// value, but for percentages (where it means points) and for what has no
// natural zero (elevations, temperatures), where a share means nothing.
func (f *field) readTolerance(text string, number bool, s unit.System, r *raw) *trace.Message {
	bad := func(code string) *trace.Message {
		return &trace.Message{Code: code, Args: []trace.Arg{
			trace.Str("found", snippet(text)), trace.Str("example", f.toleranceExample(s)),
		}}
	}
	figure := strings.TrimSpace(text)
	for _, sign := range []string{"±", "+/-", "+-"} {
		figure = strings.TrimSpace(strings.TrimPrefix(figure, sign))
	}
	var plus float64
	switch share := strings.HasSuffix(figure, "%") && f.kind != unit.KindPercent; {
	case share && (f.kind == unit.KindElevation || f.kind == unit.KindTemperature):
		return bad(CodeToleranceOf)
	case share:
		read, err := unit.Parse(figure, unit.KindPercent, s)
		if err != nil {
			return bad(CodeTolerance)
		}
		plus = read.SI * math.Abs(r.SI)
		if read.SI < 0 {
			plus = read.SI
		}
	default:
		read, m := f.parse(figure, number, s)
		if m != nil {
			return bad(CodeTolerance)
		}
		plus = read.SI
		if f.kind == unit.KindTemperature { // a difference, so the scale's zero drops out
			zero, err := unit.Parse("0 "+read.Unit, f.kind, s)
			if err != nil {
				return bad(CodeTolerance)
			}
			plus -= zero.SI
		}
	}
	if plus < 0 || math.IsNaN(plus) {
		return bad(CodeTolerance)
	}
	if span := f.hi - f.lo; plus > span {
		args := f.beyond(text, plus)
		args[2].Value.SI, args[3].Value.SI = 0, span
		return &trace.Message{Code: CodeRange, Args: args}
	}
	r.Tolerance, r.BareTol, r.Plus = text, number, plus
	return nil
}

// toleranceExample is a tolerance as it may be written.
func (f *field) toleranceExample(s unit.System) string {
	switch {
	case f.kind == unit.KindTemperature && s.Is(unit.Metric):
		return "1 °C"
	case f.kind == unit.KindTemperature:
		return "2 °F"
	case f.kind.Dim() == unit.DimLength && s.Is(unit.Metric):
		return "3 mm"
	case f.kind.Dim() == unit.DimLength:
		return "1/8 in"
	}
	return "5 %"
}

// parseFault turns an error of the reader into a fault of the job.
func parseFault(pe *unit.ParseError, text, example string, m unit.Marks) trace.Message {
	code, ok := map[unit.Code]string{
		unit.CodeEmpty: CodeReadEmpty, unit.CodeLong: CodeReadLong, unit.CodeNumber: CodeReadNumber,
		unit.CodeFraction: CodeReadFraction, unit.CodeUnknown: CodeReadUnit, unit.CodeDimension: CodeReadDimension,
		unit.CodeTrailing: CodeReadTrailing, unit.CodeAmbiguous: CodeReadAmbiguous, unit.CodeParts: CodeReadParts,
		unit.CodeRange: CodeReadHuge, unit.CodePercent: CodeReadPercent, unit.CodeWhole: CodeReadWhole,
		unit.CodeCurrency: CodeReadCurrency,
	}[pe.Code]
	switch {
	case !ok:
		code = CodeReadNumber
	case pe.Code == unit.CodeAmbiguous && m.Said:
		code = CodeReadUnclear
	case pe.Code == unit.CodeUnknown && pe.Near != "":
		code = CodeReadUnitNear
	case pe.Code == unit.CodeNumber && pe.Found == "":
		code = CodeReadEnd
	}
	return trace.Message{Code: code, Args: []trace.Arg{
		trace.Str("found", snippet(text)), trace.Str("part", snippet(pe.Found)), trace.Str("near", pe.Near), trace.Str("example", example),
	}}
}
