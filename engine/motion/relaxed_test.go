package motion

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// TestRelaxOrder: on x' = -x + sin t, whose solution is known, half the step
// leaves a quarter of the error, however many the stages.
func TestRelaxOrder(t *testing.T) {
	rate := func(t float64, x, dx []float64) { dx[0] = math.Sin(t) - x[0] }
	exact := func(t float64) float64 { return 1.5*math.Exp(-t) + (math.Sin(t)-math.Cos(t))/2 }
	never := func(int) bool { return false }
	run := func(n, stages int) float64 {
		st := newStepper(1)
		x, h := []float64{1}, 2/float64(n)
		for i := range n {
			at := float64(i) * h
			rate(at, x, st.k[0])
			st.relax(rate, at, x, h, 1, stages, never)
			copy(x, st.next)
		}
		return math.Abs(x[0] - exact(2))
	}
	for stages := 2; stages <= mostStages; stages++ {
		a, b := run(40, stages), run(80, stages)
		if order := math.Log2(a / b); order < 1.8 || order > 2.3 || a > 1e-3 {
			t.Errorf("%d stages: errors %.1e and %.1e, order %.2f", stages, a, b, order)
		}
	}
}

// TestRelaxStable: what settles at the fastest rate that the stages are chosen
// for dies away, by 1 - epsilon/3 a step at least (the paper, section 2.1); at
// a third more it no longer does.
func TestRelaxStable(t *testing.T) {
	for z := 1.0; z < 140; z *= 1.7 {
		after := func(z float64, s int) float64 {
			st := newStepper(1)
			rate := func(_ float64, x, dx []float64) { dx[0] = -z * x[0] }
			x := []float64{1}
			for range 20 {
				rate(0, x, st.k[0])
				st.relax(rate, 0, x, 1, 1, s, func(int) bool { return false })
				copy(x, st.next)
			}
			return math.Abs(x[0])
		}
		s := stagesFor(z)
		if v := after(z, s); v > math.Pow(1-damping/3+0.01, 20) {
			t.Errorf("rate %.1f with %d stages: %.2g is left", z, s, v)
		}
		if most := 0.66 * float64(s*s) * 1.3; after(most, s) < 1 {
			t.Errorf("%d stages bear %.1f", s, most)
		}
	}
}

// TestAccurate: over random features, and over the starts and stops that they
// go through, the usual accuracy gives what a thousand times finer one gives,
// which takes the other method alone: levels within half a millimetre.
func TestAccurate(t *testing.T) {
	compared := 0
	var worst unit.Length
	rapid.Check(t, func(t *rapid.T) {
		w := drawTwin(t)
		s, err := New(w.in)
		if err != nil {
			t.Fatal(err)
		}
		both := func(of string, p Program) Moment {
			p.Until, p.Whole = 600, true
			a, err := s.Run(p)
			if err != nil {
				t.Fatal(err)
			}
			p.Accuracy = 1e-8
			b, err := s.Run(p)
			if err != nil {
				t.Fatal(err)
			}
			compared++
			offs := map[string]unit.Length{"pond": a.End.Pond - b.End.Pond, "highest": a.Highest - b.Highest}
			for name, off := range offs {
				worst = max(worst, off, -off)
				if math.Abs(float64(off)) > agreed {
					t.Fatalf("%s %s: off by %.5f at %v %v; %+v, finer %+v", of, name, float64(off), a.HighestAt, b.HighestAt, a.Events, b.Events)
				}
			}
			return a.End
		}
		run := both("run", Program{From: s.AtRest(Held), Pump: true, RunUp: 1, Valve: Works})
		both("stop", Program{From: run, Valve: Works})
		both("open", Program{From: run, Valve: StuckOpen})
		both("rain", Program{From: run, Valve: Works, Rain: Rain{Depth: 0.05, Over: 300}})
	})
	if compared == 0 {
		t.Error("nothing was compared")
	}
	t.Logf("%d courses, worst %.1e m", compared, float64(worst))
}
