package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// joinTolerance is how far a joint law may be off its two, relative to them:
// the rounding of a few sums.
const joinTolerance = 1e-14

// What two pipes or two groups of fittings lose in a row, the joint law loses,
// from the creep near zero over the bridge into turbulent flow.
func TestJointLawIsTheSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, err := WaterAt(unit.Temperature(rapid.IntRange(1, 40).Draw(t, "water")))
		if err != nil {
			t.Fatal(err)
		}
		bore := unit.Length(rapid.Float64Range(0.01, 0.2).Draw(t, "bore"))
		var two [2]Joiner
		for i := range two {
			if rapid.Bool().Draw(t, "kind") == (i == 0) {
				two[i], err = PipeLaw{Bore: bore, Length: unit.Length(rapid.Float64Range(0.1, 50).Draw(t, "length")), Roughness: bore / 1000}.Prepare(w)
			} else {
				two[i], err = MinorLaw{Bore: bore, K: unit.Ratio(rapid.Float64Range(0, 10).Draw(t, "K")), K1: unit.Ratio(rapid.Float64Range(0, 800).Draw(t, "K1"))}.Prepare(w)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		both, ok := two[0].Join(two[1])
		_, isPipe := two[0].(*Pipe)
		_, isPipeToo := two[1].(*Pipe)
		if ok != (isPipe == isPipeToo) {
			t.Fatalf("joined %v: %T and %T", ok, two[0], two[1])
		}
		if !ok {
			return
		}
		q := unit.Flow(math.Pow(10, rapid.Float64Range(-8, -1).Draw(t, "flow")))
		if rapid.Bool().Draw(t, "back") {
			q = -q
		}
		h, slope := both.Loss(q)
		h0, slope0 := two[0].Loss(q)
		h1, slope1 := two[1].Loss(q)
		if math.Abs(float64(h-h0-h1)) > joinTolerance*math.Abs(float64(h0+h1)) || math.Abs(slope-slope0-slope1) > joinTolerance*(slope0+slope1) {
			t.Errorf("at %g m³/s: %g m (%g), in two %g (%g)", float64(q), float64(h), slope, float64(h0+h1), slope0+slope1)
		}
	})
}

// Another bore, wall or water is another law.
func TestJoinRefusesOthers(t *testing.T) {
	cold, err := WaterAt(5)
	if err != nil {
		t.Fatal(err)
	}
	warm, err := WaterAt(25)
	if err != nil {
		t.Fatal(err)
	}
	prepare := func(w Water, bore, rough unit.Length) (*Pipe, *Minor) {
		p, err := PipeLaw{Bore: bore, Length: 1, Roughness: rough}.Prepare(w)
		if err != nil {
			t.Fatal(err)
		}
		m, err := MinorLaw{Bore: bore, K: 1}.Prepare(w)
		if err != nil {
			t.Fatal(err)
		}
		return p, m
	}
	p, m := prepare(cold, 0.05, 1e-6)
	for name, c := range map[string]struct {
		w           Water
		bore, rough unit.Length
		pipe, minor bool
	}{
		"same":  {cold, 0.05, 1e-6, true, true},
		"bore":  {cold, 0.04, 1e-6, false, false},
		"wall":  {cold, 0.05, 2e-6, false, true},
		"water": {warm, 0.05, 1e-6, false, false},
	} {
		otherPipe, otherMinor := prepare(c.w, c.bore, c.rough)
		if _, ok := p.Join(otherPipe); ok != c.pipe {
			t.Errorf("%s: pipes joined %v", name, ok)
		}
		if _, ok := m.Join(otherMinor); ok != c.minor {
			t.Errorf("%s: fittings joined %v", name, ok)
		}
	}
}
