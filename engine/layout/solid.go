package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// Cylinder is a round solid with flat ends square to its axis.
type Cylinder struct {
	From, To geom.Vec3 // centres of its ends
	Radius   unit.Length
}

// Block is a box that may stand turned: its centre and the vectors from there
// to the middles of three faces, square to each other.
type Block struct{ Centre, U, V, W geom.Vec3 }

// solid is a cylinder or a block, perhaps drawn out along a line, as the
// distance tests want it: by its support.
type solid struct {
	c       geom.Vec3 // centre
	w       geom.Vec3 // half the axis of a cylinder, or of a block one of three
	u, v    geom.Vec3 // of a block
	axis    geom.Vec3 // of a cylinder, length 1
	r       float64   // of a cylinder
	sweep   geom.Vec3 // the solid is drawn out from where it is by this
	isBlock bool
}

func solidOf(c Cylinder) solid {
	w := c.To.Sub(c.From).Scale(0.5)
	axis := w.Unit()
	if !axis.IsFinite() { // a disc without thickness: any axis encloses nothing more
		axis = geom.Vec3{Z: 1}
	}
	return solid{c: c.From.Add(c.To).Scale(0.5), w: w, axis: axis, r: float64(c.Radius)}
}

func blockOf(b Block) solid {
	return solid{c: b.Centre, u: b.U, v: b.V, w: b.W, isBlock: true}
}

func boxOf(b geom.Box) solid {
	h := b.Size().Scale(0.5)
	return solid{c: b.Centre(), u: geom.Vec3{X: h.X}, v: geom.Vec3{Y: h.Y}, w: geom.Vec3{Z: h.Z}, isBlock: true}
}

func (s solid) shift(v geom.Vec3) solid {
	s.c = s.c.Add(v)
	return s
}

// drawn gives the room the solid takes on its way along v: exactly, because a
// convex solid drawn along a line is convex.
func (s solid) drawn(v geom.Vec3) solid {
	s.sweep = v
	return s
}

// shrunk gives the solid with every face moved in by d.
func (s solid) shrunk(d float64) solid {
	in := func(h geom.Vec3) geom.Vec3 {
		n := h.Norm()
		if n <= d {
			return geom.Vec3{}
		}
		return h.Scale(1 - d/n)
	}
	s.u, s.v, s.w = in(s.u), in(s.v), in(s.w)
	s.r = math.Max(0, s.r-d)
	return s
}

// support gives the point of the solid that lies farthest in direction d.
func (s *solid) support(d geom.Vec3) geom.Vec3 {
	p := s.c
	if s.isBlock {
		p = toward(toward(toward(p, s.u, d), s.v, d), s.w, d)
	} else {
		p = toward(p, s.w, d)
		// What of d lies square to the axis, by products and not by taking the
		// rest away: near the axis' own direction that would lose all digits.
		q := s.axis.Cross(d).Cross(s.axis)
		if n := math.Sqrt(q.Dot(q)); n > 0 {
			p = p.Add(q.Scale(s.r / n))
		}
	}
	if d.Dot(s.sweep) > 0 {
		p = p.Add(s.sweep)
	}
	return p
}

// toward adds h or -h to p, whichever leads along d.
func toward(p, h, d geom.Vec3) geom.Vec3 {
	if d.Dot(h) < 0 {
		return p.Sub(h)
	}
	return p.Add(h)
}

// reach gives the largest n.x over the solid's points x; n need not have
// length 1. For a cylinder n.c + |n.w| + r |n x axis|.
func (s *solid) reach(n geom.Vec3) float64 {
	h := n.Dot(s.c) + math.Abs(n.Dot(s.w)) + math.Max(0, n.Dot(s.sweep))
	if s.isBlock {
		return h + math.Abs(n.Dot(s.u)) + math.Abs(n.Dot(s.v))
	}
	q := n.Cross(s.axis)
	return h + s.r*math.Sqrt(q.Dot(q))
}

// bounds gives the box round the solid.
func (s *solid) bounds() geom.Box {
	x, y, z := geom.Vec3{X: 1}, geom.Vec3{Y: 1}, geom.Vec3{Z: 1}
	return geom.Box{
		Min: geom.Vec3{X: -s.reach(x.Scale(-1)), Y: -s.reach(y.Scale(-1)), Z: -s.reach(z.Scale(-1))},
		Max: geom.Vec3{X: s.reach(x), Y: s.reach(y), Z: s.reach(z)},
	}
}

// apart gives a lower bound of the distance between two boxes.
func apart(a, b geom.Box) float64 {
	dx := math.Max(0, math.Max(a.Min.X-b.Max.X, b.Min.X-a.Max.X))
	dy := math.Max(0, math.Max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
	dz := math.Max(0, math.Max(a.Min.Z-b.Max.Z, b.Min.Z-a.Max.Z))
	return math.Sqrt(dx*dx + dy*dy + dz*dz)
}
