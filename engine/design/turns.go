package design

import (
	"plashet/engine/level"
	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// verdicts lists what is counted over the draws.
func (s *shaker) verdicts() (out []verdict) {
	d := s.m.out.Delivery
	for i := range d.Feeds {
		f, x := &d.Feeds[i], &s.feeds[i]
		out = append(out, verdict{
			code: FindMayDry, told: FindDry, path: f.Path, name: f.Name, severity: trace.Caution, now: f.Dry,
			holds: func() bool { return x.flow <= network.MassTolerance },
		})
		if want := f.Wanted * unit.Flow(enough); f.Wanted > 0 {
			out = append(out, verdict{
				code: FindMayShort, told: FindShort, path: f.Path, name: f.Name, severity: trace.Info, now: f.Flow < want,
				holds: func() bool { return x.flow < want }, limit: unit.Of(f.Wanted, unit.KindFlow), limitBy: jobSource,
			})
		}
	}
	if s.levels == nil {
		return out
	}
	l := s.m.out.Levels
	everyday := l.Everyday()
	stop := level.MomentOpen
	if s.levels.Valve {
		stop = level.MomentHeld
	}
	if !s.levels.NoRim {
		spills := func(l *level.Levels) bool {
			return met(l, level.CourseFirst, stop, spilled) || met(l, everyday, stop, spilled)
		}
		out = append(out, verdict{
			code: FindMaySpill, told: level.FindingStopSpills, path: "/pond/rim", severity: trace.Caution, now: spills(l),
			holds: func() bool { return spills(s.out) },
		})
	}
	starved := func(st *level.State) bool { return st.Starved }
	out = append(out, verdict{
		code: FindMayStart, told: level.FindingStartStarves, path: "/vault/sill", severity: trace.Info, now: met(l, level.CourseFirst, level.MomentRun, starved),
		holds: func() bool { return met(s.out, level.CourseFirst, level.MomentRun, starved) },
	}, verdict{
		code: FindMayStarve, told: level.FindingRestartStarves, path: "/vault/sill", severity: trace.Caution, now: met(l, everyday, level.MomentRun, starved),
		holds: func() bool { return met(s.out, everyday, level.MomentRun, starved) },
	})
	if s.levels.Stand.MinKnown && !s.levels.Stand.Unknown {
		bare := func(st *level.State) bool { return st.Pump.Applies && st.Pump.Over < 0 }
		out = append(out, verdict{
			code: FindMayBare, told: level.FindingPumpLow, path: "/pumps/minWater", severity: trace.Caution, now: met(l, everyday, level.MomentRun, bare),
			holds: func() bool { return met(s.out, everyday, level.MomentRun, bare) },
			limit: unit.Of(s.levels.Stand.MinWater, unit.KindDepth), limitBy: sheetSource,
		})
	}
	return out
}

func spilled(st *level.State) bool { return st.Edge.Known && st.Edge.Freeboard < 0 }

// met tells that a state is there and holds something.
func met(l *level.Levels, c level.Course, m level.Moment, holds func(*level.State) bool) bool {
	for i := range l.States {
		if st := &l.States[i]; st.Course == c && st.Moment == m {
			return holds(st)
		}
	}
	return false
}
