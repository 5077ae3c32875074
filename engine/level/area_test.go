package level

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tol)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// TestPondByHand holds the curve against published volumes and closed forms.
func TestPondByHand(t *testing.T) {
	ft := unit.Foot
	// The reference's example E52 (University of Regina Math Central, question
	// from Tom): 100 x 70 ft at the surface, 12 ft deep, sides 2:1: 44,256 ft3.
	pyramid := must(NewPond(Pond{Outline: must(geom.Rectangle(100*ft, 70*ft)), Section: []Step{{12 * ft, 24 * ft}}, Void: 1}))
	v, measured := pyramid.Total()
	near(t, "E52", float64(v/unit.CubicFoot), 44256, 1e-6)
	if measured {
		t.Error("nothing was measured")
	}
	// E53 (page on average end area against conic volume): 100 x 100 ft at the
	// top, 60 x 60 at the bottom, 10 ft deep: 65,333 ft3.
	square := must(NewPond(Pond{Outline: must(geom.Rectangle(100*ft, 100*ft)), Section: []Step{{10 * ft, 20 * ft}}, Void: 1}))
	near(t, "E53", float64(square.Drawn()/unit.CubicFoot), 65333, 1)
	// A cone cut off at half its depth: pi h/3 (R2 + R r + r2) = pi 0.5/3 (1 + 0.5 + 0.25).
	cone := must(NewPond(Pond{Outline: must(geom.Circle(2)), Section: []Step{{0.5, 0.5}}, Void: 1, Line: 7}))
	near(t, "cone", float64(cone.Drawn()), math.Pi*0.5/3*1.75, 1e-12)
	near(t, "cone's floor", float64(cone.Floor()), 6.5, 1e-12)
	// Shelves: 4 x 3 m; straight down 0.3, a flat shelf 0.4 wide, straight down
	// to 0.9: 12 * 0.3 + 3.2 * 2.2 * 0.6 = 7.824.
	shelf := must(NewPond(Pond{Outline: must(geom.Rectangle(4, 3)), Section: []Step{{0.3, 0}, {0.3, 0.4}, {0.9, 0.4}}, Void: 1}))
	near(t, "shelf", float64(shelf.Drawn()), 7.824, 1e-12)
	near(t, "area on the shelf", float64(shelf.Plan(-0.3)), 12, 1e-12)
	near(t, "area under the shelf", float64(shelf.Plan(-0.31)), 7.04, 1e-12)
	near(t, "area above the line", float64(shelf.Plan(0.2)), 12, 1e-12)
	near(t, "rise over the line", float64(first(shelf.Rise(2.4, 0))), 0.2, 1e-12)
	near(t, "fall past the shelf", float64(first(shelf.Rise(-3.6-0.704, 0))), -0.4, 1e-12)
	// A ledge at the water line itself, 0.5 wide: the surface is the whole.
	ledge := must(NewPond(Pond{Outline: must(geom.Rectangle(4, 3)), Section: []Step{{0, 0.5}, {1, 0.5}}, Void: 1}))
	near(t, "ledge", float64(ledge.Drawn()), 6, 1e-12)
	near(t, "over the ledge", float64(ledge.Plan(0)), 12, 1e-12)
	near(t, "beside the ledge", float64(ledge.Plan(-0.01)), 6, 1e-12)
	// A basin of stone holds its void only, and rises so much faster.
	stone := must(NewPond(Pond{Outline: must(geom.Rectangle(4, 3)), Section: []Step{{1, 0}}, Void: 0.4}))
	near(t, "stone", float64(stone.Drawn()), 4.8, 1e-12)
	near(t, "rise in stone", float64(first(stone.Rise(0.48, -0.5))), 0.1, 1e-12)
	// A measured surface scales the outline: 15 m2 for 12.
	scaled := must(NewPond(Pond{Outline: must(geom.Rectangle(4, 3)), Section: []Step{{1, 0}}, Void: 1, MeasuredArea: 15}))
	near(t, "measured area", float64(scaled.Plan(-0.5)), 15, 1e-12)
	// A measured volume is the total; the areas, and with them all changes of
	// level, stay as drawn.
	metered := must(NewPond(Pond{Outline: must(geom.Rectangle(4, 3)), Section: []Step{{1, 0}}, Void: 1, MeasuredVolume: 10}))
	if v, measured := metered.Total(); v != 10 || !measured {
		t.Errorf("measured volume: %v, %v", v, measured)
	}
	near(t, "volume at the line", float64(metered.Volume(0)), 10, 1e-12)
	near(t, "fall", float64(first(metered.Rise(-1.2, 0))), -0.1, 1e-12)
	if _, ok := metered.Level(-3); ok {
		t.Error("the pond was drawn with 12 m3 and measured with 10: at -3 it is empty")
	}
	// Tapered vessels: a bucket 0.5 m across the top, 0.4 at the floor, 0.6 high:
	// pi h/12 (D2 + D d + d2) = pi 0.05 (0.25 + 0.2 + 0.16).
	near(t, "bucket", float64(must(NewRound(0.4, 0.5, 0.6, 0)).Drawn()), math.Pi*0.05*0.61, 1e-12)
	// A box 0.6 x 0.45 at the top, 0.5 x 0.4 at the floor, 0.6 high: prismoid
	// (0.27 + 4 * 0.55 * 0.425 + 0.2) / 10 = 0.1405.
	near(t, "box", float64(must(NewBox(0.5, 0.4, 0.6, 0.45, 0.6, 2)).Drawn()), 0.1405, 1e-12)
}

func first[T any](v T, _ bool) T { return v }

func drawOutline(t *rapid.T) *geom.Outline {
	l, w := unit.Length(rapid.Float64Range(1, 8).Draw(t, "length")), unit.Length(rapid.Float64Range(1, 8).Draw(t, "width"))
	switch rapid.IntRange(0, 3).Draw(t, "shape") {
	case 0:
		return must(geom.Rectangle(l, w))
	case 1:
		return must(geom.Ellipse(l, w))
	case 2:
		a, b := float64(l), float64(w)
		return must(geom.SmoothCurve([]geom.Vec2{{X: 0, Y: 0}, {X: a / 2, Y: 0.1 * b}, {X: a, Y: 0}, {X: a, Y: b}, {X: a / 2, Y: 0.9 * b}, {X: 0, Y: b}}))
	}
	a, b := float64(l), float64(w)
	return must(geom.Polygon([]geom.Vec2{{X: 0, Y: 0}, {X: a, Y: 0}, {X: a, Y: b / 2}, {X: a / 2, Y: b / 2}, {X: a / 2, Y: b}, {X: 0, Y: b}}))
}

func drawPond(t *rapid.T, line float64) *AreaElevation {
	o := drawOutline(t)
	r := o.Inradius()
	n := rapid.IntRange(1, 4).Draw(t, "steps")
	section := make([]Step, 0, n+1)
	last := Step{}
	for range n {
		last.Depth += unit.Length(rapid.Float64Range(0, 0.6).Draw(t, "down"))
		last.In = min(0.98*r, last.In+r*unit.Length(rapid.Float64Range(0, 0.5).Draw(t, "in")))
		section = append(section, last)
	}
	section = append(section, Step{last.Depth + 0.2, last.In})
	p := Pond{Outline: o, Line: unit.Length(line), Section: section, Void: unit.Ratio(rapid.Float64Range(0.25, 1).Draw(t, "void"))}
	if rapid.Bool().Draw(t, "metered") {
		p.MeasuredVolume = unit.Volume(rapid.Float64Range(0.5, 20).Draw(t, "measured"))
	}
	return must(NewPond(p))
}

func TestPondProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.Float64Range(-100, 100).Draw(t, "line")
		a := drawPond(t, line)
		floor := float64(a.Floor())
		z := unit.Length(floor + (line+0.5-floor)*rapid.Float64Range(0, 1).Draw(t, "z"))
		v := a.Volume(z)
		back, ok := a.Level(v)
		// Where the area is tiny (a pointed floor) many levels hold the same water.
		if again := a.Volume(back); !ok || math.Abs(float64(again-v)) > 1e-11*float64(a.Drawn()) {
			t.Fatalf("volume %v at %v, level %v holds %v", v, z, back, again)
		}
		// The volume's slope is the area.
		const h = 1e-5
		lo, hi := a.Water(z-h), a.Water(z+h)
		slope := float64(a.Volume(z+h)-a.Volume(z-h)) / (2 * h)
		if slope < float64(lo)*(1-1e-6)-1e-6 || slope > float64(hi)*(1+1e-6)+1e-6 {
			t.Fatalf("slope %v at %v, area %v..%v", slope, z, lo, hi)
		}
		// A second way: Gauss points would share the method, so a plain sum of
		// 1,000 thin slices.
		sum, n := 0.0, 1000
		dz := (float64(z) - floor) / float64(n)
		for i := range n {
			sum += float64(a.Water(unit.Length(floor+(float64(i)+0.5)*dz))) * dz
		}
		if got := float64(v - a.Volume(a.Floor())); math.Abs(got-sum) > 4*dz*float64(a.Water(a.Top()))+1e-9 {
			t.Fatalf("volume %v, slices %v", got, sum)
		}
		if rise, ok := a.Rise(0.01, z); !ok || rise <= 0 {
			t.Fatalf("adding water lowers the level: %v", rise)
		}
	})
}

func TestPondRefuses(t *testing.T) {
	o := must(geom.Rectangle(4, 3))
	nan := unit.Length(math.NaN())
	step := []Step{{1, 0}}
	for _, c := range []struct {
		name string
		p    Pond
		code string
	}{
		{"no outline", Pond{Section: step, Void: 1}, CodeMissing},
		{"no depth", Pond{Outline: o, Void: 1}, CodeMissing},
		{"depth zero", Pond{Outline: o, Section: []Step{{0, 0.3}}, Void: 1}, CodeMissing},
		{"no void", Pond{Outline: o, Section: step}, CodeRange},
		{"void above 1", Pond{Outline: o, Section: step, Void: 1.2}, CodeRange},
		{"rising step", Pond{Outline: o, Section: []Step{{1, 0}, {0.5, 0.2}}, Void: 1}, CodeSection},
		{"undercut", Pond{Outline: o, Section: []Step{{0.5, 0.5}, {1, 0.2}}, Void: 1}, CodeSection},
		{"negative", Pond{Outline: o, Section: []Step{{-0.5, 0}, {1, 0}}, Void: 1}, CodeSection},
		{"NaN", Pond{Outline: o, Section: []Step{{nan, 0}}, Void: 1}, CodeNotFinite},
		{"endless", Pond{Outline: o, Section: []Step{{unit.Length(math.Inf(1)), 0}}, Void: 1}, CodeNotFinite},
		{"nothing but the middle", Pond{Outline: o, Section: []Step{{0, 1.5}, {1, 1.5}}, Void: 1}, CodeRange},
		{"line NaN", Pond{Outline: o, Section: step, Void: 1, Line: nan}, CodeNotFinite},
		{"measured area", Pond{Outline: o, Section: step, Void: 1, MeasuredArea: -1}, CodeRange},
		{"measured volume", Pond{Outline: o, Section: step, Void: 1, MeasuredVolume: -1}, CodeRange},
	} {
		_, err := NewPond(c.p)
		var e *Error
		if !errors.As(err, &e) || e.Code != c.code || e.Error() == "" {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	_, err := NewPond(Pond{Outline: o, Section: []Step{{1, 1.6}}, Void: 1})
	var g *geom.Error
	if !errors.As(err, &g) || g.Code != geom.CodeMiddle {
		t.Errorf("a step past the middle: %v", err)
	}
	for _, v := range []unit.Length{0, -1, nan} {
		if _, err := NewBox(v, 1, 1, 1, 1, 0); err == nil {
			t.Errorf("box of %v taken", v)
		}
		if _, err := NewRound(1, 1, v, 0); err == nil {
			t.Errorf("round of height %v taken", v)
		}
	}
	a := must(NewPond(Pond{Outline: o, Section: step, Void: 1}))
	if _, ok := a.Level(unit.Volume(math.NaN())); ok {
		t.Error("NaN has a level")
	}
	if z, ok := a.Level(-1); ok || z != -1 {
		t.Errorf("less than nothing: %v, %v", z, ok)
	}
	if a.Plan(-2) != 0 || a.Volume(-2) != 0 {
		t.Error("below the floor is nothing")
	}
}

func TestSizing(t *testing.T) {
	// The example of the trade's formula as the domain notes give it: 70 gpm into
	// 3 in: 3 + 0.574 * 70 / 5.196 = 10.7 in (ANSI/HI 9.8, secondary).
	near(t, "submergence", float64(must(MinSubmergence(3*unit.Inch, 70*unit.USGallonPerMinute))/unit.Inch), 10.73, 0.01)
	// The standard's own form S = D (1 + 2.3 Fr), Fr = V / sqrt(g D), from memory,
	// agrees: Fr = 3.177 ft/s / sqrt(32.17 * 0.25) = 1.120, S = 3 (1 + 2.576) = 10.73.
	near(t, "hidden basin", float64(must(HiddenBasin(0.4, 0.1, 0.1, 0.4))), 1.5, 1e-12)
	if _, err := HiddenBasin(1, 1, 1, 0); err == nil {
		t.Error("a basin without void")
	}
	if _, err := HiddenBasin(-1, 1, 1, 0.4); err == nil {
		t.Error("negative transit")
	}
	if _, err := MinSubmergence(0, 1); err == nil {
		t.Error("no bore")
	}
}

func TestRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.Float64Range(0, 1).Draw(t, "root")
		p := rapid.SampledFrom([]float64{0.3, 1, 3, 9}).Draw(t, "power")
		f := func(x float64) float64 { return math.Copysign(math.Pow(math.Abs(x-want), p), x-want) }
		if got := root(f, -1, 2); math.Abs(got-want) > 1e-9 && math.Abs(f(got)) > 1e-13 {
			t.Fatalf("root %v of (x - %v)^%v", got, want, p)
		}
	})
	if root(func(x float64) float64 { return x + 1 }, 0, 1) != 0 || root(func(x float64) float64 { return x - 2 }, 0, 1) != 1 {
		t.Error("without a change of sign the nearer end")
	}
}

// TestNewtonRoot: powers of the distance to the root, whose slope there is
// nothing, one, or without bound, and a corner at the root.
func TestNewtonRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.Float64Range(0, 1).Draw(t, "root")
		p := rapid.SampledFrom([]float64{0.3, 2.0 / 3, 1, 1.5, 3}).Draw(t, "power")
		left := rapid.Float64Range(0.01, 100).Draw(t, "slope on the left, times")
		f := func(x float64) (y, slope float64) {
			d := math.Abs(x - want)
			y, slope = math.Copysign(math.Pow(d, p), x-want), p*math.Pow(d, p-1)
			if x < want {
				y, slope = y*left, slope*left
			}
			return y, slope
		}
		got := newtonRoot(f, -1, 2)
		if y, _ := f(got); math.Abs(got-want) > 1e-9 && math.Abs(y) > 1e-13 {
			t.Fatalf("root %v of (x - %v)^%v", got, want, p)
		}
	})
	line := func(by float64) func(float64) (float64, float64) {
		return func(x float64) (float64, float64) { return x + by, 1 }
	}
	if newtonRoot(line(1), 0, 1) != 0 || newtonRoot(line(-2), 0, 1) != 1 {
		t.Error("without a change of sign the nearer end")
	}
}

// TestFilled: the volume is Volume's, and its growth that of its differences.
func TestFilled(t *testing.T) {
	o := must(geom.Rectangle(4, 3))
	a := must(NewPond(Pond{Outline: o, Line: 0, Section: []Step{{Depth: 0.3, In: 0.2}, {Depth: 0.9, In: 0.6}}, Void: 0.8}))
	changed := a.Changed(1.1, 0.05)
	rapid.Check(t, func(t *rapid.T) {
		z := unit.Length(rapid.Float64Range(-1, 0.2).Draw(t, "level"))
		v, grows := changed.Filled(z)
		if v != changed.Volume(z) {
			t.Fatalf("%v, Volume says %v", v, changed.Volume(z))
		}
		const step = 1e-6
		by := float64(changed.Volume(z+step)-changed.Volume(z-step)) / (2 * step)
		near := false // a corner: the wider shelf counts
		for _, corner := range []unit.Length{-0.85, -0.25, 0.05} {
			near = near || math.Abs(float64(z-corner)) < 2*step
		}
		if !near && math.Abs(by-float64(grows)) > 1e-5*max(1, by) {
			t.Fatalf("grows by %v, differences say %v", grows, by)
		}
	})
}
