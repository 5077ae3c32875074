package drawing

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// tube is a round solid on the sheet: its silhouette and the end that is seen.
type tube struct {
	from, to geom.Vec3
	radius   float64 // m
}

func tubeOf(c layout.Cylinder) tube { return tube{c.From, c.To, float64(c.Radius)} }

func (t tube) cylinder() layout.Cylinder {
	return layout.Cylinder{From: t.from, To: t.to, Radius: unit.Length(t.radius)}
}

func (t tube) dir() geom.Vec3 {
	d := t.to.Sub(t.from).Unit()
	if !d.IsFinite() {
		return geom.Vec3{Z: 1}
	}
	return d
}

// ring gives the circle round the axis at a point, as it is seen.
func (t tube) ring(v view, at geom.Vec3) Arc {
	d := t.dir()
	flat := v.along(d)
	turn := 0.0
	if flat.Norm() > 0 {
		turn = math.Atan2(flat.Y, flat.X)*180/math.Pi + 90
	}
	r := t.radius * v.scale
	return Arc{Centre: v.at(at), RX: r, RY: r * math.Abs(d.Dot(v.toward)), Turn: turn, Sweep: 360}
}

// halfRing is how many lines draw half a circle of a silhouette.
const halfRing = 20

// outline gives the silhouette, round the far half of each end. Its first
// halfRing+1 points go round the end at to, the others round from.
func (t tube) outline(v view) []Point {
	a, b := t.ring(v, t.from), t.ring(v, t.to)
	out := make([]Point, 0, 2*halfRing+2)
	// The rings' axes are turned so that their 0 lies across the tube and their
	// -90 along it, towards to.
	for i := range halfRing + 1 {
		out = append(out, b.At(-180*float64(i)/halfRing))
	}
	for i := range halfRing + 1 {
		out = append(out, a.At(-180-180*float64(i)/halfRing))
	}
	return out
}

// seenEnd gives the ring of the end that faces the viewer.
func (t tube) seenEnd(v view) Arc {
	if t.dir().Dot(v.toward) > 0 {
		return t.ring(v, t.to)
	}
	return t.ring(v, t.from)
}

// reach gives the least and greatest extent along n.
func (t tube) reach(n geom.Vec3) (low, high float64) {
	d := t.dir()
	across := n.Sub(d.Scale(n.Dot(d))).Norm() * t.radius
	a, b := n.Dot(t.from), n.Dot(t.to)
	return min(a, b) - across, max(a, b) + across
}

func (t tube) axes() []geom.Vec3 { return []geom.Vec3{t.dir()} }

func (t tube) corners() []geom.Vec3 {
	d := t.dir()
	side := d.Cross(geom.Vec3{X: 1})
	if side.Norm() < 0.5 {
		side = d.Cross(geom.Vec3{Y: 1})
	}
	side = side.Unit().Scale(t.radius)
	var out []geom.Vec3
	for i := range 8 {
		s, c := math.Sincos(float64(i) * math.Pi / 4)
		r := side.Scale(c).Add(d.Cross(side).Scale(s))
		out = append(out, t.from.Add(r), t.to.Add(r))
	}
	return out
}

// block is a box on the sheet, perhaps turned.
type block layout.Block

func (b block) halves() [3]geom.Vec3 { return [3]geom.Vec3{b.U, b.V, b.W} }

// faces gives the faces that are seen, each as its corners in order.
func (b block) faces(v view) [][]Point {
	h := b.halves()
	var out [][]Point
	for i := range 3 {
		n, p, q := h[i], h[(i+1)%3], h[(i+2)%3]
		if n.Dot(v.toward) < 0 {
			n = n.Scale(-1)
		}
		m := b.Centre.Add(n)
		out = append(out, []Point{v.at(m.Add(p).Add(q)), v.at(m.Sub(p).Add(q)), v.at(m.Sub(p).Sub(q)), v.at(m.Add(p).Sub(q))})
	}
	return out
}

func (b block) reach(n geom.Vec3) (low, high float64) {
	c, r := n.Dot(b.Centre), 0.0
	for _, h := range b.halves() {
		r += math.Abs(n.Dot(h))
	}
	return c - r, c + r
}

func (b block) axes() []geom.Vec3 {
	var out []geom.Vec3
	for _, h := range b.halves() {
		if h.Norm() > 0 {
			out = append(out, h.Unit())
		}
	}
	return out
}

func (b block) corners() []geom.Vec3 {
	h := b.halves()
	var out []geom.Vec3
	for i := range 8 {
		p := b.Centre
		for k := range 3 {
			if i>>k&1 == 0 {
				p = p.Sub(h[k])
			} else {
				p = p.Add(h[k])
			}
		}
		out = append(out, p)
	}
	return out
}

// blockOf makes a block of a box along the axes.
func blockOf(b geom.Box) block {
	h := b.Size().Scale(0.5)
	return block{Centre: b.Centre(), U: geom.Vec3{X: h.X}, V: geom.Vec3{Y: h.Y}, W: geom.Vec3{Z: h.Z}}
}
