package network

import (
	"math"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// A chain is what the solver works on: links in series between two nodes at
// which water can divide, or whose head is given. Links that meet where it
// cannot divide carry one flow, so they are one unknown.
type chain struct {
	from, to int32 // nodes; Solver.ground for the air behind an outlet
	i, j     int32 // their places in the block's matrix, -1 where the head is given
	oneWay   bool  // flow is zero or more
	segments []segment

	square float64  // sum of the resistances of its Quadratic parts
	laws   []turned // its other parts
	size   float64  // a flow of its own size, m³/s
	steep  float64  // rise of loss from 0 to size, over size: a slope of its own size
	blunt  float64  // sqrt(rise)/size, see eval
	base   float64  // flow that feeds the demands: a start that meets continuity
	slot   int32    // of the entry between i and j in the matrix, -1 when there is none

	q, h, slope float64 // flow, loss and its derivative at q
	atZero      float64 // loss at no flow
	dq          float64 // search direction
	start       float64 // flow from which the direction was taken
	closed      bool    // a one-way chain that stands
}

// segment is one edge of a chain: a link, or the way out of an outlet.
type segment struct {
	edge int32 // index of the link, or number of links + node for an outlet
	rev  bool  // laid against the chain
}

// turned is a law and whether it lies against the chain.
type turned struct {
	law Law
	rev bool
}

// Quadratic is the loss R q|q|: fittings, valves at a setting and exits, whose
// coefficient does not change with the flow; R = K / (2 g A²) in s²/m⁵.
type Quadratic float64

// Loss gives R q|q| and 2 R |q|.
func (r Quadratic) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	a := float64(r) * math.Abs(float64(q))
	return unit.Head(a * float64(q)), 2 * a
}

// add takes a part into the chain's sum; like elements are joined to one where
// join is set.
func (c *chain) add(law Law, rev, join bool) {
	switch l := law.(type) {
	case nil:
		return
	case Quadratic:
		c.square += float64(l)
		return
	case hydro.Joiner: // odd, so it does not matter which way it lies
		for i := range c.laws {
			if !join {
				break
			}
			if both, ok := l.Join(c.laws[i].law); ok {
				c.laws[i].law = both
				return
			}
		}
	}
	c.laws = append(c.laws, turned{law, rev})
}

// loss gives the chain's loss and its derivative at flow q, the derivative as
// the laws tell it: it may be zero, or infinite at zero flow.
func (c *chain) loss(q float64) (h, slope float64) {
	a := c.square * math.Abs(q)
	h, slope = a*q, 2*a
	for i := range c.laws {
		l := &c.laws[i]
		if l.rev {
			d, s := l.law.Loss(unit.Flow(-q))
			h, slope = h-float64(d), slope+s
		} else {
			d, s := l.law.Loss(unit.Flow(q))
			h, slope = h+float64(d), slope+s
		}
	}
	return h, slope
}

// The search may not divide by a slope of zero. leastSlope stands where no law
// resists at all (a link with only a lossless valve), in m per m³/s; it is far
// below any pipe's and changes no answer.
const leastSlope = 1e-4

// measure finds the chain's own size, from which a search begins.
func (c *chain) measure() {
	c.size = usualFlow
	if c.square > 0 {
		c.size = min(max(math.Sqrt(1/c.square), 1e-6), 10) // the flow that loses a metre
	}
	c.atZero, _ = c.loss(0)
	h1, _ := c.loss(c.size)
	rise := max(h1-c.atZero, 0)
	c.steep = max(rise/c.size, leastSlope)
	c.blunt = math.Sqrt(rise) / c.size
}

// again measures a chain whose laws have changed a little: its own size stays
// what it was, for that only sets where a search begins.
func (c *chain) again() { c.atZero, _ = c.loss(0) }

// usualFlow is where the search begins when there is no constant K: a
// litre a second, what pond pumps deliver.
const usualFlow = 1e-3

// eval takes the chain to flow q. error (m) is the square root of the present
// greatest energy error of the block.
//
// Near zero flow the slope is held above sqrt(error × rise)/size, the slope of
// a quadratic loss where it loses as much head as is in error: a step is then
// never longer than the flow which that head can drive, however flat the law
// is at zero flow. It tends to nothing as the error does, so the end of the
// search sees the laws' own derivatives.
func (c *chain) eval(q, rootError float64) {
	c.q = q
	c.h, c.slope = c.loss(q)
	c.bound(rootError)
}

// bound holds the slope that the laws tell within what the search can use.
func (c *chain) bound(rootError float64) {
	q, floor := c.q, leastSlope
	if math.Abs(q) < c.size/10 {
		floor += c.blunt * rootError
	}
	if !(c.slope >= floor) {
		c.slope = floor
	} else if c.slope > steepest*c.steep {
		c.slope = c.secant(q)
	}
}

// steepest is how many times its usual slope a chain may have before the
// search takes a secant: a power law like a lip's has no bound at zero flow.
const steepest = 1e9

// secant gives a slope of usual size where the law's own is beyond all bounds.
func (c *chain) secant(q float64) float64 {
	step := c.size / 1000
	h, _ := c.loss(q + step)
	return max((h-c.h)/step, leastSlope)
}
