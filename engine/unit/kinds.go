package unit

// style says how a kind's number is printed.
type style uint8

const (
	fixed    style = iota // always all decimals, thousands grouped
	trimmed               // decimals as needed, thousands not grouped
	tape                  // feet, inches and a fraction
	duration              // seconds, minutes, hours or days by size; trimmed
)

// shown is how a kind is written in one system.
type shown struct {
	unit     string // a bare number's unit, and the printed one
	decimals int    // or, for tape, the denominator of the fraction
	style    style
	eg       string // as people write it; Parse reads it
}

// kindDef is one row of the table of kinds.
type kindDef struct {
	name       string
	dim        Dim
	us, metric shown
}

// kinds is the table. The choice of unit and step is common practice of the
// trade, no source: feet and inches to the sixteenth for what is cut,
// hundredths of a foot for levels as a rod is read.
var kinds = [kindEnd]kindDef{
	KindNone:         {"", DimNone, shown{"", 4, trimmed, ""}, shown{"", 4, trimmed, ""}},
	KindTape:         {"tape", DimLength, shown{"in", 16, tape, `4' 7-1/2"`}, shown{"mm", 0, fixed, "1410 mm"}},
	KindPlan:         {"plan", DimLength, shown{"ft", 2, tape, `16' 6"`}, shown{"m", 2, fixed, "5.03 m"}},
	KindDistance:     {"distance", DimLength, shown{"ft", 1, fixed, "60 ft"}, shown{"m", 2, fixed, "18.3 m"}},
	KindElevation:    {"elevation", DimLength, shown{"ft", 2, fixed, "11.62 ft"}, shown{"m", 3, fixed, "3.542 m"}},
	KindDepth:        {"depth", DimLength, shown{"in", 2, fixed, "3/4 in"}, shown{"mm", 1, fixed, "19 mm"}},
	KindHead:         {"head", DimLength, shown{"ft", 2, fixed, "9.33 ft"}, shown{"m", 2, fixed, "2.84 m"}},
	KindBore:         {"bore", DimLength, shown{"in", 3, fixed, "2.067 in"}, shown{"mm", 2, fixed, "52.5 mm"}},
	KindRoughness:    {"roughness", DimLength, shown{"mm", 4, trimmed, "0.0015 mm"}, shown{"mm", 4, trimmed, "0.0015 mm"}},
	KindArea:         {"area", DimArea, shown{"ft²", 1, fixed, "141 ft2"}, shown{"m²", 2, fixed, "13.1 m2"}},
	KindWater:        {"water", DimVolume, shown{"gal", 1, fixed, "1980 gal"}, shown{"L", 1, fixed, "7500 L"}},
	KindEarth:        {"earth", DimVolume, shown{"yd³", 2, fixed, "2.5 yd3"}, shown{"m³", 2, fixed, "1.9 m3"}},
	KindCement:       {"cement", DimVolume, shown{"pint", 2, fixed, "1/2 pint"}, shown{"mL", 0, fixed, "250 mL"}},
	KindFlow:         {"flow", DimFlow, shown{"gpm", 1, fixed, "55 gpm"}, shown{"L/h", 0, fixed, "12500 L/h"}},
	KindPressure:     {"pressure", DimPressure, shown{"psi", 2, fixed, "2 psi"}, shown{"kPa", 1, fixed, "14 kPa"}},
	KindSpeed:        {"speed", DimSpeed, shown{"ft/s", 2, fixed, "4.8 ft/s"}, shown{"m/s", 2, fixed, "1.46 m/s"}},
	KindPower:        {"power", DimPower, shown{"W", 0, fixed, "640 W"}, shown{"W", 0, fixed, "640 W"}},
	KindEnergy:       {"energy", DimEnergy, shown{"kWh", 1, fixed, "5600 kWh"}, shown{"kWh", 1, fixed, "5600 kWh"}},
	KindAngle:        {"angle", DimAngle, shown{"°", 1, trimmed, "90°"}, shown{"°", 1, trimmed, "90°"}},
	KindTemperature:  {"temperature", DimTemperature, shown{"°F", 1, trimmed, "60 F"}, shown{"°C", 1, trimmed, "15 °C"}},
	KindDuration:     {"duration", DimDuration, shown{"min", 1, duration, "30 min"}, shown{"min", 1, duration, "30 min"}},
	KindHours:        {"hours", DimDuration, shown{"h", 2, trimmed, "24 h"}, shown{"h", 2, trimmed, "24 h"}},
	KindMass:         {"mass", DimMass, shown{"ton", 2, fixed, "3.5 ton"}, shown{"t", 2, fixed, "3.2 t"}},
	KindWeight:       {"weight", DimMass, shown{"lb", 1, fixed, "22 lb"}, shown{"kg", 1, fixed, "10 kg"}},
	KindVoltage:      {"voltage", DimVoltage, shown{"V", 1, trimmed, "120 V"}, shown{"V", 1, trimmed, "230 V"}},
	KindCurrent:      {"current", DimCurrent, shown{"A", 2, trimmed, "6.2 A"}, shown{"A", 2, trimmed, "2.8 A"}},
	KindRatio:        {"ratio", DimNone, shown{"", 4, trimmed, "0.45"}, shown{"", 4, trimmed, "0.45"}},
	KindPercent:      {"percent", DimNone, shown{"%", 1, trimmed, "40 %"}, shown{"%", 1, trimmed, "40 %"}},
	KindCount:        {"count", DimNone, shown{"", 0, fixed, "3"}, shown{"", 0, fixed, "3"}},
	KindFlowPerWidth: {"flowPerWidth", DimFlowPerWidth, shown{"gph/in", 1, fixed, "100 gph/in"}, shown{"L/h per cm", 1, fixed, "150 L/h per cm"}},
	KindMoney:        {"money", DimMoney, shown{"", 2, fixed, "18.40"}, shown{"", 2, fixed, "18.40"}},
}

var kindByName = func() map[string]Kind {
	m := make(map[string]Kind, len(kinds))
	for k := KindNone + 1; k < kindEnd; k++ {
		m[kinds[k].name] = k
	}
	return m
}()

// KindByName finds a kind by its name in the job document ("tape", "flow").
func KindByName(name string) (Kind, bool) {
	k, ok := kindByName[name]
	return k, ok
}

// def gives the kind's row; an unknown kind has KindNone's.
func (k Kind) def() *kindDef {
	if k >= kindEnd {
		k = KindNone
	}
	return &kinds[k]
}

func (k Kind) in(s System) *shown {
	if s.Is(Metric) {
		return &k.def().metric
	}
	return &k.def().us
}

// Name is the kind's stable lower-case name; "" for KindNone.
func (k Kind) Name() string { return k.def().name }

// Dim is the kind's dimension.
func (k Kind) Dim() Dim { return k.def().dim }

// UnitName is the unit that a bare number takes and that the kind is shown in.
// It is "" for kinds without unit, and "%" for KindPercent, whose bare numbers
// are the ratio itself.
func (k Kind) UnitName(s System) string { return k.in(s).unit }

// Example is a text that Parse reads, as people write the kind in that system.
func (k Kind) Example(s System) string { return k.in(s).eg }

// what says in plain words what the kind holds.
func (k Kind) what() string {
	switch k {
	case KindHead:
		return "head"
	case KindPercent:
		return "percentage"
	case KindCount:
		return "count"
	case KindElevation:
		return "height"
	}
	return k.Dim().String()
}
