package design

import (
	"math"
	"testing"

	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// TestMotionAgrees: where the examples come to rest is where the levels say,
// within 2 mm of the pond, which is what stillness and the last water of a
// stream leave (the levels of rest were 3 mm off while they took everyday's flow
// for a first start's), and within
// 10 mm of the vault: at a first start too, where the pump draws from a lower
// vault and gives less, so that less is on its way and the vault stays higher.
func TestMotionAgrees(t *testing.T) {
	for _, name := range []string{"courtyard-rill", "hillside-cascade", "old-pond", "orchard-ring"} {
		book, j := read(t, name)
		r := Solve(book, j)
		if r.Motion == nil {
			t.Fatalf("%s: %v", name, r.Faults)
		}
		everyday := r.Levels.Everyday()
		compared := 0
		for _, c := range []struct {
			of     MovingCase
			course level.Course
			moment level.Moment
		}{
			{CaseFirst, level.CourseFirst, level.MomentRun},
			{CaseRestart, everyday, level.MomentRun},
			{CaseStop, everyday, level.MomentHeld},
			{CaseOpen, everyday, level.MomentOpen},
		} {
			x := r.Motion.Find(c.of)
			want, ok := r.Levels.Find(c.course, c.moment)
			if x == nil || !ok {
				continue
			}
			compared++
			if math.Abs(float64(x.Mass)) > 1e-3 {
				t.Errorf("%s %s: books out by %g", name, c.of, float64(x.Mass))
			}
			if off := x.End.Pond - want.Pond; math.Abs(float64(off)) > 0.002 {
				t.Errorf("%s %s: pond ends %.4f m from where it stands at rest", name, c.of, float64(off))
			}
			if off := x.End.Vault - want.Vault; math.Abs(float64(off)) > 0.01 {
				t.Errorf("%s %s: vault ends %.4f m from where it stands at rest", name, c.of, float64(off))
			}
			if c.moment.Running() && x.Gasping != want.Starved {
				t.Errorf("%s %s: gasping %v, starved %v", name, c.of, x.Gasping, want.Starved)
			}
		}
		if compared < 2 {
			t.Errorf("%s: %d states compared", name, compared)
		}
	}
}

// TestGaspsWithinTwoMinutes: the courtyard's pump gasps within a minute or two
// at its first start and at every other, and the findings of the levels say
// when.
func TestGaspsWithinTwoMinutes(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	r := Solve(book, j)
	for code, c := range map[string]MovingCase{level.FindingStartStarves: CaseFirst, level.FindingRestartStarves: CaseRestart} {
		x := r.Motion.Find(c)
		if !x.Dry || x.DryAt < 30*unit.Second || x.DryAt > 120*unit.Second {
			t.Errorf("%s: draws air %v after %v s", c, x.Dry, x.DryAt)
		}
		f := find(r, code)
		if f == nil || math.Abs(num(t, f.Args, "at")-float64(x.DryAt)) > 1e-9 {
			t.Errorf("%s: %v", code, f)
		}
	}
	if codes(r.Findings, FindFirstDry)+codes(r.Findings, FindRestartDry) != 0 {
		t.Error("that the pump draws air is told twice")
	}
}

// TestMotionFields: what the job says takes the place of what is assumed.
func TestMotionFields(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	before := Solve(book, j)
	for _, code := range []string{AssumeRunUp, AssumeLeak, AssumeRainTime, AssumeStopped} {
		if len(assumptions(before, code)) != 1 {
			t.Errorf("%s is not listed once", code)
		}
	}
	j.Site.RainTime = job.Duration{Text: "1 h", SI: unit.Hour}
	j.Site.ValveLeak = job.Ratio{Text: "20 %", SI: 0.2}
	j.Pumps[0].RunUp = job.Duration{Text: "5 s", SI: 5}
	j.Pond.FillLevel = job.Level{Entry: depth("at water", 0)}
	j.Pond.FillLevel.Point = "water"
	j.Pond.FillFlow = job.Flow{Text: "8 gpm", SI: 8 * unit.USGallonPerMinute}
	r := Solve(book, j)
	for _, code := range []string{AssumeRunUp, AssumeLeak, AssumeRainTime} {
		if len(assumptions(r, code)) != 0 {
			t.Errorf("%s is assumed although it is given", code)
		}
	}
	if a, b := before.Motion.Find(CaseLeaks), r.Motion.Find(CaseLeaks); b.Back <= a.Back || codes(before.Findings, FindLeakSlow) != 1 {
		t.Errorf("a leak ten times as large brings back %v, was %v", b.Back, a.Back)
	}
	if a := r.Motion.Find(CaseFirst).Added; a <= 0 {
		t.Errorf("the float valve gave %v", a)
	}
	if a, b := before.Motion.Find(CaseRain).HighestAt, r.Motion.Find(CaseRain).HighestAt; b <= a {
		t.Errorf("slow rain is highest after %v, a cloudburst after %v", b, a)
	}
}

// TestMotionWithoutValve: without a check valve a stop is the open one, and
// nothing is said of valves.
func TestMotionWithoutValve(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	j.Runs[0].Fittings = append(j.Runs[0].Fittings[:1:1], j.Runs[0].Fittings[2:]...)
	j.Assembly = job.Assembly{}
	r := Solve(book, j)
	stop := r.Motion.Find(CaseStop)
	if stop.Valve != motion.Absent || r.Motion.Find(CaseLeaks) != nil || r.Motion.Find(CaseOpen) != nil || len(assumptions(r, AssumeLeak)) != 0 {
		t.Fatalf("%+v", r.Motion.Cases)
	}
	// Pipe and box, 23 and 47 l, come back through the pump.
	if back := float64(stop.Back); back < 0.06 || back > 0.08 {
		t.Errorf("%.4f m³ come back", back)
	}
}

// TestCutSpills: a pond filled to its very rim runs over when the power fails
// in mid start of a feature without a valve that is topped up meanwhile.
func TestCutSpills(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	j.Runs[0].Fittings = append(j.Runs[0].Fittings[:1:1], j.Runs[0].Fittings[2:]...)
	j.Assembly = job.Assembly{}
	j.Pond.Rim = job.Level{Entry: depth("1 mm", 0.001)}
	j.Pond.FillLevel = job.Level{Entry: depth("0.5 mm", 0.0005)}
	j.Pond.FillFlow = job.Flow{Text: "3 l/s", SI: 3 * unit.LitrePerSecond}
	r := Solve(book, j)
	f := find(r, FindCutSpills)
	if f == nil || f.Severity != trace.Danger || num(t, f.Args, "spill") <= 0 {
		t.Errorf("%v %+v", f, r.Motion.Find(CaseCut).Events)
	}
}

// TestMotionHoldsUp: jobs that lack things, or have them twice over, move or
// say why not, and never panic.
func TestMotionHoldsUp(t *testing.T) {
	for name, change := range map[string]func(j *job.Job){
		"no vault":     func(j *job.Job) { j.Vault, j.Assembly = job.Vault{}, job.Assembly{} },
		"no rim":       func(j *job.Job) { j.Pond.Rim = job.Level{} },
		"no box":       func(j *job.Job) { j.Watercourses[0].Box = job.Box{} },
		"no rain":      func(j *job.Job) { j.Site.DesignRain = job.Length{} },
		"leaking pool": func(j *job.Job) { j.Watercourses[0].Parts[1].Pool.Leaks = true },
		"dry feed": func(j *job.Job) {
			j.Watercourses[0].Parts[0].Lip.Crest = job.Level{Entry: depth("130 ft", 130*unit.Foot)}
		},
		"two pumps": func(j *job.Job) {
			j.FurtherPumps = []job.FurtherPump{{Name: "second", Pump: "L"}}
			j.Runs = append(j.Runs, job.Run{Name: "leg", From: "second", To: "tee", Pipe: j.Runs[0].Pipe, Length: depth("4 ft", 4*unit.Foot)})
		},
		"no weir width": func(j *job.Job) { j.Vault.WeirWidth = job.Length{} },
		"sill above":    func(j *job.Job) { j.Vault.Sill = job.Level{Entry: depth("94 ft", 94*unit.Foot)} },
	} {
		book, j := read(t, "hillside-cascade")
		change(j)
		r := Solve(book, j)
		if r.Levels != nil && r.Motion == nil {
			t.Errorf("%s: levels, but no motion: %v", name, r.Faults)
		}
		if r.Motion != nil {
			for _, c := range r.Motion.Cases {
				if math.Abs(float64(c.Mass)) > 1e-3 {
					t.Errorf("%s %s: books out by %g", name, c.Case, float64(c.Mass))
				}
			}
		}
	}
}
