package design

import (
	"math"

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

// deliver solves a fresh system and works out how valves would share its water.
func (m *model) deliver(pumpIndex int, vault unit.Length) (*Delivery, bool) {
	s, ok := m.connect(pumpIndex, vault)
	if !ok {
		return nil, false
	}
	d, ok := m.operate(s, vault)
	if !ok {
		return nil, false
	}
	m.share(s.plumbing, d)
	return d, true
}

// operate solves the system at a vault level and reads the delivery off it.
func (m *model) operate(s *system, vault unit.Length) (*Delivery, bool) {
	p, solver, st, pumpIndex := s.plumbing, s.solver, s.state, s.pumpIndex
	p.net.Nodes[p.source].Level = vault
	if faults := solver.SetLevel(p.source, vault); len(faults) > 0 {
		m.fault("/vault", faults[0].Code, faults[0].Args...)
		return nil, false
	}
	if stop := solver.Solve(st); stop != network.StopConverged {
		m.fault("/runs", CodeNoSteady, trace.Str("stop", stop.String()))
		return nil, false
	}
	pump := &m.job.Pumps[pumpIndex]
	d := &Delivery{Pump: pump.Name, Flow: st.Links[p.pump].Flow, Head: -st.Links[p.pump].Loss}
	if d.Flow < network.MassTolerance {
		d.Flow = 0
	}
	if st.Links[p.pump].Beyond {
		m.find(trace.Finding{
			Message: trace.Message{Code: FindBeyond, Args: []trace.Arg{trace.Str("name", pump.Name), trace.Num("found", d.Flow, unit.KindFlow)}},
			Path:    at("/pumps", pumpIndex), Severity: trace.Danger, Found: unit.Of(d.Flow, unit.KindFlow),
		})
	}
	if w, basis, _ := p.curve.Power(d.Flow); basis != hydro.PowerUnknown {
		d.Power = w
		m.yearly(d)
	}
	for i, link := range p.runs {
		if link >= 0 {
			m.ran(i, link, p, solver, st, d)
		}
	}
	m.fed(p, st, d)
	top := unit.Length(math.Inf(-1))
	for i, n := range p.feeds {
		if n >= 0 && !d.Feeds[i].Dry {
			top = max(top, st.Nodes[n].Head)
		}
	}
	if !math.IsInf(float64(top), -1) {
		d.Static = top - vault
	}
	return d, true
}

// ran fills what happens in one run.
func (m *model) ran(i, link int, p *plumbing, solver *network.Solver, st *network.State, d *Delivery) {
	q, pp := st.Links[link].Flow, p.pipes[i]
	r := Run{
		Name: m.job.Runs[i].Name, Path: at("/runs", i), Flow: q, Speed: hydro.Velocity(q, pp.bore), Reynolds: hydro.Reynolds(q, pp.bore, m.water),
		Bore: pp.bore, Length: pp.length, C: pp.c, K: pp.k,
	}
	if r.Reynolds > 0 {
		r.K += pp.k1 / r.Reynolds
	}
	if pp.pipe != nil {
		r.Factor = pp.pipe.Friction(q)
	}
	for k, h := range solver.PartLosses(st, link, nil) {
		if k == 0 {
			r.Friction = h
		} else {
			r.Fittings += h
		}
	}
	r.Volume = unit.Volume(math.Pi / 4 * float64(pp.bore*pp.bore*pp.length))
	d.Runs = append(d.Runs, r)
}

// fed fills the feeds: flow, wanted flow, the sheets over each lip.
func (m *model) fed(p *plumbing, st *network.State, d *Delivery) {
	for i := range m.job.Watercourses {
		f := Feed{Name: m.job.Watercourses[i].Name, Path: at("/watercourses", i), Wanted: m.wanted(i, p.lips[i])}
		if n := p.feeds[i]; n >= 0 {
			f.Flow = st.Nodes[n].Out
			f.Dry = st.Nodes[n].Status == network.NodeDry
			for _, l := range p.lips[i] {
				path := at(f.Path+"/parts", l.index) + "/lip"
				s, err := l.law.Sheet(f.Flow)
				if err != nil {
					m.refuse(path, err)
					continue
				}
				f.Lips = append(f.Lips, Lip{Name: l.part.Name, Path: path, Width: l.law.Width, C: unit.Ratio(l.law.C), Sheet: s, Source: l.source})
				for _, c := range s.Cautions {
					c.Args = append(c.Args, trace.Str("name", l.part.Name))
					m.remark(path, trace.Caution, c)
				}
			}
		} else {
			f.Dry = true
		}
		d.Feeds = append(d.Feeds, f)
	}
}

// share works out the throttling that gives every feed what is wanted.
func (m *model) share(p *plumbing, d *Delivery) {
	var want []network.Throttle
	var of []int
	total := unit.Flow(0)
	for i, n := range p.feeds {
		if n < 0 {
			return // a feed without a level: its own fault tells it
		}
		total += d.Feeds[i].Wanted
		for k, link := range p.runs {
			if link >= 0 && p.net.Links[link].To == n {
				bore := float64(p.pipes[k].bore)
				want = append(want, network.Throttle{Outlet: n, Wanted: d.Feeds[i].Wanted, Link: link, Area: unit.Area(math.Pi / 4 * bore * bore)})
				of = append(of, i)
				break
			}
		}
	}
	if total <= 0 {
		return // nothing is wanted: there is no sharing to work out
	}
	b, faults := p.net.Balance(want)
	if len(faults) > 0 {
		for _, f := range faults {
			m.remark("/runs", trace.Info, f.Message)
		}
		return
	}
	for k, br := range b.Branches {
		f := &d.Feeds[of[k]]
		f.Burn, f.K, f.Short = br.Burn, br.K, br.Short
	}
	d.Share = &Share{Reach: b.Reach, Surplus: b.Surplus, Beyond: b.Beyond}
}

func (m *model) yearly(d *Delivery) {
	hours, days := m.job.Site.HoursPerDay.Or(defaultHours), m.job.Site.DaysPerYear.Or(defaultDays)
	if m.job.Site.HoursPerDay.IsZero() {
		m.assume("/site/hoursPerDay", AssumeHours, unit.Of(hours, unit.KindHours), practice)
	}
	if m.job.Site.DaysPerYear.IsZero() {
		m.assume("/site/daysPerYear", AssumeDays, unit.Of(days, unit.KindCount), practice)
	}
	e, err := hydro.YearlyEnergy(d.Power, hours, days)
	if err != nil {
		m.refuse("/site", err)
		return
	}
	d.Energy = e
	if m.job.Site.Tariff.IsZero() {
		return
	}
	tariff, err := m.job.Site.Tariff.Amount(m.job.Site.Currency)
	if err != nil {
		m.refuse("/site/tariff", err)
		return
	}
	if cost, err := hydro.Cost(e, tariff); err == nil {
		d.Cost = cost
	}
}
