package app

import (
	"errors"
	"net/http"
	"strconv"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/store"
)

// side is one field of a job that two people changed, or one of them.
type side struct {
	Path, Where       string
	Was, Mine, Theirs string
	Clash             bool // both changed it
}

type staleBody struct {
	ID, Here string
	Number   int // the newest revision
	Who      string
	When     string
	What     string
	Mine     []side // fields of this form; each can be taken or left
	Theirs   []side // what the others changed beside
}

// merge shows both sides of a save that started from an older revision, and
// offers each field anew upon the newest. Nothing is saved.
func (a *app) merge(w http.ResponseWriter, r *http.Request, o *opened, list []edit) error {
	newest, err := a.open(r)
	if err != nil {
		return err
	}
	from := base(r)
	rev, err := a.Store.At(r.Context(), o.rev.ID, from)
	if err != nil {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	was, _ := job.Read(rev.Data)
	if was == nil {
		was = &job.Job{Units: newest.job.Units}
	}
	list = changed(was, list)
	b := staleBody{
		ID: o.rev.ID, Here: here(r), Number: newest.rev.Number, Who: newest.rev.Who,
		When: newest.rev.When.Format("2 Jan 2006 15:04"), What: newest.rev.What,
	}
	old, now := entries(was), entries(newest.job)
	mine := map[string]bool{}
	for _, e := range list {
		mine[e.path] = true
		b.Mine = append(b.Mine, side{e.path, a.where(newest.job, e.path), old[e.path], e.text, now[e.path], now[e.path] != old[e.path]})
	}
	for path, text := range newest.job.Entries() {
		if old[path] != text && !mine[path] {
			b.Theirs = append(b.Theirs, side{path, a.where(newest.job, path), old[path], "", text, false})
		}
	}
	for path, text := range old {
		if _, stays := now[path]; !stays && !mine[path] {
			b.Theirs = append(b.Theirs, side{path, a.where(was, path), text, "", "", false})
		}
	}
	a.show(w, r, http.StatusConflict, "stale", a.say("app.stale.title"), a.heading(newest, b.Here), b)
	return nil
}

// comeBack returns to an earlier revision, as a new one.
func (a *app) comeBack(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, err := a.open(r)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PostFormValue("number"))
	if err != nil || n < 1 || n > o.rev.Number {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.revision")
	}
	return a.bring(w, r, o, n, 0, "")
}

// bring puts an earlier revision on top; as an undo with the state that it goes
// back to, else 0. What is said of it is worked out where it is empty.
func (a *app) bring(w http.ResponseWriter, r *http.Request, o *opened, number, back int, what string) error {
	if base(r) != o.rev.Number {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	rev, err := a.Store.At(r.Context(), o.rev.ID, number)
	if err != nil {
		return err
	}
	j, _ := job.Read(rev.Data)
	if j == nil {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.revision")
	}
	if what == "" {
		what = a.say("app.change.returned", "number", strconv.Itoa(number), "what", a.describe(o.job, j))
	}
	if err := a.putBack(r, o.rev.ID, o.rev.Number, rev.Data, what, back); err != nil {
		return a.stale(err)
	}
	path := "/jobs/" + o.rev.ID
	if p := here(r); p != "" {
		path += "/part/" + p
	}
	see(w, r, path)
	return nil
}

type pastLine struct {
	Number          int
	Who, When, What string
	Newest          bool
}

type historyBody struct {
	ID    string
	Base  int
	Lines []pastLine
	More  int // the revision from which the next page goes on; 0 for none
}

func (a *app) history(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	before, _ := strconv.Atoi(r.URL.Query().Get("before"))
	const most = 60
	past, err := a.Store.History(r.Context(), o.rev.ID, max(before, 0), most)
	if err != nil {
		return err
	}
	b := historyBody{ID: o.rev.ID, Base: o.rev.Number}
	for _, p := range past {
		b.Lines = append(b.Lines, pastLine{p.Number, p.Who, p.When.Format("2 Jan 2006 15:04"), p.What, p.Number == o.rev.Number})
	}
	if len(past) == most && past[most-1].Number > 1 {
		b.More = past[most-1].Number
	}
	a.show(w, r, http.StatusOK, "history", a.say("app.history.title"), a.heading(o, "history"), b)
	return nil
}

// past shows the answer of an earlier revision.
func (a *app) past(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PathValue("number"))
	if err != nil {
		return errNoPage
	}
	rev, err := a.Store.At(r.Context(), o.rev.ID, n)
	if err != nil {
		return err
	}
	s := a.solve(rev.Digest, rev.Data)
	b := struct {
		ID           string
		Base, Number int
		Who, When    string
		What         string
		Tally        tally
		Between      string
	}{o.rev.ID, o.rev.Number, n, rev.Who, rev.When.Format("2 Jan 2006 15:04"), rev.What, a.tally(s, o.rev.ID, nil), a.describe(s.job, o.job)}
	a.show(w, r, http.StatusOK, "past", a.say("app.past.title", "number", strconv.Itoa(n)), a.heading(o, "history"), b)
	return nil
}

// why opens a figure.
func (a *app) why(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	for _, f := range o.doc.Figures {
		if f.ID == r.PathValue("figure") {
			a.show(w, r, http.StatusOK, "why", a.say("app.why.title"), a.heading(o, ""), a.reason(o, f))
			return nil
		}
	}
	return errNoPage
}

// faultText words a fault in the job's units.
func (a *app) faultText(o *opened, f trace.Fault) string {
	return a.Language.Say(f.Message, o.job.System())
}

// stale words a save that another one came before.
func (a *app) stale(err error) error {
	var s *store.Stale
	if errors.As(err, &s) {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	return err
}
