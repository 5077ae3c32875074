package hydro

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Expansion of PVC pipe: trade tables have 0.36 in for each 100 ft and 10 °F
// (3.0e-5 per °F) or 2.8e-5 per °F, which is 50.4e-6 per °C. The first is the
// greater.
const (
	PVCExpansionPerK      = 3.0e-5 * 1.8
	PVCExpansionLeastPerK = 2.8e-5 * 1.8
)

// SourceExpansion names where the expansion of PVC comes from.
var SourceExpansion = trace.Source{
	Title: "0.360 in for each 100 ft and 10 F; page \"expansion\", PVC and CPVC piping resource",
	Basis: trace.BasisPublished,
	Note:  "another page has 50.4e-6 per C, 7 percent less",
}

// Expansion is how much longer a pipe gets when it warms by a change of
// temperature in kelvin (which may be negative): a L dT, perK the coefficient a.
// Length and coefficient must be at least zero.
func Expansion(length unit.Length, changeK, perK float64) (unit.Length, error) {
	err := firstError(
		notNegative("length", length, unit.KindDistance),
		notNegative("expansion", unit.Ratio(perK), unit.KindRatio),
	)
	if err == nil && !finite(changeK) {
		err = fail(CodeNotFinite, trace.Str("name", "change"))
	}
	return length * unit.Length(perK*changeK), err
}

// Derated is a pressure rating at a higher temperature: rating × factor, the
// factor from the pipe maker's table for that temperature, 0 to 1.
func Derated(rating unit.Pressure, factor unit.Ratio) (unit.Pressure, error) {
	err := firstError(
		notNegative("rating", rating, unit.KindPressure),
		within("factor", factor, 0, 1, unit.KindRatio),
	)
	return rating * unit.Pressure(factor), err
}
