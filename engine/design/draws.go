package design

import (
	"cmp"
	"math"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/network"
	"plashet/engine/unit"
)

// apply puts one draw of the inputs into the laws; false where they refuse it.
func (s *shaker) apply(e []float64) bool {
	w, err := hydro.WaterAt(unit.Temperature(min(max(s.temperature.at(e), coldest), warmest)))
	if err != nil {
		return false
	}
	for i := range s.pumps {
		s.pumps[i].apply(e)
	}
	for i := range s.runs {
		if !s.runs[i].apply(e, w) {
			return false
		}
	}
	for i := range s.feeds {
		f := &s.feeds[i]
		for k := range f.lips {
			l := &f.lips[k]
			law := hydro.LipLaw{Width: unit.Length(l.width.size(e)), C: l.c.size(e), Tilt: unit.Length(max(0, l.tilt.at(e)))}
			if l.law.Renew(law) != nil {
				return false
			}
		}
		if h := s.heights[f.crest].at(e); !math.IsNaN(h) {
			if len(s.sys.solver.SetLevel(f.node, s.line+unit.Length(h))) > 0 {
				return false
			}
		}
	}
	s.sys.solver.Changed()
	return true
}

// Water in the open: between ice and bath.
const (
	coldest = 0
	warmest = 40
)

func (p *shakenPump) apply(e []float64) {
	for i := range p.by {
		p.heads[i] = unit.Head(p.by[i].at(e))
	}
	heads := p.heads
	if len(heads) == 0 {
		heads = nil
	}
	p.drawnPower = max(0, p.power.at(e))
	p.redraw.Draw(unit.Ratio(p.flow.size(e)), unit.Ratio(p.head.size(e)), heads, p.bend.at(e))
}

func (r *shakenRun) apply(e []float64, w hydro.Water) bool {
	bore, length := unit.Length(r.bore.size(e)), unit.Length(r.length.size(e))
	r.drawnBore, r.drawnLength = float64(bore), float64(length)
	var err error
	switch {
	case r.pipe != nil:
		rough := unit.Length(min(max(0, r.rough.at(e)), hydro.MaxRelativeRoughness*r.drawnBore))
		err = r.pipe.Renew(hydro.PipeLaw{Bore: bore, Length: length, Roughness: rough}, w)
	case r.byC != nil:
		err = r.byC.Renew(hydro.HazenWilliamsLaw{Bore: bore, Length: length, C: unit.Ratio(r.c.size(e)), Form: r.byC.Form}, w)
	}
	if err != nil {
		return false
	}
	if r.minor == nil {
		return true
	}
	var rest, perRe float64
	for i := range r.losses {
		f := max(0, r.losses[i].at(e))
		rest, perRe = rest+f*r.rest[i], perRe+f*r.perRe[i]
	}
	return r.minor.Renew(hydro.MinorLaw{Bore: bore, K: unit.Ratio(rest), K1: unit.Ratio(perRe)}, w) == nil
}

// bandSettle is how near the vault's level must come to itself in a draw; a
// tenth of a millimetre of head moves no figure that is printed.
const (
	bandSettle unit.Length = 1e-4
	bandRounds int         = 12
)

// solve works out one draw: flow and levels together, as model.settle does. The
// vault's level that follows moves with the one assumed by nearly the same slope
// in every draw, so the slope of the draws before serves for a first step.
func (s *shaker) solve(e []float64) bool {
	s.row = e
	if !s.apply(e) {
		return false
	}
	s.surface = s.start
	s.raised = s.heights[heightLine].at(e) - s.heights[heightLine].base
	if s.levels != nil {
		s.place(e)
	}
	last, gapLast, have := s.surface, unit.Length(0), false
	for range bandRounds {
		if !s.steady() {
			return false
		}
		if s.levels == nil {
			return true
		}
		s.fill(e)
		next, err := s.again.Running(s.draw)
		if err != nil {
			return false
		}
		gap := next - s.surface
		if math.Abs(float64(gap)) < float64(bandSettle) {
			break
		}
		if d := s.surface - last; have && math.Abs(float64(d)) > float64(bandSettle)/10 {
			s.slope = min(max(1+float64((gap-gapLast)/d), steepestSlope), 0)
		}
		last, gapLast, have = s.surface, gap, true
		s.surface += gap / unit.Length(1-s.slope)
	} // where the vault leaps about, the last round stands
	if s.levels.Flow > 0 {
		s.draw.FlowAt, s.draw.FlowSlope = s.surface, s.levels.FlowSlope*float64(s.drawn/s.levels.Flow)
	}
	var err error
	s.out, err = s.again.Solve(s.draw)
	return err == nil
}

// steepestSlope bounds what a draw may take for the slope.
const steepestSlope = -20

// steady solves the network at the vault's level.
func (s *shaker) steady() bool {
	if len(s.sys.solver.SetLevel(s.sys.source, s.surface)) > 0 || s.sys.solver.Solve(s.sys.state) != network.StopConverged {
		return false
	}
	if !s.hold() {
		return false
	}
	s.drawn = 0
	for i := range s.pumps {
		if q := s.sys.state.Links[s.pumps[i].link].Flow; s.pumps[i].vault && q > network.MassTolerance {
			s.drawn += q
		}
	}
	for i := range s.feeds {
		f := &s.feeds[i]
		f.flow = s.sys.state.Nodes[f.node].Out
		for k := range f.lips {
			f.lips[k].head, _ = f.lips[k].law.Head(max(0, f.flow))
		}
	}
	return true
}

// hold holds a pump that runs outside its data in this draw at their end, as
// model.steady does, and notes it: the flows are then ends that the true ones
// lie beyond.
func (s *shaker) hold() bool {
	s.past = unit.Exact
	for i := range s.pumps {
		p := &s.pumps[i]
		if side := p.law.side(s.sys.state.Links[p.link].Flow); side != unit.Exact {
			s.past = cmp.Or(s.past, side)
			held := p.law
			held.held = true
			s.sys.solver.SetLaw(p.link, 0, held)
		}
	}
	if s.past == unit.Exact {
		return true
	}
	stop := s.sys.solver.Solve(s.sys.state)
	for i := range s.pumps {
		s.sys.solver.SetLaw(s.pumps[i].link, 0, s.pumps[i].law)
	}
	return stop == network.StopConverged
}

// place sets what of the levels does not follow from the flow.
func (s *shaker) place(e []float64) {
	in := &s.draw
	up := func(k int) unit.Length { return s.line + unit.Length(s.heights[k].at(e)) }
	if s.falls != nil {
		for i := range s.joined.Vessels {
			s.joined.Vessels[i].Crest = up(heightCrests + i)
		}
		s.joined.Settle(s.falls)
	}
	s.pond = s.levels.Pond.Changed(unit.Ratio(s.pondBy.size(e)), 0)
	in.Pond = &s.pond
	if !in.NoRim {
		in.Rim = up(heightRim)
	}
	if in.TopsUp {
		in.RunningLine = up(heightRunning)
	}
	if v := s.levels.Vault; v != nil {
		floor := up(heightFloor)
		s.body = v.Body.Changed(unit.Ratio(s.bodyBy.size(e)), floor-s.levels.Stand.Floor)
		s.vault = level.Vault{Body: &s.body, ScreenLoss: v.ScreenLoss}
		in.Vault, in.Stand.Floor = &s.vault, floor
		if v.Sill != nil {
			s.sill = level.Sill{Crest: up(heightSill), Width: unit.Length(s.sillBy[0].size(e)), C: s.sillBy[1].size(e)}
			s.vault.Sill = &s.sill
		}
	}
}

// fill sets the flow and what the stores hold at it.
func (s *shaker) fill(e []float64) {
	s.draw.Flow = s.drawn
	for i := range s.stores {
		x, from, to := &s.stores[i], &s.levels.Stores[i], &s.draw.Stores[i]
		by := x.size.size(e)
		running := by
		switch {
		case x.run >= 0:
			r := &s.runs[x.run]
			by = r.drawnBore * r.drawnBore * r.drawnLength / (r.bore.base * r.bore.base * r.length.base)
			running = by
		case x.lip >= 0 && x.head > 0:
			running *= float64(s.feeds[x.feed].lips[x.lip].head / x.head)
		case x.channel != nil:
			running *= s.depth(x, e) / float64(x.depth)
		}
		to.Running = from.Running * unit.Volume(running)
		to.Held = min(from.Held*unit.Volume(by), to.Running)
		if x.box && s.falls != nil {
			v := &s.joined.Vessels[x.feed]
			size := level.BoxSize{Depth: v.Depth, Inlet: v.Inlet, Fall: s.falls[x.feed].Fall}
			held, _ := size.Keeps()
			to.Held, to.Joined = to.Running*unit.Volume(held), held < 1
		}
		to.HeldOpen = min(from.HeldOpen*unit.Volume(by), to.Held)
	}
}

// depth is the normal depth of a reach.
func (s *shaker) depth(x *shakenStore, e []float64) float64 {
	c := hydro.Channel{Width: x.channel.Width, Slope: unit.Ratio(x.slope.size(e)), N: unit.Ratio(x.n.size(e))}
	flow, err := c.Normal(max(0, s.feeds[x.feed].flow))
	if err != nil {
		return float64(x.depth)
	}
	return float64(flow.Depth)
}
