package layout

import (
	"math"

	"plashet/engine/geom"
)

// depth gives how far two solids stand in each other: a moved by that much
// along the direction given is parted from b, and no direction needs less by
// more than a hundredth of a millimetre and half a per cent.
//
// It is the least of h(n), the reach of the two solids' difference along n,
// over all directions. For a triangle of directions with corners n1, n2, n3 and
// any point x of the difference, h(n) >= x.n >= min x.ni; triangles that cannot
// hold less than the best found are dropped, the rest are cut in four. The
// point x is the farthest one along the triangle's middle.
func depth(a, b *solid) (float64, geom.Vec3) {
	best, at := math.Inf(1), geom.Vec3{}
	try := func(n geom.Vec3) {
		if d := a.reach(n) + b.reach(n.Scale(-1)); d < best {
			best, at = d, n
		}
	}
	between := a.c.Sub(b.c)
	for _, s := range [2]*solid{a, b} {
		for _, n := range s.directions() {
			try(n)
			try(n.Scale(-1))
			// Square to the axis, from one to the other: sharp for parallel cylinders.
			if side := n.Cross(between).Cross(n); side.Dot(side) > 0 {
				try(side.Unit().Scale(-1))
			}
		}
	}
	type triangle struct {
		n   [3]geom.Vec3
		low float64
	}
	bound := func(n [3]geom.Vec3, low float64) triangle {
		mid := n[0].Add(n[1]).Add(n[2]).Unit()
		try(mid)
		x := a.support(mid).Sub(b.support(mid.Scale(-1)))
		return triangle{n, math.Max(low, math.Min(x.Dot(n[0]), math.Min(x.Dot(n[1]), x.Dot(n[2]))))}
	}
	var open []triangle
	for i := range 8 { // the faces of an octahedron
		sign := func(bit int) float64 { return float64(1 - i>>bit&1*2) }
		n := [3]geom.Vec3{{X: sign(0)}, {Y: sign(1)}, {Z: sign(2)}}
		for _, v := range n {
			try(v)
		}
		open = append(open, bound(n, math.Inf(-1)))
	}
	const least = 1e-3 // radians: smaller triangles are not cut again
	for len(open) > 0 {
		t := open[len(open)-1]
		open = open[:len(open)-1]
		if t.low >= best-1e-5-0.005*best || t.n[0].Sub(t.n[1]).Norm() < least {
			continue
		}
		p, q, r := t.n[0].Add(t.n[1]).Unit(), t.n[1].Add(t.n[2]).Unit(), t.n[2].Add(t.n[0]).Unit()
		for _, n := range [4][3]geom.Vec3{{t.n[0], p, r}, {p, t.n[1], q}, {r, q, t.n[2]}, {p, q, r}} {
			open = append(open, bound(n, t.low))
		}
	}
	return math.Max(0, best), at.Scale(-1)
}

func (s *solid) directions() []geom.Vec3 {
	if s.isBlock {
		return []geom.Vec3{s.u.Unit(), s.v.Unit(), s.w.Unit()}
	}
	return []geom.Vec3{s.axis}
}
