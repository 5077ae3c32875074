package app

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers/legacy"

	"plashet/demo"
)

// The interface keeps its own description: every operation in it is called, and
// request and answer are held against it by another's reader (kin-openapi).
func TestInterfaceKeepsItsDescription(t *testing.T) {
	d := newDesk(t)
	doc, err := openapi3.NewLoader().LoadFromData([]byte(d.get("/api/v1/openapi.json")))
	if err != nil {
		t.Fatal(err)
	}
	if err := doc.Validate(context.Background()); err != nil {
		t.Fatal(err)
	}
	router, err := legacy.NewRouter(doc)
	if err != nil {
		t.Fatal(err)
	}
	for _, kind := range []string{"image/svg+xml", "image/vnd.dxf", "model/gltf-binary"} {
		openapi3filter.RegisterBodyDecoder(kind, openapi3filter.FileBodyDecoder)
	}
	called := map[string]bool{}
	call := func(method, path, body string, want int) {
		t.Helper()
		r := httptest.NewRequest(method, path, strings.NewReader(body))
		if body != "" {
			r.Header.Set("Content-Type", "application/json")
		}
		w := httptest.NewRecorder()
		d.ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("%s %s: %d, want %d: %.200s %v", method, path, w.Code, want, w.Body, d.logs)
		}
		route, params, err := router.FindRoute(r)
		if err != nil {
			if want != http.StatusNotFound {
				t.Errorf("%s %s is not described: %v", method, path, err)
			}
			return
		}
		if want == http.StatusOK {
			called[route.Operation.OperationID] = true
		}
		err = openapi3filter.ValidateResponse(context.Background(), &openapi3filter.ResponseValidationInput{
			RequestValidationInput: &openapi3filter.RequestValidationInput{Request: r, Route: route, PathParams: params},
			Status:                 w.Code, Header: w.Header(), Body: io.NopCloser(bytes.NewReader(w.Body.Bytes())),
		})
		if err != nil {
			t.Errorf("%s %s: the answer is not as described: %.600v", method, path, err)
		}
	}
	job := "/api/v1/jobs/example-hillside-cascade"
	for _, path := range []string{"/api/v1/openapi.json", "/api/v1/jobs", "/api/v1/jobs?text=hill", job, job + "/answer", job + "/check", job + "/choose", job + "/sheets", job + "/sheets/curve", job + "/export"} {
		call(http.MethodGet, path, "", http.StatusOK)
	}
	for _, name := range []string{"cuts.csv", "plan.dxf", "model.glb", "job.json", "job.schema.json"} {
		call(http.MethodGet, job+"/export/"+name, "", http.StatusOK)
	}
	sent := string(demo.Job("old-pond"))
	call(http.MethodPost, "/api/v1/answer", sent, http.StatusOK)
	call(http.MethodPost, "/api/v1/check", sent, http.StatusOK)
	call(http.MethodPost, "/api/v1/check", `{"format": "plashet job", "version": 1, "units": "furlongs"}`, http.StatusOK)
	for path, item := range doc.Paths.Map() {
		for method, op := range item.Operations() {
			if !called[op.OperationID] {
				t.Errorf("%s %s is described and was not called", method, path)
			}
		}
	}
	// What cannot be done gets one sentence, as a problem.
	for _, body := range []string{"", "{", "[]", "null", "12", `{"format": "other"}`, "\xff", strings.Repeat("[", 100000)} {
		call(http.MethodPost, "/api/v1/answer", body, http.StatusUnprocessableEntity)
	}
	call(http.MethodGet, "/api/v1/jobs/none/answer", "", http.StatusNotFound)
	call(http.MethodGet, job+"/sheets/none", "", http.StatusNotFound)
	call(http.MethodGet, job+"/export/none.csv", "", http.StatusNotFound)
	call(http.MethodGet, "/api/v1/none", "", http.StatusNotFound)
}
