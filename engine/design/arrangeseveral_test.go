package design

import (
	"slices"
	"strings"
	"testing"

	"plashet/job"
)

// TestInsteadSeveral: the stock has the fitting for the hole in another size than the
// pump's pipe, and one elbow too few. No fitting alone helps; of the pairs that are
// told each lets a layout fit once it is written into the job, and one that is written
// by half does not.
func TestInsteadSeveral(t *testing.T) {
	book, j := read(t, "terrace-spout")
	j.Assembly, j.Stock.Fittings = job.Assembly{Pipe: j.Assembly.Pipe}, nil
	setAll(t, j, with(stood("lying", "180 deg"), stocked("elbow 90:1", "union:1", "check valve spring:1")))
	setAll(t, j, map[string]string{
		"/stock/fittings/4/size":     "2", // the bulkhead fitting
		"/stock/offcuts/1/pipe/kind": "PVC Sch 40",
		"/stock/offcuts/1/pipe/size": "2",
		"/stock/offcuts/1/length":    "10 ft",
	})
	want := ArrangeWant{Elbows: 2}
	fits := func(j *job.Job) bool {
		a := Arrange(t.Context(), book, j, want, nil)
		return a.Outcome != nil && len(a.Outcome.Layouts) > 0
	}
	a := Arrange(t.Context(), book, j, want, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) > 0 {
		t.Fatalf("was to have nothing that fits: %v", a.Faults)
	}
	var told []string
	for n := range a.Outcome.Short {
		s := &a.Outcome.Short[n]
		if s.What.Code != ChangeSeveral || len(s.Besides) != 1 || !s.Sure {
			t.Errorf("%s, with %d others, sure: %v", s.What.Code, len(s.Besides), s.Sure)
			continue
		}
		told = append(told, s.What.Args[0].Text)
		list := a.Mend(j, n)
		if len(list) < 2 {
			t.Fatalf("%v writes %v", s.What.Args, list)
		}
		next := j.Clone()
		for _, e := range list {
			if f := next.Set(e.Path, e.Text); f != nil {
				t.Errorf("%s: %v", e.Path, f)
			}
		}
		if !fits(next) {
			t.Errorf("with %v nothing fits", list)
		}
	}
	if !slices.Contains(told, "bulkhead fitting 1-1/2: 1, elbow 90 1-1/2: 1") {
		t.Errorf("told: %s", strings.Join(told, "; "))
	}
	for _, half := range []map[string]string{
		{"/stock/fittings/0/count": "2"},
		{"/stock/fittings/5/fitting": "bulkhead fitting", "/stock/fittings/5/size": "1-1/2", "/stock/fittings/5/count": "1"},
	} {
		next := j.Clone()
		if setAll(t, next, half); fits(next) {
			t.Errorf("with %v alone something fits", half)
		}
	}
}
