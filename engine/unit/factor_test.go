package unit

import (
	"math"
	"testing"
)

// TestFactorsNIST holds every factor against NIST Special Publication 811
// (2008), appendix B.8, "Factors for units listed alphabetically". The values
// are from memory, to the digits that the table prints; "exact" marks those it
// prints in bold. A second, independent comparison stands in checks/units.go.
func TestFactorsNIST(t *testing.T) {
	for _, c := range []struct {
		unit  string
		want  float64
		last  float64 // one unit of the last digit printed; 0 is exact
		entry string
	}{
		{"in", 2.54e-2, 0, "inch (in)"},
		{"ft", 3.048e-1, 0, "foot (ft)"},
		{"yd", 9.144e-1, 0, "yard (yd)"},
		{"mile", 1.609344e3, 0, "mile (mi)"},
		{"mil", 2.54e-5, 0, "mil (0.001 in)"},
		{"µm", 1e-6, 0, "micron"},
		{"ft²", 9.290304e-2, 0, "square foot"},
		{"in²", 6.4516e-4, 0, "square inch"},
		{"yd²", 8.361274e-1, 1e-7, "square yard"},
		{"ha", 1e4, 0, "hectare"},
		{"ft³", 2.831685e-2, 1e-8, "cubic foot"},
		{"yd³", 7.645549e-1, 1e-7, "cubic yard"},
		{"in³", 1.638706e-5, 1e-11, "cubic inch"},
		{"gal", 3.785412e-3, 1e-9, "gallon (US)"},
		{"quart", 9.463529e-4, 1e-10, "quart (US liquid)"},
		{"pint", 4.731765e-4, 1e-10, "pint (US liquid)"},
		{"fl oz", 2.957353e-5, 1e-11, "ounce (US fluid)"},
		{"imp gal", 4.54609e-3, 0, "gallon (Canadian and UK imperial)"},
		{"imp fl oz", 2.841306e-5, 1e-11, "ounce (Canadian and UK fluid)"},
		{"gpm", 6.309020e-5, 1e-11, "gallon (US) per minute"},
		{"gpd", 4.381264e-8, 1e-14, "gallon (US) per day"},
		{"ft³/s", 2.831685e-2, 1e-8, "cubic foot per second"},
		{"ft³/min", 4.719474e-4, 1e-10, "cubic foot per minute"},
		{"yd³/min", 1.274258e-2, 1e-8, "cubic yard per minute"},
		{"bar", 1e5, 0, "bar"},
		{"hPa", 1e2, 0, "millibar"},
		{"psi", 6.894757e3, 1e-3, "pound-force per square inch (psi)"},
		{"ftH2O", 2.989067e3, 1e-3, "foot of water, conventional"},
		{"inH2O", 2.490889e2, 1e-4, "inch of water, conventional"},
		{"mmH2O", 9.80665, 0, "millimetre of water, conventional"},
		{"ft/s", 3.048e-1, 0, "foot per second"},
		{"hp", 7.456999e2, 1e-4, "horsepower (550 ft lbf/s)"},
		{"kWh", 3.6e6, 0, "kilowatt hour"},
		{"Wh", 3.6e3, 0, "watt hour"},
		{"°", 1.745329e-2, 1e-8, "degree (angle)"},
		{"d", 8.64e4, 0, "day"},
		{"h", 3.6e3, 0, "hour"},
		{"lb", 4.535924e-1, 1e-7, "pound (avoirdupois)"},
		{"oz", 2.834952e-2, 1e-8, "ounce (avoirdupois)"},
		{"ton", 9.071847e2, 1e-4, "ton, short (2000 lb)"},
		{"long ton", 1.016047e3, 1e-3, "ton, long (2240 lb)"},
		{"t", 1e3, 0, "ton, metric"},
	} {
		u := findUnit(c.unit)
		if u == nil {
			t.Errorf("%s is not known", c.unit)
			continue
		}
		got := u.si(1)
		if tol := c.last/2 + c.want*1e-15; math.Abs(got-c.want) > tol {
			t.Errorf("%s (%s): 1 is %.9e in SI, NIST SP 811 has %.9e", c.unit, c.entry, got, c.want)
		}
	}
}

// TestExactFactors holds the definitions to the last digit: US gallon 231 in³,
// inch 25.4 mm, pound 0.45359237 kg (NIST Handbook 44, appendix C, from memory);
// imperial gallon 4.54609 L (Units of Measurement Regulations 1995, UK, from
// memory). The acre is 43 560 ft² by the international foot; SP 811 still
// prints the survey acre, 4046.873 m².
func TestExactFactors(t *testing.T) {
	for name, want := range map[string]float64{
		"gal": 0.003785411784, "imp gal": 0.00454609, "lb": 0.45359237, "ft³": 0.028316846592,
		"yd³": 0.764554857984, "acre": 4046.8564224, "in²": 0.00064516, "L/h": 1.0 / 3600000,
	} {
		u := findUnit(name)
		if got := u.si(1); got != want {
			t.Errorf("%s is %.17g, want %.17g", name, got, want)
		}
	}
}

// TestConstantsAgreeWithTable: the exported constants and the table of units
// are one set of factors.
func TestConstantsAgreeWithTable(t *testing.T) {
	for name, want := range map[string]float64{
		"in": float64(Inch), "ft": float64(Foot), "yd": float64(Yard), "gal": float64(USGallon),
		"gpm": float64(USGallonPerMinute), "gph": float64(USGallonPerHour), "psi": float64(PSI), "hp": float64(Horsepower),
		"imp gpm": float64(ImperialGallonPerMinute), "m³/h": float64(CubicMetrePerHour), "ton": float64(ShortTon),
	} {
		if got := tableUnit(name).si(1); math.Abs(got-want) > want*1e-15 {
			t.Errorf("%s: %.17g in the table, %.17g as a constant", name, got, want)
		}
	}
}

// TestTemperature: fixed points of the scales (BIPM SI Brochure and NIST SP 811
// section B.8, from memory).
func TestTemperature(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{{"32 F", 0}, {"212 F", 100}, {"-40 F", -40}, {"273.15 K", 0}, {"0 K", -273.15}, {"60 F", 140.0 / 9}, {"-0.5 C", -0.5}} {
		r, err := Parse(c.text, KindTemperature, US)
		if err != nil || math.Abs(r.SI-c.want) > 1e-12 {
			t.Errorf("%s is %v °C (%v), want %v", c.text, r.SI, err, c.want)
		}
	}
}
