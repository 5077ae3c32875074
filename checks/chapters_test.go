package checks

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/size"
	"plashet/engine/unit"
)

// workedRow is a row of a table of worked examples: name, by hand, result, unit.
var workedRow = regexp.MustCompile("(?m)^\\| `([a-z-]+)`: [^|]+ \\| [^|]+ \\| ([-0-9.,]+) \\| ([^ |]+) \\|$")

// TestWorkedExamples: the examples that the chapters reckon by hand are what the
// engine works out, to the last digit printed; none is left out on either side.
func TestWorkedExamples(t *testing.T) {
	for name, got := range map[string]map[string]float64{"pumps": pumpExamples(t), "upkeep": upkeepExamples(t)} {
		text, err := os.ReadFile("../docs/" + name + ".md")
		if err != nil {
			t.Fatal(err)
		}
		rows := workedRow.FindAllStringSubmatch(string(text), -1)
		if len(rows) != len(got) || len(rows) != strings.Count(string(text), "\n| `") {
			t.Errorf("%s: %d rows are read, %d are worked out, %d are written", name, len(rows), len(got), strings.Count(string(text), "\n| `"))
		}
		for _, r := range rows {
			plain := strings.ReplaceAll(r[2], ",", "")
			want, err := strconv.ParseFloat(plain, 64)
			if err != nil {
				t.Fatal(r[0], err)
			}
			digits := 0
			if _, after, ok := strings.Cut(plain, "."); ok {
				digits = len(after)
			}
			half := 0.5000001 * math.Pow10(-digits)
			v, ok := got[r[1]]
			if !ok || math.Abs(v-want) > half {
				t.Errorf("%s, %s: the chapter says %s %s, the engine %v (known: %v)", name, r[1], r[2], r[3], v, ok)
			}
		}
	}
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func straight(t *testing.T, flow unit.Flow, from, to unit.Head, watts unit.Power) *hydro.Curve {
	t.Helper()
	return must[*hydro.Curve](t)(hydro.NewCurve(hydro.PumpData{Watts: watts, Points: []hydro.CurvePoint{{Head: from}, {Flow: flow, Head: to}}}))
}

func pumpExamples(t *testing.T) map[string]float64 {
	w := must[hydro.Water](t)(hydro.WaterAt(15))
	const litre = unit.LitrePerHour
	full := straight(t, 16000*litre, 10, 5, 420)
	slow := must[*hydro.Curve](t)(full.AtSpeed(0.8))
	_, end, _, head := slow.Range()
	watts, _, _ := slow.Power(end)
	_, _, _, worn := must[*hydro.Curve](t)(full.Worn(0.08)).Range()
	beyond, _, _ := straight(t, 90*unit.USGallonPerMinute, 24*unit.Foot, 6*unit.Foot, 1).Head(99 * unit.USGallonPerMinute)
	water := hydro.WaterPower(61.6*unit.USGallonPerMinute, 14.34*unit.Foot, w)
	part := must[unit.Ratio](t)(hydro.Efficiency(water, 640))
	load := unit.Ratio(unit.Power(420) / unit.Power(500))
	over := must[unit.Length](t)(level.MinSubmergence(2.067*unit.Inch, 60*unit.USGallonPerMinute))
	air := must[unit.Pressure](t)(hydro.AtmosphereAt(500))
	npsh := must[unit.Head](t)(hydro.NPSHAvailable(hydro.Suction{Atmosphere: air, Static: -1.5, Friction: 0.8}, w))
	return map[string]float64{
		"affinity-flow": float64(end / litre), "affinity-head": float64(head), "affinity-power": float64(watts), "wear": float64(worn),
		"beyond": float64(beyond / unit.Foot), "water-power": float64(water), "efficiency": 100 * float64(part), "load": 100 * float64(load),
		"submergence": float64(over / unit.Inch), "air": float64(air / unit.Kilopascal), "npsh": float64(npsh), "legs": legs(t),
	}
}

// lossOf is a law of h = k Q².
type lossOf float64

func (k lossOf) Loss(q unit.Flow) (unit.Head, float64) {
	return unit.Head(float64(k) * float64(q) * float64(q)), 2 * float64(k) * float64(q)
}

// legs is the head at the join of two equal pumps, as the search over a shelf
// has it.
func legs(t *testing.T) float64 {
	const q = 8000 * unit.LitrePerHour
	p := &size.Problem{
		Segments: []size.Segment{{Name: "main", Parent: -1, Choices: []size.Choice{{Name: "pipe", Bore: 0.06, Length: 1}}}},
		Outlets:  []size.Outlet{{Name: "fall", Wanted: 2 * q, Level: 1}},
		Pumps:    []size.Pump{{Name: "A", Curve: straight(t, q, 10, 5, 420)}},
		Pairs:    size.PairsAlike, Legs: []size.Choice{{Name: "leg", Bore: 0.05, Length: 1, Pipe: lossOf(0.3 / float64(q) / float64(q))}},
		Energy: size.Energy{PerYear: unit.Hour, Tariff: size.Whole, Worth: 1},
	}
	r, faults := size.Find(t.Context(), p, nil)
	if len(faults) > 0 || len(r.Front) != 1 {
		t.Fatal(faults, r.Front)
	}
	return float64(r.Front[0].Head)
}

func upkeepExamples(t *testing.T) map[string]float64 {
	const flow = 31785 * unit.LitrePerHour
	air := must[unit.Pressure](t)(hydro.AtmosphereAt(120))
	e := must[unit.Length](t)(hydro.PenmanDepth(hydro.OpenWater{Temperature: 22, NetRadiationWM2: 150, Wind: 1.5, Humidity: 0.6, Atmosphere: air}))
	energy := must[unit.Energy](t)(hydro.YearlyEnergy(420, 14*unit.Hour, 270))
	tariff := must[unit.Money](t)(unit.ParseMoney("0.31", "EUR"))
	cost := must[unit.Money](t)(hydro.Cost(energy, tariff)).Round()
	area := must[unit.Area](t)(hydro.ConductorArea(12))
	drop := must[unit.Voltage](t)(hydro.VoltageDropByArea(5, 30, area, hydro.CopperResistivity))
	return map[string]float64{
		"turnover": 8 / float64(flow) / float64(unit.Minute), "evaporation": float64(e / unit.Millimetre), "top-up": float64(e) * 40 / float64(unit.Litre),
		"energy": float64(energy / unit.KilowattHour), "cost": cost.Amount.InexactFloat64(), "current": 640.0 / 120, "breaker": 0.8 * 15,
		"conductor": float64(area) * 1e6, "drop": float64(drop), "drop-share": 100 * float64(drop) / 120,
	}
}
