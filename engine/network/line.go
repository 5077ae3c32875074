package network

import (
	"math"

	"plashet/engine/unit"
)

// A block of one chain between two given heads is the commonest of all: one
// line from the vault to its fall. There is one unknown, its flow, and the
// head that drives it, so the steady state is the root of
//
//	loss(q) = drive.
//
// A loss is near a square of the flow, so the search goes in
//
//	g(q) = sqrt|loss(q) - loss(0)| with the sign of q,  wanted sqrt|drive - loss(0)|
//
// which is near a straight line. Each step is a cubic through the last two
// places that has the slopes there (Hermite's, of q over g), the first is
// Newton's. The least and greatest flow that the root can lie between are kept:
// where a step leaves them, the middle is taken.

const (
	lineSteps  = 200 // most of them halvings; almost every search ends within four
	lineStride = 8   // times the flow that a step may go to while no upper bound is known
)

// solveLine finds the flow of a block of one chain and no nodes, from the flow
// of the last state where that is warm.
func (b *block) solveLine(s *Solver, st *State) {
	c := &b.chains[0]
	drive := s.head[c.from] - s.head[c.to]
	rise := drive - c.atZero
	if c.oneWay && rise <= 0 {
		c.q, c.h, c.closed = 0, c.atZero, true
	} else {
		sign := math.Copysign(1, rise)
		q := sign * st.flow[b.first]
		if !st.warm || !(q > 0) {
			q = math.Sqrt(sign*rise) / c.blunt // the root if the loss were a square
			if !(q < runaway) {
				q = c.size
			}
		}
		b.searchLine(c, drive, sign, q)
		c.closed = c.oneWay && c.q <= noFlow && c.h-c.atZero < float64(EnergyTolerance)/10
		if c.closed {
			c.q = 0 // it stands just as well
		} else if b.stop == StopConverged {
			st.Energy = max(st.Energy, unit.Head(math.Abs(drive-c.h)))
		}
	}
	st.flow[b.first], st.closed[b.first] = c.q, c.closed
}

// searchLine looks for the flow at which the loss is drive, from the flow q;
// sign is that of the flow.
func (b *block) searchLine(c *chain, drive, sign, q float64) {
	wanted := math.Sqrt(sign * (drive - c.atZero))
	low, high := 0.0, math.Inf(1)
	var was, wasG, wasTurn float64 // flow, g and dq/dg of the place before
	for b.iterations < lineSteps {
		b.iterations++
		h, slope := c.loss(sign * q)
		c.q, c.h, c.slope = sign*q, h, max(slope, leastSlope)
		if !finite(h) || q > runaway {
			b.blame()
			return
		}
		miss := drive - h
		if lineDone(c, math.Abs(miss), high-low) {
			return
		}
		if sign*miss > 0 {
			low = q
		} else {
			high = q
		}
		next := math.NaN()
		if g := math.Sqrt(max(sign*(h-c.atZero), 0)); g > 0 && slope > 0 && finite(slope) {
			turn := 2 * g / slope
			next = q + turn*(wanted-g)
			if wasG > 0 && g != wasG {
				next = inverse(was, q, wasG, g, wasTurn, turn, wanted)
			}
			was, wasG, wasTurn = q, g, turn
		}
		switch {
		case next > low && next < high && b.iterations <= easySteps:
			if math.IsInf(high, 1) { // a line drawn on into the unknown may lead anywhere
				next = min(next, lineStride*max(q, c.size))
			}
			q = next
		case math.IsInf(high, 1):
			q = max(2*low, c.size)
		default:
			q = low + (high-low)/2
		}
	}
	b.stop = StopIterations
	b.rootError = math.Sqrt(math.Abs(drive - c.h))
}

// lineDone tells that the energy error is as small as wanted, or that no flow
// lies between the bounds any more and rounding is what is left.
func lineDone(c *chain, miss, bounds float64) bool {
	if miss <= headNoise || miss <= energyTarget && miss <= c.slope*max(flowTarget, flowPart*math.Abs(c.q)) {
		return true
	}
	least := 4e-16 * math.Abs(c.q) // m³/s: as near as flows can be told apart
	return (bounds <= least || miss <= c.slope*least) && miss < rounding
}

// inverse is the cubic of q over g through two places with their slopes, at g.
func inverse(q0, q1, g0, g1, d0, d1, g float64) float64 {
	w := g1 - g0
	t := (g - g1) / w // from the place at hand
	chord := (q1 - q0) / w
	return q1 + w*t*(d1+t*((2*d1+d0-3*chord)+t*(d0+d1-2*chord)))
}
