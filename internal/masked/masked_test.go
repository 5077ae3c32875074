package masked

import (
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

// A masked job is the same job: as many findings, as many faults, as many pieces.
func TestSameJob(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range demo.Names() {
		a, fa := job.Read(demo.Job(name))
		b, fb := job.Read(Job(name))
		if len(fa) != len(fb) {
			t.Fatalf("%s: %v", name, fb)
		}
		if a.Name == b.Name {
			t.Errorf("%s keeps its name", name)
		}
		x, y := design.Solve(book, a), design.Solve(book, b)
		if len(x.Findings) != len(y.Findings) || len(x.Faults) != len(y.Faults) || len(x.Materials) != len(y.Materials) || len(x.Assumptions) != len(y.Assumptions) {
			t.Errorf("%s: %d findings and %d faults masked, %d and %d before: %v", name, len(y.Findings), len(y.Faults), len(x.Findings), len(x.Faults), y.Faults)
		}
	}
}
