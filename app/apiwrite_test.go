package app

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
)

// set sets fields of a job upon the revision that match names.
func (c *caller) set(at, match string, want int, pairs ...string) *httptest.ResponseRecorder {
	c.t.Helper()
	var s apiSets
	for i := 0; i < len(pairs); i += 2 {
		s.Set = append(s.Set, apiSetting{pairs[i], pairs[i+1]})
	}
	data, err := json.Marshal(s)
	if err != nil {
		c.t.Fatal(err)
	}
	return c.call(http.MethodPatch, at, string(data), want, "If-Match", match)
}

// writes keeps jobs and changes them, each upon the revision that it names.
func (c *caller) writes() {
	t := c.t
	t.Helper()
	w := c.call(http.MethodPost, "/api/v1/jobs?who=Ann", string(demo.Job("old-pond")), http.StatusCreated)
	x := reads[apiSaved](c, w)
	at := w.Header().Get("Location")
	if x.Revision != 1 || at != "/api/v1/jobs/"+x.ID || w.Header().Get("ETag") != `"1"` || len(x.Faults) > 0 || c.newest(x.ID).Who != "Ann" {
		t.Errorf("%+v at %s", x, at)
	}
	w = c.call(http.MethodGet, at, "", http.StatusOK)
	kept := w.Body.String()
	if w.Header().Get("ETag") != `"1"` {
		t.Error(w.Header())
	}
	if w := c.call(http.MethodGet, at, "", http.StatusNotModified, "If-None-Match", `"1"`); w.Body.Len() > 0 {
		t.Error("sent what the asker has")
	}
	c.call(http.MethodPut, at, kept, http.StatusPreconditionRequired)
	for _, match := range []string{"1", "*", `W/"1"`, `"0"`, `"-1"`, `"1", "2"`, `"x"`, `"99999999999999999999"`} {
		c.call(http.MethodPut, at, kept, http.StatusBadRequest, "If-Match", match)
	}
	if x := reads[apiSaved](c, c.call(http.MethodPut, at, kept, http.StatusOK, "If-Match", `"1"`)); x.Revision != 1 || x.What != "" {
		t.Errorf("a state without a change was kept: %+v", x)
	}
	next := strings.Replace(kept, `"name": "`, `"name": "By a program: `, 1)
	if next == kept {
		t.Fatal("nothing is changed")
	}
	w = c.call(http.MethodPut, at+"?who=Bob", next, http.StatusOK, "If-Match", `"1"`)
	if x := reads[apiSaved](c, w); x.Revision != 2 || x.What == "" || w.Header().Get("ETag") != `"2"` || c.newest(x.ID).Who != "Bob" {
		t.Errorf("%+v", x)
	}
	c.call(http.MethodPut, at+"?who="+strings.Repeat("x", 61), kept, http.StatusBadRequest, "If-Match", `"2"`)
	// Upon a state that is not the newest any more nothing is saved.
	w = c.call(http.MethodPut, at, kept, http.StatusPreconditionFailed, "If-Match", `"1"`)
	if p := reads[Problem](c, w); p.Revision != 2 || p.Expected != `"2"` || p.Where != "If-Match" || c.newest(x.ID).Number != 2 {
		t.Errorf("%+v", p)
	}
	if x := reads[apiSaved](c, c.set(at, `"2"`, http.StatusOK, "/runs/0/length", "62 ft", "/note", "set")); x.Revision != 3 || !strings.Contains(x.What, "62 ft") {
		t.Errorf("%+v", x)
	}
	c.set(at, `"2"`, http.StatusPreconditionFailed, "/runs/0/length", "63 ft")
	p := reads[Problem](c, c.set(at, `"3"`, http.StatusUnprocessableEntity, "/runs/0/length", "long"))
	if p.Where != "/runs/0/length" || p.Example == "" || !strings.HasPrefix(p.Code, "job.read.") || c.newest(x.ID).Number != 3 {
		t.Errorf("%+v", p)
	}
	c.set(at, `"3"`, http.StatusUnprocessableEntity, "/no/such", "1")
	c.set(at, `"3"`, http.StatusUnprocessableEntity, "", "1")
	c.set(at, `"3"`, http.StatusUnprocessableEntity)
	c.call(http.MethodPatch, at, `{"set": [{"path": "/note", "value": "x", "more": 1}]}`, http.StatusUnprocessableEntity, "If-Match", `"3"`)
	states := reads[apiStates](c, c.call(http.MethodGet, at+"/history?limit=2", "", http.StatusOK))
	if len(states.States) != 2 || states.States[0].Revision != 3 || states.Next != "2" {
		t.Errorf("%+v", states)
	}
	if last := reads[apiStates](c, c.call(http.MethodGet, at+"/history?limit=2&before="+states.Next, "", http.StatusOK)); len(last.States) != 1 || last.Next != "" {
		t.Errorf("%+v", last)
	}
	// A job with a fault is kept as it was sent, and its fault told in the shape
	// of every fault.
	c.ill = true
	w = c.call(http.MethodPost, "/api/v1/jobs", `{"format": "plashet job", "version": 1, "name": "x", "units": "us", "site": {"currency": "dollars"}}`, http.StatusCreated)
	c.ill = false
	if x := reads[apiSaved](c, w); len(x.Faults) == 0 || x.Faults[0].Path != "/site/currency" || x.Faults[0].Example == "" {
		t.Errorf("%+v", x)
	}
}

// The list of jobs is read page by page, each job once.
func TestInterfacePages(t *testing.T) {
	c, _ := newCaller(t)
	var all []string
	next := ""
	for range 10 {
		path := "/api/v1/jobs?limit=2"
		if next != "" {
			path += "&before=" + next
		}
		page := reads[apiJobs](c, c.call(http.MethodGet, path, "", http.StatusOK))
		for _, j := range page.Jobs {
			all = append(all, j.ID)
		}
		if next = page.Next; next == "" {
			break
		}
		if len(page.Jobs) != 2 {
			t.Fatal(len(page.Jobs))
		}
	}
	if n := len(all); n != len(demo.Names()) || len(slices.Compact(slices.Sorted(slices.Values(all)))) != n {
		t.Error(all)
	}
}

// What cannot be done gets one sentence, in one shape.
func TestInterfaceRefuses(t *testing.T) {
	c, _ := newCaller(t)
	for _, body := range []string{"", "{", "[]", "null", "12", "\xff", strings.Repeat("[", 100000), "\x00", "\ufeff"} {
		for _, verb := range []string{"design", "check", "choose", "quote", "quantities", "arrange", "jobs"} {
			c.call(http.MethodPost, "/api/v1/"+verb, body, http.StatusUnprocessableEntity, "Content-Type", "application/json")
		}
	}
	c.call(http.MethodPost, "/api/v1/jobs", `{"format": "other"}`, http.StatusUnprocessableEntity)
	sent := string(demo.Job("old-pond"))
	for _, kind := range []string{"", "text/plain", "application/x-www-form-urlencoded", "multipart/form-data; boundary=x"} {
		w := c.call(http.MethodPost, "/api/v1/jobs", sent, http.StatusUnsupportedMediaType, "Content-Type", kind)
		if p := reads[Problem](c, w); p.Where != "Content-Type" || p.Expected != "application/json" {
			t.Errorf("%+v", p)
		}
	}
	c.call(http.MethodPost, "/api/v1/design", sent+strings.Repeat(" ", 17<<20), http.StatusRequestEntityTooLarge)
	for path, want := range map[string]int{
		"/api/v1/jobs/none/design": 404, hill + "/draw/none": 404, hill + "/export/none.csv": 404, hill + "/print/none.pdf": 404, "/api/v1/none": 404, "/api/v1/": 404,
		"/api/v1/tables/none": 404, hill + "/explain/none": 404, "/api/v1/arrange/none": 404, hill + "?revision=99": 404,
		"/api/v1/jobs/" + strings.Repeat("x", 10000): 404, "/api/v1/jobs/%00": 404, "/api/v1/jobs/..%2f..%2fetc/design": 404, "/api/v1/jobs/prices": 404,
		"/api/v1/jobs?limit=0": 400, "/api/v1/jobs?limit=-1": 400, "/api/v1/jobs?limit=201": 400, "/api/v1/jobs?limit=x": 400, "/api/v1/jobs?limit=1&limit=2": 400,
		"/api/v1/jobs?before=-5": 400, "/api/v1/jobs?before=99999999999999999999": 400, "/api/v1/jobs?aside=perhaps": 400, "/api/v1/jobs?no=1": 400, "/api/v1/jobs?%zz": 400, "/api/v1/jobs?a;b": 400,
		hill + "?revision=0": 400, hill + "?revision=-3": 400, hill + "/design?units=us": 400, hill + "/choose?pumps=three": 400, hill + "/choose?years=-1": 400, hill + "/choose?years=much": 400, hill + "/choose?years=nan": 400,
		hill + "/choose?speed=fast": 400, hill + "/choose?speed=5": 400, hill + "/choose?discount=101": 400, hill + "/quote?for=me": 400, hill + "/print/cut.pdf?paper=a0": 400,
	} {
		c.call(http.MethodGet, path, "", want)
	}
	for path, methods := range map[string]string{"/api/v1/jobs": "GET, POST", hill: "GET, PATCH, PUT", hill + "/design": "GET", "/api/v1/design": "POST", hill + "/arrange": "DELETE, GET, POST"} {
		for _, method := range []string{"DELETE", "TRACE", "OPTIONS", "PURGE"} {
			if strings.Contains(methods, method) {
				continue
			}
			if w := c.call(method, path, "", http.StatusMethodNotAllowed); w.Header().Get("Allow") != methods {
				t.Errorf("%s %s: %s", method, path, w.Header().Get("Allow"))
			}
		}
	}
	// In the language that is asked for.
	w := c.call(http.MethodGet, "/api/v1/jobs?limit=x", "", http.StatusBadRequest, "Accept-Language", "es")
	if p := reads[Problem](c, w); !strings.Contains(p.Detail, "parámetro") {
		t.Error(p.Detail)
	}
	// Where nothing can be done beside the requests, long work is refused.
	plain := &caller{desk: newDesk(t), doc: c.doc, router: c.router, called: c.called}
	for _, method := range []string{http.MethodPost, http.MethodGet, http.MethodDelete} {
		plain.call(method, hill+"/arrange", "", http.StatusServiceUnavailable)
	}
	if len(c.logs)+len(plain.logs) > 0 {
		t.Error(c.logs, plain.logs)
	}
}
