package geom

import (
	"fmt"
	"math"

	"plashet/engine/unit"
)

// Codes of the errors of this package, with what each one's fields say.
const (
	// CodeNotFinite: a value is not a number or without bound. Name, Found.
	CodeNotFinite = "geom.value.finite"
	// CodeRange: a value lies outside what the formula holds for. Name, Found,
	// Limit (the bound it breaks).
	CodeRange = "geom.value.range"
)

// Error tells why a shape or a value is refused. It is data: the sentence is
// made at the edge.
type Error struct {
	Code  string
	Name  string     // which value: "rise", "width"
	Found unit.Value // what was given
	Limit unit.Value // the bound it breaks
}

func (e *Error) Error() string {
	return fmt.Sprintf("%s: %s %v, limit %v", e.Code, e.Name, e.Found.SI, e.Limit.SI)
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
	if !finite(float64(v)) {
		return &Error{Code: CodeNotFinite, Name: name, Found: unit.Of(v, k)}
	}
	if v < 0 {
		return &Error{Code: CodeRange, Name: name, Found: unit.Of(v, k), Limit: unit.Of(Q(0), k)}
	}
	return nil
}
