package design

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/job"
)

// Every remedy of the example jobs that can be taken does what it says: the
// figure that it moves comes to what was told, or the finding is gone.
func TestTakenRemediesDoAsTold(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	taken := map[string]int{}
	for _, name := range demo.Names() {
		j, _ := job.Read(demo.Job(name))
		r := Solve(book, j)
		for _, f := range r.Findings {
			for _, m := range f.Remedies {
				next, ok := Take(book, j, r, m)
				if !ok {
					t.Logf("%s: %s cannot be taken", name, m.Code)
					continue
				}
				taken[m.Code]++
				data, err := job.Encode(next)
				if err != nil {
					t.Fatal(err)
				}
				again, faults := job.Read(data)
				if len(faults) > 0 {
					t.Errorf("%s: %s leaves faults: %v", name, m.Code, faults)
					continue
				}
				held(t, name, f, m, Solve(book, again))
			}
		}
	}
	for _, code := range []string{RemedyOption, RemedyPump, RemedySill, RemedyRim} {
		if taken[code] == 0 {
			t.Errorf("no example offers %s: the test holds nothing of it", code)
		}
	}
}

// takenWithin is how near a figure comes to what was told, as a part of it and
// in SI: valves and lengths are typed rounded, and a level moves the flow a
// little, which moves the levels.
const takenWithin, takenNear = 0.02, 0.001

func held(t *testing.T, name string, f trace.Finding, m trace.Remedy, r *Result) {
	t.Helper()
	for _, e := range m.Effect {
		for _, x := range r.Figures {
			if x.ID == e.Figure && math.Abs(x.Value.SI-e.After.SI) > takenWithin*math.Abs(e.After.SI)+takenNear {
				t.Errorf("%s: %s of %s: %s is %v, told was %v", name, m.Code, f.Code, x.ID, x.Value.SI, e.After.SI)
			}
		}
	}
	if len(m.Effect) > 0 {
		return
	}
	for _, x := range r.Findings {
		if x.Code == f.Code && x.Path == f.Path {
			t.Errorf("%s: %s did not mend %s", name, m.Code, f.Code)
		}
	}
}

// A remedy that no field can hold is refused, and the job stays as it was.
func TestTakeRefuses(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, _ := job.Read(demo.Job("hillside-cascade"))
	r := Solve(book, j)
	for _, code := range []string{"", "none", RemedyOption, RemedySill, RemedyTopUp} {
		if _, ok := Take(book, j, r, trace.Remedy{Message: trace.Message{Code: code}}); ok {
			t.Errorf("%q was taken", code)
		}
	}
	if _, ok := Take(book, &job.Job{Units: "us"}, &Result{}, trace.Remedy{Message: trace.Message{Code: RemedyValves}}); ok {
		t.Error("valves of an empty job were set")
	}
}
