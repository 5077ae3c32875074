package app

import (
	"context"
	"net/http"
	"strconv"

	"plashet/job"
	"plashet/shelf/keep"
	"plashet/store"
)

// shelved is a document of a shelf with the addresses it goes by.
type shelved struct {
	rev   store.Revision
	at    string // "/pumps/ID", "/prices"
	title string
}

// document reads the document of a shelf that a request names.
func (a *app) document(r *http.Request) (shelved, error) {
	if r.PathValue("id") == "" {
		_, rev, err := keep.Prices(r.Context(), a.Store)
		if err == nil && rev.Number == 0 {
			err = store.ErrNone
		}
		return shelved{rev, "/prices", a.say("app.prices.title")}, err
	}
	p, err := a.openPump(r)
	if err != nil {
		return shelved{}, err
	}
	return shelved{p.Rev, "/pumps/" + p.Rev.ID, p.Job.Name}, nil
}

type shelfHistoryBody struct {
	historyBody
	At string
}

// shelfHistory lists the states of a pump, or of the list of prices.
func (a *app) shelfHistory(w http.ResponseWriter, r *http.Request) error {
	d, err := a.document(r)
	if err != nil {
		return err
	}
	before, _ := strconv.Atoi(r.URL.Query().Get("before"))
	const most = 60
	past, err := a.Store.History(r.Context(), d.rev.ID, max(before, 0), most)
	if err != nil {
		return err
	}
	b := shelfHistoryBody{historyBody{ID: d.rev.ID, Base: d.rev.Number}, d.at}
	for _, p := range past {
		b.Lines = append(b.Lines, pastLine{p.Number, p.Who, p.When.Format("2 Jan 2006 15:04"), p.What, p.Number == d.rev.Number})
	}
	if len(past) == most && past[most-1].Number > 1 {
		b.More = past[most-1].Number
	}
	a.show(w, r, http.StatusOK, "shelfhistory", a.say("app.shelf.history", "name", d.title), nil, b)
	return nil
}

// shelfUndo brings back what stood before the newest change.
func (a *app) shelfUndo(w http.ResponseWriter, r *http.Request) error {
	return a.shelfBack(w, r, "app.change.undone", func(rev store.Revision) (int, int, error) {
		at, err := a.shelfBefore(r.Context(), rev)
		return at, at, err
	})
}

// shelfBefore gives the number of the state that an undo goes back to.
func (a *app) shelfBefore(ctx context.Context, rev store.Revision) (int, error) {
	at, err := a.before(ctx, rev)
	if err == nil && at < 1 {
		err = a.refuse(http.StatusConflict, "app.shelf.first")
	}
	return at, err
}

// shelfReturn returns to an earlier state, as a new one.
func (a *app) shelfReturn(w http.ResponseWriter, r *http.Request) error {
	return a.shelfBack(w, r, "app.change.returned", func(rev store.Revision) (int, int, error) {
		n, err := strconv.Atoi(r.PostFormValue("number"))
		if err != nil || n < 1 || n > rev.Number {
			return 0, 0, a.refuse(http.StatusUnprocessableEntity, "app.error.revision")
		}
		return n, 0, nil
	})
}

// shelfBack puts an earlier state on top: the one that which names, with the one
// that an undo goes back to.
func (a *app) shelfBack(w http.ResponseWriter, r *http.Request, code string, which func(store.Revision) (number, back int, err error)) error {
	if err := a.form(r); err != nil {
		return err
	}
	d, err := a.document(r)
	if err != nil {
		return err
	}
	if base(r) != d.rev.Number {
		return a.refuse(http.StatusConflict, "app.error.moved")
	}
	number, back, err := which(d.rev)
	if err != nil {
		return err
	}
	if _, err := a.onTop(r, d.rev, code, number, back); err != nil {
		return a.stale(err)
	}
	see(w, r, d.at)
	return nil
}

// onTop puts the state of a number on top, with the one that an undo goes back
// to.
func (a *app) onTop(r *http.Request, rev store.Revision, code string, number, back int) (store.Revision, error) {
	old, err := a.Store.At(r.Context(), rev.ID, number)
	if err != nil {
		return rev, err
	}
	c := a.change(r, a.say(code, "number", strconv.Itoa(number), "what", a.between(rev, old)))
	c.Data, c.Summary, c.BackTo = old.Data, old.Summary, back
	return a.Store.Put(r.Context(), rev.Kind, rev.ID, rev.Number, c)
}

// between tells how two states of a shelf's document differ.
func (a *app) between(from, to store.Revision) string {
	if from.Kind == store.Pumps {
		x, _ := job.Read(from.Data)
		y, _ := job.Read(to.Data)
		if x == nil || y == nil {
			return ""
		}
		return a.describe(x, y)
	}
	x, err := keep.PricesAt(from)
	y, err2 := keep.PricesAt(to)
	if err != nil || err2 != nil {
		return ""
	}
	return a.pricesBetween(x, y)
}
