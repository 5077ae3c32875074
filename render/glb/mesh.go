package glb

import (
	"math"

	"plashet/drawing"
	"plashet/engine/geom"
	"plashet/engine/layout"
)

// mesh is triangles: corners with the way each looks, counted round so that the
// front is seen anticlockwise. All in metres, y up.
type mesh struct {
	points, normals []geom.Vec3
	faces           [][3]int
}

// How finely round bodies are drawn: of a pipe of 100 mm no chord is farther than
// half a millimetre from the circle.
const (
	sides = 32
	belts = 12 // of a ball, from pole to pole
)

// turn brings a vector of the vault (z up) into the file's frame (y up): a right
// frame stays right.
func turn(v geom.Vec3) geom.Vec3 { return geom.Vec3{X: v.X, Y: v.Z, Z: -v.Y} }

// add puts a corner in and gives its number.
func (m *mesh) add(p, n geom.Vec3) int {
	m.points = append(m.points, turn(p))
	m.normals = append(m.normals, turn(n))
	return len(m.points) - 1
}

// flat adds a flat convex face, its corners in order round n.
func (m *mesh) flat(n geom.Vec3, corners ...geom.Vec3) {
	first := 0
	for i, p := range corners {
		k := m.add(p, n)
		if i == 0 {
			first = k
		}
		if i >= 2 {
			m.faces = append(m.faces, [3]int{first, k - 1, k})
		}
	}
}

// across gives two vectors square to a direction and to each other, so that u, v
// and the direction are a right frame.
func across(dir geom.Vec3) (u, v geom.Vec3) {
	u = dir.Cross(geom.Vec3{X: 1})
	if u.Norm() < 0.5 {
		u = dir.Cross(geom.Vec3{Y: 1})
	}
	u = u.Unit()
	return u, dir.Cross(u)
}

// tube adds a cylinder with its ends. One without length or radius adds nothing.
func (m *mesh) tube(c layout.Cylinder) {
	r := float64(c.Radius)
	dir := c.To.Sub(c.From).Unit()
	if !(r > 0) || !dir.IsFinite() {
		return
	}
	u, v := across(dir)
	var from, to []geom.Vec3
	first := len(m.points)
	for i := range sides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		n := u.Scale(cos).Add(v.Scale(sin))
		from, to = append(from, c.From.Add(n.Scale(r))), append(to, c.To.Add(n.Scale(r)))
		m.add(from[i], n)
		m.add(to[i], n)
	}
	for i := range sides {
		a, b := first+2*i, first+2*((i+1)%sides)
		m.faces = append(m.faces, [3]int{a, b, b + 1}, [3]int{a, b + 1, a + 1})
	}
	m.flat(dir, to...)
	back := make([]geom.Vec3, 0, sides)
	for i := range from {
		back = append(back, from[len(from)-1-i])
	}
	m.flat(dir.Scale(-1), back...)
}

// block adds a box that may stand turned. One that is flat adds nothing.
func (m *mesh) block(b layout.Block) {
	half := [3]geom.Vec3{b.U, b.V, b.W}
	for i := range 3 {
		n, p, q := half[i], half[(i+1)%3], half[(i+2)%3]
		if n.Norm() == 0 || p.Norm() == 0 || q.Norm() == 0 {
			return
		}
		for _, way := range [2]float64{1, -1} {
			out := n.Scale(way)
			if p.Cross(q).Dot(out) < 0 {
				p, q = q, p
			}
			c := b.Centre.Add(out)
			m.flat(out.Unit(), c.Sub(p).Sub(q), c.Add(p).Sub(q), c.Add(p).Add(q), c.Sub(p).Add(q))
		}
	}
}

// ball adds a ball.
func (m *mesh) ball(b drawing.Ball) {
	if !(b.Radius > 0) {
		return
	}
	first := len(m.points)
	for k := range belts + 1 {
		up, out := math.Sincos(math.Pi * (float64(k)/belts - 0.5))
		for i := range sides {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
			n := geom.Vec3{X: out * cos, Y: out * sin, Z: up}.Unit()
			m.add(b.Centre.Add(n.Scale(b.Radius)), n)
		}
	}
	for k := range belts {
		for i := range sides {
			a, b := first+k*sides+i, first+k*sides+(i+1)%sides
			if k > 0 {
				m.faces = append(m.faces, [3]int{a, b, b + sides})
			}
			if k < belts-1 {
				m.faces = append(m.faces, [3]int{a, b + sides, a + sides})
			}
		}
	}
}

// box adds floor and walls of the vault, seen from inside; what lies outside is
// seen through them.
func (m *mesh) box(floor, rim []geom.Vec3) {
	if len(floor) < 3 || len(floor) != len(rim) {
		return
	}
	m.flat(geom.Vec3{Z: 1}, floor...)
	n := len(floor)
	for i := range n {
		a, b, c, d := floor[i], floor[(i+1)%n], rim[(i+1)%n], rim[i]
		in := c.Sub(a).Cross(b.Sub(a)).Unit()
		if !in.IsFinite() {
			continue
		}
		m.flat(in, d, c, b, a)
	}
}

// of makes the mesh of a solid.
func of(s *drawing.Solid) mesh {
	var m mesh
	for _, t := range s.Tubes {
		m.tube(t)
	}
	for _, b := range s.Blocks {
		m.block(b)
	}
	for _, b := range s.Balls {
		m.ball(b)
	}
	return m
}
