package app

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// jobPump is a pump of a job beside the shelf.
type jobPump struct {
	Index     int
	Name      string
	Shelf     string // identity of the pump that it was taken from; "" for none
	ShelfName string
	State     int    // of the shelf's, now
	Changed   string // what the shelf has otherwise since it was taken
	Own       string // what the job has otherwise than what it took
	Gone      bool   // the shelf has it no more, or aside
}

type jobShelfBody struct {
	ID       string
	Base     int
	Last     string
	Pumps    []jobPump
	Shelf    []pumpLine
	Text     string
	More     bool
	Prices   []jobPrice
	Currency string
	NoPrices bool
}

// jobShelf shows what a job could take from the shelves, and what has changed
// there since it took.
func (a *app) jobShelf(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	b := jobShelfBody{ID: o.rev.ID, Base: o.rev.Number, Last: o.rev.What, Text: r.URL.Query().Get("text"), Currency: o.job.Site.Currency}
	for i := range o.job.Pumps {
		p, err := a.beside(r, o.job, i)
		if err != nil {
			return err
		}
		b.Pumps = append(b.Pumps, p)
	}
	list, _, more, err := keep.Pumps(r.Context(), a.Store, b.Text, false, mostPumps)
	if err != nil {
		return err
	}
	b.More = more
	for _, p := range list {
		b.Shelf = append(b.Shelf, pumpLine{ID: p.Rev.ID, Name: p.Job.Name, Note: p.Job.Pumps[0].Note, Facts: a.facts(p.Job), Number: p.Rev.Number})
	}
	prices, _, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return err
	}
	b.NoPrices = len(prices.List) == 0
	for _, x := range a.offers(o, prices) {
		b.Prices = append(b.Prices, x.jobPrice)
	}
	a.show(w, r, http.StatusOK, "jobshelf", a.say("app.jobshelf.title"), a.heading(o, "shelf"), b)
	return nil
}

// beside holds a pump of a job against the one on the shelf that it was taken
// from: what moved there, and what was changed here.
func (a *app) beside(r *http.Request, j *job.Job, i int) (jobPump, error) {
	x := jobPump{Index: i, Name: j.Pumps[i].Name, Shelf: j.Pumps[i].Taken.Shelf}
	if x.Shelf == "" {
		return x, nil
	}
	now, err := keep.Of(r.Context(), a.Store, x.Shelf)
	if errors.Is(err, store.ErrNone) || errors.Is(err, store.ErrGone) || errors.Is(err, keep.ErrForm) {
		x.Gone, x.Shelf = true, ""
		return x, nil
	}
	if err != nil {
		return x, err
	}
	x.ShelfName, x.State, x.Gone = now.Job.Name, now.Rev.Number, now.Rev.Archived
	at := "/pumps/" + itoa(i)
	rev, err := a.Store.At(r.Context(), now.Rev.ID, j.Pumps[i].Taken.State)
	if err == nil {
		if old, err := keep.At(rev); err == nil {
			x.Changed = a.differs(priced(shelf.Differs(old.Job, "/pumps/0", now.Job, "/pumps/0"), old.Job, now.Job, j))
			x.Own = a.differs(priced(shelf.Differs(old.Job, "/pumps/0", j, at), old.Job, now.Job, j))
			return x, nil
		}
	}
	// The state is not known: all that differs is told as the shelf's.
	x.Changed = a.differs(priced(shelf.Differs(j, at, now.Job, "/pumps/0"), now.Job, now.Job, j))
	return x, nil
}

// priced leaves the price out where it is in another currency than the job's: it
// was never taken.
func priced(list []shelf.Difference, old, now, j *job.Job) []shelf.Difference {
	if old.Site.Currency == j.Site.Currency && now.Site.Currency == j.Site.Currency {
		return list
	}
	return slices.DeleteFunc(list, func(d shelf.Difference) bool { return d.Path == "price" })
}

// takePump copies a pump of the shelf into the job: over the one of an index, or
// behind the others.
func (a *app) takePump(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	p, err := keep.Of(r.Context(), a.Store, r.PostFormValue("pump"))
	if err != nil {
		return err
	}
	next := o.job.Clone()
	n := len(next.Pumps)
	if text := r.PostFormValue("index"); text != "" {
		if n, err = strconv.Atoi(text); err != nil || n < 0 || n >= len(next.Pumps) {
			return a.refuse(http.StatusUnprocessableEntity, "app.error.moved")
		}
	}
	at := "/pumps/" + itoa(n)
	left, f := shelf.CopyPump(next, at, p.Job, "/pumps/0")
	if f != nil {
		return refusal{status: http.StatusUnprocessableEntity, text: a.Language.Say(f.Message, next.System())}
	}
	if n == len(o.job.Pumps) {
		next.Pumps[n].Name = free(o.job, p.Job.Name)
	}
	next.Pumps[n].Taken = job.Taken{Shelf: p.Rev.ID, State: p.Rev.Number}
	what := a.say("app.jobshelf.took", "name", p.Job.Name, "number", strconv.Itoa(p.Rev.Number))
	if left {
		what += " " + a.say("app.jobshelf.left", "currency", p.Job.Site.Currency, "job", o.job.Site.Currency)
	}
	return a.saveTold(w, r, o, next, what)
}

// free is a pump's name that the job has not yet.
func free(j *job.Job, name string) string {
	wanted := name
	for n := 2; slices.ContainsFunc(j.Pumps, func(p job.Pump) bool { return p.Name == wanted }); n++ {
		wanted = name + " " + itoa(n)
	}
	return wanted
}

// saveTold saves a job under words of our own, with what it moved behind them.
func (a *app) saveTold(w http.ResponseWriter, r *http.Request, o *opened, next *job.Job, what string) error {
	if moved := a.moved(o.solved, next); moved != "" {
		what = a.say("app.change.effect", "what", what, "moved", moved)
	}
	if err := a.put(r, o.rev.ID, o.rev.Number, next, what+a.lost(o)); err != nil {
		return a.stale(err)
	}
	see(w, r, "/jobs/"+o.rev.ID+"/shelf")
	return nil
}

// keepPump puts a pump of the job on the shelf: upon the one that it was taken
// from where the form names it, else as a new one.
func (a *app) keepPump(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	i, err := strconv.Atoi(r.PostFormValue("index"))
	if err != nil || i < 0 || i >= len(o.job.Pumps) {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.moved")
	}
	name := o.job.Pumps[i].Name
	id, number, what := a.NewID(), 0, a.say("app.jobshelf.kept", "job", o.job.Name)
	if up := r.PostFormValue("pump"); up != "" {
		old, err := keep.Of(r.Context(), a.Store, up)
		if err != nil {
			return err
		}
		if n, err := strconv.Atoi(r.PostFormValue("state")); err != nil || n != old.Rev.Number {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		id, number, name = up, old.Rev.Number, old.Job.Name
	}
	p, f := shelf.NewPump(name, o.job.Units, "")
	if f == nil {
		_, f = shelf.CopyPump(p, "/pumps/0", o.job, "/pumps/"+itoa(i))
	}
	if f != nil {
		return refusal{status: http.StatusUnprocessableEntity, text: a.Language.Say(f.Message, o.job.System())}
	}
	rev, err := keep.SavePump(r.Context(), a.Store, id, number, p, a.change(r, what))
	if err != nil {
		return a.stale(err)
	}
	next := o.job.Clone()
	next.Pumps[i].Taken = job.Taken{Shelf: rev.ID, State: rev.Number}
	return a.saveTold(w, r, o, next, a.say("app.jobshelf.put", "name", name))
}

// fieldName tells a field of a pump by its path in it.
func (a *app) fieldName(path string) string {
	tokens := strings.Split(path, "/")
	name, number := "", ""
	for _, t := range tokens {
		if n, err := strconv.Atoi(t); err == nil {
			number = itoa(n + 1)
			continue
		}
		name = strings.TrimPrefix(name+"/"+t, "/")
	}
	if code := "app.shelf.field." + name; a.Language.Has(code) {
		name = a.Language.Word(code)
	}
	if number != "" {
		return a.say("app.shelf.point", "number", number, "name", name)
	}
	return name
}
