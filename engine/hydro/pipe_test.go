package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func preparePipe(t testing.TB, law PipeLaw, w Water) *Pipe {
	t.Helper()
	p, err := law.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawPipe draws a pipe a pond could have.
func drawPipe(t *rapid.T) PipeLaw {
	bore := rapid.Float64Range(0.01, 0.3).Draw(t, "bore")
	return PipeLaw{
		Bore:      unit.Length(bore),
		Length:    unit.Length(rapid.Float64Range(0.05, 500).Draw(t, "length")),
		Roughness: unit.Length(bore * rapid.Float64Range(0, 0.05).Draw(t, "rel")),
	}
}

// drawFlow draws a flow by its Reynolds number, across all regimes.
func drawFlow(t *rapid.T, p *Pipe) unit.Flow {
	re := math.Exp(rapid.Float64Range(math.Log(1e-3), math.Log(1e7)).Draw(t, "ln re"))
	return unit.Flow(re / p.rePerQ)
}

func TestPipeRefuses(t *testing.T) {
	good, w := PipeLaw{Bore: 0.05, Length: 10, Roughness: 1e-6}, waterAt(t, 20)
	for what, c := range map[string]struct {
		change func(*PipeLaw)
		code   string
	}{
		"no bore":            {func(p *PipeLaw) { p.Bore = 0 }, CodeRange},
		"negative bore":      {func(p *PipeLaw) { p.Bore = -0.05 }, CodeRange},
		"no length":          {func(p *PipeLaw) { p.Length = 0 }, CodeRange},
		"endless":            {func(p *PipeLaw) { p.Length = unit.Length(math.Inf(1)) }, CodeNotFinite},
		"length no number":   {func(p *PipeLaw) { p.Length = unit.Length(math.NaN()) }, CodeNotFinite},
		"negative roughness": {func(p *PipeLaw) { p.Roughness = -1e-9 }, CodeRange},
		"ribs":               {func(p *PipeLaw) { p.Roughness = 0.003 }, CodeRange},
	} {
		p := good
		c.change(&p)
		_, err := p.Prepare(w)
		wantCode(t, what, err, c.code)
	}
	_, err := good.Prepare(Water{})
	wantCode(t, "no water", err, CodeRange)
	_, err = good.Prepare(Water{DensityKgM3: 1000, KinematicM2S: math.NaN()})
	wantCode(t, "bad water", err, CodeNotFinite)
}

func TestPipeAtRest(t *testing.T) {
	law, w := PipeLaw{Bore: 0.05, Length: 10}, waterAt(t, 20)
	h, d := preparePipe(t, law, w).Loss(0)
	// Hagen-Poiseuille: 128 nu L/(pi g D⁴)
	near(t, "slope", d, 128*w.KinematicM2S*10/(math.Pi*unit.StandardGravity*math.Pow(0.05, 4)), 1e-14, 0)
	if h != 0 {
		t.Errorf("loss at rest: %v", h)
	}
	if h, d := preparePipe(t, law, w).Loss(unit.Flow(math.NaN())); !math.IsNaN(float64(h)) || !math.IsNaN(d) {
		t.Errorf("flow no number: got %v, %v", h, d)
	}
}

func TestPipeProperties(t *testing.T) {
	w := waterAt(t, 15)
	rapid.Check(t, func(t *rapid.T) {
		law := drawPipe(t)
		p := preparePipe2(t, law, w)
		q := drawFlow(t, p)
		h, d := p.Loss(q)

		if back, bd := p.Loss(-q); back != -h || bd != d {
			t.Fatalf("not odd: %v at %v, %v at %v", h, q, back, -q)
		}
		if more, _ := p.Loss(q * 1.001); !(more > h) || !(d > 0) {
			t.Fatalf("does not rise: %v then %v, slope %v", h, more, d)
		}
		half := law
		half.Length /= 2
		if hh, _ := preparePipe2(t, half, w).Loss(q); relDiff(2*float64(hh), float64(h)) > 1e-14 {
			t.Fatalf("two halves %v, the whole %v", 2*hh, h)
		}
		wider := law
		wider.Bore *= 1.01
		if hw, _ := preparePipe2(t, wider, w).Loss(q); !(hw < h) {
			t.Fatalf("a wider pipe loses %v, not less than %v", hw, h)
		}
		// the formulas solved for the flow: a second way to the same numbers
		if back := p.Flow(h); relDiff(float64(back), float64(q)) > 1e-11 {
			t.Fatalf("flow %v gives %v, which gives flow %v", q, h, back)
		}
	})
}

// preparePipe2 is preparePipe inside a property.
func preparePipe2(t *rapid.T, law PipeLaw, w Water) *Pipe {
	p, err := law.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The law in other words: f by Friction, v²/2g by hand.
func TestPipeIsDarcyWeisbach(t *testing.T) {
	w := waterAt(t, 10)
	law := PipeLaw{Bore: 0.0525, Length: 18.3, Roughness: 1.5e-6}
	p := preparePipe(t, law, w)
	for _, q := range []unit.Flow{1e-6, 1.2e-4, 1.5e-4, 1e-3, 4e-3} {
		v := float64(Velocity(q, law.Bore))
		f, _ := Friction(Reynolds(q, law.Bore, w), unit.Ratio(law.Roughness/law.Bore))
		h, _ := p.Loss(q)
		near(t, "h", float64(h), float64(f)*float64(law.Length/law.Bore)*v*v/(2*unit.StandardGravity), 1e-12, 0)
		near(t, "f", p.Friction(q), f, 1e-12, 0)
		near(t, "Re", p.Reynolds(q), Reynolds(q, law.Bore, w), 1e-14, 0)
	}
	if !math.IsInf(float64(p.Friction(0)), 1) || !math.IsNaN(float64(Velocity(1, 0))) {
		t.Error("at rest f must be +Inf, and a bore of nothing has no speed")
	}
	if q := p.Flow(unit.Head(math.NaN())); !math.IsNaN(float64(q)) {
		t.Errorf("head no number: flow %v", q)
	}
}

// Flow undoes Loss in every regime, backwards too.
func TestPipeFlowRegimes(t *testing.T) {
	p := preparePipe(t, PipeLaw{Bore: 0.0525, Length: 18.3, Roughness: 5e-6}, waterAt(t, 10))
	for _, re := range []float64{0, 1, 1999, 2000, 2001, 2500, 3999, 4000, 4001, 1e6} {
		for _, sign := range []float64{1, -1} {
			q := unit.Flow(sign * re / p.rePerQ)
			h, _ := p.Loss(q)
			near(t, "flow", p.Flow(h), q, 1e-12, 0)
		}
	}
}

func BenchmarkPipeLoss(b *testing.B) {
	p := preparePipe(b, PipeLaw{Bore: 2.067 * unit.Inch, Length: 60 * unit.Foot, Roughness: 1.5e-6}, waterAt(b, 15))
	b.ReportAllocs()
	q := unit.Flow(3e-3)
	for b.Loop() {
		h, d := p.Loss(q)
		sink += float64(h) + d
		q += 1e-12
	}
}
