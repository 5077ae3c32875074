package app

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"plashet/job"
	"plashet/store"
)

// asker gives who a request says that asks, held against what a name may be.
func (a *app) asker(r *http.Request) (string, error) {
	who := strings.TrimSpace(r.URL.Query().Get("who"))
	if len([]rune(who)) > mostWho || strings.ContainsFunc(who, func(c rune) bool { return c < ' ' }) {
		return "", a.wrong(http.StatusBadRequest, "app.api.param", "who", who, "1…"+strconv.Itoa(mostWho), "Ann")
	}
	return who, nil
}

// apiUndo brings back what stood before the newest change; again goes further back.
func (a *app) apiUndo(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.matched(r)
	if err != nil {
		return err
	}
	at, err := a.before(r.Context(), rev)
	if err != nil {
		return err
	}
	if at < 1 {
		return a.refuse(http.StatusConflict, "app.error.first")
	}
	taken, err := a.Store.At(r.Context(), rev.ID, at+1)
	if err != nil {
		return err
	}
	then, err := a.Store.At(r.Context(), rev.ID, at)
	if err != nil {
		return err
	}
	return a.keepChange(w, r, rev, store.Change{What: a.say("app.change.undid", "number", itoa(at), "what", taken.What), Data: then.Data, BackTo: at}, http.StatusOK)
}

// apiReturn puts an earlier state on top of those that came after it.
func (a *app) apiReturn(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.matched(r)
	if err != nil {
		return err
	}
	n, _ := strconv.Atoi(r.URL.Query().Get("revision"))
	if n < 1 || n > rev.Number {
		return a.wrong(http.StatusUnprocessableEntity, "app.api.param", "revision", r.URL.Query().Get("revision"), "1…"+strconv.Itoa(rev.Number), "1")
	}
	then, err := a.Store.At(r.Context(), rev.ID, n)
	if err != nil {
		return err
	}
	j, _ := job.Read(then.Data)
	if j == nil {
		return a.refuse(http.StatusUnprocessableEntity, "app.error.revision")
	}
	what := ""
	if then.Digest != rev.Digest {
		now, _ := job.Read(rev.Data)
		what = a.say("app.change.returned", "number", strconv.Itoa(n), "what", a.describe(now, j))
	}
	return a.keepSent(w, r, rev, then.Data, what, http.StatusOK)
}

// apiAside puts a job aside, or takes it back into the list.
func (a *app) apiAside(aside bool) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		rev, err := a.matched(r)
		if err != nil {
			return err
		}
		who, err := a.asker(r)
		if err != nil {
			return err
		}
		what := ""
		if rev.Archived != aside {
			what = a.say("app.change.back")
			if aside {
				what = a.say("app.change.aside")
			}
			rev, err = a.Store.Archive(r.Context(), rev.ID, rev.Number, aside, store.Change{Who: who, When: a.Now(), What: what, Data: rev.Data, Summary: rev.Summary})
			var stale *store.Stale
			if errors.As(err, &stale) {
				return a.moved412(stale.Newest.Number, "app.api.stale")
			}
			if err != nil {
				return err
			}
		}
		return a.saved(w, rev.ID, rev.Number, what, rev.Data, http.StatusOK)
	}
}

// apiKeepLayout writes a layout that the search found into the job.
func (a *app) apiKeepLayout(w http.ResponseWriter, r *http.Request) error {
	if a.Runs == nil {
		return a.refuse(http.StatusServiceUnavailable, "app.api.nowork")
	}
	rev, err := a.matched(r)
	if err != nil {
		return err
	}
	o := &opened{rev, a.solve(rev.Digest, rev.Data)}
	run, there := a.Runs.Look(key(runOf, o))
	found, _ := run.Result.(*sought)
	switch {
	case !there || !run.Done || found == nil:
		return a.refuse(http.StatusNotFound, "app.api.norun")
	case !strings.HasPrefix(run.Of, rev.Digest+" "):
		return a.refuse(http.StatusConflict, "app.error.stalelayout")
	case len(o.faults) > 0: // what could not be read would be lost
		return a.refuse(http.StatusUnprocessableEntity, "app.error.unread")
	}
	n, _ := strconv.Atoi(r.URL.Query().Get("layout"))
	most := 0
	if found.a.Outcome != nil {
		most = len(found.a.Outcome.Layouts)
	}
	if n < 1 || n > most {
		return a.wrong(http.StatusUnprocessableEntity, "app.api.param", "layout", r.URL.Query().Get("layout"), "1…"+strconv.Itoa(most), "1")
	}
	next, faults := found.a.Keep(a.Book, o.job, n-1)
	if next == nil {
		return a.faulty(faults, o.job.System())
	}
	data, err := job.Encode(next)
	if err != nil {
		return err
	}
	return a.keepSent(w, r, rev, data, a.say("app.change.layout", "number", strconv.Itoa(n)), http.StatusOK)
}
