package checks

import (
	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// channel holds Manning's formula against the library's and two published
// examples.
func channel() ([]Check, error) {
	rows, err := groupRows("channel")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range rows {
		v, err := inputs(r, "b", "y", "n", "S")
		if err != nil {
			return nil, err
		}
		q, err := hydro.Channel{Width: unit.Length(v[0]), N: unit.Ratio(v[2]), Slope: unit.Ratio(v[3])}.Flow(unit.Length(v[1]))
		if err != nil {
			return nil, err
		}
		c, err := fromRow(r, "channel", float64(q/unit.LitrePerSecond))
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	more, err := fromExamples("channel", []worked{
		given("E30", unit.CubicMetrePerSecond)(hydro.Channel{Width: 6, N: 0.015, Slope: 0.0025}.Flow(1.6)),
		given("E31", unit.CubicMetrePerSecond)(hydro.Channel{Width: 5, N: 0.015, Slope: 0.0025}.Flow(0.8)),
	})
	return append(out, more...), err
}

// evaporation holds Penman's and the grass reference's formula against a
// published and a remembered example (whose intermediate values are known).
func evaporation() ([]Check, error) {
	const calPerCm2 = 4.1868e4 // J/m²
	penman := hydro.OpenWater{
		Temperature:     15,
		NetRadiationWM2: 550 * calPerCm2 / float64(unit.Day),
		Wind:            unit.Speed(150e3 / float64(unit.Day)),
		Humidity:        0.70,
		Atmosphere:      101.325 * unit.Kilopascal,
	}
	grass := hydro.Day{
		Highest: 21.5, Lowest: 12.3, Humidest: 0.84, Driest: 0.63,
		Wind: unit.Speed(10 / 3.6), WindAt: 10, Sun: 9.25 * unit.Hour,
		Latitude: 50.80 * unit.Degree, Elevation: 100, DayOfYear: 187,
	}
	return fromExamples("evaporation", []worked{
		given("E28", unit.Centimetre)(hydro.PenmanDepth(penman)),
		given("E29", unit.Millimetre)(hydro.ReferenceDepth(grass)),
	})
}
