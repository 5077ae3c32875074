package hydro

import (
	"math"

	"plashet/engine/unit"
)

// The explicit formulas here stand beside Friction for comparison: handbooks
// and spreadsheets use them, and the outside checks hold them and ours
// together. The laws of this package never use them.

// Haaland is the friction factor by Haaland, J. Fluids Eng. 105 (1983) 89:
//
//	1/sqrt f = -1.8 log10( (rel/3.7)^1.11 + 6.9/Re )
//
// for Re from 4000 to 1e8 and rel from 0 to 0.05; outside that, not a number.
func Haaland(re, rel unit.Ratio) unit.Ratio {
	if !turbulentRange(re, rel) {
		return unit.Ratio(math.NaN())
	}
	x := -1.8 * math.Log10(math.Pow(float64(rel)/3.7, 1.11)+6.9/float64(re))
	return unit.Ratio(1 / (x * x))
}

// SwameeJain is the friction factor by Swamee and Jain, J. Hydraul. Div. ASCE
// 102 (1976) 657:
//
//	1/sqrt f = -2 log10( rel/3.7 + (6.97/Re)^0.9 )
//
// for Re from 4000 to 1e8 and rel from 0 to 0.05; outside that, not a number.
// The constant is often printed as 5.74/Re^0.9, which is the same.
func SwameeJain(re, rel unit.Ratio) unit.Ratio {
	if !turbulentRange(re, rel) {
		return unit.Ratio(math.NaN())
	}
	x := -2 * math.Log10(float64(rel)/3.7+math.Pow(6.97/float64(re), 0.9))
	return unit.Ratio(1 / (x * x))
}

// Churchill is the friction factor for every regime by Churchill, Chem. Eng. 7
// Nov 1977, 91:
//
//	f = 8 ( (8/Re)^12 + (A + B)^-1.5 )^(1/12)
//	A = ( -2.457 ln( (7/Re)^0.9 + 0.27 rel ) )^16,  B = (37530/Re)^16
//
// for Re from above 0 to 1e8 and rel from 0 to 0.05; outside that, not a
// number. Between 2000 and 4000 it is another guess than the bridge.
func Churchill(re, rel unit.Ratio) unit.Ratio {
	if !(re > 0 && re <= 1e8) || !(rel >= 0 && rel <= MaxRelativeRoughness) {
		return unit.Ratio(math.NaN())
	}
	r := float64(re)
	a := math.Pow(-2.457*math.Log(math.Pow(7/r, 0.9)+0.27*float64(rel)), 16)
	b := math.Pow(37530/r, 16)
	return unit.Ratio(8 * math.Pow(math.Pow(8/r, 12)+math.Pow(a+b, -1.5), 1.0/12))
}

func turbulentRange(re, rel unit.Ratio) bool {
	return re >= TurbulentStart && re <= 1e8 && rel >= 0 && rel <= MaxRelativeRoughness
}
