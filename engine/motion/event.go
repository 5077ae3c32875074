package motion

import "math"

// The events that are looked for: those of the whole, then those of each feed,
// then one for each part that has no lip of its own.
const (
	evDry = iota
	evRecovers
	evRim
	evRimEnds
	evSill
	evSplit
	evJoin
	evStill
	evFeeds
)

const (
	evPipeFull = iota
	evSiphon
	evPipeEmpty
	evClear
	evLip
	evEach // events of a feed
)

func (r *run) eventCount() int { return evFeeds + evEach*len(r.s.feeds) + r.s.size }

// signs writes, after rates, a value for each event that is above nought before
// it happens and at or below nought from then on; 1 for what cannot happen now.
func (r *run) signs(x, dx, g []float64) {
	s := r.s
	for i := range g {
		g[i] = 1
	}
	if r.pumping && r.raw > 0 {
		if r.gasp {
			g[evRecovers] = r.raw - r.comes
		} else {
			g[evDry] = r.zVault - s.low
		}
	}
	switch {
	case r.spill:
		g[evRimEnds] = r.basin
	case !math.IsInf(s.rim, 1):
		g[evRim] = s.rim - r.zPond
	}
	if s.sill != nil {
		if !r.sillTold {
			g[evSill] = r.zPond - s.sill.crest
		}
		area := s.vault.area(r.zVault)
		if r.joined {
			g[evSplit] = min(r.slope*splitAt-area, 1)
		} else if r.mayJoin() {
			if g[evJoin] = area - r.slope*joinAt; g[evJoin] <= 0 {
				g[evJoin] = r.offJoined()
			}
		}
	}
	if r.mayRest {
		g[evStill] = r.moving(dx) - r.still
	}
	for i := range s.feeds {
		r.feedSigns(i, x, g[evFeeds+evEach*i:])
	}
	parts := g[evFeeds+evEach*len(s.feeds):]
	for i := range s.feeds {
		for k := range s.feeds[i].parts {
			if p := &s.feeds[i].parts[k]; p.lip == nil && p.reach == 0 && !r.full[p.at] {
				parts[p.at] = p.full - x[p.at]
			}
		}
	}
}

func (r *run) feedSigns(i int, x, g []float64) {
	w, st := &r.s.feeds[i], &r.pipes[i]
	box := &w.parts[0]
	if r.pumping && !st.full {
		g[evPipeFull] = w.cap - x[w.pipe]
	}
	if st.siphon {
		g[evSiphon] = x[box.at] - box.openKeep
	}
	if st.aside && !st.clear && !st.siphon && st.full {
		g[evClear] = x[box.at] - box.openKeep
	}
	if st.drains {
		g[evPipeEmpty] = x[w.pipe] - w.open - pipeRest*w.cap
	}
	if !r.lipTold[i] && box.lip != nil {
		g[evLip] = box.full - x[box.at]
	}
}

// moving is the fastest change of any volume; a small vault shows a change more
// than a pond does, so that its own counts by its own measure.
func (r *run) moving(dx []float64) float64 {
	most := 0.0
	for i, v := range dx {
		switch i {
		case stAdded, stBack, stReturn, stPumped:
			continue
		case stVault:
			v *= r.vaultWeight
		}
		most = max(most, math.Abs(v))
	}
	return most
}

// happen puts the rule of an event in force.
func (r *run) happen(e int, t float64, x []float64) {
	s := r.s
	switch e {
	case evDry:
		r.gasps(true, t)
	case evRecovers:
		r.gasps(false, t)
	case evRim:
		r.tell(EventRim, t, -1)
		r.spill = true
	case evRimEnds:
		r.tell(EventRimEnds, t, -1)
		r.spill = false
	case evSill:
		r.sillTold = true
		r.tell(EventSill, t, -1)
	case evSplit:
		r.part(x)
	case evJoin:
		r.join(x)
	case evStill:
		r.rested = true
		r.tell(EventStill, t, -1)
	default:
		if e -= evFeeds; e >= evEach*len(s.feeds) {
			r.full[e-evEach*len(s.feeds)] = true
			return
		}
		r.feedEvent(e/evEach, e%evEach, t, x)
	}
}

func (r *run) feedEvent(i, e int, t float64, x []float64) {
	w, st := &r.s.feeds[i], &r.pipes[i]
	switch e {
	case evPipeFull:
		st.full = true
		r.tell(EventPipeFull, t, i)
	case evSiphon:
		st.siphon = false
		r.drain(i)
		r.tell(EventSiphonEnds, t, i)
	case evPipeEmpty:
		st.drains = false
		// What is left runs out within the instant.
		rest := x[w.pipe] - w.open
		x[w.pipe] = w.open
		x[stBack] += rest
		if r.joined {
			x[stPond] += rest
		} else {
			x[stVault] += rest
		}
		r.tell(EventPipeEmpty, t, i)
	case evClear:
		st.clear = true
		r.tell(EventSiphonEnds, t, i)
	case evLip:
		r.lipTold[i] = true
		r.tell(EventLip, t, i)
	}
}

// drain lets air into a pipe, which runs empty as far as it can.
func (r *run) drain(i int) {
	w, st := &r.s.feeds[i], &r.pipes[i]
	if w.open < w.cap {
		st.full, st.drains = false, true
	}
}

func (r *run) gasps(yes bool, t float64) {
	if r.gasp == yes {
		return
	}
	r.gasp = yes
	if yes {
		r.tell(EventDry, t, -1)
		r.gaspFrom = t
	} else {
		r.tell(EventRecovers, t, -1)
		r.gasped += t - r.gaspFrom
	}
}

// join lets pond and vault share their water, part parts it again.
func (r *run) join(x []float64) {
	if !r.joined {
		r.joined = true
		x[stPond] += x[stVault]
		x[stVault] = 0
		r.s.warm.weir = r.weir
	}
}

func (r *run) part(x []float64) {
	if r.joined {
		r.joined = false
		x[stVault] = r.s.vault.volume(r.zVault)
		x[stPond] -= x[stVault]
		r.s.vault.z = r.zVault
	}
}

func (r *run) tell(c EventCode, t float64, feed int) {
	r.events = append(r.events, Event{c, seconds(t), feed})
}

// right puts in force what holds already when a stretch begins: a pump that
// stands dry, a pond at its rim, a pipe that is full.
func (r *run) right(t float64, x, dx []float64) {
	for range 10 {
		r.rates(t, x, dx)
		if !r.rule(t, x) {
			return
		}
	}
}

func (r *run) rule(t float64, x []float64) (changed bool) {
	s := r.s
	switch {
	case r.gasp && (!r.pumping || r.comes > r.raw*(1+restSlack)):
		r.gasps(false, t)
		changed = true
	case r.pumping && !r.gasp && r.raw > 0 && r.zVault <= s.low+restSlack && r.comes < r.raw:
		r.gasps(true, t)
		changed = true
	case !r.spill && r.zPond >= s.rim-restSlack && r.basin > 0:
		r.happen(evRim, t, x)
		changed = true
	case r.spill && r.basin < 0:
		r.happen(evRimEnds, t, x)
		changed = true
	}
	if s.sill != nil {
		changed = r.shareRule(x) || changed
	}
	for i := range s.feeds {
		w, st := &s.feeds[i], &r.pipes[i]
		if r.pumping && !st.full && x[w.pipe] >= w.cap-restSlack*w.cap {
			r.feedEvent(i, evPipeFull, t, x)
			changed = true
		}
		for k := range w.parts {
			if p := &w.parts[k]; p.lip == nil && p.reach == 0 && !r.full[p.at] && x[p.at] >= p.full*(1-restSlack) {
				r.full[p.at], changed = true, true
			}
		}
	}
	return changed
}

// shareRule joins pond and vault where the drowned weir between them is fast
// against what it would pass in the end, and parts them where it no longer is.
func (r *run) shareRule(x []float64) bool {
	s := r.s
	area := s.vault.area(r.zVault)
	if r.joined {
		if r.slope*splitAt < area {
			r.part(x)
			return true
		}
		return false
	}
	if !r.mayJoin() || r.slope*joinAt <= area || r.offJoined() > 0 {
		return false
	}
	r.join(x)
	return true
}

// mayJoin tells that the weir is drowned, and that the flow through it does not
// change at once.
func (r *run) mayJoin() bool {
	crest := r.s.sill.crest
	return r.zSill > crest && r.zPond > crest && !(r.pumping && r.now < r.rampEnd-eventClose)
}

// offJoined tells by how much, in metres of the pond, joining pond and vault
// would move the pond, beyond what may pass; 1 where they cannot be joined. The
// vault comes to where the weir passes just the flow within seconds; joined
// sooner it would do so at once, and lift or lower the pond.
func (r *run) offJoined() float64 {
	s := r.s
	hv, slope := s.sill.behind(r.zPond-s.sill.crest, r.drawn-r.back)
	if hv <= 0 || slope*joinAt <= s.vault.area(r.zVault) {
		return 1
	}
	off := s.vault.volume(s.sill.crest+hv-r.screen()) - s.vault.volume(r.zVault)
	return math.Abs(off)/s.pond.area(r.zPond) - joinOff
}

// joinOff is how far joining pond and vault may move the pond, in metres.
const joinOff = 5e-5
