package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// drawLaw draws one law of each sort, with a flow scale of its own.
func drawLaw(t *rapid.T, w Water) (Law, float64) {
	bore := unit.Length(rapid.Float64Range(0.01, 0.3).Draw(t, "bore"))
	length := unit.Length(rapid.Float64Range(0.05, 500).Draw(t, "length"))
	perRe := math.Pi * float64(bore) * w.KinematicM2S / 4
	var law Law
	var err error
	switch rapid.SampledFrom([]string{"pipe", "hazen", "minor", "lip"}).Draw(t, "law") {
	case "pipe":
		law, err = PipeLaw{Bore: bore, Length: length, Roughness: bore * unit.Length(rapid.Float64Range(0, 0.05).Draw(t, "rel"))}.Prepare(w)
	case "hazen":
		law, err = HazenWilliamsLaw{Bore: bore, Length: length, C: unit.Ratio(rapid.Float64Range(60, 160).Draw(t, "c"))}.Prepare(w)
	case "minor":
		law, err = MinorLaw{Bore: bore, K: unit.Ratio(rapid.Float64Range(0.01, 50).Draw(t, "k")), K1: unit.Ratio(rapid.Float64Range(0, 1000).Draw(t, "k1"))}.Prepare(w)
	case "lip":
		law, err = LipLaw{Width: length / 100, C: rapid.Float64Range(1.4, 2).Draw(t, "c"), Tilt: unit.Length(rapid.Float64Range(0, 0.03).Draw(t, "tilt"))}.Prepare()
	}
	if err != nil {
		t.Fatal(err)
	}
	return law, perRe
}

// What every law promises: odd, no jump, rising through zero with a finite
// slope, and the slope is the slope.
func TestLaws(t *testing.T) {
	w := waterAt(t, 12)
	rapid.Check(t, func(t *rapid.T) {
		law, perRe := drawLaw(t, w)
		q := perRe * math.Exp(rapid.Float64Range(math.Log(1e-3), math.Log(1e7)).Draw(t, "ln re"))
		h, d := law.Loss(unit.Flow(q))
		if back, bd := law.Loss(unit.Flow(-q)); back != -h || bd != d {
			t.Fatalf("not odd: %v, %v", h, back)
		}
		if !(h > 0) || !(d > 0) || math.IsInf(d, 0) {
			t.Fatalf("at %g: loss %v, slope %v", q, h, d)
		}
		step := q * 1e-6
		up, _ := law.Loss(unit.Flow(q + step))
		down, _ := law.Loss(unit.Flow(q - step))
		if !(up > h && h > down) {
			t.Fatalf("does not rise: %v, %v, %v", down, h, up)
		}
		// the slope may turn by up to a corner of the second derivative within the step
		if got := float64(up-down) / (2 * step); relDiff(got, d) > 3e-6 {
			t.Fatalf("at %g: slope %v, difference %v", q, d, got)
		}
		if rest, rd := law.Loss(0); rest != 0 || !(rd > 0) || math.IsInf(rd, 0) {
			t.Fatalf("at rest: loss %v, slope %v", rest, rd)
		}
		if h, d := law.Loss(unit.Flow(math.NaN())); !math.IsNaN(float64(h)) || !math.IsNaN(d) {
			t.Fatalf("no number in, %v, %v out", h, d)
		}
	})
}

// The join to zero has the value and the slope of its power law at its end.
func TestCreepJoins(t *testing.T) {
	for _, m := range []float64{1, 1.5, 1.852, 2, 2.5} {
		c := newCreep(m)
		y, dy := c.at(1)
		near(t, "value", y, 1, 1e-15, 0)
		near(t, "slope", dy, m, 1e-15, 0)
		for x := -1.0; x <= 1; x += 0.125 {
			y, dy := c.at(x)
			near(t, "inverse", c.inverse(y), x, 1e-14, 1e-15)
			if !(dy > 0) {
				t.Errorf("m %g: slope %g at %g", m, dy, x)
			}
		}
	}
	w := waterAt(t, 20)
	minor, err := MinorLaw{Bore: 0.05, K: 2}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	hazen, err := HazenWilliamsLaw{Bore: 0.05, Length: 10, C: 150}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	lip, err := LipLaw{Width: 0.6, C: 1.7}.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	for what, c := range map[string]struct {
		law Law
		at  float64
	}{"minor": {minor, minor.creepFlow}, "hazen": {hazen, hazen.creepFlow}, "lip": {lip, lip.filmFlow}} {
		h0, d0 := c.law.Loss(unit.Flow(math.Nextafter(c.at, 0)))
		h1, d1 := c.law.Loss(unit.Flow(math.Nextafter(c.at, 1)))
		near(t, what+" value", h0, h1, 1e-13, 0)
		near(t, what+" slope", d0, d1, 1e-11, 0)
	}
}
