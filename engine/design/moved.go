package design

import (
	"math"
	"slices"

	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// judgeMotion tells what only shows through time, and adds the time to what the
// levels tell already.
func (m *model) judgeMotion() {
	v := m.out.Motion
	told := m.timed(v)
	for _, c := range [...]struct {
		of     MovingCase
		code   string
		sev    trace.Severity
		levels []string
	}{
		{CaseFirst, FindFirstDry, trace.Caution, []string{level.FindingStartStarves, level.FindingStartEmpty, level.FindingSillDry}},
		{CaseRestart, FindRestartDry, trace.Danger, []string{level.FindingRestartStarves, level.FindingRestartEmpty, level.FindingSillDry}},
	} {
		if x := v.Find(c.of); x.Dry && !slices.ContainsFunc(c.levels, func(code string) bool { return told[code] }) {
			m.find(trace.Finding{
				Path: "/vault", Severity: c.sev, Found: unit.Of(x.DryAt, unit.KindDuration),
				Message: trace.Message{Code: c.code, Args: []trace.Arg{trace.Num("at", x.DryAt, unit.KindDuration), trace.Num("lasts", x.DryFor, unit.KindDuration)}},
			})
		}
	}
	if x := v.Find(CaseCut); x.Spills && float64(x.Over) > drop {
		m.find(trace.Finding{
			Path: "/pond/rim", Severity: trace.Danger, Found: unit.Of(x.Highest, unit.KindElevation), Limit: unit.Of(v.Rim, unit.KindElevation), LimitSource: m.rimSource(),
			Message: trace.Message{Code: FindCutSpills, Args: []trace.Arg{
				trace.Num("after", x.CutAt, unit.KindDuration), trace.Num("at", max(0, x.RimAt-x.CutAt), unit.KindDuration), trace.Num("spill", x.Over, unit.KindWater),
			}},
		})
	}
	if x := v.Find(CaseRain); x != nil && x.Spills && float64(x.Over) > drop && !told[level.FindingStopRain] && !told[level.FindingStopSpills] {
		site := &m.job.Site
		m.find(trace.Finding{
			Path: "/pond/rim", Severity: trace.Caution, Found: unit.Of(x.Highest, unit.KindElevation), Limit: unit.Of(v.Rim, unit.KindElevation), LimitSource: m.rimSource(),
			Message: trace.Message{Code: FindRainSpills, Args: []trace.Arg{
				trace.Num("rain", site.DesignRain.SI, unit.KindDepth), trace.Num("over", site.RainTime.Or(defaultRainTime), unit.KindDuration),
				trace.Num("at", x.RimAt, unit.KindDuration), trace.Num("spill", x.Over, unit.KindWater),
			}},
		})
	}
	if x := v.Find(CaseLeaks); x != nil && !x.Still {
		m.find(trace.Finding{
			Path: "/runs", Severity: trace.Info,
			Message: trace.Message{Code: FindLeakSlow, Args: []trace.Arg{trace.Num("after", x.Took, unit.KindDuration), trace.Num("back", x.Back, unit.KindWater)}},
		})
	}
}

// drop is the water over the rim that is worth a word, in m³.
const drop = 1e-4

// timed adds the time to the findings of the levels, and gives the codes that
// these tell.
func (m *model) timed(v *Motion) map[string]bool {
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

// motionFigures opens what was followed.
func (m *model) motionFigures() {
	v := m.out.Motion
	for i := range v.Cases {
		x := &v.Cases[i]
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
