package hydro

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

// Refusals of the plain formulas: power, suction, tank, wire, evaporation.
func TestPlainFormulasRefuse(t *testing.T) {
	w := waterAt(t, 20)
	day := Day{Highest: 21.5, Lowest: 12.3, Humidest: 0.84, Driest: 0.63, Wind: 2.8, WindAt: 10, Sun: 9.25 * unit.Hour, Latitude: 0.88, Elevation: 100, DayOfYear: 187}
	pond := OpenWater{Temperature: 15, NetRadiationWM2: 200, Wind: 2, Humidity: 0.7, Atmosphere: 101 * unit.Kilopascal}
	changed := func(change func(*Day)) Day { d := day; change(&d); return d }
	pool := func(change func(*OpenWater)) OpenWater { o := pond; change(&o); return o }
	nan := math.NaN()
	for what, c := range map[string]struct {
		err  error
		code string
	}{
		"no efficiency":    {second(ShaftPower(100, 0)), CodeRange},
		"too good":         {second(ShaftPower(100, 1.01)), CodeRange},
		"nothing drawn":    {second(Efficiency(100, 0)), CodeRange},
		"25 hours":         {second(YearlyEnergy(100, 25*unit.Hour, 365)), CodeRange},
		"367 days":         {second(YearlyEnergy(100, unit.Hour, 367)), CodeRange},
		"no atmosphere":    {second(NPSHAvailable(Suction{}, w)), CodeRange},
		"speed no number":  {second(NPSHAvailable(Suction{Atmosphere: 1e5, Speed: unit.Speed(nan)}, w)), CodeNotFinite},
		"tank fills":       {second(DrainTime(1, 0.001, 0.6, 0.5, 0.6)), CodeRange},
		"no hole":          {second(DrainTime(1, 0, 0.6, 0.5, 0.1)), CodeRange},
		"hole too good":    {second(DrainTime(1, 0.001, 1.1, 0.5, 0.1)), CodeRange},
		"gauge 41":         {second(ConductorArea(41)), CodeRange},
		"no wire":          {second(VoltageDropByArea(5, 10, 0, 2e-8)), CodeRange},
		"negative current": {second(VoltageDrop(-5, 10, 0.005)), CodeRange},
		"too humid":        {second(PenmanDepth(pool(func(o *OpenWater) { o.Humidity = 70 }))), CodeRange},
		"on the moon":      {second(PenmanDepth(pool(func(o *OpenWater) { o.Atmosphere = 0 }))), CodeRange},
		"upside down":      {second(ReferenceDepth(changed(func(d *Day) { d.Lowest = 30 }))), CodeRange},
		"polar":            {second(ReferenceDepth(changed(func(d *Day) { d.Latitude = 80 * unit.Degree }))), CodeRange},
		"day nought":       {second(ReferenceDepth(changed(func(d *Day) { d.DayOfYear = 0 }))), CodeRange},
		"wind no number":   {second(ReferenceDepth(changed(func(d *Day) { d.Wind = unit.Speed(nan) }))), CodeNotFinite},
	} {
		wantCode(t, what, c.err, c.code)
	}
}

func second[T any](_ T, err error) error { return err }

// The voltage drop by wire gauge: 12 AWG is 6530 circular mils (ASTM B258
// tables), 4/0 is 211 600, 36 AWG is 25.
func TestConductorArea(t *testing.T) {
	for gauge, mils := range map[int]float64{14: 4110, 12: 6530, 10: 10380, 8: 16510, 0: 105600, -3: 211600, 36: 25} {
		a, err := ConductorArea(gauge)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "circular mils", float64(a/CircularMil), mils, 0.001, 0)
	}
}

// A year of 640 W around the clock is 5606.4 kWh (by hand).
func TestYearlyEnergy(t *testing.T) {
	e, err := YearlyEnergy(640, unit.Day, 365)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "kWh", float64(e/unit.KilowattHour), 5606.4, 1e-12, 0)
	tariff, err := unit.ParseMoney("0.18", "USD")
	if err != nil {
		t.Fatal(err)
	}
	cost, err := Cost(e, tariff)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "USD", cost.Value().SI, 1009.152, 1e-12, 0) // 5606.4 × 0.18 by hand
	_, err = Cost(-1, tariff)
	wantCode(t, "negative energy", err, CodeRange)
}

// What the water takes up is what the pump gave at that efficiency.
func TestEfficiency(t *testing.T) {
	w := waterAt(t, 20)
	p := WaterPower(0.004, 3, w)
	near(t, "W", float64(p), w.DensityKgM3*unit.StandardGravity*0.012, 1e-14, 0)
	shaft, err := ShaftPower(p, 0.4)
	if err != nil {
		t.Fatal(err)
	}
	eff, err := Efficiency(p, shaft)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "efficiency", eff, 0.4, 1e-14, 0)
}

// FAO-56 example 18 prints u2 2.08 m/s, Ra 41.09 and Rn 13.28 MJ/m²/day on the
// way to 3.9 mm/day (from memory, as examples.csv notes).
func TestReferenceDepthOnTheWay(t *testing.T) {
	d := Day{
		Highest: 21.5, Lowest: 12.3, Humidest: 0.84, Driest: 0.63, Wind: unit.Speed(10 / 3.6), WindAt: 10,
		Sun: 9.25 * unit.Hour, Latitude: 50.80 * unit.Degree, Elevation: 100, DayOfYear: 187,
	}
	ea := (vapourKPa(12.3)*0.84 + vapourKPa(21.5)*0.63) / 2
	near(t, "Rn", d.netRadiationMJ(ea), 13.28, 0, 0.02)
	near(t, "gamma at 1800 m", psychrometricKPa(81.8), 0.054, 0, 0.0005) // FAO-56 example 2
	near(t, "slope at 20 C", vapourSlopeKPa(20), 0.1447, 0, 0.0001)      // FAO-56 annex 2, table 2.4
}

// What an error and the named endings say to a reader of the program.
func TestTexts(t *testing.T) {
	_, err := PipeLaw{Bore: -1, Length: 1}.Prepare(waterAt(t, 20))
	for _, c := range [][2]string{
		{err.Error(), "hydro.value.range name=bore found=-1 limit=0"},
		{StopOffCurve.String(), "off the curve"},
		{Bridge.String(), "bridge"},
		{Supercritical.String(), "supercritical"},
	} {
		if c[0] != c[1] {
			t.Errorf("got %q, want %q", c[0], c[1])
		}
	}
}

// A tank drained in two goes takes as long as in one.
func TestDrainInTwoGoes(t *testing.T) {
	time := func(from, to unit.Head) float64 {
		d, err := DrainTime(1.5, 0.001, 0.61, from, to)
		if err != nil {
			t.Fatal(err)
		}
		return float64(d)
	}
	near(t, "time", time(0.6, 0.25)+time(0.25, 0), time(0.6, 0), 1e-14, 0)
	near(t, "nothing to drain", time(0.3, 0.3), 0, 0, 0)
}
