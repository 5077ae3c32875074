package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// HazenWilliamsForm picks the constants of the Hazen-Williams formula: the
// handbooks round them differently, and that is worth up to 2 percent.
type HazenWilliamsForm uint8

// The forms.
const (
	// HazenWilliamsSI: h = 10.67 L Q^1.852/(C^1.852 D^4.8704), in metres and
	// m³/s. It is v = 0.849 C R^0.63 S^0.54 solved for the head: 4.8704 =
	// 2.63/0.54, 1.852 = 1/0.54.
	HazenWilliamsSI HazenWilliamsForm = iota
	// HazenWilliamsUS: h = 0.2083 (100/C)^1.852 Q^1.852/d^4.8655 ft for each
	// 100 ft, Q in US gpm, d in inches.
	HazenWilliamsUS
)

// SourceHazenWilliams names the law of a pipe known only by its C.
var SourceHazenWilliams = trace.Source{
	Title: "Williams and Hazen, Hydraulic tables (1905): v = 0.849 C R^0.63 S^0.54 (SI)",
	Basis: trace.BasisMemory,
	Note:  "with C 150 it lies within 2 percent of the friction table in Illinois Administrative Code title 77 part 906, exhibit I",
}

// SourceHazenRange names where the range of the formula comes from.
var SourceHazenRange = trace.Source{
	Title: "Liou, Limitations and proper use of the Hazen-Williams equation, J. Hydraul. Eng. 124 (1998) 951",
	Basis: trace.BasisMemory,
	Note:  "read in the abstract: C depends strongly on Re and size, the range is narrow; the limits 50 mm, 3 m/s, 5 to 25 C are from memory of handbooks; Re 4000 because the formula is one of turbulent flow",
}

// The range that the formula is used in without a caution.
const (
	hazenLeastBore     = 50 * unit.Millimetre
	hazenGreatestSpeed = 3 * unit.MetrePerSecond
	hazenColdest       = unit.Temperature(5)
	hazenWarmest       = unit.Temperature(25)
	hazenExponent      = 1.852
)

// HazenWilliamsLaw is a full round pipe that is known only by its C.
type HazenWilliamsLaw struct {
	Bore   unit.Length // inside diameter, above 0
	Length unit.Length // above 0
	C      unit.Ratio  // above 0; 150 smooth plastic, 100 to 120 ribbed hose
	Form   HazenWilliamsForm
}

// HazenWilliams is a HazenWilliamsLaw made ready for one water. The water
// counts only for the join at zero flow and for the range.
type HazenWilliams struct {
	HazenWilliamsLaw
	rePerQ      float64
	temperature unit.Temperature
	creepFlow   float64
	creepHead   float64
}

var hazenCreep = newCreep(hazenExponent)

// Prepare makes the law ready for a water. Sizes or a C that are not above
// zero give CodeRange, values that are not finite CodeNotFinite, an unknown
// form CodeWord.
func (p HazenWilliamsLaw) Prepare(w Water) (*HazenWilliams, error) {
	out := new(HazenWilliams)
	if err := out.Renew(p, w); err != nil {
		return nil, err
	}
	return out, nil
}

// Renew makes a pipe ready again in its place, for another law or water, as
// Prepare does; with an error it stays as it was.
func (p *HazenWilliams) Renew(law HazenWilliamsLaw, w Water) error {
	err := cmp.Or(
		positive("bore", law.Bore, unit.KindBore),
		positive("length", law.Length, unit.KindDistance),
		positive("c", law.C, unit.KindRatio),
		w.check(),
	)
	if err != nil {
		return err
	}
	slope, err := law.slopeAtOne()
	if err != nil {
		return err
	}
	*p = HazenWilliams{
		HazenWilliamsLaw: law,
		rePerQ:           4 / (math.Pi * float64(law.Bore) * w.KinematicM2S),
		temperature:      w.Temperature,
	}
	p.creepFlow = CreepReynolds / p.rePerQ
	p.creepHead = float64(law.Length) * slope * math.Pow(p.creepFlow, hazenExponent)
	return nil
}

// slopeAtOne is the head lost for each metre of pipe at 1 m³/s.
func (p HazenWilliamsLaw) slopeAtOne() (float64, error) {
	d, c := float64(p.Bore), float64(p.C)
	switch p.Form {
	case HazenWilliamsSI:
		return 10.67 / (math.Pow(c, hazenExponent) * math.Pow(d, 4.8704)), nil
	case HazenWilliamsUS:
		gpm := 1 / float64(unit.USGallonPerMinute)
		inches := d / float64(unit.Inch)
		return 0.2083 / 100 * math.Pow(100*gpm/c, hazenExponent) / math.Pow(inches, 4.8655), nil
	}
	return 0, fail(CodeWord, trace.Str("name", "form"), trace.Num("found", unit.Ratio(p.Form), unit.KindCount))
}

// Loss is the head lost and its derivative:
//
//	h = 10.67 L Q^1.852/(C^1.852 D^4.8704), odd in Q
//
// Below Re = 100 it is h100 (0.574 x + 0.426 x³), x = Re/100, h100 the loss at
// Re = 100: the same value and slope there, and a finite slope at zero flow.
// The law is kept at every flow, also where Cautions says that it is outside
// its range.
func (p *HazenWilliams) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	x := float64(q) / p.creepFlow
	a := math.Abs(x)
	if a < 1 {
		y, dy := hazenCreep.at(x)
		return unit.Head(p.creepHead * y), p.creepHead / p.creepFlow * dy
	}
	y := math.Exp(hazenExponent * math.Log(a))
	return unit.Head(math.Copysign(p.creepHead*y, x)), p.creepHead / p.creepFlow * hazenExponent * y / a
}

// Reynolds is the Reynolds number at a flow, with the flow's sign.
func (p *HazenWilliams) Reynolds(q unit.Flow) unit.Ratio { return unit.Ratio(float64(q) * p.rePerQ) }

// Cautions tells where a flow leaves the range of the formula: a bore under
// 50 mm, a speed above 3 m/s, water outside 5 to 25 °C, a Reynolds number
// under 4000. None when the pipe stands still.
func (p *HazenWilliams) Cautions(q unit.Flow) []trace.Message {
	if q == 0 {
		return nil
	}
	var out []trace.Message
	add := func(code, name string, found, limit trace.Arg) {
		out = append(out, trace.Message{Code: code, Args: []trace.Arg{trace.Str("name", name), found, limit}})
	}
	if p.Bore < hazenLeastBore {
		add(CautionHazenLeast, "bore", trace.Num("found", p.Bore, unit.KindBore), trace.Num("limit", hazenLeastBore, unit.KindBore))
	}
	if v := max(Velocity(q, p.Bore), Velocity(-q, p.Bore)); v > hazenGreatestSpeed {
		add(CautionHazenMost, "speed", trace.Num("found", v, unit.KindSpeed), trace.Num("limit", hazenGreatestSpeed, unit.KindSpeed))
	}
	switch t := p.temperature; {
	case t < hazenColdest:
		add(CautionHazenLeast, "temperature", trace.Num("found", t, unit.KindTemperature), trace.Num("limit", hazenColdest, unit.KindTemperature))
	case t > hazenWarmest:
		add(CautionHazenMost, "temperature", trace.Num("found", t, unit.KindTemperature), trace.Num("limit", hazenWarmest, unit.KindTemperature))
	}
	if re := p.Reynolds(q); RegimeOf(re) != Turbulent {
		add(CautionHazenLeast, "Reynolds number", trace.Num("found", re, unit.KindCount), trace.Num("limit", unit.Ratio(TurbulentStart), unit.KindCount))
	}
	return out
}
