package app

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"plashet/demo"
)

// upon sends a request without a body upon the revision that match names.
func (c *caller) upon(method, path, match string, want int) apiSaved {
	c.t.Helper()
	w := c.call(method, path, "", want, "If-Match", match)
	if want >= 300 {
		return apiSaved{}
	}
	return reads[apiSaved](c, w)
}

// states goes back and forth among the states of a job, and puts it aside.
func (c *caller) states() {
	t := c.t
	t.Helper()
	w := c.call(http.MethodPost, "/api/v1/jobs", string(demo.Job("old-pond")), http.StatusCreated)
	at, id := w.Header().Get("Location"), reads[apiSaved](c, w).ID
	first := c.call(http.MethodGet, at, "", http.StatusOK).Body.String()
	c.upon(http.MethodPost, at+"/undo", `"1"`, http.StatusConflict) // it is the first state
	c.set(at, `"1"`, http.StatusOK, "/note", "one")
	c.set(at, `"2"`, http.StatusOK, "/note", "two")
	x := c.upon(http.MethodPost, at+"/undo?who=Ann", `"3"`, http.StatusOK)
	if got := c.call(http.MethodGet, at, "", http.StatusOK).Body.String(); x.Revision != 4 || x.What == "" || !strings.Contains(got, `"one"`) || c.newest(id).Who != "Ann" {
		t.Errorf("%+v", x)
	}
	c.upon(http.MethodPost, at+"/undo", `"3"`, http.StatusPreconditionFailed)
	c.call(http.MethodPost, at+"/undo", "", http.StatusPreconditionRequired)
	if x := c.upon(http.MethodPost, at+"/undo", `"4"`, http.StatusOK); x.Revision != 5 || c.call(http.MethodGet, at, "", http.StatusOK).Body.String() != first {
		t.Errorf("undo again goes no further back: %+v", x)
	}
	c.upon(http.MethodPost, at+"/undo", `"5"`, http.StatusConflict)
	if x := c.upon(http.MethodPost, at+"/return?revision=3", `"5"`, http.StatusOK); x.Revision != 6 || !strings.Contains(c.call(http.MethodGet, at, "", http.StatusOK).Body.String(), `"two"`) {
		t.Errorf("%+v", x)
	}
	if x := c.upon(http.MethodPost, at+"/return?revision=6", `"6"`, http.StatusOK); x.Revision != 6 || x.What != "" {
		t.Errorf("a state without a change was kept: %+v", x)
	}
	c.upon(http.MethodPost, at+"/return?revision=7", `"6"`, http.StatusUnprocessableEntity)
	c.upon(http.MethodPost, at+"/return", `"6"`, http.StatusUnprocessableEntity)
	listed := func(query string) bool {
		for _, j := range reads[apiJobs](c, c.call(http.MethodGet, "/api/v1/jobs"+query, "", http.StatusOK)).Jobs {
			if j.ID == id {
				return true
			}
		}
		return false
	}
	if x := c.upon(http.MethodPut, at+"/aside", `"6"`, http.StatusOK); x.Revision != 7 || listed("") || !listed("?aside=true") {
		t.Errorf("%+v", x)
	}
	if x := c.upon(http.MethodPut, at+"/aside", `"7"`, http.StatusOK); x.Revision != 7 {
		t.Errorf("put aside twice: %+v", x)
	}
	c.upon(http.MethodDelete, at+"/aside", `"6"`, http.StatusPreconditionFailed)
	if x := c.upon(http.MethodDelete, at+"/aside", `"7"`, http.StatusOK); x.Revision != 8 || !listed("") {
		t.Errorf("%+v", x)
	}
	c.upon(http.MethodPut, at+"/aside?who="+strings.Repeat("x", 61), `"8"`, http.StatusBadRequest)
}

// keeps looks for layouts and writes one into the job.
func (c *caller) keeps(runs *byHand) {
	t := c.t
	t.Helper()
	w := c.call(http.MethodPost, "/api/v1/jobs", string(demo.Job("terrace-spout")), http.StatusCreated)
	at := w.Header().Get("Location")
	c.upon(http.MethodPost, at+"/arrange/keep?layout=1", `"1"`, http.StatusNotFound)
	c.call(http.MethodPost, at+"/arrange?elbows=2", "", http.StatusAccepted)
	runs.all()
	found := reads[apiSearch](c, c.call(http.MethodGet, at+"/arrange", "", http.StatusOK))
	if found.Result == nil || len(found.Result.Layouts) == 0 {
		t.Fatal("no layout")
	}
	c.upon(http.MethodPost, at+"/arrange/keep?layout=0", `"1"`, http.StatusBadRequest)
	c.upon(http.MethodPost, at+"/arrange/keep?layout=999", `"1"`, http.StatusUnprocessableEntity)
	c.upon(http.MethodPost, at+"/arrange/keep?layout=1", `"9"`, http.StatusPreconditionFailed)
	x := c.upon(http.MethodPost, at+"/arrange/keep?layout=1", `"1"`, http.StatusOK)
	if x.Revision != 2 || x.What == "" || !strings.Contains(c.call(http.MethodGet, at, "", http.StatusOK).Body.String(), `"kept"`) {
		t.Errorf("%+v", x)
	}
	c.upon(http.MethodPost, at+"/arrange/keep?layout=1", `"2"`, http.StatusConflict) // the job has changed since
}

// shelves takes pumps and prices from CSV, as the command does: nothing without yes.
func (c *caller) shelves() {
	t := c.t
	t.Helper()
	csv := func(path, body string, want int) *httptest.ResponseRecorder {
		t.Helper()
		return c.call(http.MethodPost, path, body, want, "Content-Type", "text/csv")
	}
	const prices = "Item,Unit,Price,Currency\nelbow 90 9,each,3.10,USD\nstrange tee,each,dear,USD\nball valve 9,each,12.00,USD\n"
	x := reads[apiImported](c, csv("/api/v1/prices", prices, http.StatusOK))
	if x.Taken || x.New != 2 || x.Bad != 1 || len(x.Faults) == 0 || x.Faults[0].Line != 3 || len(x.Columns) < 3 || len(x.Told) != 2 {
		t.Errorf("%+v", x)
	}
	if list := c.get("/api/v1/prices"); strings.Contains(list, "elbow 90 9") {
		t.Error("taken in without yes")
	}
	if x := reads[apiImported](c, csv("/api/v1/prices?yes=true&file=list.csv&who=Ann", prices, http.StatusOK)); !x.Taken || x.New != 2 {
		t.Errorf("%+v", x)
	}
	if list := c.get("/api/v1/prices"); !strings.Contains(list, "elbow 90 9") || !strings.Contains(list, "12.00") {
		t.Error(list)
	}
	again := strings.Replace(prices, "3.10", "3.30", 1)
	if x := reads[apiImported](c, csv("/api/v1/prices?yes=true", again, http.StatusOK)); !x.Taken || x.Changed != 1 || x.Same != 1 || x.New != 0 {
		t.Errorf("%+v", x)
	}
	if x := reads[apiImported](c, csv("/api/v1/prices?yes=true", again, http.StatusOK)); x.Taken || x.Same != 2 {
		t.Errorf("%+v", x)
	}
	const more = "Name,Flow,Head\nOther Q,0,20\nOther Q,30,12\nOther Q,60,0\nOther R,0,9\n"
	y := reads[apiImported](c, csv("/api/v1/pumps?yes=true&units=us&decimals=point", more, http.StatusOK))
	if !y.Taken || y.New != 1 || y.Bad != 1 || !strings.Contains(c.get("/api/v1/pumps"), "Other Q") {
		t.Errorf("%+v", y)
	}
	if x := reads[apiImported](c, csv("/api/v1/pumps?yes=true", c.get("/api/v1/pumps"), http.StatusOK)); x.Taken || x.Bad > 0 || x.New > 0 || x.Changed > 0 || x.Same != 1 {
		t.Errorf("what the shelf gives is not what it takes: %+v", x)
	}
	c.choices()
	csv("/api/v1/prices", "", http.StatusUnprocessableEntity)
	csv("/api/v1/prices?yes=perhaps", prices, http.StatusBadRequest)
	csv("/api/v1/prices?who="+strings.Repeat("x", 61), prices, http.StatusBadRequest)
	c.call(http.MethodPost, "/api/v1/prices", prices, http.StatusUnsupportedMediaType, "Content-Type", "application/x-www-form-urlencoded")
}

func TestInterfaceStates(t *testing.T) {
	c, runs := newCaller(t)
	c.states()
	c.keeps(runs)
	c.shelves()
	if len(c.logs) > 0 {
		t.Error(c.logs)
	}
}
