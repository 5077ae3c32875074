package job

import (
	"iter"
	"reflect"

	"plashet/engine/unit"
)

// Quantity is one figure of the job as typed and as read.
type Quantity struct {
	Text        string     // as typed; a level may name a survey point: "@water - 4 in"
	Point       string     // that point, without the @
	Read        unit.Value // what it was read as; with Point, the offset from it
	Unit        string     // the unit it was typed in, or the one a bare number took
	Bare        bool       // no unit was typed where there is one: Unit was taken from the field
	DensityKgM3 float64    // of the water taken to turn a pressure into a head; 0 when none was
	Money       bool       // an amount of money: Text holds the figure, Read is zero
	Amount      unit.Money // what an amount was read as; its currency is empty where it could not be read
	Doc         string     // what the field is for
	Source      Origin     //
	Tolerance   string     // as typed
	Plus        unit.Value // the tolerance as read, zero when none is given
	Note        string     //
}

// Quantities goes through every figure of the job in document order, with its
// path, so that all can be shown as typed and as read.
func (j *Job) Quantities() iter.Seq2[string, Quantity] {
	return func(yield func(string, Quantity) bool) {
		stopped, st := false, j.Style()
		w := walker{leaf: func(w *walker, fd *field, v reflect.Value) {
			if stopped {
				return
			}
			if q, ok := fd.figure(v, j.System(), st); ok {
				stopped = !yield(w.path(), q)
			}
		}}
		w.each(j)
	}
}

// figure shows one field as typed and as read; false when it holds no figure.
func (f *field) figure(v reflect.Value, s unit.System, st unit.Style) (Quantity, bool) {
	switch f.shape {
	case shapeMoney:
		m := v.Interface().(Money)
		q := Quantity{Text: m.Text, Money: true, Doc: f.doc}
		if sum, err := m.Amount(st); err == nil {
			q.Amount = sum
		}
		return q, !m.IsZero()
	case shapeEntry, shapeLevel:
	default:
		return Quantity{}, false
	}
	r := v.Addr().Interface().(quantity).load()
	if r.Text == "" {
		return Quantity{}, false
	}
	q := Quantity{
		Text: r.Text, Point: r.Point, Read: unit.Value{SI: r.SI, Kind: f.kind}, Doc: f.doc,
		Source: r.Source, Tolerance: r.Tolerance, Note: r.Note,
	}
	if r.Tolerance != "" {
		q.Plus = unit.Value{SI: r.Plus, Kind: f.kind}
	}
	figure := r.Text
	if r.Point != "" {
		_, figure, _ = splitLevel(r.Text)
	}
	if read, m := f.parse(figure, r.Bare, s); m == nil {
		q.Unit, q.DensityKgM3 = read.Unit, read.Density
		q.Bare = read.Bare && read.Unit != ""
	}
	return q, true
}
