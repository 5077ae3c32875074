package app

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/answer"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/store"
)

// apiSaved is what is told of a state that was kept.
type apiSaved struct {
	ID       string         `json:"id" doc:"identity of the job"`
	Revision int            `json:"revision" doc:"number of the state"`
	What     string         `json:"what" doc:"what changed, in words"`
	Faults   []answer.Fault `json:"faults" doc:"errors in the job as it now stands"`
}

// apiSets are fields to set.
type apiSets struct {
	Set []apiSetting `json:"set" doc:"fields, in this order; all are set or none"`
}

type apiSetting struct {
	Path  string `json:"path" doc:"of the field, as the faults and docs/job-format.md name it, and those of a price its answer; - is one more at the end of a list"`
	Value string `json:"value" doc:"as written on the tape; empty empties the field"`
}

// sent reads the body of a request.
func (a *app) sent(r *http.Request) ([]byte, error) {
	data, err := io.ReadAll(r.Body)
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large), len(data) > job.MaxBytes:
		return nil, store.ErrLarge
	case err != nil:
		return nil, a.refuse(http.StatusBadRequest, "app.api.body")
	}
	return data, nil
}

// sentJob reads a job that is sent. One with faults is one all the same, as long
// as it can be read as a job at all.
func (a *app) sentJob(r *http.Request) (data []byte, j *job.Job, faults []trace.Fault, err error) {
	if data, err = a.sent(r); err != nil {
		return nil, nil, nil, err
	}
	j, faults = job.Read(data)
	if j == nil {
		return nil, nil, nil, a.faulty(faults, unit.US)
	}
	return data, j, faults, nil
}

// canonical gives a job as it is kept: a field with a fault would be lost in the
// canonical form, so that such a one stays as it was sent.
func canonical(data []byte, j *job.Job, faults []trace.Fault) ([]byte, error) {
	if len(faults) > 0 {
		return data, nil
	}
	return job.Encode(j)
}

// sentToKeep gives the job that a request sends, as it is to be kept; what does
// not say that it is a job is none.
func (a *app) sentToKeep(r *http.Request) ([]byte, *job.Job, error) {
	data, j, faults, err := a.sentJob(r)
	if err != nil {
		return nil, nil, err
	}
	if slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Path == "/format" }) {
		return nil, nil, a.faulty(faults, unit.US)
	}
	data, err = canonical(data, j, faults)
	return data, j, err
}

func (a *app) apiNew(w http.ResponseWriter, r *http.Request) error {
	data, _, err := a.sentToKeep(r)
	if err != nil {
		return err
	}
	id := a.NewID()
	w.Header().Set("Location", underInterface+"/jobs/"+id)
	return a.keepSent(w, r, store.Revision{ID: id}, data, a.say("app.change.imported"), http.StatusCreated)
}

// matched gives the newest revision of the job, if it is the one that If-Match
// names.
func (a *app) matched(r *http.Request) (store.Revision, error) {
	rev, err := a.newest(r)
	if err == nil {
		err = a.matches(r, rev, "app.api.stale")
	}
	return rev, err
}

// matches holds the newest revision of a document against If-Match; stale is the
// code of the sentence where it is another one.
func (a *app) matches(r *http.Request, rev store.Revision, stale string) error {
	match := r.Header.Get("If-Match")
	n, err := strconv.Atoi(strings.TrimSuffix(strings.TrimPrefix(match, `"`), `"`))
	switch {
	case match == "":
		return a.wrong(http.StatusPreconditionRequired, "app.api.nomatch", "If-Match", "", "ETag", etag(rev.Number))
	case err != nil || n < 1 || match != etag(n):
		return a.wrong(http.StatusBadRequest, "app.api.match", "If-Match", match, "ETag", etag(rev.Number))
	case n != rev.Number:
		return a.moved412(rev.Number, stale)
	}
	return nil
}

func (a *app) moved412(newest int, code string) error {
	n := strconv.Itoa(newest)
	return Problem{Status: http.StatusPreconditionFailed, Code: code, Detail: a.say(code, "number", n), Where: "If-Match", Expected: etag(newest), Revision: newest}
}

func (a *app) apiPut(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.matched(r)
	if err != nil {
		return err
	}
	data, j, err := a.sentToKeep(r)
	if err != nil {
		return err
	}
	old, _ := job.Read(rev.Data)
	what := a.say("app.change.imported")
	if old != nil {
		if what = a.describe(old, j); what == "" && string(data) != string(rev.Data) {
			what = a.say("app.change.imported")
		}
	}
	return a.keepSent(w, r, rev, data, what, http.StatusOK)
}

func (a *app) apiSet(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.matched(r)
	if err != nil {
		return err
	}
	sets, err := a.sentSets(r, `{"set": [{"path": "/runs/0/length", "value": "62 ft"}]}`)
	if err != nil {
		return err
	}
	next, faults, err := job.Alter(rev.Data, sets)
	if err != nil {
		return err
	}
	old, _ := job.Read(rev.Data)
	if next == nil {
		s := unit.US
		if old != nil {
			s = old.System()
		}
		return a.faulty(faults, s)
	}
	j, _ := job.Read(next)
	return a.keepSent(w, r, rev, next, a.describe(old, j), http.StatusOK)
}

// sentSets reads the fields to set that a request sends.
func (a *app) sentSets(r *http.Request, example string) ([]job.Set, error) {
	data, err := a.sent(r)
	if err != nil {
		return nil, err
	}
	var x apiSets
	dec := json.NewDecoder(strings.NewReader(string(data)))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&x); err != nil || dec.More() || len(x.Set) == 0 || len(x.Set) > mostEdits {
		return nil, a.wrong(http.StatusUnprocessableEntity, "app.api.sets", "set", "", "set: path, value", example)
	}
	var sets []job.Set
	for _, s := range x.Set {
		sets = append(sets, job.Set(s))
	}
	return sets, nil
}

// keepSent keeps a state upon a revision and tells of it; where nothing changed
// the revision stays.
func (a *app) keepSent(w http.ResponseWriter, r *http.Request, rev store.Revision, data []byte, what string, status int) error {
	return a.keepChange(w, r, rev, store.Change{What: what, Data: data}, status)
}

func (a *app) keepChange(w http.ResponseWriter, r *http.Request, rev store.Revision, c store.Change, status int) error {
	number := rev.Number
	if c.What != "" || number == 0 {
		var err error
		if c.Who, err = a.asker(r); err != nil {
			return err
		}
		next, err := a.putAs(r, rev.ID, number, c)
		var stale *store.Stale
		if errors.As(err, &stale) {
			return a.moved412(stale.Newest.Number, "app.api.stale")
		}
		if err != nil {
			return err
		}
		number = next.Number
	}
	return a.saved(w, rev.ID, number, c.What, c.Data, status)
}

// saved tells of a state that is kept.
func (a *app) saved(w http.ResponseWriter, id string, number int, what string, data []byte, status int) error {
	x := apiSaved{ID: id, Revision: number, What: what, Faults: []answer.Fault{}}
	if s := a.solve(digest(data), data); len(s.doc.Faults) > 0 {
		x.Faults = s.doc.Faults
	}
	w.Header().Set("ETag", etag(number))
	return sendJSON(w, status, x)
}
