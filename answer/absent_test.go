package answer

import (
	"bytes"
	"encoding/json"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/words"
)

// TestNothingLooksLikeZero: a quantity that is not known is absent from the
// JSON: none has an empty text, so that a 0 is a real one. The last job lacks
// nearly everything.
func TestNothingLooksLikeZero(t *testing.T) {
	all := answers(t)
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, _ := job.Read(demo.Job("old-pond"))
	j.Pond.Rim, j.Watercourses, j.Stock = job.Level{}, nil, job.Stock{}
	all["bare"] = design.Solve(book, j)
	seen := 0
	for name, r := range all {
		var b bytes.Buffer
		if err := JSON(&b, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		var v any
		if err := json.Unmarshal(b.Bytes(), &v); err != nil {
			t.Fatal(err)
		}
		empty(t, name, v, &seen)
	}
	if seen == 0 {
		t.Error("no quantity was seen")
	}
}

func empty(t *testing.T, path string, v any, seen *int) {
	switch x := v.(type) {
	case map[string]any:
		if _, is := x["si"]; is {
			*seen++
			if x["text"] == "" || x["text"] == "–" {
				t.Errorf("%s: %v", path, x)
			}
		}
		if title, is := x["title"]; is && title == "" {
			t.Errorf("%s: a source without a title", path)
		}
		for k, e := range x {
			empty(t, path+"/"+k, e, seen)
		}
	case []any:
		for _, e := range x {
			empty(t, path, e, seen)
		}
	}
}

// TestWaterOverThePump: the JSON tells the water over the pump's floor where the
// text does.
func TestWaterOverThePump(t *testing.T) {
	text, d := printed(t, solved(t, nil))
	n := 0
	for _, s := range d.Levels {
		if s.OverPump.Text == "" {
			continue
		}
		n++
		if s.NeedsPump.SI <= 0 || !bytes.Contains([]byte(text), []byte(s.OverPump.Text)) {
			t.Errorf("%s %s: %+v of %+v", s.Course, s.Moment, s.OverPump, s.NeedsPump)
		}
	}
	if n == 0 {
		t.Error("no state tells it")
	}
}
