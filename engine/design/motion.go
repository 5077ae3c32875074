package design

import (
	"slices"

	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// MovingCase names a course that is followed through time.
type MovingCase string

// The cases. Those after CaseRestart begin where a restart has come to.
const (
	CaseFirst   MovingCase = "first"      // first start: pond filled, all else dry
	CaseRestart MovingCase = "restart"    // every later start
	CaseStop    MovingCase = "stop"       // a stop; the check valve, where one is fitted, works
	CaseLeaks   MovingCase = "stop-leaks" // a stop, the check valve leaking
	CaseOpen    MovingCase = "stop-open"  // a stop, the check valve stuck open
	CaseCut     MovingCase = "cut"        // a power cut in mid start, of the first start
	CaseRain    MovingCase = "rain"       // the design rain once all is still after a stop
	// CaseShut is a start with the check valve stuck shut.
	CaseShut MovingCase = "start-shut"
	// CasePumpStops is one of several pumps that stops while the others run, its
	// check valve, where its leg has one, holding; in CasePumpOpen that is stuck
	// open.
	CasePumpStops MovingCase = "pump-stops"
	CasePumpOpen  MovingCase = "pump-stops-open"
)

// Moving is one case.
type Moving struct {
	Case  MovingCase
	Valve motion.Valve
	CutAt unit.Duration // after the start, of CaseCut
	// Astray tells what the network does where a part fails: of CaseShut,
	// CasePumpStops and CasePumpOpen.
	Astray *Astray
	motion.Course
}

// CameBack is what has come back since the pump stopped: through it and down
// the watercourses. Of a start, and of rain, it tells nothing.
func (c *Moving) CameBack() (unit.Volume, bool) {
	switch c.Case {
	case CaseStop, CaseLeaks, CaseOpen:
		return c.Back + c.Down, true
	case CaseFirst, CaseRestart, CaseCut, CaseRain, CaseShut, CasePumpStops, CasePumpOpen:
	}
	return 0, false
}

// Motion is the feature through start and stop.
type Motion struct {
	Cases []Moving
	Valve bool          // a check valve is fitted
	Rim   unit.Length   // with NoRim not known
	NoRim bool          //
	Line  unit.Length   // water line at rest
	Until unit.Duration // how long each case was followed at most
}

// Find gives a case.
func (m *Motion) Find(c MovingCase) *Moving {
	i := slices.IndexFunc(m.Cases, func(x Moving) bool { return x.Case == c })
	if i < 0 {
		return nil
	}
	return &m.Cases[i]
}

// What start and stop count on where the job does not say. From memory or
// common practice, as the assumptions tell.
const (
	followed                      = 30 * unit.Minute
	defaultRunUp    unit.Duration = 1
	defaultStopped  unit.Ratio    = 10 // K on the speed in the first run's bore
	defaultLeak     unit.Ratio    = 0.02
	defaultRainTime               = 15 * unit.Minute
	defaultPoolLeak               = 6 * unit.Hour
	leakCd          unit.Ratio    = 0.61 // of a sharp edge
)

var (
	memoryPump  = trace.Source{Title: "pumps' sheets and general knowledge of small motors", Basis: trace.BasisMemory}
	memoryLeak  = trace.Source{Title: "general knowledge of worn valves", Basis: trace.BasisMemory, Note: "coefficient of discharge 0.61, a sharp edge"}
	sourceMoves = trace.Source{
		Title: "balance of water through time, by J. Dormand and P. Prince, A family of embedded Runge-Kutta formulae, Journal of Computational and Applied Mathematics 6, 1980",
		Basis: trace.BasisLibrary, Note: "docs/checks.md, group motion",
	}
)

// move follows the feature through start and stop; nil where it cannot be.
func (m *model) move(sys *system, pump int) *Motion {
	in := m.out.Levels.Inputs()
	feeds, ok := m.ways(sys, in)
	if !ok {
		return nil
	}
	supply, err := motion.NewPipes(sys.net, []int{sys.source}, sys.feeds)
	if err != nil {
		m.refuse("/runs", err)
		return nil
	}
	inputs := motion.Inputs{
		Pond: in.Pond, Line: in.Line, Rim: in.Rim, NoRim: in.NoRim, Vault: in.Vault, Low: in.Lowest(), Flow: in.Flow, Feeds: feeds, Supply: supply,
	}
	inputs.Ways, inputs.Places = m.joinedWays(sys)
	s, err := motion.New(inputs)
	if err != nil {
		m.refuse("/pond", err)
		return nil
	}
	v := &mover{
		m: m, s: s, sys: sys, pump: pump,
		out: &Motion{Valve: in.Valve, Rim: in.Rim, NoRim: in.NoRim, Line: in.Line, Until: followed},
	}
	v.base()
	if err := v.cases(in); err != nil {
		m.refuse("/pond", err)
		return nil
	}
	return v.out
}

// mover runs the cases.
type mover struct {
	m    *model
	s    *motion.System
	sys  *system
	pump int
	out  *Motion
	set  motion.Program // what all of them share
	rain motion.Rain
}

// base sets what all cases share.
func (v *mover) base() {
	m, site, pond := v.m, &v.m.job.Site, &v.m.job.Pond
	p := &m.job.Pumps[v.pump]
	v.set.RunUp = p.RunUp.Or(defaultRunUp)
	if p.RunUp.IsZero() {
		m.assume(at("/pumps", v.pump)+"/runUp", AssumeRunUp, unit.Of(defaultRunUp, unit.KindDuration), memoryPump)
	}
	v.set.Valve, v.set.Until = motion.Works, followed
	if !v.out.Valve {
		v.set.Valve = motion.Absent
	} else {
		v.set.Leak = motion.Leak{Part: site.ValveLeak.Or(defaultLeak), Cd: leakCd}
		if site.ValveLeak.IsZero() {
			m.assume("/site/valveLeak", AssumeLeak, unit.Of(defaultLeak, unit.KindPercent), memoryLeak)
		}
	}
	if z, known := m.survey.Level(pond.FillLevel); known && !pond.FillLevel.IsZero() {
		v.set.TopUp = motion.TopUp{Level: z, Flow: pond.FillFlow.SI}
	}
	if depth := site.DesignRain.SI; depth > 0 && !v.out.NoRim {
		v.rain = motion.Rain{Depth: depth, Over: site.RainTime.Or(defaultRainTime)}
		if site.RainTime.IsZero() {
			m.assume("/site/rainTime", AssumeRainTime, unit.Of(defaultRainTime, unit.KindDuration), practice)
		}
	}
}

// run follows a program and takes it on as a case.
func (v *mover) run(c MovingCase, p motion.Program) (*Moving, error) {
	course, err := v.s.Run(p)
	if err != nil {
		return nil, err
	}
	v.out.Cases = append(v.out.Cases, Moving{Case: c, Valve: p.Valve, CutAt: p.CutAt, Course: course})
	return &v.out.Cases[len(v.out.Cases)-1], nil
}

// cases runs them all.
func (v *mover) cases(in *level.Inputs) error {
	run := v.run
	v.out.Cases = make([]Moving, 0, 8)
	p := v.set
	p.From, p.Pump = v.s.AtRest(motion.Dry), true
	first, err := run(CaseFirst, p)
	if err != nil {
		return err
	}
	cut := p
	cut.CutAt = half(&first.Course)
	p.From = v.everyday(in)
	restart, err := run(CaseRestart, p)
	if err != nil {
		return err
	}
	p = v.set
	p.From = restart.End
	stop, err := run(CaseStop, p)
	if err != nil {
		return err
	}
	rest := stop.End
	if v.out.Valve {
		for _, c := range [...]MovingCase{CaseLeaks, CaseOpen} {
			p.Valve = motion.StuckOpen
			if c == CaseLeaks {
				p.Valve = motion.Leaking
			}
			if !v.s.Valved() {
				v.out.Cases = append(v.out.Cases, Moving{Case: c, Valve: p.Valve, Course: v.out.Find(CaseStop).Course})
			} else if _, err := run(c, p); err != nil {
				return err
			}
		}
	}
	if _, err := run(CaseCut, cut); err != nil {
		return err
	}
	v.astray(in, restart.End, run)
	if v.rain.Depth > 0 {
		p = v.set
		p.From, p.Rain, p.Until = rest, v.rain, followed+v.rain.Over
		_, err = run(CaseRain, p)
	}
	return err
}

// astray runs the cases in which a valve or a pump fails: a start against a
// valve stuck shut, and one of several pumps that stops. One that comes to where
// its pipe has no steady flow is left out.
func (v *mover) astray(in *level.Inputs, running motion.Moment, run func(MovingCase, motion.Program) (*Moving, error)) {
	follow := func(c MovingCase, p motion.Program, a *Astray, supply motion.Supply) {
		if a == nil {
			return
		}
		if p.Pump, p.Supply = true, supply; supply == nil {
			p.Valve = motion.StuckShut // nothing runs
		}
		if x, err := run(c, p); err == nil {
			x.Astray = a
		}
	}
	p := v.set
	p.From = v.everyday(in)
	a, supply := v.m.stuckShut(v.sys, v.m.out.Vault)
	follow(CaseShut, p, a, supply)
	p.From, p.RunUp = running, 0
	for _, s := range v.m.stoppables(v.sys) {
		for _, c := range [...]MovingCase{CasePumpStops, CasePumpOpen} {
			a, supply := v.m.oneStops(v.sys, s, v.m.out.Vault, c == CasePumpOpen)
			follow(c, p, a, supply)
		}
	}
}

// everyday is the moment before an everyday start.
func (v *mover) everyday(in *level.Inputs) motion.Moment {
	if in.TopsUp {
		stop := level.MomentOpen
		if in.Valve {
			stop = level.MomentHeld
		}
		if st, ok := v.m.out.Levels.Find(level.CourseTopped, stop); ok {
			return v.s.Filled(st.Pond, st.Vault)
		}
	}
	return v.s.AtRest(motion.Held) // where no valve is fitted, what is held is what stays with the pipe open
}

// half is the time by which a start has put half of its water on its way.
func half(c *motion.Course) unit.Duration {
	last := c.Series[0]
	for _, s := range c.Series {
		if s.Stored >= c.Stored/2 {
			if s.Stored <= last.Stored {
				return s.At
			}
			return last.At + (s.At-last.At)*unit.Duration((c.Stored/2-last.Stored)/(s.Stored-last.Stored))
		}
		last = s
	}
	return c.Took
}
