package geom

import (
	"cmp"
	"math"
	"slices"
)

// span is an open range of a parameter.
type span struct{ lo, hi float64 }

// touchSlack guards tangencies: a chord is counted only where it is clearly
// longer than the rounding error that a circle just touching a line leaves
// (half chord over radius, squared).
const touchSlack = 1e-11

// side is an edge of a polygon with what is asked of it over and over.
type side struct {
	a, b, u Vec2 // ends and direction
	l       float64
}

func sides(p []Vec2) []side {
	out := make([]side, len(p))
	for i, a := range p {
		b := p[(i+1)%len(p)]
		u, l := direction(a, b)
		out[i] = side{a, b, u, l}
	}
	return out
}

// distance2 is the squared distance from v to the edge.
func (e *side) distance2(v Vec2) float64 {
	w := v.sub(e.a)
	t := w.dot(e.u)
	switch {
	case t <= 0:
		return w.dot(w)
	case t >= e.l:
		w = v.sub(e.b)
		return w.dot(w)
	}
	x := w.cross(e.u)
	return x * x
}

// reach tells at once, for a piece that stays within half of its middle, that
// an edge covers all of it (is nearer than d to every point) or none of it.
func (e *side) reach(middle Vec2, half, d float64) (all, none bool) {
	q := e.distance2(middle)
	if far := d + half; q >= far*far {
		return false, true
	}
	near := d - half
	return near > 0 && q < near*near*(1-touchSlack), false
}

// parallel gives the area of the points inside the simple polygon p (inside on
// the left) at least d from its edge, exactly but for rounding, past any number
// of events. The border of that set is made of pieces of the lines at d inside
// the edges and of the arcs of radius d round inward corners: those pieces from
// which no other edge is nearer than d. They are found edge by edge (where a
// line at d enters the stadium of radius d round another edge it is cut), and
// the area is summed over them by Green's theorem, which needs no order among
// them. Every surviving piece lies inside: the way of length d to it from its
// own edge crosses no other. Cost: the square of the number of corners.
func parallel(p []Vec2, d float64) float64 {
	if d <= 0 {
		return shoelace(p)
	}
	edges := sides(p)
	// Sums are taken about the middle so that they lose no digits far out.
	box := rectOf(p)
	o := box.Min.mid(box.Max)
	area := 0.0
	cut := make([]span, 0, 16)
	for i := range edges {
		area += edgeLine(edges, i, d, o, cut)
		if turn(p, i) < 0 {
			area += cornerArc(edges, i, -turn(p, i), d, o, cut)
		}
	}
	return max(0, area)
}

// edgeLine sums the line at d inside edge i. cut is room to work in.
func edgeLine(edges []side, i int, d float64, o Vec2, cut []span) float64 {
	e := &edges[i]
	from := e.a.add(e.u.left().scale(d))
	middle := from.add(e.u.scale(e.l / 2))
	for j := range edges {
		if j == i {
			continue
		}
		all, none := edges[j].reach(middle, e.l/2, d)
		if all {
			return 0
		}
		if none {
			continue
		}
		if s, hit := lineInStadium(from, e.u, e.l, &edges[j], d); hit {
			cut = append(cut, s)
		}
	}
	area := 0.0
	left(span{0, e.l}, cut, func(s span) {
		area += from.add(e.u.scale(s.lo)).sub(o).cross(from.add(e.u.scale(s.hi)).sub(o)) / 2
	})
	return area
}

// cornerArc sums the arc of radius d and angle theta round the inward corner
// where edge i begins, clockwise from the normal of the edge that ends there to
// that of edge i.
func cornerArc(edges []side, i int, theta, d float64, o Vec2, cut []span) float64 {
	n := len(edges)
	v := edges[i].a
	nrm := edges[(i+n-1)%n].u.left()
	start := math.Atan2(nrm.Y, nrm.X)
	s, co := math.Sincos(start - theta/2)
	middle := v.add(Vec2{co * d, s * d})
	// The arc is walked with a parameter from 0 to theta, the direction being
	// start - parameter.
	for j := range edges {
		if j == i || j == (i+n-1)%n {
			continue
		}
		all, none := edges[j].reach(middle, d*theta/2, d)
		if all {
			return 0
		}
		if !none {
			cut = arcInStadium(cut, v, start, theta, &edges[j], d)
		}
	}
	area := 0.0
	c := v.sub(o)
	left(span{0, theta}, cut, func(s span) {
		s1, c1 := math.Sincos(start - s.lo)
		s2, c2 := math.Sincos(start - s.hi)
		area += (d*d*(s.lo-s.hi) + c.X*d*(s2-s1) - c.Y*d*(c2-c1)) / 2
	})
	return area
}

// lineInStadium gives the part of the line from + t u, 0 <= t <= l, that lies
// nearer than d to the edge e. The set within d of a segment is convex, so that
// part is one range.
func lineInStadium(from, u Vec2, l float64, e *side, d float64) (span, bool) {
	s := span{math.Inf(1), math.Inf(-1)}
	for _, q := range [...]Vec2{e.a, e.b} {
		w := q.sub(from)
		t, off := w.dot(u), w.cross(u)
		if h2 := d*d - off*off; h2 > touchSlack*d*d {
			h := math.Sqrt(h2)
			s.lo, s.hi = min(s.lo, t-h), max(s.hi, t+h)
		}
	}
	// The rectangle between: 0 < along < length and |across| < d.
	w := from.sub(e.a)
	r := span{math.Inf(-1), math.Inf(1)}
	if clip(&r, w.dot(e.u), u.dot(e.u), 0, e.l) && clip(&r, e.u.cross(w), e.u.cross(u), -d, d) && r.hi > r.lo {
		s.lo, s.hi = min(s.lo, r.lo), max(s.hi, r.hi)
	}
	s.lo, s.hi = max(s.lo, 0), min(s.hi, l)
	return s, s.hi > s.lo
}

// clip narrows r to where lo < x + t k < hi; false when that is nowhere. A line
// that runs along the bound itself is outside.
func clip(r *span, x, k, lo, hi float64) bool {
	slack := touchSlack * (hi - lo)
	if math.Abs(k) < 1e-14 {
		return x > lo+slack && x < hi-slack
	}
	t1, t2 := (lo-x)/k, (hi-x)/k
	r.lo, r.hi = max(r.lo, min(t1, t2)), min(r.hi, max(t1, t2))
	return r.hi > r.lo
}

// arcInStadium appends the parts of the arc (centre v, radius d, directions
// start - t for 0 <= t <= theta) that lie nearer than d to the edge e. The
// arc is cut at every direction where it crosses the stadium's border, and each
// part judged at its middle.
func arcInStadium(cut []span, v Vec2, start, theta float64, e *side, d float64) []span {
	var room [12]float64
	at := append(room[:0], 0, theta)
	add := func(phi float64) {
		if t := math.Mod(start-phi, 2*math.Pi); t > 0 && t < theta {
			at = append(at, t)
		} else if t += 2 * math.Pi; t > 0 && t < theta {
			at = append(at, t)
		}
	}
	for _, q := range [...]Vec2{e.a, e.b} {
		w := q.sub(v)
		if r := w.norm(); r > 0 && r < 2*d {
			phi, h := math.Atan2(w.Y, w.X), math.Acos(r/(2*d))
			add(phi - h)
			add(phi + h)
		}
	}
	nrm := e.u.left()
	off := v.sub(e.a).dot(nrm)
	base := math.Atan2(nrm.Y, nrm.X)
	for _, bound := range [...]float64{-d, d} {
		if x := (bound - off) / d; math.Abs(x) < 1 {
			h := math.Acos(x)
			add(base - h)
			add(base + h)
		}
	}
	slices.Sort(at)
	for k := 1; k < len(at); k++ {
		mid := start - (at[k-1]+at[k])/2
		s, co := math.Sincos(mid)
		q := v.add(Vec2{co * d, s * d})
		if e.distance2(q) < d*d*(1-touchSlack) {
			cut = append(cut, span{at[k-1], at[k]})
		}
	}
	return cut
}

// left calls with the parts of whole that no range of cut covers.
func left(whole span, cut []span, call func(span)) {
	slices.SortFunc(cut, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	at := whole.lo
	for _, c := range cut {
		if c.lo > at {
			call(span{at, min(c.lo, whole.hi)})
		}
		at = max(at, c.hi)
		if at >= whole.hi {
			return
		}
	}
	call(span{at, whole.hi})
}
