package design

import (
	"context"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
)

// Arrange searches for the layouts of the plumbing in the vault that no other
// beats; see package arrange. The search goes on until it is done or the
// context is done; what it has then is told as what it is. Progress is told
// while it runs, from one goroutine at a time. Unread are the faults of reading
// the job, as with Solve.
func Arrange(ctx context.Context, book *catalog.Book, j *job.Job, want ArrangeWant, tell func(arrange.Progress), unread ...trace.Fault) *Arranging {
	m := modelFor(book, j)
	m.unread = unread
	a := &Arranging{Name: j.Name, Note: j.Note, Units: j.System(), Style: j.Style(), Currency: j.Site.Currency}
	if m.start() && m.arranging(a, want) {
		out := arrange.Search(ctx, a.Input, tell)
		a.Outcome, a.Stopped = &out, ctx.Err() != nil
		m.arranged(a)
	}
	a.Findings, a.Assumptions = append(a.Findings, m.out.Findings...), append(a.Assumptions, m.out.Assumptions...)
	a.Faults = append(a.Faults, m.out.Faults...)
	return a
}

// arranged takes over what the search says beside its layouts, and adds up what
// they cost.
func (m *model) arranged(a *Arranging) {
	for _, f := range a.Outcome.Faults {
		if f.Code == arrange.FaultOverlap { // both are kept clear of as they are entered
			m.remark(f.Path, trace.Caution, trace.Message{Code: FindOverlap, Args: f.Args})
			continue
		}
		m.fault(f.Path, f.Code, f.Args...)
	}
	a.Outcome.Faults = slices.DeleteFunc(a.Outcome.Faults, func(f trace.Fault) bool { return f.Code == arrange.FaultOverlap })
	a.tellInsteads()
	m.tellHose(a)
	for i := range a.Outcome.Layouts {
		l := &a.Outcome.Layouts[i]
		l.Worth.Cost, l.Worth.Priced = a.cost(l)
		_, said, _ := layout.Lay(l.Chain)
		plan, more, _ := glue.Order(m.gluing(l.Chain.Parts, l.Laid))
		a.Told = append(a.Told, LaidOut{slices.Concat(said, more), plan})
	}
}
