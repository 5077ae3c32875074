package motion

import "math"

// aside is the way of a box's water into a lower one, made ready.
type aside struct {
	to   int // feed
	back float64
	thin float64 // head under which the flow is joined straight to zero, in m
}

// sideways is how long, in seconds, the last of two boxes' levelling out may
// take: a faster end is slowed to it, by less water than five seconds of flow.
const sideways = 5.0

// greatestThin bounds the head from which that is done, in metres.
const greatestThin = 0.02

func newAside(w *way) *aside {
	if w.Aside == nil {
		return nil
	}
	a := &aside{to: w.Aside.To, back: max(w.Aside.Back, leastBack), thin: greatestThin}
	area := areaOf(w)
	// Below thin the levels close in by e in A sqrt(thin R).
	if area > 0 {
		a.thin = min(max(thinHead, sideways*sideways/(area*area*a.back)), greatestThin)
	}
	return a
}

func (a *aside) flow(h float64) float64 {
	switch {
	case h <= 0:
		return 0
	case h < a.thin:
		return h / math.Sqrt(a.thin*a.back)
	}
	return math.Sqrt(h / a.back)
}

// stands gives the level in the box of a stopped feed, or the pipe's end where
// that is higher: what its pipe's water stands against.
func (w *way) stands(x []float64) float64 {
	if p := &w.parts[0]; p.lip == nil && x[p.at] >= p.full {
		return max(w.end, w.crest)
	}
	return w.surface(x)
}

// asides adds what each box gives to a lower one to the rates, for a pump that
// stands. A box whose pipe end has come clear passes on the rain that falls on
// it.
func (r *run) asides(x, dx []float64) {
	s := r.s
	for i := range s.feeds {
		w, st := &s.feeds[i], &r.pipes[i]
		if !st.aside || !st.full || !r.pipes[w.aside.to].full {
			continue
		}
		box, lower := &w.parts[0], &s.feeds[w.aside.to]
		q := 0.0
		switch {
		case st.clear:
			q = r.rainRate * box.plan
		case x[box.at] > box.openKeep:
			q = w.aside.flow(w.stands(x) - lower.stands(x))
		}
		dx[box.at] -= q
		r.gains[w.aside.to] += q
	}
}

// besides lets the boxes that pipe joins with lower ones run into them: at a
// stop, with a valve that holds or lets little by.
func (c *course) besides() {
	for i := range c.s.feeds {
		w, st := &c.s.feeds[i], &c.pipes[i]
		if w.aside == nil || !w.Valve || !c.p.Valve.holds() && c.p.Valve != Leaking {
			continue
		}
		box := &w.parts[0]
		st.aside = true
		st.clear = math.Abs(c.x[box.at]-box.openKeep) <= restPart*box.full && w.stands(c.x) > c.s.feeds[w.aside.to].stands(c.x)
		c.sideways = true
	}
}

// restPart of a box's water is how near to its pipe's end it counts as run down
// to there.
const restPart = 1e-6
