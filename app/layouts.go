package app

import (
	"bytes"
	"context"
	"html/template"
	"math"
	"net/http"
	"slices"
	"strconv"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/arrange"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/job"
	"plashet/render/svg"
)

const runLayouts = "layouts"

// sought is a search that is done, in nobody's language.
type sought struct {
	a      *design.Arranging
	job    *job.Job
	faults []trace.Fault
	elbows int
}

// laidOut is what a search for layouts found, ready for the page.
type laidOut struct {
	a      *design.Arranging
	doc    answer.ArrangedDocument
	elbows int
	plans  []plan
	mends  []mend
}

// plan is one layout beside the others.
type plan struct {
	answer.ArrangedPlan
	Number   int
	Sheet    template.HTML
	Cost     string
	Best     map[string]bool // in which columns no other is better
	Straight bool            // it lifts out without a slide
}

// mend is one size changed so that a layout fits, with what it changes.
type mend struct {
	answer.ArrangedMend
	Number  int
	Changes []change
}

type change struct{ Where, Was, New string }

type layoutsBody struct {
	ID     string
	Base   int
	Beside beside
	Found  *laidOut
	Doc    *answer.ArrangedDocument
	Plans  []plan
	Mends  []mend
	More   int // layouts that are not shown
	Elbows int
	Hosed  bool  // a layout shown has a hose
	Most   []int // elbows to choose from
	Kept   bool  // the job's assembly is one that was kept
	Drawn  bool  // there is an assembly, kept or not
	Gone   bool  // runs are not kept here
}

// How many layouts stand beside each other, and how many elbows are looked at.
const (
	shownPlans  = 6
	usualElbows = 4
)

var elbows = []int{2, 3, 4, 5, 6}

// layouts shows the layouts for the vault side by side, or how far the search is.
func (a *app) layouts(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := layoutsBody{ID: o.rev.ID, Base: o.rev.Number, Elbows: usualElbows, Most: elbows, Kept: len(o.job.Assembly.Kept.Pieces) > 0, Drawn: len(o.job.Assembly.Parts) > 0, Gone: a.Runs == nil}
	var found any
	b.Beside, found = a.look(runLayouts, o)
	if s, ok := found.(*sought); ok {
		x := a.laidOut(s.a, s.job, s.faults, s.elbows)
		b.Found, b.Doc, b.Plans, b.Mends, b.Elbows = x, &x.doc, x.plans, x.mends, x.elbows
		b.More = len(x.doc.Layouts) - len(x.plans)
		b.Hosed = slices.ContainsFunc(x.plans, func(p plan) bool { return p.Hoses > 0 })
	}
	h := a.heading(o, "vault")
	if h.Onward.Step == "layout" { // it is being given here
		h.Onward.Step = ""
	}
	a.show(w, r, http.StatusOK, "layouts", a.say("app.layouts.title"), h, b)
	return nil
}

// findLayouts begins the search.
func (a *app) findLayouts(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, err := a.open(r)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PostFormValue("elbows"))
	if err != nil || !slices.Contains(elbows, n) {
		n = usualElbows
	}
	if !a.seek(o, n) {
		return a.refuse(http.StatusServiceUnavailable, "app.error.busy")
	}
	see(w, r, "/jobs/"+o.rev.ID+"/layouts")
	return nil
}

// seek searches beside the pages.
func (a *app) seek(o *opened, n int) bool {
	j, faults := o.job, o.faults
	return a.begin(runLayouts, o, func(ctx context.Context, tell func(string)) any {
		found := design.Arrange(ctx, a.Book, j, design.ArrangeWant{Elbows: n}, func(p arrange.Progress) { tell(answer.Progress(p, a.Language)) }, faults...)
		return &sought{found, j, faults, n}
	})
}

// laidOut makes what the page shows of a search.
func (a *app) laidOut(found *design.Arranging, j *job.Job, faults []trace.Fault, n int) *laidOut {
	x := &laidOut{a: found, doc: answer.BuildArranged(found, faults, a.Language), elbows: n}
	for i := range x.doc.Layouts[:min(len(x.doc.Layouts), shownPlans)] {
		p := plan{ArrangedPlan: x.doc.Layouts[i], Number: i + 1}
		p.Straight = p.Slide.SI <= 0 && p.Lean == nil
		if p.ArrangedPlan.Cost != nil && x.doc.Currency != "" {
			p.Cost = found.Money(*p.ArrangedPlan.Cost).Format(found.Style)
		}
		if s, ok := drawing.LayoutAlone(j, found, i, drawing.CornerFor(j.Vault.Outlet.Wall), a.Language); ok {
			var b bytes.Buffer
			if svg.Inline(&b, &s) == nil {
				p.Sheet = template.HTML(b.String()) //nolint:gosec // written by render/svg, which escapes every text
			}
		}
		x.plans = append(x.plans, p)
	}
	best(x.plans)
	for i, s := range x.doc.Short {
		m := mend{ArrangedMend: s, Number: i}
		next, _ := apply(j, mends(found, j, i))
		old := entries(j)
		for path, text := range next.Entries() {
			if old[path] != text {
				m.Changes = append(m.Changes, change{a.where(j, path), old[path], text})
			}
		}
		x.mends = append(x.mends, m)
	}
	return x
}

// best marks in each respect the layouts that no other of those shown beats.
func best(plans []plan) {
	respects := map[string]func(p *plan) float64{
		"head": func(p *plan) float64 { return p.Head.SI }, "joints": func(p *plan) float64 { return float64(p.Joints) },
		"elbows": func(p *plan) float64 { return float64(p.Elbows) }, "slide": func(p *plan) float64 { return p.Slide.SI },
		"deep": func(p *plan) float64 {
			if p.Deep == nil {
				return 0
			}
			return p.Deep.SI
		},
		"released": func(p *plan) float64 {
			if w := &p.Stands.Water; w.Order == "noValve" || w.Order == "valveFirst" && !w.RunKnown {
				return math.Inf(1) // what is known of it is not all
			}
			return p.Released.SI
		},
		"cost": func(p *plan) float64 {
			if p.ArrangedPlan.Cost == nil {
				return 0
			}
			return *p.ArrangedPlan.Cost
		},
	}
	for i := range plans {
		plans[i].Best = map[string]bool{}
	}
	if len(plans) < 2 {
		return
	}
	for name, of := range respects {
		least, most := of(&plans[0]), of(&plans[0])
		for i := range plans {
			least, most = min(least, of(&plans[i])), max(most, of(&plans[i]))
		}
		count := 0
		for i := range plans {
			if of(&plans[i]) <= least {
				count++
			}
		}
		for i := range plans { // what most of them share tells nothing
			plans[i].Best[name] = most > least && 2*count <= len(plans) && of(&plans[i]) <= least
		}
	}
}

// mends gives a change of what is short as edits of the job.
func mends(found *design.Arranging, j *job.Job, n int) (list []edit) {
	for _, e := range found.Mend(j, n) {
		list = append(list, edit{e.Path, e.Text})
	}
	return list
}

// stopLayouts ends the search with the best so far.
func (a *app) stopLayouts(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	if a.Runs != nil {
		a.Runs.Stop(key(runLayouts, o))
	}
	see(w, r, "/jobs/"+o.rev.ID+"/layouts")
	return nil
}

// keepLayout writes a layout into the job, or the assembly as it is drawn, with
// the record that later changes are held against.
func (a *app) keepLayout(w http.ResponseWriter, r *http.Request) error {
	o, found, err := a.found(r)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PostFormValue("layout"))
	if err != nil || found == nil {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.layout")
	}
	next, faults := found.a.Keep(a.Book, o.job, n-1)
	if next == nil {
		return refusal{status: http.StatusUnprocessableEntity, text: a.faultText(o, faults[0])}
	}
	return a.keep(w, r, o, next, a.say("app.change.layout", "number", strconv.Itoa(n)))
}

// keepDrawn keeps the assembly as it is drawn.
func (a *app) keepDrawn(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	next, faults := design.KeepDrawn(a.Book, o.job)
	if next == nil {
		return refusal{status: http.StatusUnprocessableEntity, text: a.faultText(o, faults[0])}
	}
	return a.keep(w, r, o, next, a.say("app.change.drawn"))
}

// keep saves a job with what is kept in it. A field that could not be read would
// be lost with it.
func (a *app) keep(w http.ResponseWriter, r *http.Request, o *opened, next *job.Job, what string) error {
	if len(o.faults) > 0 {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.unread")
	}
	return a.saveAs(w, r, o, next, what)
}

// takeMend writes a change of what is short into the job and searches again.
func (a *app) takeMend(w http.ResponseWriter, r *http.Request) error {
	o, found, err := a.found(r)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PostFormValue("mend"))
	if err != nil || found == nil {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.layout")
	}
	list := mends(found.a, o.job, n)
	next, faults := apply(o.job, list)
	if len(list) == 0 || len(faults) > 0 {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.layout")
	}
	what := a.describe(o.job, next)
	if err := a.put(r, o.rev.ID, o.rev.Number, next, what); err != nil {
		return a.stale(err)
	}
	if again, err := a.open(r); err == nil {
		a.seek(again, found.elbows)
	}
	see(w, r, "/jobs/"+o.rev.ID+"/layouts")
	return nil
}

// found reads a form with the job and the search that it is about; nil where the
// search is gone. What was found for another state of the job is refused.
func (a *app) found(r *http.Request) (*opened, *sought, error) {
	o, err := a.current(r)
	if err != nil {
		return nil, nil, err
	}
	b, value := a.look(runLayouts, o)
	if b.Stale {
		return nil, nil, a.refuse(http.StatusConflict, "app.error.stalelayout")
	}
	x, _ := value.(*sought)
	return o, x, nil
}
