package design

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// tellInsteads adds to what would mend a search where the pump then stands, and
// how many fittings are taken.
func (a *Arranging) tellInsteads() {
	for i := range a.Outcome.Short {
		s := &a.Outcome.Short[i]
		if s.Instead == 0 {
			continue
		}
		if len(s.Besides) > 0 {
			s.What = trace.Message{Code: ChangeSeveral, Args: []trace.Arg{trace.Str("fittings", a.listed(s))}}
			continue
		}
		how, p := &a.instead[s.Instead-1], s.Layout.Chain.Pose
		args := how.args()
		switch {
		case how.hose:
			h := &s.Layout.Laid.Hoses[0]
			args = append(args, trace.Num("cut", h.Cut, unit.KindTape), trace.Num("radius", h.Curve.Radius, unit.KindTape))
		case how.stand < 0:
			fitting, count := a.got(s.Instead, &s.Layout)
			args = append(fitting.args(), trace.Num("count", unit.Ratio(count-how.had), unit.KindCount))
		default:
			args = append(args, trace.Num("turn", p.Turn, unit.KindAngle),
				trace.Num("left", unit.Length(p.At.X), unit.KindTape), trace.Num("front", unit.Length(p.At.Y), unit.KindTape))
		}
		s.What.Args = args
	}
}

// listed names the fittings that a change takes, with how many are to be got:
// "elbow 90 1-1/2: 2, elbow 45 1-1/2: 1".
func (a *Arranging) listed(s *arrange.Change) string {
	var list []string
	for _, n := range s.Numbers() {
		how, count := a.got(n, &s.Layout)
		list = append(list, how.name+" "+how.size+": "+strconv.Itoa(count-how.had))
	}
	return strings.Join(list, ", ")
}

// got tells which fitting one of Input.Instead is in a layout, and how many of it
// the layout takes.
func (a *Arranging) got(n int, l *arrange.Layout) (how instead, count int) {
	how = a.instead[n-1]
	if how.ended {
		how.name, how.size = endedIn(&l.Chain)
		return how, 1
	}
	return how, a.taken(n, l)
}

// taken counts the fittings of one of Input.Instead in a layout.
func (a *Arranging) taken(number int, l *arrange.Layout) (n int) {
	how := &a.instead[number-1]
	list := a.Input.Instead[number-1].Fittings
	for i := range l.Chain.Parts {
		p := &l.Chain.Parts[i]
		for k := range list {
			name := how.name
			if k < len(a.Names) {
				name = a.Names[k]
			}
			if q := &list[k].Part; name == how.name && q.Size == how.size && q.Kind == p.Kind && q.Size == p.Size {
				n++
			}
		}
	}
	return n
}

// insteadMend gives the entries by which a change without a size is written.
func (a *Arranging) insteadMend(j *job.Job, s *arrange.Change) (out []Entry) {
	how, p := &a.instead[s.Instead-1], s.Layout.Chain.Pose
	if how.hose {
		return a.hoseMend(j, s)
	}
	if how.stand < 0 {
		return a.fittingMend(j, s)
	}
	list := j.Assembly.Search.Stands
	stand, last := at("/assembly/search/stands", how.stand), at("/assembly/search/stands", len(list))
	if how.stand == len(list) {
		return []Entry{{last + "/attitude", how.name}}
	}
	w := &list[how.stand]
	turn := unit.Of(p.Turn, unit.KindAngle).Format(a.Units.Typed())
	if how.elsewhere { // a way without a place, beside the one with it
		out = append(out, Entry{last + "/attitude", w.Attitude})
		if !how.turned && !w.Turn.IsZero() {
			out = append(out, Entry{last + "/turn", turn})
		}
		return out
	}
	out = append(out, Entry{stand + "/turn", turn})
	if placed(w) {
		out = append(out, Entry{stand + "/at/x", exactly(unit.Length(p.At.X), j.System())}, Entry{stand + "/at/y", exactly(unit.Length(p.At.Y), j.System())})
	}
	return out
}

// fittingMend gives those of fittings: there are as many as the layout takes.
func (a *Arranging) fittingMend(j *job.Job, s *arrange.Change) (out []Entry) {
	list := j.Stock.Fittings
	next := len(list)
	for _, n := range s.Numbers() {
		how, taken := a.got(n, &s.Layout)
		count := unit.Of(unit.Ratio(taken), unit.KindCount).Format(a.Units.Typed())
		i := slices.IndexFunc(list, func(f job.StockFitting) bool { return f.Fitting == how.name && f.Size == how.size })
		if i < 0 {
			path := at("/stock/fittings", next)
			out = append(out, Entry{path + "/fitting", how.name}, Entry{path + "/size", how.size}, Entry{path + "/count", count})
			next++
			continue
		}
		path := at("/stock/fittings", i)
		if list[i].None {
			out = append(out, Entry{path + "/none", ""})
		}
		out = append(out, Entry{path + "/count", count})
	}
	return out
}
