package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Wire figures are for a contractor's own reckoning. The licensed electrician
// and the local code have the last word on conductor, protection and burial;
// water and mains voltage together kill.

// SourceVoltageDrop names the formula of the voltage drop.
var SourceVoltageDrop = trace.Source{
	Title: "single phase or DC: 2 L R I; by the K method 2 K I L/CM with K 12.9 ohm cmil/ft for copper at 75 C",
	Basis: trace.BasisPublished,
	Note:  "exam lesson on voltage drop; the licensed electrician confirms",
}

// CircularMil is the area of a circle 0.001 in across.
const CircularMil = unit.Area(math.Pi / 4 * 0.0254e-3 * 0.0254e-3)

// CopperResistivity is K = 12.9 ohm circular mils to the foot, in ohm metres:
// copper at about 75 °C. It is 2.14e-8.
const CopperResistivity = 12.9 * float64(CircularMil) / float64(unit.Foot)

// ConductorArea is the metal section of an American wire gauge: the diameter
// is 0.005 in × 92^((36-n)/39) (ASTM B258), n the gauge from 40 to 1; 0, -1,
// -2 and -3 stand for 1/0 to 4/0. Other numbers give CodeRange.
func ConductorArea(gauge int) (unit.Area, error) {
	if err := within("gauge", unit.Ratio(gauge), -3, 40, unit.KindCount); err != nil {
		return 0, err
	}
	d := 0.005 * float64(unit.Inch) * math.Pow(92, float64(36-gauge)/39)
	return unit.Area(math.Pi / 4 * d * d), nil
}

// VoltageDrop is the voltage lost on the way there and back:
//
//	drop = 2 L R I
//
// L the one-way length, R the conductor's resistance in ohms for each metre, I
// the current. All must be at least zero.
func VoltageDrop(current unit.Current, oneWay unit.Length, ohmPerM float64) (unit.Voltage, error) {
	err := cmp.Or(
		notNegative("current", current, unit.KindCurrent),
		notNegative("length", oneWay, unit.KindDistance),
		notNegative("resistance", unit.Ratio(ohmPerM), unit.KindRatio),
	)
	if err != nil {
		return 0, err
	}
	return unit.Voltage(2 * float64(oneWay) * ohmPerM * float64(current)), nil
}

// VoltageDropByArea is VoltageDrop for a conductor of a section and a
// resistivity in ohm metres, R = resistivity / area: the K method, 2 K I L/CM.
// The section must be above zero.
func VoltageDropByArea(current unit.Current, oneWay unit.Length, area unit.Area, ohmM float64) (unit.Voltage, error) {
	err := cmp.Or(
		positive("area", area, unit.KindArea),
		notNegative("resistivity", unit.Ratio(ohmM), unit.KindRatio),
	)
	if err != nil {
		return 0, err
	}
	return VoltageDrop(current, oneWay, ohmM/float64(area))
}
