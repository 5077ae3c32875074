package app

import (
	"net/http"
	"strconv"

	"plashet/shelf/keep"
	"plashet/store"
)

// onRev does something with the newest state of a shelf's document.
type onRev func(w http.ResponseWriter, r *http.Request, rev store.Revision) error

// ofPumpRev does it with that of a pump.
func (a *app) ofPumpRev(f onRev) func(w http.ResponseWriter, r *http.Request, p keep.Pump) error {
	return func(w http.ResponseWriter, r *http.Request, p keep.Pump) error { return f(w, r, p.Rev) }
}

// onPrices does it with that of the list of prices.
func (a *app) onPrices(f onRev) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		_, rev, err := keep.Prices(r.Context(), a.Store)
		if err != nil {
			return err
		}
		if rev.Number == 0 {
			return a.refuse(http.StatusNotFound, "app.api.noprices")
		}
		return f(w, r, rev)
	}
}

// apiShelfUndo brings back what stood before the newest change.
func (a *app) apiShelfUndo(w http.ResponseWriter, r *http.Request, rev store.Revision) error {
	if err := a.onShelf(r, rev); err != nil {
		return err
	}
	at, err := a.shelfBefore(r.Context(), rev)
	if err != nil {
		return err
	}
	next, err := a.onTop(r, rev, "app.change.undone", at, at)
	return a.shelvedAs(w, next, next.What, err)
}

// apiShelfReturn returns to an earlier state, as a new one.
func (a *app) apiShelfReturn(w http.ResponseWriter, r *http.Request, rev store.Revision) error {
	if err := a.onShelf(r, rev); err != nil {
		return err
	}
	text := r.URL.Query().Get("revision")
	n, _ := strconv.Atoi(text)
	if n < 1 || n > rev.Number {
		return a.wrong(http.StatusUnprocessableEntity, "app.api.param", "revision", text, "1…"+strconv.Itoa(rev.Number), "1")
	}
	then, err := a.Store.At(r.Context(), rev.ID, n)
	if err != nil {
		return err
	}
	if then.Digest == rev.Digest { // it stands as it did
		return a.shelvedAs(w, rev, "", nil)
	}
	next, err := a.onTop(r, rev, "app.change.returned", n, 0)
	return a.shelvedAs(w, next, next.What, err)
}

func (a *app) apiShelfHistory(w http.ResponseWriter, r *http.Request, rev store.Revision) error {
	return a.tellHistory(w, r, rev.ID)
}
