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

func find(r *Result, code string) *trace.Finding {
	i := slices.IndexFunc(r.Findings, func(f trace.Finding) bool { return f.Code == code })
	if i < 0 {
		return nil
	}
	return &r.Findings[i]
}

func assumptions(r *Result, code string) (out []trace.Assumption) {
	for _, a := range r.Assumptions {
		if a.Code == code {
			out = append(out, a)
		}
	}
	return out
}

func num(t *testing.T, args []trace.Arg, name string) float64 {
	t.Helper()
	for _, a := range args {
		if a.Name == name {
			return a.Value.SI
		}
	}
	t.Fatalf("no %s in %v", name, args)
	return 0
}

func depth(text string, si unit.Length) job.Length { return job.Length{Text: text, SI: si} }

// noValve takes every check valve out of a job.
func noValve(j *job.Job) {
	for i := range j.Runs {
		j.Runs[i].Fittings = slices.DeleteFunc(j.Runs[i].Fittings, func(f job.Fitted) bool { return isCheck(f.Fitting) })
	}
	j.Assembly.Parts = slices.DeleteFunc(j.Assembly.Parts, func(p job.Laid) bool { return isCheck(p.Fitting) })
}

// TestEverydayWithoutValve: with no check valve the pump runs from the level of
// a start with empty pipes, and what runs back is told: pipe, gravel bed and
// box above their inlets (cascade: box 24 x 20 x 14 in with its inlet 3 in up
// loses 11/14 of 29.09 gal; bed 6 x 4 x 1 ft at 35 %, 2 in up: 10/12 of 62.84).
func TestEverydayWithoutValve(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	noValve(j)
	r := Solve(book, j)
	open, ok := r.Levels.Find(level.CourseOpen, level.MomentRun)
	if !ok || math.Abs(float64(open.Vault-r.Vault)) > float64(settle) {
		t.Errorf("the pump draws from %v, the vault stands at %v", r.Vault, open.Vault)
	}
	f := find(r, level.FindingValveNone)
	if f == nil {
		t.Fatal("that no valve is fitted is not told")
	}
	pipes := unit.Volume(0)
	for _, run := range r.Delivery.Runs {
		pipes += run.Volume
	}
	want := float64(pipes/unit.USGallon) + 29.09*11/14 + 62.84*10/12
	if back := num(t, f.Args, "back") / float64(unit.USGallon); math.Abs(back-want) > 0.02 {
		t.Errorf("%g gal run back, by hand %g", back, want)
	}
	// A valve in the assembly alone is one.
	book, j = read(t, "old-pond")
	noValve(j)
	if find(Solve(book, j), level.FindingValveNone) == nil {
		t.Error("old pond without a valve")
	}
	j.Assembly.Parts = append(j.Assembly.Parts, job.Laid{Fitting: "check valve swing"})
	if r := Solve(book, j); find(r, level.FindingValveNone) != nil || r.Levels.Everyday() != level.CourseKept {
		t.Error("a valve in the assembly is not seen")
	}
	j.Assembly.Parts[len(j.Assembly.Parts)-1].Reverse = true
	if find(Solve(book, j), level.FindingValveNone) == nil {
		t.Error("a valve that points the wrong way holds nothing")
	}
}

// TestValveInOneBranch: a valve in one branch holds only what is behind it.
func TestValveInOneBranch(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	noValve(j)
	j.Runs[2].Fittings = append(j.Runs[2].Fittings, job.Fitted{Fitting: "check valve swing"})
	r := Solve(book, j)
	kept, _ := r.Levels.Find(level.CourseKept, level.MomentRest)
	if v := kept.Stores; v[0] != 0 || v[1] != 0 || v[2] == 0 {
		t.Errorf("vault run, main and bed line keep %v", v[:3])
	}
}

// TestStarvedCourtyard: the pump of the demo gasps: at first start the pond
// comes down to its sill, 40 mm under the water line, the pipe and the box are
// full and the mid pool holds the rest: 40 mm * 2.64 m2 + 220 mm * 0.1008 m2 =
// 127.78 l less pipe and box. Every other start passes a part of the flow.
func TestStarvedCourtyard(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	r := Solve(book, j)
	s, _ := r.Levels.Find(level.CourseFirst, level.MomentRun)
	if math.Abs(float64(s.Change)+0.04) > 1e-9 || math.Abs(float64(s.Sill.Present)) > 1e-9 || !s.Starved || s.Passes != 0 {
		t.Errorf("first start %+v", s)
	}
	inStores := 0.12778
	if math.Abs(float64(s.InStores)-inStores) > 1e-5 {
		t.Errorf("the stores hold %v, by hand %g", s.InStores, inStores)
	}
	f := find(r, level.FindingStartStarves)
	if f == nil {
		t.Fatal("not told")
	}
	if got, want := num(t, f.Args, "unfilled"), float64(r.Levels.Transit-s.InStores); math.Abs(got-want) > 1e-12 {
		t.Errorf("unfilled %g of %g", got, want)
	}
	f = find(r, level.FindingRestartStarves)
	if f == nil || r.Levels.Lasting(level.CourseKept, level.MomentRun) {
		t.Fatal("that every start starves is not told")
	}
	if passes, flow := num(t, f.Args, "passes"), num(t, f.Args, "flow"); passes <= 0 || passes >= flow {
		t.Errorf("%g of %g pass", passes, flow)
	}
}

// TestTopsUp: topped up while running, a start from the water line is not the
// everyday one and raises no danger.
func TestTopsUp(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	j.Pond.RunningLine = job.Level{Entry: depth("-5 mm", -0.005)}
	r := Solve(book, j)
	if f := find(r, level.FindingRestartStarves); f != nil {
		t.Errorf("%v: %v", f.Severity, f.Args)
	}
	if s, ok := r.Levels.Find(level.CourseTopped, level.MomentRun); !ok || r.Levels.Everyday() != level.CourseTopped || s.Starved || math.Abs(float64(s.Vault-r.Vault)) > 2*float64(settle) {
		t.Errorf("the pump draws from %v, the vault stands at %+v", r.Vault, s)
	}
}

// TestPumpInPond: without a vault, far below the datum, the running line is held
// against the pond's own floor.
func TestPumpInPond(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	j.Vault, j.Assembly = job.Vault{}, job.Assembly{}
	for i := range j.Survey.Points {
		j.Survey.Points[i].Elevation.SI -= 10
	}
	for i := range j.Watercourses[0].Parts {
		if l := j.Watercourses[0].Parts[i].Lip; l != nil {
			l.Crest.SI -= 10
		}
	}
	r := Solve(book, j)
	if r.Levels == nil || find(r, level.FindingLineNone) != nil {
		t.Fatalf("faults %v, line %+v", r.Faults, r.Levels.Lines)
	}
	// 450 mm deep, 180 mm least, and half an inch of reserve.
	if got, want := float64(r.Levels.Lines.Least), -10-0.45+0.18+0.0127; math.Abs(got-want) > 1e-9 {
		t.Errorf("least running line %g, by hand %g", got, want)
	}
}

// TestNoRim: flow, levels and the vault's level do not need the rim.
func TestNoRim(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	want := Solve(book, j)
	j.Pond.Rim = job.Level{}
	r := Solve(book, j)
	if r.Levels == nil || r.Vault != want.Vault || len(r.Faults) > 0 {
		t.Fatalf("vault at %v, was %v; faults %v", r.Vault, want.Vault, r.Faults)
	}
	if find(r, level.FindingRimNone) == nil {
		t.Error("that the rim is missing is not told")
	}
}

// TestVaultHalfKnown: what keeps the skimmer from being checked is told.
func TestVaultHalfKnown(t *testing.T) {
	book, good := read(t, "courtyard-rill")
	for name, c := range map[string]struct {
		spoil func(v *job.Vault)
		code  string
	}{
		"no floor":     {func(v *job.Vault) { v.Floor = job.Level{} }, FindVaultLevel},
		"no weirWidth": {func(v *job.Vault) { v.WeirWidth = job.Length{} }, FindWeirWidth},
		"no sill":      {func(v *job.Vault) { v.Sill = job.Level{} }, FindSillLevel},
	} {
		j := good.Clone()
		c.spoil(&j.Vault)
		r := Solve(book, j)
		f := find(r, c.code)
		if f == nil || f.Severity != trace.Caution || r.Levels == nil {
			t.Errorf("%s: %v, faults %v", name, f, r.Faults)
			continue
		}
		if s, _ := r.Levels.Find(level.CourseKept, level.MomentRun); s.Sill.Applies || s.Pump.Applies == (c.code == FindVaultLevel) {
			t.Errorf("%s: margins %+v %+v", name, s.Sill, s.Pump)
		}
	}
	j := good.Clone()
	j.Vault.WeirWidth, j.Vault.Sill = job.Length{}, job.Level{}
	if r := Solve(book, j); len(assumptions(r, AssumeVaultOpen)) != 1 {
		t.Errorf("assumptions %v", r.Assumptions)
	}
}

// TestReserve: two days' evaporation are held back where the job does not say
// how much, and the job can say.
func TestReserve(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	if a := assumptions(r, AssumeReserve); len(a) != 1 || math.Abs(a[0].Value.SI-0.0127) > 1e-12 {
		t.Errorf("assumed %v", a)
	}
	// At first start the pond comes down to just what the skimmer needs.
	if f := find(r, level.FindingStartBare); f == nil || num(t, f.Args, "spare") <= 0 {
		t.Errorf("nothing to spare at first start is not told: %v", f)
	}
	if find(r, level.FindingReserve) != nil {
		t.Error("every day there is enough for half an inch")
	}
	j.Site.Reserve = depth("3 in", 3*unit.Inch)
	r = Solve(book, j)
	if len(assumptions(r, AssumeReserve)) != 0 || find(r, level.FindingReserve) == nil {
		t.Error("3 in of evaporation take the pond below the skimmer's need")
	}
}

// TestRunsOfOneName: two runs of one name keep each its own.
func TestRunsOfOneName(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Runs[2].Name = j.Runs[1].Name
	j.Runs[2].Drains, j.Runs[2].HoldsWater = false, true
	r := Solve(book, j)
	s, ok := r.Levels.Find(level.CourseOpen, level.MomentRest)
	if !ok {
		t.Fatal(r.Faults)
	}
	if v := s.Stores; v[1] != 0 || math.Abs(float64(v[2]-r.Delivery.Runs[2].Volume)) > 1e-12 || len(s.Stores) != len(r.Delivery.Runs)+9 {
		t.Errorf("main keeps %v, bed line %v of %v; %d stores", v[1], v[2], r.Delivery.Runs[2].Volume, len(v))
	}
}

// TestLipAtFault: a lip that cannot be worked out does not lend its head to the
// next: the water over the lower lip is the lower lip's.
func TestLipAtFault(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	want := Solve(book, j)
	j.Watercourses[0].Parts[2].Lip.Width = job.Length{} // the middle lip
	r := Solve(book, j)
	if r.Levels == nil {
		t.Fatal(r.Faults)
	}
	over := func(r *Result, id string) float64 {
		for _, f := range r.Levels.Figures() {
			for _, term := range f.Terms {
				if term.Symbol == "H" && term.From == id {
					return term.Value.SI
				}
			}
		}
		return 0
	}
	const lower = "/watercourses/0/parts/5/lip"
	if a, b := over(want, lower), over(r, lower); a == 0 || math.Abs(a-b) > 1e-4 {
		t.Errorf("%g stood over the lower lip, now %g", a, b)
	}
	if over(r, "/watercourses/0/parts/2/lip") != 0 {
		t.Error("the lip at fault holds water")
	}
}

// TestUntoldDefaults: each default of the levels is listed, and once; a run of
// which nothing is said drains.
func TestUntoldDefaults(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Site.DesignRain = job.Length{}
	j.Watercourses[0].Parts[3].Reach.Wetted = job.Ratio{}
	j.Watercourses[0].Parts = append(j.Watercourses[0].Parts, job.Part{Reach: &job.Reach{Name: "tail", Length: depth("1 m", 1), Width: depth("1 m", 1), Depth: depth("1 cm", 0.01)}})
	for i := range j.Watercourses {
		j.Watercourses[i].Box.Inlet, j.Watercourses[i].Box.Void = job.Length{}, job.Ratio{}
	}
	j.Watercourses[0].Parts[1].Pool.Depth = job.Length{}
	r := Solve(book, j)
	for _, code := range []string{
		AssumePondVoid, AssumeBoxVoid, AssumeBoxInlet, AssumeWetted, AssumeHolds, AssumePoolDepth, AssumeScreen, AssumeRain, AssumeDrains, AssumeReserve,
	} {
		if n := len(assumptions(r, code)); n != 1 {
			t.Errorf("%s stands %d times", code, n)
		}
	}
	s, _ := r.Levels.Find(level.CourseOpen, level.MomentRest)
	if s.Stores[0] != 0 {
		t.Errorf("the vault run, of which nothing is said, keeps %v", s.Stores[0])
	}
}

// TestRimSource: the rim is as good as the job says.
func TestRimSource(t *testing.T) {
	book, good := read(t, "hillside-cascade")
	for name, c := range map[string]struct {
		change func(j *job.Job)
		want   trace.Basis
	}{
		"read on the rod": {func(*job.Job) {}, trace.BasisMeasured},
		"its own source":  {func(j *job.Job) { j.Pond.Rim.Source = job.OriginGuess }, trace.BasisGuess},
		"typed":           {func(j *job.Job) { j.Pond.Rim = job.Level{Entry: depth("99 ft", 99*unit.Foot)} }, trace.BasisJob},
		"typed for the point": {func(j *job.Job) {
			for i := range j.Survey.Points {
				if p := &j.Survey.Points[i]; p.Name == "edge" {
					p.Elevation, p.Reading = depth("93.25 ft", 93.25*unit.Foot), job.Length{}
				}
			}
		}, trace.BasisJob},
	} {
		j := good.Clone()
		c.change(j)
		r := Solve(book, j)
		seen := false
		for _, f := range r.Figures {
			if f.ID == "level.first.rest.freeboard" {
				seen = true
				if f.Source.Basis != c.want {
					t.Errorf("%s: %s, want %s", name, f.Source.Basis, c.want)
				}
			}
		}
		if !seen {
			t.Errorf("%s: no freeboard", name)
		}
	}
}

// TestSettles: a wide pond on a narrow skimmer, where the vault's level leaps
// with the flow, settles all the same: the level drawn from is the level left.
func TestSettles(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Vault.Length, j.Vault.Width = depth("18 in", 18*unit.Inch), depth("10 in", 10*unit.Inch)
	j.Vault.WeirWidth = depth("4 in", 4*unit.Inch)
	for sill := 3.0; sill < 8; sill += 0.25 {
		v := j.Clone()
		v.Vault.Sill.SI = -unit.Length(sill) * unit.Inch
		r := Solve(book, v)
		s, ok := r.Levels.Find(r.Levels.Everyday(), level.MomentRun)
		if !ok || math.Abs(float64(s.Vault-r.Vault)) > 2*float64(settle) {
			t.Errorf("sill %g in down: drawn from %v, left at %v", sill, r.Vault, s.Vault)
		}
		for _, f := range r.Faults {
			if f.Code == CodeSettle {
				t.Errorf("sill %g in down: did not settle", sill)
			}
		}
	}
}

// TestSettlesToppedUp: likewise when the pond is kept at levels about what the
// skimmer needs. There a pump that draws the vault down gives a little less, and
// may just go on: what the start was followed to is what stands.
func TestSettlesToppedUp(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	for mm := -45.0; mm < 0; mm += 0.5 {
		j.Pond.RunningLine = job.Level{Entry: depth("kept", unit.Length(mm)*unit.Millimetre)}
		r := Solve(book, j)
		s, _ := r.Levels.Find(level.CourseTopped, level.MomentRun)
		told := find(r, level.FindingRestartStarves) != nil
		x := r.Motion.Find(CaseRestart)
		if lasts := !x.Dry && x.Still; len(r.Faults) > 0 || told != (s.Starved && !lasts) {
			t.Errorf("kept at %g mm: %+v, faults %v", mm, s, r.Faults)
		}
	}
}
