package app

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers"
	"github.com/getkin/kin-openapi/routers/legacy"

	"plashet/demo"
)

// caller calls the interface and holds every request and answer against the
// description, by a reader of others (kin-openapi).
type caller struct {
	*desk
	doc    *openapi3.T
	router routers.Router
	called map[string]bool // operations that were answered as they should
	ill    bool            // requests are wrong on purpose
}

func newCaller(t *testing.T) (*caller, *byHand) {
	t.Helper()
	d, runs := withRuns(t)
	c := &caller{desk: d, called: map[string]bool{}}
	var err error
	if c.doc, err = openapi3.NewLoader().LoadFromData([]byte(d.get("/api/v1/openapi.json"))); err != nil {
		t.Fatal(err)
	}
	if err := c.doc.Validate(context.Background()); err != nil {
		t.Fatal(err)
	}
	if c.router, err = legacy.NewRouter(c.doc); err != nil {
		t.Fatal(err)
	}
	for _, kind := range []string{"image/svg+xml", "image/vnd.dxf", "model/gltf-binary", "application/pdf"} {
		openapi3filter.RegisterBodyDecoder(kind, openapi3filter.FileBodyDecoder)
	}
	return c, runs
}

// call sends a request that must be answered with a status.
func (c *caller) call(method, path, body string, want int, headers ...string) *httptest.ResponseRecorder {
	c.t.Helper()
	fresh := func() *http.Request {
		r := httptest.NewRequest(method, path, strings.NewReader(body))
		if body != "" {
			r.Header.Set("Content-Type", "application/json")
		}
		for i := 0; i+1 < len(headers); i += 2 {
			r.Header.Set(headers[i], headers[i+1])
		}
		return r
	}
	w := httptest.NewRecorder()
	c.ServeHTTP(w, fresh())
	at := method + " " + short(path)
	if w.Code != want {
		c.t.Errorf("%s: %d, want %d: %.300s %v", at, w.Code, want, w.Body, c.logs)
	}
	if w.Code >= 400 {
		c.problem(at, w)
	}
	r := fresh()
	route, params, err := c.router.FindRoute(r)
	if err != nil {
		if want != http.StatusNotFound && want != http.StatusMethodNotAllowed {
			c.t.Errorf("%s is not described: %v", at, err)
		}
		return w
	}
	in := &openapi3filter.RequestValidationInput{Request: r, Route: route, PathParams: params, Options: &openapi3filter.Options{AuthenticationFunc: openapi3filter.NoopAuthenticationFunc}}
	if want < 300 {
		if err := openapi3filter.ValidateRequest(context.Background(), in); err != nil && !c.ill {
			c.t.Errorf("%s: the request is not as described: %.600v", at, err)
		}
		c.called[route.Operation.OperationID] = true
	}
	err = openapi3filter.ValidateResponse(context.Background(), &openapi3filter.ResponseValidationInput{
		RequestValidationInput: in, Status: w.Code, Header: w.Header(), Body: io.NopCloser(bytes.NewReader(w.Body.Bytes())),
	})
	if err != nil {
		c.t.Errorf("%s: the answer is not as described: %.900v", at, err)
	}
	return w
}

// problem holds what went wrong against the one shape, and its sentence against
// the rules of every sentence.
func (c *caller) problem(at string, w *httptest.ResponseRecorder) {
	c.t.Helper()
	var p Problem
	dec := json.NewDecoder(bytes.NewReader(w.Body.Bytes()))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&p); err != nil || w.Header().Get("Content-Type") != "application/problem+json" {
		c.t.Errorf("%s: no problem but %.200s (%v)", at, w.Body, err)
		return
	}
	if p.Status != w.Code || p.Code == "" || !strings.HasSuffix(p.Type, p.Code) || !strings.HasSuffix(p.Detail, ".") || broken.MatchString(p.Detail) || len(p.Detail) > 1500 {
		c.t.Errorf("%s: %+v", at, p)
	}
}

// reads reads an answer.
func reads[T any](c *caller, w *httptest.ResponseRecorder) (x T) {
	c.t.Helper()
	if err := json.Unmarshal(w.Body.Bytes(), &x); err != nil {
		c.t.Fatal(err)
	}
	return x
}

const hill = "/api/v1/jobs/example-hillside-cascade"

// Every operation is called, for every example job, and each answer held against
// its schema; what is described is served, and what is served is described.
func TestInterfaceKeepsItsDescription(t *testing.T) {
	c, runs := newCaller(t)
	get := func(path string) *httptest.ResponseRecorder {
		t.Helper()
		return c.call(http.MethodGet, path, "", http.StatusOK)
	}
	for _, path := range []string{"openapi.json", "schema", "jobs", "jobs?text=hill&limit=2", "jobs?aside=true", "tables", "pumps", "prices"} {
		get("/api/v1/" + path)
	}
	for _, table := range reads[apiTables](c, get("/api/v1/tables")).Tables {
		if got := reads[apiTable](c, get("/api/v1/tables/"+table.Name)); len(got.Rows) != table.Rows || table.Rows == 0 {
			t.Errorf("%s: %d rows of %d", table.Name, len(got.Rows), table.Rows)
		}
	}
	for _, name := range demo.Names() {
		at := "/api/v1/jobs/example-" + name
		for _, path := range []string{"", "?revision=1", "/history", "/design", "/check", "/quantities", "/explain/pump.flow", "/choose", "/choose?shelf=invented&pumps=any", "/quote", "/quote?for=client", "/draw", "/print", "/export"} {
			get(at + path)
		}
		sent := string(demo.Job(name))
		for _, verb := range []string{"design", "check", "quantities", "choose", "choose?shelf=invented", "quote", "quote?for=client"} {
			c.call(http.MethodPost, "/api/v1/"+verb, sent, http.StatusOK)
		}
		for _, s := range reads[apiSheets](c, get(at+"/draw")).Sheets {
			get(at + "/draw/" + s.Name)
		}
		for _, f := range reads[apiFiles](c, get(at+"/export")).Files {
			get(at + "/export/" + f)
		}
	}
	get(hill + "/choose?shelf=shared&pumps=one&pipe=PVC+Sch+40&pipe=PVC+Sch+80&oneSize=true&speed=6+ft%2Fs&years=10&discount=4.5")
	get(hill + "/print/cut.pdf?paper=a4")
	c.ill = true // jobs with faults are answered too
	c.call(http.MethodPost, "/api/v1/check", `{"format": "plashet job", "version": 1, "units": "furlongs"}`, http.StatusOK)
	c.call(http.MethodPost, "/api/v1/design", `{"format": "plashet job", "version": 1, "name": "x", "units": "us"}`, http.StatusOK)
	c.call(http.MethodPost, "/api/v1/quote", `{"format": "plashet job", "version": 1, "name": "x", "units": "us", "pumps": [{"price": "dear"}]}`, http.StatusOK)
	c.call(http.MethodPost, "/api/v1/choose", `{"format": "plashet job", "version": 1, "name": "x", "units": "us"}`, http.StatusOK)
	c.ill = false
	c.arranges(runs)
	c.writes()
	c.states()
	c.keeps(runs)
	c.shelves()
	c.shelfOnes()
	c.shelfBack()
	served := map[string]bool{}
	for _, op := range (&app{}).operations() {
		served[op.method+" "+underInterface+op.path] = true
		if !c.called[op.id] {
			t.Errorf("%s is served and was not called", op.id)
		}
	}
	for path, item := range c.doc.Paths.Map() {
		for method := range item.Operations() {
			if !served[method+" "+path] {
				t.Errorf("%s %s is described and not served", method, path)
			}
			delete(served, method+" "+path)
		}
	}
	for at := range served {
		t.Errorf("%s is served and not described", at)
	}
	if len(c.logs) > 0 {
		t.Error(c.logs)
	}
}

// arranges begins, follows and stops a search, of a job that is kept and of one
// that is sent.
func (c *caller) arranges(runs *byHand) {
	c.t.Helper()
	const at = "/api/v1/jobs/example-terrace-spout/arrange"
	c.call(http.MethodGet, at, "", http.StatusNotFound)
	c.call(http.MethodDelete, at, "", http.StatusNotFound)
	w := c.call(http.MethodPost, at+"?elbows=2", "", http.StatusAccepted)
	if x := reads[apiSearch](c, w); x.State != "running" || x.Progress != "begun" || x.At != at || w.Header().Get("Location") != at || x.Result != nil {
		c.t.Errorf("%+v", x)
	}
	c.call(http.MethodPost, at+"?elbows=2", "", http.StatusAccepted)
	runs.all()
	x := reads[apiSearch](c, c.call(http.MethodGet, at, "", http.StatusOK))
	if x.State != "done" || x.Result == nil || len(x.Result.Layouts) == 0 || x.Stale {
		c.t.Errorf("%s %v %d", x.State, x.Stale, len(x.Result.Layouts))
	}
	// What is there already is not looked for again.
	if x := reads[apiSearch](c, c.call(http.MethodPost, at+"?elbows=2", "", http.StatusAccepted)); x.State != "done" || len(runs.work) > 0 {
		c.t.Error("it is looked for again", x.State)
	}
	sent := string(demo.Job("courtyard-rill"))
	w = c.call(http.MethodPost, "/api/v1/arrange?elbows=2", sent, http.StatusAccepted)
	there := w.Header().Get("Location")
	c.call(http.MethodGet, there, "", http.StatusOK)
	c.call(http.MethodDelete, there, "", http.StatusOK)
	runs.all()
	if x := reads[apiSearch](c, c.call(http.MethodGet, there, "", http.StatusOK)); x.State != "done" || x.Result == nil || x.Result.Claim != "stopped" && len(x.Result.Layouts) > 0 {
		c.t.Errorf("%+v", x)
	}
	c.call(http.MethodPost, at+"?elbows=3", "", http.StatusAccepted)
	c.call(http.MethodDelete, at, "", http.StatusOK)
	runs.all()
	c.call(http.MethodGet, at, "", http.StatusOK)
	c.post("/jobs/example-terrace-spout/set", "here", "vault", "/note", "another day")
	if x := reads[apiSearch](c, c.call(http.MethodGet, at, "", http.StatusOK)); !x.Stale {
		c.t.Error("the job has changed, and the search is not told as stale")
	}
	runs.full = true
	c.call(http.MethodPost, at+"?elbows=4", "", http.StatusServiceUnavailable)
	runs.full = false
}
