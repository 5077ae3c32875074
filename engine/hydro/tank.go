package hydro

import (
	"cmp"
	"math"

	"plashet/engine/unit"
)

// DrainTime is how long a tank with upright walls takes to fall from one level
// to another through an opening under water, with nothing coming in:
//
//	t = 2 A/(Cd a sqrt(2g)) (sqrt h1 - sqrt h2)
//
// A the tank's area in plan, a the opening's, Cd its coefficient of discharge
// (0.61 for a sharp hole, 1 for a perfect nozzle), h1 and h2 the levels above
// the opening's centre (above the outlet's end, for a pipe). Areas and Cd must
// be above zero, Cd at most 1, h1 >= h2 >= 0, else CodeRange.
func DrainTime(tank, opening unit.Area, cd unit.Ratio, from, to unit.Head) (unit.Duration, error) {
	err := cmp.Or(
		positive("tank", tank, unit.KindArea),
		positive("opening", opening, unit.KindArea),
		positive("cd", cd, unit.KindRatio),
		within("cd", cd, 0, 1, unit.KindRatio),
		notNegative("from", from, unit.KindDepth),
		within("to", to, 0, from, unit.KindDepth),
	)
	if err != nil {
		return 0, err
	}
	fall := math.Sqrt(float64(from)) - math.Sqrt(float64(to))
	return unit.Duration(2 * float64(tank) * fall / (float64(cd) * float64(opening) * math.Sqrt(2*unit.StandardGravity))), nil
}
