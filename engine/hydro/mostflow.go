package hydro

import (
	"math"

	"plashet/engine/unit"
)

// MostFlow is the greatest flow at which the pump still gives a head, where
// Flow is the least: on a level stretch of the curve, its end. Outside the data
// it follows the continuation that Head describes, like Flow.
func (c *Curve) MostFlow(h unit.Head) (q unit.Flow, inside bool) {
	y, last := float64(h), c.head.last()
	if math.IsNaN(y) || y > c.head.first().y0 || y < last.y1 {
		return c.Flow(h)
	}
	for i := len(c.head.spans) - 1; i >= 0; i-- {
		switch s := &c.head.spans[i]; {
		case y <= s.y1:
			return unit.Flow(s.x1), true // only the last span, or a level one, ends no lower
		case y <= s.y0:
			return unit.Flow(s.solve(y)), true
		}
	}
	return unit.Flow(c.head.first().x0), true
}
