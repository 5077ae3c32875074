package design

import (
	"testing"

	"plashet/job"
)

// A run that lacks fittings of the assembly, or has another valve, gets them by
// the remedy, once and in order; then the two agree.
func TestRunTakesTheAssembly(t *testing.T) {
	for name, change := range map[string]func(*job.Run){
		"nothing in the run": func(r *job.Run) { r.Fittings = nil },
		"another valve":      func(r *job.Run) { r.Fittings = []job.Fitted{{Fitting: "check valve spring"}, {Fitting: "tee"}} },
		"one elbow of none":  func(r *job.Run) { r.Fittings = []job.Fitted{{Fitting: "union"}, {Fitting: "check valve swing"}} },
	} {
		book, j := read(t, "hillside-cascade")
		at := -1
		for i := range j.Runs {
			if j.Runs[i].From == "pump" {
				at = i
			}
		}
		change(&j.Runs[at])
		r := Solve(book, j)
		f := coded(r, FindDiffers)
		if len(f) != 1 || len(f[0].Remedies) != 1 || f[0].Remedies[0].Code != RemedyRun {
			t.Fatalf("%s: %+v", name, f)
		}
		next, ok := Take(book, j, r, f[0].Remedies[0])
		if !ok {
			t.Fatalf("%s: not taken", name)
		}
		after := Solve(book, next)
		if f := coded(after, FindDiffers); len(f) > 0 {
			t.Errorf("%s: still %+v with %+v", name, f[0].Args, next.Runs[at].Fittings)
		}
		if len(j.Runs[at].Fittings) > 2 {
			t.Errorf("%s: the job itself was changed", name)
		}
		valves := 0
		for _, l := range next.Runs[at].Fittings {
			if isCheck(l.Fitting) {
				valves += max(1, l.Count)
			}
		}
		if valves != 1 {
			t.Errorf("%s: %d valves in %+v", name, valves, next.Runs[at].Fittings)
		}
	}
}
