package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func newLip(t testing.TB, l LipLaw) *Lip {
	t.Helper()
	p, err := l.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// scipy's quad over the wet part of the crest (testdata/README.md).
func TestTiltVectors(t *testing.T) {
	_, rows := vectors(t, "tilt", 0)
	for _, r := range rows {
		l := newLip(t, LipLaw{Width: unit.Length(r[0]), Tilt: unit.Length(r[1]), C: r[2]})
		q, _ := l.Flow(unit.Head(r[3]))
		near(t, "flow", float64(q), r[4], 1e-9, 0) // quad's own error estimate where the crest is partly dry
		h, _ := l.Head(unit.Flow(r[4]))
		near(t, "head", float64(h), r[3], 1e-9, 0)
	}
}

func TestLipRefuses(t *testing.T) {
	for what, c := range map[string]struct {
		law  LipLaw
		code string
	}{
		"no width":        {LipLaw{Width: 0, C: 1.7}, CodeRange},
		"no coefficient":  {LipLaw{Width: 1}, CodeRange},
		"negative tilt":   {LipLaw{Width: 1, C: 1.7, Tilt: -0.001}, CodeRange},
		"width no number": {LipLaw{Width: unit.Length(math.NaN()), C: 1.7}, CodeNotFinite},
		"endless tilt":    {LipLaw{Width: 1, C: 1.7, Tilt: unit.Length(math.Inf(1))}, CodeNotFinite},
	} {
		_, err := c.law.Prepare()
		wantCode(t, what, err, c.code)
	}
}

// Head and Flow undo one another, at any tilt and flow, with inverse slopes.
func TestLipInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, err := LipLaw{
			Width: unit.Length(rapid.Float64Range(0.05, 5).Draw(t, "width")),
			C:     rapid.Float64Range(1.4, 2).Draw(t, "c"),
			Tilt:  unit.Length(rapid.SampledFrom([]float64{0, 1e-9, 1e-5, 0.0005, 0.001, 0.004, 0.03}).Draw(t, "tilt")),
		}.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		h := math.Exp(rapid.Float64Range(math.Log(1e-6), math.Log(2)).Draw(t, "ln head"))
		q, dq := l.Flow(unit.Head(h))
		back, dh := l.Head(q)
		if relDiff(float64(back), h) > 1e-12 || relDiff(dh*dq, 1) > 1e-9 {
			t.Fatalf("head %g: flow %v, back %v; slopes %g, %g", h, q, back, dq, dh)
		}
		if less, _ := l.Flow(unit.Head(h * 0.999)); !(less < q) || !(dq > 0) {
			t.Fatalf("does not rise at %g", h)
		}
		tilted := l.LipLaw
		tilted.Tilt += 0.001
		if lt, _ := tilted.Prepare(); h > float64(FilmHead) {
			if less, _ := lt.Flow(unit.Head(h)); !(less < q) {
				t.Fatalf("more tilt at one head over the low end carries more: %v, %v", less, q)
			}
		}
	})
}

// Two halves of a tilted crest carry what the whole does.
func TestTiltHalves(t *testing.T) {
	whole := newLip(t, LipLaw{Width: 0.8, C: 1.7, Tilt: 0.01})
	half := newLip(t, LipLaw{Width: 0.4, C: 1.7, Tilt: 0.005})
	for _, h := range []unit.Head{0.007, 0.012, 0.05} {
		a, _ := half.Flow(h)
		b, _ := half.Flow(h - 0.005)
		q, _ := whole.Flow(h)
		near(t, "halves", a+b, q, 1e-12, 0)
	}
	near(t, "dry", whole.DryWidth(0.0025), 0.6, 1e-14, 0)
	near(t, "wet", whole.DryWidth(0.01), 0, 0, 0)
	near(t, "all dry", whole.DryWidth(-1), 0.8, 1e-14, 0)
}

func TestLipEdges(t *testing.T) {
	l := newLip(t, LipLaw{Width: 0.8, C: 1.7, Tilt: 0.01})
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		if _, d := l.Head(unit.Flow(bad)); !math.IsNaN(d) {
			t.Errorf("flow %v: slope %v", bad, d)
		}
	}
	if h, d := l.Loss(0); h != 0 || !(d > 0) || math.IsInf(d, 0) {
		t.Errorf("at rest: %v, %v", h, d)
	}
}

func BenchmarkLipHead(b *testing.B) {
	l := newLip(b, LipLaw{Width: 36 * unit.Inch, C: 1.7})
	b.ReportAllocs()
	q := 70 * gpm
	for b.Loop() {
		h, d := l.Head(q)
		sink += float64(h) + d
		q += 1e-12
	}
}

func BenchmarkTiltedLipHead(b *testing.B) {
	l := newLip(b, LipLaw{Width: 36 * unit.Inch, C: 1.7, Tilt: unit.Inch / 8})
	b.ReportAllocs()
	q := 70 * gpm
	for b.Loop() {
		h, d := l.Head(q)
		sink += float64(h) + d
		q += 1e-12
	}
}
