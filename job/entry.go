package job

import "plashet/engine/unit"

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
	Tolerance string // as typed
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
// offset: "@rim", "@water - 4 in". SI holds the elevation only after the
// survey is reduced (Job.Elevations); until then it holds the offset when
// Point is set.
type Level struct {
	Entry[unit.Length]
	Point string // the survey point's name, without the @
}

// Money is an amount as typed; decimal, never binary. The amount and currency
// are read by package money at the edge of the take-off.
type Money struct {
	Text string
	Bare bool
}

// IsZero tells that the field was left empty.
func (m Money) IsZero() bool { return m.Text == "" }
