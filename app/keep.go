package app

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"net/http"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/job"
	"plashet/store"
)

// heading is what every page of a job shows of it.
type heading struct {
	ID, Name, Place string
	Number          int
	Archived        bool
	Parts           []tab
	Here            string // the part that is open; "" for the answer
	Danger, Caution int    // open findings
	Last            string // what the newest change was
	Onward          onward // what to give next
}

// opened is a job with its answer.
type opened struct {
	rev store.Revision
	*solved
}

// current reads a form and opens its job, and refuses where the form was made on
// an earlier revision: what it names may have moved since.
func (a *app) current(r *http.Request) (*opened, error) {
	if err := a.form(r); err != nil {
		return nil, err
	}
	o, err := a.open(r)
	if err == nil && base(r) != o.rev.Number {
		err = a.refuse(http.StatusConflict, "app.error.moved")
	}
	return o, err
}

// newest reads the newest revision of the job that a request names.
func (a *app) newest(r *http.Request) (store.Revision, error) {
	rev, err := a.Store.Get(r.Context(), r.PathValue("id"))
	if err == nil && (rev.Kind != store.Job || rev.Deleted) {
		err = store.ErrNone
	}
	return rev, err
}

// open reads it with its answer.
func (a *app) open(r *http.Request) (*opened, error) {
	rev, err := a.newest(r)
	if err != nil {
		return nil, err
	}
	return &opened{rev, a.shown(a.solve(rev.Digest, rev.Data), rev.Digest, a.Device(r).Units)}, nil
}

// put saves a job as a new revision upon base, with what the list shows of it.
func (a *app) put(r *http.Request, id string, base int, j *job.Job, what string) error {
	data, err := job.Encode(j)
	if err != nil {
		return err
	}
	return a.putBytes(r, id, base, data, what)
}

// putBytes is put with the bytes as they are to stand.
func (a *app) putBytes(r *http.Request, id string, base int, data []byte, what string) error {
	_, err := a.putAs(r, id, base, store.Change{What: what, Data: data})
	return err
}

// putBack is putBytes of an undo: it tells the state that it goes back to.
func (a *app) putBack(r *http.Request, id string, base int, data []byte, what string, back int) error {
	_, err := a.putAs(r, id, base, store.Change{What: what, Data: data, BackTo: back})
	return err
}

// putAs saves what a change brings: under the name that it brings, else that of this
// device, now, with what the list shows.
func (a *app) putAs(r *http.Request, id string, base int, c store.Change) (store.Revision, error) {
	if len(c.Data) > job.MaxBytes {
		return store.Revision{}, store.ErrLarge
	}
	if c.Who == "" {
		c.Who = a.Device(r).Who
	}
	c.When, c.Summary = a.Now(), a.summary(a.solve(digest(c.Data), c.Data))
	return a.Store.Put(r.Context(), store.Job, id, base, c)
}

func digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// Stages of a job, by what could be worked out of it.
const (
	stageBegun  = "begun"
	stageFlow   = "flow"
	stageLevels = "levels"
	stageLaid   = "laid"
	stageCut    = "cut"
)

func stage(s *solved) string {
	r := s.result
	switch {
	case r.Delivery == nil:
		return stageBegun
	case r.Levels == nil:
		return stageFlow
	case r.Assembly == nil || !r.Assembly.Laid:
		return stageLevels
	case r.NotToCut:
		return stageLaid
	}
	return stageCut
}

// summary is what the list shows of a job.
func (a *app) summary(s *solved) store.Summary {
	x := store.Summary{Name: s.job.Name, Place: s.job.Place, Stage: stage(s)}
	for _, f := range s.doc.Findings { // the worst first
		if f.Accepted == "" && weight(f.Severity) > x.Weight {
			x.Worst, x.Weight = f.Text, weight(f.Severity)
		}
	}
	if n := len(s.doc.Faults); n > 0 && x.Weight < 3 {
		x.Worst, x.Weight = s.doc.Faults[0].Text, 3
	}
	return x
}

// weight orders severities: 0 is none.
func weight(severity string) int {
	return map[string]int{trace.Info.String(): 1, trace.Caution.String(): 2, trace.Danger.String(): 3}[severity]
}

// base reads the revision that a form started from.
func base(r *http.Request) int {
	n, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || n < 0 {
		return -1 // no revision has it, so the save is refused as stale
	}
	return n
}

// form reads a posted form and says in one sentence what is wrong with it.
func (a *app) form(r *http.Request) error {
	err := r.ParseForm()
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return a.refuse(http.StatusRequestEntityTooLarge, "app.error.large")
	case err != nil:
		return a.refuse(http.StatusBadRequest, "app.error.form")
	case len(r.PostForm) > mostEdits: // none is left out in silence
		return a.refuse(http.StatusRequestEntityTooLarge, "app.error.fields")
	}
	for _, texts := range r.PostForm { // what is shown again must be letters
		for i := range texts {
			texts[i] = strings.ToValidUTF8(texts[i], "\uFFFD")
		}
	}
	return nil
}
