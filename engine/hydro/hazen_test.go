package hydro

import (
	"math"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

func TestHazenWilliamsRefuses(t *testing.T) {
	w := waterAt(t, 20)
	good := HazenWilliamsLaw{Bore: 0.05, Length: 10, C: 150}
	for what, change := range map[string]func(*HazenWilliamsLaw){
		"bore":   func(p *HazenWilliamsLaw) { p.Bore = 0 },
		"length": func(p *HazenWilliamsLaw) { p.Length = -1 },
		"c":      func(p *HazenWilliamsLaw) { p.C = 0 },
	} {
		p := good
		change(&p)
		_, err := p.Prepare(w)
		wantCode(t, what, err, CodeRange)
	}
	good.Form = 7
	_, err := good.Prepare(w)
	wantCode(t, "form", err, CodeWord)
}

// The form in metres is the speed formula v = 0.849 C R^0.63 S^0.54 solved for
// the head; the rounding of 10.67 and of the exponents is worth 0.1 percent.
func TestHazenWilliamsIsItsSpeedFormula(t *testing.T) {
	law := HazenWilliamsLaw{Bore: 0.15, Length: 100, C: 130}
	p, err := law.Prepare(waterAt(t, 15))
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []unit.Flow{0.005, 0.02} {
		h, _ := p.Loss(q)
		v := 0.849 * 130 * math.Pow(0.15/4, 0.63) * math.Pow(float64(h)/100, 0.54)
		near(t, "speed", v, float64(Velocity(q, 0.15)), 0.001, 0)
	}
}

func TestHazenWilliamsCautions(t *testing.T) {
	names := func(law HazenWilliamsLaw, celsius float64, q unit.Flow) string {
		p, err := law.Prepare(waterAt(t, celsius))
		if err != nil {
			t.Fatal(err)
		}
		out := ""
		for _, m := range p.Cautions(q) {
			found, limit := argValue(m, "found"), argValue(m, "limit")
			switch {
			case m.Code == CautionHazenLeast && found < limit:
				out += "little "
			case m.Code == CautionHazenMost && found > limit:
				out += "much "
			default:
				t.Errorf("code %s with %g and the limit %g", m.Code, found, limit)
			}
			out += argText(m, "name") + " "
		}
		return out
	}
	wide := HazenWilliamsLaw{Bore: 0.1, Length: 10, C: 150}
	hose := HazenWilliamsLaw{Bore: 0.032, Length: 10, C: 110}
	for _, c := range []struct {
		law     HazenWilliamsLaw
		celsius float64
		q       unit.Flow
		want    string
	}{
		{wide, 15, 0.01, ""},
		{wide, 15, 0, ""},
		{hose, 15, 0.001, "little bore "},
		{wide, 35, 0.01, "much temperature "},
		{wide, 2, -0.03, "much speed little temperature "},
		{wide, 15, 1e-4, "little Reynolds number "},
	} {
		if got := names(c.law, c.celsius, c.q); got != c.want {
			t.Errorf("%+v at %g C, %v: got %q, want %q", c.law, c.celsius, c.q, got, c.want)
		}
	}
}

func argText(m trace.Message, name string) string {
	for _, a := range m.Args {
		if a.Name == name {
			return a.Text
		}
	}
	return ""
}

func argValue(m trace.Message, name string) float64 {
	for _, a := range m.Args {
		if a.Name == name {
			return a.Value.SI
		}
	}
	return math.NaN()
}

func BenchmarkHazenWilliamsLoss(b *testing.B) {
	p, err := HazenWilliamsLaw{Bore: 2.067 * unit.Inch, Length: 60 * unit.Foot, C: 150}.Prepare(waterAt(b, 15))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	q := unit.Flow(3e-3)
	for b.Loop() {
		h, d := p.Loss(q)
		sink += float64(h) + d
		q += 1e-12
	}
}
