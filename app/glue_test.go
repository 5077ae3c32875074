package app

import (
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"plashet/answer"
	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// inSpanish reads a page as a device set to Spanish shows it.
func (d *desk) inSpanish(path string) string {
	d.t.Helper()
	r := httptest.NewRequest(http.MethodGet, path, nil)
	r.Header.Set("Accept-Language", "es-MX,es;q=0.9")
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	if w.Code != http.StatusOK {
		d.t.Fatal(path, w.Code)
	}
	return w.Body.String()
}

// What is ticked in one language is ticked in the other: the glue is in the joint.
func TestTicksHoldInEveryLanguage(t *testing.T) {
	d := newDesk(t)
	const at = "/jobs/example-hillside-cascade"
	for _, step := range []string{"1", "2"} {
		d.post(at + "/glue/" + step)
	}
	if n := strings.Count(d.inSpanish(at+"/part/glue"), "stamp done"); n != 2 {
		t.Errorf("%d of 2 ticks stand in Spanish", n)
	}
	d.inSpanish(at + "/glue/4") // looked at, not ticked
	if n := strings.Count(d.get(at+"/part/glue"), "stamp done"); n != 2 {
		t.Errorf("%d of 2 ticks stand after a look in Spanish", n)
	}
}

// Ticks that were kept by what the steps said, in whatever language and units,
// still count.
func TestOldTicksCount(t *testing.T) {
	d := newDesk(t)
	const id = "example-hillside-cascade"
	j, faults := job.Read(d.newest(id).Data)
	r := design.Solve(d.given.Book, j, faults...)
	for _, l := range words.Languages() {
		for _, system := range []unit.System{unit.US, unit.Metric} {
			r.Units = system
			data, err := json.Marshal(answer.Build(r, faults, l).Glue)
			if err != nil {
				t.Fatal(err)
			}
			old, err := json.Marshal(gluePlace{Steps: digest(data)[:16], Done: []int{1, 2, 3}, At: 4})
			if err != nil {
				t.Fatal(err)
			}
			if err := d.store.SetPlace(context.Background(), id, placeGlue, old); err != nil {
				t.Fatal(err)
			}
			if n := strings.Count(d.get("/jobs/"+id+"/part/glue"), "stamp done"); n != 3 {
				t.Errorf("%s %v: %d of 3 old ticks stand", l.Tag, system, n)
			}
		}
	}
	if err := d.store.SetPlace(context.Background(), id, placeGlue, []byte(`{"steps":"0123456789abcdef","done":[1],"at":2}`)); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(d.get("/jobs/"+id+"/part/glue"), "stamp done") {
		t.Error("ticks of other steps stand")
	}
}
