package arrange

import (
	"math"

	"plashet/engine/geom"
)

// round adds the planes that touch a round wall where bodies stand through it.
func (b *branch) round(p *program) bool {
	any := false
	for i := range b.s.rounds {
		r := &b.s.rounds[i]
		if r.slid && b.out.without {
			continue
		}
		for k := range b.c.bodies {
			o := &b.c.bodies[k]
			w := wall{slid: r.slid}
			w.Wall = r.wall
			room, holds := b.s.room(o, &w)
			if !holds {
				continue
			}
			if n, at, out := b.touch(r, k, b.slid(r.slid), room); out > -room+1e-7 {
				w.N, w.B = n, at
				b.inside(p, o, &w, room)
				any = true
			}
		}
	}
	return any
}

// slid gives how far a body has been slid, at the end of the slide.
func (b *branch) slid(yes bool) geom.Vec3 {
	if !yes {
		return geom.Vec3{}
	}
	return b.out.u.Scale(b.x[b.c.vars-1])
}

// plane gives the plane that touches a round wall at an angle about its axis, by
// the angle's cosine and sine.
func (r *roundWall) plane(cos, sin float64) (n geom.Vec3, at float64) {
	f := 1 / math.Sqrt(1+r.K*r.K)
	return geom.Vec3{X: cos * f, Y: sin * f, Z: -r.K * f}, (r.R + r.X*cos + r.Y*sin) * f
}

// over gives how far a point stands out over a round wall at most, and the angle at
// which it does.
func (r *roundWall) over(p geom.Vec3) (out, x, y float64) {
	x, y = p.X-r.X, p.Y-r.Y
	return (math.Sqrt(x*x+y*y) - r.K*p.Z - r.R) / math.Sqrt(1+r.K*r.K), x, y
}

// clears tells that a round body keeps the room even by its whole radius from its ends.
func (r *roundWall) clears(o *body, ends [2]geom.Vec3, room float64) bool {
	a, _, _ := r.over(ends[0])
	b, _, _ := r.over(ends[1])
	return !o.block && max(a, b)+o.r <= -room
}

// brink is where the face of a round body comes nearest to a round wall, or a bound
// of it.
type brink struct {
	wide  float64   // from the wall's axis
	out   float64   // over the wall
	v     geom.Vec3 // which way, as cosine and sine
	exact bool
}

// brink gives that of the face about one end of a body. Seen from above the face is
// an ellipse that stays within the oblong round it. Of a level body it is the oblong's
// middle line, and reaches both corners; of an upright one it is a circle.
func (r *roundWall) brink(o *body, p geom.Vec3) (b brink) {
	x, y := p.X-r.X, p.Y-r.Y
	level := math.Sqrt(o.axis.X*o.axis.X + o.axis.Y*o.axis.Y)
	if level < 1e-6 {
		l := math.Sqrt(x*x + y*y)
		b = brink{wide: l + o.r, v: geom.Vec3{X: 1}, exact: true}
		if l > 0 {
			b.v = geom.Vec3{X: x / l, Y: y / l}
		}
	} else {
		h := geom.Vec3{X: o.axis.X / level, Y: o.axis.Y / level}
		along, across := x*h.X+y*h.Y, x*h.Y-y*h.X
		along += math.Copysign(o.r*math.Abs(o.axis.Z), along)
		across += math.Copysign(o.r, across)
		l := math.Sqrt(along*along + across*across)
		b = brink{wide: l, exact: r.K == 0 && math.Abs(o.axis.Z) < 1e-9}
		b.v = geom.Vec3{X: (along*h.X + across*h.Y) / l, Y: (along*h.Y - across*h.X) / l}
	}
	b.out = (b.wide + o.r*math.Abs(r.K)*level - r.K*p.Z - r.R) / math.Sqrt(1+r.K*r.K)
	return b
}

// touch gives the plane that touches a round wall nearest to where a body comes
// closest to it once it is moved, and how far the body stands out over it; without
// end below where it keeps the room in any case.
func (b *branch) touch(r *roundWall, k int, by geom.Vec3, room float64) (n geom.Vec3, at, out float64) {
	o := &b.c.bodies[k]
	p, q := b.ends[k][0].Add(by), b.ends[k][1].Add(by)
	if o.block { // it stands out farthest at a corner
		out = math.Inf(-1)
		var cos, sin float64
		for i := range 8 {
			c := p
			for j, h := range [3]geom.Vec3{o.u, o.v, o.w} {
				if i>>j&1 == 0 {
					h = h.Scale(-1)
				}
				c = c.Add(h)
			}
			if d, x, y := r.over(c); d > out {
				out, cos, sin = d, x, y
			}
		}
		l := math.Hypot(cos, sin)
		if l == 0 {
			cos, l = 1, 1
		}
		n, at = r.plane(cos/l, sin/l)
		return n, at, out
	}
	f, g := r.brink(o, p), r.brink(o, q)
	if g.out > f.out {
		f, g = g, f
	}
	switch {
	case f.out <= -room:
		return n, at, math.Inf(-1)
	case f.exact:
		n, at = r.plane(f.v.X, f.v.Y)
		return n, at, f.out
	}
	// From the best of a few angles it closes in by halves, to where what is left
	// makes no difference.
	tilt := 1 / math.Sqrt(1+r.K*r.K)
	over := func(v geom.Vec3) float64 {
		n := geom.Vec3{X: v.X * tilt, Y: v.Y * tilt, Z: -r.K * tilt}
		across := n.Dot(o.axis)
		return max(n.Dot(p), n.Dot(q)) + o.r*math.Sqrt(max(0, 1-across*across)) - (r.R+r.X*v.X+r.Y*v.Y)*tilt
	}
	best, v := math.Inf(-1), geom.Vec3{}
	for i := range rim.first {
		if d := over(rim.first[i]); d > best {
			best, v = d, rim.first[i]
		}
	}
	if best+max(f.wide, g.wide)*(1-rim.between) <= -room {
		return n, at, math.Inf(-1) // what reaches out farthest lies no farther off than half a step
	}
	for _, h := range rim.halves {
		for _, to := range [2]geom.Vec3{
			{X: v.X*h.X - v.Y*h.Y, Y: v.Y*h.X + v.X*h.Y},
			{X: v.X*h.X + v.Y*h.Y, Y: v.Y*h.X - v.X*h.Y},
		} {
			if d := over(to); d > best {
				best, v = d, to
			}
		}
	}
	n, at = r.plane(v.X, v.Y)
	return n, at, best
}

// rim are angles as cosine and sine: those at which a round wall is looked at
// first, and steps between them halved again and again.
var rim = func() (out struct {
	first   [32]geom.Vec3
	halves  [12]geom.Vec3
	between float64 // cosine of half a step between the first
},
) {
	const step = 2 * math.Pi / float64(len(out.first))
	out.between = math.Cos(step / 2)
	for i := range out.first {
		out.first[i].Y, out.first[i].X = math.Sincos(float64(i) * step)
	}
	for i := range out.halves {
		out.halves[i].Y, out.halves[i].X = math.Sincos(step / 2 / float64(int(1)<<i))
	}
	return out
}()
