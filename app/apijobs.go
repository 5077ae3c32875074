package app

import (
	"net/http"
	"strconv"
	"time"

	"plashet/store"
)

// mostLines is how many lines of a list are given at once.
const mostLines = 200

// apiJobs is a page of the list of jobs.
type apiJobs struct {
	Jobs []apiEntry `json:"jobs" doc:"those saved last first"`
	Next string     `json:"next,omitempty" doc:"before of the next page; absent on the last"`
}

type apiEntry struct {
	ID       string `json:"id" doc:"identity"`
	Name     string `json:"name" doc:"the job's name"`
	Place    string `json:"place,omitempty" doc:"where it is built"`
	Revision int    `json:"revision" doc:"number of the newest state"`
	Who      string `json:"who,omitempty" doc:"who saved it"`
	When     string `json:"when" doc:"when it was saved (RFC 3339)"`
	Stage    string `json:"stage" one:"begun flow levels laid cut" doc:"how far it has come"`
}

// apiStates is a page of the history.
type apiStates struct {
	States []apiPast `json:"states" doc:"the newest first"`
	Next   string    `json:"next,omitempty" doc:"before of the next page; absent on the last"`
}

type apiPast struct {
	Revision int    `json:"revision" doc:"number of the state"`
	Who      string `json:"who,omitempty" doc:"who saved it"`
	When     string `json:"when" doc:"when (RFC 3339)"`
	What     string `json:"what" doc:"what changed, in words"`
}

// limited reads limit and before, which were held against what they may be.
func limited(r *http.Request) (limit int, before int64) {
	q := r.URL.Query()
	if limit, _ = strconv.Atoi(q.Get("limit")); limit == 0 {
		limit = perPage
	}
	before, _ = strconv.ParseInt(q.Get("before"), 10, 64)
	return limit, before
}

func (a *app) apiJobs(w http.ResponseWriter, r *http.Request) error {
	limit, before := limited(r)
	q := r.URL.Query()
	entries, more, err := a.Store.List(r.Context(), store.Query{Kind: store.Job, Text: q.Get("text"), Archived: q.Get("aside") == "true", Before: before, Limit: limit})
	if err != nil {
		return err
	}
	x := apiJobs{Jobs: []apiEntry{}}
	for _, e := range entries {
		x.Jobs = append(x.Jobs, apiEntry{e.ID, e.Summary.Name, e.Summary.Place, e.Number, e.Who, e.When.Format(time.RFC3339), e.Summary.Stage})
	}
	if more && len(entries) > 0 {
		x.Next = strconv.FormatInt(entries[len(entries)-1].Cursor, 10)
	}
	return sendJSON(w, http.StatusOK, x)
}

func (a *app) apiHistory(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.newest(r)
	if err != nil {
		return err
	}
	return a.tellHistory(w, r, rev.ID)
}

// tellHistory tells a page of the states of a document.
func (a *app) tellHistory(w http.ResponseWriter, r *http.Request, id string) error {
	limit, before := limited(r)
	past, err := a.Store.History(r.Context(), id, int(before), limit)
	if err != nil {
		return err
	}
	x := apiStates{States: []apiPast{}}
	for _, p := range past {
		x.States = append(x.States, apiPast{p.Number, p.Who, p.When.Format(time.RFC3339), p.What})
	}
	if len(past) == limit && past[limit-1].Number > 1 {
		x.Next = strconv.Itoa(past[limit-1].Number)
	}
	return sendJSON(w, http.StatusOK, x)
}

// apiJob gives the bytes of a job, or says that they are still those.
func (a *app) apiJob(w http.ResponseWriter, r *http.Request) error {
	rev, err := a.newest(r)
	if err != nil {
		return err
	}
	if n, _ := strconv.Atoi(r.URL.Query().Get("revision")); n > 0 {
		if rev, err = a.Store.At(r.Context(), rev.ID, n); err != nil {
			return err
		}
	}
	w.Header().Set("ETag", etag(rev.Number))
	if r.Header.Get("If-None-Match") == etag(rev.Number) {
		w.WriteHeader(http.StatusNotModified)
		return nil
	}
	return sendBytes(w, http.StatusOK, mediaJSON, rev.Data)
}

func etag(number int) string { return `"` + strconv.Itoa(number) + `"` }
