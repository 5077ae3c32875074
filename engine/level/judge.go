package level

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// hair is how far, in metres, a margin may be below nought by rounding without
// a finding: a thousandth of a millimetre.
const hair = 1e-6

func short(v unit.Length) bool { return float64(v) < -hair }

var (
	pumpSheet = trace.Source{Title: "pump's sheet", Basis: trace.BasisSheet}
	rimLevel  = trace.Source{Title: "level of the edge's lowest point", Basis: trace.BasisMeasured}
)

// judge makes the findings from the states.
func (s *solver) judge() {
	in := s.in
	if !in.Stand.MinKnown {
		s.out.Assumptions = append(s.out.Assumptions, trace.Assumption{
			Message: trace.Message{Code: AssumePumpMinimum}, Path: "/pumps/minWater",
			Value:  unit.Of(unit.Length(0), unit.KindDepth),
			Source: trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice, Note: "least water depth of the pump not given"},
		})
	}
	if in.Line > in.Rim {
		s.find(FindingLineOver, "/pond/rim", trace.Danger, unit.Of(in.Line, unit.KindElevation), unit.Of(in.Rim, unit.KindElevation), rimLevel,
			trace.Num("line", in.Line, unit.KindElevation), trace.Num("rim", in.Rim, unit.KindElevation))
	}
	if s.weir != nil && in.Line <= in.Vault.Sill.Crest {
		crest := in.Vault.Sill.Crest
		s.find(FindingSillDry, "/vault/sill", trace.Danger, unit.Of(crest, unit.KindElevation), unit.Of(in.Line, unit.KindElevation), trace.Source{},
			trace.Num("sill", crest, unit.KindElevation), trace.Num("line", in.Line, unit.KindElevation))
	}
	again := CourseOpen
	if in.Valve {
		again = CourseKept
	}
	s.judgeRun(CourseFirst, FindingStartStarves, trace.Caution)
	s.judgeRun(again, FindingRestartStarves, trace.Danger)
	s.judgeRun(CourseTopped, FindingRestartStarves, trace.Danger)
	if in.Valve {
		s.judgeStop(again, MomentHeld, FindingStopSpills, FindingStopRain, trace.Danger)
		s.judgeStop(again, MomentOpen, FindingValveSpills, FindingValveRain, trace.Caution)
	} else {
		s.judgeStop(again, MomentOpen, FindingStopSpills, FindingStopRain, trace.Danger)
	}
	l := s.out.Lines
	high := l.GreatestOpen
	if in.Valve {
		high = l.GreatestHeld
	}
	if short(high - l.Least) {
		s.find(FindingLineNone, "/pond/runningLine", trace.Caution, unit.Of(l.Least, unit.KindElevation), unit.Of(high, unit.KindElevation), rimLevel,
			trace.Num("low", l.Least, unit.KindElevation), trace.Num("high", high, unit.KindElevation))
	}
}

func (s *solver) find(code, path string, sev trace.Severity, found, limit unit.Value, source trace.Source, args ...trace.Arg) {
	s.out.Findings = append(s.out.Findings, trace.Finding{
		Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev, Found: found, Limit: limit, LimitSource: source,
	})
}

// judgeRun looks at a course's first running state. A first start that starves
// is a caution, since one can stand by and top up; a start that does so every
// time is a danger to the pump.
func (s *solver) judgeRun(c Course, starves string, sev trace.Severity) {
	st, ok := s.out.Find(c, MomentRun)
	if !ok {
		return
	}
	if st.Missing > 0 {
		s.find(FindingEmpty, "/pond", sev, unit.Of(st.InStores, unit.KindWater), unit.Of(st.Total, unit.KindWater), trace.Source{},
			trace.Str("course", string(c)), trace.Num("missing", st.Missing, unit.KindWater))
		return
	}
	if m := st.Sill; m.Applies {
		switch {
		case short(m.Over):
			s.under(starves, "/vault/sill", sev, c, "over", m, m.Over, weirSource)
			return // the pump draws air: its own margin says nothing more
		case short(m.AfterReserve):
			s.under(FindingReserve, "/vault/sill", trace.Caution, c, "over", m, m.AfterReserve, weirSource)
		}
	}
	if m := st.Pump; m.Applies {
		switch {
		case short(m.Over):
			s.under(FindingPumpLow, "/pumps/minWater", sev, c, "depth", m, m.Over, pumpSheet)
		case short(m.AfterReserve):
			s.under(FindingPumpReserve, "/pumps/minWater", trace.Caution, c, "depth", m, m.AfterReserve, pumpSheet)
		}
	}
}

// under reports a depth that falls short by -over.
func (s *solver) under(code, path string, sev trace.Severity, c Course, name string, m Margin, over unit.Length, source trace.Source) {
	present := m.Needed + over
	s.find(code, path, sev, unit.Of(present, unit.KindDepth), unit.Of(m.Needed, unit.KindDepth), source,
		trace.Str("course", string(c)), trace.Num(name, present, unit.KindDepth),
		trace.Num("needed", m.Needed, unit.KindDepth), trace.Num("short", -over, unit.KindDepth))
}

// judgeStop looks at the highest of the stops that the pond goes through: after
// the first fill, at every later stop (course again), and when it is topped up
// while running.
func (s *solver) judgeStop(again Course, m Moment, spills, rain string, sev trace.Severity) {
	var worst *State
	for i := range s.out.States {
		st := &s.out.States[i]
		if st.Moment == m && (st.Course == CourseFirst || st.Course == again || st.Course == CourseTopped) &&
			(worst == nil || st.Pond > worst.Pond) {
			worst = st
		}
	}
	e := worst.Edge
	where := []trace.Arg{trace.Str("course", string(worst.Course)), trace.Str("moment", string(worst.Moment))}
	switch {
	case short(e.Freeboard):
		s.find(spills, "/pond/rim", sev, unit.Of(worst.Pond, unit.KindElevation), unit.Of(s.in.Rim, unit.KindElevation), rimLevel,
			append(where, trace.Num("level", worst.Pond, unit.KindElevation), trace.Num("rim", s.in.Rim, unit.KindElevation),
				trace.Num("over", -e.Freeboard, unit.KindDepth), trace.Num("spill", e.Spill, unit.KindWater))...)
	case short(e.RainRoom):
		s.find(rain, "/pond/rim", trace.Caution, unit.Of(e.Freeboard, unit.KindDepth), unit.Of(e.Freeboard-e.RainRoom, unit.KindDepth), rimLevel,
			append(where, trace.Num("room", e.Freeboard, unit.KindDepth), trace.Num("rain", e.Freeboard-e.RainRoom, unit.KindDepth),
				trace.Num("spill", e.RainSpill, unit.KindWater))...)
	}
}
