package app

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// onward is the way to the cut list as the pages of a job show it.
type onward struct {
	Step   string // to give next; "" where all is given
	Number int    // of that step
	Of     int
}

// guideLine is a step in the list of all of them.
type guideLine struct {
	Code       string
	Done, Here bool
}

type guideBody struct {
	ID, Code, Key string
	Base          int
	Number, Of    int
	Tally         tally
	Last          string
	Inputs        []input
	Pairs         []pair // points of a curve
	Options       []datalist
	Steps         []guideLine
	Later         string // the step to go on to without this one; "" for none
	Faults        int
	Unfit         bool // it was taken, but does not go with the rest or is not known
}

// pair is two fields that stand side by side.
type pair struct{ A, B input }

// onward finds what a job is to be given next.
func (a *app) onward(j *job.Job) onward {
	n := onward{Of: len(guideSteps)}
	if i := slices.IndexFunc(guideSteps, func(s guideStep) bool { return !s.done(j) }); i >= 0 {
		n.Step, n.Number = guideSteps[i].Code, i+1
	}
	return n
}

// guideNext goes to the step that is to be given next; behind the last to the cuts.
func (a *app) guideNext(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	see(w, r, openStep(o.rev.ID, o.job, -1))
	return nil
}

// openStep gives the address of the first open step behind one, else of the first
// of all; of the cuts where all is given.
func openStep(id string, j *job.Job, n int) string {
	for _, from := range []int{n, -1} {
		if k := later(j, from); k >= 0 {
			return "/jobs/" + id + "/next/" + guideSteps[k].Code
		}
	}
	return "/jobs/" + id + "/part/cuts"
}

// guideAt finds the job and the step that a request names.
func (a *app) guideAt(r *http.Request) (*opened, int, error) {
	o, err := a.open(r)
	if err != nil {
		return nil, 0, err
	}
	n := slices.IndexFunc(guideSteps, func(s guideStep) bool { return s.Code == r.PathValue("step") })
	if n < 0 {
		return nil, 0, errNoPage
	}
	return o, n, nil
}

// guide shows one step: what it asks for, and nothing else.
func (a *app) guide(w http.ResponseWriter, r *http.Request) error {
	o, n, err := a.guideAt(r)
	if err != nil {
		return err
	}
	a.guidePage(w, r, o, n, http.StatusOK, nil, nil)
	return nil
}

// guideSet takes the answers of a step and goes on to the next that is open.
func (a *app) guideSet(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, n, err := a.guideAt(r)
	if err != nil {
		return err
	}
	s := &guideSteps[n]
	list := s.answers(o.job, r)
	for _, e := range list { // a merge reads the form again
		r.PostForm.Set(e.path, e.text)
	}
	if base(r) != o.rev.Number {
		return a.merge(w, r, o, list)
	}
	sets := slices.DeleteFunc(s.sets(a, o.job), func(e edit) bool { return given(o.job, e.path) != "" })
	next, faults := apply(o.job, append(sets, list...))
	faults = append(faults, s.missing(next, list, faults)...)
	if len(faults) > 0 {
		a.guidePage(w, r, o, n, http.StatusUnprocessableEntity, list, faults)
		return nil
	}
	if next.Use == "" && len(next.Pumps) > 1 { // the pump asked for is the one in use
		next.Use = next.Pumps[pumpAt(o.job)].Name
	}
	moved, err := a.record(w, r, o, next, a.describe(o.job, next))
	if err != nil || moved {
		return err
	}
	data, err := job.Encode(next)
	if err != nil {
		return err
	}
	if k := unfitStep(o.solved, a.solve(digest(data), data), n); k >= 0 {
		see(w, r, "/jobs/"+o.rev.ID+"/next/"+guideSteps[k].Code)
		return nil
	}
	see(w, r, openStep(o.rev.ID, next, n))
	return nil
}

// unfitStep finds the step to stay at, or to go back to: the one taken where
// something of it does not fit, else the first in which something has come up that
// did not before (an unknown pipe is seen when there is a pump); -1 for none.
func unfitStep(before, now *solved, n int) int {
	if len(guideSteps[n].unfit(now)) > 0 {
		return n
	}
	return slices.IndexFunc(guideSteps, func(s guideStep) bool {
		known := s.unfit(before)
		for path := range s.unfit(now) {
			if _, ok := known[path]; !ok {
				return true
			}
		}
		return false
	})
}

// unfit gives the faults that working a job out found in what a step asks for, by
// the path of the field: the first of those that a fault is about.
func (s *guideStep) unfit(o *solved) map[string]string {
	list := map[string]string{}
	for _, f := range o.doc.Faults {
		i := slices.IndexFunc(s.Gives, func(g need) bool { return about(f.Path, g.at(o.job)) })
		if i >= 0 {
			list[s.Gives[i].at(o.job)] = f.Text
		}
	}
	return list
}

// about tells that a fault is about a field: its own, or that of what the field is
// part of (a pipe, a curve). One of a whole run or pump has many causes, told elsewhere.
func about(fault, path string) bool {
	if fault == path {
		return true
	}
	_, err := strconv.Atoi(fault[strings.LastIndexByte(fault, '/')+1:])
	return fault != "" && err != nil && strings.HasPrefix(path, fault+"/")
}

// later finds the first open step behind one; -1 for none.
func later(j *job.Job, n int) int {
	for k := n + 1; k < len(guideSteps); k++ {
		if !guideSteps[k].done(j) {
			return k
		}
	}
	return -1
}

func (s *guideStep) sets(a *app, j *job.Job) []edit {
	if s.Sets == nil {
		return nil
	}
	return s.Sets(a, j)
}

// answers reads what was typed into a step. A bare height counts from the water
// line; what the shape chosen has no use for is emptied.
func (s *guideStep) answers(j *job.Job, r *http.Request) (list []edit) {
	if s.Code == "pump" {
		closeUp(j, r)
	}
	for _, g := range s.Gives {
		path := g.at(j)
		text := g.taped(j, strings.TrimSpace(r.PostFormValue(path)))
		if text != "" && !strings.HasPrefix(text, "@") {
			text = g.fromWater(text)
		}
		if text != given(j, path) {
			list = append(list, edit{path, text})
		}
	}
	if s.Needless != nil {
		next, _ := apply(j, list)
		for i, g := range s.Gives {
			if path := g.at(j); s.Needless(next, s.Gives[i].Code) && given(next, path) != "" {
				list = append(slices.DeleteFunc(list, func(e edit) bool { return e.path == path }), edit{path, ""})
			}
		}
	}
	return list
}

// closeUp moves the points of a curve that were typed up over rows left empty,
// for a list has no gaps.
func closeUp(j *job.Job, r *http.Request) {
	at := func(i int, what string) string {
		return "/pumps/" + itoa(pumpAt(j)) + "/curve/" + itoa(i) + "/" + what
	}
	n := 0
	for i := range curveRows {
		flow, head := r.PostFormValue(at(i, "flow")), r.PostFormValue(at(i, "head"))
		r.PostForm.Set(at(i, "flow"), "")
		r.PostForm.Set(at(i, "head"), "")
		if strings.TrimSpace(flow+head) != "" {
			r.PostForm.Set(at(n, "flow"), flow)
			r.PostForm.Set(at(n, "head"), head)
			n++
		}
	}
}

// missing names what a step needs and was not told.
func (s *guideStep) missing(next *job.Job, typed []edit, faults []trace.Fault) (list []trace.Fault) {
	if s.Done != nil && s.Done(next) {
		return nil
	}
	for _, g := range s.Gives {
		path := g.at(next)
		bad := slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Path == path })
		text := given(next, path)
		if i := slices.IndexFunc(typed, func(e edit) bool { return e.path == path }); i >= 0 {
			text = typed[i].text
		}
		if g.Must && !bad && text == "" && (s.Needless == nil || !s.Needless(next, g.Code)) {
			list = append(list, trace.Fault{Message: trace.Message{Code: "app.guide.missing"}, Path: path})
		}
	}
	return list
}

// guidePage shows a step, with what was typed and not taken.
func (a *app) guidePage(w http.ResponseWriter, r *http.Request, o *opened, n, status int, typed []edit, faults []trace.Fault) {
	s := &guideSteps[n]
	b := guideBody{
		ID: o.rev.ID, Code: s.Code, Key: "", Base: o.rev.Number, Number: n + 1, Of: len(guideSteps), Tally: a.tally(o.solved, o.rev.ID, nil),
		Last: o.rev.What, Options: a.datalists(o.job), Faults: len(faults),
	}
	x := a.former(o, nil, typed, faults)
	if len(faults) == 0 {
		x.faults = s.unfit(o.solved)
		b.Unfit = len(x.faults) > 0
	}
	var list []input
	for _, g := range s.Gives {
		list = append(list, a.giveInput(x, g))
	}
	if s.Code == "pump" { // a name, then points of two fields each, told as short as a phone is wide
		for i := 1; i+1 < len(list); i += 2 {
			for k := i; k < i+2; k++ {
				list[k].Title = a.say("app.guide.point", "what", list[k].Title, "number", itoa((i+1)/2), "unit", list[k].Suffix)
				list[k].Suffix, list[k].Must = "", false
			}
			b.Pairs = append(b.Pairs, pair{list[i], list[i+1]})
		}
		list = list[:1]
	}
	b.Inputs = list
	for i := range guideSteps {
		b.Steps = append(b.Steps, guideLine{guideSteps[i].Code, guideSteps[i].done(o.job), i == n})
	}
	if k := later(o.job, n); k >= 0 {
		b.Later = guideSteps[k].Code
	}
	a.show(w, r, status, "guide", a.say("app.guide."+s.Code), a.heading(o, "next"), b)
}

// giveInput makes the field of what is asked for: in the guide's words, without
// the water line that a height is said from.
func (a *app) giveInput(x *former, g need) input {
	path := g.at(x.j)
	in := x.input(fieldAt(x.j, path))
	in.Path, in.Must, in.Stepper, in.Title, in.Hint = path, g.Must, false, a.say("app.ask."+g.Code), ""
	if code := "app.askhint." + g.Code; a.Language.Has(code) {
		in.Hint = a.Language.Word(code)
	}
	in.Value = strings.TrimPrefix(in.Value, g.Before)
	if u := g.unit(x.j); u != "" {
		if g.taped(x.j, in.Value) != in.Value { // typed bare on the part's page, where another unit goes with it
			in.Value += " " + in.Suffix
		}
		in.Suffix = u
	}
	if e := map[bool]string{true: g.Metric, false: g.US}[x.j.System().Is(unit.Metric)]; e != "" {
		in.Example = e
	}
	if in.Value == "" && (g.Code == "skind" || g.Code == "ssize") && len(x.j.Runs) > 0 {
		in.Value = map[string]string{"skind": x.j.Runs[0].Pipe.Kind, "ssize": x.j.Runs[0].Pipe.Size}[g.Code]
	}
	return in
}
