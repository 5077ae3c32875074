package hydro

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// PowerBasis says what a pump's electrical power stands on.
type PowerBasis uint8

// The bases: nothing known, one figure for every flow, or a curve.
const (
	PowerUnknown PowerBasis = iota
	PowerConstant
	PowerCurve
)

// power is the electrical power of a pump over its flow.
type power struct {
	basis PowerBasis
	watts float64 // when constant
	curve hermite // when a curve
}

// setPower takes the watts of the points if at least two have any, else the
// one figure, else the one point's.
func (c *Curve) setPower(points []CurvePoint, single unit.Power) {
	var q, w []float64
	for _, p := range points {
		if p.Watts > 0 {
			q, w = append(q, float64(p.Flow)), append(w, float64(p.Watts))
		}
	}
	switch {
	case len(q) >= 2:
		c.power = power{basis: PowerCurve, curve: newPCHIP(q, w)}
		return
	case single > 0:
		c.power = power{basis: PowerConstant, watts: float64(single)}
	case len(q) == 1:
		c.power = power{basis: PowerConstant, watts: w[0]}
	default:
		return
	}
	c.note(CautionPowerConstant, trace.Num("power", unit.Power(c.power.watts), unit.KindPower))
}

// Power is the electrical power that the pump draws at a flow, what it stands
// on, and whether the flow lies within the data for it. Watts given at two or
// more points are joined by PCHIP, and beyond the first and last of them the
// end's figure stands (inside false). With one figure only it stands for every
// flow. With none the power is 0 and the basis PowerUnknown.
func (c *Curve) Power(q unit.Flow) (w unit.Power, basis PowerBasis, inside bool) {
	switch c.power.basis {
	case PowerCurve:
		first, last := c.power.curve.first(), c.power.curve.last()
		x := min(max(float64(q), first.x0), last.x1)
		y, _ := c.power.curve.at(x)
		return unit.Power(y), PowerCurve, x == float64(q)
	case PowerConstant:
		_, _, inside = c.Head(q)
		return unit.Power(c.power.watts), PowerConstant, inside
	}
	return 0, PowerUnknown, false
}
