package layout

import (
	"math"

	"plashet/engine/geom"
)

// plane is one flat bound of the inside: n.x <= b, n of length 1.
type plane struct {
	wall Wall
	n    geom.Vec3
	b    float64
}

// cone is the wall of a round vault: radius r at z = 0, growing by k per metre
// of height, about an upright axis.
type cone struct{ cx, cy, r, k float64 }

// interior is the inside of a vault as bounds.
type interior struct {
	planes []plane
	round  *cone
	depth  float64
}

func (v Vault) interior() interior {
	d := float64(v.Depth)
	in := interior{depth: d, planes: []plane{
		{Floor, geom.Vec3{Z: -1}, 0},
		{Lid, geom.Vec3{Z: 1}, d},
	}}
	sx, sy := v.slopes()
	if v.Round {
		r := float64(v.Length) / 2
		in.round = &cone{cx: r, cy: r, r: r - sx*d, k: sx}
		return in
	}
	add := func(w Wall, dir geom.Vec3, slope, at float64) {
		// The wall stands at `at` on the rim and in by slope for each metre
		// below it: dir.x + slope*(d - z) <= at.
		n := dir.Sub(geom.Vec3{Z: slope})
		f := 1 / n.Norm()
		in.planes = append(in.planes, plane{w, n.Scale(f), (at - slope*d) * f})
	}
	add(Left, geom.Vec3{X: -1}, sx, 0)
	add(Right, geom.Vec3{X: 1}, sx, float64(v.Length))
	add(Front, geom.Vec3{Y: -1}, sy, 0)
	add(Back, geom.Vec3{Y: 1}, sy, float64(v.Width))
	return in
}

// room gives the least distance of a solid to the bounds (negative: it stands
// out by that much) and to which.
func (in interior) room(s solid) (float64, Wall) {
	least, wall := math.Inf(1), Wall("")
	for _, p := range in.planes {
		if d := p.b - s.reach(p.n); d < least {
			least, wall = d, p.wall
		}
	}
	if in.round != nil {
		if d := in.round.room(s); d < least {
			least, wall = d, Round
		}
	}
	return least, wall
}

// room gives the least distance of a solid to the wall, never more than the
// true one and less by at most a micrometre. The distance from the axis less
// the wall's slope, |x - centre| - k z in plan, is convex: it is largest on a
// block's corner or a cylinder's rim.
func (c *cone) room(s solid) float64 {
	s = s.shift(geom.Vec3{X: -c.cx, Y: -c.cy})
	var top float64
	switch {
	case s.isBlock:
		top = c.corners(&s)
	case upright(s.axis) && math.Abs(s.axis.Z) == 1:
		// Both rims are level circles.
		lo, hi := s.c.Sub(s.w), s.c.Add(s.w)
		top = s.r + math.Max(math.Hypot(lo.X, lo.Y)-c.k*lo.Z, math.Hypot(hi.X, hi.Y)-c.k*hi.Z)
	default:
		top = c.slanted(&s)
	}
	return (c.r - top) / math.Sqrt(1+c.k*c.k)
}

func (c *cone) corners(s *solid) float64 {
	top := math.Inf(-1)
	for i := range 8 {
		p := s.c
		for k, h := range [3]geom.Vec3{s.u, s.v, s.w} {
			if i>>k&1 == 0 {
				h = h.Scale(-1)
			}
			p = p.Add(h)
		}
		top = math.Max(top, math.Hypot(p.X, p.Y)-c.k*p.Z)
	}
	return top
}

// slanted seeks a cylinder's farthest point by the direction in plan: over all
// directions u the largest of max{u.x - k z}. Where that is largest, u points
// at the farthest point p itself, so a direction w radians off falls short by
// at most |p|(1 - cos w): intervals that cannot hold the largest are dropped,
// the rest are halved.
func (c *cone) slanted(s *solid) float64 {
	far := math.Hypot(math.Max(s.reach(geom.Vec3{X: 1}), s.reach(geom.Vec3{X: -1})),
		math.Max(s.reach(geom.Vec3{Y: 1}), s.reach(geom.Vec3{Y: -1})))
	at := func(u float64) float64 {
		sin, cos := math.Sincos(u)
		return s.reach(geom.Vec3{X: cos, Y: sin, Z: -c.k})
	}
	const (
		pieces = 16
		sharp  = 1e-6 // m
	)
	type arc struct{ mid, half, bound float64 }
	var store [8 * pieces]arc
	open := store[:0]
	best := math.Inf(-1)
	for i := range pieces {
		mid := (float64(i) + 0.5) * 2 * math.Pi / pieces
		h := at(mid)
		best = math.Max(best, h)
		open = append(open, arc{mid, math.Pi / pieces, h + far*(1-math.Cos(math.Pi/pieces))})
	}
	top := best
	for len(open) > 0 {
		a := open[len(open)-1]
		open = open[:len(open)-1]
		if a.bound <= best+sharp || a.half < 1e-6 {
			top = math.Max(top, a.bound)
			continue
		}
		for _, m := range [2]float64{a.mid - a.half/2, a.mid + a.half/2} {
			h := at(m)
			best = math.Max(best, h)
			open = append(open, arc{m, a.half / 2, h + far*(1-math.Cos(a.half/2))})
		}
	}
	return math.Max(best, top)
}

// rim gives the way out of the vault: the bounds of its plan at the lid.
func (v Vault) rim() interior {
	out := interior{}
	if v.Round {
		r := float64(v.Length) / 2
		out.round = &cone{cx: r, cy: r, r: r}
	}
	o := v.Opening
	if o == (Opening{}) {
		if v.Round {
			return out
		}
		o = Opening{ToX: v.Length, ToY: v.Width}
	}
	out.planes = []plane{
		{Left, geom.Vec3{X: -1}, -float64(o.FromX)},
		{Right, geom.Vec3{X: 1}, float64(o.ToX)},
		{Front, geom.Vec3{Y: -1}, -float64(o.FromY)},
		{Back, geom.Vec3{Y: 1}, float64(o.ToY)},
	}
	return out
}
