package app

import (
	"errors"
	"net/http"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// apiShelfPump is a pump of the shelf.
type apiShelfPump struct {
	ID    string  `json:"id" doc:"identity of the pump"`
	Name  string  `json:"name" doc:"its name"`
	Aside bool    `json:"aside" doc:"put aside: kept, and offered to no job"`
	Job   jobFile `json:"job" doc:"a job document that holds the pump alone, as it was typed"`
}

// apiShelved is what is told of a change to a shelf.
type apiShelved struct {
	ID       string `json:"id" doc:"identity of the pump, or of the list of prices"`
	Revision int    `json:"revision" doc:"number of the state"`
	What     string `json:"what" doc:"what changed, in words; empty where nothing did"`
}

// onPump does something with the pump of the shelf that a request names.
func (a *app) onPump(f func(w http.ResponseWriter, r *http.Request, p keep.Pump) error) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		p, err := a.namedPump(r)
		if err != nil {
			return err
		}
		return f(w, r, p)
	}
}

// namedPump finds a pump by its identity or by its name, those in use before
// those put aside. Two of one name are told apart by their identities.
func (a *app) namedPump(r *http.Request) (keep.Pump, error) {
	name := r.PathValue("pump")
	p, err := keep.Of(r.Context(), a.Store, name)
	switch {
	case err == nil && !p.Rev.Deleted:
		return p, nil
	case errors.Is(err, keep.ErrForm):
		return p, a.refuse(http.StatusUnprocessableEntity, "app.pump.unreadable")
	case err != nil && !errors.Is(err, store.ErrNone) && !errors.Is(err, store.ErrGone) && !errors.Is(err, store.ErrName):
		return p, err
	}
	for _, aside := range []bool{false, true} {
		list, _, _, err := keep.Pumps(r.Context(), a.Store, "", aside, shelf.MostRows)
		if err != nil {
			return p, err
		}
		var found []keep.Pump
		var ids []string
		for _, p := range list {
			if store.Fold(p.Job.Name) == store.Fold(name) {
				found, ids = append(found, p), append(ids, p.Rev.ID)
			}
		}
		switch {
		case len(found) == 1:
			return found[0], nil
		case len(found) > 1:
			return p, a.wrong(http.StatusConflict, "app.api.pumps", "pump", name, strings.Join(ids, ", "), ids[0])
		}
	}
	return p, a.wrong(http.StatusNotFound, "app.api.nopump", "pump", name, "", "")
}

func (a *app) apiPump(w http.ResponseWriter, _ *http.Request, p keep.Pump) error {
	w.Header().Set("ETag", etag(p.Rev.Number))
	return sendJSON(w, http.StatusOK, apiShelfPump{p.Rev.ID, p.Job.Name, p.Rev.Archived, jobFile{p.Rev.Data}})
}

// onShelf holds a change to a shelf's document against If-Match and who.
func (a *app) onShelf(r *http.Request, rev store.Revision) error {
	if err := a.matches(r, rev, "app.api.shelfstale"); err != nil {
		return err
	}
	_, err := a.asker(r)
	return err
}

// shelvedAs tells of a state of a shelf's document; err is of its save.
func (a *app) shelvedAs(w http.ResponseWriter, rev store.Revision, what string, err error) error {
	var stale *store.Stale
	if errors.As(err, &stale) {
		return a.moved412(stale.Newest.Number, "app.api.shelfstale")
	}
	if err != nil {
		return err
	}
	w.Header().Set("ETag", etag(rev.Number))
	return sendJSON(w, http.StatusOK, apiShelved{rev.ID, rev.Number, what})
}

// apiSetPump sets fields of a pump: those that its page has, not those of the
// place where a pump runs.
func (a *app) apiSetPump(w http.ResponseWriter, r *http.Request, p keep.Pump) error {
	if err := a.onShelf(r, p.Rev); err != nil {
		return err
	}
	sets, err := a.sentSets(r, `{"set": [{"path": "/pumps/0/watts", "value": "95 W"}]}`)
	if err != nil {
		return err
	}
	for _, s := range sets {
		of, in := strings.CutPrefix(s.Path, "/pumps/0/")
		if s.Path != "/site/currency" && (!in || shelf.Local(of)) {
			return a.wrong(http.StatusUnprocessableEntity, "app.api.pumppath", short(s.Path), s.Path, "/pumps/0/…, /site/currency", "/pumps/0/watts")
		}
	}
	data, faults, err := job.Alter(p.Rev.Data, sets)
	if err != nil {
		return err
	}
	if data == nil {
		return a.faulty(faults, p.Job.System())
	}
	next, _ := job.Read(data)
	if next == nil || len(next.Pumps) != 1 || next.Pumps[0].Name == "" {
		f := p.Job.Clone().Set("/pumps/0/name", "")
		if f == nil {
			return a.refuse(http.StatusUnprocessableEntity, "app.pump.unreadable")
		}
		return a.faulty([]trace.Fault{*f}, p.Job.System())
	}
	next.Name = next.Pumps[0].Name
	rev, what := p.Rev, a.describe(p.Job, next)
	if what != "" {
		rev, err = keep.SavePump(r.Context(), a.Store, rev.ID, rev.Number, next, a.change(r, what))
	}
	return a.shelvedAs(w, rev, what, err)
}

// apiLay takes a pump off the shelf, or puts it back onto it.
func (a *app) apiLay(aside bool) func(w http.ResponseWriter, r *http.Request, p keep.Pump) error {
	return func(w http.ResponseWriter, r *http.Request, p keep.Pump) error {
		if err := a.onShelf(r, p.Rev); err != nil {
			return err
		}
		rev, what := p.Rev, ""
		var err error
		if rev.Archived != aside {
			rev, err = a.lay(r, rev, rev.Number, aside)
			what = rev.What
		}
		return a.shelvedAs(w, rev, what, err)
	}
}
