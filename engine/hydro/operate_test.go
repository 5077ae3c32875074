package hydro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// line is a pipe with fittings as one law.
type line struct {
	pipe  *Pipe
	minor *Minor
}

func (l line) Loss(q unit.Flow) (unit.Head, float64) {
	a, da := l.pipe.Loss(q)
	b, db := l.minor.Loss(q)
	return a + b, da + db
}

func newLine(t testing.TB, bore, length unit.Length, k unit.Ratio) line {
	t.Helper()
	w := waterAt(t, 15)
	m, err := MinorLaw{Bore: bore, K: k}.Prepare(w)
	if err != nil {
		t.Fatal(err)
	}
	return line{preparePipe(t, PipeLaw{Bore: bore, Length: length, Roughness: 1.5e-6}, w), m}
}

func TestOperateEndings(t *testing.T) {
	c, l := pumpM(t), newLine(t, 2.067*unit.Inch, 60*ft, 7)
	for what, x := range map[string]struct {
		static unit.Head
		want   Stop
	}{
		"usual":         {9.33 * ft, StopConverged},
		"at shut-off":   {24 * ft, StopNoIntersection},
		"far too high":  {80 * ft, StopNoIntersection},
		"siphon":        {-200 * ft, StopOffCurve},
		"just under":    {23.999 * ft, StopConverged},
		"not a number":  {unit.Head(math.NaN()), StopIterations},
		"without bound": {unit.Head(math.Inf(-1)), StopIterations},
	} {
		got := Operate(c, x.static, l)
		if got.Stop != x.want {
			t.Errorf("%s: %v, want %v", what, got.Stop, x.want)
		}
	}
	partial := newCurve(t, PumpData{Points: points(30, 20, 40, 18, 50, 16, 60, 13)})
	if got := Operate(partial, 19.5*ft, l); got.Stop != StopOffCurve {
		t.Errorf("left of the first point: %v", got.Stop)
	}
}

// The answer balances, and no other flow does; a wider pipe never gives less.
func TestOperateBalances(t *testing.T) {
	c := pumpM(t)
	w := waterAt(t, 15)
	rapid.Check(t, func(t *rapid.T) {
		law := drawPipe(t)
		static := unit.Head(rapid.Float64Range(-3, 7.3).Draw(t, "static"))
		p := Operate(c, static, preparePipe2(t, law, w))
		if p.Stop != StopConverged && p.Stop != StopOffCurve {
			t.Fatalf("%v", p.Stop)
		}
		loss, _ := preparePipe2(t, law, w).Loss(p.Flow)
		if math.Abs(float64(p.Head-static-loss)) > 1e-11*math.Max(10, float64(loss)) {
			t.Fatalf("head %v, static %v, loss %v", p.Head, static, loss)
		}
		law.Bore *= 1.05
		if wider := Operate(c, static, preparePipe2(t, law, w)); wider.Flow < p.Flow*(1-1e-12) {
			t.Fatalf("a wider pipe gives %v, not %v", wider.Flow, p.Flow)
		}
	})
}

func BenchmarkOperate(b *testing.B) {
	c, l := pumpM(b), newLine(b, 2.067*unit.Inch, 60*ft, 7)
	b.ReportAllocs()
	static := 9.33 * ft
	for b.Loop() {
		sink += float64(Operate(c, static, l).Flow)
		static += 1e-12
	}
}
