package motion

import "math"

// pace is the step that each of the two methods would take next, in s, and the
// longest in which the supply's flows hold.
type pace struct {
	steep, wide, supply float64
	refused             bool // the last step was: the next does not grow
}

const (
	firstStep  = 0.05 // s, of a course and after a change from outside
	leastAfter = 0.02 // s, at least, after an event
	stable     = 3.0  // step of try over the time of the fastest settling; it is stable to 3.3
	patience   = 1.5  // growth of the step that waits its turn
	relaxTol   = 1e-6 // m³, the accuracy from which on relax serves
)

func (p *pace) set(stages int, step float64) {
	p.refused = true
	if stages > 0 {
		p.wide = step
	} else {
		p.steep = step
	}
}

// grow notes the step to be taken next. One cut short by its end tells nothing.
func (p *pace) grow(stages int, step, next float64, last bool) {
	if p.refused {
		next = min(next, step)
		p.refused = false
	}
	mine, other := &p.steep, &p.wide
	if stages > 0 {
		mine, other = other, mine
	}
	if !last || step >= *mine {
		*mine = next
	}
	*other = max(*other, min(*other*patience, step))
}

// pick chooses step and method: the one that goes further for each evaluation.
func (c *course) pick(p *pace, left float64) (step float64, stages int) {
	most := min(left, c.longest, p.supply)
	step = min(p.steep, most)
	if c.tol < relaxTol {
		return step, 0
	}
	rate, calm := c.settling(c.x)
	if !calm || step*rate <= stable {
		return step, 0
	}
	step = min(step, stable/rate)
	wide := min(p.wide, most)
	s := stagesFor(wide * rate)
	if s > mostStages {
		s = mostStages
		wide = (float64((s-1)*(s-1)) - 1) / (1.54 * rate)
	}
	if float64(s)/wide < 6/step {
		return wide, s
	}
	return step, 0
}

// take tries a step, with stages above 0 one of relax; it gives the step to be
// taken next, or, with false, instead.
func (c *course) take(p *pace, step float64, stages int) (next float64, ok bool) {
	st := &c.s.steps
	order := 5.0
	var worst float64
	if stages > 0 {
		order = 3
		worst = st.relax(c.rates, c.t, c.x, step, c.tol, stages, skipped)
	} else {
		worst = st.try(c.rates, c.t, c.x, step, c.tol, skipped)
	}
	switch {
	case worst <= 1 || step <= leastStep:
	case math.IsNaN(worst):
		return step * 0.1, false
	default:
		return step * max(0.1, 0.9*math.Pow(worst, -1/order)), false
	}
	if c.pumping && c.p.Valve != StuckShut && step > 1e-3 {
		c.lifts(st.next)
		if !c.supply.Within(c.s.lift) {
			p.supply = step / 2
			return step, false
		}
		p.supply = max(p.supply, min(patience*p.supply, c.longest))
	}
	return step * min(4, 0.9*math.Pow(max(worst, 1e-4), -1/order)), true
}
