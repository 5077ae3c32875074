package hydro

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

func TestMinor(t *testing.T) {
	w := waterAt(t, 20)
	m, err := MinorLaw{Bore: 0.0525, K: 6.5, K1: 800}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []unit.Flow{2e-4, 3e-3} {
		v := float64(Velocity(q, 0.0525))
		want := (6.5 + 800/float64(Reynolds(q, 0.0525, w))) * v * v / (2 * unit.StandardGravity)
		h, _ := m.Loss(q)
		near(t, "h", float64(h), want, 1e-14, 0)
	}
	none, err := MinorLaw{Bore: 0.05}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []unit.Flow{0, 1e-9, 1} {
		if h, d := none.Loss(q); h != 0 || d != 0 {
			t.Errorf("no fittings: loss %v, slope %v", h, d)
		}
	}
}

func TestMinorRefuses(t *testing.T) {
	w := waterAt(t, 20)
	for _, bad := range []MinorLaw{{Bore: 0, K: 1}, {Bore: 0.05, K: -1}, {Bore: 0.05, K1: -1}} {
		_, err := bad.Prepare(w)
		wantCode(t, "minor", err, CodeRange)
	}
	_, err := MinorLaw{Bore: 0.05, K: unit.Ratio(math.NaN())}.Prepare(w)
	wantCode(t, "minor", err, CodeNotFinite)
}

// What CoefficientFor asks for takes that head.
func TestCoefficientFor(t *testing.T) {
	k, err := CoefficientFor(1.25, 2e-3, 0.04)
	if err != nil {
		t.Fatal(err)
	}
	m, err := MinorLaw{Bore: 0.04, K: k}.Prepare(waterAt(t, 20))
	if err != nil {
		t.Fatal(err)
	}
	h, _ := m.Loss(2e-3)
	near(t, "head", h, 1.25, 1e-14, 0)
	_, err = CoefficientFor(1, 0, 0.04)
	wantCode(t, "no flow", err, CodeRange)
}

// About six 1 in pipes carry what one 2 in pipe does, not four: with a fixed
// friction factor 2^2.5 = 5.66.
func TestParallelPipes(t *testing.T) {
	one, err := FixedFriction(0.02, 10, unit.Inch)
	if err != nil {
		t.Fatal(err)
	}
	two, err := FixedFriction(0.02, 10, 2*unit.Inch)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio", float64(two.Flow(1)/one.Flow(1)), math.Pow(2, 2.5), 1e-14, 0)
	near(t, "two alike", float64(Parallel(one, one).Flow(1)), 2*float64(one.Flow(1)), 1e-14, 0)
	near(t, "in series", float64(Series(one, two).Head(1)), float64(one.Head(1)+two.Head(1)), 1e-14, 0)
	near(t, "backwards", one.Flow(-1), -one.Flow(1), 0, 0)
	_, err = FixedFriction(0, 10, 1)
	wantCode(t, "no friction", err, CodeRange)
	if r := Parallel(); !math.IsInf(float64(r), 1) {
		t.Errorf("none in parallel: %v", r)
	}
}
