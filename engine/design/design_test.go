package design

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
)

func read(tb testing.TB, name string) (*catalog.Book, *job.Job) {
	tb.Helper()
	book, err := catalog.New()
	if err != nil {
		tb.Fatal(err)
	}
	j, faults := job.Read(demo.Job(name))
	if len(faults) > 0 {
		tb.Fatal(faults)
	}
	return book, j
}

// TestScenario: rough figures of the invented scenarios, worked out once with
// Hazen-Williams and simple weirs; the findings must come out, not the last
// digit (hence 12 percent).
func TestScenario(t *testing.T) {
	for _, c := range []struct {
		name string
		want unit.Flow
	}{
		{"courtyard-rill", 1.32 * unit.LitrePerSecond},
		{"old-pond", 846 * unit.USGallonPerHour},
	} {
		book, j := read(t, c.name)
		r := Solve(book, j)
		if r.Delivery == nil || math.Abs(float64(r.Delivery.Flow/c.want)-1) > 0.12 {
			t.Errorf("%s: %v, about %v expected", c.name, r.Delivery, c.want)
		}
	}
}

// TestBadJobs: what is missing is told, the rest is computed, nothing panics.
func TestBadJobs(t *testing.T) {
	book, good := read(t, "hillside-cascade")
	cases := map[string]func(j *job.Job){
		"no pump":    func(j *job.Job) { j.Pumps = nil },
		"no curve":   func(j *job.Job) { p := &j.Pumps[0]; p.Curve, p.BoxFlow, p.MaxHead = nil, job.Flow{}, job.Length{} },
		"no runs":    func(j *job.Job) { j.Runs = nil },
		"no water":   func(j *job.Job) { j.Pond.Water = job.Level{} },
		"no pond":    func(j *job.Job) { j.Pond = job.Pond{} },
		"no vault":   func(j *job.Job) { j.Vault = job.Vault{} },
		"odd pipe":   func(j *job.Job) { j.Runs[0].Pipe.Kind = "glass" },
		"odd fit":    func(j *job.Job) { j.Runs[0].Fittings[0].Fitting = "widget" },
		"no lips":    func(j *job.Job) { j.Watercourses[0].Parts = nil },
		"empty":      func(j *job.Job) { *j = job.Job{Units: "us"} },
		"small hole": func(j *job.Job) { j.Vault.Width.SI = 0.05 },
	}
	for name, spoil := range cases {
		j := good.Clone()
		spoil(j)
		r := Solve(book, j)
		if len(r.Faults) == 0 {
			t.Errorf("%s: no fault told", name)
		}
		if name == "no vault" && r.Delivery == nil {
			t.Errorf("%s: the flow does not depend on the vault, yet is not given", name)
		}
	}
}

// TestHighFall: a fall above the pump's reach is told as dry.
func TestHighFall(t *testing.T) {
	book, j := read(t, "old-pond")
	for i := range j.Survey.Points {
		if j.Survey.Points[i].Name == "lip" {
			j.Survey.Points[i].Elevation.SI = 30 * unit.Foot
		}
	}
	r := Solve(book, j)
	for _, f := range r.Findings {
		if f.Code == FindDry {
			return
		}
	}
	t.Errorf("a lip 30 ft up, above the pump's 13.5 ft, is not told as dry: %+v, faults %v", r.Delivery, r.Faults)
}

// BenchmarkSolve is one whole design of the largest example job.
func BenchmarkSolve(b *testing.B) {
	book, j := read(b, "hillside-cascade")
	b.ReportAllocs()
	for b.Loop() {
		Solve(book, j)
	}
}
