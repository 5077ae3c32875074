package network

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

// The examples here are solved through the network; the same rows stand in
// docs/checks.md by way of package checks.

// mustSolver makes a solver of a network that must have no faults.
func mustSolver(t tester, n Network) *Solver {
	s, faults := NewSolver(n)
	if len(faults) != 0 {
		t.Fatalf("faults: %v", faults)
	}
	return s
}

// solved solves a network that must converge and checks the answer by the
// audit, which shares nothing with the solver.
func solved(t tester, n Network) *State {
	s := mustSolver(t, n)
	st := s.NewState()
	if stop := s.Solve(st); stop != StopConverged {
		t.Fatalf("stop %v: %v", stop, s.Messages(st))
	}
	audit(t, n, st)
	return st
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, tol)
	}
}

// hardyCross is the example of CE 3620 Water Resources Engineering, Pipe
// Network Systems (Hardy Cross), lecture slides, 6 February 2013: rows E44 and
// E45 of the reference. Everything is in feet and ft³/s; the solver does not
// mind what the units are called.
func hardyCross() Network {
	var n Network
	a := n.AddNode(Node{Name: "A", Kind: FixedLevel, Level: 10})
	b := n.AddNode(Node{Name: "B", Kind: FixedLevel, Level: 0})
	j := [5]int{}
	for i, demand := range []unit.Flow{2, 4, 1, 3} {
		j[i+1] = n.AddNode(Node{Name: string(rune('1' + i)), Demand: demand})
	}
	for _, p := range []struct {
		name     string
		from, to int
		k        Quadratic
	}{
		{"A-1", a, j[1], 0.38},
		{"1-2", j[1], j[2], 2.89},
		{"1-4", j[1], j[4], 2.53},
		{"4-2", j[4], j[2], 12.13},
		{"3-2", j[3], j[2], 2.17},
		{"3-4", j[3], j[4], 2.89},
		{"B-3", b, j[3], 0.94},
	} {
		n.AddLink(Link{Name: p.name, From: p.from, To: p.to, Parts: []Part{{Name: p.name, Law: p.k}}})
	}
	return n
}

func TestHardyCross(t *testing.T) {
	st := solved(t, hardyCross())
	// printed after 16 iterations: 2.13 and 2.16 ft³/s (tolerance of the reference 0.02);
	// the full solution as recomputed in the reference's note
	for i, want := range []float64{6.2899, 2.1287, 2.1612, 0.3247, 1.5466, 1.1635, 3.7101} {
		near(t, "flow", float64(st.Links[i].Flow), want, 1e-4)
	}
	near(t, "pipe 1-2 as printed", float64(st.Links[1].Flow), 2.13, 0.02)
	near(t, "pipe 1-4 as printed", float64(st.Links[2].Flow), 2.16, 0.02)
}
