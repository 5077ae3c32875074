package geom

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12g, want %.12g within %g", what, got, want, tol)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func TestSimpleShapes(t *testing.T) {
	r := must(Rectangle(4.8, 3.3))
	within(t, "rectangle area", float64(r.Area()), 4.8*3.3, 1e-12)
	within(t, "rectangle perimeter", float64(r.Perimeter()), 16.2, 1e-12)
	c := must(Circle(2))
	within(t, "circle area", float64(c.Area()), math.Pi, 1e-14)
	within(t, "circle perimeter", float64(c.Perimeter()), 2*math.Pi, 1e-14)
	if got := r.Centroid(); got != (Vec2{2.4, 1.65}) {
		t.Errorf("rectangle centroid %v", got)
	}
	if got := c.Bounds(); got != (Rect{Max: Vec2{2, 2}}) {
		t.Errorf("circle bounds %v", got)
	}
}

// TestEllipsePerimeter holds the arithmetic-geometric mean against a table and
// against a series of another kind.
func TestEllipsePerimeter(t *testing.T) {
	// Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.1
	// (from memory, checked by the series below): E(m = 0.5) = 1.350643881.
	within(t, "E(0.5)", completeE(math.Sqrt(0.5)), 1.350643881, 5e-10)
	within(t, "E of a circle", completeE(1), math.Pi/2, 1e-15)
	within(t, "E of a line", completeE(1e-12), 1, 1e-12)
	rapid.Check(t, func(rt *rapid.T) {
		a := rapid.Float64Range(0.3, 20).Draw(rt, "length")
		b := a * rapid.Float64Range(0.2, 5).Draw(rt, "ratio")
		got := float64(must(Ellipse(unit.Length(a), unit.Length(b))).Perimeter())
		// Gauss-Kummer: P = pi (a+b) sum C(1/2, n)^2 h^n, h = ((a-b)/(a+b))^2.
		h := (a - b) * (a - b) / ((a + b) * (a + b))
		sum, term := 1.0, 1.0
		for n := 1; n < 200; n++ {
			f := (0.5 - float64(n-1)) / float64(n)
			term *= f * f * h
			sum += term
		}
		if want := math.Pi * (a + b) / 2 * sum; math.Abs(got-want) > 1e-11*want {
			rt.Fatalf("a %v b %v: got %v, series %v", a, b, got, want)
		}
	})
}

// star draws a simple polygon: corners at growing angles round a centre.
func star(t *rapid.T) []Vec2 {
	n := rapid.IntRange(3, 14).Draw(t, "n")
	p := make([]Vec2, n)
	for i := range p {
		r := rapid.Float64Range(0.4, 3).Draw(t, "r")
		phi := 2 * math.Pi * (float64(i) + rapid.Float64Range(0.05, 0.95).Draw(t, "phi")) / float64(n)
		p[i] = Vec2{r * math.Cos(phi), r * math.Sin(phi)}
	}
	return p
}

// convexCorners draws corners on a circle, squeezed and turned: a convex polygon.
func convexCorners(t *rapid.T) []Vec2 {
	n := rapid.IntRange(3, 12).Draw(t, "n")
	k, tilt := rapid.Float64Range(0.2, 1).Draw(t, "squeeze"), rapid.Float64Range(0, 6).Draw(t, "tilt")
	p := make([]Vec2, n)
	for i := range p {
		phi := 2 * math.Pi * (float64(i) + rapid.Float64Range(0.05, 0.95).Draw(t, "phi")) / float64(n)
		v := Vec2{2 * math.Cos(phi), 2 * k * math.Sin(phi)}
		p[i] = Vec2{v.X*math.Cos(tilt) - v.Y*math.Sin(tilt), v.X*math.Sin(tilt) + v.Y*math.Cos(tilt)}
	}
	return p
}

// TestOutlineMoves: where the outline lies, how it is turned, the way round and
// the first corner change nothing.
func TestOutlineMoves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := star(t)
		build := Polygon
		if rapid.Bool().Draw(t, "smooth") {
			build = SmoothCurve
		}
		o, err := build(p)
		if err != nil {
			t.Skip("not a simple outline")
		}
		turn, dx := rapid.Float64Range(0, 6).Draw(t, "turn"), rapid.Float64Range(-50, 50).Draw(t, "dx")
		start, back := rapid.IntRange(0, len(p)-1).Draw(t, "start"), rapid.Bool().Draw(t, "back")
		q := make([]Vec2, len(p))
		for i := range p {
			j := (i + start) % len(p)
			if back {
				j = (start - i + len(p)) % len(p)
			}
			s, c := math.Sincos(turn)
			q[i] = Vec2{p[j].X*c - p[j].Y*s + dx, p[j].X*s + p[j].Y*c - 2*dx}
		}
		m, err := build(q)
		if err != nil {
			t.Fatalf("moved: %v", err)
		}
		d := unit.Length(rapid.Float64Range(0, 1).Draw(t, "d"))
		const rel = 1e-7 // insets past an event: the ends of the pieces move by rounding
		same := func(what string, a, b float64) {
			if math.Abs(a-b) > rel*float64(o.Area()) {
				t.Fatalf("%s: %v, moved %v", what, a, b)
			}
		}
		same("area", float64(o.Area()), float64(m.Area()))
		same("perimeter", float64(o.Perimeter()), float64(m.Perimeter()))
		same("inset", float64(must(o.InsetAt(d)).Area), float64(must(m.InsetAt(d)).Area))
		s, c := math.Sincos(turn)
		w := o.Centroid()
		want := Vec2{w.X*c - w.Y*s + dx, w.X*s + w.Y*c - 2*dx}
		if g := m.Centroid(); g.distance(want) > 1e-7 {
			t.Fatalf("centroid %v, moved %v", want, g)
		}
	})
}

func TestOutlineScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := star(t)
		o, err := SmoothCurve(p)
		if err != nil || rapid.Bool().Draw(t, "corners") {
			o = must(Polygon(p))
		}
		k := rapid.Float64Range(0.1, 10).Draw(t, "k")
		d := rapid.Float64Range(0, 1).Draw(t, "d")
		s := must(o.Scaled(unit.Ratio(k)))
		a, b := float64(must(o.InsetAt(unit.Length(d))).Area)*k*k, float64(must(s.InsetAt(unit.Length(d*k))).Area)
		if math.Abs(a-b) > 1e-6*float64(s.Area()) {
			t.Fatalf("inset scaled %v, inset of the scaled %v", a, b)
		}
	})
}

func TestSmoothCurve(t *testing.T) {
	ring := func(n int) []Vec2 {
		p := make([]Vec2, n)
		for i := range p {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			p[i] = Vec2{3 * c, 2 * s}
		}
		return p
	}
	// Points on an ellipse: the curve nears the ellipse, and doubling the points
	// takes off seven eighths of the error or more (the order is 3 or better).
	exact := must(Ellipse(6, 4))
	last := math.Inf(1)
	for _, n := range []int{8, 16, 32, 64} {
		o := must(SmoothCurve(ring(n)))
		e := math.Abs(float64(o.Area()/exact.Area())-1) + math.Abs(float64(o.Perimeter()/exact.Perimeter())-1)
		if e > last/8 {
			t.Errorf("%d points: error %v after %v", n, e, last)
		}
		last = e
	}
	if last > 1e-5 {
		t.Errorf("64 points: error %v", last)
	}
	// A piece that nearly comes to a point, found by the draws below.
	sharp := []Vec2{{3 * math.Cos(0.2734375*2*math.Pi/3), 3 * math.Sin(0.2734375*2*math.Pi/3)}}
	for _, d := range []struct{ r, phi float64 }{{1.99951171875, 1.95}, {0.5625, 2.625}} {
		phi := 2 * math.Pi * d.phi / 3
		sharp = append(sharp, Vec2{d.r * math.Cos(phi), d.r * math.Sin(phi)})
	}
	o := must(SmoothCurve(sharp))
	if d := (polygon{p: o.Polyline(1e-9)}).perimeter() - float64(o.Perimeter()); d > 1e-8 {
		t.Errorf("chords are longer than the curve by %v", d)
	}
	rapid.Check(t, func(t *rapid.T) {
		p := star(t)
		o, err := SmoothCurve(p)
		if err != nil {
			t.Skip("crosses itself")
		}
		// A second way: a polygon of many fine chords.
		fine := o.Polyline(1e-4)
		if a := shoelace(fine); math.Abs(a-float64(o.Area())) > 2e-4*float64(o.Perimeter()) {
			t.Fatalf("area %v, by chords %v", o.Area(), a)
		}
		g := polygon{p: fine}
		if d := g.perimeter() - float64(o.Perimeter()); math.Abs(d) > 2e-3*float64(o.Perimeter()) || d > 1e-8*float64(o.Perimeter()) {
			t.Fatalf("perimeter %v, by chords %v", o.Perimeter(), g.perimeter())
		}
		box, by := o.Bounds(), rectOf(fine)
		if box.Min.distance(by.Min) > 2e-4 || box.Max.distance(by.Max) > 2e-4 {
			t.Fatalf("bounds %v, by chords %v", box, by)
		}
		if c := g.centroid(); c.distance(o.Centroid()) > 1e-3 {
			t.Fatalf("centroid %v, by chords %v", o.Centroid(), c)
		}
		for _, v := range p {
			near := math.Inf(1)
			for i, a := range fine {
				near = min(near, toSegment(v, a, fine[(i+1)%len(fine)]))
			}
			if near > 1e-9 {
				t.Fatalf("the curve misses the point %v by %v", v, near)
			}
		}
	})
}

func TestTapedOffsets(t *testing.T) {
	// Widths 0, 6, 8, 5, 0 ft at 0, 4, 8, 12, 15 ft: trapezoids 12 + 28 + 26 + 7.5
	// = 73.5 ft2 (by hand).
	ft := unit.Foot
	taped := []TapedOffset{{0, 0, 0}, {4 * ft, 2 * ft, 4 * ft}, {8 * ft, 5 * ft, 3 * ft}, {12 * ft, 3 * ft, 2 * ft}, {15 * ft, 1 * ft, -1 * ft}}
	p := must(FromOffsets(taped))
	if len(p) != 8 {
		t.Errorf("%d points, want 8 (two tips, three pairs)", len(p))
	}
	o := must(Polygon(p))
	within(t, "area", float64(o.Area()/unit.SquareFoot), 73.5, 1e-9)
	at, width := make([]unit.Length, 5), make([]unit.Length, 5)
	for i, v := range taped {
		at[i], width[i] = v.At, v.Left+v.Right
	}
	within(t, "trapezoidal rule", float64(must(TrapezoidalArea(at, width))/unit.SquareFoot), 73.5, 1e-9)
	if s := must(SmoothCurve(p)); s.Area() < o.Area() {
		t.Error("a rounded pond is larger than the polygon through its points")
	}
	for _, c := range []struct {
		name  string
		taped []TapedOffset
		code  Code
		at    int
	}{
		{"one reading", []TapedOffset{{0, 1, 1}}, CodePoints, 0},
		{"not growing", []TapedOffset{{0, 1, 1}, {2, 1, 1}, {2, 1, 1}}, CodeOrder, 2},
		{"turned over", []TapedOffset{{0, 1, 1}, {2, 1, -2}}, CodeRange, 1},
		{"no number", []TapedOffset{{0, 1, 1}, {unit.Length(math.NaN()), 1, 2}}, CodeNotFinite, 1},
	} {
		_, err := FromOffsets(c.taped)
		var e *Error
		if !errors.As(err, &e) || e.Code != c.code || e.At != c.at {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestOutlineRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name      string
		p         []Vec2
		code      Code
		at, other int
	}{
		{"nothing", nil, CodePoints, 0, 0},
		{"two points", []Vec2{{0, 0}, {1, 1}}, CodePoints, 0, 0},
		{"the same point over and over", []Vec2{{1, 1}, {1, 1}, {1, 1}, {1, 1}}, CodePoints, 0, 0},
		{"NaN", []Vec2{{0, 0}, {nan, 0}, {1, 1}}, CodeNotFinite, 1, 0},
		{"infinite", []Vec2{{0, 0}, {1, 0}, {1, math.Inf(-1)}}, CodeNotFinite, 2, 0},
		{"beyond all ponds", []Vec2{{0, 0}, {1e9, 0}, {1, 1}}, CodeRange, 1, 0},
		{"on a line", []Vec2{{0, 0}, {1, 0}, {3, 0}}, CodeCrosses, 0, 2},
		{"bow tie", []Vec2{{0, 0}, {2, 2}, {2, 0}, {0, 2}}, CodeCrosses, 0, 2},
		{"bow tie, a corner taped twice", []Vec2{{0, 0}, {2, 2}, {2, 2}, {2, 0}, {0, 2}, {0, 0}}, CodeCrosses, 0, 3},
		{"spike", []Vec2{{0, 0}, {2, 0}, {4, 0}, {2, 0}, {1, 2}}, CodeCrosses, 0, 2},
		{"touches", []Vec2{{0, 0}, {4, 0}, {4, 3}, {2, 0}, {0, 3}}, CodeCrosses, 0, 2},
		{"pinched in the middle", []Vec2{{0, 0}, {2, 1}, {4, 0}, {4, 2}, {2, 1}, {0, 2}}, CodeCrosses, 0, 3},
	} {
		_, err := Polygon(c.p)
		var e *Error
		if !errors.As(err, &e) || e.Code != c.code || e.At != c.at || e.Other != c.other {
			t.Errorf("%s: %v", c.name, err)
		}
		if _, err := SmoothCurve(c.p); err == nil {
			t.Errorf("%s: taken as a smooth curve", c.name)
		}
	}
	if _, err := Polygon(make([]Vec2, maxPoints+1)); err == nil {
		t.Error("too many points taken")
	}
	for _, v := range []unit.Length{0, -1, unit.Length(nan), unit.Length(math.Inf(1)), 1e6, 1e-6} {
		if _, err := Rectangle(v, 1); err == nil {
			t.Errorf("rectangle of length %v taken", v)
		}
		if _, err := Ellipse(1, v); err == nil {
			t.Errorf("ellipse of width %v taken", v)
		}
	}
	for _, k := range []unit.Ratio{0, -1, unit.Ratio(nan)} {
		if _, err := must(Circle(1)).Scaled(k); err == nil {
			t.Errorf("scale %v taken", k)
		}
	}
	// Points in order, but the curve between them crosses itself: the piece
	// that swings out of a tight corner.
	if _, err := SmoothCurve([]Vec2{{0, 0}, {10, 0}, {10, 0.02}, {0, 0.01}}); err != nil {
		var e *Error
		if !errors.As(err, &e) || e.Code != CodeCrosses || e.At > 3 || e.Other > 3 {
			t.Errorf("sliver: %v", err)
		}
	}
}

// TestEdgeNumbersWhenClockwise: the edges of a message count as the points were
// given, whichever way round.
func TestEdgeNumbersWhenClockwise(t *testing.T) {
	p := []Vec2{{0, 0}, {0, 2}, {3, 2}, {3, 0}}
	q, edge, err := simple(p)
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range edge {
		a, b := q[i], q[(i+1)%4]
		if c, d := p[e], p[(e+1)%4]; a != d || b != c {
			t.Errorf("edge %d is %v-%v, given edge %d is %v-%v", i, a, b, e, c, d)
		}
	}
}

func TestPolyline(t *testing.T) {
	for _, o := range []*Outline{must(Circle(3)), must(Ellipse(5, 2)), must(SmoothCurve([]Vec2{{0, 0}, {4, 1}, {5, 4}, {1, 3}}))} {
		for _, sag := range []unit.Length{0.1, 0.01, 0.001, 0, -1, unit.Length(math.NaN())} {
			p := o.Polyline(sag)
			a := shoelace(p)
			room := max(float64(sag), 1e-5) * float64(o.Perimeter())
			if !(sag > 0) {
				room = 1e-4
			}
			if a <= 0 || math.Abs(a-float64(o.Area())) > room {
				t.Errorf("sag %v: %d points, area %v of %v", sag, len(p), a, o.Area())
			}
		}
	}
}

func FuzzPolygon(f *testing.F) {
	f.Add([]byte{0, 0, 10, 0, 10, 10, 0, 10}, byte(3))
	f.Add([]byte{0, 0, 10, 10, 10, 0, 0, 10}, byte(1))
	f.Add([]byte{0, 0, 40, 0, 40, 10, 20, 3, 0, 10}, byte(2))
	f.Fuzz(func(t *testing.T, b []byte, inset byte) {
		if len(b) > 80 {
			return
		}
		var p []Vec2
		for i := 0; i+1 < len(b); i += 2 {
			p = append(p, Vec2{float64(int8(b[i])) / 8, float64(int8(b[i+1])) / 8})
		}
		for _, build := range []func([]Vec2) (*Outline, error){Polygon, SmoothCurve} {
			o, err := build(p)
			if err != nil {
				var e *Error
				if !errors.As(err, &e) {
					t.Fatalf("error without a code: %v", err)
				}
				continue
			}
			a := float64(o.Area())
			if !(a > 0) || !(o.Perimeter() > 0) {
				t.Fatalf("area %v, perimeter %v", a, o.Perimeter())
			}
			d := unit.Length(inset) / 32
			in := must(o.InsetAt(d))
			if !(in.Area >= 0 && float64(in.Area) <= a*(1+1e-9)) {
				t.Fatalf("inset %v leaves %v of %v", d, in.Area, a)
			}
			if _, err := o.InsetPieces(d); err != nil {
				var e *Error
				if !errors.As(err, &e) || e.Code != CodeMiddle {
					t.Fatal(err)
				}
			}
		}
	})
}

func BenchmarkSmoothCurve(b *testing.B) {
	p := must(FromOffsets(kidney))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := SmoothCurve(p); err != nil {
			b.Fatal(err)
		}
	}
}

// kidney is an invented pond of about 16 x 11 ft, bent inward on its right.
var kidney = []TapedOffset{
	{0.1, 0.3, 0.35},
	{0.6, 1.1, 1.0},
	{1.2, 1.5, 1.2},
	{1.9, 1.7, 0.9},
	{2.5, 1.75, 0.6},
	{3.1, 1.7, 0.8},
	{3.8, 1.5, 1.2},
	{4.4, 1.1, 1.1},
	{4.9, 0.4, 0.5},
}
