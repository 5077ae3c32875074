package design

import (
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/job"
)

// Drowning and the pull of an intake are told on every job with open water and
// a pump, and where children are drowning is told more strongly (common
// practice, no source).
func TestWaterIsAlwaysTold(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range demo.Names() {
		for _, children := range []bool{false, true} {
			j, faults := job.Read(demo.Job(name))
			if len(faults) > 0 {
				t.Fatal(name, faults)
			}
			j.Site.Children = children
			r := Solve(book, j)
			told := map[string]int{}
			for _, f := range r.Findings {
				if f.Severity >= trace.Caution {
					told[f.Code]++
				}
			}
			water, strong := 1, 0
			if children {
				water, strong = 0, 1
			}
			if told[FindWater] != water || told[FindChildren] != strong || told[FindIntake] != 1 || told[FindElectric] != 1 {
				t.Errorf("%s, children %v: water %d, children %d, intake %d, mains %d", name, children, told[FindWater], told[FindChildren], told[FindIntake], told[FindElectric])
			}
		}
	}
}
