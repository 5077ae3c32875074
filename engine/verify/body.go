package verify

import (
	"math"

	"plashet/engine/layout"
)

// body is a convex solid: all points c + t1 s1 + t2 s2 + ... + d with each t
// from -1 to 1 and d in the disc of radius r square to the axis. A block has
// three segments, a cylinder one and the disc; moving it along a line adds one.
type body struct {
	c    vec
	s    [4]vec
	n    int // segments in use
	axis vec
	r    float64
}

func (b *body) stretch(h vec) {
	if h != (vec{}) {
		b.s[b.n] = h
		b.n++
	}
}

func cylinder(a, e vec, r float64) body {
	half := e.minus(a).times(0.5)
	b := body{c: a.plus(half), axis: vec{z: 1}, r: r}
	if n, ok := half.one(); ok {
		b.axis = n
	}
	b.stretch(half)
	return b
}

func block(lo, hi vec) body {
	h := hi.minus(lo).times(0.5)
	b := body{c: lo.plus(h)}
	b.stretch(vec{x: h.x})
	b.stretch(vec{y: h.y})
	b.stretch(vec{z: h.z})
	return b
}

func round(c layout.Cylinder) body { return cylinder(from(c.From), from(c.To), float64(c.Radius)) }

// moved gives the body elsewhere.
func (b body) moved(v vec) body {
	b.c = b.c.plus(v)
	return b
}

// swept gives all the room the body takes while it moves along v: exactly,
// because the room of a convex solid along a line is convex.
func (b body) swept(v vec) body {
	b.c = b.c.at(v, 0.5)
	b.stretch(v.times(0.5))
	return b
}

// spun gives the body turned about the upright through the origin.
func (b body) spun(angle float64) body {
	b.c, b.axis = b.c.spun(angle), b.axis.spun(angle)
	for i := range b.s {
		b.s[i] = b.s[i].spun(angle)
	}
	return b
}

// most gives the largest n.x over the body's points.
func (b *body) most(n vec) float64 {
	m := n.along(b.c)
	for _, s := range b.s[:b.n] {
		m += math.Abs(n.along(s))
	}
	if b.r != 0 {
		m += b.r * n.flat(b.axis).length()
	}
	return m
}

// span is the box round something, sides along the frame.
type span struct{ lo, hi vec }

func (b *body) span() span {
	return span{
		vec{-b.most(vec{x: -1}), -b.most(vec{y: -1}), -b.most(vec{z: -1})},
		vec{b.most(vec{x: 1}), b.most(vec{y: 1}), b.most(vec{z: 1})},
	}
}

// apart gives a bound of the distance of what two boxes hold; NaN for NaN.
func (a span) apart(b span) float64 {
	gap := func(al, ah, bl, bh float64) float64 { return max(0, bl-ah, al-bh) }
	return vec{
		gap(a.lo.x, a.hi.x, b.lo.x, b.hi.x),
		gap(a.lo.y, a.hi.y, b.lo.y, b.hi.y),
		gap(a.lo.z, a.hi.z, b.lo.z, b.hi.z),
	}.length()
}
