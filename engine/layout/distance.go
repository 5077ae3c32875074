package layout

import (
	"math"

	"plashet/engine/geom"
)

const (
	sharp    = 1e-8 // m, to which a distance is found
	maxSteps = 100  // of the distance iteration; it ends far earlier, and what it has is a proved bound at any step
)

// distance gives the distance between two convex solids, 0 when they meet. It
// is a lower bound proved by a separating plane, never more than the true
// distance. Once the bound reaches enough the search stops. Method: Gilbert,
// Johnson, Keerthi 1988: the nearest point to the origin of the difference of
// the two solids, by supports.
func distance(a, b *solid, enough float64) float64 {
	v := a.c.Sub(b.c)
	if v == (geom.Vec3{}) {
		return 0
	}
	var s simplex
	proved := 0.0
	for range maxSteps {
		w := a.support(v.Scale(-1)).Sub(b.support(v))
		n2 := v.Dot(v)
		n := math.Sqrt(n2)
		vw := v.Dot(w)
		// Every point of the difference lies beyond the plane through w square
		// to v: the plane's distance is a proved bound.
		if d := vw / n; d > proved {
			if proved = d; proved >= enough {
				return proved
			}
		}
		if s.n > 0 && n-proved <= sharp {
			return proved
		}
		if s.has(w) {
			return proved
		}
		s.add(w)
		var meets bool
		if v, meets = s.nearest(); meets || v.Dot(v) <= sharp*sharp {
			return proved
		}
	}
	return proved
}

// simplex holds one to four points of the difference.
type simplex struct {
	p [4]geom.Vec3
	n int
}

func (s *simplex) has(w geom.Vec3) bool {
	for _, p := range s.p[:s.n] {
		if p == w {
			return true
		}
	}
	return false
}

func (s *simplex) add(w geom.Vec3) {
	s.p[s.n] = w
	s.n++
}

func (s *simplex) set(ps ...geom.Vec3) { s.n = copy(s.p[:], ps) }

// nearest gives the simplex's point nearest to the origin and keeps only the
// corners that carry it; meets tells that the origin lies inside.
func (s *simplex) nearest() (v geom.Vec3, meets bool) {
	switch s.n {
	case 1:
		return s.p[0], false
	case 2:
		return s.onSegment(s.p[0], s.p[1]), false
	case 3:
		return s.onTriangle(s.p[0], s.p[1], s.p[2]), false
	}
	return s.inTetrahedron()
}

func (s *simplex) onSegment(a, b geom.Vec3) geom.Vec3 {
	ab := b.Sub(a)
	t := -a.Dot(ab)
	l := ab.Dot(ab)
	switch {
	case t <= 0 || l == 0:
		s.set(a)
		return a
	case t >= l:
		s.set(b)
		return b
	}
	s.set(a, b)
	return a.Add(ab.Scale(t / l))
}

// onTriangle follows the regions of a triangle: corners, edges, face. Source:
// C. Ericson, Real-Time Collision Detection (2005), section 5.1.5.
func (s *simplex) onTriangle(a, b, c geom.Vec3) geom.Vec3 {
	ab, ac := b.Sub(a), c.Sub(a)
	d1, d2 := -ab.Dot(a), -ac.Dot(a)
	if d1 <= 0 && d2 <= 0 {
		s.set(a)
		return a
	}
	d3, d4 := -ab.Dot(b), -ac.Dot(b)
	if d3 >= 0 && d4 <= d3 {
		s.set(b)
		return b
	}
	vc := d1*d4 - d3*d2
	if vc <= 0 && d1 >= 0 && d3 <= 0 {
		return s.onSegment(a, b)
	}
	d5, d6 := -ab.Dot(c), -ac.Dot(c)
	if d6 >= 0 && d5 <= d6 {
		s.set(c)
		return c
	}
	vb := d5*d2 - d1*d6
	if vb <= 0 && d2 >= 0 && d6 <= 0 {
		return s.onSegment(a, c)
	}
	va := d3*d6 - d5*d4
	if va <= 0 && d4-d3 >= 0 && d5-d6 >= 0 {
		return s.onSegment(b, c)
	}
	n := ab.Cross(ac)
	nn := n.Dot(n)
	if nn == 0 { // three points on a line: the edges decided above but for rounding
		return s.onSegment(a, b)
	}
	s.set(a, b, c)
	return n.Scale(n.Dot(a) / nn)
}

func (s *simplex) inTetrahedron() (geom.Vec3, bool) {
	a, b, c, d := s.p[0], s.p[1], s.p[2], s.p[3]
	faces := [4][4]geom.Vec3{{a, b, c, d}, {a, b, d, c}, {a, c, d, b}, {b, c, d, a}}
	var best geom.Vec3
	var keep simplex
	least, outside := math.Inf(1), false
	for _, f := range faces {
		n := f[1].Sub(f[0]).Cross(f[2].Sub(f[0]))
		side, own := -n.Dot(f[0]), n.Dot(f[3].Sub(f[0]))
		// A flat tetrahedron (own = 0) has no inside: each face is tried.
		if own != 0 && side*own >= 0 {
			continue
		}
		outside = true
		var t simplex
		if v := t.onTriangle(f[0], f[1], f[2]); v.Dot(v) < least {
			least, best, keep = v.Dot(v), v, t
		}
	}
	if !outside {
		return geom.Vec3{}, true
	}
	*s = keep
	return best, false
}

// depth gives how far two solids stand in each other: a move by that much
// along some direction parts them. It is an upper bound, sharp for boxes and
// parallel or square cylinders, found over the solids' own directions and then
// by descent.
func depth(a, b *solid) float64 {
	over := func(n geom.Vec3) float64 { return a.reach(n) + b.reach(n.Scale(-1)) }
	best, at := math.Inf(1), geom.Vec3{}
	try := func(n geom.Vec3) {
		if n = n.Unit(); !n.IsFinite() {
			return
		}
		for _, m := range [2]geom.Vec3{n, n.Scale(-1)} {
			if d := over(m); d < best {
				best, at = d, m
			}
		}
	}
	own := append(a.directions(), b.directions()...)
	for i, p := range own {
		try(p)
		for _, q := range own[:i] {
			try(p.Cross(q))
		}
	}
	between := a.c.Sub(b.c)
	try(between)
	for _, p := range own {
		try(between.Sub(p.Scale(between.Dot(p)))) // square to a cylinder's axis, towards the other
	}
	for step := 0.25; step > 1e-6; {
		before := best
		for _, p := range [3]geom.Vec3{{X: step}, {Y: step}, {Z: step}} {
			try(at.Add(p))
			try(at.Sub(p))
		}
		if best >= before {
			step /= 2
		}
	}
	return math.Max(0, best)
}

func (s *solid) directions() []geom.Vec3 {
	if s.isBlock {
		return []geom.Vec3{s.u.Unit(), s.v.Unit(), s.w.Unit()}
	}
	return []geom.Vec3{s.axis}
}
