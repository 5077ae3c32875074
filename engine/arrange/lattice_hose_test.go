package arrange_test

import (
	"math"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// hoses lets the first turn of a lattice's chain be a hose: bent by 45, 90 or 135
// degrees at every roll of 45.
func (l *lattice) hoses(so []layout.Laid, ways []geom.Vec3) {
	if l.i.Hose == nil || len(so) > 0 {
		return
	}
	way := ways[0]
	for _, turn := range []unit.Angle{45 * unit.Degree, 90 * unit.Degree, 135 * unit.Degree} {
		p := l.i.Hose.Part
		p.Curve.Turn = turn
		for eighth := range 8 {
			roll, side := aside(way, eighth)
			s, c := math.Sincos(float64(turn))
			out := way.Scale(c).Add(side.Scale(s)).Unit()
			l.elbows([]layout.Laid{{Part: p, Roll: roll}}, []geom.Vec3{way, out})
		}
	}
}

// atHose tells that a joint has a hose before or behind it.
func atHose(parts []layout.Laid, k int) bool {
	return parts[k].Kind == layout.Hose || parts[k+1].Kind == layout.Hose
}

// seated lets the ends of a hose go into the sockets on both sides, an end of the
// least length straight beyond them: by plane geometry R tan(turn/2) from where its
// axes meet to where its bend begins.
func seated(parts []layout.Laid) {
	for k := range parts {
		p := &parts[k]
		if p.Kind != layout.Hose {
			continue
		}
		leg := p.Curve.Radius*unit.Length(math.Tan(float64(p.Curve.Turn)/2)) + p.Curve.Straight
		in, out := parts[k-1].Out.Depth.Length, parts[k+1].In.Depth.Length
		p.In, p.Out = layout.HoseEnd(leg+in, in, p.In.Hub), layout.HoseEnd(leg+out, out, p.Out.Hub)
	}
}

// stretched gives the parts with the hose's end at a joint longer.
func stretched(parts []layout.Laid, k int, by float64) []layout.Laid {
	parts = append([]layout.Laid(nil), parts...)
	if parts[k].Kind == layout.Hose {
		parts[k].Out.TakeOff.Length += unit.Length(by)
	} else {
		parts[k+1].In.TakeOff.Length += unit.Length(by)
	}
	return parts
}

// The search with a hose against a lattice of chains whose first turn may be one:
// nothing laid and proved there is better than what the search gives.
func TestHoseAgainstLattice(t *testing.T) {
	t.Parallel()
	small := func(t testing.TB, book *catalog.Book, seed uint64) arrange.Input {
		return withHose(smallVault(t, book, 5000+seed), 3.5)
	}
	againstLattice(t, 1, func(t testing.TB, book *catalog.Book, _ uint64) arrange.Input {
		return small(t, book, 99) // the hose goes deeper into the valve's socket than into the elbow's
	}, covered)
	if n := againstLattice(t, ifFar(12, 200), small, covered); n.hoses == 0 || n.hosed == 0 {
		t.Error("no chain with a hose was compared")
	}
}
