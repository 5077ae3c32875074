package hydro

import (
	"slices"
	"testing"

	"plashet/engine/unit"
)

// A drooping curve keeps its points, tells its turns and its peak, and says so;
// at another speed and worn it droops likewise, and so it does drawn again.
func TestDroops(t *testing.T) {
	given := points(0, 10, 10, 10.8, 20, 11.2, 30, 9, 40, 4)
	c := newCurve(t, PumpData{Points: given, Reading: 0.1 * ft})
	if !c.Droops() || len(c.Cautions()) == 0 || c.Cautions()[0].Code != CautionCurveDroop {
		t.Fatalf("droops %v, %+v", c.Droops(), c.Cautions())
	}
	for _, p := range given {
		h, _, _ := c.Head(p.Flow)
		near(t, "point", h, p.Head, 1e-12, 0)
	}
	slow, err := c.AtSpeed(0.5)
	if err != nil {
		t.Fatal(err)
	}
	again := c.Redraw()
	again.Draw(1, 1, nil, 0)
	for name, x := range map[string]struct {
		c    *Curve
		q, h float64
	}{"as given": {c, 1, 1}, "at half speed": {slow, 0.5, 0.25}, "drawn again": {again.Curve, 1, 1}} {
		turns := x.c.Turns()
		want := []unit.Flow{0, given[2].Flow * unit.Flow(x.q)}
		if !x.c.Droops() || len(turns) != 2 || !slices.EqualFunc(turns, want, func(a, b unit.Flow) bool { return a-b < 1e-12 && b-a < 1e-12 }) {
			t.Errorf("%s: droops %v, turns %v, want %v", name, x.c.Droops(), turns, want)
		}
		near(t, name+", peak", x.c.Peak(), given[2].Head*unit.Head(x.h), 1e-12, 0)
		// Between the turns it only rises, and behind the last it only falls.
		const hair = 1e-12
		step := given[4].Flow * unit.Flow(x.q) / 500
		for n := range 500 {
			q := step * unit.Flow(n)
			a, _, _ := x.c.Head(q)
			b, _, _ := x.c.Head(q + step)
			if q+step <= turns[1] && b < a-hair || q >= turns[1] && b > a+hair {
				t.Errorf("%s: from %v on the head goes from %v to %v", name, q, a, b)
			}
		}
	}
	if plain := newCurve(t, PumpData{Points: points(0, 10, 10, 9, 20, 5, 30, 0)}); plain.Droops() || plain.Turns() != nil {
		t.Error("a falling curve droops")
	}
}

// What rises by more than a drooping curve does, in too few points, or to its
// end, is refused.
func TestNoDroop(t *testing.T) {
	for name, p := range map[string][]CurvePoint{
		"over a fifth": points(0, 10, 10, 12.1, 20, 8, 30, 3), "three points": points(0, 10, 10, 11, 20, 5),
		"rises in the end": points(0, 10, 10, 8, 20, 6, 30, 7), "ends above where it began": points(0, 10, 10, 11.5, 20, 11, 30, 10.5),
	} {
		if _, err := NewCurve(PumpData{Points: p, Reading: 0.1 * ft}); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
	if _, err := NewCurve(PumpData{Points: points(0, 10, 10, 11.9, 20, 8, 30, 3), Reading: 0.1 * ft}); err != nil {
		t.Errorf("under a fifth: %v", err)
	}
}
