package trace

import (
	"math"

	"plashet/engine/unit"
)

// Outside tells that v is not a number from low to high, with the message of
// the package that asks: code notFinite with args name, or outOfRange with args
// name, found and limit (the bound it breaks).
func Outside[Q unit.Quantity](notFinite, outOfRange, name string, v, low, high Q, k unit.Kind) (Message, bool) {
	limit := low
	switch {
	case math.IsNaN(float64(v)) || math.IsInf(float64(v), 0):
		return Message{Code: notFinite, Args: []Arg{Str("name", name)}}, true
	case v >= low && v <= high:
		return Message{}, false
	case v > high:
		limit = high
	}
	return Message{Code: outOfRange, Args: []Arg{Str("name", name), Num("found", v, k), Num("limit", limit, k)}}, true
}
