package motion

// first finds the first event within the last step that changes a rule, and the
// part of the step at which it has just happened; -1 where none does. What comes
// over a lip up to then is told: it changes no rule.
func (c *course) first(step float64) (event int, part float64) {
	event, part = -1, 1
	ready := false
	each := evEach * len(c.s.feeds)
	for e := range c.g0 {
		if !(c.g0[e] > 0 && c.g1[e] <= 0) {
			continue
		}
		if !ready {
			c.s.steps.prepare(c.x, step)
			ready = true
		}
		if f := e - evFeeds; f >= 0 && f < each && f%evEach == evLip {
			c.over = append(c.over, e)
			continue
		}
		if p := c.locate(e, step); event < 0 || p < part {
			event, part = e, p
		}
	}
	for _, e := range c.over {
		if p := c.locate(e, step); p <= part {
			c.happen(e, c.t+p*step, c.x)
			c.g1[e] = 1
		}
	}
	c.over = c.over[:0]
	return event, part
}

// crossing tells of an event that a state alone makes: which one, and where it
// must come to; for others false.
func (c *course) crossing(e int) (state int, at float64, ok bool) {
	s := c.s
	if e -= evFeeds; e < 0 {
		return 0, 0, false
	}
	if e >= evEach*len(s.feeds) {
		state = e - evEach*len(s.feeds)
		return state, s.brim[state], true
	}
	w := &s.feeds[e/evEach]
	box := &w.parts[0]
	switch e % evEach {
	case evPipeFull:
		return w.pipe, w.cap, true
	case evPipeEmpty:
		return w.pipe, w.open + pipeRest*w.cap, true
	case evLip:
		return box.at, box.full, true
	}
	return box.at, box.openKeep, true // evSiphon, evClear
}

// locate finds where in the last step an event happens, on the interpolant; it
// gives the end of the bracket at which the event has happened. Where a state
// alone makes it no rates are needed.
func (c *course) locate(e int, step float64) float64 {
	state, at, ok := c.crossing(e)
	if !ok {
		return illinois(c.g0[e], c.g1[e], eventClose/step, func(part float64) float64 { return c.sign(e, part, step) })
	}
	st := &c.s.steps
	if c.x[state] < at {
		return illinois(at-c.x[state], at-st.next[state], eventClose/step, func(part float64) float64 { return at - st.one(state, part) })
	}
	return illinois(c.x[state]-at, st.next[state]-at, eventClose/step, func(part float64) float64 { return st.one(state, part) - at })
}

// illinois finds where a value that is above nought at 0 and not at 1 comes to
// nought, by false position, to within close, and gives the end of the bracket
// at which it has.
func illinois(glo, ghi, near float64, value func(at float64) float64) float64 {
	lo, hi := 0.0, 1.0
	side := 0
	for range 60 {
		if hi-lo < near || ghi == 0 {
			break
		}
		at := hi - ghi*(hi-lo)/(ghi-glo)
		if !(at > lo && at < hi) {
			at = (lo + hi) / 2
		}
		g := value(at)
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
