package design

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// filled gives the input that a job makes for the search.
func filled(t *testing.T, book *catalog.Book, j *job.Job, want ArrangeWant) (*model, *Arranging, bool) {
	t.Helper()
	m, a := modelFor(book, j), &Arranging{}
	if !m.start() {
		t.Fatal(m.out.Faults)
	}
	ok := m.arranging(a, want)
	return m, a, ok
}

func fittingOf(a *Arranging, name string) *arrange.Fitting {
	if i := slices.Index(a.Names, name); i >= 0 {
		return &a.Input.Fittings[i]
	}
	return nil
}

// TestArrangeFills: the search gets the pump's attitudes, every usual fitting of
// the pipe's size with its own measures, its loss at the flow as drawn and its
// price, and the pipe.
func TestArrangeFills(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	_, a, ok := filled(t, book, j, ArrangeWant{Elbows: 3})
	in := &a.Input
	if !ok || len(in.Standings) != 1 || in.Standings[0].Fixed || len(in.Standings[0].Turns) != 0 || !in.Rules.Check || !in.Rules.Union || in.Rules.Elbows != 3 {
		t.Fatalf("%v %+v", ok, in)
	}
	if d := Solve(book, j).Delivery; math.Abs(float64(a.Flow/d.Flow)-1) > 1e-9 {
		t.Errorf("losses at %v, the pump gives %v", a.Flow, d.Flow)
	}
	for _, name := range append([]string{"male adapter"}, usualFittings...) {
		f := fittingOf(a, name)
		if f == nil || f.AtHand != -1 || f.Part.Size != "2" {
			t.Errorf("%s: %+v", name, f)
		}
	}
	// Measured by the fitter: 1.15 in centre to stop. Priced in the job: 3.15.
	// A street elbow has no price there, so that none is compared by cost.
	e := fittingOf(a, "elbow 90")
	priced := a.fittings[slices.Index(a.Names, "elbow 90")]
	if math.Abs(float64(e.Part.In.TakeOff.Length-1.15*unit.Inch)) > 1e-9 || e.Part.In.TakeOff.By() != layout.ByHand || !priced.Priced || priced.Cost != 3.15 || e.Priced || e.Cost != 0 {
		t.Errorf("%+v", e)
	}
	// The same loss as in a run: K v²/2g, which the run's own K gives at this flow.
	bore := 2.067 * float64(unit.Inch) // ASTM D1785, table 2
	v := float64(a.Flow) / (math.Pi / 4 * bore * bore)
	l, err := book.LossMeasured("elbow 90", "2", nil)
	if err != nil {
		t.Fatal(err)
	}
	re := v * bore / 1.13e-6 // water of 60 F: 1.13e-6 m²/s (common handbook value, from memory)
	perRe, rest := l.Split(smoothFactor, unit.Length(bore))
	if want := (rest + perRe/re) * v * v / (2 * 9.80665); math.Abs(float64(e.Head)/want-1) > 0.005 {
		t.Errorf("elbow takes %v m, by hand %v", e.Head, want)
	}
	if p := a.pipes[0]; len(in.Pipes) != 1 || p.Size != "2" || p.AtHand != -1 || math.Abs(p.Cost*float64(unit.Foot)-1.90) > 1e-9 || p.Slope <= 0 {
		t.Errorf("%+v", in.Pipes)
	}
}

// TestArrangeStock: what cannot be had is not offered; where only the truck
// counts, its counts and its longest piece do.
func TestArrangeStock(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Stock.Fittings = []job.StockFitting{{Fitting: "street 90", Size: "2 in", None: true}, {Fitting: "ball valve", Size: "2"}}
	_, a, ok := filled(t, book, j, ArrangeWant{})
	if !ok || fittingOf(a, "street elbow 90") != nil || fittingOf(a, "elbow 90") == nil || fittingOf(a, "ball valve") == nil {
		t.Errorf("%v %v", ok, a.Names)
	}
	j.Stock.Only = true
	j.Stock.Fittings = []job.StockFitting{{Fitting: "elbow 90", Size: "2", Count: 3}, {Fitting: "union", Size: "2"}, {Fitting: "tee", Size: "2"}}
	m, a, _ := filled(t, book, j, ArrangeWant{})
	if f := fittingOf(a, "elbow 90"); len(a.Names) != 2 || f == nil || f.AtHand != 3 || fittingOf(a, "union").AtHand != 1 {
		t.Errorf("%v %+v", a.Names, a.Input.Fittings)
	}
	if p := a.Input.Pipes[0]; math.Abs(float64(p.AtHand-31.5*unit.Inch)) > 1e-9 {
		t.Errorf("the longest offcut is 31-1/2 in: %+v", p)
	}
	if k := a.Input.Pipes[0].Stock; k == nil || slices.Max(k.Lengths) != a.Input.Pipes[0].AtHand || k.Grid != unit.Inch/64 || k.Kerf != j.Stock.Kerf.SI {
		t.Errorf("%+v", k)
	}
	if len(coded(m.out, FindStockUnread)) != 1 {
		t.Errorf("%+v", m.out.Findings)
	}
}

// TestArrangeGlued: what is glued stays with its marks, rolls and distances.
func TestArrangeGlued(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	p := j.Assembly.Parts
	p[0].Glued, p[1].Glued, p[len(p)-1].Glued = "pump", "pump", "wall"
	m, a, ok := filled(t, book, j, ArrangeWant{})
	g := &a.Input.Glued
	if !ok || len(coded(m.out, FindGluedUnion)) != 1 {
		t.Errorf("%v %+v", ok, m.out)
	}
	if len(g.FromPort) != 2 || len(g.FromWall) != 1 || g.FromPort[0].Mark != "A1" || g.FromPort[1].Mark != "U1" || g.FromWall[0].Kind != layout.Bulkhead {
		t.Errorf("%+v", g)
	}
}

// TestArrangeGluedInto: which way the water runs into glued elbows is taken from
// the chain as it stands on the pump it was glued to, and asked for where that
// pump is not known.
func TestArrangeGluedInto(t *testing.T) {
	up := geom.Vec3{Z: 1}
	for _, c := range []struct {
		name    string
		into    geom.Vec3
		assumed int
		change  func(book *catalog.Book, j *job.Job)
	}{
		{"the same pump", up, 1, func(*catalog.Book, *job.Job) {}},
		{"another port", geom.Vec3{}, 0, func(_ *catalog.Book, j *job.Job) { j.Pumps[0].Attitudes[0].Points = "left" }},
		{"said", up, 0, func(_ *catalog.Book, j *job.Job) {
			j.Pumps[0].Attitudes[0].Points, j.Assembly.Search.Into = "left", "up"
		}},
		{"kept with the old pump", up, 1, func(book *catalog.Book, j *job.Job) {
			next, faults := KeepDrawn(book, j)
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			*j = *next
			j.Pumps[0].Attitudes[0].Points = "left"
		}},
	} {
		book, j := read(t, "hillside-cascade")
		c.change(book, j)
		for i := 2; i < len(j.Assembly.Parts); i++ {
			j.Assembly.Parts[i].Glued = "wall"
		}
		m, a, _ := filled(t, book, j, ArrangeWant{})
		n := 0
		for _, x := range m.out.Assumptions {
			if x.Code == AssumeGluedInto {
				n++
			}
		}
		if d := a.Input.Glued.Into.Sub(c.into).Norm(); d > 1e-9 || n != c.assumed {
			t.Errorf("%s: into %v, assumed %d", c.name, a.Input.Glued.Into, n)
		}
	}
}

// TestGluedStaysOut: what is glued already is neither cut nor bought again.
func TestGluedStaysOut(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	whole := Solve(book, j)
	j.Assembly.Parts[0].Glued, j.Assembly.Parts[1].Glued = "pump", "pump"
	half := Solve(book, j)
	marks := func(r *Result) (out []string) {
		for _, c := range r.Cutting {
			for _, p := range c.Pieces {
				out = append(out, p.Mark)
			}
		}
		return out
	}
	if !slices.Contains(marks(whole), "P1") || slices.Contains(marks(half), "P1") || !half.Assembly.Pieces[0].Made {
		t.Errorf("%v, then %v", marks(whole), marks(half))
	}
	if len(half.Glue.Steps) == 0 || len(half.Glue.Steps) >= len(whole.Glue.Steps) || half.Glue.Cement >= whole.Glue.Cement {
		t.Errorf("%d steps, then %d", len(whole.Glue.Steps), len(half.Glue.Steps))
	}
	for _, s := range half.Glue.Steps {
		for _, n := range s.Joints {
			if half.Glue.Joints[n-1].Made {
				t.Errorf("step %d makes joint %d, which is made", s.Number, n)
			}
		}
	}
}

// TestArrangeBad: what contradicts itself is refused, each with a sentence of
// its own, and no search begins.
func TestArrangeBad(t *testing.T) {
	for _, c := range []struct {
		name, code string
		fault      bool
		spoil      func(j *job.Job)
	}{
		{"pump too long", CodePumpLarge, true, func(j *job.Job) { j.Pumps[0].Attitudes[0].Length.SI = 30 * unit.Inch }},
		{"pump too high", CodePumpLarge, true, func(j *job.Job) { j.Pumps[0].Attitudes[0].Height.SI = 27 * unit.Inch }},
		{"hole off its wall", layout.FaultHole, true, func(j *job.Job) { j.Vault.Outlet.Along.SI = 19 * unit.Inch }},
		{"no vault", layout.FaultNoVault, true, func(j *job.Job) { j.Vault = job.Vault{} }},
		{"no attitude", CodeArrangePump, true, func(j *job.Job) { j.Pumps[0].Attitudes = nil }},
		{"hose port", CodeArrangePort, true, func(j *job.Job) { j.Pumps[0].Port.Thread = "hose" }},
		{"no such thread", CodePortSize, true, func(j *job.Job) { j.Pumps[0].Port.Size = "2-7/8" }},
		{"hub thinner than pipe", CodeSocket, true, func(j *job.Job) { j.Measured[2].Hub = entry("2 in", 2*unit.Inch) }},
		{"turn inside the socket", CodeSocket, true, func(j *job.Job) { j.Measured[2].ToStop = entry("1 in", unit.Inch) }},
		{"no pipe", CodeArrangePipe, true, func(j *job.Job) { j.Assembly.Pipe, j.Runs = job.PipeName{}, nil }},
		{"port that looks into the pump", CodePortInto, true, func(j *job.Job) { j.Pumps[0].Attitudes[0].Points = "down" }},
		{"port far off the pump", CodePortOff, true, func(j *job.Job) { j.Pumps[0].Attitudes[0].Port.X = entry("40 in", 40*unit.Inch) }},
		{"obstacle over the hole", CodeObstacleHole, true, func(j *job.Job) {
			j.Vault.Obstacles = []job.Obstacle{{Name: "a", From: xyz(0.5, 0.1, 0.4), To: xyz(0.6096, 0.4, 0.5)}}
		}},
	} {
		book, j := read(t, "hillside-cascade")
		c.spoil(j)
		m, _, ok := filled(t, book, j, ArrangeWant{})
		told := slices.ContainsFunc(m.out.Faults, func(f trace.Fault) bool { return f.Code == c.code })
		if !c.fault {
			told = len(coded(m.out, c.code)) == 1
		}
		if ok == c.fault || !told || c.fault && len(m.out.Faults) != 1 {
			t.Errorf("%s: search %v, told %v: %+v", c.name, ok, told, m.out.Faults)
		}
	}
	book, j := read(t, "hillside-cascade")
	if m, _, ok := filled(t, book, j, ArrangeWant{Elbows: mostElbows + 1, Best: -1}); ok || len(m.out.Faults) != 2 {
		t.Errorf("%v %+v", ok, m.out.Faults)
	}
	m := modelFor(book, j)
	m.unread = []trace.Fault{{Path: "/vault/length"}}
	if m.start() && m.arranging(&Arranging{}, ArrangeWant{}) || len(coded(m.out, FindNoArrange)) != 1 {
		t.Error("a search stands on what could not be read")
	}
}

// TestArrangeSizes: where the run goes on in another size than the assembly, the
// fitting in the wall is of the run's size, everything is offered in both, with
// the reducers from the one at the port to the other, as the water meets them.
func TestArrangeSizes(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Runs[pumpRun(j)].Pipe.Size = "1-1/2"
	m, a, ok := filled(t, book, j, ArrangeWant{})
	if !ok {
		t.Fatal(m.out.Faults)
	}
	has := func(name, size string) *arrange.Fitting {
		for i := range a.Names {
			if a.Names[i] == name && a.Input.Fittings[i].Part.Size == size {
				return &a.Input.Fittings[i]
			}
		}
		return nil
	}
	if has("elbow 90", "2") == nil || has("elbow 90", "1-1/2") == nil || has("bulkhead fitting", "1-1/2") == nil || has("bulkhead fitting", "2") != nil || len(a.Input.Pipes) != 2 {
		t.Errorf("%v, %d pipes", a.Names, len(a.Input.Pipes))
	}
	r := has("reducer bushing", "2 x 1-1/2")
	if r == nil || r.Part.In.Kind != layout.Spigot || has("reducing coupling", "2 x 1-1/2") == nil || has("reducer bushing", "1-1/2 x 2") != nil {
		t.Fatalf("%v", a.Names)
	}
	if !slices.ContainsFunc(m.out.Assumptions, func(as trace.Assumption) bool { return as.Code == AssumeWallSize }) {
		t.Error("it is not told that the wall's fitting is of the run's size")
	}
	// K of a sudden contraction is on the smaller pipe: 0.5 (1 - beta²), bores of ASTM D1785, table 2.
	small, large := 1.610*float64(unit.Inch), 2.067*float64(unit.Inch)
	v := float64(a.Flow) / (math.Pi / 4 * small * small)
	if want := 0.5 * (1 - small*small/large/large) * v * v / (2 * 9.80665); math.Abs(float64(r.Head)/want-1) > 0.005 {
		t.Errorf("the bushing takes %v m, by hand %v", r.Head, want)
	}
	// A fitting for the hole in the stock offers its size too; a reducer there is the
	// counter's, whichever way round it is written.
	j.Runs[pumpRun(j)].Pipe.Size = "2"
	j.Stock.Fittings = []job.StockFitting{{Fitting: "bulkhead fitting", Size: "1-1/2"}, {Fitting: "bushing", Size: "1-1/2 x 2", None: true}}
	if _, a, ok = filled(t, book, j, ArrangeWant{}); !ok || has("bulkhead fitting", "2") == nil || has("bulkhead fitting", "1-1/2") == nil || has("reducer bushing", "2 x 1-1/2") != nil || has("reducing coupling", "2 x 1-1/2") == nil {
		t.Errorf("%v", a.Names)
	}
}
