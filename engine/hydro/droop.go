package hydro

import (
	"slices"

	"plashet/engine/unit"
)

// A drooping curve is one whose head rises over part of its range before it
// falls: some pumps give most head not against a shut valve but at a little
// flow. On one pipe such a pump may run at several flows; package network finds
// them (Several).

// DroopMost is the part of the head at the least flow up to which a rise passes
// as a drooping curve; beyond it more likely a point was read wrong. Common
// practice, no source.
const DroopMost unit.Ratio = 0.2

// droop tells whether points by rising flow make a drooping curve: four or
// more, a rise of at most limit, and in the end a fall to below the head they
// began with.
func droop(h []float64, rise float64) (limit float64, ok bool) {
	limit, n := float64(DroopMost)*h[0], len(h)
	return limit, n >= usualPoints && rise <= limit && h[n-1] < h[n-2] && h[n-1] < h[0]
}

// Droops tells that the head rises somewhere within the data.
func (c *Curve) Droops() bool {
	return slices.ContainsFunc(c.head.spans, func(s span) bool { return s.y1 > s.y0 })
}

// Turns are the flows between two neighbours of which, and before the first and
// after the last, the head only falls (or stays) or only rises: points of the
// curve, since between points it is monotone. None for a curve that never rises.
func (c *Curve) Turns() (at []unit.Flow) {
	rises := false
	for i := range c.head.spans {
		s := &c.head.spans[i]
		if up := s.y1 > s.y0; up != rises {
			at, rises = append(at, unit.Flow(s.x0)), up
		}
	}
	return at
}

// Peak is the greatest head within the data.
func (c *Curve) Peak() unit.Head {
	most := c.head.first().y0
	for i := range c.head.spans {
		most = max(most, c.head.spans[i].y1)
	}
	return unit.Head(most)
}

// greatestRise gives the greatest rise of a later head over an earlier one,
// and where it ends.
func greatestRise(h []float64) (rise float64, at int) {
	lowest := h[0]
	for i, v := range h {
		if v-lowest > rise {
			rise, at = v-lowest, i
		}
		lowest = min(lowest, v)
	}
	return rise, at
}

// level makes h fall or stay, with the least sum of squared changes: pools of
// adjacent violators take their mean (Ayer and others, Ann. Math. Stat. 26
// (1955) 641).
func level(h []float64) {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for _, v := range h {
		pools = append(pools, pool{v, 1})
		for k := len(pools) - 1; k > 0; k-- {
			a, b := pools[k-1], pools[k]
			if a.sum*float64(b.n) >= b.sum*float64(a.n) {
				break
			}
			pools = append(pools[:k-1], pool{a.sum + b.sum, a.n + b.n})
		}
	}
	i := 0
	for _, p := range pools {
		for range p.n {
			h[i] = p.sum / float64(p.n)
			i++
		}
	}
}
