package verify

import "math"

const (
	grain  = 1e-6 // m or radians: two lengths or angles nearer than this are the same; a saw is a thousand times coarser
	sharp  = 1e-7 // m, to which a distance is sought
	near   = 1e-3 // m, below which the direction from point to point is too rough to part two solids
	rounds = 3000 // of the descent, at most; whatever it ends with is a bound
)

// disc is a flat round generator.
type disc struct {
	axis vec
	r    float64
}

// difference is the set of all vectors from a point of b to a point of a.
type difference struct {
	c    vec
	s    [8]vec
	n    int
	d    [2]disc
	m    int
	dirs [10]vec // directions of segments and axes, no two parallel
	k    int
}

func minus(a, b *body) difference {
	w := difference{c: a.c.minus(b.c)}
	for _, x := range [2]*body{a, b} {
		for _, s := range x.s[:x.n] {
			w.segment(s)
		}
		if x.r != 0 {
			w.d[w.m] = disc{x.axis, x.r}
			w.m++
			w.direction(x.axis)
		}
	}
	return w
}

// segment takes a segment in; parallel ones add up to one.
func (w *difference) segment(s vec) {
	for i := range w.s[:w.n] {
		if w.s[i].square(s) == (vec{}) {
			if w.s[i].along(s) < 0 {
				s = s.times(-1)
			}
			w.s[i] = w.s[i].plus(s)
			return
		}
	}
	w.s[w.n] = s
	w.n++
	if d, ok := s.one(); ok {
		w.direction(d)
	}
}

func (w *difference) direction(d vec) {
	for _, e := range w.dirs[:w.k] {
		if e.square(d).length() < 1e-9 {
			return
		}
	}
	w.dirs[w.k] = d
	w.k++
}

// bound gives the least n.x over the set, for n of length 1: where it is above
// zero, no point of the set lies nearer to the origin.
func (w *difference) bound(n vec) float64 {
	g := n.along(w.c)
	for i := range w.s[:w.n] {
		g -= math.Abs(n.along(w.s[i]))
	}
	for i := range w.d[:w.m] {
		g -= w.d[i].r * n.flat(w.d[i].axis).length()
	}
	return g
}

// best keeps the best bound and its direction.
type best struct {
	g float64
	n vec
}

// try holds a direction and its opposite against the set.
func (w *difference) try(b *best, n vec, ok bool) {
	if !ok {
		return
	}
	if n.along(w.c) < 0 {
		n = n.times(-1)
	}
	if g := w.bound(n); !(g <= b.g) {
		b.g, b.n = g, n
	}
}

// directions tries the directions in which flat and straight things part: the
// axes, their products two by two, from centre to centre, and that square to
// each axis (cylinders side by side).
func (w *difference) directions() best {
	b := best{g: math.Inf(-1)}
	try := func(n vec, ok bool) { w.try(&b, n, ok) }
	try(w.c.one())
	for i, d := range w.dirs[:w.k] {
		try(d, true)
		try(w.c.flat(d).one())
		for _, e := range w.dirs[:i] {
			try(d.square(e).one())
		}
	}
	return b
}

// descend seeks the point of the set nearest to the origin: each segment and
// each disc in turn takes the place that brings the sum nearest, the others
// held. It ends when the bound has come up to the point, when the point is the
// origin, or after the rounds.
func (w *difference) descend(b *best, rounds int) (high float64) {
	var t [8]float64
	var off [2]vec
	x := w.c
	for range rounds {
		for i := range w.s[:w.n] {
			s := w.s[i]
			x = x.at(s, -t[i])
			t[i] = min(1, max(-1, -x.along(s)/s.along(s)))
			x = x.at(s, t[i])
		}
		for i := range w.d[:w.m] {
			x = x.minus(off[i])
			p := x.flat(w.d[i].axis)
			k := 1.0
			if l := p.length(); l > w.d[i].r {
				k = w.d[i].r / l
			}
			off[i] = p.times(-k)
			x = x.plus(off[i])
		}
		high = x.length()
		if !(high > sharp) {
			return high
		}
		n, ok := x.one()
		w.try(b, n, ok)
		if !(high-b.g > sharp) {
			return high
		}
	}
	return high
}

// sharpen turns the direction a little at a time while the bound gets better.
func (w *difference) sharpen(b *best) {
	for step := 0.1; step > 1e-5; {
		had := b.g
		u, ok := noon(b.n).one()
		if !ok {
			return
		}
		v := b.n.square(u)
		for _, m := range [4]vec{b.n.at(u, step), b.n.at(u, -step), b.n.at(v, step), b.n.at(v, -step)} {
			n, ok := m.one()
			w.try(b, n, ok)
		}
		if !(b.g > had) {
			step /= 2
		}
	}
}

// smaller gives the set with every generator taken smaller by a share.
func (w *difference) smaller(share float64) difference {
	o := *w
	for i := range o.s[:o.n] {
		o.s[i] = o.s[i].times(1 - share)
	}
	for i := range o.d[:o.m] {
		o.d[i].r *= 1 - share
	}
	return o
}

// parting seeks the direction in which solids part that touch, or stand in each
// other a little: smaller ones do not touch, and the direction from one to the
// other is nearly that of the whole ones.
func (w *difference) parting(b *best) {
	for _, share := range [...]float64{1e-3, 1e-2, 0.1} {
		o := w.smaller(share)
		own := best{g: math.Inf(-1)}
		if high := o.descend(&own, rounds); high > sharp {
			w.try(b, own.n, true)
			return
		}
	}
}

// distance gives a bound of the distance between two bodies: never more than
// the true one; sharp to a tenth of a micrometre where it is below `want`, else
// at least `want`. Below zero they may stand in each other, by at most that much.
func distance(a, b *body, want float64) float64 {
	w := minus(a, b)
	found := w.directions()
	if found.g >= want {
		return found.g
	}
	if high := w.descend(&found, rounds); high-found.g > 2*sharp {
		if high < near {
			w.parting(&found)
		}
		w.sharpen(&found)
	}
	return found.g
}
