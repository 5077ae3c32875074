package hydro

import (
	"math"

	"plashet/engine/unit"
)

// Stop says how a search for an operating point ended.
type Stop uint8

// The endings.
const (
	StopConverged      Stop = iota // found within the pump's data
	StopNoIntersection             // the pump cannot lift the water that high: no flow
	StopOffCurve                   // found only beyond the pump's data: "more than", never a number
	StopIterations                 // not found; only for values that are not finite
)

func (s Stop) String() string {
	return [...]string{"converged", "no intersection", "off the curve", "iterations"}[s]
}

// Operating is the point at which a pump's curve meets a system's.
type Operating struct {
	Flow unit.Flow
	Head unit.Head
	Stop Stop
}

// Operate finds the operating point of one pump on one line:
//
//	H(Q) = static + loss(Q),  Q >= 0
//
// static is the head from the running water surface at the pump up to the
// highest free surface (it may be negative, a siphon; then the flow may be
// off the curve). The left side never rises and the right side never falls, so
// there is one answer; Newton's steps are held between two flows that enclose
// it. With StopOffCurve the flow and head are those of the continuation and
// only good to say on which side of the data the answer lies.
func Operate(c *Curve, static unit.Head, law Law) Operating {
	const bound, newton = 200, 50 // steps; past newton of them only halving, which always ends
	excess := func(q float64) (f, df float64, inside bool) {
		h, dh, in := c.Head(unit.Flow(q))
		loss, dloss := law.Loss(unit.Flow(q))
		return float64(h - static - loss), dh - dloss, in
	}
	none := Operating{Flow: unit.Flow(math.NaN()), Head: unit.Head(math.NaN()), Stop: StopIterations}
	if !finite(static) {
		return none
	}
	atRest, _, _ := excess(0)
	if atRest <= 0 {
		return Operating{Head: static, Stop: StopNoIntersection}
	}
	_, greatest, _, _ := c.Range()
	low, high := 0.0, float64(greatest)
	for range bound {
		f, _, _ := excess(high)
		if f <= 0 {
			break
		}
		low, high = high, 2*high
	}
	q := low + (high-low)/2
	for i := range bound {
		f, df, inside := excess(q)
		if math.IsNaN(f) {
			break
		}
		if f > 0 {
			low = q
		} else {
			high = q
		}
		next := q - f/df
		isNewton := i < newton && next >= low && next <= high
		if !isNewton {
			next = low + (high-low)/2
		}
		if isNewton && math.Abs(next-q) <= settled*high || next == q {
			stop := StopConverged
			if !inside {
				stop = StopOffCurve
			}
			h, _, _ := c.Head(unit.Flow(next))
			return Operating{Flow: unit.Flow(next), Head: h, Stop: stop}
		}
		q = next
	}
	return none
}
