package job

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// TestReduceExamples: worked examples of differential levelling, to the
// hundredth of a foot that a rod is read to.
func TestReduceExamples(t *testing.T) {
	for _, c := range []struct {
		source                         string
		benchmark, backsight, forsight float64 // ft
		height, elevation              float64 // ft
	}{
		// Lecture notes on differential levelling: benchmark Rock 820.00, plus sight
		// 8.42, minus sight 1.20; height 828.42 printed there, the difference by hand.
		{"lecture notes on differential levelling", 820.00, 8.42, 1.20, 828.42, 827.22},
		// An examination's practice problem: benchmark 520.50, backsight 4.25,
		// foresight 6.80; both answers printed there.
		{"practice problem of an engineering examination", 520.50, 4.25, 6.80, 524.75, 517.95},
	} {
		j := decodeWell(t, head+fmt.Sprintf(`, "survey": {
			"setups": [{"name": "A", "benchmark": "bm", "reading": "%.2f ft"}],
			"points": [{"name": "bm", "elevation": "%.2f ft"}, {"name": "tp", "reading": "%.2f ft"}]}}`, c.backsight, c.benchmark, c.forsight))
		r, faults := j.Elevations()
		if len(faults) > 0 {
			t.Fatalf("%s: %s", c.source, sayAll(t, faults))
		}
		tp, ok := r.Point("tp")
		if got := float64(tp / unit.Foot); !ok || math.Abs(got-c.elevation) > 1e-9 {
			t.Errorf("%s: elevation %.4f ft, published %.2f", c.source, got, c.elevation)
		}
		if got := float64(r.Setups[0].Height / unit.Foot); math.Abs(got-c.height) > 1e-9 {
			t.Errorf("%s: height of instrument %.4f ft, published %.2f", c.source, got, c.height)
		}
	}
}

// TestReduceThroughTurningPoints: a chain of three standings written in any
// order, worked by hand: 100 + 4.62 - 2.10 = 102.52; + 6.10 - 4.25 = 104.37;
// 102.52 + 6.10 - 8.62 = 100.00 back on the step.
func TestReduceThroughTurningPoints(t *testing.T) {
	j := decodeWell(t, head+`, "survey": {
		"setups": [
			{"name": "B", "benchmark": "turn", "reading": "6.10 ft"},
			{"name": "A", "benchmark": "step", "reading": {"value": "4.62 ft", "tolerance": "0.01 ft"}}],
		"points": [
			{"name": "lip", "setup": "B", "reading": "4.25 ft"},
			{"name": "turn", "setup": "A", "reading": {"value": "2.10 ft", "tolerance": "0.01 ft"}},
			{"name": "step again", "setup": "B", "reading": "8.62 ft", "elevation": "100 ft"},
			{"name": "step", "elevation": "100 ft"}]},
		"pond": {"water": "@lip - 4.37 ft", "rim": "@water + 3 in"}}`)
	r, faults := j.Elevations()
	if len(faults) > 0 {
		t.Fatal(sayAll(t, faults))
	}
	for name, want := range map[string]float64{"turn": 102.52, "lip": 104.37, "step": 100, "step again": 100, "water": 100, "rim": 100.25} {
		if got, ok := r.Point(name); !ok || math.Abs(float64(got/unit.Foot)-want) > 1e-9 {
			t.Errorf("%s: %v ft, expected %v", name, got/unit.Foot, want)
		}
	}
	if len(r.Points) != 4 || r.Points[0].Name != "lip" || r.Points[0].Setup != "B" || r.Points[3].Setup != "" {
		t.Errorf("points: %+v", r.Points)
	}
	if plus := float64(r.Points[0].Plus / unit.Foot); math.Abs(plus-0.02) > 1e-9 { // 0.01 + 0.01 entered on the way
		t.Errorf("the lip's tolerances add up to %v ft", plus)
	}
	if len(r.Closures) != 1 || math.Abs(float64(r.Closures[0].Misclosure)) > 1e-9 || r.Closures[0].Assumed {
		t.Errorf("closures: %+v", r.Closures)
	}
	if rim, ok := r.Level(j.Pond.Rim); !ok || math.Abs(float64(rim/unit.Foot)-100.25) > 1e-9 {
		t.Errorf("rim at %v ft", rim/unit.Foot)
	}
}

// TestClosure: the misclosure is told with its sign, passes up to its limit and
// not beyond.
func TestClosure(t *testing.T) {
	for _, c := range []struct {
		name, reading, tolerance string
		faults                   int
		assumed                  bool
		misclosureM              float64
	}{
		{"closed", "1.000 m", "", 0, true, 0},
		{"at the assumed limit", "0.994 m", "", 0, true, 0.006},
		{"over the assumed limit", "0.993 m", "", 1, true, 0.007},
		{"below, over the limit", "1.007 m", "", 1, true, -0.007},
		{"at the entered limit", "0.980 m", "20 mm", 0, false, 0.020},
		{"over the entered limit", "0.979 m", "20 mm", 1, false, 0.021},
		{"over a narrow limit", "0.998 m", "1 mm", 1, false, 0.002},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := &Job{Format: FormatName, Version: Version, Name: "x", Units: "metric", Survey: Survey{
				Setups: []Setup{{Name: "A", Benchmark: "bm"}},
				Points: []Point{{Name: "bm"}, {Name: "check"}},
			}}
			for path, text := range map[string]string{
				"/survey/setups/0/reading": "1 m", "/survey/points/0/elevation": "10 m",
				"/survey/points/1/elevation": "10 m", "/survey/points/1/reading": c.reading,
			} {
				if f := j.Set(path, text); f != nil {
					t.Fatal(say(t, *f, unit.Metric))
				}
			}
			if c.tolerance != "" {
				if f := j.Set("/survey/points/1/reading/tolerance", c.tolerance); f != nil {
					t.Fatal(say(t, *f, unit.Metric))
				}
			}
			r, faults := j.Elevations()
			if len(faults) != c.faults || len(r.Closures) != 1 {
				t.Fatalf("%d faults, %+v", len(faults), r.Closures)
			}
			if got := r.Closures[0]; got.Assumed != c.assumed || math.Abs(float64(got.Misclosure)-c.misclosureM) > 1e-9 {
				t.Errorf("%+v", got)
			}
		})
	}
}

// TestBuiltInLevels: @water and @rim are the pond's own unless the survey says
// otherwise.
func TestBuiltInLevels(t *testing.T) {
	plain := decodeWell(t, head+`, "pond": {"water": "2 ft", "rim": "@water + 6 in"}, "vault": {"shape": "box", "length": 24, "width": 18, "depth": 20, "sill": "@rim - 1 ft"}}`)
	r, faults := plain.Elevations()
	if sill, ok := r.Level(plain.Vault.Sill); len(faults) > 0 || !ok || math.Abs(float64(sill/unit.Foot)-1.5) > 1e-9 {
		t.Errorf("sill at %v ft %s", sill/unit.Foot, sayAll(t, faults))
	}
	own := decodeWell(t, head+`, "survey": {"points": [{"name": "water", "elevation": "10 ft"}]}, "pond": {"water": "@water - 1 ft", "rim": "@water"}}`)
	r, faults = own.Elevations()
	water, ok := r.Level(own.Pond.Water)
	if named, _ := r.Point("water"); len(faults) > 0 || !ok || math.Abs(float64(water/unit.Foot)-9) > 1e-9 || math.Abs(float64(named/unit.Foot)-10) > 1e-9 {
		t.Errorf("pond water at %v ft, point water at %v ft %s", water/unit.Foot, named/unit.Foot, sayAll(t, faults))
	}
	if _, ok := r.Level(Level{}); ok {
		t.Error("an empty level has an elevation")
	}
	if _, ok := (Reduced{}).Level(own.Pond.Rim); ok {
		t.Error("a survey that was not reduced gives an elevation")
	}
}

// TestLongChain: ten thousand turning points in the worst order are reduced.
func TestLongChain(t *testing.T) {
	const n = 10_000
	j := &Job{Format: FormatName, Version: Version, Name: "x", Units: "metric"}
	reading := func(si unit.Length) Length { return Length{Text: "typed", SI: si} }
	for i := n - 1; i > 0; i-- {
		j.Survey.Setups = append(j.Survey.Setups, Setup{Name: fmt.Sprint("s", i), Benchmark: fmt.Sprint("p", i-1), Reading: reading(1)})
		j.Survey.Points = append(j.Survey.Points, Point{Name: fmt.Sprint("p", i), Setup: fmt.Sprint("s", i), Reading: reading(0.5)})
	}
	j.Survey.Points = append(j.Survey.Points, Point{Name: "p0", Elevation: reading(0)})
	r, faults := j.Elevations()
	if top, ok := r.Point(fmt.Sprint("p", n-1)); len(faults) > 0 || !ok || math.Abs(float64(top)-0.5*(n-1)) > 1e-6 {
		t.Errorf("top at %v m, %d faults", top, len(faults))
	}
}

// TestReduceProperties: whatever the standings, a shift of the datum shifts
// every point alike, and the order of points and standings changes nothing.
func TestReduceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "points")
		mm := func(lo, hi int, label string) unit.Length {
			return unit.Length(rapid.IntRange(lo, hi).Draw(t, label)) * unit.Millimetre
		}
		typed := func(si unit.Length) Length { return Length{Text: "typed", SI: si} }
		var s Survey
		s.Points = append(s.Points, Point{Name: "p0", Elevation: typed(mm(-9000, 9000, "benchmark"))})
		true0 := []unit.Length{s.Points[0].Elevation.SI}
		for i := 1; i < n; i++ {
			from := rapid.IntRange(0, i-1).Draw(t, "from")
			back, fore := mm(0, 4000, "back"), mm(0, 4000, "fore")
			s.Setups = append(s.Setups, Setup{Name: fmt.Sprint("s", i), Benchmark: fmt.Sprint("p", from), Reading: typed(back)})
			s.Points = append(s.Points, Point{Name: fmt.Sprint("p", i), Setup: fmt.Sprint("s", i), Reading: typed(fore)})
			true0 = append(true0, true0[from]+back-fore)
		}
		shift := mm(-5000, 5000, "shift")
		moved := Survey{Setups: rapid.Permutation(s.Setups).Draw(t, "setups"), Points: rapid.Permutation(s.Points).Draw(t, "order")}
		for i := range moved.Points {
			if p := &moved.Points[i]; !p.Elevation.IsZero() {
				p.Elevation.SI += shift
			}
		}
		a, faultsA := (&Job{Survey: s}).Elevations()
		b, faultsB := (&Job{Survey: moved}).Elevations()
		if len(faultsA)+len(faultsB) > 0 {
			t.Fatalf("%v %v", faultsA, faultsB)
		}
		for i, want := range true0 {
			name := fmt.Sprint("p", i)
			atA, okA := a.Point(name)
			atB, okB := b.Point(name)
			if !okA || !okB || math.Abs(float64(atA-want)) > 1e-9 || math.Abs(float64(atB-atA-shift)) > 1e-9 {
				t.Fatalf("%s: %v and %v, built at %v, shifted by %v", name, atA, atB, want, shift)
			}
		}
	})
}

// TestVoidPointsStayVoid: one cause, one fault; what hangs on it has no
// elevation, and nothing else is lost.
func TestVoidPointsStayVoid(t *testing.T) {
	j, faults := Read(files(t, "damaged")["survey.json"])
	r, _ := j.Elevations()
	for _, name := range []string{"nothing", "which", "unknown", "round one", "round two", "behind the circle", "water", "rim"} {
		if at, ok := r.Point(name); ok {
			t.Errorf("%s has the elevation %v", name, at)
		}
	}
	if at, ok := r.Point("step"); !ok || math.Abs(float64(at/unit.Foot)-100) > 1e-9 {
		t.Errorf("the step is at %v ft", at/unit.Foot)
	}
	for _, f := range faults {
		if strings.Contains(f.Path, "/points/6") || strings.Contains(f.Path, "/points/5") {
			t.Errorf("a point that hangs on another is told: %s", say(t, f, unit.US))
		}
	}
}
