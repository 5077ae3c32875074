package design

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/engine/cut"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

func coded(r *Result, code string) []trace.Finding {
	var out []trace.Finding
	for _, f := range r.Findings {
		if f.Code == code {
			out = append(out, f)
		}
	}
	return out
}

func assumed(r *Result, code string) bool {
	return slices.ContainsFunc(r.Assumptions, func(a trace.Assumption) bool { return a.Code == code })
}

func argument(m trace.Message, name string) (trace.Arg, bool) {
	i := slices.IndexFunc(m.Args, func(a trace.Arg) bool { return a.Name == name })
	if i < 0 {
		return trace.Arg{}, false
	}
	return m.Args[i], true
}

func entry[Q unit.Quantity](text string, v Q) job.Entry[Q] { return job.Entry[Q]{Text: text, SI: v} }

// fits is the hillside job with the pump where it comes out: 3/4 in nearer to
// the front wall, with the hole (design notes, demo B).
func fits(tb testing.TB) *job.Job {
	tb.Helper()
	_, j := read(tb, "hillside-cascade")
	j.Assembly.At.Y = job.Length{Text: "4-1/2", SI: 4.5 * unit.Inch}
	j.Vault.Outlet.Along = job.Length{Text: "8-1/4", SI: 8.25 * unit.Inch}
	return j
}

// TestReleased: with the valve on the pump's side of the union, opening the
// union lets down the runs and, as through a siphon, the boxes down to their
// inlets. By hand, in cubic inches: boxes 24 x 20 x (14 - 3) and 72 x 48 x (12 -
// 2) x 0.35; runs 672 and 264 long of 2.067 and 1.380 bore (ASTM D1785), and of
// the 48 from the pump some 28 beyond the wall; a few in the vault.
func TestReleased(t *testing.T) {
	area := func(d float64) float64 { return math.Pi / 4 * d * d }
	boxes := (24*20*11 + 72*48*10*0.35) / 231.0 // gal
	runs := (672*area(2.067) + 264*area(1.380) + 28*area(2.067)) / 231
	book, j := read(t, "hillside-cascade")
	r := Solve(book, j)
	if w := r.Assembly.Water; w.Order != layout.UnionFirst || w.Boxes != 0 || float64(w.Released/unit.USGallon) > 1 {
		t.Errorf("the valve beyond the union holds all of it: %+v", w)
	}
	if got := float64(r.Assembly.Water.Standing / unit.USGallon); math.Abs(got/runs-1) > 0.02 {
		t.Errorf("%.2f gal stand in the pipe, about %.2f by hand", got, runs)
	}
	p := j.Assembly.Parts
	p[1], p[3] = p[3], p[1]
	r = Solve(book, j)
	f := coded(r, layout.FindReleased)
	if len(f) != 1 {
		t.Fatalf("the release is told %d times", len(f))
	}
	told, _ := argument(f[0].Message, "released")
	if got := told.Value.SI / float64(unit.USGallon); math.Abs(got/(boxes+runs)-1) > 0.02 {
		t.Errorf("%.2f gal released, about %.2f by hand", got, boxes+runs)
	}
	if got, _ := argument(f[0].Message, "boxes"); math.Abs(got.Value.SI/float64(unit.USGallon)-boxes) > 0.01 {
		t.Errorf("%v out of the boxes, %.2f gal by hand", got, boxes)
	}
	// Without a valve the same comes back at every stop.
	p[1].Fitting, p[1].Mark = "coupling", "C1"
	r = Solve(book, j)
	if f = coded(r, layout.FindReturns); len(f) != 1 || math.Abs(float64(r.Assembly.Water.Returns/unit.USGallon)/(boxes+runs)-1) > 0.02 {
		t.Errorf("%+v, %+v", f, r.Assembly.Water)
	}
	// A run that could not be worked out is told as not counted.
	j.Runs[2].Length = job.Length{}
	r = Solve(book, j)
	if f = coded(r, layout.FindReturns); len(f) != 1 {
		t.Fatalf("%+v", f)
	}
	if _, inside := argument(f[0].Message, "inside"); !inside {
		t.Errorf("%+v", f[0])
	}
}

// TestReducer: behind a reducer everything is of the smaller size, and each
// piece is cut from the pipe of its own size.
func TestReducer(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	a := &j.Assembly
	a.Parts = []job.Laid{
		{Fitting: "male adapter", Mark: "A1"},
		{Fitting: "union", Mark: "U1"},
		{Fitting: "elbow 90", Mark: "E1", Roll: entry("270", 270*unit.Degree)},
		{Fitting: "reducing coupling", Size: "2 x 1-1/2", Mark: "R1"},
		{Fitting: "check valve spring", Size: "1-1/2", Mark: "V1", Closes: true},
		{Fitting: "bulkhead fitting", Size: "1-1/2", Mark: "B1"},
	}
	j.Stock.Sticks = append(j.Stock.Sticks, job.Stick{Pipe: job.PipeName{Kind: "PVC Sch 40", Size: "1-1/2 in"}, Length: entry("10 ft", 10*unit.Foot)})
	r := Solve(book, j)
	for _, f := range r.Faults {
		t.Errorf("%s at %s: %v", f.Code, f.Path, f.Args)
	}
	if r.Assembly == nil || !r.Assembly.Laid {
		t.Fatal("not laid")
	}
	cutFrom := map[string]string{}
	for _, c := range r.Cutting {
		for _, p := range c.Pieces {
			cutFrom[p.Mark] = c.Name.Size
		}
	}
	for mark, size := range map[string]string{"P1": "2", "P2": "2", "P3": "2", "P4": "1-1/2", "P5": "1-1/2", "R2": "2"} {
		if cutFrom[mark] != size {
			t.Errorf("%s is cut from %q, want %s", mark, cutFrom[mark], size)
		}
	}
	// The bushing goes straight into the valve's larger socket.
	a.Parts[3] = job.Laid{Fitting: "reducer bushing", Size: "2 x 1-1/2", Mark: "R1"}
	r = Solve(book, j)
	if r.Assembly == nil || !r.Assembly.Laid || len(r.Faults) > 0 || len(r.Assembly.Pieces) != 4 {
		t.Errorf("bushing: %+v", r.Faults)
	}
	// One size too few, and a size that the assembly's pipe does not have.
	a.Parts[3] = job.Laid{Fitting: "reducing coupling", Size: "2", Mark: "R1"}
	if r = Solve(book, j); r.Assembly != nil || len(r.Faults) == 0 {
		t.Errorf("a reducer of one size: %+v", r.Faults)
	}
}

// TestWithheld: while a danger stands on the assembly no step of gluing is told
// and its pieces are not to be cut.
func TestWithheld(t *testing.T) {
	for name, want := range map[string][]string{
		"courtyard-rill":   {"off", "through"},
		"old-pond":         {"off", "reversed", "through", "union"},
		"hillside-cascade": {"blocked"},
	} {
		book, j := read(t, name)
		if name == "hillside-cascade" { // in the middle of the vault the pump does not come out
			j.Assembly.At.Y.SI, j.Vault.Outlet.Along.SI = 5.25*unit.Inch, 9*unit.Inch
		}
		r := Solve(book, j)
		f := coded(r, FindWithheld)
		if len(f) != 1 || !r.NotToCut || !r.Glue.Withheld || len(r.Glue.Steps) != 0 || len(r.Glue.Joints) == 0 {
			t.Fatalf("%s: %d findings, not to cut %v, %d steps", name, len(f), r.NotToCut, len(r.Glue.Steps))
		}
		var got []string
		for _, a := range f[0].Args {
			if a.Name != "where" {
				got = append(got, a.Name)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: held back by %v, want %v", name, got, want)
		}
		for _, c := range r.Cutting {
			assembly := slices.ContainsFunc(c.Plan.Bars, func(b cut.Bar) bool {
				return slices.ContainsFunc(b.Cuts, func(k cut.Cut) bool { return strings.HasPrefix(c.Pieces[k.Piece].Mark, "P") })
			})
			if c.NotToCut != assembly {
				t.Errorf("%s: plan of %s not to cut: %v", name, c.Pipe, c.NotToCut)
			}
		}
	}

	book, _ := read(t, "hillside-cascade")
	j := fits(t)
	r := Solve(book, j)
	if len(coded(r, FindWithheld)) != 0 || r.NotToCut || r.Glue.Withheld || len(r.Glue.Steps) == 0 || slices.ContainsFunc(r.Cutting, func(c Cutting) bool { return c.NotToCut }) {
		t.Errorf("a chain that fits is held back: %+v", coded(r, FindWithheld))
	}
	// A fault alone holds it back as a danger does: the port is of another size
	// than the adapter.
	j.Pumps[0].Port.Size = "1-1/2"
	r = Solve(book, j)
	f := coded(r, FindWithheld)
	if len(f) != 1 || len(r.Glue.Steps) != 0 || !r.NotToCut {
		t.Fatalf("an adapter is glued that does not go on the port: %+v", r.Faults)
	}
	if _, ok := argument(f[0].Message, "faults"); !ok {
		t.Errorf("%+v", f[0])
	}
	// A danger that is accepted with a reason stands no more.
	_, j = read(t, "hillside-cascade")
	j.Accepted = []job.Acceptance{{Code: layout.FindBlocked, Reason: "the check valve is taken out first"}}
	if r = Solve(book, j); len(coded(r, FindWithheld)) != 0 || r.NotToCut || len(r.Glue.Steps) == 0 {
		t.Errorf("%+v", coded(r, FindWithheld))
	}
}

// TestAgree: the run that starts at the pump and the assembly are one pipe.
func TestAgree(t *testing.T) {
	for _, c := range []struct {
		name, demo string
		change     func(*job.Job)
		want       string // arguments
		sev        trace.Severity
	}{
		{"hillside", "hillside-cascade", func(*job.Job) {}, "", 0},
		{"courtyard", "courtyard-rill", func(*job.Job) {}, "", 0},
		{"old hose on new pipe", "old-pond", func(*job.Job) {}, "pipe runPipe", trace.Caution},
		{"spelt otherwise", "hillside-cascade", func(j *job.Job) {
			j.Runs[0].Pipe.Size = "2 in"
			j.Runs[0].Fittings[2].Fitting, j.Runs[0].Fittings[3].Fitting = "90 elbows", "swing check"
		}, "", 0},
		{"another valve", "hillside-cascade", func(j *job.Job) { j.Assembly.Parts[3].Fitting = "check valve spring" }, "runValve valve", trace.Caution},
		{"valve not in the run", "hillside-cascade", func(j *job.Job) { j.Runs[0].Fittings = j.Runs[0].Fittings[:3] }, "valveOnly", trace.Caution},
		{"valve beyond the wall", "hillside-cascade", func(j *job.Job) { j.Assembly.Parts[3].Fitting = "coupling" }, "runValveOnly", trace.Info},
		{"elbow not in the run", "hillside-cascade", func(j *job.Job) { j.Runs[0].Fittings[2].Fitting = "elbow 45" }, "elbows runElbows", trace.Caution},
		{"elbows beyond the wall", "hillside-cascade", func(j *job.Job) { j.Runs[0].Fittings[2].Count = 5 }, "", 0},
		{"union not in the run", "hillside-cascade", func(j *job.Job) { j.Runs[0].Fittings[1].Fitting = "coupling" }, "unionOnly", trace.Caution},
		{"union only in the run", "hillside-cascade", func(j *job.Job) { j.Assembly.Parts[1].Fitting = "coupling" }, "runUnionOnly", trace.Info},
		{"45s", "hillside-cascade", func(j *job.Job) { j.Assembly.Parts[2].Fitting = "street elbow 45" }, "fortyFives runFortyFives", trace.Caution},
		{"no run from the pump", "hillside-cascade", func(j *job.Job) { j.Runs[0].From = "elsewhere" }, "", 0},
	} {
		book, j := read(t, c.demo)
		c.change(j)
		r := Solve(book, j)
		var got []string
		f := coded(r, FindDiffers)
		for _, x := range f {
			for _, a := range x.Args {
				if a.Name != "where" && a.Name != "run" {
					got = append(got, a.Name)
				}
			}
		}
		slices.Sort(got)
		if strings.Join(got, " ") != c.want || len(f) > 1 || len(f) == 1 && f[0].Severity != c.sev {
			t.Errorf("%s: told %v, want %q", c.name, got, c.want)
		}
	}
}

// TestReversedValve: beside a valve that lets nothing through, the flow is told
// as what it will be.
func TestReversedValve(t *testing.T) {
	book, j := read(t, "old-pond")
	r := Solve(book, j)
	f := coded(r, layout.FindReversed)
	if len(f) != 1 {
		t.Fatalf("told %d times", len(f))
	}
	if a, ok := argument(f[0].Message, "flow"); !ok || a.Value.SI != float64(r.Delivery.Flow) {
		t.Errorf("%+v", f[0].Args)
	}
	if n := coded(r, layout.FindStands); len(n) != 0 {
		t.Errorf("nothing stands on a valve that lets nothing up: %+v", n[0])
	}
}

// TestPortSizes: threads go by inches. 40 and 50 are two things each: DN 40 is
// 1-1/2, and fittings for 40 mm pipe have 1-1/4 (both from memory).
func TestPortSizes(t *testing.T) {
	book, good := read(t, "courtyard-rill")
	for _, size := range []string{"1-1/2", "1 1/2", "1.5", "1-1/2 in", `1-1/2"`, "G 1-1/2", "G1-1/2", "R 1-1/2", "Rp1-1/2", " g 1½ ", "DN40", "DN 40"} {
		j := good.Clone()
		j.Pumps[0].Port.Size = size
		r := Solve(book, j)
		if r.Assembly == nil || !r.Assembly.Laid || len(r.Faults) > 0 {
			t.Errorf("%q: %+v", size, r.Faults)
		}
	}
	for size, want := range map[string][4]string{
		"40": {"40", "1-1/2", "40", "1-1/4"}, "50": {"50", "2", "50", "1-1/2"}, "d50": {"50", "2", "50", "1-1/2"}, "50 mm": {"50", "2", "50", "1-1/2"}, "7": {}, "wide": {},
	} {
		j := good.Clone()
		j.Pumps[0].Port.Size = size
		r := Solve(book, j)
		i := slices.IndexFunc(r.Faults, func(f trace.Fault) bool { return f.Code == CodePortSize })
		if i < 0 || r.Faults[i].Path != "/pumps/0/port/size" {
			t.Errorf("%q is taken: %+v", size, r.Faults)
			continue
		}
		for k, name := range [4]string{"dn", "inch", "pipe", "usual"} {
			if a, _ := argument(r.Faults[i].Message, name); a.Text != want[k] {
				t.Errorf("%q: %s is %q, want %q", size, name, a.Text, want[k])
			}
		}
	}
	// The path names the pump that is used, by its place.
	j := good.Clone()
	j.Pumps = append(j.Pumps, j.Pumps[0])
	j.Pumps[1].Name, j.Use, j.Pumps[1].Port.Thread = "B", "B", ""
	r := Solve(book, j)
	if !slices.ContainsFunc(r.Faults, func(f trace.Fault) bool { return f.Code == CodePort && f.Path == "/pumps/1/port" }) {
		t.Errorf("%+v", r.Faults)
	}
	// A socket is as deep as a coupling's, and goes by the pipe.
	j = good.Clone()
	j.Pumps[0].Port = job.Port{Size: "50 mm", Thread: "socket"}
	j.Assembly.Parts = j.Assembly.Parts[1:]
	if r = Solve(book, j); r.Assembly == nil || !r.Assembly.Laid || len(r.Faults) > 0 || r.Assembly.Pieces[0].From != "pump" {
		t.Errorf("socket: %+v", r.Faults)
	}
}

// TestLeftEmpty: what the job leaves empty and the assembly needs is assumed
// and told; what it gives is not.
func TestLeftEmpty(t *testing.T) {
	codes := []string{AssumeAttitude, AssumePlace, AssumeTurn, AssumeRolls, AssumeKerf}
	book, _ := read(t, "hillside-cascade")
	j := fits(t)
	j.Assembly.Turn = job.Angle{Text: "0"}
	r := Solve(book, j)
	for _, c := range codes {
		if assumed(r, c) {
			t.Errorf("%s is told, but is given", c)
		}
	}
	j.Assembly.Attitude, j.Assembly.Turn, j.Assembly.At = "", job.Angle{}, job.XYZ{}
	j.Assembly.Parts[2].Roll, j.Stock.Kerf = job.Angle{}, job.Length{}
	r = Solve(book, j)
	for _, c := range codes {
		if !assumed(r, c) {
			t.Errorf("%s is in force and not told", c)
		}
	}
}

// TestOneFindingForAWall: six parts stand in the courtyard's right wall; that
// is one danger, by the worst of them.
func TestOneFindingForAWall(t *testing.T) {
	book, j := read(t, "courtyard-rill")
	n := 0
	for _, f := range coded(Solve(book, j), layout.FindWall) {
		if f.Severity != trace.Danger {
			continue
		}
		n++
		if a, _ := argument(f.Message, "parts"); a.Text != "U1, E1, V1, E2, P5, B1" {
			t.Errorf("%+v", f.Args)
		}
		worst, _ := argument(f.Message, "worst")
		if worst.Text != "B1" || f.Found.SI > -0.14 {
			t.Errorf("%+v", f)
		}
	}
	if n != 1 {
		t.Errorf("%d dangers", n)
	}
}

// TestGlueOfTheDemoThatFits holds the first and the last steps: the ends made ready, dry, and water only.
func TestGlueOfTheDemoThatFits(t *testing.T) {
	book, _ := read(t, "hillside-cascade")
	steps := Solve(book, fits(t)).Glue.Steps
	if len(steps) < 20 || steps[0].Code != glue.StepPrepare || steps[1].Code != glue.StepDryFit || !slices.Contains(steps[len(steps)-1].Cautions, glue.CautionWaterOnly) {
		t.Errorf("%d steps", len(steps))
	}
}
