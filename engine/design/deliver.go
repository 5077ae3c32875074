package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// system is pump and pipe of a job, ready to be solved at any vault level.
type system struct {
	*plumbing
	pumpIndex int
	solver    *network.Solver
	state     *network.State
}

// connect builds the network and its solver.
func (m *model) connect(pumpIndex int, vault unit.Length) (*system, bool) {
	p, ok := m.build(pumpIndex, vault)
	if !ok {
		return nil, false
	}
	solver, faults := network.NewSolver(p.net)
	for _, f := range faults {
		m.fault("/runs", f.Code, f.Args...)
	}
	return &system{plumbing: p, pumpIndex: pumpIndex, solver: solver, state: solver.NewState()}, true
}

// swap puts another pump in the place of the one there.
func (s *system) swap(pumpIndex int, curve *hydro.Curve) bool {
	if s.inlets[pumpIndex].bad {
		return false
	}
	law := pumpLaw{curve: curve, suction: s.inlets[pumpIndex].law}
	s.pumpIndex, s.curve = pumpIndex, curve
	s.net.Links[s.pump].Parts[0].Law = law
	return len(s.solver.SetLaw(s.pump, 0, law)) == 0
}

// deliver solves a fresh system.
func (m *model) deliver(pumpIndex int, vault unit.Length) (*Delivery, bool) {
	s, ok := m.connect(pumpIndex, vault)
	if !ok {
		return nil, false
	}
	return m.operate(s, vault)
}

// operate solves the system at a vault level and reads the delivery off it.
func (m *model) operate(s *system, vault unit.Length) (*Delivery, bool) {
	p, solver, st, pumpIndex := s.plumbing, s.solver, s.state, s.pumpIndex
	p.net.Nodes[p.source].Level = vault
	if faults := solver.SetLevel(p.source, vault); len(faults) > 0 {
		m.fault("/vault", faults[0].Code, faults[0].Args...)
		return nil, false
	}
	if !m.steady(s) {
		return nil, false
	}
	pump := &m.job.Pumps[pumpIndex]
	d := &Delivery{Pump: pump.Name, Flow: st.Links[p.pump].Flow, Head: p.inlets[pumpIndex].law.head(st.Links[p.pump].Flow) - st.Links[p.pump].Loss}
	if d.Flow < network.MassTolerance {
		d.Flow = 0
	}
	if d.Beyond = (pumpLaw{curve: p.curve}).side(d.Flow); d.Beyond != unit.Exact {
		d.Head = atEnd(p.curve, d.Beyond)
	}
	m.remarks(s, d)
	d.Power = power(p.curve, d.Flow)
	d.Drawn = d.Flow
	m.others(s, d)
	m.yearly(d)
	for i := range p.runs {
		m.ran(i, s, d)
	}
	m.fed(p, st, d)
	// The head that a stalled pump would have to reach is that of its lowest feed.
	top, running := unit.Length(0), false
	for i, n := range p.feeds {
		if h := st.Nodes[n].Head; !d.Feeds[i].Dry && (!running || h > top) {
			top, running = h, true
		}
	}
	if running {
		d.Static, d.Rises = top-vault, true
	}
	return d, true
}

// steady solves the system. Where pumps run outside their data it is solved
// again with those held at the end of them, so that every flow is a sure bound.
func (m *model) steady(s *system) bool {
	stop := s.solver.Solve(s.state)
	var laws []heldLaw
	if stop == network.StopConverged {
		laws = s.beyond()
	}
	for _, l := range laws {
		held := l.law
		held.held = true
		s.solver.SetLaw(l.link, 0, held)
	}
	if len(laws) > 0 {
		stop = s.solver.Solve(s.state)
	}
	for _, l := range laws {
		s.solver.SetLaw(l.link, 0, l.law)
	}
	if stop != network.StopConverged {
		m.fault("/runs", CodeNoSteady, trace.Str("stop", stop.String()))
	}
	return stop == network.StopConverged
}

// heldLaw is the law of a pump that is to be held.
type heldLaw struct {
	link int
	law  pumpLaw
}

// beyond gives the pumps that run outside their data.
func (s *system) beyond() (out []heldLaw) {
	if s.state.Links[s.pump].Beyond {
		out = append(out, heldLaw{s.pump, pumpLaw{curve: s.curve, suction: s.inlets[s.pumpIndex].law}})
	}
	for _, o := range s.others {
		if s.state.Links[o.link].Beyond {
			out = append(out, heldLaw{o.link, pumpLaw{curve: o.curve, suction: o.inlet}})
		}
	}
	return out
}

// atEnd is the head at an end of a pump's data.
func atEnd(c *hydro.Curve, side unit.Bound) unit.Head {
	_, _, atLeast, atMost := c.Range()
	if side == unit.LessThan {
		return atLeast
	}
	return atMost
}

// power gives what a pump draws at a flow; 0 where its watts are not known.
func power(c *hydro.Curve, q unit.Flow) unit.Power {
	w, basis, _ := c.Power(q)
	if basis == hydro.PowerUnknown {
		return 0
	}
	return w
}

// past tells that a pump runs past the end of its curve.
func (m *model) past(path, name string, q unit.Flow, side unit.Bound) {
	found := unit.Bounded(q, unit.KindFlow, side)
	m.find(trace.Finding{
		Message: trace.Message{Code: FindBeyond, Args: []trace.Arg{trace.Str("name", name), {Name: "found", Value: found}}},
		Path:    path, Severity: trace.Danger, Found: found,
	})
}

// remarks tells what the solver has to say of the network: parts outside their
// data, valves that hold, dead ends.
func (m *model) remarks(s *system, d *Delivery) {
	if d.Beyond != unit.Exact {
		m.past(at("/pumps", s.pumpIndex), d.Pump, d.Flow, d.Beyond)
	}
	// A valve stays shut before a pump that lacks the head to open it: that is told
	// of the pump, and says nothing of the valve's arrow.
	stalled := slices.ContainsFunc(s.state.Reasons, func(r network.Reason) bool { return r.Code == network.ReasonStalled })
	for i, r := range s.state.Reasons {
		if r.Code == network.ReasonDry || r.Code == network.ReasonBeyond || r.Code == network.ReasonSeveral {
			continue // told with the feed, above, and with all the flows that are possible
		}
		if r.Code == network.ReasonHeld && stalled {
			continue
		}
		m.remark("/runs", trace.Caution, s.solver.Messages(s.state)[i])
	}
}

// ran fills what happens in one run.
func (m *model) ran(i int, s *system, d *Delivery) {
	link, pp := s.runs[i], &s.pipes[i]
	q := s.state.Links[link].Flow
	r := Run{
		Index: i, Name: m.job.Runs[i].Name, Path: at("/runs", i), Flow: q, Speed: hydro.Velocity(q, pp.bore), Reynolds: hydro.Reynolds(q, pp.bore, m.water),
		Bore: pp.bore, Length: pp.length, C: pp.c, Rough: pp.roughness, RoughBy: pp.roughSource, Losses: pp.losses, Volume: hydro.PipeVolume(pp.bore, pp.length),
	}
	rest, perRe := pp.k()
	r.K = rest
	if r.Reynolds > 0 {
		r.K += perRe / r.Reynolds
	}
	if pp.law != nil {
		r.Factor = pp.law.Friction(q)
	} else if pp.byC != nil && q != 0 {
		for _, c := range pp.byC.Cautions(q) {
			c.Args = append(c.Args, trace.Str("name", r.Name))
			m.remark(r.Path, trace.Caution, c)
		}
	}
	for k, h := range s.solver.PartLosses(s.state, link, nil) {
		if k == 0 {
			r.Friction = h
		} else {
			r.Fittings += h
		}
	}
	d.Runs = append(d.Runs, r)
}

// fed fills the feeds: flow, wanted flow, the sheets over each lip.
func (m *model) fed(p *plumbing, st *network.State, d *Delivery) {
	for i, n := range p.feeds {
		f := Feed{
			Name: m.job.Watercourses[i].Name, Path: at("/watercourses", i), Wanted: m.wanted(i, p.lips[i]),
			Flow: st.Nodes[n].Out, Dry: st.Nodes[n].Status == network.NodeDry,
		}
		for _, l := range p.lips[i] {
			path := at(f.Path+"/parts", l.index) + "/lip"
			s, err := l.law.Sheet(f.Flow)
			if err != nil {
				m.refuse(path, err)
				continue
			}
			f.Lips = append(f.Lips, Lip{Name: l.part.Name, Path: path, Width: l.law.Width, Tilt: l.law.Tilt, C: unit.Ratio(l.law.C), Sheet: s, Source: l.source})
			for _, c := range s.Cautions {
				c.Args = append(c.Args, trace.Str("name", l.part.Name))
				m.remark(path, trace.Caution, c)
			}
		}
		d.Feeds = append(d.Feeds, f)
	}
}

// roundOff is what the sum of flows may miss the end of a curve by.
const roundOff = 1e-9

// share works out the throttling that gives every feed what is wanted.
func (m *model) share(p *plumbing, d *Delivery) {
	if p.droops() {
		return // what a valve must take is found where more flow always finds less head
	}
	var want []network.Throttle
	for i, n := range p.feeds {
		f := &d.Feeds[i]
		if f.Wanted <= 0 {
			if len(p.feeds) > 1 {
				m.found(FindUnwanted, f.Path, trace.Info, unit.Of(f.Flow, unit.KindFlow), unit.Value{}, trace.Source{}, trace.Str("name", f.Name))
			}
			return // what to leave to this feed is not known
		}
		for k, link := range p.runs {
			if p.net.Links[link].To == n {
				want = append(want, network.Throttle{Outlet: n, Wanted: f.Wanted, Link: link, Area: hydro.BoreArea(p.pipes[k].bore)})
				break
			}
		}
	}
	b, faults := p.net.Balance(want)
	if slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Code == string(network.FaultNotTree) }) {
		b, faults = p.net.BalanceLoops(want)
	}
	if len(faults) > 0 {
		for _, f := range faults {
			m.remark("/runs", trace.Info, f.Message)
		}
		return // a run that feeds nothing: flows stand, the sharing is not told
	}
	if len(p.others) == 0 { // else no one pump gives the sum
		low, high, _, _ := p.curve.Range()
		if q := b.Flow * unit.Flow(b.At); q < low || q > high*(1+roundOff) {
			return // outside the pump's data: the heads there are no figures
		}
		b.Reach = min(b.Reach, unit.Ratio(high/b.Flow))
	}
	for k, br := range b.Branches {
		f := &d.Feeds[k]
		f.Burn, f.K, f.Short = br.Burn, br.K, br.Short
	}
	d.Share = &Share{Reach: b.Reach, At: b.At, Surplus: b.Surplus, Beyond: b.Beyond}
}

// yearly works out the energy of all pumps together, where the watts of each
// are known.
func (m *model) yearly(d *Delivery) {
	all := d.Power
	known := all > 0
	for _, o := range d.Others {
		all, known = all+o.Power, known && o.Power > 0
	}
	if !known || len(m.voided(aspectCost)) > 0 {
		return
	}
	hours, days := m.job.Site.HoursPerDay.Or(defaultHours), m.job.Site.DaysPerYear.Or(defaultDays)
	if m.job.Site.HoursPerDay.IsZero() {
		m.assume("/site/hoursPerDay", AssumeHours, unit.Of(hours, unit.KindHours), practice)
	}
	if m.job.Site.DaysPerYear.IsZero() {
		m.assume("/site/daysPerYear", AssumeDays, unit.Of(days, unit.KindCount), practice)
	}
	e, err := hydro.YearlyEnergy(all, hours, days)
	if err != nil {
		m.refuse("/site", err)
		return
	}
	d.Energy = e
	if m.job.Site.Tariff.IsZero() || m.job.Site.Currency == "" {
		return
	}
	tariff, err := m.job.Site.Tariff.Amount(m.job.Style())
	if err != nil {
		m.refuse("/site/tariff", err)
		return
	}
	if cost, err := hydro.Cost(e, tariff); err == nil {
		d.Cost = cost
	}
}
