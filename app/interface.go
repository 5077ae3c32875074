package app

import (
	"bytes"
	"context"
	_ "embed" // the description
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"slices"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/design"
	"plashet/export"
	"plashet/job"
	"plashet/render/svg"
	"plashet/store"
)

// description is the interface for other programs as OpenAPI 3.0.3 describes it.
//
//go:embed static/openapi.json
var description []byte

// underInterface is the beginning of its addresses.
const underInterface = "/api/v1"

// problem is an error as RFC 9457 wants it told.
type problem struct {
	Title    string `json:"title"`
	Status   int    `json:"status"`
	Detail   string `json:"detail"`
	Instance string `json:"instance,omitempty"` // a reference, of what failed on our side
}

// others adds what other programs may ask: the same verbs as the command line,
// on the jobs of the store and on a job that is sent.
func (a *app) others(mux *http.ServeMux) {
	on := func(pattern string, h func(w http.ResponseWriter, r *http.Request) error) {
		mux.Handle(pattern, a.guardOthers(h))
	}
	on("GET "+underInterface+"/openapi.json", func(w http.ResponseWriter, _ *http.Request) error {
		return sendBytes(w, "application/json", description)
	})
	on("GET "+underInterface+"/jobs", a.apiJobs)
	on("GET "+underInterface+"/jobs/{id}", func(w http.ResponseWriter, r *http.Request) error {
		o, err := a.open(r)
		if err != nil {
			return err
		}
		return sendBytes(w, "application/json", o.rev.Data)
	})
	on("GET "+underInterface+"/jobs/{id}/answer", a.onJob(func(o *opened) (any, error) { return o.doc, nil }))
	on("GET "+underInterface+"/jobs/{id}/check", a.onJob(func(o *opened) (any, error) { return faultsOf(o.solved), nil }))
	on("GET "+underInterface+"/jobs/{id}/choose", a.onJob(func(o *opened) (any, error) {
		x := a.choosing(context.Background(), o, shelfOwn, design.Want{Pairs: design.PairsAlike}, nil)
		return answer.BuildChosen(x.choice, nil, a.Language), nil
	}))
	on("GET "+underInterface+"/jobs/{id}/sheets", a.onJob(func(o *opened) (any, error) {
		list := []sheetLine{}
		for _, s := range drawing.Sheets(a.drawn(o.solved)) {
			list = append(list, sheetLine{s.Name, s.Title})
		}
		return map[string]any{"sheets": list}, nil
	}))
	on("GET "+underInterface+"/jobs/{id}/sheets/{name}", a.apiSheet)
	on("GET "+underInterface+"/jobs/{id}/export", a.onJob(func(o *opened) (any, error) {
		list, in := []string{}, a.exporting(o)
		for _, name := range a.exportable() {
			if export.Has(in, name) {
				list = append(list, export.FileName(name))
			}
		}
		return map[string]any{"files": list}, nil
	}))
	on("GET "+underInterface+"/jobs/{id}/export/{file}", a.exportFile)
	on("POST "+underInterface+"/answer", a.onSent(func(s *solved) any { return s.doc }))
	on("POST "+underInterface+"/check", a.onSent(faultsOf))
	on(underInterface+"/", func(http.ResponseWriter, *http.Request) error { return errNoPage })
}

// sheetLine is one drawing of a list.
type sheetLine struct {
	Name  string `json:"name"`
	Title string `json:"title"`
}

// faultsOf are the faults in a job.
func faultsOf(s *solved) any {
	list := s.doc.Faults
	if list == nil {
		list = []answer.Fault{}
	}
	return map[string]any{"faults": list}
}

// onJob answers a question about a job of the store.
func (a *app) onJob(f func(o *opened) (any, error)) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		o, err := a.open(r)
		if err != nil {
			return err
		}
		x, err := f(o)
		if err != nil {
			return err
		}
		return sendJSON(w, x)
	}
}

// onSent answers a question about a job that is sent, and keeps nothing of it.
func (a *app) onSent(f func(s *solved) any) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		data, err := io.ReadAll(r.Body)
		var large *http.MaxBytesError
		switch {
		case errors.As(err, &large), len(data) > job.MaxBytes:
			return store.ErrLarge
		case err != nil:
			return a.refuse(http.StatusBadRequest, "app.error.form")
		}
		j, faults := job.Read(data)
		if j == nil {
			text := a.say("app.error.form")
			if len(faults) > 0 {
				text = a.Language.Say(faults[0].Message, 0)
			}
			return refusal{http.StatusUnprocessableEntity, text}
		}
		return sendJSON(w, f(a.solve(digest(data), data)))
	}
}

// apiJobs lists the jobs, those saved last first.
func (a *app) apiJobs(w http.ResponseWriter, r *http.Request) error {
	entries, _, err := a.Store.List(r.Context(), store.Query{Kind: store.Job, Text: r.URL.Query().Get("text"), Limit: perPage})
	if err != nil {
		return err
	}
	type line struct {
		ID       string `json:"id"`
		Name     string `json:"name"`
		Place    string `json:"place,omitempty"`
		Revision int    `json:"revision"`
	}
	list := []line{}
	for _, e := range entries {
		list = append(list, line{e.ID, e.Summary.Name, e.Summary.Place, e.Number})
	}
	return sendJSON(w, map[string]any{"jobs": list})
}

// apiSheet gives one drawing as SVG.
func (a *app) apiSheet(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	list := drawing.Sheets(a.drawn(o.solved))
	i := slices.IndexFunc(list, func(s drawing.Sheet) bool { return s.Name == r.PathValue("name") })
	if i < 0 {
		return errNoPage
	}
	var b bytes.Buffer
	if err := svg.Write(&b, &list[i]); err != nil {
		return err
	}
	return sendBytes(w, "image/svg+xml", b.Bytes())
}

func sendJSON(w http.ResponseWriter, x any) error {
	data, err := json.Marshal(x)
	if err != nil {
		return err
	}
	return sendBytes(w, "application/json", data)
}

func sendBytes(w http.ResponseWriter, kind string, data []byte) error {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", "no-store")
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

func (a *app) tellProblem(w http.ResponseWriter, err error) {
	x := problem{Status: http.StatusInternalServerError, Detail: a.say("app.error.ours")}
	var no refusal
	switch {
	case errors.As(err, &no):
		x.Status, x.Detail = no.status, no.text
	case errors.Is(err, errNoPage):
		x.Status, x.Detail = http.StatusNotFound, a.say("app.error.page")
	case errors.Is(err, store.ErrNone), errors.Is(err, store.ErrGone):
		x.Status, x.Detail = http.StatusNotFound, a.say("app.error.none")
	case errors.Is(err, store.ErrLarge):
		x.Status, x.Detail = http.StatusRequestEntityTooLarge, a.say("app.error.large")
	default:
		x.Instance = "urn:plashet:failure:" + a.NewID()
		if a.Log != nil {
			a.Log(x.Instance, err)
		}
	}
	x.Title = http.StatusText(x.Status)
	data, _ := json.Marshal(x) // of texts and a number
	h := w.Header()
	h.Set("Content-Type", "application/problem+json")
	h.Set("Cache-Control", "no-store")
	w.WriteHeader(x.Status)
	_, _ = w.Write(data)
}
