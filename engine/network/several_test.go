package network

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// Turns: the humped pump of these tests turns at 1.6 L/s.
func (humped) Turns() ([]unit.Flow, bool) { return []unit.Flow{1.6e-3}, true }

// A humped pump gives 5 + 800 q - 250000 q², the line asks lift + 10000 q².
// With a lift of 5.3 m: 260000 q² - 800 q + 0.3 = 0, q = (800 ± sqrt(640000 -
// 312000))/520000; and at 5 m without flow it can stand. With 4 m the sign of
// the last term turns and one crossing is left.
func TestSeveralStates(t *testing.T) {
	root := math.Sqrt(640000 - 312000)
	for lift, want := range map[float64][]SteadyState{
		5.3: {{0, 5, true}, {unit.Flow((800 - root) / 520000), 0, false}, {unit.Flow((800 + root) / 520000), 0, true}},
		4:   {{unit.Flow((800 + math.Sqrt(640000+1040000)) / 520000), 0, true}},
		6:   {{0, 5, true}}, // over the top of the hump, 5.64 m
	} {
		n := line(Node{Name: "pool", Kind: SubmergedReturn, Level: unit.Length(lift)})
		n.Links[0].Parts[0].Law = humped{}
		s := mustSolver(t, n)
		got, faults := s.Several(0, 0)
		if len(faults) > 0 || !got.All || len(got.Open) > 0 || len(got.States) != len(want) {
			t.Fatalf("lift %g: %+v, %v", lift, got, faults)
		}
		for i, w := range want {
			near(t, "flow", float64(got.States[i].Flow), float64(w.Flow), 2e-8)
			if got.States[i].Stable != w.Stable {
				t.Errorf("lift %g: %+v", lift, got.States[i])
			}
			if w.Flow > 0 {
				near(t, "head", float64(got.States[i].Head), lift+1e4*math.Pow(float64(w.Flow), 2), 1e-5)
			}
		}
		st := s.NewState() // the solver is as before: what it finds is one of them
		if s.Solve(st) != StopConverged || !slices.ContainsFunc(got.States, func(x SteadyState) bool { return math.Abs(float64(x.Flow-st.Links[0].Flow)) < 2e-8 }) {
			t.Errorf("lift %g: Solve gives %g, not among %+v", lift, float64(st.Links[0].Flow), got.States)
		}
	}
}

// Where curve and line touch on the rising side, nothing can tell whether they
// meet: it is told as a range. H = 5 + 800 q - 250000 q² runs along the line
// lift + 400 q of a laminar pipe at q = 0.8 mL/ms where 5.16 = lift.
func TestSeveralTouching(t *testing.T) {
	n := line(Node{Name: "pool", Kind: SubmergedReturn, Level: 5.16})
	n.Links[0].Parts[0].Law = humped{}
	n.Links[0].Parts[1].Law = power{400, 1}
	got, faults := mustSolver(t, n).Several(0, 0)
	if len(faults) > 0 || !got.All {
		t.Fatalf("%+v, %v", got, faults)
	}
	const touch = 8e-4
	near0 := slices.ContainsFunc(got.States, func(x SteadyState) bool { return math.Abs(float64(x.Flow)-touch) < 1e-6 })
	for _, r := range got.Open {
		near0 = near0 || float64(r.Low) < touch+1e-6 && float64(r.High) > touch-1e-6
	}
	if !near0 {
		t.Errorf("passed over: %+v", got)
	}
}

// sampled hides that a law knows its turns.
type sampled struct{ Law }

func TestSeveralSampled(t *testing.T) {
	n := line(Node{Name: "pool", Kind: SubmergedReturn, Level: 5.3})
	n.Links[0].Parts[0].Law = sampled{humped{}}
	got, faults := mustSolver(t, n).Several(0, 0)
	if len(faults) > 0 || got.All || len(got.States) != 3 {
		t.Errorf("%+v, %v", got, faults)
	}
	n.Links[0].Parts[0].Law = humped{}
	n.Links[0].Parts = append(n.Links[0].Parts, Part{Name: "second", Role: Pump, Law: humped{}})
	if got, _ = mustSolver(t, n).Several(0, 0); got.All {
		t.Errorf("two drooping pumps: %+v", got)
	}
}

// zigzag is a pump whose head goes straight from knot to knot and falls
// steeply after the last.
type zigzag struct{ q, h []float64 }

func (z zigzag) Loss(q unit.Flow) (unit.Head, float64) {
	x := float64(q)
	i := 1
	for i < len(z.q)-1 && x > z.q[i] {
		i++
	}
	slope := (z.h[i] - z.h[i-1]) / (z.q[i] - z.q[i-1])
	return unit.Head(-z.h[i] - slope*(x-z.q[i])), -slope
}

func (z zigzag) Turns() (at []unit.Flow, known bool) {
	for _, q := range z.q[1 : len(z.q)-1] {
		at = append(at, unit.Flow(q))
	}
	return at, true
}

func anyZigzag(t *rapid.T) zigzag {
	z := zigzag{[]float64{0}, []float64{rapid.Float64Range(0.5, 8).Draw(t, "shutoff")}}
	for range rapid.IntRange(1, 5).Draw(t, "knots") {
		last := len(z.q) - 1
		z.q = append(z.q, z.q[last]+rapid.Float64Range(2e-4, 1e-3).Draw(t, "step"))
		z.h = append(z.h, max(z.h[last]+rapid.Float64Range(-2, 2).Draw(t, "rise"), 0.1))
	}
	last := len(z.q) - 1
	z.q, z.h = append(z.q, z.q[last]+1e-3), append(z.h, z.h[last]-10)
	return z
}

// needs gives the head that a network asks of the pump in a link to pass q, by
// another way than Several: the pump is taken out, and q drawn before it and
// put in after it.
func needs(t *rapid.T, n Network, link int, q float64) float64 {
	l := n.Links[link]
	k := slices.IndexFunc(l.Parts, func(p Part) bool { return p.Role == Pump })
	m := Network{Nodes: append([]Node{}, n.Nodes...), Links: append([]Link{}, n.Links...)}
	before, after := m.AddNode(Node{Name: "before", Demand: unit.Flow(q)}), m.AddNode(Node{Name: "after", Demand: unit.Flow(-q)})
	m.Links[link] = Link{Name: "before", From: l.From, To: before, Parts: l.Parts[:k]}
	m.AddLink(Link{Name: "after", From: after, To: l.To, Parts: l.Parts[k+1:]})
	s, faults := NewSolver(m)
	if len(faults) > 0 {
		t.Fatalf("%v", faults)
	}
	st := s.NewState()
	if s.Solve(st) == StopConverged {
		return float64(st.Nodes[after].Head - st.Nodes[before].Head)
	}
	return math.Inf(1)
}

// Over random networks: every state that Several gives is one, and each place
// where the pump's head crosses what the network asks, on a grid, has its state
// or range.
func TestSeveralFindsAllCrossings(t *testing.T) {
	found := [4]int{}
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t, options{noDemands: true})
		link := rapid.IntRange(0, len(n.Links)-1).Draw(t, "pump at")
		pump := anyZigzag(t)
		n.Links[link].Parts = append([]Part{n.Links[link].Parts[0]}, Part{Name: "pump", Role: Pump, Law: pump})
		s, faults := NewSolver(n)
		if len(faults) > 0 {
			t.Fatalf("%v", faults)
		}
		if s.linkNote[link] != LinkRuns {
			return
		}
		got, faults := s.Several(link, 1)
		if len(faults) > 0 || !got.All {
			t.Fatalf("%+v, %v", got, faults)
		}
		found[min(len(got.States), 3)]++
		st := s.NewState()
		if s.Solve(st); st.Nodes[n.Links[link].From].Status != NodeSet {
			return // a ring that no level feeds: the other way of needs cannot supply it
		}
		give := func(q float64) float64 { h, _ := pump.Loss(unit.Flow(q)); return -float64(h) }
		const tol = 1e-5 // m: what 1e-8 m³/s are on the steepest stretch, and the search's own width
		for _, x := range got.States {
			q := float64(x.Flow)
			if h := give(q); q > 0 && !(math.Abs(h-needs(t, n, link, q)) < tol+4e-8*math.Abs(slopeNear(pump, q))) {
				t.Errorf("state %+v: the pump gives %g m, the network asks %g m", x, h, needs(t, n, link, q))
			}
		}
		const steps = 16
		last := pump.q[len(pump.q)-1]
		spare := func(i int) float64 { q := last * float64(i) / steps; return give(q) - needs(t, n, link, q) }
		for i, was := 2, spare(1); i <= steps; i++ {
			now := spare(i)
			low, high := last*float64(i-1)/steps-severalWidth, last*float64(i)/steps+severalWidth
			seen := slices.ContainsFunc(got.States, func(x SteadyState) bool { return float64(x.Flow) >= low && float64(x.Flow) <= high }) ||
				slices.ContainsFunc(got.Open, func(r FlowRange) bool { return float64(r.High) >= low && float64(r.Low) <= high })
			if was*now < 0 && min(math.Abs(was), math.Abs(now)) > tol && !seen {
				t.Errorf("a crossing between %g and %g m³/s is not among %+v", low, high, got)
			}
			was = now
		}
	})
	if !testing.Short() && (found[1] == 0 || found[2] == 0 && found[3] == 0) {
		t.Errorf("networks with 0, 1, 2, more states: %v: the cases do not show what they should", found)
	}
}

func slopeNear(z zigzag, q float64) float64 { _, s := z.Loss(unit.Flow(q)); return s }
