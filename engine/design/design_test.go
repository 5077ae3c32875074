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

// TestScenario holds the steady states of the examples against an independent
// sum by another hand: Colebrook-White, PCHIP through the pump's points, the
// catalogue's coefficients, weir formula, solved by bisection in a script of
// its own (not kept). Its figures are rounded to three or four digits.
func TestScenario(t *testing.T) {
	for _, c := range []struct {
		name  string
		flow  unit.Flow
		head  unit.Head
		feeds []unit.Flow
	}{
		{"courtyard-rill", 4334.5 * unit.LitrePerHour, 1.715, []unit.Flow{4334.5 * unit.LitrePerHour}},
		{"old-pond", 14.37 * unit.USGallonPerMinute, 11.90 * unit.Foot, []unit.Flow{14.37 * unit.USGallonPerMinute}},
		{"hillside-cascade", 61.62 * unit.USGallonPerMinute, 14.320 * unit.Foot, []unit.Flow{46.34 * unit.USGallonPerMinute, 15.28 * unit.USGallonPerMinute}},
	} {
		book, j := read(t, c.name)
		d := Solve(book, j).Delivery
		if d == nil {
			t.Fatalf("%s: no delivery", c.name)
		}
		near(t, c.name+" flow", float64(d.Flow), float64(c.flow))
		near(t, c.name+" head", float64(d.Head), float64(c.head))
		for i, f := range c.feeds {
			near(t, c.name+" feed", float64(d.Feeds[i].Flow), float64(f))
		}
	}
}

// near allows the rounding of the hand's figures and the running level they were
// summed at.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got/want-1) > 0.005 {
		t.Errorf("%s: %g, by hand %g", what, got, want)
	}
}

// TestFaultVoidsTheFlow: a run or a feed at fault leaves no half-true flow.
func TestFaultVoidsTheFlow(t *testing.T) {
	book, good := read(t, "hillside-cascade")
	for name, spoil := range map[string]func(j *job.Job){
		"no length":   func(j *job.Job) { j.Runs[1].Length = job.Length{} },
		"odd pipe":    func(j *job.Job) { j.Runs[1].Pipe.Kind = "glass" },
		"odd fitting": func(j *job.Job) { j.Runs[1].Fittings[1].Fitting = "widget" },
		"no crest":    func(j *job.Job) { j.Watercourses[0].Parts[0].Lip.Crest = job.Level{} },
	} {
		j := good.Clone()
		spoil(j)
		r := Solve(book, j)
		if r.Delivery != nil {
			t.Errorf("%s: a flow is given all the same", name)
		}
		void := false
		for _, f := range r.Faults {
			void = void || f.Code == CodeVoid
		}
		if !void {
			t.Errorf("%s: it is not told that the flow is void", name)
		}
		if r.Assembly == nil || len(r.Materials) == 0 {
			t.Errorf("%s: the assembly or the list, which do not depend on the flow, are missing", name)
		}
	}
}

// TestFriction: the losses of parallel runs do not add up.
func TestFriction(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	for _, f := range r.Findings {
		if f.Code == FindFriction {
			t.Errorf("told as more than the height: %v of %v", f.Found, f.Limit)
		}
	}
	if lost := r.Delivery.Head - r.Delivery.Static; math.Abs(float64(lost-4.89*unit.Foot)) > float64(0.02*unit.Foot) {
		t.Errorf("lost on the way up %v m, by hand 4.89 ft", lost)
	}
}

// TestSharedFlows: the valves' settings give what the remedy says.
func TestSharedFlows(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	if r.Delivery.Share == nil || math.Abs(float64(r.Delivery.Share.Reach)-0.8414) > 0.005 {
		t.Errorf("reach %+v, by hand 84.14 percent", r.Delivery.Share)
	}
	if k := float64(r.Delivery.Feeds[1].K); math.Abs(k/304.6-1) > 0.01 {
		t.Errorf("K of the bed's valve %g, by hand 304.6 at 84.14 percent of what is wanted (226.5 at all of it)", k)
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
