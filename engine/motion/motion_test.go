package motion

import (
	"errors"
	"math"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/network"
	"plashet/engine/unit"
)

func system(tb testing.TB, in Inputs) *System {
	tb.Helper()
	s, err := New(in)
	if err != nil {
		tb.Fatal(err)
	}
	return s
}

func follow(tb testing.TB, s *System, p Program) Course {
	tb.Helper()
	c, err := s.Run(p)
	if err != nil {
		tb.Fatal(err)
	}
	if math.Abs(float64(c.Mass)) > 1e-3 {
		tb.Errorf("books out by %g", float64(c.Mass))
	}
	return c
}

// TestFirstStart follows the rill by hand: 1.2 l/s fill 23 l of pipe in 19.2 s
// (half a second more for the run-up of 1 s), and 47.25 l of box in 39.4 s more.
// What the vault and the pond give until the pump draws air is what stands in
// the watercourse then.
func TestFirstStart(t *testing.T) {
	s := system(t, rill(t))
	c := follow(t, s, Program{Pump: true, RunUp: 1, Valve: Works, Until: 1800})
	at := map[EventCode]float64{}
	for _, e := range c.Events {
		at[e.Code] = float64(e.At)
	}
	if math.Abs(at[EventPipeFull]-(23/1.2+0.5)) > 0.01 || math.Abs(at[EventLip]-(70.25/1.2+0.5)) > 0.05 {
		t.Errorf("pipe full at %.2f s, lip at %.2f s", at[EventPipeFull], at[EventLip])
	}
	if !c.Dry || !c.Gasping || math.Abs(float64(c.DryAt)-at[EventDry]) > 0 || c.DryAt < 60 || c.DryAt > 100 {
		t.Errorf("draws air %v at %v, still does: %v", c.Dry, c.DryAt, c.Gasping)
	}
	if math.Abs(float64(c.Lowest)+0.22) > 1e-6 {
		t.Errorf("the vault falls to %v", c.Lowest)
	}
}

// TestValves: what comes back depends on the valve, and a leaking one brings
// back the same as an open one, later.
func TestValves(t *testing.T) {
	s := system(t, rill(t))
	run := follow(t, s, Program{From: s.AtRest(Held), Pump: true, Valve: Works, Until: 1800}).End
	back := map[Valve]Course{}
	for _, v := range []Valve{Works, StuckShut, StuckOpen, Absent, Leaking} {
		back[v] = follow(t, s, Program{From: run, Valve: v, Leak: Leak{0.03, 0.61}, Until: 4 * unit.Hour, Still: 1e-9})
	}
	const all = 0.023 + 0.04725
	if back[Works].Back != 0 || back[StuckShut].Back != 0 {
		t.Errorf("%v and %v come back through a valve that is shut", back[Works].Back, back[StuckShut].Back)
	}
	for _, v := range []Valve{StuckOpen, Absent, Leaking} {
		// The head over the lip runs down the rill or back, so a little more than
		// box and pipe may come.
		if got := float64(back[v].Back); got < all-1e-6 || got > all+0.006 {
			t.Errorf("%s: %.4f m³ come back of %.4f", v, got, all)
		}
	}
	emptied := func(v Valve) unit.Duration {
		for _, e := range back[v].Events {
			if e.Code == EventPipeEmpty {
				return e.At
			}
		}
		t.Fatalf("%s: the pipe never empties: %v", v, back[v].Events)
		return 0
	}
	if emptied(StuckOpen) != emptied(Absent) || emptied(Leaking) < 3*emptied(StuckOpen) {
		t.Errorf("empty after %v open, %v without, %v leaking", emptied(StuckOpen), emptied(Absent), emptied(Leaking))
	}
	if d := back[Leaking].End.Pond - back[StuckOpen].End.Pond; math.Abs(float64(d)) > 1e-4 {
		t.Errorf("a leaking valve ends %v m higher than an open one", d)
	}
}

// TestStuckShut: a pump against a shut valve moves nothing.
func TestStuckShut(t *testing.T) {
	s := system(t, rill(t))
	if c := follow(t, s, Program{Pump: true, Valve: StuckShut, Until: 600}); c.Pumped > 0 || !c.Still || c.StillAt > 0 || math.Abs(float64(c.End.Pond)) > 1e-9 {
		t.Errorf("%+v", c)
	}
}

// TestPowerCut: a cut in mid start leaves no more on its way than was pumped.
func TestPowerCut(t *testing.T) {
	s := system(t, rill(t))
	for _, v := range []Valve{Works, StuckOpen} {
		c := follow(t, s, Program{Pump: true, RunUp: 1, CutAt: 30, Valve: v, Until: 1800})
		if math.Abs(float64(c.Pumped)-29.5*1.2e-3) > 1e-6 || !c.Still {
			t.Errorf("%s: %v pumped, %+v", v, c.Pumped, c.Events)
		}
		if v == StuckOpen && math.Abs(float64(c.End.Pond)) > 1e-5 {
			t.Errorf("with the pipe open all is back, but the pond stands at %v", c.End.Pond)
		}
		if v == Works && math.Abs(float64(c.Stored-c.Pumped)) > 1e-6 {
			t.Errorf("with the valve shut %v of %v stay", c.Stored, c.Pumped)
		}
	}
}

// TestAccuracy: ten times the accuracy asked for moves no answer that a
// contractor would see.
func TestAccuracy(t *testing.T) {
	s := system(t, rill(t))
	run := follow(t, s, Program{From: s.AtRest(Held), Pump: true, Valve: Works, Until: 1800}).End
	for name, p := range map[string]Program{
		"first": {Pump: true, RunUp: 1, Valve: Works, Until: 1800}, "restart": {From: s.AtRest(Held), Pump: true, RunUp: 1, Valve: Works, Until: 1800},
		"open": {From: run, Valve: StuckOpen, Until: 1800}, "rain": {From: run, Valve: Works, Rain: Rain{Depth: 0.05, Over: 900, From: 300}, Until: 3600},
	} {
		p.Whole = true
		a := follow(t, s, p)
		p.Accuracy = 1e-8
		b := follow(t, s, p)
		if math.Abs(float64(a.Lowest-b.Lowest)) > 1e-4 || math.Abs(float64(a.Highest-b.Highest)) > 1e-4 || math.Abs(float64(a.DryAt-b.DryAt)) > 0.1 || math.Abs(float64(a.Over-b.Over)) > 1e-4 {
			t.Errorf("%s: %v %v %v %v, finer %v %v %v %v", name, a.Lowest, a.Highest, a.DryAt, a.Over, b.Lowest, b.Highest, b.DryAt, b.Over)
		}
	}
}

// TestAgain: the same program gives the same answer on a system that has run
// another in between.
func TestAgain(t *testing.T) {
	s := system(t, rill(t))
	p := Program{Pump: true, RunUp: 1, Valve: Works, Until: 1800}
	a := follow(t, s, p)
	follow(t, s, Program{From: a.End, Valve: StuckOpen, Until: 1800})
	b := follow(t, s, p)
	if a.DryAt != b.DryAt || a.End.Pond != b.End.Pond || a.Evals != b.Evals {
		t.Errorf("%v %v %d, again %v %v %d", a.DryAt, a.End.Pond, a.Evals, b.DryAt, b.End.Pond, b.Evals)
	}
}

// TestSeries: the thinned series carries the curve: between its samples the
// levels of a finer run lie near the line.
func TestSeries(t *testing.T) {
	s := system(t, rill(t))
	c := follow(t, s, Program{Pump: true, RunUp: 1, Valve: Works, Until: 1800})
	if n := len(c.Series); n < 5 || n > 100 || c.Series[0].At != 0 || c.Series[n-1].At != c.Took {
		t.Fatalf("%d samples, from %v to %v of %v", n, c.Series[0].At, c.Series[n-1].At, c.Took)
	}
	for i := 1; i < len(c.Series); i++ {
		if c.Series[i].At < c.Series[i-1].At {
			t.Errorf("sample %d comes before the one before it", i)
		}
	}
}

// TestDrop: carried on straight, the drop behind the sill keeps to the law.
func TestDrop(t *testing.T) {
	w, err := newSill(&level.Sill{Crest: 0, Width: 0.3, C: 1.7})
	if err != nil {
		t.Fatal(err)
	}
	tried := 0
	for _, hp := range []float64{0.02, 0.05, 0.1, 0.3} {
		for _, part := range []float64{-0.5, -0.1, 0.01, 0.1, 0.5, 0.9} {
			q := part * w.free(hp)
			d := w.drop(hp, q)
			if !d.smooth {
				continue
			}
			tried++
			h, p := hp*(1+0.99*dropNear), q*(1-0.99*dropNear)
			if !d.near(h, p) {
				t.Fatal("not near")
			}
			got, _ := d.at(h, p)
			if want, _ := w.behind(h, p); math.Abs(got-want) > 3e-4*hp {
				t.Errorf("head %v, flow %v: vault at %v over the crest, by the law %v", hp, q, got, want)
			}
		}
	}
	if tried < 10 {
		t.Errorf("%d tried", tried)
	}
}

// TestBadInput: what cannot be is refused by name, nothing panics.
func TestBadInput(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(in *Inputs)
		code  string
	}{
		"no pond":        {func(in *Inputs) { in.Pond = nil }, CodeMissing},
		"no supply":      {func(in *Inputs) { in.Supply = nil }, CodeMissing},
		"no feed":        {func(in *Inputs) { in.Feeds = nil }, CodeMissing},
		"no box":         {func(in *Inputs) { in.Feeds[0].Parts = nil }, CodeMissing},
		"empty vault":    {func(in *Inputs) { in.Vault.Body = nil }, CodeMissing},
		"line in heaven": {func(in *Inputs) { in.Line = 1e6 }, CodeRange},
		"NaN volume":     {func(in *Inputs) { in.Feeds[0].Parts[0].Full = unit.Volume(math.NaN()) }, CodeNotFinite},
		"more than full": {func(in *Inputs) { in.Feeds[0].PipeHeld = 1 }, CodeRange},
	} {
		in := rill(t)
		c.spoil(&in)
		_, err := New(in)
		var e *Error
		if !errors.As(err, &e) || e.Code != c.code {
			t.Errorf("%s: %v", name, err)
		}
	}
	in := rill(t)
	in.Vault.Sill.Width = 0
	var he *hydro.Error
	if _, err := New(in); !errors.As(err, &he) {
		t.Errorf("no width: %v", err)
	}
	s := system(t, rill(t))
	for name, p := range map[string]Program{"for ever": {Until: unit.Duration(math.Inf(1))}, "cut": {CutAt: -1, Until: 1}, "leak": {Leak: Leak{2, 0.6}, Until: 1}} {
		if _, err := s.Run(p); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// pumped is a network of a pump, a pipe and n ends side by side.
func pumped(tb testing.TB, ends int) (network.Network, int, []int) {
	tb.Helper()
	c, err := hydro.NewCurve(hydro.PumpData{Points: []hydro.CurvePoint{{Flow: 0, Head: 3.2}, {Flow: 0.58e-3, Head: 2.7}, {Flow: 1.1e-3, Head: 1.9}, {Flow: 1.52e-3, Head: 1.1}, {Flow: 1.95e-3}}})
	if err != nil {
		tb.Fatal(err)
	}
	w, err := hydro.WaterAt(15)
	if err != nil {
		tb.Fatal(err)
	}
	pipe, err := hydro.PipeLaw{Bore: 0.045, Length: 14, Roughness: 1.5e-6}.Prepare(w)
	if err != nil {
		tb.Fatal(err)
	}
	fit, err := hydro.MinorLaw{Bore: 0.045, K: 8}.Prepare(w)
	if err != nil {
		tb.Fatal(err)
	}
	var n network.Network
	vault, tee := n.AddNode(network.Node{Name: "vault", Kind: network.FixedLevel}), n.AddNode(network.Node{Name: "tee"})
	n.AddLink(network.Link{From: vault, To: tee, Parts: []network.Part{{Law: against{c}, Role: network.Pump}}})
	var out []int
	for range ends {
		e := n.AddNode(network.Node{Name: "box", Kind: network.OpenEnd})
		n.AddLink(network.Link{From: tee, To: e, Parts: []network.Part{{Law: pipe}, {Law: fit}}})
		out = append(out, e)
	}
	return n, vault, out
}

type against struct{ c *hydro.Curve }

func (p against) Loss(q unit.Flow) (unit.Head, float64) {
	h, d, _ := p.c.Head(q)
	return -h, -d
}

// TestPipesAccuracy: between its anchors the supply keeps to what the network
// says, for lifts that wander as a filling box and a falling vault make them.
func TestPipesAccuracy(t *testing.T) {
	for ends := 1; ends <= 3; ends++ {
		n, vault, out := pumped(t, ends)
		p, err := NewPipes(n, []int{vault}, out)
		if err != nil {
			t.Fatal(err)
		}
		exact, err := NewPipes(n, []int{vault}, out)
		if err != nil {
			t.Fatal(err)
		}
		lift, got, want := make([]unit.Length, ends), make([]unit.Flow, ends), make([]unit.Flow, ends)
		worst := 0.0
		for i := range 400 {
			for k := range lift {
				lift[k] = unit.Length(0.2 + 0.002*float64(i) + 0.05*float64(k))
			}
			if _, err := p.Near(lift); err != nil {
				t.Fatal(err)
			}
			p.Flows(lift, got)
			if err := exact.solve(lift, want); err != nil {
				t.Fatal(err)
			}
			sum := 0.0
			for _, q := range want {
				sum += float64(q)
			}
			for k := range want {
				worst = max(worst, math.Abs(float64(got[k]-want[k]))/sum)
			}
		}
		t.Logf("%d ends: %d anchors, %d solves, worst %.1e", ends, p.Anchors, p.Solves, worst)
		if worst > 3*supplyAccuracy || p.Anchors > 60 {
			t.Errorf("%d ends: off by %g of the flow, %d anchors", ends, worst, p.Anchors)
		}
	}
}

// BenchmarkThirtyMinutes is 30 minutes of start and stop: 15 minutes of first
// start and 15 of a stop with the valve open, by the network of pump and pipe,
// none of it cut short. Beside it stands what the evaluations of the rates alone
// cost.
func BenchmarkThirtyMinutes(b *testing.B) {
	n, vault, out := pumped(b, 1)
	p, err := NewPipes(n, []int{vault}, out)
	if err != nil {
		b.Fatal(err)
	}
	in := rill(b)
	in.Supply = p
	s := system(b, in)
	evals, steps := 0, 0
	b.ReportAllocs()
	for b.Loop() {
		a := follow(b, s, Program{From: s.AtRest(Dry), Pump: true, RunUp: 1, Valve: Works, Until: 900, Whole: true})
		c := follow(b, s, Program{From: a.End, Valve: StuckOpen, Until: 900, Whole: true})
		evals, steps = a.Evals+c.Evals, a.Steps+c.Steps
	}
	b.ReportMetric(float64(evals), "evals")
	b.ReportMetric(float64(steps), "steps")
}

// BenchmarkRates is one evaluation of the rates, of which a course is made.
func BenchmarkRates(b *testing.B) {
	s := system(b, rill(b))
	c := s.begin(Program{From: s.AtRest(Held), Pump: true, Valve: Works, Until: 900})
	if err := c.anew(); err != nil {
		b.Fatal(err)
	}
	dx := make([]float64, s.size)
	for b.Loop() {
		c.rates(0, c.x, dx)
	}
}
