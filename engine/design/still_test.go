package design

import (
	"strings"
	"testing"

	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// TestNoFlowNoBands: where the flow is not found for a fault of the job, the
// fault is told and there are no bands.
func TestNoFlowNoBands(t *testing.T) {
	spoil := map[string]func(*job.Job){
		"a curve that rises too far": func(j *job.Job) {
			j.Pumps[0].Curve = nil
			for _, c := range [][2]float64{{0, 0.95}, {1400, 1.15}, {2900, 1.9}, {5800, 1.1}, {7200, 0}} {
				j.Pumps[0].Curve = append(j.Pumps[0].Curve, job.CurvePoint{
					Flow: entry("x", unit.Flow(c[0])*unit.LitrePerHour), Head: entry("x", unit.Head(c[1])),
				})
			}
		},
		"no water line": func(j *job.Job) { j.Pond = job.Pond{} },
		"no run":        func(j *job.Job) { j.Runs = nil },
		"no pump":       func(j *job.Job) { j.Pumps = nil },
	}
	for name, do := range spoil {
		book, j := read(t, "old-pond")
		j.Use = ""
		do(j)
		r := SolveBands(book, j, 16, 1)
		if len(r.Faults) == 0 || r.Delivery != nil || r.Bands != nil {
			t.Errorf("%s: faults %v, delivery %+v, bands %+v", name, r.Faults, r.Delivery, r.Bands)
		}
	}
}

// TestNothingLifted: where no water runs at all none is lost in pipe, so larger
// pipe is no advice; where the others run it may be.
func TestNothingLifted(t *testing.T) {
	book, j := read(t, "old-pond")
	j.Watercourses[0].Parts[0].Lip.Crest = job.Level{Entry: entry("x", 30*unit.Foot)}
	if f := find(Solve(book, j), FindDry); f == nil || !hasArg(f, "head") || hasArg(f, "others") {
		t.Errorf("one feed, which the pump does not reach: %+v", f)
	}
	book, j = read(t, "orchard-ring")
	high(j)
	if f := find(Solve(book, j), FindDry); f == nil || !hasArg(f, "others") || hasArg(f, "pumps") {
		t.Errorf("one feed of three is not reached: %+v", f)
	}
	for i := range j.Watercourses {
		j.Watercourses[i].Parts[0].Lip.Crest = job.Level{Entry: entry("x", unit.Length(80))}
	}
	if f := find(Solve(book, j), FindDry); f == nil || !hasArg(f, "pumps") || hasArg(f, "others") {
		t.Errorf("two pumps reach nothing: %+v", f)
	}
}

func hasArg(f *trace.Finding, name string) bool {
	for _, a := range f.Args {
		if a.Name == name {
			return true
		}
	}
	return false
}

// high sets the first lip of the ring above what its pumps reach with the
// others open: a lip at 80 m would make the job's heights no longer one job's.
func high(j *job.Job) {
	j.Watercourses[0].Parts[0].Lip.Crest = job.Level{Entry: entry("x", unit.Length(56.5))}
}

// TestDryFeedHoldsNothing: a watercourse that the pump does not reach fills
// neither box nor stream, so levels and motion come to the same; what a restart
// draws and what comes back differ by the pipe that leads to it alone.
func TestDryFeedHoldsNothing(t *testing.T) {
	book, j := read(t, "orchard-ring")
	high(j)
	r := Solve(book, j)
	if r.Levels == nil || !r.Delivery.Feeds[0].Dry || r.Delivery.Drawn <= 0 {
		t.Fatalf("%+v, faults %v", r.Delivery, r.Faults)
	}
	for _, s := range r.Levels.Inputs().Stores {
		if strings.HasPrefix(s.Path, "/watercourses/0/") {
			t.Errorf("the dry feed holds %v in %s", s.Running, s.Path)
		}
	}
	pipe := unit.Volume(0)
	for _, run := range r.Delivery.Runs {
		if j.Runs[run.Index].To == j.Watercourses[0].Name {
			pipe += run.Volume
		}
	}
	back, ok := r.Motion.Find(CaseStop).CameBack()
	if off := r.Levels.Draw - back; pipe <= 0 || !ok || off < -1e-3 || off > pipe+1e-3 {
		t.Errorf("a restart draws %v, %v comes back, the pipe up to the dry feed holds %v", r.Levels.Draw, back, pipe)
	}
}

// TestStallsOnTheWay: a drooping pump that runs steadily from the vault as it
// stands everyday, but at no flow lifts less than the lip from where the vault
// falls to on the way: its head at no flow, the level at which it comes to a
// stand and the crest make it sure by themselves.
func TestStallsOnTheWay(t *testing.T) {
	told := 0
	for crest := unit.Length(2.80); crest < 3.05; crest += 0.01 {
		book, j := drooping(t, crest)
		r := Solve(book, j)
		if r.Motion == nil {
			continue
		}
		for _, code := range []string{FindFirstStalls, FindRestartStalls} {
			f := find(r, code)
			if f == nil {
				continue
			}
			told++
			shutoff, fall := unit.Length(3), unit.Length(0)
			for _, a := range f.Args {
				if a.Name == "fall" {
					fall = unit.Length(a.Value.SI)
				}
			}
			if lift := crest - r.Motion.Line + fall; lift < shutoff-2e-3 {
				t.Errorf("crest %v: stalls at a lift of %v, below the %v it gives at no flow", crest, lift, shutoff)
			}
		}
	}
	if told == 0 {
		t.Error("no start stalls")
	}
}

// TestNothingOverSill: where a line kept under the sill starves the pump, no
// depth below nothing stands over it.
func TestNothingOverSill(t *testing.T) {
	book, j := read(t, "terrace-spout")
	sill, _ := j.Elevations()
	crest, ok := sill.Level(j.Vault.Sill)
	if !ok {
		t.Fatal("no sill")
	}
	j.Pond.RunningLine = job.Level{Entry: entry("x", crest-0.0127)}
	f := find(Solve(book, j), level.FindingRestartStarves)
	if f == nil {
		t.Fatal("not told")
	}
	for _, a := range f.Args {
		if a.Name == "over" && a.Value.SI != 0 {
			t.Errorf("%v over the sill", a.Value.SI)
		}
	}
}

// TestTeeBounds: on the ring every corner of what the tees of the runs may take
// lies between the bounds that are told.
func TestTeeBounds(t *testing.T) {
	book, j := read(t, "orchard-ring")
	r := Solve(book, j)
	m := &model{book: book, job: j, out: r, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}, quiet: true}
	if !m.start() {
		t.Fatal("the job does not stand")
	}
	runs := m.teeRuns()
	if len(runs) < 6 {
		t.Fatalf("tees in runs %v only", runs)
	}
	for feed := range r.Delivery.Feeds {
		low, ok := m.teeBound(0, r.Vault, feed, true)
		high, sound := m.teeBound(0, r.Vault, feed, false)
		if !ok || !sound {
			t.Fatal("no bounds")
		}
		for corner := range 1 << len(runs) {
			lose := map[int]unit.Ratio{}
			for k, i := range runs {
				lose[i] = unit.Ratio(2 * (corner >> k & 1))
			}
			q, ok := m.withTees(0, r.Vault, feed, lose)
			if !ok || q < low-1e-8 || q > high+1e-8 {
				t.Errorf("feed %d, corner %b: %v, told %v to %v", feed, corner, q, low, high)
			}
		}
	}
}
