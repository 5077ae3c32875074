package app

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// newPump puts a pump on the shelf.
func (a *app) newPump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	units := "us"
	if r.PostFormValue("units") == "metric" {
		units = "metric"
	}
	blank := keep.Pump{Job: blankPump(units)}
	list := edits(r.PostForm)
	next, faults := retype(blank.Job, list)
	if next.Pumps[0].Name == "" && !slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Path == "/pumps/0/name" }) {
		if f := next.Set("/pumps/0/name", ""); f != nil {
			faults = append(faults, *f)
		}
	}
	if len(faults) > 0 {
		a.showPump(w, r, http.StatusUnprocessableEntity, blank, 0, list, faults)
		return nil
	}
	id := a.NewID()
	if _, err := keep.SavePump(r.Context(), a.Store, id, 0, next, a.change(r, a.say("app.pump.put"))); err != nil {
		return err
	}
	see(w, r, "/pumps/"+id)
	return nil
}

func (a *app) change(r *http.Request, what string) store.Change {
	who := a.Device(r).Who
	if ForOthers(r) {
		who, _ = a.asker(r) // held against what it may be before
	}
	return store.Change{Who: who, When: a.Now(), What: what}
}

// retype sets what a form says on a copy of a pump. The points of the curve are
// one field: the rows that hold anything, from above to below.
func retype(p *job.Job, list []edit) (*job.Job, []trace.Fault) {
	var plain, rows []edit
	for _, e := range list {
		switch {
		case strings.HasPrefix(e.path, "/pumps/0/curve/"):
			rows = append(rows, e)
		case e.path == "/site/currency", strings.HasPrefix(e.path, "/pumps/0/") && !shelf.Local(strings.TrimPrefix(e.path, "/pumps/0/")):
			plain = append(plain, e)
		}
	}
	// The currency first: the price is read in it.
	slices.SortStableFunc(plain, func(a, b edit) int { return strings.Compare(b.path, a.path) })
	next, faults := apply(p, changed(p, plain))
	if len(changed(p, rows)) > 0 {
		faults = append(faults, recurve(next, rows)...)
	}
	next.Name = next.Pumps[0].Name
	return next, faults
}

// recurve writes the points anew.
func recurve(next *job.Job, rows []edit) (faults []trace.Fault) {
	texts := map[int]map[string]string{}
	for _, e := range rows {
		number, end, _ := strings.Cut(strings.TrimPrefix(e.path, "/pumps/0/curve/"), "/")
		if n, err := strconv.Atoi(number); err == nil && n >= 0 && e.text != "" {
			if texts[n] == nil {
				texts[n] = map[string]string{}
			}
			texts[n][end] = e.text
		}
	}
	var order []int
	for n := range texts {
		order = append(order, n)
	}
	slices.Sort(order)
	next.Pumps[0].Curve = nil
	for i, n := range order {
		for _, end := range []string{"flow", "head", "watts"} {
			if text := texts[n][end]; text != "" || end != "watts" {
				if f := next.Set("/pumps/0/curve/"+itoa(i)+"/"+end, text); f != nil {
					f.Path = "/pumps/0/curve/" + itoa(n) + "/" + end
					faults = append(faults, *f)
				}
			}
		}
	}
	return faults
}

// setPump changes a pump. Upon a newer state than the form's the change is put
// there where it touches other fields; a field that both changed is shown.
func (a *app) setPump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	p, err := a.openPump(r)
	if err != nil {
		return err
	}
	list := edits(r.PostForm)
	was := p.Job
	if n := base(r); n != p.Rev.Number {
		rev, err := a.Store.At(r.Context(), p.Rev.ID, n)
		if err != nil {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		old, err := keep.At(rev)
		if err != nil {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		was = old.Job
	}
	mine := ownEdits(was, list)
	next, faults := retype(p.Job, mine)
	if was != p.Job {
		if clash := a.clashes(was, p.Job, next, mine); len(clash) > 0 {
			a.showPump(w, r, http.StatusConflict, p, p.Rev.Number, mine, clash)
			return nil
		}
	}
	if len(faults) > 0 {
		a.showPump(w, r, http.StatusUnprocessableEntity, p, p.Rev.Number, list, faults)
		return nil
	}
	what := a.describe(p.Job, next)
	if what != "" {
		if _, err := keep.SavePump(r.Context(), a.Store, p.Rev.ID, p.Rev.Number, next, a.change(r, what)); err != nil {
			return a.stale(err)
		}
	}
	see(w, r, "/pumps/"+p.Rev.ID)
	return nil
}

// ownEdits keeps what a form changed against the state it was made on; of the
// curve all rows or none.
func ownEdits(was *job.Job, list []edit) []edit {
	curve := slices.ContainsFunc(changed(was, list), func(e edit) bool { return strings.HasPrefix(e.path, "/pumps/0/curve/") })
	var out []edit
	for _, e := range list {
		if strings.HasPrefix(e.path, "/pumps/0/curve/") {
			if curve {
				out = append(out, e)
			}
		} else if len(changed(was, []edit{e})) > 0 {
			out = append(out, e)
		}
	}
	return out
}

// clashes tells the fields that this form and another save both changed, to
// something else.
func (a *app) clashes(was, now, next *job.Job, mine []edit) []trace.Fault {
	old, theirs, ours := entries(was), entries(now), entries(next)
	var out []trace.Fault
	for _, e := range mine {
		if old[e.path] != theirs[e.path] && ours[e.path] != theirs[e.path] {
			out = append(out, trace.Fault{Path: e.path, Message: trace.Message{Code: "app.pump.clash", Args: []trace.Arg{trace.Str("now", theirs[e.path])}}})
		}
	}
	return out
}

// archivePump puts a pump aside, or takes it back.
func (a *app) archivePump(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	p, err := a.openPump(r)
	if err != nil {
		return err
	}
	if _, err = a.lay(r, p.Rev, base(r), !p.Rev.Archived); err != nil {
		return a.stale(err)
	}
	see(w, r, "/pumps")
	return nil
}

// lay puts a pump aside, or takes it back.
func (a *app) lay(r *http.Request, rev store.Revision, base int, aside bool) (store.Revision, error) {
	what := "app.change.aside"
	if !aside {
		what = "app.change.back"
	}
	c := a.change(r, a.say(what))
	c.Data, c.Summary = rev.Data, rev.Summary
	return a.Store.Archive(r.Context(), rev.ID, base, aside, c)
}
