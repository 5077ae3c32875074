package geom

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// byQuadtree bounds the area at least d inside a polygon in a way that shares
// nothing with the code under test: squares are halved until the distance of
// their middle to the edge (which changes by at most the distance moved) tells
// that they lie wholly in or out, or they are small.
func byQuadtree(p []Vec2, d float64, depth int) (lo, hi float64) {
	box := rectOf(p)
	side := max(box.Max.X-box.Min.X, box.Max.Y-box.Min.Y)
	var visit func(c Vec2, s float64, depth int)
	visit = func(c Vec2, s float64, depth int) {
		dist := math.Inf(1)
		inside := false
		for i, a := range p {
			b := p[(i+1)%len(p)]
			dist = min(dist, toSegment(c, a, b))
			if (a.Y > c.Y) != (b.Y > c.Y) && c.X < a.X+(c.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				inside = !inside
			}
		}
		if !inside {
			dist = -dist
		}
		r := s * math.Sqrt2 / 2
		switch {
		case dist-r >= d:
			lo, hi = lo+s*s, hi+s*s
		case dist+r < d:
		case depth == 0:
			hi += s * s
		default:
			for _, k := range [...]Vec2{{-1, -1}, {1, -1}, {-1, 1}, {1, 1}} {
				visit(c.add(k.scale(s/4)), s/2, depth-1)
			}
		}
	}
	visit(box.Min.mid(box.Max), side, depth)
	return lo, hi
}

func TestInsetAgainstQuadtree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := star(t)
		o, err := Polygon(p)
		if err != nil {
			t.Skip("not simple")
		}
		d := rapid.Float64Range(0.01, 1).Draw(t, "d")
		got := float64(must(o.InsetAt(unit.Length(d))).Area)
		lo, hi := byQuadtree(o.shape.(polygon).p, d, 6)
		if got < lo-1e-9 || got > hi+1e-9 {
			t.Fatalf("inset %v: %v outside %v..%v", d, got, lo, hi)
		}
	})
}

// TestInsetTwoWays: the shrinking of convex polygons and the cutting of parallel
// lines are different methods and agree.
func TestInsetTwoWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o, err := Polygon(convexCorners(t))
		if err != nil {
			t.Skip("flat")
		}
		g := o.shape.(polygon)
		if g.stages == nil {
			t.Fatal("corners on an ellipse are convex")
		}
		r := float64(o.Inradius())
		d := r * rapid.Float64Range(0, 1.1).Draw(t, "part")
		a, b := g.inset(d), parallel(g.p, d)
		if math.Abs(a-b) > 1e-8*g.area() {
			t.Fatalf("inset %v of %v: shrinking %v, cutting %v", d, r, a, b)
		}
	})
}

func TestInsetRectangleAndCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, w := rapid.Float64Range(0.1, 20).Draw(t, "l"), rapid.Float64Range(0.1, 20).Draw(t, "w")
		d := rapid.Float64Range(0, 11).Draw(t, "d")
		r := must(Rectangle(unit.Length(l), unit.Length(w)))
		in := must(r.InsetAt(unit.Length(d)))
		want := max(0, l-2*d) * max(0, w-2*d)
		if math.Abs(float64(in.Area)-want) > 1e-10*l*w || !in.Exact {
			t.Fatalf("rectangle %v x %v less %v: %v, want %v", l, w, d, in, want)
		}
		if math.Abs(float64(r.Inradius())-min(l, w)/2) > 1e-9*max(l, w) {
			t.Fatalf("inradius %v", r.Inradius())
		}
		c := must(Circle(unit.Length(l)))
		in = must(c.InsetAt(unit.Length(d)))
		if want := math.Pi * max(0, l/2-d) * max(0, l/2-d); math.Abs(float64(in.Area)-want) > 1e-10*l*l || !in.Exact {
			t.Fatalf("circle %v less %v: %v, want %v", l, d, in, want)
		}
	})
}

// TestInsetByHand: an L of 3 x 3 less 1.5 x 1.5. Area 6.75, perimeter 12, five
// outward corners of tan 45 and one inward of -pi/4. At d = 0.5 the arms, 1.5
// wide, leave 0.5: the closed form 6.75 - 6 + (5 - pi/4)/4 = 1.80365. At d = 0.7
// (still before the ends close) 6.75 - 8.4 + (5 - pi/4) 0.49 = 0.41515. At 0.75
// the arms close, 6.75 - 9 + 0.5625 (5 - pi/4) = 0.12072: what is left lies in
// the elbow, which widens towards the outer corner: the largest circle there
// touches both outer sides and the inner corner, r + r/sqrt2 = 1.5 (in x and y),
// r = 0.87868.
func TestInsetByHand(t *testing.T) {
	o := must(Polygon([]Vec2{{0, 0}, {3, 0}, {3, 1.5}, {1.5, 1.5}, {1.5, 3}, {0, 3}}))
	for _, c := range []struct{ d, want float64 }{{0, 6.75}, {0.5, 1.80365}, {0.7, 0.41515}, {0.75, 0.12072}} {
		in := must(o.InsetAt(unit.Length(c.d)))
		within(t, "L", float64(in.Area), c.want, 1e-5)
		if !in.Exact {
			t.Error("a polygon's inset is exact")
		}
	}
	within(t, "inradius", float64(o.Inradius()), 1.5/(1+math.Sqrt(0.5)), 1e-8)
	d, k := o.Event()
	within(t, "k", float64(k), 5-math.Pi/4, 1e-12)
	if d > 0.75 || d < 0.4 {
		t.Errorf("event certain at %v", d)
	}
	// A room in two halves joined by a neck: past the neck both halves count.
	// Two squares of 2 x 2 with a neck 1 long and 0.5 wide; at d = 0.5 the neck
	// is gone, each square leaves 1 x 1, and its opening to the neck (corners
	// 0.5 from the remaining square's border) nothing more. 2 (by hand).
	n := must(Polygon([]Vec2{{0, 0}, {2, 0}, {2, 0.75}, {3, 0.75}, {3, 0}, {5, 0}, {5, 2}, {3, 2}, {3, 1.25}, {2, 1.25}, {2, 2}, {0, 2}}))
	in := must(n.InsetAt(0.5))
	lo, hi := byQuadtree(n.shape.(polygon).p, 0.5, 10)
	if float64(in.Area) < lo || float64(in.Area) > hi || in.Area < 2 || in.Simple {
		t.Errorf("two halves: %v, quadtree %v..%v", in, lo, hi)
	}
}

// TestInsetEllipse holds the ellipse past its event against the polygon method.
func TestInsetEllipse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.5, 8).Draw(t, "a"), rapid.Float64Range(0.5, 8).Draw(t, "b")
		o := must(Ellipse(unit.Length(a), unit.Length(b)))
		d := rapid.Float64Range(0, 4).Draw(t, "d")
		got := float64(must(o.InsetAt(unit.Length(d))).Area)
		rough := newPolygon(o.Polyline(unit.Length(1e-4 * min(a, b)))).inset(d)
		if math.Abs(got-rough) > 1e-3*a*b || got < rough-1e-9 {
			t.Fatalf("ellipse %v x %v less %v: %v, fine polygon %v", a, b, d, got, rough)
		}
		if math.Abs(float64(o.Inradius())-min(a, b)/2) > 1e-7 {
			t.Fatalf("inradius %v", o.Inradius())
		}
	})
}

// TestInsetSmooth holds a smooth curve against a polygon of fine chords, before
// and past its first event.
func TestInsetSmooth(t *testing.T) {
	var met struct{ before, past bool }
	rapid.Check(t, func(t *rapid.T) {
		o, err := SmoothCurve(star(t))
		if err != nil {
			t.Skip("crosses itself")
		}
		d := rapid.Float64Range(0, 1).Draw(t, "d")
		in := must(o.InsetAt(unit.Length(d)))
		rough := parallel(o.Polyline(5e-4), d)
		if math.Abs(float64(in.Area)-rough) > 3e-3*float64(o.Area()) {
			t.Fatalf("less %v (event %v): %v, fine polygon %v", d, o.shape.(smooth).reach, in, rough)
		}
		if in.Simple {
			met.before = true
		} else {
			met.past = true
		}
	})
	if !met.before || !met.past {
		t.Error("the draw never reached one side of the event")
	}
}

// TestInsetPieces: pieces join, follow the area, and stop at the middle.
func TestInsetPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var o *Outline
		var err error
		switch rapid.IntRange(0, 3).Draw(t, "shape") {
		case 0:
			o, err = SmoothCurve(star(t))
		case 1:
			o, err = Polygon(convexCorners(t))
		case 2:
			o, err = Ellipse(unit.Length(rapid.Float64Range(1, 6).Draw(t, "a")), unit.Length(rapid.Float64Range(1, 6).Draw(t, "b")))
		default:
			o, err = Polygon(star(t))
		}
		if err != nil {
			t.Skip("not simple")
		}
		r := o.Inradius()
		to := r * unit.Length(rapid.Float64Range(0, 1).Draw(t, "part"))
		pieces, err := o.InsetPieces(to)
		if err != nil {
			t.Fatal(err)
		}
		a := float64(o.Area())
		if pieces[0].From != 0 || pieces[len(pieces)-1].Until < to || math.Abs(float64(pieces[0].Area)-a) > 1e-12*a {
			t.Fatalf("pieces %v for %v", pieces, to)
		}
		for i, p := range pieces {
			if i > 0 && (p.From != pieces[i-1].Until || math.Abs(float64(pieces[i-1].At(p.From)-p.Area)) > 1e-8*a) {
				t.Fatalf("pieces %d and %d do not join", i-1, i)
			}
			for _, f := range []unit.Length{0.1, 0.37, 0.8} {
				d := p.From + f*(p.Until-p.From)
				if got, want := float64(p.At(d)), float64(must(o.InsetAt(d)).Area); math.Abs(got-want) > 1e-4*a || p.Exact && math.Abs(got-want) > 1e-9*a {
					t.Fatalf("piece %d at %v: %v, area %v of %v", i, d, got, want, a)
				}
			}
		}
		_, err = o.InsetPieces(r * 1.01)
		var e *Error
		if !errors.As(err, &e) || e.Code != CodeMiddle || math.Abs(e.Limit.SI-float64(r)) > 1e-12 {
			t.Fatalf("past the middle: %v", err)
		}
	})
}

func TestInsetRefuses(t *testing.T) {
	o := must(Circle(1))
	for _, d := range []unit.Length{-0.1, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		if _, err := o.InsetAt(d); err == nil {
			t.Errorf("inset %v taken", d)
		}
		if _, err := o.InsetPieces(d); err == nil {
			t.Errorf("pieces to %v taken", d)
		}
	}
}

// TestInsetShrinks: a further inset never leaves more, and never less than a
// circle's worth is lost.
func TestInsetShrinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := star(t)
		o, err := SmoothCurve(p)
		if err != nil || rapid.Bool().Draw(t, "corners") {
			o = must(Polygon(p))
		}
		last := float64(o.Area())
		whole := last
		for d := unit.Length(0.05); d < 2; d += 0.05 {
			a := float64(must(o.InsetAt(d)).Area)
			if a > last+1e-9*whole {
				t.Fatalf("inset %v leaves %v after %v", d, a, last)
			}
			last = a
		}
	})
}

func BenchmarkInset(b *testing.B) {
	p := must(FromOffsets(kidney))
	o := must(SmoothCurve(p))
	corners := must(Polygon(p))
	for _, c := range []struct {
		name string
		o    *Outline
		d    unit.Length
	}{{"smooth before its event", o, 0.1}, {"smooth past its event", o, 0.9}, {"polygon past its event", corners, 0.9}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.o.InsetAt(c.d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("pieces of the smooth curve to 0.9 m", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := o.InsetPieces(0.9); err != nil {
				b.Fatal(err)
			}
		}
	})
}
