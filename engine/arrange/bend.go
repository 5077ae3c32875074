package arrange

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// ShortestHose gives how long a hose of a turn is at least, with what goes into the
// sockets at its ends, the shallowest on offer: its arc and what stays straight. 0
// where there is no hose.
func (in *Input) ShortestHose(turn unit.Angle) unit.Length {
	if in.Hose == nil {
		return 0
	}
	p := &in.Hose.Part
	depth := unit.Length(math.Inf(1))
	for i := range in.Fittings {
		q := &in.Fittings[i].Part
		for _, e := range [...]*layout.End{&q.In, &q.Out} {
			if e.Kind == layout.Socket && size(*e, *q) == size(p.In, *p) {
				depth = min(depth, e.Depth.Length)
			}
		}
	}
	if math.IsInf(float64(depth), 1) {
		depth = 0
	}
	c := p.Curve
	c.Turn = turn
	return c.Arc() + 2*c.Straight + 2*depth
}

// leastTurn gives the least turn that a hose could take from the pump as it may
// stand, however long it may be; 0 where there is no hose.
func (s *search) leastTurn() unit.Angle {
	least := unit.Angle(0)
	if s.in.Hose == nil {
		return least
	}
	for _, c := range s.ways {
		for to := range c.dirs {
			if t := c.between(c.start, to); bendable(t) && (least == 0 || t < least) {
				least = t
			}
		}
	}
	return least
}
