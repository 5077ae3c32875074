package size

import (
	"math"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// pairing is two pumps with the legs by which they are joined. What counts for
// the pipe behind the join is the head there: that of the pump less what its own
// leg takes at its own flow,
//
//	h = H(q) - loss of the leg(q),
//
// which falls as q grows, so that all that is said of two pumps at one head
// holds at the join.
type pairing struct {
	s    *search
	pump [2]int
	leg  int // among Problem.Legs; -1: joined by nothing
}

// legs are what a pair can be joined by.
func (s *search) legs() []int {
	if len(s.p.Legs) == 0 {
		return []int{-1}
	}
	all := make([]int, len(s.p.Legs))
	for i := range all {
		all[i] = i
	}
	return all
}

func (p *pairing) choice() *Choice {
	if p.leg < 0 {
		return &Choice{Bore: unit.Length(math.Inf(1))}
	}
	return &p.s.p.Legs[p.leg]
}

// lost is the head that a leg takes.
func (p *pairing) lost(q unit.Flow) unit.Head {
	if p.leg < 0 {
		return 0
	}
	return unit.Head(p.s.p.Legs[p.leg].loss(q))
}

// behind is the head at the join that one of the two gives at a flow.
func (p *pairing) behind(n int, q unit.Flow) unit.Head {
	h, _, _ := p.s.p.Pumps[p.pump[n]].Curve.Head(q)
	return h - p.lost(q)
}

// gives is the flow of one of the two at a head at the join, none above its
// shut-off: without a leg by the curve, with one by halving between none and
// what it would give without.
func (p *pairing) gives(n int, h unit.Head) unit.Flow {
	q, _ := p.s.p.Pumps[p.pump[n]].Curve.MostFlow(h)
	q = max(0, q)
	if p.leg < 0 || q == 0 || p.behind(n, q) >= h {
		return q
	}
	low, high := unit.Flow(0), q
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if p.behind(n, mid) >= h {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

func (p *pairing) together(h unit.Head) unit.Flow {
	if p.pump[0] == p.pump[1] {
		return 2 * p.gives(0, h)
	}
	return p.gives(0, h) + p.gives(1, h)
}

// low is the least head at the join at which neither runs beyond its curve.
func (p *pairing) low() unit.Head {
	low := unit.Head(math.Inf(-1))
	for n, i := range p.pump {
		low = max(low, p.behind(n, p.s.stands[i].end))
	}
	return low
}

// fast tells that the water in a leg goes faster than the limit.
func (p *pairing) fast(q unit.Flow) bool {
	return p.leg >= 0 && p.s.p.MostSpeed > 0 && hydro.Velocity(q, p.choice().Bore) > p.s.p.MostSpeed
}
