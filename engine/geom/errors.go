package geom

import (
	"fmt"
	"math"

	"plashet/engine/unit"
)

// Code says what is wrong with a shape or a value. Codes are stable.
type Code string

// The codes, with what each one's fields say.
const (
	// CodeNotFinite: a value is not a number or without bound. Name, Found; At
	// tells which point or offset, counted from 0, where there are several.
	CodeNotFinite Code = "geom.value.finite"
	// CodeRange: a value lies outside what the formula holds for. Name, Found,
	// Limit (the bound it breaks); At as above.
	CodeRange Code = "geom.value.range"
	// CodePoints: too few different points to enclose an area, or more than are
	// read. Found (how many), Limit (least or most).
	CodePoints Code = "geom.outline.points"
	// CodeCrosses: the outline crosses or touches itself. At and Other are the
	// two edges, counted from 0 in the order given; edge i runs from point i to
	// the next.
	CodeCrosses Code = "geom.outline.crosses"
	// CodeFlat: the outline encloses no area. Found (the area).
	CodeFlat Code = "geom.outline.flat"
	// CodeOrder: distances along the baseline must grow. At (the offset that
	// does not), Found, Limit (the one before).
	CodeOrder Code = "geom.offsets.order"
	// CodeMiddle: an inset reaches past the middle of the outline. Found, Limit
	// (the greatest inset that leaves any area).
	CodeMiddle Code = "geom.inset.middle"
	// CodeIntervals: Simpson's rule needs an even number of intervals. Found.
	CodeIntervals Code = "geom.simpson.intervals"
)

// Error tells why a shape or a value is refused. It is data: the sentence is
// made at the edge.
type Error struct {
	Code  Code
	Name  string     // which value: "rise", "width"
	At    int        // index of the point, offset or edge
	Other int        // index of the second edge
	Found unit.Value // what was given
	Limit unit.Value // the bound it breaks
}

func (e *Error) Error() string {
	switch e.Code {
	case CodeCrosses:
		return fmt.Sprintf("%s: edges %d and %d meet", e.Code, e.At, e.Other)
	case CodeNotFinite:
		return fmt.Sprintf("%s: %s %v (number %d)", e.Code, e.Name, e.Found.SI, e.At)
	}
	return fmt.Sprintf("%s: %s %v, limit %v (number %d)", e.Code, e.Name, e.Found.SI, e.Limit.SI, e.At)
}

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// notNegative gives an error unless v is finite and at least zero.
func notNegative[Q unit.Quantity](name string, v Q, k unit.Kind) error {
	return notNegativeAt(name, 0, v, k)
}

// notNegativeAt does the same for the value number i of several.
func notNegativeAt[Q unit.Quantity](name string, i int, v Q, k unit.Kind) error {
	if !finite(float64(v)) {
		return &Error{Code: CodeNotFinite, Name: name, At: i, Found: unit.Of(v, k)}
	}
	if v < 0 {
		return &Error{Code: CodeRange, Name: name, At: i, Found: unit.Of(v, k), Limit: unit.Of(Q(0), k)}
	}
	return nil
}
