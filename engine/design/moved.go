package design

import (
	"math"
	"slices"

	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// judgeMotion tells what only shows through time, and adds the time to what the
// levels tell already. Each case is judged once: where levels and motion tell of
// the same, one finding stands, and where a start was followed to its end, what
// it came to is what counts.
func (m *model) judgeMotion() {
	v := m.out.Motion
	told := m.timed(v)
	m.judgeStarts(v, told)
	m.judgeRims(v, told)
	if x := v.Find(CaseLeaks); x != nil && !x.Still {
		m.find(trace.Finding{
			Path: "/runs", Severity: trace.Info,
			Message: trace.Message{Code: FindLeakSlow, Args: []trace.Arg{trace.Num("after", x.Took, unit.KindDuration), trace.Num("back", x.Back, unit.KindWater)}},
		})
	}
	m.judgeAstray(v)
}

// starting is what is told of a start.
type starting struct {
	of     MovingCase
	dry    string
	stalls string
	sev    trace.Severity
	levels []string // findings of the levels that tell that its water does not suffice
	bare   string   // that it just does
}

var startings = [...]starting{
	{CaseFirst, FindFirstDry, FindFirstStalls, trace.Caution, []string{level.FindingStartStarves, level.FindingStartEmpty}, level.FindingStartBare},
	{CaseRestart, FindRestartDry, FindRestartStalls, trace.Danger, []string{level.FindingRestartStarves, level.FindingRestartEmpty}, level.FindingRestartBare},
}

// judgeStarts tells of pumps that draw air, and of starts that are not at an end
// when nobody waits for it any more.
func (m *model) judgeStarts(v *Motion, told map[string]bool) {
	slow := false
	for _, c := range startings {
		x := v.Find(c.of)
		stop, stalls := stalled(&x.Course)
		starves := slices.ContainsFunc(c.levels, func(code string) bool { return told[code] }) || told[level.FindingSillDry]
		switch {
		case x.Dry && !starves:
			m.find(trace.Finding{
				Path: "/vault", Severity: c.sev, Found: unit.Of(x.DryAt, unit.KindDuration),
				Message: trace.Message{Code: c.dry, Args: []trace.Arg{trace.Num("at", x.DryAt, unit.KindDuration), trace.Num("lasts", x.DryFor, unit.KindDuration)}},
			})
		case !x.Dry && stalls:
			slow = true // what it comes to does not end by itself
			m.find(trace.Finding{
				Path: "/pumps", Severity: c.sev, Found: unit.Of(stop.At, unit.KindDuration),
				Message: trace.Message{Code: c.stalls, Args: []trace.Arg{
					trace.Str("name", m.out.Delivery.Pump), trace.Num("at", stop.At, unit.KindDuration), trace.Num("fall", max(0, v.Line-stop.Vault), unit.KindDepth),
				}},
			})
		case !x.Dry && !x.Still && !slow:
			slow = true // told once
			m.judgeSlow(x)
		}
	}
}

// stalled gives the first moment of a start at which the pump that drew water
// draws none any more: it did not draw air, so it lacks the head.
func stalled(x *motion.Course) (motion.Sample, bool) {
	for i := 1; i < len(x.Series); i++ {
		if x.Series[i].Drawn <= network.MassTolerance && x.Series[i-1].Drawn > network.MassTolerance {
			return x.Series[i], true
		}
	}
	return motion.Sample{}, false
}

// judgeSlow tells of a start that comes to no end in the time that is followed:
// where a feed gets far less than is wanted, for want of head; else for what there
// is to fill.
func (m *model) judgeSlow(x *Moving) {
	d := m.out.Delivery
	gives := unit.Flow(0)
	lacks := false
	for i := range d.Feeds {
		f := &d.Feeds[i]
		gives += f.Flow
		lacks = lacks || headLacks(f)
	}
	code := FindSlow
	if lacks {
		code = FindSlowHead
	}
	m.find(trace.Finding{
		Path: "/pumps", Severity: trace.Info, Found: unit.Of(x.Took, unit.KindDuration),
		Message: trace.Message{Code: code, Args: []trace.Arg{trace.Num("after", x.Took, unit.KindDuration), trace.Num("flow", gives, unit.KindFlow)}},
	})
}

// headLacks tells that a feed gets so little that the pump's head is what lacks.
func headLacks(f *Feed) bool { return f.Wanted > 0 && f.Flow < f.Wanted*headlessPart }

// headlessPart of what is wanted is no longer a stream. Common practice, no
// source.
const headlessPart = 0.25

// spilling is what is told of a case in which the pond runs over.
type spilling struct {
	of     MovingCase
	code   string
	sev    trace.Severity
	before []string // what tells it already, or something worse of the same stop
}

var spillings = [...]spilling{
	{CaseFirst, FindFirstSpills, trace.Danger, []string{level.FindingLineOver}},
	{CaseRestart, FindRestartSpills, trace.Danger, []string{level.FindingLineOver}},
	{CaseStop, FindStopSpills, trace.Danger, []string{level.FindingStopSpills, level.FindingLineOver}},
	{CaseLeaks, FindLeakSpills, trace.Caution, []string{level.FindingStopSpills, level.FindingValveSpills, FindStopSpills, level.FindingLineOver}},
	{CaseOpen, FindOpenSpills, trace.Caution, []string{level.FindingStopSpills, level.FindingValveSpills, FindStopSpills, FindLeakSpills, level.FindingLineOver}},
	{CaseCut, FindCutSpills, trace.Danger, []string{level.FindingLineOver, FindFirstSpills}},
	{CasePumpStops, FindPumpSpills, trace.Caution, []string{level.FindingLineOver, level.FindingStopSpills, FindStopSpills, FindRestartSpills}},
	{CaseRain, FindRainSpills, trace.Caution, []string{level.FindingStopRain, level.FindingStopSpills, FindStopSpills, level.FindingLineOver}},
}

// judgeRims tells in which cases the pond runs over, each once.
func (m *model) judgeRims(v *Motion, told map[string]bool) {
	for _, c := range spillings {
		x := v.Find(c.of)
		if x == nil || !x.Spills || float64(x.Over) <= drop || slices.ContainsFunc(c.before, func(code string) bool { return told[code] }) {
			continue
		}
		told[c.code] = true
		at := x.RimAt
		args := []trace.Arg{trace.Num("spill", x.Over, unit.KindWater)}
		switch c.of {
		case CaseCut:
			at = max(0, x.RimAt-x.CutAt)
			args = append(args, trace.Num("after", x.CutAt, unit.KindDuration))
		case CaseRain:
			site := &m.job.Site
			args = append(args, trace.Num("rain", site.DesignRain.SI, unit.KindDepth), trace.Num("over", site.RainTime.Or(defaultRainTime), unit.KindDuration))
		case CasePumpStops:
			args = append(args, trace.Str("name", x.Astray.Pump))
		case CaseFirst, CaseRestart, CaseStop, CaseLeaks, CaseOpen, CaseShut, CasePumpOpen:
		}
		m.find(trace.Finding{
			Path: "/pond/rim", Severity: c.sev, Found: unit.Of(x.Highest, unit.KindElevation), Limit: unit.Of(v.Rim, unit.KindElevation), LimitSource: m.rimSource(),
			Message: trace.Message{Code: c.code, Args: append(args, trace.Num("at", at, unit.KindDuration))},
		})
	}
}

// drop is the water over the rim that is worth a word, in m³.
const drop = 1e-4

// timed adds the time to the findings of the levels, takes those away that what
// was followed has shown to be none, and gives the codes that are left.
func (m *model) timed(v *Motion) map[string]bool {
	m.out.Findings = slices.DeleteFunc(m.out.Findings, func(f trace.Finding) bool { return m.refuted(v, f.Code) })
	told := map[string]bool{}
	for i := range m.out.Findings {
		f := &m.out.Findings[i]
		told[f.Code] = true
		var x *Moving
		switch f.Code {
		case level.FindingStartStarves, level.FindingStartEmpty:
			x = v.Find(CaseFirst)
		case level.FindingRestartStarves, level.FindingRestartEmpty:
			x = v.Find(CaseRestart)
		case level.FindingStopSpills:
			x = v.Find(CaseStop)
		case level.FindingValveSpills:
			x = v.Find(CaseOpen)
		case level.FindingStopRain:
			x = v.Find(CaseRain)
		}
		switch {
		case x == nil:
		case x.Dry:
			f.Args = append(f.Args, trace.Num("at", x.DryAt, unit.KindDuration))
		case x.Spills:
			f.Args = append(f.Args, trace.Num("at", x.RimAt, unit.KindDuration))
		}
	}
	return told
}

// refuted tells that a start that was followed shows that a finding of the levels
// is none. The levels at rest know neither what a float valve gives on the way nor
// how long a start takes: one that comes to steady running without air, or draws
// air only for a while, has water enough; and what a pump without head would come
// to in hours is no finding about water.
func (m *model) refuted(v *Motion, code string) bool {
	tops := m.out.Levels.Inputs().Fills
	for _, c := range startings {
		x := v.Find(c.of)
		switch {
		case slices.Contains(c.levels, code):
			lasts := !x.Dry && (x.Still || tops) || x.Dry && !x.Gasping
			return lasts || !x.Dry && slices.ContainsFunc(m.out.Delivery.Feeds, func(f Feed) bool { return headLacks(&f) })
		case code == c.bare:
			return tops
		}
	}
	return false
}

// judgeAstray tells what happens where a valve or one of several pumps fails.
func (m *model) judgeAstray(v *Motion) {
	for i := range v.Cases {
		x := &v.Cases[i]
		if x.Astray == nil {
			continue
		}
		a := x.Astray
		left := a.Left()
		switch {
		case x.Case == CaseShut:
			m.judgeShut(a, left)
		case a.Back <= 0:
		case x.Case == CasePumpOpen:
			m.find(trace.Finding{
				Path: "/runs", Severity: trace.Info, Found: unit.Of(a.Back, unit.KindFlow),
				Message: trace.Message{Code: FindPumpOpen, Args: []trace.Arg{
					trace.Str("name", a.Pump), trace.Num("back", a.Back, unit.KindFlow), trace.Num("left", left, unit.KindFlow),
				}},
			})
		default: // told already that the valve is missing; now what that does
			place := a.Pump
			if place == m.out.Delivery.Pump {
				place = "pump"
			}
			for k := range m.out.Findings {
				if f := &m.out.Findings[k]; f.Code == FindNoCheck && text(f.Message, "name") == place {
					f.Args = append(f.Args, trace.Num("back", a.Back, unit.KindFlow), trace.Num("left", left, unit.KindFlow))
				}
			}
		}
	}
}

// judgeShut tells of a check valve that sticks shut.
func (m *model) judgeShut(a *Astray, left unit.Flow) {
	args := []trace.Arg{trace.Str("name", a.Pump)}
	if a.Run != "" {
		args = append(args, trace.Str("run", a.Run))
	}
	if left > 0 {
		args = append(args, trace.Num("left", left, unit.KindFlow))
	}
	code := FindShut
	if a.Gives > 0 {
		code = FindShutBranch
		for i, q := range a.Flows {
			if q <= 0 && !m.out.Delivery.Feeds[i].Dry {
				args = append(args, trace.Str("feed", m.out.Delivery.Feeds[i].Name))
				break
			}
		}
	} else {
		args = append(args, trace.Num("head", a.Head, unit.KindHead))
		if a.Watts > 0 {
			args = append(args, trace.Num("watts", a.Watts, unit.KindPower), trace.Num("boils", a.Boils, unit.KindDuration))
		}
	}
	m.find(trace.Finding{Path: "/runs", Severity: trace.Info, Found: unit.Of(left, unit.KindFlow), Message: trace.Message{Code: code, Args: args}})
}

// motionFigures opens what was followed.
func (m *model) motionFigures() {
	v := m.out.Motion
	for i := range v.Cases {
		x := &v.Cases[i]
		if x.Astray != nil {
			m.astrayFigures(v, i)
			continue
		}
		id := "motion." + string(x.Case)
		m.figure(id+".lowest", unit.Of(x.Lowest, unit.KindElevation), "least level in the vault (without a vault, of the pond) on the way", sourceMoves,
			term("after", x.LowestAt, unit.KindDuration, ""), term("draws air from", m.out.Levels.Inputs().Lowest(), unit.KindElevation, "/pumps/minWater"))
		m.figure(id+".highest", unit.Of(x.Highest, unit.KindElevation), "greatest level of the pond on the way; not over the rim, where what comes runs over", sourceMoves,
			term("after", x.HighestAt, unit.KindDuration, ""), term("rim", v.Rim, unit.KindElevation, "/pond/rim"))
		m.figure(id+".over", unit.Of(x.Over, unit.KindWater), "what comes while the pond stands at its rim", sourceMoves)
		m.figure(id+".still", unit.Of(x.StillAt, unit.KindDuration), "time until the pond moves by less than 1 mm in 10 minutes and the vault by less than 1 mm a minute; 0 where it never comes to that", sourceMoves)
		if x.Dry {
			m.figure(id+".dry", unit.Of(x.DryAt, unit.KindDuration), "time at which the vault has fallen to where the pump draws air", sourceMoves,
				term("for", x.DryFor, unit.KindDuration, ""))
		}
		if back, ok := x.CameBack(); ok {
			m.figure(id+".back", unit.Of(back, unit.KindWater), "through the stopped pump + down the watercourses", sourceMoves,
				term("through", x.Back, unit.KindWater, ""), term("down", x.Down, unit.KindWater, ""))
		}
		m.figure(id+".mass", unit.Of(unit.Ratio(math.Abs(float64(x.Mass))), unit.KindPercent), "water won or lost in the reckoning, of what the watercourses hold running; 0.1 % is the bound", sourceMoves,
			term("steps", unit.Ratio(x.Steps), unit.KindCount, ""))
	}
}

// astrayFigures opens a case in which a part fails.
func (m *model) astrayFigures(v *Motion, i int) {
	x, a := &v.Cases[i], v.Cases[i].Astray
	id := "motion." + string(x.Case)
	if n := slices.IndexFunc(v.Cases, func(c Moving) bool { return c.Case == x.Case }); i > n {
		id += "." + a.Pump
	}
	m.figure(id+".flow", unit.Of(a.Left(), unit.KindFlow), "what the feeds together still get: the network with that part shut, or that pump a passage of K = 10", sourceBooks)
	if x.Case != CaseShut {
		m.figure(id+".through", unit.Of(a.Back, unit.KindFlow), "what runs back through the pump that stands still", sourceBooks)
		return
	}
	if a.Watts > 0 {
		m.figure(id+".boils", unit.Of(a.Boils, unit.KindDuration), "1 L of water: 4190 J/K (100 °C - T) / P; nothing lost to the walls, so no sooner", trace.Source{Title: "heat of water, steam tables", Basis: trace.BasisMemory},
			term("P", a.Watts, unit.KindPower, ""), term("H", a.Head, unit.KindHead, ""))
	}
}
