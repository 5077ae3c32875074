package job

import (
	"strings"

	"plashet/engine/unit"
)

// Origin says where a number comes from.
type Origin string

// The origins a user can name.
const (
	OriginNone     Origin = ""
	OriginMeasured Origin = "measured"
	OriginSheet    Origin = "sheet"
	OriginRule     Origin = "rule"
	OriginGuess    Origin = "guess"
)

// Entry is one quantity as typed, with what it was read as. In the file it is
// a text ("4' 7-1/2\""), a bare number (55, in the field's unit), or an object
// {"value": text or number, "source": ..., "tolerance": ..., "note": ...}. The
// zero Entry is a field left empty.
type Entry[Q unit.Quantity] struct {
	Text      string // as typed, without the quotes of JSON; "" is empty
	Bare      bool   // typed as a JSON number
	SI        Q      // what it was read as
	Source    Origin
	Tolerance string // as typed: "1/8 in", or a share of the value, "2 %"
	BareTol   bool   // the tolerance was typed as a JSON number
	Plus      Q      // the tolerance read, 0 when none is given
	Note      string
}

// IsZero tells that the field was left empty.
func (e Entry[Q]) IsZero() bool { return e.Text == "" }

// Or gives the value, or the fallback where the field was left empty.
func (e Entry[Q]) Or(fallback Q) Q {
	if e.IsZero() {
		return fallback
	}
	return e.SI
}

// Level is an elevation: a length above the datum, or a survey point with an
// offset: "@rim", "@water - 4 in". SI is the elevation, or the offset when
// Point is set; Reduced.Level gives the elevation of both.
type Level struct {
	Entry[unit.Length]
	Point string // the survey point's name, without the @
}

// Money is an amount as typed; decimal, never binary. The amount and currency
// are read at the edge of the take-off with Amount.
type Money struct {
	Text string
	Bare bool // typed as a JSON number
}

// IsZero tells that the field was left empty.
func (m Money) IsZero() bool { return m.Text == "" }

// ISO 4217 codes: of no currency, and of one written with a decimal point.
const (
	noCurrency    = "XXX"
	pointCurrency = "USD"
)

// Amount reads the amount in the currency of a style (Job.Style), with the marks
// that it says. The point of a bare number is a decimal point, whatever the habits
// of currency and job are. The error is a *unit.ParseError.
func (m Money) Amount(st unit.Style) (unit.Money, error) {
	if !m.Bare {
		return st.Parse(m.Text)
	}
	sum, err := st.Parse("0")
	if err != nil {
		return unit.Money{}, err
	}
	if i := strings.IndexAny(m.Text, "eE"); i >= 0 { // an amount is written out
		return unit.Money{}, &unit.ParseError{Code: unit.CodeTrailing, Text: m.Text, At: i, Found: m.Text[i:], Kind: unit.KindMoney}
	}
	exact, err := unit.ParseMoney(m.Text, pointCurrency)
	sum.Amount = exact.Amount
	return sum, err
}

// raw is an Entry or Level of any quantity, so that decoder, encoder and
// schema handle all of them in one way.
type raw struct {
	Text      string
	Bare      bool
	SI        float64
	Source    Origin
	Tolerance string
	BareTol   bool
	Plus      float64
	Note      string
	Point     string // a Level's only
}

// quantity is what *Entry[Q] and *Level have in common.
type quantity interface {
	dim() unit.Dim
	load() raw
	store(raw)
}

func (e *Entry[Q]) dim() unit.Dim { return e.SI.Dim() }

func (e *Entry[Q]) load() raw {
	return raw{
		Text: e.Text, Bare: e.Bare, SI: float64(e.SI), Source: e.Source,
		Tolerance: e.Tolerance, BareTol: e.BareTol, Plus: float64(e.Plus), Note: e.Note,
	}
}

func (e *Entry[Q]) store(r raw) {
	*e = Entry[Q]{
		Text: r.Text, Bare: r.Bare, SI: Q(r.SI), Source: r.Source,
		Tolerance: r.Tolerance, BareTol: r.BareTol, Plus: Q(r.Plus), Note: r.Note,
	}
}

func (l *Level) load() raw {
	r := l.Entry.load()
	r.Point = l.Point
	return r
}

func (l *Level) store(r raw) {
	l.Entry.store(r)
	l.Point = r.Point
}
