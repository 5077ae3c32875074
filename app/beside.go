package app

import (
	"context"
	"net/http"
	"net/url"
	"strings"
)

// Work is done beside the pages. It ends soon after its context is done, and
// gives what it has by then; nil where that is nothing. It tells now and then
// how far it has got.
type Work func(ctx context.Context, tell func(progress string)) any

// Run is a piece of work as it stands.
type Run struct {
	Of       string // what it was begun on
	Progress string
	Waits    bool // for another to end
	Done     bool
	Failed   bool // on our side
	Result   any  // of a run that is done
}

// Runs do long work beside the pages, so that none waits for it. A run is known
// by its key; what is done is kept for a while and may be lost at any time.
type Runs interface {
	// Start begins work, in place of what ran under its key before; of says what
	// it is done on. It tells whether there is room for it.
	Start(key, of string, w Work) bool
	// Look gives the run of a key; false where there is none.
	Look(key string) (Run, bool)
	// Stop asks a run to end with what it has.
	Stop(key string)
}

// beside is how a page shows work that runs beside it.
type beside struct {
	Running, Waits, Failed bool
	Stale                  bool   // what is shown was made from an earlier state of the job
	State                  int    // that it was made from
	Progress               string // of what runs
}

// made is a result with the state of the job it was made from.
type made struct {
	number int
	value  any
}

// key of a run that belongs to a job.
func key(kind string, o *opened) string { return kind + " " + o.rev.ID }

// look reads a run of the job and whether its result still holds; the value is
// nil where there is none.
func (a *app) look(kind string, o *opened) (b beside, value any) {
	return a.lookOf(kind, o, o.rev.Digest)
}

// lookOf is look for a run that stands on more than the job: of names all of it.
func (a *app) lookOf(kind string, o *opened, of string) (b beside, value any) {
	if a.Runs == nil {
		return b, nil
	}
	r, ok := a.Runs.Look(key(kind, o))
	if !ok {
		return b, nil
	}
	b.Running, b.Waits, b.Failed, b.Progress = !r.Done, r.Waits, r.Failed, r.Progress
	b.Stale = r.Of != of
	if m, ok := r.Result.(made); ok && r.Done {
		b.State, value = m.number, m.value
	}
	return b, value
}

// running tells that work on the job as it stands is under way.
func (a *app) running(kind string, o *opened) bool {
	if a.Runs == nil {
		return false
	}
	r, ok := a.Runs.Look(key(kind, o))
	return ok && !r.Done && r.Of == o.rev.Digest
}

// begin starts work on the job as it stands. Without a runner it is done while
// the page waits.
func (a *app) begin(kind string, o *opened, do Work) bool {
	return a.beginOf(kind, o, o.rev.Digest, do)
}

// beginOf is begin for work that stands on more than the job.
func (a *app) beginOf(kind string, o *opened, of string, do Work) bool {
	if a.Runs == nil {
		return false
	}
	number := o.rev.Number
	return a.Runs.Start(key(kind, o), of, func(ctx context.Context, tell func(string)) any {
		if v := do(ctx, tell); v != nil {
			return made{number, v}
		}
		return nil
	})
}

// view reads the way a page was asked for that edits keep: what is behind the
// question mark, where it is of the page's own making.
func view(r *http.Request) string {
	q := url.Values{}
	if c := r.URL.Query().Get("corner"); cornerOf(c) >= 0 {
		q.Set("corner", c)
	}
	if n := groundOf(r); n != 0 {
		q.Set("ground", itoa(n))
	}
	return strings.TrimSuffix("?"+q.Encode(), "?")
}
