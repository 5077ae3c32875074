package arrange

import (
	"math"
	"testing"

	"plashet/engine/geom"
)

// The ways that a bearing can turn are as many as plane geometry has it: two for each
// leg between two fixed ones, less one for each elbow that says something new. A step
// along any of them, however long, ends with every elbow at its angle.
func TestAngles(t *testing.T) {
	x, y, z := geom.Vec3{X: 1}, geom.Vec3{Y: 1}, geom.Vec3{Z: 1}
	half := func(a, b geom.Vec3) geom.Vec3 { return a.Add(b).Unit() }
	for _, c := range []struct {
		name  string
		dirs  []geom.Vec3
		turns []turn
		yaw   bool
		want  int
	}{
		{"no way: the leg stands square to both", []geom.Vec3{x, z, y}, []turn{turn90, turn90}, false, 0},
		{"a rolled pair", []geom.Vec3{x, half(x, z), x}, []turn{turn45, turn45}, false, 1},
		{"a pair back", []geom.Vec3{x, z, x.Scale(-1)}, []turn{turn90, turn90}, false, 1},
		{"90-45-90", []geom.Vec3{z, x, half(x, y), z}, []turn{turn90, turn45, turn90}, false, 1},
		{"two pairs", []geom.Vec3{x, half(x, z), x, half(x, y), x}, []turn{turn45, turn45, turn45, turn45}, false, 2},
		{"square to square, pump turned", []geom.Vec3{x, z, y}, []turn{turn90, turn90}, true, 1},
		{"one elbow, pump turned", []geom.Vec3{x, half(x, y)}, []turn{turn45}, true, 0},
	} {
		j := joints{turns: c.turns, free: make([]bool, len(c.dirs)), yaw: c.yaw, port: c.dirs[0]}
		for l := 1; l+1 < len(c.dirs); l++ {
			j.free[l] = true
		}
		b := bearing{dirs: c.dirs}
		angles := j.angles(&b)
		if len(angles) != c.want {
			t.Errorf("%s: %d ways to turn, want %d", c.name, len(angles), c.want)
		}
		for i := range angles {
			for _, far := range []float64{1e-3, 0.05, -0.2} {
				part := make([]float64, len(angles))
				part[i] = far
				next, ok := j.by(&b, angles, part)
				if !ok {
					t.Errorf("%s: a step of %g comes to no end", c.name, far)
					continue
				}
				for k, turned := range c.turns {
					if off := next.dirs[k].Dot(next.dirs[k+1]) - math.Cos([2]float64{math.Pi / 2, math.Pi / 4}[turned]); math.Abs(off) > 1e-12 {
						t.Errorf("%s: elbow %d is off by %g after a step of %g", c.name, k, off, far)
					}
				}
				if last := next.dirs[len(c.dirs)-1]; !alike(last, c.dirs[len(c.dirs)-1]) || !c.yaw && !alike(next.dirs[0], c.dirs[0]) {
					t.Errorf("%s: port or hole turned", c.name)
				}
			}
		}
	}
}

// Where two circles of directions meet, by hand: at 45 degrees to two directions square
// to each other lies the one half way between, at 90 to both the two square to them.
func TestMeet(t *testing.T) {
	x, y, z := geom.Vec3{X: 1}, geom.Vec3{Y: 1}, geom.Vec3{Z: 1}
	square, half := 0.0, math.Sqrt2/2
	for _, c := range []struct {
		a, b     geom.Vec3
		toA, toB float64
		want     int
		one      geom.Vec3
	}{
		{x, y, square, square, 2, z},
		{x, y, half, half, 2, x.Add(y).Unit()},
		{x, y, square, half, 2, y.Add(z).Unit()},
		{x, x, half, half, 8, x.Add(y).Unit()},
		{x, x.Scale(-1), square, square, 8, y},
		{x, x, square, half, 0, z},
		{x, x.Scale(-1), half, half, 0, z},
	} {
		got := meet(c.a, c.b, c.toA, c.toB, math.Pi/4)
		if len(got) != c.want {
			t.Errorf("%v and %v at %.2f and %.2f: %v", c.a, c.b, c.toA, c.toB, got)
		}
		some := len(got) == 0
		for _, d := range got {
			if math.Abs(d.Dot(c.a)-c.toA) > 1e-9 || math.Abs(d.Dot(c.b)-c.toB) > 1e-9 {
				t.Errorf("%v is at %.3f and %.3f, not %.3f and %.3f", d, d.Dot(c.a), d.Dot(c.b), c.toA, c.toB)
			}
			some = some || alike(d, c.one)
		}
		if !some {
			t.Errorf("%v is not among %v", c.one, got)
		}
	}
}
