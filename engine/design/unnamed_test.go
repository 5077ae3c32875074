package design

import (
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/job"
	"plashet/takeoff"
)

// TestUnnamedFitting: a fitting of a run that nobody has named is listed by what
// is known of it, the pipe that it is on; before, it was listed as ", 2".
func TestUnnamedFitting(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	text := string(demo.Job("hillside-cascade"))
	const old = `{"fitting": "elbow 90", "count": 3}`
	if !strings.Contains(text, old) {
		t.Fatalf("the example has no %s", old)
	}
	j, faults := job.Read([]byte(strings.Replace(text, old, `{"count": 3}`, 1)))
	if j == nil || len(faults) == 0 {
		t.Fatal("a fitting without a name passes")
	}
	list := Solve(book, j, faults...).Materials
	unnamed := func(i takeoff.Item) bool {
		return i.Name == takeoff.NameUnnamed && strings.HasPrefix(i.Size, "PVC Sch 40 ")
	}
	if !slices.ContainsFunc(list, unnamed) {
		t.Error("it is not listed")
	}
	for i := range list {
		if list[i].Name == "" {
			t.Errorf("an item without a name: %+v", list[i])
		}
	}
}
