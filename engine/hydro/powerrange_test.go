package hydro

import (
	"math"
	"math/rand/v2"
	"testing"

	"plashet/engine/unit"
)

// TestPowerRange: the least and greatest of many samples lie within the range,
// and come near to it.
func TestPowerRange(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 21))
		d := PumpData{}
		for i := range 3 + r.IntN(6) {
			d.Points = append(d.Points, CurvePoint{Flow: unit.Flow(i) / 1000, Head: unit.Head(20 - i), Watts: unit.Power(100 + 300*r.Float64())})
		}
		c, err := NewCurve(d)
		if err != nil {
			t.Fatal(err)
		}
		end := float64(len(d.Points)-1) / 1000
		low := end * r.Float64()
		high := low + (end*1.2-low)*r.Float64()
		least, greatest := c.PowerRange(unit.Flow(low), unit.Flow(high))
		sampled := [2]float64{math.Inf(1), math.Inf(-1)}
		const n = 4000
		for k := range n + 1 {
			w, _, _ := c.Power(unit.Flow(low + (high-low)*float64(k)/n))
			sampled[0], sampled[1] = min(sampled[0], float64(w)), max(sampled[1], float64(w))
		}
		const near = 1e-3 // of a watt, between two samples
		if float64(least) > sampled[0]+1e-9 || float64(greatest) < sampled[1]-1e-9 || sampled[0]-float64(least) > near || float64(greatest)-sampled[1] > near {
			t.Errorf("seed %d: %v to %v, sampled %v", seed, least, greatest, sampled)
		}
	}
	c, err := NewCurve(PumpData{Watts: 300, Points: []CurvePoint{{Flow: 0, Head: 5}, {Flow: 1, Head: 1}}})
	if err != nil {
		t.Fatal(err)
	}
	if low, high := c.PowerRange(0, 1); low != 300 || high != 300 {
		t.Errorf("one figure: %v to %v", low, high)
	}
	if low, _ := c.PowerRange(1, 0); !math.IsNaN(float64(low)) {
		t.Errorf("flows in the wrong order: %v", low)
	}
}

func TestMostFlowOnALevelStretch(t *testing.T) {
	c, err := NewCurve(PumpData{Points: []CurvePoint{{Flow: 0, Head: 9}, {Flow: 1, Head: 6}, {Flow: 2, Head: 6}, {Flow: 3, Head: 2}, {Flow: 4, Head: 2}}})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct{ head, least, most float64 }{{9, 0, 0}, {6, 1, 2}, {2, 3, 4}} {
		least, in1 := c.Flow(unit.Head(x.head))
		most, in2 := c.MostFlow(unit.Head(x.head))
		if float64(least) != x.least || float64(most) != x.most || !in1 || !in2 {
			t.Errorf("at %g m: %v to %v, want %g to %g", x.head, least, most, x.least, x.most)
		}
	}
	const abs = 1e-9
	for _, h := range []unit.Head{12, 8, 7, 5, 3, 1} { // falling there, or outside: one flow
		least, in1 := c.Flow(h)
		if most, in2 := c.MostFlow(h); in1 != in2 || math.Abs(float64(least-most)) > abs {
			t.Errorf("at %v: %v and %v", h, least, most)
		}
	}
	if q, inside := c.MostFlow(unit.Head(math.NaN())); inside || !math.IsNaN(float64(q)) {
		t.Errorf("at no number: %v", q)
	}
}
