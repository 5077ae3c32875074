package arrange

import (
	"math"
	"slices"

	"plashet/engine/geom"
)

// A net is the sphere of all directions cut into triangles whose corners are
// directions across which planes are looked for. It tells how much the list of
// these may lose.
//
// Two convex bodies that keep a distance are kept apart by a plane across some
// direction n, with that much room between, wherever they stand. n lies in one of
// the triangles, so that it is a sum of its corners n1, n2, n3, none taken less
// than no times. No corner changes sides along an axis or an edge of the bodies
// within the triangle (see cut), so that the same two ends a and b of them are the
// nearest to each other across n and across the three. What is round about them,
// with the room, reaches
//
//	F(n) = room |n| + r_p |n square to p's axis| + r_q |n square to q's axis|
//
// beyond these ends, and F(n) >= n.g for the point g that it reaches farthest to
// across any one direction within the triangle, because F is the support of a
// convex body. So n.(b-a) >= F(n) >= n.g, and of a sum that is not below none
// neither are all its terms: across one corner at least (b-a).n_k >= n_k.g. Rows
// that ask for no more than that, F(n_k) less the loss F(n_k) - n_k.g, leave out
// nothing that the exact distance lets pass.

// cell is a triangle of a net, by the numbers of its corners.
type cell [3]int

// onCircle is how far off a great circle a direction counts as on it.
const onCircle = 1e-9

// astray is by how much a corner may lie off a circle that it is meant to lie on:
// over a metre that makes a micrometre, less than the pad.
const astray = 1e-6

// normal gives the number of a direction among those that planes may lie across;
// it is added where it is none yet.
func (c *compass) normal(d geom.Vec3) int {
	d = square(d.Unit())
	for i, o := range c.apart {
		if o.Dot(d) > 1-1e-14 && o.Sub(d).Norm() < onCircle {
			return i
		}
	}
	c.apart = append(c.apart, d)
	return len(c.apart) - 1
}

// weave makes the net: the eight triangles between the axes, cut along the circle
// square to each direction, then at what is listed besides.
func (c *compass) weave(dirs []geom.Vec3) {
	c.cells = nil
	x, y, z := geom.Vec3{X: 1}, geom.Vec3{Y: 1}, geom.Vec3{Z: 1}
	for i := range 8 {
		k := cell{c.normal(x), c.normal(y), c.normal(z)}
		for j, d := range [3]geom.Vec3{x, y, z} {
			if i>>j&1 == 1 {
				k[j] = c.normal(d.Scale(-1))
			}
		}
		c.cells = append(c.cells, k)
	}
	for _, d := range dirs {
		c.cut(d)
	}
	for i := range c.apart {
		c.knot(i)
	}
	c.mirror()
}

// mirror sets an opposite beside each normal.
func (c *compass) mirror() {
	for i := range c.apart {
		c.normal(c.apart[i].Scale(-1))
	}
}

// halved gives the compass with a net of triangles half as wide.
func (c *compass) halved() *compass {
	out := &compass{
		dirs: c.dirs, by90: c.by90, by45: c.by45, start: c.start, goal: c.goal, pre: c.pre, post: c.post, pump: c.pump,
		apart: c.apart[:len(c.apart):len(c.apart)], coarser: c,
	}
	middles := map[[2]int]int{}
	middle := func(i, k int) int {
		key := [2]int{min(i, k), max(i, k)}
		n, ok := middles[key]
		if !ok {
			n = len(out.apart)
			out.apart = append(out.apart, square(c.apart[i].Add(c.apart[k]).Unit()))
			middles[key] = n
		}
		return n
	}
	for _, k := range c.cells {
		a, b, m := middle(k[1], k[2]), middle(k[2], k[0]), middle(k[0], k[1])
		out.cells = append(out.cells, cell{k[0], m, b}, cell{m, k[1], a}, cell{b, a, k[2]}, cell{m, a, b})
	}
	out.mirror()
	return out
}

// cut cuts the triangles that lie on both sides of the circle square to a
// direction.
func (c *compass) cut(d geom.Vec3) {
	d = d.Unit()
	side := func(n int) float64 {
		if s := c.apart[n].Dot(d); math.Abs(s) > onCircle {
			return s
		}
		return 0
	}
	var out []cell
	for _, k := range c.cells {
		s := [3]float64{side(k[0]), side(k[1]), side(k[2])}
		for range 2 { // one corner alone on its side, or on the circle, comes first
			if s[0]*s[1] < 0 && s[0]*s[2] < 0 || s[0] == 0 && s[1]*s[2] < 0 {
				break
			}
			k, s = cell{k[1], k[2], k[0]}, [3]float64{s[1], s[2], s[0]}
		}
		meet := func(i, j int) int {
			return c.normal(c.apart[k[i]].Scale(math.Abs(s[j])).Add(c.apart[k[j]].Scale(math.Abs(s[i]))))
		}
		switch {
		case s[0] == 0 && s[1]*s[2] < 0:
			m := meet(1, 2)
			out = append(out, cell{k[0], k[1], m}, cell{k[0], m, k[2]})
		case s[0]*s[1] < 0 && s[0]*s[2] < 0:
			m, n := meet(0, 1), meet(0, 2)
			out = append(out, cell{k[0], m, n})
			if c.known(m, k[2]) || !c.known(k[1], n) {
				out = append(out, cell{m, k[1], k[2]}, cell{m, k[2], n})
			} else {
				out = append(out, cell{m, k[1], n}, cell{k[1], k[2], n})
			}
		default:
			out = append(out, k)
		}
	}
	c.cells = out
}

// known tells that two corners lie on a circle along which there will be a cut.
func (c *compass) known(i, k int) bool {
	n := c.apart[i].Cross(c.apart[k]).Unit()
	return slices.ContainsFunc(c.dirs, func(d geom.Vec3) bool { return math.Abs(d.Dot(n)) > 1-1e-9 })
}

// knot ties a direction into the net: the triangles that it lies in, or on an edge
// of, are cut at it.
func (c *compass) knot(n int) {
	var out []cell
	for _, k := range c.cells {
		var s [3]float64
		in, inside := true, 0
		for i := range k {
			a, b := c.apart[k[(i+1)%3]], c.apart[k[(i+2)%3]]
			edge := a.Cross(b)
			s[i] = edge.Unit().Dot(c.apart[n])
			if edge.Dot(c.apart[k[i]]) < 0 {
				s[i] = -s[i]
			}
			if math.Abs(s[i]) <= onCircle {
				s[i] = 0
			}
			in = in && s[i] >= 0
			if s[i] > 0 {
				inside++
			}
		}
		if !in || inside < 2 {
			out = append(out, k)
			continue
		}
		for i := range k {
			if s[i] > 0 {
				part := k
				part[i] = n
				out = append(out, part)
			}
		}
	}
	c.cells = out
}
