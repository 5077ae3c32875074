package motion

import (
	"math"

	"plashet/engine/level"
)

// sideways is how long, in seconds, the last of two boxes' levelling out may
// take: a faster end is slowed to it, by less water than five seconds of flow.
const sideways = 5.0

// greatestThin bounds the head from which that is done, in metres.
const greatestThin = 0.02

// lowest gives for each feed the one that its box's water runs to in the end
// through the pipe beyond the valves, from full up to its lip; -1: it stays.
func (in *Inputs) lowest() []int {
	j := level.Joined{Places: in.Places}
	for i := range in.Feeds {
		f := &in.Feeds[i]
		j.Vessels = append(j.Vessels, level.Vessel{Crest: f.Crest, Depth: f.Depth, Inlet: f.Inlet})
	}
	for _, w := range in.Ways {
		j.Ways = append(j.Ways, w.Way)
	}
	below := make([]level.Below, len(in.Feeds))
	j.Settle(below)
	to := make([]int, len(below))
	for i := range below {
		to[i] = below[i].To
	}
	return to
}

// stands gives the level in the box of a stopped feed, or the pipe's end where
// that is higher: what its pipe's water stands against.
func (w *way) stands(x []float64) float64 {
	if p := &w.parts[0]; p.lip == nil && x[p.at] >= p.full {
		return max(w.end, w.crest)
	}
	return w.surface(x)
}

// asides adds what the boxes give to one another to the rates, for a pump that
// stands. A box whose pipe end has come clear passes on the rain that falls on
// it.
func (r *run) asides(x, dx []float64) {
	s, b := r.s, r.s.beyond
	high, low := math.Inf(-1), math.Inf(1)
	for i := range s.feeds {
		w, st := &s.feeds[i], &r.pipes[i]
		b.head[i] = w.stands(x)
		r.gives[i] = st.aside && st.full && !st.clear && x[w.parts[0].at] > w.parts[0].openKeep
		r.takes[i] = st.full
		if r.gives[i] {
			high = max(high, b.head[i])
		}
		if r.takes[i] {
			low = min(low, b.head[i])
		}
		if to := b.to[i]; st.aside && st.full && st.clear && to >= 0 && r.pipes[to].full {
			q := r.rainRate * w.parts[0].plan
			dx[w.parts[0].at] -= q
			r.gains[to] += q
		}
	}
	if high <= low {
		return
	}
	for i, q := range b.solve(r.gives, r.takes) {
		if q >= 0 {
			r.gains[i] += q
		} else {
			dx[s.feeds[i].parts[0].at] += q
		}
	}
}

// besides lets the boxes that pipe joins run into one another: at a stop, with a
// valve that holds or lets little by.
func (c *course) besides() {
	b := c.s.beyond
	if b == nil || !c.p.Valve.holds() && c.p.Valve != Leaking {
		return
	}
	for i := range c.s.feeds {
		w, st := &c.s.feeds[i], &c.pipes[i]
		if !w.Valve || !b.meets(i) {
			continue
		}
		box, to := &w.parts[0], b.to[i]
		st.aside = true
		if to >= 0 {
			st.clear = math.Abs(c.x[box.at]-box.openKeep) <= restPart*box.full && w.stands(c.x) > c.s.feeds[to].stands(c.x)
		} else {
			st.clear = w.depth > 0 && w.end >= w.crest // it pours in from above
		}
		c.sideways = true
	}
}

// meets tells that a way leads to a box.
func (b *beyond) meets(i int) bool {
	for k := range b.ways {
		if b.ways[k].from == i || b.ways[k].to == i {
			return true
		}
	}
	return false
}

// settles bounds how fast a box and what it is joined with level out, in 1/s.
func (b *beyond) settles(s *System, i int) (rate float64) {
	area := areaOf(&s.feeds[i])
	if area <= 0 {
		return 0
	}
	least := area
	for k := range s.feeds {
		if a := areaOf(&s.feeds[k]); a > 0 {
			least = min(least, a)
		}
	}
	for k := range b.ways {
		l := &b.ways[k]
		if l.from == i || l.to == i {
			_, slope := l.flow(b.head[l.from]-b.head[l.to], true, true)
			rate += slope * (1/area + 1/least)
		}
	}
	return rate
}

// restPart of a box's water is how near to its pipe's end it counts as run down
// to there.
const restPart = 1e-6
