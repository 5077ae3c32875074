package hydro

import (
	"errors"
	"math"
	"testing"

	"plashet/engine/unit"
)

// TestBestPoint: with H = 10 - 2 Q^2 through many points and a level power, the
// efficiency is greatest where d(Q H)/dQ = 10 - 6 Q^2 = 0: Q = sqrt(10/6) =
// 1.29099 (by hand), in litres in a second.
func TestBestPoint(t *testing.T) {
	w, err := WaterAt(15)
	if err != nil {
		t.Fatal(err)
	}
	d := PumpData{}
	for i := range 41 {
		q := 2 * float64(i) / 40
		d.Points = append(d.Points, CurvePoint{Flow: unit.Flow(q / 1000), Head: unit.Head(10 - 2*q*q), Watts: 200})
	}
	c, err := NewCurve(d)
	if err != nil {
		t.Fatal(err)
	}
	q, eff, ok := c.BestPoint(w)
	const rel = 2e-3 // the points are 0.05 L/s apart, and the peak is flat
	wantEff := w.DensityKgM3 * unit.StandardGravity * 1.29099e-3 * (10 - 2*1.29099*1.29099) / 200
	if !ok || math.Abs(float64(q)/1.29099e-3-1) > rel || math.Abs(float64(eff)/wantEff-1) > 1e-4 {
		t.Errorf("best point at %v with %v, %v; want 1.29099 L/s with %g", q, eff, ok, wantEff)
	}
	// at another speed flow goes with it and the efficiency stays
	slow, err := c.AtSpeed(0.8)
	if err != nil {
		t.Fatal(err)
	}
	if qs, es, ok := slow.BestPoint(w); !ok || math.Abs(float64(qs/q)-0.8) > 1e-6 || math.Abs(float64(es/eff)-1) > 1e-9 {
		t.Errorf("at 0.8 of the speed: %v, %v", qs/q, es/eff)
	}
	// wear takes efficiency in proportion and leaves the best flow
	worn, err := c.Worn(0.1)
	if err != nil {
		t.Fatal(err)
	}
	if qw, ew, ok := worn.BestPoint(w); !ok || math.Abs(float64(qw/q)-1) > 1e-6 || math.Abs(float64(ew/eff)-0.9) > 1e-9 {
		t.Errorf("worn by a tenth: %v, %v", qw/q, ew/eff)
	}
	for name, data := range map[string]PumpData{
		"one figure of watts": {Watts: 300, Points: d.Points[:0:0]},
		"still rising":        {Points: d.Points[:20]},
		"more than all":       {Points: []CurvePoint{{0, 10, 20}, {0.001, 9, 20}, {0.002, 5, 20}, {0.003, 1, 20}}},
	} {
		if len(data.Points) == 0 {
			data.Points = []CurvePoint{{0, 10, 0}, {0.001, 9, 0}, {0.002, 5, 0}}
		}
		c, err := NewCurve(data)
		if err != nil {
			t.Fatal(err)
		}
		if q, e, ok := c.BestPoint(w); ok {
			t.Errorf("%s: best point %v with %v", name, q, e)
		}
	}
	for _, wear := range []unit.Ratio{-0.1, 1, 2, unit.Ratio(math.NaN())} {
		if _, err := c.Worn(wear); err == nil {
			t.Errorf("wear of %v is taken", wear)
		}
	}
}

func TestAtmosphere(t *testing.T) {
	const abs = 5 // Pa, half the last digit of the table
	for _, c := range []struct {
		height unit.Length
		want   float64
	}{
		// ISO 2533, table of the standard atmosphere, from memory
		{0, 101325}, {1000, 89875}, {2000, 79495}, {3000, 70109}, {5000, 54020},
	} {
		p, err := AtmosphereAt(c.height)
		if err != nil || math.Abs(float64(p)-c.want) > abs {
			t.Errorf("at %v: %v, want %g (%v)", c.height, p, c.want, err)
		}
	}
	for _, h := range []unit.Length{-501, 5001, unit.Length(math.Inf(1)), unit.Length(math.NaN())} {
		if _, err := AtmosphereAt(h); err == nil {
			t.Errorf("%v is taken", h)
		}
	}
}

func TestNPSHRequired(t *testing.T) {
	c, err := NewNPSH([]NPSHPoint{{0.003, 3}, {0.001, 1.5}, {0.002, 2}})
	if err != nil {
		t.Fatal(err)
	}
	const abs = 1e-12
	for _, x := range []struct {
		q      unit.Flow
		ratio  unit.Ratio
		want   float64
		inside bool
	}{
		{0.001, 1, 1.5, true},
		{0.002, 1, 2, true},
		{0, 1, 1.5, true},
		{0.004, 1, 3, false},
		{0.001, 0.5, 0.5, true},    // r^2 NPSHr(Q/r) = 0.25 x 2
		{0.0016, 0.5, 0.75, false}, // beyond 0.003 x 0.5
	} {
		if h, inside := c.Required(x.q, x.ratio); math.Abs(float64(h)-x.want) > abs || inside != x.inside {
			t.Errorf("at %v, speed %v: %v, %v", x.q, x.ratio, h, inside)
		}
	}
	one, err := NewNPSH([]NPSHPoint{{0.002, 2}})
	if err != nil {
		t.Fatal(err)
	}
	if h, inside := one.Required(0.001, 1); h != 2 || !inside {
		t.Errorf("one point: %v", h)
	}
	if _, inside := one.Required(0.003, 1); inside {
		t.Error("one point stands beyond its flow")
	}
	for _, bad := range [][]NPSHPoint{nil, {{0.001, 1}, {0.001, 2}}, {{-1, 1}}, {{1, unit.Head(math.NaN())}}} {
		_, err := NewNPSH(bad)
		if he := (*Error)(nil); !errors.As(err, &he) {
			t.Errorf("%v is taken", bad)
		}
	}
}
