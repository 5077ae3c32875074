package motion

// first finds the first event within the last step, and the part of the step
// at which it has just happened; -1 where none does.
func (c *course) first(step float64) (event int, part float64) {
	event, part = -1, 1
	ready := false
	for e := range c.g0 {
		if !(c.g0[e] > 0 && c.g1[e] <= 0) {
			continue
		}
		if !ready {
			c.s.steps.prepare(c.x, step)
			ready = true
		}
		if p := c.locate(e, step); event < 0 || p < part {
			event, part = e, p
		}
	}
	return event, part
}

// locate finds where in the last step an event happens, by false position (the
// Illinois method) on the interpolant; it gives the end of the bracket at which
// the event has happened.
func (c *course) locate(e int, step float64) float64 {
	lo, hi, glo, ghi := 0.0, 1.0, c.g0[e], c.g1[e]
	side := 0
	for range 60 {
		if (hi-lo)*step < eventClose || ghi == 0 {
			break
		}
		at := hi - ghi*(hi-lo)/(ghi-glo)
		if !(at > lo && at < hi) {
			at = (lo + hi) / 2
		}
		g := c.sign(e, at, step)
		if g > 0 {
			lo, glo = at, g
			if side == 1 {
				ghi /= 2
			}
			side = 1
		} else {
			hi, ghi = at, g
			if side == -1 {
				glo /= 2
			}
			side = -1
		}
	}
	return hi
}

// sign gives an event's value at a part of the last step.
func (c *course) sign(e int, part, step float64) float64 {
	st := &c.s.steps
	st.at(part, c.mid)
	c.rates(c.t+part*step, c.mid, st.tmp)
	c.signs(c.mid, st.tmp, c.gmid())
	return c.gmid()[e]
}

func (c *course) gmid() []float64 {
	if c.gm == nil {
		c.gm = make([]float64, len(c.g0))
	}
	return c.gm
}

// to goes to a part of the last step.
func (c *course) to(part, step float64) {
	if part == 1 {
		copy(c.x, c.s.steps.next)
	} else {
		c.s.steps.at(part, c.x)
	}
	c.t += part * step
	c.rates(c.t, c.x, c.s.steps.k[0])
	c.extremes(c.t)
}
