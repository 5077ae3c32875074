package app

import (
	_ "embed" // the description
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"plashet/store"
)

// description is the interface for other programs as OpenAPI 3.0.3 describes it.
// It is made from the operations and their types (go test ./app -run Description
// -update).
//
//go:embed static/openapi.json
var description []byte

// underInterface is the beginning of its addresses.
const underInterface = "/api/v1"

// operation is one thing that other programs may ask. The table of them is what
// the addresses are served from, what a request is held against, and what the
// description is made from.
type operation struct {
	id, method, path string // the path under the interface
	about            string
	params           []param
	in               any      // the body: a value of its type; nil for none
	out              any      // the answer: likewise; nil for a file
	files            []string // types of the file that is given
	status           int      // of an answer; 0: 200
	etag             bool     // it tells the revision as ETag
	ifMatch          bool     // it changes the revision that If-Match names
	do               func(w http.ResponseWriter, r *http.Request) error
}

// others adds what other programs may ask: the same verbs as the command line,
// on the jobs of the store and on a job that is sent.
func (a *app) others(mux *http.ServeMux) {
	allowed := map[string][]string{}
	for _, op := range a.operations() {
		mux.Handle(op.method+" "+underInterface+op.path, a.guardOthers(a.held(op)))
		allowed[op.path] = append(allowed[op.path], op.method)
	}
	for path, methods := range allowed {
		slices.Sort(methods)
		allow := strings.Join(methods, ", ")
		mux.Handle(underInterface+path, a.guardOthers(func(w http.ResponseWriter, r *http.Request) error {
			w.Header().Set("Allow", allow)
			return a.wrong(http.StatusMethodNotAllowed, "app.api.method", "", r.Method, allow, methods[0])
		}))
	}
	mux.Handle(underInterface+"/", a.guardOthers(func(http.ResponseWriter, *http.Request) error { return errNoPage }))
}

// held holds a request against what its operation takes before it is done.
func (a *app) held(op operation) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		if err := a.heldParams(op.params, r); err != nil {
			return err
		}
		if op.in != nil {
			// A page of another site can send a form without being asked, but neither of these.
			kind, _, _ := strings.Cut(r.Header.Get("Content-Type"), ";")
			if want := op.takes(); !strings.EqualFold(strings.TrimSpace(kind), want) {
				return a.wrong(http.StatusUnsupportedMediaType, "app.api.type", "Content-Type", kind, want, want)
			}
		}
		return op.do(w, r)
	}
}

const (
	mediaJSON = "application/json"
	mediaCSV  = "text/csv"
)

// takes gives the type of the body of a request.
func (op *operation) takes() string {
	if _, is := op.in.(csvRows); is {
		return mediaCSV
	}
	return mediaJSON
}

// sendJSON answers with a value as JSON.
func sendJSON(w http.ResponseWriter, status int, x any) error {
	data, err := json.Marshal(x)
	if err != nil {
		return err
	}
	return sendBytes(w, status, mediaJSON, data)
}

func sendBytes(w http.ResponseWriter, status int, kind string, data []byte) error {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(data)
	return nil
}

// guardOthers is guard for programs: what goes wrong is told as a problem.
func (a *app) guardOthers(h func(w http.ResponseWriter, r *http.Request) error) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if p := recover(); p != nil {
				a.tellProblem(w, fmt.Errorf("panic: %v", p))
			}
		}()
		r.Body = http.MaxBytesReader(w, r.Body, mostBody)
		if err := h(w, r); err != nil {
			a.tellProblem(w, err)
		}
	})
}

// tellProblem is the one shape in which everything that goes wrong is told.
func (a *app) tellProblem(w http.ResponseWriter, err error) {
	x := Problem{Status: http.StatusInternalServerError, Code: "app.error.ours"}
	var no refusal
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &x):
	case errors.As(err, &no):
		x.Status, x.Code, x.Detail = no.status, no.code, no.text
	case errors.Is(err, errNoPage):
		x.Status, x.Code = http.StatusNotFound, "app.error.page"
	case errors.Is(err, store.ErrNone), errors.Is(err, store.ErrGone), errors.Is(err, store.ErrName):
		x.Status, x.Code = http.StatusNotFound, "app.error.none"
	case errors.Is(err, store.ErrLarge), errors.As(err, &large):
		x.Status, x.Code = http.StatusRequestEntityTooLarge, "app.error.large"
	default:
		ref := a.NewID()
		x.Instance = "urn:plashet:failure:" + ref
		if a.Log != nil {
			a.Log(ref, err)
		}
	}
	if x.Detail == "" {
		x.Detail = a.say(x.Code)
	}
	x.Tell(w)
}
