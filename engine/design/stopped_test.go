package design

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// TestStuckShut: with the check valve stuck shut the pump moves nothing, pushes
// with its greatest head, and boils a litre in 85 K x 4190 J/K / P (the job's
// water is at 14 to 17 °C); the case is followed, and nothing moves in it.
func TestStuckShut(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Site.WaterTemperature = job.Temperature{Text: "15 C", SI: 15}
	r := Solve(book, j)
	x := r.Motion.Find(CaseShut)
	if x == nil || x.Astray == nil || x.Pumped > 0 || x.Astray.Gives > 0 || x.Astray.Left() > 0 || math.Abs(float64(x.End.Pond-x.Lowest)) > 1 {
		t.Fatalf("%+v", x)
	}
	f := find(r, FindShut)
	if f == nil {
		t.Fatal("not told")
	}
	if head := num(t, f.Args, "head"); math.Abs(head-24*float64(unit.Foot)) > 0.01 {
		t.Errorf("pushes with %g m, its sheet has 24 ft at no flow", head)
	}
	watts := num(t, f.Args, "watts")
	if boils := num(t, f.Args, "boils"); math.Abs(boils-85*4190/watts) > 1e-6 || watts <= 0 {
		t.Errorf("a litre boils after %g s at %g W", boils, watts)
	}
	// No valve: none can stick.
	noValve(j)
	if r := Solve(book, j); r.Motion.Find(CaseShut) != nil || find(r, FindShut) != nil {
		t.Error("a valve that is not there sticks")
	}
	// A valve in the branch of the gravel bed alone: the cascade gets more.
	j.Runs[2].Fittings = append(j.Runs[2].Fittings, job.Fitted{Fitting: "check valve swing"})
	r = Solve(book, j)
	x, f = r.Motion.Find(CaseShut), find(r, FindShutBranch)
	if x == nil || f == nil || find(r, FindShut) != nil {
		t.Fatalf("%v %v", x, f)
	}
	if a := x.Astray; a.Flows[1] != 0 || a.Flows[0] <= r.Delivery.Feeds[0].Flow || text(f.Message, "feed") != r.Delivery.Feeds[1].Name {
		t.Errorf("%+v, %v", a, f.Args)
	}
}

// TestOnePumpStops: of the orchard's two pumps the second has no check valve in
// its leg. While it stands, water runs back through it, and the feeds get less
// than one pump alone with its leg shut gives them; the first pump's valve holds,
// and stuck open lets as much through. Books: what the running pump draws is
// what the feeds get and what runs back.
func TestOnePumpStops(t *testing.T) {
	book, j := read(t, "orchard-ring")
	r := Solve(book, j)
	var stops, open []Moving
	for _, c := range r.Motion.Cases {
		switch c.Case {
		case CasePumpStops:
			stops = append(stops, c)
		case CasePumpOpen:
			open = append(open, c)
		default:
		}
	}
	if len(stops) != 2 || len(open) != 1 || stops[0].Astray.Pump != "R" || stops[1].Astray.Pump != "second pump" {
		t.Fatalf("%d stops, %d open", len(stops), len(open))
	}
	held, without, stuck := stops[0].Astray, stops[1].Astray, open[0].Astray
	if held.Back > 1e-9 || without.Back < 1e-3 || stuck.Back < 1e-3 {
		t.Errorf("back: valve holding %v, without %v, stuck open %v", held.Back, without.Back, stuck.Back)
	}
	if without.Left() >= held.Left() || stuck.Left() >= held.Left() {
		t.Errorf("left: valve holding %v, without %v, stuck open %v", held.Left(), without.Left(), stuck.Left())
	}
	alone := find(r, FindTogether)
	if got, want := float64(held.Left()), alone.Limit.SI; math.Abs(got-want) > 0.02*want {
		t.Errorf("the second pump alone gives %g, the first alone %g", got, want) // two alike, on legs of much the same pipe
	}
	f := find(r, FindNoCheck)
	if f == nil || math.Abs(num(t, f.Args, "back")-float64(without.Back)) > 1e-12 || math.Abs(num(t, f.Args, "left")-float64(without.Left())) > 1e-12 {
		t.Errorf("%v", f)
	}
	if f := find(r, FindPumpOpen); f == nil || f.Severity != trace.Info {
		t.Errorf("%v", f)
	}
	for _, c := range append(stops, open...) {
		if math.Abs(float64(c.Mass)) > 1e-3 || c.Pumped <= 0 {
			t.Errorf("%s: books out by %g, %v pumped", c.Case, float64(c.Mass), c.Pumped)
		}
		if q := c.Series[len(c.Series)-1].Drawn; math.Abs(float64(q-c.Astray.Left())) > 0.02*float64(c.Astray.Left()) {
			t.Errorf("%s of %s: the start runs out at %v, the network says %v", c.Case, c.Astray.Pump, q, c.Astray.Left())
		}
	}
}

// TestFloatValve: levels and motion agree on a pond that a float valve keeps up:
// running it comes to the valve's level, a start that starves for a while is told
// once and as that, and what evaporates is made up for.
func TestFloatValve(t *testing.T) {
	fill := func(j *job.Job, below, flow float64) {
		j.Pond.FillLevel = job.Level{Entry: depth("float", unit.Length(-below))}
		j.Pond.FillFlow = job.Flow{Text: "float", SI: unit.Flow(flow)}
	}
	// The courtyard starves at every start; a float valve that gives as much as the
	// pump takes keeps it going.
	book, j := read(t, "courtyard-rill")
	fill(j, 0.005, 2e-3)
	r := Solve(book, j)
	everyday, ok := r.Levels.Find(level.CourseTopped, level.MomentRun)
	if !ok || math.Abs(float64(everyday.Pond)+0.005) > 1e-9 || r.Levels.Everyday() != level.CourseTopped {
		t.Fatalf("%+v", everyday)
	}
	for _, code := range []string{
		level.FindingStartStarves, level.FindingStartEmpty, level.FindingStartBare, level.FindingRestartStarves, level.FindingRestartBare,
		level.FindingStartReserve, level.FindingReserve, level.FindingPumpReserve,
	} {
		if f := find(r, code); f != nil {
			t.Errorf("%s is told: %v", code, f.Args)
		}
	}
	if x := r.Motion.Find(CaseFirst); x.Gasping || math.Abs(float64(x.End.Pond-everyday.Pond)) > 0.02 {
		t.Errorf("first start ends gasping %v, pond at %v", x.Gasping, x.End.Pond)
	}
	// One that gives little lets the pump draw air for as long as it takes.
	fill(j, 0.005, 0.4e-3)
	r = Solve(book, j)
	x := r.Motion.Find(CaseFirst)
	starves, dry := find(r, level.FindingStartStarves) != nil, find(r, FindFirstDry) != nil
	if !x.Dry || starves == dry || dry != !x.Gasping {
		t.Errorf("dry %v, gasping %v; told that it starves %v, for a while %v", x.Dry, x.Gasping, starves, dry)
	}
	// In a pond that never falls so low the valve stays shut.
	fill(j, 0.5, 2e-3)
	if r := Solve(book, j); r.Levels.Everyday() != level.CourseKept {
		t.Error("a float valve far below counts")
	}
}

// TestStopSpills: a float valve that goes on filling while the water comes down
// takes the pond over its rim at a stop: told once, of the stop, by levels or by
// motion.
func TestStopSpills(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	told := 0
	for _, rim := range []unit.Length{0.001, 0.004, 0.008, 0.012, 0.02, 0.03, 0.045} {
		j := j.Clone()
		j.Pond.Rim = job.Level{Entry: depth("rim", rim)}
		j.Pond.FillLevel = job.Level{Entry: depth("float", 0.006)}
		j.Pond.FillFlow = job.Flow{Text: "float", SI: 1e-3}
		r := Solve(book, j)
		stop := []string{level.FindingStopSpills, FindStopSpills}
		n := 0
		for _, f := range r.Findings {
			if slices.Contains(stop, f.Code) {
				n++
			}
		}
		x := r.Motion.Find(CaseStop)
		if spills := x.Spills && float64(x.Over) > drop; n > 1 || spills && n == 0 {
			t.Errorf("rim %v: %.4f m³ over it, told %d times", rim, float64(x.Over), n)
		}
		told += n
	}
	if told == 0 {
		t.Error("nothing spills")
	}
}

// TestHeadLacks: where only the head lacks, that is what is said, not that the
// valve's arrow is wrong or that the pump will draw air.
func TestHeadLacks(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	slow := 0
	for _, crest := range []unit.Length{3.05, 3.1, 3.14, 3.3} {
		j := j.Clone()
		j.Watercourses[0].Parts[0].Lip.Crest = job.Level{Entry: depth("high", crest)}
		r := Solve(book, j)
		if find(r, "network.link.held") != nil {
			t.Errorf("lip at %v: the valve's arrow is blamed", crest)
		}
		if r.Motion == nil {
			continue // nothing runs
		}
		x := r.Motion.Find(CaseFirst)
		if !x.Dry && (find(r, level.FindingStartStarves) != nil || find(r, FindFirstDry) != nil) {
			t.Errorf("lip at %v: told that it draws air", crest)
		}
		if !x.Dry && !x.Still {
			slow++
			if find(r, FindSlowHead) == nil || find(r, FindSlow) != nil {
				t.Errorf("lip at %v: that the head lacks is not told", crest)
			}
		}
	}
	if slow == 0 {
		t.Error("no start is slow")
	}
}
