package checks

import (
	"fmt"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// scipyConstants and pintRegistry name the libraries whose factors stand below
// as they print them; roundOff is what their arithmetic may leave in the last
// places.
const (
	scipyConstants = "python3-scipy 1.10.1 (Debian 1.10.1-2), scipy.constants"
	pintRegistry   = "python3-pint 0.19.2 (Debian 0.19.2-1), UnitRegistry"
	roundOff       = 1e-12
)

// factor is one unit read as a person writes it, against a library's factor.
type factor struct {
	id, text string
	kind     unit.Kind
	si       string // SI unit of want
	want     float64
	source   string
}

// factors lists the outside's values as the libraries print them, to the last
// digit.
var factors = []factor{
	{"inch", "1 in", unit.KindTape, "m", 0.0254, scipyConstants + ".inch"},
	{"foot", "1 ft", unit.KindDistance, "m", 0.30479999999999996, scipyConstants + ".foot"},
	{"acre", "1 acre", unit.KindArea, "m²", 4046.8564223999992, scipyConstants + ".acre"},
	{"square-foot", "1 sq ft", unit.KindArea, "m²", 0.09290303999999999, pintRegistry},
	{"us-gallon", "1 gal", unit.KindWater, "m³", 0.0037854117839999997, scipyConstants + ".gallon"},
	{"imperial-gallon", "1 imperial gal", unit.KindWater, "m³", 0.00454609, scipyConstants + ".gallon_imp"},
	{"us-pint", "1 pint", unit.KindCement, "m³", 0.0004731764729999999, pintRegistry},
	{"imperial-pint", "1 UK pint", unit.KindCement, "m³", 0.0005682612500000002, pintRegistry},
	{"us-fluid-ounce", "1 fl oz", unit.KindCement, "m³", 2.9573529562499998e-05, scipyConstants + ".fluid_ounce"},
	{"cubic-yard", "1 yd3", unit.KindEarth, "m³", 0.764554857984, pintRegistry},
	{"us-gph", "1 gph", unit.KindFlow, "m³/s", 1.0515032733333332e-06, pintRegistry},
	{"imperial-gph", "1 imperial gph", unit.KindFlow, "m³/s", 1.2628027777777783e-06, pintRegistry},
	{"cubic-foot-per-second", "1 cfs", unit.KindFlow, "m³/s", 0.028316846591999994, pintRegistry},
	{"gph-per-inch", "1 gph per inch", unit.KindFlowPerWidth, "m²/s", 4.1397766666666665e-05, pintRegistry},
	{"psi", "1 psi", unit.KindPressure, "Pa", 6894.757293168361, scipyConstants + ".psi"},
	{"foot-of-water", "1 ft of water", unit.KindPressure, "Pa", 2989.0669199999993, pintRegistry},
	{"psi-as-head", "1 psi", unit.KindHead, "m", 6894.757293168361 / (1000 * 9.80665), scipyConstants + ".psi over 1000 kg/m³ and .g"},
	{"horsepower", "1 hp", unit.KindPower, "W", 745.6998715822701, scipyConstants + ".hp"},
	{"kilowatt-hour", "1 kWh", unit.KindEnergy, "J", 3600000, pintRegistry},
	{"degree", "1 deg", unit.KindAngle, "rad", 0.017453292519943295, scipyConstants + ".degree"},
	{"fahrenheit", "60 F", unit.KindTemperature, "°C", 15.555555555555543, scipyConstants + ".convert_temperature"},
	{"pound", "1 lb", unit.KindWeight, "kg", 0.45359236999999997, scipyConstants + ".pound"},
	{"short-ton", "1 short ton", unit.KindMass, "kg", 907.1847399999999, scipyConstants + ".short_ton"},
	{"long-ton", "1 UK ton", unit.KindMass, "kg", 1016.0469088, scipyConstants + ".long_ton"},
}

// units holds the factors of the units, read from text as in a job, against
// general-purpose libraries and against the factors that the reference tables
// state.
func units() ([]Check, error) {
	out := make([]Check, 0, len(factors))
	for _, f := range factors {
		r, err := unit.Parse(f.text, f.kind, unit.US)
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			ID: "unit-" + f.id, Group: "units", What: f.text + " read as " + f.kind.Name(), Unit: f.si,
			Want: f.want, Got: r.SI, Rel: roundOff, Source: f.source, Basis: trace.BasisLibrary,
		})
	}
	stated, err := statedFactors()
	if err != nil {
		return nil, err
	}
	return append(out, stated...), nil
}

// statedFactors holds factors that the reference states in words; the tolerance
// is half a unit of the last digit stated.
func statedFactors() ([]Check, error) {
	volumes, err := Table("practice")
	if err != nil {
		return nil, err
	}
	gpm, _, err := unit.Read[unit.Flow]("1 gpm", unit.KindFlow, unit.US)
	if err != nil {
		return nil, err
	}
	cfs, _, err := unit.Read[unit.Flow]("1 ft3/s", unit.KindFlow, unit.US)
	if err != nil {
		return nil, err
	}
	out := []Check{
		{
			ID: "unit-stated-gpm", Group: "units", What: "1 gpm", Unit: "m³/s", Want: 6.30901964e-5, Got: float64(gpm), Abs: 0.5e-13,
			Source: "reference/README.md: factor behind the library values", Basis: trace.BasisLibrary,
		},
		{
			ID: "unit-stated-cfs", Group: "units", What: "1 ft³/s in gpm", Unit: "gpm", Want: 448.831, Got: float64(cfs / unit.USGallonPerMinute), Abs: 0.5e-3,
			Source: "reference row C101, note: 1 ft3/s = 448.831 gpm", Basis: trace.BasisLibrary,
		},
	}
	for _, v := range []struct{ id, rule, text string }{
		{"gal-ft3", "gallons per cubic foot", "1 cu ft"},
		{"gal-ft2-in", "gallons per square foot per inch", "144 cu in"},
	} {
		q, _, err := unit.Read[unit.Volume](v.text, unit.KindWater, unit.US)
		if err != nil {
			return nil, err
		}
		i := slices.IndexFunc(volumes, func(r Row) bool { return r["rule"] == v.rule })
		if i < 0 {
			return nil, fmt.Errorf("reference practice has no rule %q", v.rule)
		}
		r := volumes[i]
		want, err := r.Num("low")
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			ID: "unit-stated-" + v.id, Group: "units", What: v.rule, Unit: r["unit"], Want: want, Got: float64(q / unit.USGallon),
			Abs: 0.5e-2, Source: r["source"], Basis: trace.Basis(r["basis"]), Note: r["note"],
		})
	}
	return out, nil
}
