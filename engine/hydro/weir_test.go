package hydro

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

func TestCrestCoefficients(t *testing.T) {
	for _, k := range []CrestKind{CrestThin, CrestBroad, CrestStone} {
		c, err := k.Coefficient()
		if err != nil {
			t.Fatal(err)
		}
		if !(c.Low <= c.C && c.C <= c.High) || c.Source.Title == "" || c.Source.Basis == "" {
			t.Errorf("%s: %+v", k, c)
		}
	}
	_, err := CrestKind("sharp").Coefficient()
	wantCode(t, "kind", err, CodeWord)
}

// Kindsvater and Carter's full-width formula against Francis': within 6
// percent from 20 to 200 mm over a crest 0.3 m high, as the comment of
// Coefficient tells for 20 mm.
func TestThinCrestFormulasNear(t *testing.T) {
	thin, err := CrestThin.Coefficient()
	if err != nil {
		t.Fatal(err)
	}
	l := newLip(t, LipLaw{Width: 0.6, C: thin.C})
	for _, h := range []unit.Head{0.02, 0.05, 0.1, 0.15} {
		kc, err := KindsvaterCarter().Flow(h, 0.6, 0.3)
		if err != nil {
			t.Fatal(err)
		}
		q, _ := l.Flow(h)
		near(t, "flow", q, kc, 0.06, 0)
	}
}

func TestWeirsRefuse(t *testing.T) {
	nan := unit.Head(math.NaN())
	calls := map[string]struct {
		call func() (unit.Flow, error)
		code string
	}{
		"negative head":     {func() (unit.Flow, error) { return KindsvaterCarter().Flow(-0.1, 1, 1) }, CodeRange},
		"no crest height":   {func() (unit.Flow, error) { return Rehbock().Flow(0.1, 1, 0) }, CodeRange},
		"head no number":    {func() (unit.Flow, error) { return RectangularNotch(0.62, nan, 1) }, CodeNotFinite},
		"no width is left":  {func() (unit.Flow, error) { return FrancisContracted(6, 1, 2) }, CodeRange},
		"three sides":       {func() (unit.Flow, error) { return FrancisContracted(0.1, 1, 3) }, CodeRange},
		"trapeze backwards": {func() (unit.Flow, error) { return Cipolletti(0.1, -1) }, CodeRange},
		"narrow notch":      {func() (unit.Flow, error) { return VNotch(0.1, 10*unit.Degree) }, CodeRange},
		"straight notch":    {func() (unit.Flow, error) { return TriangularNotch(0.6, 0.1, 180*unit.Degree) }, CodeRange},
	}
	for what, c := range calls {
		_, err := c.call()
		wantCode(t, what, err, c.code)
	}
	for what, q := range map[string]func() (unit.Flow, error){
		"rectangle": func() (unit.Flow, error) { return KindsvaterCarter().Flow(0, 1, 1) },
		"notch":     func() (unit.Flow, error) { return VNotch(0, 90*unit.Degree) },
	} {
		if v, err := q(); v != 0 || err != nil {
			t.Errorf("%s without head: %v, %v", what, v, err)
		}
	}
}

// Cipolletti's sides make good for Francis' contractions: the same flow within
// 2 percent for a crest of four heads (3.367/3.33 = 1.011 against the bare
// crest; from memory).
func TestCipollettiNearFrancis(t *testing.T) {
	q, err := Cipolletti(0.1, 0.4)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := FrancisContracted(0.1, 0.4, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "flow", q, plain, 0.02, 0)
}
