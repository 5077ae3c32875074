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
	proved, first := 0.0, true
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
		if !first && n-proved <= sharp {
			return proved
		}
		if s.has(w) {
			return proved
		}
		s.add(w)
		next, meets := s.nearest()
		if meets || next.Dot(next) <= sharp*sharp || !first && next.Dot(next) >= n2 {
			return proved
		}
		v, first = next, false
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

// faces lists, for a simplex of n+1 points, the corners, edges and triangles
// that its newest point carries. The others were looked at before it came.
var faces = [4][][]int{
	{{0}},
	{{1}, {0, 1}},
	{{2}, {0, 2}, {1, 2}, {0, 1, 2}},
	{{3}, {0, 3}, {1, 3}, {2, 3}, {0, 1, 3}, {0, 2, 3}, {1, 2, 3}},
}

// nearest gives the simplex's point nearest to the origin and keeps only the
// corners that carry it; meets tells that the origin lies inside. It tries
// every face and takes the best: what it finds is then a point of the simplex
// whatever the rounding, which choosing by the signs of volumes does not give
// for thin simplices.
func (s *simplex) nearest() (v geom.Vec3, meets bool) {
	if s.n == 4 && s.holdsOrigin() {
		return geom.Vec3{}, true
	}
	least := math.Inf(1)
	var keep []int
	for _, f := range faces[s.n-1] {
		if p, ok := s.foot(f); ok {
			if d := p.Dot(p); d < least {
				least, v, keep = d, p, f
			}
		}
	}
	for i, k := range keep {
		s.p[i] = s.p[k]
	}
	s.n = len(keep)
	return v, false
}

// foot gives the point of the line or plane through a face's points that is
// nearest to the origin, if it lies on the face.
func (s *simplex) foot(f []int) (geom.Vec3, bool) {
	a := s.p[f[0]]
	switch len(f) {
	case 1:
		return a, true
	case 2:
		ab := s.p[f[1]].Sub(a)
		t, l := -a.Dot(ab), ab.Dot(ab)
		if t < 0 || t > l || l == 0 {
			return a, false
		}
		return a.Add(ab.Scale(t / l)), true
	}
	ab, ac := s.p[f[1]].Sub(a), s.p[f[2]].Sub(a)
	bb, bc, cc := ab.Dot(ab), ab.Dot(ac), ac.Dot(ac)
	b, c := -a.Dot(ab), -a.Dot(ac)
	det := bb*cc - bc*bc
	if det <= 0 {
		return a, false
	}
	u, w := (b*cc-c*bc)/det, (c*bb-b*bc)/det
	if u < 0 || w < 0 || u+w > 1 {
		return a, false
	}
	return a.Add(ab.Scale(u)).Add(ac.Scale(w)), true
}

// holdsOrigin tells that the tetrahedron has the origin inside: on the inner
// side of each face.
func (s *simplex) holdsOrigin() bool {
	for i := range 4 {
		a, b, c, d := s.p[i], s.p[(i+1)%4], s.p[(i+2)%4], s.p[(i+3)%4]
		n := b.Sub(a).Cross(c.Sub(a))
		if own := n.Dot(d.Sub(a)); own == 0 || -n.Dot(a)*own < 0 {
			return false
		}
	}
	return true
}
