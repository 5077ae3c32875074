package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"
)

func diff(a, b float64) float64 { return math.Abs(a - b) }

// near tells whether two values agree but for rounding in the last places.
func near(a, b float64) bool { return diff(a, b) <= 1e-14*max(math.Abs(a), math.Abs(b)) }

// in is the tape's inch, from its definition, for the tests of lengths.
const in = 0.0254

// gpm is the US gallon per minute by definition: 231 in³ in 60 s.
const gpm = 231 * in * in * in / 60

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		sys  System
		want float64 // from the definitions of the units (factor_test.go)
		unit string
	}{
		// Lengths on the tape.
		{`4' 7-1/2"`, KindTape, US, 55.5 * in, "ft in"},
		{`4'7 1/2`, KindTape, US, 55.5 * in, "ft in"},
		{`4'-7 1/2"`, KindTape, US, 55.5 * in, "ft in"},
		{`4' - 7 1/2"`, KindTape, US, 55.5 * in, "ft in"},
		{"4 ft 7.5 in", KindTape, US, 55.5 * in, "ft in"},
		{"4ft 7-1/2in", KindTape, US, 55.5 * in, "ft in"},
		{"4ft7-1/2in", KindTape, US, 55.5 * in, "ft in"},
		{"4 ft. 7.5 in.", KindTape, US, 55.5 * in, "ft in"},
		{"4 feet, 7 1/2 inches", KindTape, US, 55.5 * in, "ft in"},
		{"55 1/2 in", KindTape, US, 55.5 * in, "in"},
		{"55-1/2", KindTape, US, 55.5 * in, "in"},
		{"55–1/2", KindTape, US, 55.5 * in, "in"},
		{"55½", KindTape, US, 55.5 * in, "in"},
		{"55 ½", KindTape, US, 55.5 * in, "in"},
		{"55-½ in", KindTape, US, 55.5 * in, "in"},
		{"4′ 7½″", KindTape, US, 55.5 * in, "ft in"},
		{"4’ 7½”", KindTape, US, 55.5 * in, "ft in"},
		{"4' 7½''", KindTape, US, 55.5 * in, "ft in"},
		{"4‘7⅞“", KindTape, US, 55.875 * in, "ft in"},
		{"55 1⁄2 in", KindTape, US, 55.5 * in, "in"},
		{"55-1/2-in", KindTape, US, 55.5 * in, "in"},
		{"¼", KindTape, US, in / 4, "in"},
		{"¾ in", KindTape, US, in * 3 / 4, "in"},
		{"⅛", KindTape, US, in / 8, "in"},
		{"⅜", KindTape, US, in * 3 / 8, "in"},
		{"⅝", KindTape, US, in * 5 / 8, "in"},
		{`7/16"`, KindTape, US, in * 7 / 16, "in"},
		{"2' 3-7/16", KindTape, US, 27.4375 * in, "ft in"},
		{"-3 in", KindTape, US, -3 * in, "in"},
		{"−3 in", KindTape, US, -3 * in, "in"},
		{"- 3 in", KindTape, US, -3 * in, "in"},
		{"+3 in", KindTape, US, 3 * in, "in"},
		{`-4' 7-1/2"`, KindTape, US, -55.5 * in, "ft in"},
		{"-0", KindTape, US, 0, "in"},
		{`0' 7"`, KindTape, US, 7 * in, "ft in"},
		{"1,410", KindTape, US, 1410 * in, "in"},
		{"2 yd 1 ft", KindTape, US, 84 * in, "yd ft"},
		{"2.287 ft", KindTape, US, 2.287 * 12 * in, "ft"},
		{"1.41 m", KindTape, US, 1.41, "m"},
		{"141 cm", KindTape, US, 1.41, "cm"},
		{"58 mm", KindTape, US, 0.058, "mm"},
		{"58", KindTape, Metric, 0.058, "mm"},
		{"1 m 41 cm", KindTape, Metric, 1.41, "m cm"},
		{" \t1.41\u00a0m\n", KindTape, Metric, 1.41, "m"},
		{"16", KindPlan, US, 16 * 12 * in, "ft"},
		{`16' 6"`, KindPlan, US, 198 * in, "ft in"},
		{"1.5e-6 m", KindRoughness, US, 1.5e-6, "m"},
		{"1.5 µm", KindRoughness, Metric, 1.5e-6, "µm"},
		{"0.0015", KindRoughness, US, 1.5e-6, "mm"},
		{"60 thou", KindBore, US, 0.06 * in, "mil"},
		// Commas.
		{"1,41 m", KindDistance, Metric, 1.41, "m"},
		{"1,41 m", KindDistance, US, 1.41, "m"},
		{"0,125 m", KindDistance, Metric, 0.125, "m"},
		{"1234,567 m", KindDistance, Metric, 1234.567, "m"},
		{"1.234,5 m", KindDistance, Metric, 1234.5, "m"},
		{"1,234.5 m", KindDistance, Metric, 1234.5, "m"},
		{"1 234,5 m", KindDistance, Metric, 1234.5, "m"},
		{"1,234,567 mm", KindTape, Metric, 1234.567, "mm"},
		{"1.234.567 mm", KindTape, Metric, 1234.567, "mm"},
		{"1 410 mm", KindTape, Metric, 1.41, "mm"},
		{"1,410 mm", KindTape, Metric, 1.41, "mm"},
		{"1,410 ft", KindDistance, Metric, 1410 * 12 * in, "ft"},
		{"1,410", KindCount, Metric, 1410, ""},
		{"1,410 1/2 in", KindTape, Metric, 1410.5 * in, "in"},
		// Flows and volumes.
		{"3300 gph", KindFlow, US, 55 * gpm, "gph"},
		{"55 gpm", KindFlow, US, 55 * gpm, "gpm"},
		{"55", KindFlow, US, 55 * gpm, "gpm"},
		{"55 GPM", KindFlow, US, 55 * gpm, "gpm"},
		{"55 gal/min", KindFlow, US, 55 * gpm, "gpm"},
		{"55 US gallons per minute", KindFlow, US, 55 * gpm, "gpm"},
		{"55 g.p.m.", KindFlow, US, 55 * gpm, "gpm"},
		{"3300 gal per hr", KindFlow, US, 55 * gpm, "gph"},
		{"1 quart/s", KindFlow, US, 15 * gpm, "quart/s"},
		{"12.5 m3/h", KindFlow, US, 12.5 / 3600, "m³/h"},
		{"12.5m3/h", KindFlow, US, 12.5 / 3600, "m³/h"},
		{"12.5 m³/h", KindFlow, Metric, 12.5 / 3600, "m³/h"},
		{"12.5 m^3/h", KindFlow, Metric, 12.5 / 3600, "m³/h"},
		{"12.5 cubic metres per hour", KindFlow, Metric, 12.5 / 3600, "m³/h"},
		{"4,740 l/h", KindFlow, Metric, 4.740 / 3600, "L/h"},
		{"4740", KindFlow, Metric, 4.740 / 3600, "L/h"},
		{"1.32 l/s", KindFlow, US, 0.00132, "L/s"},
		{"80 L/min", KindFlow, US, 0.08 / 60, "L/min"},
		{"1 cfs", KindFlow, US, 1728 * in * in * in, "ft³/s"},
		{"250 imperial gph", KindFlow, US, 250 * 0.00454609 / 3600, "imp gph"},
		{"250 UK gph", KindFlow, Metric, 250 * 0.00454609 / 3600, "imp gph"},
		{"250 gph (UK)", KindFlow, US, 250 * 0.00454609 / 3600, "imp gph"},
		{"250 imperial gallons per hour", KindFlow, US, 250 * 0.00454609 / 3600, "imp gph"},
		{"250 imp. gal/h", KindFlow, US, 250 * 0.00454609 / 3600, "imp gph"},
		{"30 imp gal", KindWater, US, 30 * 0.00454609, "imp gal"},
		{"30 UK gal", KindWater, US, 30 * 0.00454609, "imp gal"},
		{"30 imperial pints", KindWater, US, 30 * 0.00454609 / 8, "imp pint"},
		{"30 gal", KindWater, Metric, 30 * 231 * in * in * in, "gal"},
		{"1,980 gal", KindWater, Metric, 1980 * 231 * in * in * in, "gal"},
		{"7.5 m3", KindWater, US, 7.5, "m³"},
		{"2.5 cu yd", KindEarth, US, 2.5 * 46656 * in * in * in, "yd³"},
		{"1/2 pint", KindCement, US, 231 * in * in * in / 16, "pint"},
		{"141 sq ft", KindArea, US, 141 * 144 * in * in, "ft²"},
		{"141 ft2", KindArea, US, 141 * 144 * in * in, "ft²"},
		{"141 square feet", KindArea, Metric, 141 * 144 * in * in, "ft²"},
		{"20 in²", KindArea, US, 20 * in * in, "in²"},
		{"100 gph/in", KindFlowPerWidth, US, 100 * gpm / 60 / in, "gph/in"},
		{"100 gph per inch", KindFlowPerWidth, Metric, 100 * gpm / 60 / in, "gph/in"},
		{"10 gpm/ft", KindFlowPerWidth, US, 10 * gpm / 12 / in, "gpm/ft"},
		{"150 l/h per cm", KindFlowPerWidth, US, 0.150 / 3600 / 0.01, "L/h per cm"},
		{"5 gal/min/ft", KindFlowPerWidth, US, 5 * gpm / 12 / in, "gpm/ft"},
		// Heads and pressures: 1 ft of water is 2989.067 Pa (NIST SP 811, from memory) by definition of 0.3048 m × 9806.65 Pa/m.
		{"9.33 ft", KindHead, US, 9.33 * 12 * in, "ft"},
		{"2.84", KindHead, Metric, 2.84, "m"},
		{"20 ft of head", KindHead, US, 240 * in, "ftH2O"},
		{"3 m head", KindHead, US, 3, "mH2O"},
		{"9.80665 kPa", KindHead, US, 1, "kPa"},
		{"1.5 bar", KindPressure, US, 150000, "bar"},
		{"2 psi", KindPressure, Metric, 2 * 0.45359237 * 9.80665 / (in * in), "psi"},
		{"2 lb/in2", KindPressure, Metric, 2 * 0.45359237 * 9.80665 / (in * in), "psi"},
		{"20 kPa", KindPressure, US, 20000, "kPa"},
		{"10 ft H2O", KindPressure, US, 10 * 12 * in * 9806.65, "ftH2O"},
		// The rest.
		{"0.5 hp", KindPower, US, 550 * 12 * in * 0.45359237 * 9.80665 / 2, "hp"},
		{"1/2 hp", KindPower, US, 550 * 12 * in * 0.45359237 * 9.80665 / 2, "hp"},
		{"640 W", KindPower, US, 640, "W"},
		{"1.2 kW", KindPower, US, 1200, "kW"},
		{"5600 kWh", KindEnergy, US, 5600 * 3.6e6, "kWh"},
		{"60 F", KindTemperature, Metric, 28 / 1.8, "°F"},
		{"60 deg F", KindTemperature, US, 28 / 1.8, "°F"},
		{"60°", KindTemperature, US, 28 / 1.8, "°F"},
		{"-4 °F", KindTemperature, US, -20, "°F"},
		{"15 °C", KindTemperature, US, 15, "°C"},
		{"15 degrees Celsius", KindTemperature, US, 15, "°C"},
		{"15℃", KindTemperature, US, 15, "°C"},
		{"-15", KindTemperature, Metric, -15, "°C"},
		{"90 deg", KindAngle, US, math.Pi / 2, "°"},
		{"90°", KindAngle, US, math.Pi / 2, "°"},
		{"90", KindAngle, US, math.Pi / 2, "°"},
		{"1.57 rad", KindAngle, US, 1.57, "rad"},
		{"24 h", KindHours, US, 86400, "h"},
		{"24", KindHours, US, 86400, "h"},
		{"30 min", KindDuration, US, 1800, "min"},
		{"30", KindDuration, US, 1800, "min"},
		{"2 d", KindDuration, US, 172800, "d"},
		{"1 h 30 min", KindDuration, US, 5400, "h min"},
		{"90 s", KindDuration, US, 90, "s"},
		{"3.5 tons", KindMass, US, 7000 * 0.45359237, "ton"},
		{"3.5 short ton", KindMass, Metric, 7000 * 0.45359237, "ton"},
		{"3.5 US tons", KindMass, Metric, 7000 * 0.45359237, "ton"},
		{"1 UK ton", KindMass, US, 2240 * 0.45359237, "long ton"},
		{"3.5 t", KindMass, US, 3500, "t"},
		{"22 lb 8 oz", KindWeight, US, 22.5 * 0.45359237, "lb oz"},
		{"120 V", KindVoltage, US, 120, "V"},
		{"230 volts", KindVoltage, US, 230, "V"},
		{"6.2 A", KindCurrent, US, 6.2, "A"},
		{"500 mA", KindCurrent, US, 0.5, "mA"},
		{"0.0213", KindRatio, US, 0.0213, ""},
		{"35 %", KindRatio, US, 0.35, "%"},
		{"40 %", KindPercent, US, 0.4, "%"},
		{"40%", KindPercent, US, 0.4, "%"},
		{"40 percent", KindPercent, US, 0.4, "%"},
		{"0.4", KindPercent, US, 0.4, ""},
		{"1", KindPercent, US, 1, ""},
		{"1 %", KindPercent, US, 0.01, "%"},
		{"0.5 %", KindPercent, US, 0.005, "%"},
		{"150 %", KindPercent, US, 1.5, "%"},
		{"-10 %", KindPercent, US, -0.1, "%"},
		{"365", KindCount, US, 365, ""},
		{"5.", KindRatio, US, 5, ""},
		{".5", KindRatio, US, 0.5, ""},
	} {
		r, err := Parse(c.text, c.kind, c.sys)
		if err != nil {
			t.Errorf("%q as %s: %v", c.text, c.kind.Name(), err)
			continue
		}
		if !near(r.SI, c.want) || r.Unit != c.unit || r.Kind != c.kind {
			t.Errorf("%q as %s is %.17g in %q, want %.17g in %q", c.text, c.kind.Name(), r.SI, r.Unit, c.want, c.unit)
		}
	}
}

func TestParseBare(t *testing.T) {
	for text, bare := range map[string]bool{"55": true, "55 gpm": false, "55 l/s": false} {
		r, err := Parse(text, KindFlow, US)
		if err != nil || r.Bare != bare {
			t.Errorf("%q: bare is %v (%v)", text, r.Bare, err)
		}
	}
	if r, err := Parse("60°", KindTemperature, Metric); err != nil || !r.Bare || r.SI != 60 {
		t.Errorf("60° in the metric system is %+v (%v)", r, err)
	}
}

func TestParseDensity(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want float64
	}{
		{"2 psi", KindHead, 1000},
		{"20 kPa", KindHead, 1000},
		{"20 ft", KindHead, 0},
		{"20 ft of water", KindHead, 0},
		{"2 psi", KindPressure, 0},
		{"20 ft of water", KindPressure, 1000},
	} {
		r, err := Parse(c.text, c.kind, US)
		if err != nil || r.Density != c.want {
			t.Errorf("%q as %s assumes %v kg/m³ (%v), want %v", c.text, c.kind.Name(), r.Density, err, c.want)
		}
	}
}

func wantCode(t *testing.T, text string, k Kind, s System, code Code) *ParseError {
	t.Helper()
	r, err := Parse(text, k, s)
	var pe *ParseError
	if !errors.As(err, &pe) {
		t.Errorf("%q as %s is read as %+v (%v), want %s", text, k.Name(), r, err, code)
		return &ParseError{}
	}
	if pe.Code != code || r != (Reading{}) {
		t.Errorf("%q as %s: %s with %+v, want %s", text, k.Name(), pe.Code, r, code)
	}
	checkError(t, pe, text, k, s)
	return pe
}

// checkError holds what every ParseError promises.
func checkError(t *testing.T, pe *ParseError, text string, k Kind, s System) {
	t.Helper()
	if pe.Text != text || pe.Kind != k || pe.System != s || pe.At < 0 || pe.At > len(text) || pe.Example != k.Example(s) {
		t.Errorf("error of %q is %+v", text, pe)
	}
	msg := pe.Error()
	if !utf8.ValidString(msg) || msg == "" || strings.Contains(msg, "unit.") || pe.Example != "" && !strings.Contains(msg, pe.Example) {
		t.Errorf("error of %q says %q", text, msg)
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		sys  System
		code Code
		at   int
	}{
		{"", KindTape, US, CodeEmpty, 0},
		{"  ", KindTape, US, CodeEmpty, 2},
		{strings.Repeat("1", 101), KindTape, US, CodeLong, 100},
		{"in", KindTape, US, CodeNumber, 0},
		{"about 5 ft", KindTape, US, CodeNumber, 0},
		{"--5 ft", KindTape, US, CodeNumber, 1},
		{"-", KindTape, US, CodeNumber, 1},
		{".", KindTape, US, CodeNumber, 0},
		{"1.2.3 ft", KindTape, US, CodeNumber, 0},
		{"12,34,5 ft", KindTape, US, CodeNumber, 0},
		{"NaN", KindTape, US, CodeNumber, 0},
		{"Inf m", KindTape, US, CodeNumber, 0},
		{"-inf", KindTape, US, CodeNumber, 1},
		{"0x1p4 m", KindTape, US, CodeUnknown, 1},
		{"1_000 mm", KindTape, US, CodeUnknown, 1},
		{"1/0", KindTape, US, CodeFraction, 0},
		{"55 1/0 in", KindTape, US, CodeFraction, 0},
		{"55 3/2 in", KindTape, US, CodeFraction, 0},
		{"5.5 1/2 in", KindTape, US, CodeFraction, 0},
		{"5.5½ in", KindTape, US, CodeFraction, 0},
		{"1.5/2", KindTape, US, CodeFraction, 0},
		{"1/99999", KindTape, US, CodeFraction, 0},
		{"1/2/3", KindTape, US, CodeUnknown, 3},
		{"55 gpn", KindFlow, US, CodeUnknown, 3},
		{"55 gpm x", KindFlow, US, CodeUnknown, 3},
		{"55 gpm -", KindFlow, US, CodeUnknown, 3},
		{"55 gpm ()", KindFlow, US, CodeUnknown, 3},
		{"55 gal//min", KindFlow, US, CodeUnknown, 3},
		{"55 (gpm", KindFlow, US, CodeUnknown, 3},
		{"55 gpm..", KindFlow, US, CodeUnknown, 3},
		{"5 UK m", KindTape, US, CodeUnknown, 2},
		{"2 ML", KindWater, US, CodeUnknown, 2},
		{"2 mPa", KindPressure, US, CodeUnknown, 2},
		{"3 ton", KindMass, Metric, CodeUnknown, 2},
		{"5 \xff", KindTape, US, CodeUnknown, 2},
		{"5 ft", KindFlow, US, CodeDimension, 2},
		{"4ft2", KindTape, US, CodeDimension, 1},
		{"40 %", KindTape, US, CodeDimension, 3},
		{"2 psi", KindTape, US, CodeDimension, 2},
		{"20 ft", KindPressure, US, CodeDimension, 3},
		{"5 m", KindDuration, US, CodeDimension, 2},
		{"5 ft 3 gpm", KindTape, US, CodeTrailing, 5},
		{"5 in 3", KindTape, US, CodeTrailing, 5},
		{"5 6", KindTape, US, CodeTrailing, 2},
		{"55 - 1/2", KindTape, US, CodeTrailing, 3},
		{"55 -1/2", KindTape, US, CodeTrailing, 3},
		{"5, ft", KindTape, US, CodeTrailing, 1},
		{"5 ft,", KindTape, US, CodeTrailing, 4},
		{`4' 7" 3"`, KindTape, US, CodeTrailing, 3},
		{`7" 4'`, KindTape, US, CodeTrailing, 3},
		{"1 m 41", KindTape, US, CodeTrailing, 4},
		{"2 yd 1", KindTape, US, CodeTrailing, 5},
		{`4' 12"`, KindTape, US, CodeParts, 0},
		{`4.5' 3"`, KindTape, US, CodeParts, 0},
		{"1 h 60 min", KindDuration, US, CodeParts, 0},
		{`4' -`, KindTape, US, CodeTrailing, 3},
		{"1,410", KindDistance, Metric, CodeAmbiguous, 0},
		{"1,410 m", KindDistance, Metric, CodeAmbiguous, 0},
		{"1,410", KindTape, Metric, CodeAmbiguous, 0},
		{"1,410 m 5 cm", KindDistance, Metric, CodeAmbiguous, 0},
		{"1,410e2 m", KindDistance, Metric, CodeAmbiguous, 0},
		{"1.000 gph", KindFlow, US, CodeAmbiguous, 0},
		{"1.000 gph", KindFlow, Metric, CodeAmbiguous, 0},
		{"12.500 l/h", KindFlow, Metric, CodeAmbiguous, 0},
		{"7.500 Litre", KindWater, Metric, CodeAmbiguous, 0},
		{"7.500", KindWater, Metric, CodeAmbiguous, 0}, // bare litres
		{"-1.410", KindTape, Metric, CodeAmbiguous, 1}, // bare millimetres
		{"1.980 gal", KindWater, US, CodeAmbiguous, 0},
		{"1.150 W", KindPower, US, CodeAmbiguous, 0},
		{"1.000", KindCount, US, CodeAmbiguous, 0},
		{"1e99", KindTape, US, CodeRange, 0},
		{"1e-99", KindTape, US, CodeRange, 0},
		{"1e9999999999", KindTape, US, CodeRange, 0},
		{"1000000001 in", KindTape, US, CodeRange, 0},
		{strings.Repeat("9", 95) + " mm", KindTape, US, CodeRange, 0},
		{"40", KindPercent, US, CodePercent, 0},
		{"1.5", KindPercent, US, CodePercent, 0},
		{"-2", KindPercent, US, CodePercent, 1},
		{"2.5", KindCount, US, CodeWhole, 0},
		{"1/2", KindCount, US, CodeWhole, 0},
	} {
		if pe := wantCode(t, c.text, c.kind, c.sys, c.code); pe.At != c.at {
			t.Errorf("%q: at %d, want %d", c.text, pe.At, c.at)
		}
	}
}

func TestParseNear(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		sys  System
		near string
	}{
		{"55 gpn", KindFlow, US, "gpm"},
		{"55 gal/mim", KindFlow, US, "gpm"},
		{"55 l/hh", KindFlow, Metric, "L/h"},
		{"5 fr", KindTape, US, "ft"},
		{"5 inchs", KindTape, US, "in"},
		{"5 metrs", KindTape, Metric, "m"},
		{"5 psii", KindPressure, US, "psi"},
		{"3 ton", KindMass, Metric, "t"},
		{"2 killowatt", KindPower, US, "kW"},
		{"5 furlongs", KindTape, US, ""},
		{"5 xyzzy", KindFlow, US, ""},
	} {
		if pe := wantCode(t, c.text, c.kind, c.sys, CodeUnknown); pe.Near != c.near {
			t.Errorf("%q is near %q, want %q", c.text, pe.Near, c.near)
		}
	}
}

func TestParseErrorText(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		sys  System
		want string
	}{
		{"55 gpn", KindFlow, US, `read "55 gpn" as a flow: "gpn" is not a unit, did you mean "gpm"; write it like "55 gpm"`},
		{"5 ft", KindFlow, US, `read "5 ft" as a flow: "ft" is a unit of length, not of flow; write it like "55 gpm"`},
		{"1,410", KindDistance, Metric, `read "1,410" as a length: "1,410" can mean 1410 or 1.4100, write one of these; write it like "18.3 m"`},
		{"40", KindPercent, US, `read "40" as a percentage: a number above 1 needs its percent sign: 40 %, or as a ratio 0.4; write it like "40 %"`},
		{"", KindTape, US, "read \"\" as a length: nothing is written; write it like `4' 7-1/2\"`"},
	} {
		if _, err := Parse(c.text, c.kind, c.sys); err == nil || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
		}
	}
}

// A point before three digits is a decimal point where a thing is measured so
// finely, where other marks or a fourth digit tell, and in a plain number.
func TestPointBeforeThreeDigits(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		sys  System
		want float64
	}{
		{"2.067 in", KindBore, US, 2.067 * 0.0254}, // NIST SP 811: 0.0254 m
		{"1.250 in", KindTape, US, 1.25 * 0.0254},
		{"11.625 ft", KindElevation, US, 11.625 * 0.3048}, // NIST SP 811: 0.3048 m
		{"3.542 m", KindElevation, Metric, 3.542},
		{"1.410 m", KindTape, Metric, 1.41},
		{"1.125 mm", KindRoughness, Metric, 0.001125},
		{"1.000e3 L", KindWater, Metric, 1},
		{"0.500 L", KindWater, Metric, 0.0005},
		{"1.0000 L", KindWater, Metric, 0.001},
		{"1.5 L", KindWater, Metric, 0.0015},
		{"1.000.000 L", KindWater, Metric, 1000},
		{"1.250 kW", KindPower, Metric, 1250},
		{"1.250 m3/h", KindFlow, Metric, 1.25 / 3600},
		{"2.125", KindRatio, US, 2.125},
	} {
		if r, err := Parse(c.text, c.kind, c.sys); err != nil || !near(r.SI, c.want) {
			t.Errorf("%q is %v (%v), want %v", c.text, r.SI, err, c.want)
		}
	}
}

// TestAdviceIsReadable: what an ambiguous text's error tells to write is read.
func TestAdviceIsReadable(t *testing.T) {
	for _, typed := range []string{"1,410", "1.410"} {
		plain, decimal := bothReadings(typed)
		for text, want := range map[string]float64{plain: 1410, decimal: 1.41} {
			if r, err := Parse(text+" m", KindDistance, Metric); err != nil || r.SI != want {
				t.Errorf("%s m is %v (%v), want %v", text, r.SI, err, want)
			}
			if r, err := Parse(text+" L", KindWater, Metric); err != nil || !near(r.SI, want/1000) {
				t.Errorf("%s L is %v (%v), want %v", text, r.SI, err, want/1000)
			}
		}
	}
}

func TestRead(t *testing.T) {
	q, r, err := Read[Flow]("55 gpm", KindFlow, US)
	if err != nil || !near(float64(q), 55*gpm) || r.Unit != "gpm" {
		t.Errorf("55 gpm is %v, %+v (%v)", q, r, err)
	}
	_, _, err = Read[Length]("55 gpm", KindFlow, US)
	var pe *ParseError
	if !errors.As(err, &pe) || pe.Code != CodeKind {
		t.Errorf("a flow read into a length gives %v", err)
	}
	if n, _, err := Read[Ratio]("40 %", KindPercent, US); err != nil || n != 0.4 {
		t.Errorf("40 %% is %v (%v)", n, err)
	}
	if w, _, err := Read[FlowPerWidth]("100 gph/in", KindFlowPerWidth, US); err != nil || w <= 0 {
		t.Errorf("100 gph/in is %v (%v)", w, err)
	}
}
