package level

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// hair is how far, in metres, a margin may be below nought by rounding without
// a finding: a thousandth of a millimetre.
const hair = 1e-6

func short(v unit.Length) bool { return float64(v) < -hair }

var pumpSheet = trace.Source{Title: "pump's sheet", Basis: trace.BasisSheet}

// judge makes the findings from the states.
func (s *solver) judge() {
	in := s.in
	if !in.Stand.MinKnown && !in.Stand.Unknown {
		s.out.Assumptions = append(s.out.Assumptions, trace.Assumption{
			Message: trace.Message{Code: AssumePumpMinimum}, Path: "/pumps/minWater",
			Value:  unit.Of(unit.Length(0), unit.KindDepth),
			Source: trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice, Note: "least water depth of the pump not given"},
		})
	}
	s.judgeSite()
	everyday := s.out.Everyday()
	dry := s.weir != nil && in.Line <= in.Vault.Sill.Crest // told already
	if !dry || in.TopsUp {
		s.judgeRun(everyday, everyStart)
	}
	if !dry {
		s.judgeRun(CourseFirst, firstStart)
	}
	if !in.NoRim {
		s.judgeStops(everyday)
	}
}

// judgeSite looks at what is amiss before anything runs.
func (s *solver) judgeSite() {
	in := s.in
	if in.NoRim {
		s.find(FindingRimNone, "/pond/rim", trace.Caution, unit.Value{}, unit.Value{}, trace.Source{})
	}
	back := unit.Volume(0)
	for i := range in.Stores {
		if v := &in.Stores[i]; v.backThroughPump() {
			back += v.Running - v.HeldOpen
		}
	}
	if !in.Valve && back > 0 {
		s.find(FindingValveNone, "/runs", trace.Caution, unit.Of(back, unit.KindWater), unit.Value{}, trace.Source{}, trace.Num("back", back, unit.KindWater))
	}
	if !in.NoRim && in.Line > in.Rim {
		s.find(FindingLineOver, "/pond/rim", trace.Danger, unit.Of(in.Line, unit.KindElevation), unit.Of(in.Rim, unit.KindElevation), in.RimSource,
			trace.Num("line", in.Line, unit.KindElevation), trace.Num("rim", in.Rim, unit.KindElevation))
	}
	if s.weir != nil && in.Line <= in.Vault.Sill.Crest {
		crest := in.Vault.Sill.Crest
		s.find(FindingSillDry, "/vault/sill", trace.Danger, unit.Of(crest, unit.KindElevation), unit.Of(in.Line, unit.KindElevation), trace.Source{},
			trace.Num("sill", crest, unit.KindElevation), trace.Num("line", in.Line, unit.KindElevation))
	}
}

// judgeStops looks at the stops, and for a running line that serves.
func (s *solver) judgeStops(everyday Course) {
	high := s.out.Lines.GreatestOpen
	if s.in.Valve {
		high = s.out.Lines.GreatestHeld
		s.judgeStop(everyday, MomentHeld, FindingStopSpills, FindingStopRain, trace.Danger)
		s.judgeStop(everyday, MomentOpen, FindingValveSpills, FindingValveRain, trace.Caution)
	} else {
		s.judgeStop(everyday, MomentOpen, FindingStopSpills, FindingStopRain, trace.Danger)
	}
	if low := s.out.Lines.Least; short(high - low) {
		most, least := s.in.Rim-low, s.in.Rim-high // a fitter reads them down from the rim, not from a datum that may lie above
		s.find(FindingLineNone, "/pond/runningLine", trace.Caution, unit.Of(most, unit.KindDepth), unit.Of(least, unit.KindDepth), s.in.RimSource,
			trace.Num("low", most, unit.KindDepth), trace.Num("high", least, unit.KindDepth))
	}
}

func (s *solver) find(code, path string, sev trace.Severity, found, limit unit.Value, source trace.Source, args ...trace.Arg) {
	s.out.Findings = append(s.out.Findings, trace.Finding{
		Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev, Found: found, Limit: limit, LimitSource: source,
	})
}

// start names what is told of a start.
type start struct {
	starves, empty, bare, reserve string
	severity                      trace.Severity // of a pump that gasps
}

// A first start that starves is a caution, since one can stand by and top up; a
// start that does so every time is a danger to the pump.
var (
	firstStart = start{FindingStartStarves, FindingStartEmpty, FindingStartBare, FindingStartReserve, trace.Caution}
	everyStart = start{FindingRestartStarves, FindingRestartEmpty, FindingRestartBare, FindingReserve, trace.Danger}
)

// judgeRun looks at a course's first running state.
func (s *solver) judgeRun(c Course, told start) {
	st, ok := s.out.Find(c, MomentRun)
	switch {
	case !ok:
		return
	case st.Starved: // the pump draws air: its own margin says nothing more
		s.judgeStarved(c, told, &st)
		return
	}
	if m := st.Sill; m.Applies {
		fall := s.in.Vault.Sill.Crest - s.in.Vault.ScreenLoss - st.Vault
		switch {
		case m.Over < hair && fall > hair:
			s.find(told.bare, "/vault/sill", trace.Caution, unit.Of(m.Present, unit.KindDepth), unit.Of(m.Needed, unit.KindDepth), weirSource,
				trace.Str("course", string(c)), trace.Num("needed", m.Needed, unit.KindDepth),
				trace.Num("fall", fall, unit.KindDepth), trace.Num("spare", st.Spare, unit.KindWater))
		case short(m.AfterReserve) && !s.in.Fills: // a float valve makes up for it
			s.under(told.reserve, "/vault/sill", trace.Caution, c, "over", m, m.AfterReserve, weirSource)
		}
	}
	if m := st.Pump; m.Applies {
		switch {
		case short(m.Over):
			s.under(FindingPumpLow, "/pumps/minWater", told.severity, c, "depth", m, m.Over, pumpSheet)
		case short(m.AfterReserve) && !s.in.Fills:
			s.under(FindingPumpReserve, "/pumps/minWater", trace.Caution, c, "depth", m, m.AfterReserve, pumpSheet)
		}
	}
}

// judgeStarved tells of a start for which the water does not suffice.
func (s *solver) judgeStarved(c Course, told start, st *State) {
	missing := trace.Num("missing", st.Missing, unit.KindWater)
	if s.weir == nil {
		depth := st.Vault - lengthOf(s.stand)
		s.find(told.empty, "/pond", told.severity, unit.Of(depth, unit.KindDepth), unit.Value{}, trace.Source{},
			trace.Str("course", string(c)), trace.Num("depth", depth, unit.KindDepth), missing)
		return
	}
	args := []trace.Arg{
		trace.Str("course", string(c)), trace.Num("over", max(0, st.Sill.Present), unit.KindDepth), trace.Num("needed", st.Sill.Needed, unit.KindDepth),
		trace.Num("flow", st.Flow, unit.KindFlow), missing,
	}
	if st.Passes > 0 {
		args = append(args, trace.Num("passes", st.Passes, unit.KindFlow))
	} else {
		args = append(args, trace.Num("unfilled", s.out.Transit-st.InStores, unit.KindWater))
	}
	s.find(told.starves, "/vault/sill", told.severity, unit.Of(st.Sill.Present, unit.KindDepth), unit.Of(st.Sill.Needed, unit.KindDepth), weirSource, args...)
}

// under reports a depth that falls short by -over.
func (s *solver) under(code, path string, sev trace.Severity, c Course, name string, m Margin, over unit.Length, source trace.Source) {
	present := m.Needed + over
	s.find(code, path, sev, unit.Of(present, unit.KindDepth), unit.Of(m.Needed, unit.KindDepth), source,
		trace.Str("course", string(c)), trace.Num(name, present, unit.KindDepth),
		trace.Num("needed", m.Needed, unit.KindDepth), trace.Num("short", -over, unit.KindDepth))
}

// judgeStop looks at the highest of the stops that the pond goes through: after
// the first fill, at every later stop (course everyday), and when it is topped up
// while running.
func (s *solver) judgeStop(everyday Course, m Moment, spills, rain string, sev trace.Severity) {
	var worst *State
	for i := range s.out.States {
		st := &s.out.States[i]
		if st.Moment == m && (st.Course == CourseFirst || st.Course == everyday) && (worst == nil || st.Pond > worst.Pond) {
			worst = st
		}
	}
	e := worst.Edge
	where := []trace.Arg{trace.Str("course", string(worst.Course)), trace.Str("moment", string(worst.Moment))}
	switch {
	case short(e.Freeboard):
		s.find(spills, "/pond/rim", sev, unit.Of(worst.Pond, unit.KindElevation), unit.Of(s.in.Rim, unit.KindElevation), s.in.RimSource,
			append(where, trace.Num("level", worst.Pond, unit.KindElevation), trace.Num("rim", s.in.Rim, unit.KindElevation),
				trace.Num("over", -e.Freeboard, unit.KindDepth), trace.Num("spill", e.Spill, unit.KindWater))...)
	case short(e.RainRoom):
		s.find(rain, "/pond/rim", trace.Caution, unit.Of(e.Freeboard, unit.KindDepth), unit.Of(e.Freeboard-e.RainRoom, unit.KindDepth), s.in.RimSource,
			append(where, trace.Num("room", e.Freeboard, unit.KindDepth), trace.Num("rain", e.Freeboard-e.RainRoom, unit.KindDepth),
				trace.Num("spill", e.RainSpill, unit.KindWater))...)
	}
}
