package network

import (
	"math"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// TestChanged: with laws changed in their places, and crests moved, a warm
// solver gives what a fresh one gives, and allocates nothing.
func TestChanged(t *testing.T) {
	water, err := hydro.WaterAt(20)
	if err != nil {
		t.Fatal(err)
	}
	pipe, err := hydro.PipeLaw{Bore: 0.05, Length: 20}.Prepare(water)
	if err != nil {
		t.Fatal(err)
	}
	lip, err := hydro.LipLaw{Width: 0.5, C: 1.7}.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	n := Network{
		Nodes: []Node{{Kind: FixedLevel}, {Kind: FreeLip, Level: 2, Law: lip}},
		Links: []Link{{From: 0, To: 1, Parts: []Part{{Role: Pump, Law: parabola{6, 1e6}}, {Law: pipe}}}},
	}
	solver, faults := NewSolver(n)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	st := solver.NewState()
	change := func(k int) {
		x := float64(k)
		if err := pipe.Renew(hydro.PipeLaw{Bore: unit.Length(0.05 + 0.002*math.Sin(x)), Length: 20, Roughness: unit.Length(1e-6 * x)}, water); err != nil {
			t.Fatal(err)
		}
		if err := lip.Renew(hydro.LipLaw{Width: 0.5, C: 1.7 + 0.1*math.Cos(x)}); err != nil {
			t.Fatal(err)
		}
		solver.Changed()
		n.Nodes[1].Level = unit.Length(2 + 0.8*math.Sin(3*x))
		if faults := solver.SetLevel(1, n.Nodes[1].Level); len(faults) > 0 {
			t.Fatal(faults)
		}
		if solver.Solve(st) != StopConverged {
			t.Fatal(solver.Messages(st))
		}
	}
	for k := range 50 {
		change(k)
		fresh, _ := NewSolver(n)
		want := fresh.NewState()
		fresh.Solve(want)
		if d := math.Abs(float64(st.Links[0].Flow - want.Links[0].Flow)); d > 1e-10 {
			t.Errorf("draw %d: flow off by %g m³/s", k, d)
		}
	}
	if a := testing.AllocsPerRun(10, func() { change(7) }); a > 0 {
		t.Errorf("%v allocations", a)
	}
}
