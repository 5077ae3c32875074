package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// mpmath at 40 digits (testdata/README.md). The nearest a float64 can come to
// the derivative is a few times 1e-14.
func TestFrictionVectors(t *testing.T) {
	_, rows := vectors(t, "colebrook", 0)
	worst, worstSlope := 0.0, 0.0
	for _, r := range rows {
		f, df := Friction(unit.Ratio(r[0]), unit.Ratio(r[1]))
		worst = max(worst, relDiff(float64(f), r[2]))
		worstSlope = max(worstSlope, math.Abs(df-r[3])*r[0]/r[2]) // against f/Re
	}
	t.Logf("worst relative error: f %.2g, df/dRe over f/Re %.2g", worst, worstSlope)
	if worst > 1e-13 || worstSlope > 1e-12 {
		t.Errorf("worst relative error: f %.2g (want 1e-13), slope %.2g (want 1e-12)", worst, worstSlope)
	}
}

func TestFrictionLaminar(t *testing.T) {
	for _, re := range []float64{1e-9, 1, 640, 2000} {
		f, df := Friction(unit.Ratio(re), 0.01)
		near(t, "f", float64(f), 64/re, 1e-15, 0)
		near(t, "df/dRe", df, -64/(re*re), 1e-14, 0)
	}
}

func TestFrictionEdges(t *testing.T) {
	if f, df := Friction(0, 0); !math.IsInf(float64(f), 1) || !math.IsInf(df, -1) {
		t.Errorf("at rest: got %v, %v", f, df)
	}
	for _, bad := range [][2]float64{{-1, 0}, {math.NaN(), 0}, {5000, -1e-9}, {5000, 0.0501}, {5000, math.NaN()}, {3000, math.Inf(1)}} {
		if f, df := Friction(unit.Ratio(bad[0]), unit.Ratio(bad[1])); !math.IsNaN(float64(f)) || !math.IsNaN(df) {
			t.Errorf("%v: got %v, %v, want not a number", bad, f, df)
		}
	}
}

// The bridge written out a second time, as the comment of Friction has it.
func TestBridgeAsWritten(t *testing.T) {
	for _, rel := range []float64{0, 1e-5, 1e-3, 0.01, 0.05} {
		f4, _ := Friction(4000, unit.Ratio(rel))
		g0, s0 := 128000.0, 64.0
		g1 := float64(f4) * 4000 * 4000
		s := math.Ln10/18.574*rel*4000 + math.Ln10/(2*math.Sqrt(float64(f4)))
		s1 := g1 / 4000 * 2 * s / (1 + s)
		for re := 2000.0; re <= 4000; re += 125 {
			x := (re - 2000) / 2000
			g := (2*x*x*x-3*x*x+1)*g0 + (x*x*x-2*x*x+x)*2000*s0 + (3*x*x-2*x*x*x)*g1 + (x*x*x-x*x)*2000*s1
			f, _ := Friction(unit.Ratio(re), unit.Ratio(rel))
			near(t, "bridge", float64(f), g/(re*re), 1e-13, 0)
		}
	}
}

// Neither f Re² (which the loss goes with) nor its slope jumps at an end of
// the bridge.
func TestBridgeEnds(t *testing.T) {
	for _, rel := range []float64{0, 1e-6, 1e-4, 0.003, 0.05} {
		w := newWall(rel)
		for _, end := range []float64{LaminarEnd, TurbulentStart} {
			below, above := math.Nextafter(end, 0), math.Nextafter(end, 1e9)
			g0, s0 := w.number(below)
			g1, s1 := w.number(above)
			near(t, "value", g0, g1, 1e-12, 0)
			near(t, "slope", s0, s1, 1e-9, 0)
		}
	}
}

// The head loss rises strictly over the whole range, for every roughness from
// smooth to 0.05; the slope is above zero, so it does between the steps too.
func TestLossRisesThroughBridge(t *testing.T) {
	for i := range 101 {
		rel := 0.05 * math.Pow(float64(i)/100, 3)
		w := newWall(rel)
		last := 0.0
		for re := 1.0; re <= 6000; re++ {
			g, dg := w.number(re)
			if !(g > last) || !(dg > 0) {
				t.Fatalf("rel %g, Re %g: f Re² %g after %g, slope %g", rel, re, g, last, dg)
			}
			last = g
		}
	}
}

// Halving the step of a central difference: the slope given is the slope.
func TestFrictionSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := math.Exp(rapid.Float64Range(math.Log(10), math.Log(1e8)).Draw(t, "ln re"))
		rel := rapid.Float64Range(0, 0.05).Draw(t, "rel")
		w := newWall(rel)
		step := re * 1e-6
		for _, end := range []float64{LaminarEnd, TurbulentStart} {
			if math.Abs(re-end) < 2*step {
				t.Skip("the second derivative jumps here")
			}
		}
		up, _ := w.number(re + step)
		down, _ := w.number(re - step)
		_, slope := w.number(re)
		if d := relDiff((up-down)/(2*step), slope); d > 1e-7 {
			t.Fatalf("slope %g, difference %g", slope, (up-down)/(2*step))
		}
	})
}

// The explicit formulas are published as within about 2 percent (Haaland) and
// 3 percent (Swamee-Jain) of Colebrook-White; Churchill is one of Swamee's kin.
func TestExplicitFormulasNear(t *testing.T) {
	for re := 5000.0; re < 1e8; re *= 1.7 {
		for _, rel := range []float64{1e-6, 1e-4, 1e-3, 0.01} {
			a, b := unit.Ratio(re), unit.Ratio(rel)
			f, _ := Friction(a, b)
			near(t, "Haaland", Haaland(a, b), f, 0.02, 0)
			near(t, "Swamee-Jain", SwameeJain(a, b), f, 0.03, 0)
		}
	}
	if !math.IsNaN(float64(Haaland(3000, 0))) || !math.IsNaN(float64(SwameeJain(1e5, 0.06))) || !math.IsNaN(float64(Churchill(0, 0))) {
		t.Error("outside its range an explicit formula gives a number")
	}
}

func TestRegimes(t *testing.T) {
	for re, want := range map[unit.Ratio]PipeRegime{0: Laminar, -2000: Laminar, 2000.1: Bridge, -3999: Bridge, 4000: Turbulent, -1e9: Turbulent} {
		if got := RegimeOf(re); got != want {
			t.Errorf("Re %v: got %v, want %v", re, got, want)
		}
	}
}

// clamond is the friction factor by the two quartic steps that Clamond (Ind.
// Eng. Chem. Res. 48 (2009) 3665) publishes: a second way to the same number,
// and the reference to hold our speed against.
func clamond(re, rel float64) float64 {
	x := rel * re * math.Ln10 / 18.574
	rhs := math.Log(re) + math.Log(math.Ln10/5.02)
	f := rhs - 0.2
	for range 2 {
		s := x + f
		e := (math.Log(s) + f - rhs) / (1 + s)
		f -= (1 + s + 0.5*e) * e * s / (1 + s + e*(1+e/3))
	}
	r := math.Ln10 / (2 * f)
	return r * r
}

func TestFrictionBySecondMethod(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := math.Exp(rapid.Float64Range(math.Log(4000), math.Log(1e9)).Draw(t, "ln re"))
		rel := 0.05 * math.Pow(rapid.Float64Range(0, 1).Draw(t, "share"), 4)
		f, _ := Friction(unit.Ratio(re), unit.Ratio(rel))
		if d := relDiff(float64(f), clamond(re, rel)); d > 2e-14 {
			t.Fatalf("f %v, by Clamond %v, off by %.2g", f, clamond(re, rel), d)
		}
	})
}

func BenchmarkFrictionClamond(b *testing.B) {
	b.ReportAllocs()
	re := 76242.0
	for b.Loop() {
		sink += clamond(re, 2.9e-5)
		re += 0.5
	}
}

func BenchmarkFriction(b *testing.B) {
	b.ReportAllocs()
	re := unit.Ratio(76242)
	var sum float64
	for b.Loop() {
		f, df := Friction(re, 2.9e-5)
		sum += float64(f) + df
		re += 0.5
	}
	sink = sum
}

var sink float64
