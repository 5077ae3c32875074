package answer

import (
	"math"

	"plashet/engine/design"
	"plashet/engine/level"
	"plashet/engine/unit"
)

func (p *printer) levels(r *design.Result) {
	if r.Levels == nil {
		return
	}
	p.head("print.head.levels")
	_, valve := r.Levels.Find(level.CourseKept, level.MomentRest)
	draw := r.Levels.DrawOpen
	if valve {
		draw = r.Levels.Draw
	}
	p.tell("", "print.levels.way", num("transit", r.Levels.Transit, unit.KindWater), num("draw", draw, unit.KindWater))
	needs := p.say.Word("print.levels.needs")
	rows := [][]string{{"", p.say.Word("print.levels.pond"), p.say.Word("print.levels.rim"), p.say.Word("print.levels.sill"), needs, p.say.Word("print.levels.floor"), needs}}
	for i := range r.Levels.States {
		s := &r.Levels.States[i]
		if repeats(r.Levels.States[:i], s) {
			continue
		}
		rows = append(rows, p.state(s, valve))
	}
	p.table("lrrrrrr", rows)
	for i := range r.Levels.States {
		if s := &r.Levels.States[i]; s.Starved && !repeats(r.Levels.States[:i], s) {
			p.tell("", "print.levels.starved", str("moment", p.moment(s, valve)), num("passes", s.Passes, unit.KindFlow),
				num("drawn", r.Delivery.Drawn, unit.KindFlow), num("missing", s.Missing, unit.KindWater))
		}
	}
}

// sameLevel is how near two levels are that are printed once.
const sameLevel = 5e-5

// repeats tells that the course has stood so before: it runs again as it ran.
func repeats(before []level.State, s *level.State) bool {
	for i := range before {
		b := &before[i]
		if b.Course == s.Course && b.Moment.Running() == s.Moment.Running() && b.Starved == s.Starved &&
			math.Abs(float64(b.Pond-s.Pond)) < sameLevel && math.Abs(float64(b.Vault-s.Vault)) < sameLevel {
			return true
		}
	}
	return false
}

// state is one row of the table of levels.
func (p *printer) state(s *level.State, valve bool) []string {
	row := []string{p.moment(s, valve), show(p, s.Change, unit.KindDepth), "", "", "", "", ""}
	if !s.Moment.Running() && s.Edge.Known {
		row[2] = show(p, s.Edge.Freeboard, unit.KindDepth)
	}
	for i, m := range []*level.Margin{&s.Sill, &s.Pump} {
		if m.Applies {
			row[3+2*i], row[4+2*i] = show(p, m.Present, unit.KindDepth), show(p, m.Needed, unit.KindDepth)
		}
	}
	return row
}

// moment names a state; without a valve in the job every stop is just a stop.
func (p *printer) moment(s *level.State, valve bool) string {
	m := s.Moment
	if m == level.MomentOpen && !valve {
		m = level.MomentHeld
	}
	return p.say.Word("level.course."+string(s.Course)) + ", " + p.say.Word("level.moment."+string(m))
}
