package network

import (
	"flag"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// The properties below hold for every network whose losses do not fall as the
// flow grows, because its steady state is then the one least of a convex
// function. rapid prints the seed of a failure; -rapid.checks sets the number.

// TestMain sets ten thousand networks for each property where the command line
// says nothing, a thousand with -short; -rapid.checks=1000000 runs more
// (docs/network.md tells of such a run).
func TestMain(m *testing.M) {
	flag.Parse()
	said := false
	flag.Visit(func(f *flag.Flag) { said = said || f.Name == "rapid.checks" })
	if !said {
		checks := "10000"
		if testing.Short() {
			checks = "1000"
		}
		if err := flag.Set("rapid.checks", checks); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

// flowTolerance is how far two answers for one network may differ, in m³/s and
// as a part of the flow. Through the least of the square resistances drawn here
// (3162 s²/m⁵) 1e-11 m of head, some times the search's own margin, drives
// 6e-8 m³/s where the flow ought to be nothing. (A pipe that is laminar near
// zero, as package hydro's are, is far more exact there.)
const (
	flowTolerance     = 6e-8
	flowTolerancePart = 1e-7
)

func sameFlow(a, b unit.Flow) bool {
	x, y := float64(a), float64(b)
	return math.Abs(x-y) <= flowTolerance+flowTolerancePart*math.Max(math.Abs(x), math.Abs(y))
}

// drawSolved draws a network and solves it. A demand that nothing supplies is
// the one honest way not to converge.
func drawSolved(t *rapid.T, o options) (Network, *Solver, *State) {
	n := anyNetwork(t, o)
	s, faults := NewSolver(n)
	if len(faults) > 0 {
		t.Fatalf("faults: %v", faults)
	}
	st := s.NewState()
	if stop := s.Solve(st); stop != StopConverged {
		if stop == StopNoSteadyState && st.Reasons[len(st.Reasons)-1].Code == ReasonNoSupply {
			t.Skip("demand without supply")
		}
		t.Fatalf("%v: %v", stop, s.Messages(st))
	}
	return n, s, st
}

func TestBooksBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, _, st := drawSolved(t, options{})
		audit(t, n, st)
	})
}

func TestRelabellingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, _, st := drawSolved(t, options{})
		node := rapid.Permutation(count(len(n.Nodes))).Draw(t, "node order")
		link := rapid.Permutation(count(len(n.Links))).Draw(t, "link order")
		turned := rapid.SliceOfN(rapid.Bool(), len(n.Links), len(n.Links)).Draw(t, "turned links")
		m := Network{Nodes: make([]Node, len(n.Nodes)), Links: make([]Link, len(n.Links))}
		for i, x := range n.Nodes {
			m.Nodes[node[i]] = x
		}
		for i, l := range n.Links {
			l.From, l.To = node[l.From], node[l.To]
			if turned[i] {
				l = turnLink(l)
			}
			m.Links[link[i]] = l
		}
		again := solved(t, m)
		for i := range n.Links {
			q := again.Links[link[i]].Flow
			if turned[i] {
				q = -q
			}
			if !sameFlow(st.Links[i].Flow, q) {
				t.Errorf("link %d: %g m³/s, relabelled %g", i, float64(st.Links[i].Flow), float64(q))
			}
		}
		for i := range n.Nodes {
			a, b := st.Nodes[i], again.Nodes[node[i]]
			if firm(a) && firm(b) && math.Abs(float64(a.Head-b.Head)) > float64(EnergyTolerance) {
				t.Errorf("node %d: head %g m, relabelled %g", i, float64(a.Head), float64(b.Head))
			}
		}
	})
}

// turnLink is the same link written the other way round.
func turnLink(l Link) Link {
	t := Link{Name: l.Name, From: l.To, To: l.From}
	for i := len(l.Parts) - 1; i >= 0; i-- {
		p := l.Parts[i]
		p.Reverse = !p.Reverse
		t.Parts = append(t.Parts, p)
	}
	return t
}

func count(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// Closing a valve a little, or making a pipe longer, adds to the loss of one
// link. The rest of the network answers with a head difference that does not
// grow with that link's flow, so the flow cannot grow, nor turn round.
func TestThrottlingNeverRaisesOwnFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, s, st := drawSolved(t, options{})
		at := rapid.IntRange(0, len(n.Links)-1).Draw(t, "link")
		before := st.Links[at].Flow
		var more Law = longer{n.Links[at].Parts[0].Law, rapid.Float64Range(1, 100).Draw(t, "times")}
		if rapid.Bool().Draw(t, "valve") {
			more = throttled{n.Links[at].Parts[0].Law, Quadratic(math.Pow(10, rapid.Float64Range(2, 12).Draw(t, "closed by")))}
		}
		if faults := s.SetLaw(at, 0, more); len(faults) > 0 {
			t.Fatal(faults)
		}
		if stop := s.Solve(st); stop != StopConverged { // from the old answer
			t.Fatalf("%v: %v", stop, s.Messages(st))
		}
		m := Network{Nodes: n.Nodes, Links: append([]Link{}, n.Links...)}
		m.Links[at].Parts = append([]Part{{Name: "pipe", Law: more}}, n.Links[at].Parts[1:]...)
		audit(t, m, st)
		after := st.Links[at].Flow
		if float64(after)*float64(before) < 0 && !sameFlow(after, 0) {
			t.Errorf("flow turned from %g to %g", float64(before), float64(after))
		}
		if math.Abs(float64(after)) > math.Abs(float64(before)) && !sameFlow(before, after) {
			t.Errorf("flow rose from %g to %g", float64(before), float64(after))
		}
		fresh := solved(t, m)
		for i := range m.Links {
			if !sameFlow(fresh.Links[i].Flow, st.Links[i].Flow) {
				t.Errorf("link %d: %g m³/s from the old answer, %g afresh", i, float64(st.Links[i].Flow), float64(fresh.Links[i].Flow))
			}
		}
	})
}

// throttled is a pipe with a valve in it that is closed a little, or nearly.
type throttled struct {
	law   Law
	valve Quadratic
}

func (l throttled) Loss(q unit.Flow) (unit.Head, float64) {
	h, slope := l.law.Loss(q)
	v, more := l.valve.Loss(q)
	return h + v, slope + more
}

// Closing a valve for good leaves no flow in its own link, and a right answer
// in the rest.
func TestShuttingStopsOwnFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t, options{noDemands: true})
		at := rapid.IntRange(0, len(n.Links)-1).Draw(t, "link")
		m := Network{Nodes: n.Nodes, Links: append([]Link{}, n.Links...)}
		m.Links[at].Parts = append([]Part{{Name: "valve", Shut: true}}, n.Links[at].Parts...)
		if q := solved(t, m).Links[at].Flow; q != 0 {
			t.Errorf("%g m³/s through a valve that is shut", float64(q))
		}
	})
}

// longer is a pipe of the same kind, so many times as long.
type longer struct {
	law   Law
	times float64
}

func (l longer) Loss(q unit.Flow) (unit.Head, float64) {
	h, slope := l.law.Loss(q)
	return h * unit.Head(l.times), slope * l.times
}

// Two equal pumps on equal legs, or any two equal links side by side, are one
// link that carries double the flow at the same head.
func TestTwinLinksAreOneDoubled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, _, _ := drawSolved(t, options{})
		at := rapid.IntRange(0, len(n.Links)-1).Draw(t, "link")
		twin := Network{Nodes: n.Nodes, Links: append(append([]Link{}, n.Links...), n.Links[at])}
		doubled := Network{Nodes: n.Nodes, Links: append([]Link{}, n.Links...)}
		l := n.Links[at]
		l.Parts = append([]Part{}, l.Parts...)
		for i, p := range l.Parts {
			if p.Law != nil {
				l.Parts[i].Law = double{p.Law}
			}
		}
		doubled.Links[at] = l
		a, b := solved(t, twin), solved(t, doubled)
		for i := range n.Links {
			have, want := a.Links[i].Flow, b.Links[i].Flow
			if i == at {
				have *= 2
				if !sameFlow(a.Links[i].Flow, a.Links[len(n.Links)].Flow) {
					t.Errorf("twins carry %g and %g", float64(a.Links[i].Flow), float64(a.Links[len(n.Links)].Flow))
				}
			}
			if !sameFlow(have, want) {
				t.Errorf("link %d: %g m³/s beside twins, %g beside the double", i, float64(have), float64(want))
			}
		}
	})
}

type double struct{ law Law }

func (d double) Loss(q unit.Flow) (unit.Head, float64) {
	h, slope := d.law.Loss(q / 2)
	return h, slope / 2
}

// Heads, lengths and coefficients all times k leave the flows as they are.
func TestScalingHeadsLeavesFlows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, _, st := drawSolved(t, options{noLips: true})
		k := rapid.Float64Range(0.1, 10).Draw(t, "k")
		m := Network{Nodes: append([]Node{}, n.Nodes...)}
		for i := range m.Nodes {
			m.Nodes[i].Level *= unit.Length(k)
		}
		for _, l := range n.Links {
			l.Parts = append([]Part{}, l.Parts...)
			for i, p := range l.Parts {
				if p.Law != nil {
					l.Parts[i].Law = longer{p.Law, k}
				}
			}
			m.Links = append(m.Links, l)
		}
		again := solved(t, m)
		for i := range n.Links {
			if !sameFlow(st.Links[i].Flow, again.Links[i].Flow) {
				t.Errorf("link %d: %g m³/s, scaled %g", i, float64(st.Links[i].Flow), float64(again.Links[i].Flow))
			}
		}
	})
}
