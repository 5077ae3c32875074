package app

import (
	"context"
	"net/http"

	"plashet/store"
)

// mostHistory is how far back the history is read at once.
const mostHistory = 400

// undo brings back what stood before the newest change, and names that change in
// the words that it was saved with. What an undo brought back stands for the state itself, so that undo again goes further back.
func (a *app) undo(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	o, err := a.open(r)
	if err != nil {
		return err
	}
	at, err := a.before(r.Context(), o.rev)
	if err != nil {
		return err
	}
	if at < 1 {
		return a.refuse(http.StatusConflict, "app.error.first")
	}
	taken, err := a.Store.At(r.Context(), o.rev.ID, at+1)
	if err != nil {
		return err
	}
	return a.bring(w, r, o, at, at, a.say("app.change.undid", "number", itoa(at), "what", taken.What))
}

// before gives the number of the state that an undo goes back to; below 1 where
// there is none. A save that left the bytes as they were, as putting aside does,
// is passed over.
func (a *app) before(ctx context.Context, rev store.Revision) (int, error) {
	past, err := a.Store.History(ctx, rev.ID, 0, mostHistory)
	if err != nil {
		return 0, err
	}
	known := map[int]store.Revision{}
	for _, p := range past {
		known[p.Number] = p
	}
	at := func(n int) (store.Revision, error) {
		if p, ok := known[n]; ok {
			return p, nil
		}
		return a.Store.At(ctx, rev.ID, n)
	}
	for now := rev; ; {
		n := now.Number
		for now.BackTo > 0 { // of the state that it brought back
			n = now.BackTo
			if now, err = at(n); err != nil {
				return 0, err
			}
		}
		if n--; n < 1 {
			return 0, nil
		}
		if now, err = at(n); err != nil || now.Digest != rev.Digest {
			return n, err
		}
	}
}
