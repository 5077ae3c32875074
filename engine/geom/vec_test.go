package geom

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// near is the absolute tolerance, in metres, of what ought to be exact but for
// rounding in shapes of a few metres.
const near = 1e-12

func closeTo(a, b Vec3) bool { return a.Sub(b).Norm() <= near }

func drawVec(t *rapid.T, label string) Vec3 {
	f := rapid.Float64Range(-10, 10)
	return Vec3{f.Draw(t, label+".x"), f.Draw(t, label+".y"), f.Draw(t, label+".z")}
}

func TestRotateQuarterTurnsAreExact(t *testing.T) {
	x, y, z := Vec3{X: 1}, Vec3{Y: 1}, Vec3{Z: 1}
	cases := []struct {
		v, axis Vec3
		deg     float64
		want    Vec3
	}{
		{x, z, 90, y},
		{y, z, 90, Vec3{X: -1}},
		{y, x, 90, z},
		{z, y, 90, x},
		{x, z, 180, Vec3{X: -1}},
		{x, z, 270, Vec3{Y: -1}},
		{x, z, -90, Vec3{Y: -1}},
		{x, z, 360, x},
		{x, Vec3{Z: 7}, 90, y},
		{x, Vec3{Z: -2}, 90, Vec3{Y: -1}},
	}
	for _, c := range cases {
		// Exact equality is the promise here: chains of elbows must not drift.
		if got := c.v.RotateAbout(c.axis, unit.Angle(c.deg)*unit.Degree); got != c.want {
			t.Errorf("%v about %v by %v: got %v, want %v", c.v, c.axis, c.deg, got, c.want)
		}
	}
	got := x.RotateAbout(z, 45*unit.Degree)
	if r := math.Sqrt(0.5); !closeTo(got, Vec3{X: r, Y: r}) {
		t.Errorf("45 degrees: %v", got)
	}
}

func TestRotateProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, axis := drawVec(t, "v"), drawVec(t, "axis")
		if axis.Norm() < 1e-6 {
			return
		}
		a := unit.Angle(rapid.Float64Range(-7, 7).Draw(t, "a"))
		b := unit.Angle(rapid.Float64Range(-7, 7).Draw(t, "b"))
		r := v.RotateAbout(axis, a)
		if math.Abs(r.Norm()-v.Norm()) > near*10 {
			t.Fatalf("length %v became %v", v.Norm(), r.Norm())
		}
		if k := axis.Unit(); math.Abs(r.Dot(k)-v.Dot(k)) > near*10 {
			t.Fatalf("the part along the axis moved")
		}
		two, one := r.RotateAbout(axis, b), v.RotateAbout(axis, a+b)
		if two.Sub(one).Norm() > 1e-10 {
			t.Fatalf("two turns %v, their sum %v", two, one)
		}
		if back := r.RotateAbout(axis, -a); back.Sub(v).Norm() > 1e-10 {
			t.Fatalf("turned back: %v, was %v", back, v)
		}
	})
}

func TestVectorAlgebra(t *testing.T) {
	if got := (Vec3{X: 1}).Cross(Vec3{Y: 1}); got != (Vec3{Z: 1}) {
		t.Errorf("x cross y is %v, not z: the frame is not right-handed", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawVec(t, "a"), drawVec(t, "b")
		c := a.Cross(b)
		if math.Abs(c.Dot(a)) > 1e-9 || math.Abs(c.Dot(b)) > 1e-9 {
			t.Fatalf("cross product not square to its factors")
		}
		// Lagrange's identity.
		if d := c.Dot(c) + a.Dot(b)*a.Dot(b) - a.Dot(a)*b.Dot(b); math.Abs(d) > 1e-6 {
			t.Fatalf("Lagrange's identity is off by %v", d)
		}
	})
}

func TestNoDirectionIsNaN(t *testing.T) {
	if (Vec3{}).Unit().IsFinite() {
		t.Error("the zero vector has no direction")
	}
	if (Vec3{X: 1}).RotateAbout(Vec3{}, 1).IsFinite() {
		t.Error("no axis, no rotation")
	}
	if n := (Vec3{1e300, 1e300, 1e300}).Norm(); math.IsInf(n, 0) {
		t.Error("norm overflows")
	}
}

func TestBox(t *testing.T) {
	b := BoxOf(Vec3{2, 3, 4}, Vec3{0, 0, 0})
	if b.Size() != (Vec3{2, 3, 4}) || b.Centre() != (Vec3{1, 1.5, 2}) {
		t.Errorf("size %v, centre %v", b.Size(), b.Centre())
	}
	touch := b.Shift(Vec3{X: 2})
	if b.Overlaps(touch) || !b.Overlaps(touch.Shift(Vec3{X: -0.001})) || !b.Grow(0.001).Overlaps(touch) {
		t.Error("touching faces do not overlap, a millimetre does")
	}
	if !b.Contains(b) || b.Contains(b.Grow(1e-6)) || !b.Contains(b.Grow(-0.1)) {
		t.Error("contains: itself and what is smaller, not what is larger")
	}
	if j := b.Join(touch); j != (Box{Max: Vec3{4, 3, 4}}) {
		t.Errorf("join %v", j)
	}
	if shrunk := b.Grow(-5); shrunk.Overlaps(b) {
		t.Error("a block shrunk past its middle overlaps nothing")
	}
	if b.Contains(BoxOf(Vec3{X: math.NaN()}, Vec3{1, 1, 1})) {
		t.Error("NaN is never inside")
	}
}

func BenchmarkRotateAbout(b *testing.B) {
	b.ReportAllocs()
	v := Vec3{1, 2, 3}
	for b.Loop() {
		v = v.RotateAbout(Vec3{Z: 1}, 45*unit.Degree)
	}
}
