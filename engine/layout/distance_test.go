package layout

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

func cyl(x0, y0, z0, x1, y1, z1, r float64) solid {
	return solidOf(Cylinder{From: geom.Vec3{X: x0, Y: y0, Z: z0}, To: geom.Vec3{X: x1, Y: y1, Z: z1}, Radius: unit.Length(r)})
}

func box(x0, y0, z0, x1, y1, z1 float64) solid {
	return boxOf(geom.Box{Min: geom.Vec3{X: x0, Y: y0, Z: z0}, Max: geom.Vec3{X: x1, Y: y1, Z: z1}})
}

// Distances that plane geometry gives by hand.
func TestDistanceByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b solid
		want float64 // below zero: how deep they stand in each other
	}{
		{"boxes face to face", box(0, 0, 0, 1, 1, 1), box(1.5, 0, 0, 2, 1, 1), 0.5},
		{"boxes corner to corner", box(0, 0, 0, 1, 1, 1), box(2, 2, 2, 3, 3, 3), math.Sqrt(3)},
		{"boxes overlap", box(0, 0, 0, 1, 1, 1), box(0.9, 0, 0, 2, 1, 1), -0.1},
		{"box within box", box(0, 0, 0, 1, 1, 1), box(0.4, 0.4, 0.7, 0.6, 0.6, 0.9), -0.3},
		{"parallel cylinders side by side", cyl(0, 0, 0, 0, 0, 1, 0.1), cyl(0.5, 0, 0, 0.5, 0, 1, 0.2), 0.2},
		{"parallel cylinders overlap", cyl(0, 0, 0, 0, 0, 1, 0.1), cyl(0.25, 0, 0, 0.25, 0, 1, 0.2), -0.05},
		{"coaxial cylinders end to end", cyl(0, 0, 0, 0, 0, 1, 0.1), cyl(0, 0, 1.25, 0, 0, 2, 0.2), 0.25},
		{"coaxial cylinders touch", cyl(0, 0, 0, 0, 0, 1, 0.1), cyl(0, 0, 1, 0, 0, 2, 0.2), 0},
		{"crossed cylinders", cyl(-1, 0, 0, 1, 0, 0, 0.1), cyl(0, -1, 0.5, 0, 1, 0.5, 0.2), 0.2},
		{"crossed cylinders overlap", cyl(-1, 0, 0, 1, 0, 0, 0.1), cyl(0, -1, 0.25, 0, 1, 0.25, 0.2), -0.05},
		{"cylinder over a box", box(0, 0, 0, 1, 1, 1), cyl(0.5, 0.5, 1.5, 0.5, 0.5, 2, 0.3), 0.5},
		{"lying cylinder over a box", box(0, 0, 0, 1, 1, 1), cyl(0, 0.5, 1.5, 1, 0.5, 1.5, 0.3), 0.2},
		// Rims: corner of one disc to the corner of the other, in one plane.
		{"rim to rim", cyl(0, 0, 0, 0, 0, 1, 0.3), cyl(1, 0, 1.4, 1, 0, 2, 0.3), math.Hypot(0.4, 0.4)},
		// 45 degree cylinder over the floor: its lowest point is below the end's centre by r cos 45.
		{"slanting over a slab", box(-9, -9, -1, 9, 9, 0), cyl(0, 0, 1, 1, 0, 2, 0.2), 1 - 0.2*math.Sqrt2/2},
	} {
		sa, sb := shape{solid: c.a, box: c.a.bounds()}, shape{solid: c.b, box: c.b.bounds()}
		for _, got := range [2]float64{near(&sa, &sb, 10), near(&sb, &sa, 10)} {
			if math.Abs(got-c.want) > 1e-6 {
				t.Errorf("%s: got %.9f, want %.9f", c.name, got, c.want)
			}
			if got > c.want+1e-12 && c.want > 0 {
				t.Errorf("%s: optimistic by %g", c.name, got-c.want)
			}
		}
	}
}

// project gives the point of the solid nearest to p, by its own formulas: the
// second method of the property below.
func project(s *solid, p geom.Vec3) geom.Vec3 {
	d := p.Sub(s.c)
	clamp := func(h geom.Vec3) geom.Vec3 {
		n := h.Norm()
		u := h.Scale(1 / n)
		return u.Scale(math.Max(-n, math.Min(n, d.Dot(u))))
	}
	if s.isBlock {
		return s.c.Add(clamp(s.u)).Add(clamp(s.v)).Add(clamp(s.w))
	}
	along := clamp(s.w)
	q := d.Sub(s.axis.Scale(d.Dot(s.axis)))
	if n := q.Norm(); n > s.r {
		q = q.Scale(s.r / n)
	}
	return s.c.Add(along).Add(q)
}

// alternating projects to and fro (Cheney and Goldstein, Proceedings of the
// AMS 10 (1959) 448-450: it converges to the distance of two convex sets, from
// above).
func alternating(a, b *solid, rounds int) float64 {
	p := a.c
	for range rounds {
		p = project(a, project(b, p))
	}
	return project(b, p).Sub(p).Norm()
}

func drawSolid(t *rapid.T, name string) solid {
	f := rapid.Float64Range(-0.5, 0.5)
	p := geom.Vec3{X: f.Draw(t, name+"x"), Y: f.Draw(t, name+"y"), Z: f.Draw(t, name+"z")}
	q := geom.Vec3{X: f.Draw(t, name+"u"), Y: f.Draw(t, name+"v"), Z: f.Draw(t, name+"w")}
	r := rapid.Float64Range(0.01, 0.1).Draw(t, name+"r")
	if rapid.Bool().Draw(t, name+"block") {
		turn := unit.Angle(rapid.Float64Range(0, 3).Draw(t, name+"turn"))
		up := geom.Vec3{Z: 1}
		s := blockOf(Block{
			Centre: p, U: geom.Vec3{X: r}.RotateAbout(up, turn), V: geom.Vec3{Y: 0.01 + r/2}.RotateAbout(up, turn), W: geom.Vec3{Z: 0.02 + r},
		})
		return s
	}
	if q.Sub(p).Norm() < 0.01 {
		q = p.Add(geom.Vec3{Z: 0.05})
	}
	return solidOf(Cylinder{From: p, To: q, Radius: unit.Length(r)})
}

// The distance agrees with a second method, never exceeds it, is the same both
// ways, and does not change when both are moved alike.
func TestDistanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawSolid(t, "a"), drawSolid(t, "b")
		got := distance(&a, &b, math.Inf(1))
		other := alternating(&a, &b, 4000)
		if got > other+1e-9 {
			t.Fatalf("optimistic: %v over %v", got, other)
		}
		// The second method comes down slowly where faces are nearly parallel.
		if other-got > 2e-4 {
			t.Fatalf("too low: %v against %v", got, other)
		}
		if back := distance(&b, &a, math.Inf(1)); math.Abs(back-got) > 1e-7 {
			t.Fatalf("not the same both ways: %v and %v", got, back)
		}
		v := geom.Vec3{X: 0.7, Y: -0.3, Z: 1.1}
		ma, mb := a.shift(v), b.shift(v)
		if moved := distance(&ma, &mb, math.Inf(1)); math.Abs(moved-got) > 1e-7 {
			t.Fatalf("moves with the pair: %v and %v", got, moved)
		}
		// Drawn along its way a solid is at least as near as at both ends of it.
		way := geom.Vec3{Z: 0.8}
		drawn, end := a.drawn(way), a.shift(way)
		d := distance(&drawn, &b, math.Inf(1))
		if d > got+1e-7 || d > distance(&end, &b, math.Inf(1))+1e-7 {
			t.Fatalf("drawn along it is farther: %v", d)
		}
	})
}

// A pair that stands in each other is parted by its depth, and not by much less
// along any of a sphere of directions.
func TestDepthProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawSolid(t, "a"), drawSolid(t, "b")
		b = b.shift(a.c.Sub(b.c).Scale(0.9))
		if distance(&a, &b, math.Inf(1)) > 0 {
			t.Skip("apart")
		}
		d, way := depth(&a, &b)
		moved := a.shift(way.Scale(d + 2e-5))
		if distance(&moved, &b, math.Inf(1)) < 1.9e-5 {
			t.Fatalf("a move of %v along %v does not part them", d, way)
		}
		least := math.Inf(1)
		for i := range 2000 { // spiral over the sphere
			z := 1 - (float64(i)+0.5)/1000
			s, c := math.Sincos(float64(i) * 2.399963229728653)
			n := geom.Vec3{X: c * math.Sqrt(1-z*z), Y: s * math.Sqrt(1-z*z), Z: z}
			least = math.Min(least, a.reach(n)+b.reach(n.Scale(-1)))
		}
		// The spiral shows that it is not much too long.
		if d > least*1.02+1e-9 {
			t.Fatalf("a move of %v would do, told %v", least, d)
		}
	})
}

// The room to a wall agrees with the solid's sampled surface, and never
// exceeds it.
func TestRoomProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Vault{
			Round: rapid.Bool().Draw(t, "round"), Length: 2, Width: 1.7, Depth: 1.5,
			FloorLength: unit.Length(rapid.Float64Range(1.5, 2.5).Draw(t, "floor")), FloorWidth: 1.5,
		}
		s := drawSolid(t, "s").shift(geom.Vec3{X: 1, Y: 0.9, Z: 0.7})
		got, wall := v.interior().room(s)
		// The same from points on the surface and plain formulas.
		least := math.Inf(1)
		for _, p := range surface(&s) {
			least = math.Min(least, roomOfPoint(v, p))
		}
		if got > least+1e-9 {
			t.Fatalf("optimistic to %s: %v over %v", wall, got, least)
		}
		if least-got > 2e-3 {
			t.Fatalf("too low to %s: %v against %v", wall, got, least)
		}
	})
}

func roomOfPoint(v Vault, p geom.Vec3) float64 {
	d := float64(v.Depth)
	least := math.Min(p.Z, d-p.Z)
	// Distance in the upright plane to a wall that stands in by slope per metre.
	slant := func(flat, slope float64) float64 { return (flat - slope*(d-p.Z)) / math.Sqrt(1+slope*slope) }
	l := float64(v.Length)
	sx := (l - float64(v.FloorLength)) / 2 / d
	if v.Round {
		return math.Min(least, slant(l/2-math.Hypot(p.X-l/2, p.Y-l/2), sx))
	}
	w := float64(v.Width)
	sy := (w - float64(v.FloorWidth)) / 2 / d
	for _, x := range [4]float64{slant(p.X, sx), slant(l-p.X, sx), slant(p.Y, sy), slant(w-p.Y, sy)} {
		least = math.Min(least, x)
	}
	return least
}

// surface gives points on the edges of a solid, where a convex bound is met.
func surface(s *solid) []geom.Vec3 {
	var out []geom.Vec3
	if s.isBlock {
		for _, x := range [2]float64{-1, 1} {
			for _, y := range [2]float64{-1, 1} {
				for _, z := range [2]float64{-1, 1} {
					out = append(out, s.c.Add(s.u.Scale(x)).Add(s.v.Scale(y)).Add(s.w.Scale(z)))
				}
			}
		}
		return out
	}
	e := clockZero(s.axis)
	f := s.axis.Cross(e)
	for i := range 720 {
		sn, cs := math.Sincos(float64(i) * math.Pi / 360)
		rim := e.Scale(s.r * cs).Add(f.Scale(s.r * sn))
		out = append(out, s.c.Add(s.w).Add(rim), s.c.Sub(s.w).Add(rim))
	}
	return out
}

// The reach is the farthest support, also of a solid drawn along a way.
func TestReachIsSupport(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.Float64Range(-1, 1)
		draw := func(name string) geom.Vec3 {
			return geom.Vec3{X: f.Draw(t, name+"x"), Y: f.Draw(t, name+"y"), Z: f.Draw(t, name+"z")}
		}
		s := drawSolid(t, "s").drawn(draw("way"))
		n := draw("n")
		if got, want := s.reach(n), n.Dot(s.support(n)); math.Abs(got-want) > 1e-12 {
			t.Fatalf("reach %v, support %v", got, want)
		}
	})
}
