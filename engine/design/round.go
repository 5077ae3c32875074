package design

import (
	"slices"
	"strings"

	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// FindRound says that water of a further pump comes back to where it draws from. Args: name, from, run (by which it comes), found (flow in it).
const FindRound = "design.pump.round"

// judgeRound follows the water of a further pump that draws from a place of the
// pipe: what comes back there is pumped round and round.
func (m *model) judgeRound(i int) {
	f, d := &m.job.FurtherPumps[i], m.out.Delivery
	met, queue := map[string]bool{f.Name: true}, []string{f.Name}
	visit := func(place string) {
		if !met[place] {
			met[place], queue = true, append(queue, place)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		for k := range d.Runs {
			r, run := &d.Runs[k], &m.job.Runs[d.Runs[k].Index]
			from, to, q := run.From, run.To, r.Flow
			if q < 0 {
				from, to, q = to, from, -q
			}
			if from != queue[0] || q <= network.MassTolerance {
				continue
			}
			if to == f.From {
				m.found(FindRound, at("/furtherPumps", i)+"/from", trace.Caution, unit.Of(q, unit.KindFlow), unit.Value{}, trace.Source{},
					trace.Str("name", f.Name), trace.Str("from", f.From), trace.Str("run", run.Name))
				return
			}
			visit(to)
		}
		for k := range m.job.FurtherPumps {
			if o := &m.job.FurtherPumps[k]; k != i && o.From == queue[0] {
				visit(o.Name)
			}
		}
	}
}

// twins is how near the figures of two pumps of one kind are that are told once.
const twins = 0.05

// untwin takes out what is found of a pump of one kind twice, because two or
// more of it run at nearly the same flow.
func (m *model) untwin() {
	var kept []trace.Finding
	for _, f := range m.out.Findings {
		twin := strings.HasPrefix(f.Path, "/pumps/") && slices.ContainsFunc(kept, func(k trace.Finding) bool {
			alike := slices.EqualFunc(k.Args, f.Args, trace.Arg.Same)
			if f.Found.Kind != unit.KindNone && k.Found.Kind == f.Found.Kind && k.Found.Bound == f.Found.Bound {
				alike = alike || sameTexts(k.Args, f.Args) && max(k.Found.SI-f.Found.SI, f.Found.SI-k.Found.SI) <= twins*max(k.Found.SI, f.Found.SI)
			}
			return alike && k.Code == f.Code && k.Path == f.Path && k.Severity == f.Severity
		})
		if !twin {
			kept = append(kept, f)
		}
	}
	m.out.Findings = kept
}

// sameTexts tells that two findings name the same things, whatever their figures.
func sameTexts(a, b []trace.Arg) bool {
	return slices.EqualFunc(a, b, func(x, y trace.Arg) bool { return x.Name == y.Name && x.Text == y.Text })
}
