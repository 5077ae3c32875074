package design

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/hydro"
	"plashet/engine/size"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// segments fills the tree of runs with the pipe that each may take.
func (m *model) segments(p *size.Problem, want Want) bool {
	before := len(m.out.Faults)
	order := m.treeOrder()
	if len(m.out.Faults) > before {
		return false
	}
	kinds := m.kinds(want.Kinds)
	if len(m.out.Faults) == before && p.Pairs != PairsNone && !m.legs(p, kinds) {
		p.Pairs = PairsNone
	}
	payer := m.payers()
	p.Segments = make([]size.Segment, len(m.job.Runs))
	for i := range m.job.Runs {
		p.Segments[i] = size.Segment{Name: m.job.Runs[i].Name, Parent: order[i], Choices: m.pipeChoices(i, kinds, payer)}
	}
	if want.Uniform {
		alike(p)
	}
	return len(m.out.Faults) == before
}

// treeOrder gives the run that each run goes on from, -1 for the pump. Runs stand
// in the job in any order; package size wants parents first, so the job's runs
// are put in that order.
func (m *model) treeOrder() []int {
	runs := slices.Clone(m.job.Runs)
	var sorted []job.Run
	var parents []int
	at := map[string]int{"pump": -1}
	for len(runs) > 0 {
		k := slices.IndexFunc(runs, func(r job.Run) bool { _, met := at[r.From]; return met })
		if k < 0 {
			m.fault("/runs", size.CodeTree, trace.Str("name", runs[0].Name))
			return nil
		}
		r := runs[k]
		runs = slices.Delete(runs, k, k+1)
		if _, twice := at[r.To]; twice {
			m.fault("/runs", CodeChooseLoop, trace.Str("name", r.To))
			return nil
		}
		parents = append(parents, at[r.From])
		at[r.To] = len(sorted)
		sorted = append(sorted, r)
	}
	own := *m.job
	own.Runs = sorted
	m.job = &own
	return parents
}

// kinds gives the kinds of pipe to choose from.
func (m *model) kinds(asked []string) (out []string) {
	add := func(kind string) {
		name, known := m.book.KindName(kind)
		if !known {
			m.fault("/runs", CodeChooseKind, trace.Str("name", kind))
		} else if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, k := range asked {
		add(k)
	}
	if len(asked) > 0 {
		return out
	}
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		if !r.Bore.IsZero() {
			continue
		}
		add(r.Pipe.Kind)
		if pipe, err := m.pipe(r.Pipe); err == nil && !pipe.Rigid {
			add(m.rigid())
		}
	}
	return out
}

// pipeChoices gives the pipe that a run may take, with what its pipe and fittings
// cost. A run whose bore was measured lies in the ground: it stays, and costs
// nothing; one that is there already may stay at no cost. The valve is set anew, so its present setting is left out.
func (m *model) pipeChoices(i int, kinds []string, payer map[string]string) (out []size.Choice) {
	drawn := m.job.Runs[i]
	if !drawn.Bore.IsZero() {
		if c, ok := m.pipeChoice(i, drawn); ok {
			return []size.Choice{c}
		}
		_, _, _ = m.run(i) // tells the fault
		return nil
	}
	lacking, left := "", 0
	if drawn.Existing { // it may stay
		if c, ok := m.pipeChoice(i, drawn); ok {
			out = append(out, c)
		}
	}
	for _, kind := range kinds {
		for _, s := range m.book.PipeSizes(kind) {
			r := drawn
			r.Pipe, r.Existing = job.PipeName{Kind: kind, Size: s}, false
			if drawn.Existing && m.named(r.Pipe) == m.named(drawn.Pipe) {
				continue
			}
			if m.named(drawn.Pipe).Kind != kind {
				r.C, r.Roughness = job.Ratio{}, job.Length{}
			}
			c, ok := m.pipeChoice(i, r)
			if !ok {
				continue // its fittings are not made in this size
			}
			if m.unpriced {
				c.Cost = rankOf(c.Length, c.Bore)
				out = append(out, c)
				continue
			}
			cost, missing := m.runPrice(&r, payer)
			if missing != "" {
				if left++; lacking == "" {
					lacking = missing
				}
				continue
			}
			c.Cost = costOf(cost)
			out = append(out, c)
		}
	}
	args := []trace.Arg{trace.Str("name", drawn.Name), trace.Str("item", lacking), trace.Num("count", unit.Ratio(left), unit.KindCount)}
	switch {
	case len(out) == 0:
		m.fault(at("/runs", i), size.CodeChoice, args[:1]...)
	case left > 0:
		m.find(trace.Finding{Message: trace.Message{Code: FindChooseLeft, Args: args}, Path: at("/runs", i), Severity: trace.Info})
	}
	return out
}

// pipeChoice makes the laws of a run with another pipe.
func (m *model) pipeChoice(i int, r job.Run) (size.Choice, bool) {
	t, own := m.trial(), *m.job
	own.Runs = slices.Clone(own.Runs)
	r.Throttle = job.Ratio{}
	own.Runs[i] = r
	t.job = &own
	parts, pp, ok := t.run(i)
	if !ok {
		return size.Choice{}, false
	}
	c := size.Choice{Name: r.Pipe.Kind + " " + r.Pipe.Size, Bore: pp.bore, Length: pp.length, Pipe: parts[0].Law}
	var fittings []hydro.Law
	for _, x := range parts[1:] {
		if x.Law != nil {
			fittings = append(fittings, x.Law)
		}
	}
	for _, l := range pp.losses {
		if l.Opens > 0 {
			m.valves[r.Name+"\n"+c.Name] = checked{l.Name, l.Rest, pp.bore, l.Opens}
		}
	}
	if len(fittings) == 1 {
		c.Fittings = fittings[0] // fittings and valve setting share one law
	}
	return c, true
}

// payers tells, for a part with several ways through it, which way pays for it:
// the one that the runs name most often, as runParts counts; of two named alike
// often the one that goes straight through ("tee run" before "tee branch").
func (m *model) payers() map[string]string {
	count := map[job.PipeName]int{} // by part, and way as its size
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		for _, f := range r.Fittings {
			n := m.fitted(f.Fitting, f.Size, r.Pipe)
			count[job.PipeName{Kind: n.Part, Size: n.Fitting}] += max(1, f.Count)
		}
	}
	before := func(a, b job.PipeName) bool {
		straight := func(way job.PipeName) int {
			if strings.HasSuffix(way.Size, " run") {
				return 0
			}
			return 1
		}
		return cmp.Or(cmp.Compare(count[b], count[a]), cmp.Compare(straight(a), straight(b)), strings.Compare(a.Size, b.Size)) < 0
	}
	pays := map[string]string{}
	for way := range count {
		if best, met := pays[way.Kind]; !met || before(way, job.PipeName{Kind: way.Kind, Size: best}) {
			pays[way.Kind] = way.Size
		}
	}
	return pays
}

// runPrice adds up the prices of a run's pipe and fittings, or names the first
// item that has none.
func (m *model) runPrice(r *job.Run, payer map[string]string) (sum decimal.Decimal, missing string) {
	name := m.named(r.Pipe)
	sum, ok := m.pipeCost(m.priced, name, r.Length.SI)
	if !ok {
		return sum, name.Kind + " " + name.Size
	}
	_, joined, _ := m.couplings(m.priced, name, r.Length.SI)
	sum = sum.Add(joined)
	for _, f := range r.Fittings {
		n := m.fitted(f.Fitting, f.Size, r.Pipe)
		if payer[n.Part] != n.Fitting || !m.book.HasFitting(f.Fitting) && m.endLoss(f.Fitting, n.Size) {
			continue
		}
		each, ok := priceOf(m.priced, job.PipeName{Kind: n.Part, Size: n.Size}, unit.Value{})
		if !ok {
			return sum, n.Part + ", " + n.Size
		}
		sum = sum.Add(each.Amount.Amount.Mul(decimal.NewFromInt(int64(max(1, f.Count)))))
	}
	return sum, ""
}

// alike leaves each run with several choices only those that all such runs
// have, in one order, so that one can run through.
func alike(p *size.Problem) {
	has := func(s *size.Segment, name string) int {
		return slices.IndexFunc(s.Choices, func(c size.Choice) bool { return c.Name == name })
	}
	var common []string
	for i := range p.Segments {
		if s := &p.Segments[i]; len(s.Choices) > 1 && common == nil {
			for k := range s.Choices {
				common = append(common, s.Choices[k].Name)
			}
		}
	}
	for i := range p.Segments {
		if s := &p.Segments[i]; len(s.Choices) > 1 {
			common = slices.DeleteFunc(common, func(name string) bool { return has(s, name) < 0 })
		}
	}
	for i := range p.Segments {
		s := &p.Segments[i]
		if len(s.Choices) < 2 {
			continue
		}
		kept := make([]size.Choice, 0, len(common))
		for _, name := range common {
			kept = append(kept, s.Choices[has(s, name)])
		}
		s.Choices = kept
	}
}
