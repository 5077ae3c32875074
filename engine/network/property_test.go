package network

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// The properties below hold for every network whose losses do not fall as the
// flow grows, because its steady state is then the one least of a convex
// function. rapid prints the seed of a failure; -rapid.checks sets the number.

// flowTolerance is how far two answers for one network may differ, in m³/s and
// as a part of the flow.
const (
	flowTolerance     = 2e-9
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
