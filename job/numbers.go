package job

import (
	"reflect"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Numbers says how numbers are written for people, on paper and screens. What is
// left empty follows from currency and units (unit.StyleOf) and is told as
// assumed. Files for programs have a decimal point whatever is said.
type Numbers struct {
	Decimal   string `json:"decimal,omitempty" one-of:"point,comma" doc:"the mark before decimals. What is typed is read by it: with a comma 1.234,50 is one thousand two hundred thirty-four and a half. As people write in the country of the currency when empty, and a point with us units"`
	Thousands string `json:"thousands,omitempty" one-of:"none,comma,point,space,apostrophe" doc:"the mark between thousands; as people write in the country of the currency when empty"`
	Money     string `json:"money,omitempty" one-of:"sign,code" doc:"what stands beside an amount of money: the sign of the currency, or its code; the sign when empty"`
	Side      string `json:"side,omitempty" one-of:"before,after" doc:"where that stands, before or after the amount; as people write in the country of the currency when empty"`
}

// numbersPath is where they stand in the job.
const numbersPath = "/numbers/"

// numberMarks are the marks by the words of the document.
var numberMarks = map[string]rune{
	"point": unit.Point, "comma": unit.Comma, "space": unit.Space, "apostrophe": unit.Apostrophe, "none": unit.NoGroup,
}

// Style is how amounts of money are written for people in this job, and its
// numbers by the marks: as said, else as is usual for currency and units. A mark
// between thousands that is said is never the decimal one: where only it is said,
// the decimal mark is the other of point and comma.
func (j *Job) Style() unit.Style {
	s, _ := systemOf(j.Units)
	st := unit.StyleOf(j.Site.Currency, s)
	n := &j.Numbers
	usual := st.Marks
	group, grouped := numberMarks[n.Thousands]
	switch {
	case n.Decimal == "point":
		st.Decimal, st.Said = unit.Point, true
	case n.Decimal == "comma":
		st.Decimal, st.Said = unit.Comma, true
	case grouped && group == unit.Point:
		st.Decimal, st.Said = unit.Comma, true
	case grouped && group == unit.Comma:
		st.Decimal, st.Said = unit.Point, true
	}
	switch {
	case grouped && group != st.Decimal:
		st.Group = group
	case st.Decimal != usual.Decimal: // turned round: so is the mark between thousands
		st.Group = map[rune]rune{unit.Point: unit.Comma, unit.Comma: unit.Point}[st.Decimal]
	}
	if n.Money == "code" {
		st = st.Code()
	}
	switch n.Side {
	case "before":
		st = st.On(true)
	case "after":
		st = st.On(false)
	}
	return st
}

// numbers holds that the two marks differ.
func (c *checker) numbers() {
	if n := &c.j.Numbers; n.Decimal != "" && n.Decimal == n.Thousands {
		c.add("/numbers/thousands", CodeNumbersSame, trace.Str("found", n.Thousands))
	}
}

// setNumbers changes how numbers are written. What was typed stays as it was
// typed; where it would be read as something else than before, the change is
// refused.
func (j *Job) setNumbers(tokens []string, text string) *trace.Message {
	next := j.Clone()
	s := setter{system: j.System(), style: j.Style(), text: text}
	if m := s.object(plan, reflect.ValueOf(next).Elem(), tokens); m != nil {
		return m
	}
	if n := &next.Numbers; n.Decimal != "" && n.Decimal == n.Thousands {
		return &trace.Message{Code: CodeNumbersSame, Args: []trace.Arg{trace.Str("found", n.Thousands)}}
	}
	if next.Style().Said != j.Style().Said || next.Style().Marks != j.Style().Marks {
		if m := j.moved(next); m != nil {
			return m
		}
	}
	j.Numbers = next.Numbers
	return nil
}

// moved finds the first figure typed in the job that would be read otherwise by
// the marks of next.
func (j *Job) moved(next *Job) *trace.Message {
	was, is, system, before := j.Style(), next.Style(), next.System(), j.System()
	var m *trace.Message
	w := walker{leaf: func(w *walker, fd *field, v reflect.Value) {
		if m != nil {
			return
		}
		text, same := "", true
		switch fd.shape {
		case shapeMoney:
			x := v.Interface().(Money)
			text, same = x.Text, x.IsZero() || sameMoney(x, was, is)
		case shapeEntry, shapeLevel:
			r := v.Addr().Interface().(quantity).load()
			text, same = r.Text, r.Text == "" || fd.sameReading(r, before, system)
		}
		if !same {
			m = &trace.Message{Code: CodeSetNumbers, Args: []trace.Arg{trace.Str("found", snippet(text)), trace.At("at", j.PlaceOf(w.path()))}}
		}
	}}
	w.each(j)
	return m
}

// sameMoney tells that an amount is read alike in two styles, or in the first one
// not at all.
func sameMoney(m Money, was, is unit.Style) bool {
	if was.Currency == "" {
		was.Currency, is.Currency = noCurrency, noCurrency
	}
	a, err := m.Amount(was)
	if err != nil {
		return true
	}
	b, err := m.Amount(is)
	return err == nil && a.Amount.Equal(b.Amount)
}

// sameReading tells that a quantity and its tolerance are read alike in two
// systems.
func (f *field) sameReading(r raw, was, is unit.System) bool {
	var a, b raw
	if f.read(r.Text, r.Bare, was, &a) != nil {
		return true
	}
	if f.read(r.Text, r.Bare, is, &b) != nil || a.SI != b.SI { // the same text, read in the same way
		return false
	}
	if r.Tolerance == "" || f.readTolerance(r.Tolerance, r.BareTol, was, &a) != nil {
		return true
	}
	return f.readTolerance(r.Tolerance, r.BareTol, is, &b) == nil && a.Plus == b.Plus
}
