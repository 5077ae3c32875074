package size

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceWorth names the formula of the present value.
var SourceWorth = trace.Source{
	Title: "present value of equal yearly payments: (1 - (1+d)^-n)/d, n when d is 0",
	Basis: trace.BasisMemory,
	Note:  "the uniform present value factor of engineering economics, payments at each year's end; tables give 7.7217 for 10 years at 5 percent",
}

// MostYears is the longest time that costs are counted over.
const MostYears = 100

// PresentWorth is what one unit of money at the end of each of n years is worth
// now at a discount rate d:
//
//	(1 - (1+d)^-n)/d,  d > 0
//	n,                 d = 0
//
// for n from 0 to MostYears and d from 0 to 1; with a rate above inflation, at
// today's prices, d is the real rate. Outside these ok is false.
func PresentWorth(years, discount unit.Ratio) (worth unit.Ratio, ok bool) {
	n, d := float64(years), float64(discount)
	if !(n >= 0 && n <= MostYears && d >= 0 && d <= 1) {
		return 0, false
	}
	if d == 0 {
		return years, true
	}
	// expm1 and log1p keep the digits that a small rate would lose.
	return unit.Ratio(-math.Expm1(-n*math.Log1p(d)) / d), true
}

// cost is the present value of the energy of a power over the years, rounded
// to the millionth.
func (e Energy) cost(p unit.Power) Cost {
	kWh := float64(p) * float64(e.PerYear) / float64(unit.KilowattHour)
	return Cost(math.Round(min(kWh*float64(e.Tariff)*float64(e.Worth), float64(MostCost))))
}
