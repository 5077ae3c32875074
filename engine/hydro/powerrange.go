package hydro

import (
	"math"

	"plashet/engine/unit"
)

// PowerRange is the least and the greatest electrical power between two flows,
// as Power gives it, ends included; zeros with PowerUnknown. Between the points
// of the data a PCHIP curve rises or falls one way, so they lie at an end or at
// a point. Flows in the wrong order or not numbers give not a number.
func (c *Curve) PowerRange(low, high unit.Flow) (least, greatest unit.Power) {
	if !(low <= high) {
		return unit.Power(math.NaN()), unit.Power(math.NaN())
	}
	least, basis, _ := c.Power(low)
	end, _, _ := c.Power(high)
	least, greatest = min(least, end), max(least, end)
	if basis != PowerCurve {
		return least, greatest
	}
	for i := range c.power.curve.spans {
		if s := &c.power.curve.spans[i]; s.x0 > float64(low) && s.x0 < float64(high) {
			least, greatest = min(least, unit.Power(s.y0)), max(greatest, unit.Power(s.y0))
		}
	}
	return least, greatest
}
