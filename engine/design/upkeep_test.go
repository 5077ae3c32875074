package design

import (
	"math"
	"testing"

	"plashet/engine/unit"
	"plashet/job"
)

// By hand: 14 AWG is 4107 circular mils (ASTM B258); 2 x 12.9 x 6.2 A x 110 ft
// / 4107 = 4.284 V, of 120 V 3.57 %. The pond's water / 61.6 gpm.
func TestUpkeep(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	u := Solve(book, j).Upkeep
	if math.Abs(float64(u.Drop)-4.284) > 0.002 || math.Abs(float64(u.DropShare)-0.0357) > 1e-4 || math.Abs(float64(u.Load)-6.2) > 1e-9 {
		t.Errorf("drop %v V, share %v, load %v A", u.Drop, u.DropShare, u.Load)
	}
	if u.Evaporation != 0 || u.TopUp != 0 {
		t.Error("evaporation without weather")
	}
	book, j = read(t, "orchard-ring")
	r := Solve(book, j)
	u = r.Upkeep
	if want := float64(u.Evaporation) * math.Pi / 4 * 9 * 6; math.Abs(float64(u.TopUp)-want) > 0.01*want {
		t.Errorf("tops up %v m³, want about %v", u.TopUp, want) // the outline is drawn with corners
	}
	if math.Abs(float64(u.Load)-3.8) > 1e-9 {
		t.Errorf("two pumps of 1.9 A draw %v A", u.Load)
	}
	j.Site.Summer.Wind = job.Speed{}
	j.Circuit.Conductor = "thick"
	r = Solve(book, j)
	seen := map[string]bool{}
	for _, f := range r.Faults {
		seen[f.Code] = true
	}
	if len(r.Faults) != 2 || !seen[CodeWeather] || !seen[CodeConductor] {
		t.Error(r.Faults)
	}
}

func TestConductor(t *testing.T) {
	const mm2 = 1e-6
	for text, want := range map[string]float64{
		"12 AWG": 3.309 * mm2, "awg12": 3.309 * mm2, "2/0 AWG": 67.43 * mm2, // sections of ASTM B258
		"1.5 mm2": 1.5 * mm2, "1,5 mm2": 1.5 * mm2, "1,500.5 mm2": 0, "2.5mm²": 2.5 * mm2,
		"": 0, "12": 0, "thick": 0, "0 mm2": 0, "1/2 AWG": 0, "99 AWG": 0, "mm2": 0, "NaN mm2": 0,
	} {
		got, ok := conductor(text)
		if ok != (want > 0) || math.Abs(float64(got)-want) > 1e-3*want && ok {
			t.Errorf("%q gives %v m², %v", text, float64(got), ok)
		}
	}
	if unit.Ratio(dropAdvised) >= 0.05 {
		t.Error("the branch takes all of the advice")
	}
}
