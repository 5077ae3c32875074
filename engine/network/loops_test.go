package network

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// headTold is how near the solver comes to the heads, in m.
const headTold = float64(EnergyTolerance)

// What BalanceLoops tells of a tree is what Balance tells of it.
func TestBalanceLoopsOnTree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		same := func(what string, got, want, tol float64) {
			if math.Abs(got-want) > tol {
				t.Errorf("%s: %g, want %g", what, got, want)
			}
		}
		n, lip, pool := twoFalls()
		n.Links[0].Parts[0].Law = parabola{rapid.Float64Range(4, 40).Draw(t, "shutoff"), 12500}
		draw := func(name string) unit.Flow { return unit.Flow(rapid.Float64Range(0.001, 0.01).Draw(t, name)) }
		want := []Throttle{{Outlet: lip, Wanted: draw("lip"), Link: -1, Area: 0.004}, {Outlet: pool, Wanted: draw("pool"), Link: 2, Area: 0.002}}
		a, faults := n.Balance(want)
		b, more := n.BalanceLoops(want)
		if len(faults)+len(more) > 0 {
			t.Fatal(faults, more)
		}
		same("surplus", float64(b.Surplus), float64(a.Surplus), headTold)
		same("reach", float64(b.Reach), float64(a.Reach), 2*scaleTold)
		// The burn follows the scale it is told for: by hand, the derivatives of
		// 15625 Q², 50000 Q² and 2 Q^(2/3) together.
		squared := func(i int) float64 { return float64(want[i].Wanted) * float64(want[i].Wanted) }
		follows := 2*15625*squared(0) + 2*50000*squared(1) + 4.0/3*math.Cbrt(squared(0))
		for i := range want {
			same("burn", float64(b.Branches[i].Burn), float64(a.Branches[i].Burn), headTold+2*scaleTold*follows)
			if a.Surplus >= 0 { // else what the pump lacks counts in the short ones
				same("short", float64(b.Branches[i].Short), float64(a.Branches[i].Short), headTold)
			}
		}
	})
}

// A ring: two equal ways of 40000 Q² from the pumps to the lip are one of
// 10000 Q²; two equal pumps of 8 - 50000 Q² side by side are one of
// 8 - 12500 Q². So by hand, as in TestBalanceTwoFalls: surplus 1.18 m, burn in
// the pool's branch 1.28 m.
func TestBalanceLoopsRing(t *testing.T) {
	n, lip, pool := twoFalls()
	vault, tee := n.Links[0].From, n.Links[0].To
	header := n.AddNode(Node{Name: "header"})
	pump := []Part{{Name: "pump", Role: Pump, Law: parabola{8, 50000}}}
	n.Links[0] = Link{Name: "pump 1", From: vault, To: header, Parts: pump}
	n.AddLink(Link{Name: "pump 2", From: vault, To: header, Parts: pump})
	for range 2 {
		n.AddLink(Link{Name: "half a ring", From: header, To: tee, Parts: []Part{{Name: "pipe", Law: Quadratic(40000)}}})
	}
	want := []Throttle{{Outlet: lip, Wanted: 0.008, Link: -1, Area: 0.004}, {Outlet: pool, Wanted: 0.004, Link: 2, Area: 0.002}}
	if _, faults := n.Balance(want); len(faults) == 0 {
		t.Error("a ring passed for a tree")
	}
	b, faults := n.BalanceLoops(want)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	near(t, "surplus", float64(b.Surplus), 1.18, headTold)
	near(t, "lip's burn", float64(b.Branches[0].Burn), 0, headTold)
	near(t, "pool's burn", float64(b.Branches[1].Burn), 1.28, headTold)
	near(t, "pool's K", float64(b.Branches[1].K), 6.276256, 1e-5)
	if b.Branches[0].Link != 1 || b.Branches[1].Link != 2 || b.Branches[1].Short != 0 {
		t.Errorf("got %+v", b)
	}
}

func TestBalanceLoopsBad(t *testing.T) {
	n, lip, pool := twoFalls()
	for name, want := range map[string][]Throttle{
		"none":        nil,
		"one missing": {{Outlet: lip, Wanted: 0.008, Link: -1, Area: 0.004}},
		"wrong valve": {{Outlet: lip, Wanted: 0.008, Link: 0, Area: 0.004}, {Outlet: pool, Wanted: 0.004, Link: 2, Area: 0.002}},
		"no bore":     {{Outlet: lip, Wanted: 0.008, Link: -1}, {Outlet: pool, Wanted: 0.004, Link: 2, Area: 0.002}},
	} {
		if b, faults := n.BalanceLoops(want); len(faults) == 0 || len(b.Branches) > 0 {
			t.Errorf("%s: %+v, %v", name, b, faults)
		}
	}
}
