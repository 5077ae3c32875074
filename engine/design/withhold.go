package design

import (
	"slices"
	"strings"

	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// dangers gives the dangers among findings that the job does not accept.
func (m *model) dangers(findings []trace.Finding) []trace.Finding {
	var out []trace.Finding
	for _, f := range findings {
		accepted := slices.ContainsFunc(m.job.Accepted, func(a job.Acceptance) bool { return accepts(a, f) })
		if f.Severity == trace.Danger && !accepted {
			out = append(out, f)
		}
	}
	return out
}

// withhold tells why the steps of gluing are held back.
func (m *model) withhold(dangers []trace.Finding, faulty int) {
	lists := map[string][]string{}
	var order []string
	add := func(name string, texts ...string) {
		if _, known := lists[name]; !known {
			order = append(order, name)
		}
		for _, t := range texts {
			if !slices.Contains(lists[name], t) {
				lists[name] = append(lists[name], t)
			}
		}
	}
	var args []trace.Arg
	for _, f := range dangers {
		switch f.Code {
		case layout.FindClosure:
			args = append(args, trace.Arg{Name: "off", Value: f.Found})
		case layout.FindTurned:
			args = append(args, trace.Arg{Name: "turned", Value: f.Found})
		case layout.FindWall:
			add("through", texts(f, "part", "parts")...)
		case layout.FindPump, layout.FindObstacle, layout.FindParts:
			add("inside", texts(f, "part", "other")...)
		case layout.FindPumpWall, layout.FindPumpObstacle:
			add("pump")
		case layout.FindReversed:
			add("reversed", texts(f, "part")...)
		case layout.FindAttitude:
			add("attitude", texts(f, "part")...)
		case layout.FindNoUnion:
			add("union")
		case layout.FindBlocked, layout.FindLip:
			add("blocked", texts(f, "union")...)
		case glue.FindCaptive:
			add("captive")
		case FindKeptCut, FindKeptGone, FindKeptMore:
			add("kept", texts(f, "piece")...)
		default:
			if f.LimitSource == twice {
				add("second")
				continue
			}
			add("others", f.Code)
		}
	}
	for _, name := range order {
		if len(lists[name]) == 0 {
			args = append(args, trace.Flag(name))
			continue
		}
		args = append(args, trace.Str(name, strings.Join(lists[name], ", ")))
	}
	if faulty > 0 {
		args = append(args, trace.Num("faults", unit.Ratio(faulty), unit.KindCount))
	}
	m.remark("/assembly", trace.Caution, trace.Message{Code: FindWithheld, Args: args})
}

// texts gives the texts of a finding's arguments, those that it has.
func texts(f trace.Finding, names ...string) (out []string) {
	for _, a := range f.Args {
		if slices.Contains(names, a.Name) {
			out = append(out, a.Text)
		}
	}
	return out
}
