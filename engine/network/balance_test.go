package network

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// twoFalls is a vault at -0.5 m, a pump of 8 m less 12500 Q², a main of
// 10000 Q², and from its end a lip at 2 m through 15625 Q² (2 q^(2/3) over the
// crest) and a return under water at 1 m through 50000 Q².
func twoFalls() (n Network, lip, pool int) {
	vault := n.AddNode(Node{Name: "vault", Kind: FixedLevel, Level: -0.5})
	tee := n.AddNode(Node{Name: "tee"})
	lip = n.AddNode(Node{Name: "lip", Kind: FreeLip, Level: 2, Law: power{2, 2.0 / 3}})
	pool = n.AddNode(Node{Name: "pool", Kind: SubmergedReturn, Level: 1})
	n.AddLink(Link{Name: "main", From: vault, To: tee, Parts: []Part{
		{Name: "pump", Role: Pump, Law: parabola{8, 12500}}, {Name: "pipe", Law: Quadratic(10000)},
	}})
	n.AddLink(Link{Name: "upper", From: tee, To: lip, Parts: []Part{{Name: "pipe", Law: Quadratic(15625)}}})
	n.AddLink(Link{Name: "lower", From: pool, To: tee, Parts: []Part{{Name: "pipe", Law: Quadratic(50000)}}}) // laid against the water
	return n, lip, pool
}

// By hand, at 8 L/s over the lip and 4 L/s into the pool, 12 L/s in the main:
//
//	main  10000 × 0.012² = 1.44 m
//	lip   15625 × 0.008² = 1.00 m, over the crest 2 × 0.008^(2/3) = 2 × 0.04 = 0.08 m
//	      need 2 + 0.5 + 1.44 + 1 + 0.08 = 5.02 m
//	pool  50000 × 0.004² = 0.80 m, need 1 + 0.5 + 1.44 + 0.8 = 3.74 m, burn 1.28 m
//	      v = 0.004/0.002 = 2 m/s, K = 1.28 × 2 × 9.80665/4 = 6.276256
//	pump  8 - 12500 × 0.012² = 6.2 m, surplus 1.18 m
func TestBalanceTwoFalls(t *testing.T) {
	n, lip, pool := twoFalls()
	b, faults := n.Balance([]Throttle{{Outlet: lip, Wanted: 0.008, Link: -1, Area: 0.004}, {Outlet: pool, Wanted: 0.004, Link: 2, Area: 0.002}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	const tol = 1e-12
	near(t, "flow", float64(b.Flow), 0.012, tol)
	near(t, "need", float64(b.Need), 5.02, tol)
	near(t, "has", float64(b.Has), 6.2, tol)
	near(t, "surplus", float64(b.Surplus), 1.18, tol)
	u, l := b.Branches[0], b.Branches[1]
	near(t, "lip's need", float64(u.Need), 5.02, tol)
	near(t, "lip's burn", float64(u.Burn), 0, tol)
	near(t, "lip's K", float64(u.K), 0, tol)
	near(t, "pool's need", float64(l.Need), 3.74, tol)
	near(t, "pool's burn", float64(l.Burn), 1.28, tol)
	near(t, "pool's K", float64(l.K), 6.276256, 1e-9)
	if u.Link != 1 || l.Link != 2 || u.Short != 0 || l.Short != 0 || u.Shut || l.Shut || b.Beyond {
		t.Errorf("got %+v", b)
	}
	if b.Reach <= 1 {
		t.Errorf("reach %g with head to spare", float64(b.Reach))
	}
}

// A pump of 4 m at no flow: 4 - 12500 × 0.012² = 2.2 m against 4.94 m for an
// open end at 2 m above a vault at -0.5 m, through 1.44 m and 1 m. It reaches
// x with 4 - 1.8 x² = 2.5 + 2.44 x²: x² = 1.5/4.24. With 2.4 m it does not
// lift at all, with 1000 m it gives more than is looked for.
func TestBalanceShort(t *testing.T) {
	n, lip, pool := twoFalls()
	n.Nodes[lip] = Node{Name: "end", Kind: OpenEnd, Level: 2}
	want := []Throttle{{Outlet: lip, Wanted: 0.008, Link: 1, Area: 0.004}, {Outlet: pool, Wanted: 0.004, Link: 2, Area: 0.002}}
	for _, c := range []struct{ shutoff, short, reach float64 }{
		{4, 4.94 - 2.2, math.Sqrt(1.5 / 4.24)},
		{2.4, 4.94 - 0.6, 0},
		{6.74, 0, 1},
		{10, 0, math.Sqrt(7.5 / 4.24)},
		{10000, 0, float64(MostReach)},
	} {
		n.Links[0].Parts[0].Law = parabola{c.shutoff, 12500}
		b, faults := n.Balance(want)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		near(t, "short", float64(b.Branches[0].Short), c.short, 1e-9)
		near(t, "reach", float64(b.Reach), c.reach, 1e-9)
		// At x the end needs 1 m + 0.2 x² more than the pool: 15625 and 50000 Q²
		// at 8 and 4 L/s are 1 and 0.8 m.
		x := min(1, c.reach)
		burn := 1 + 0.2*x*x
		if x == 0 {
			burn = 0
		}
		near(t, "at", float64(b.At), x, 1e-9)
		near(t, "pool's burn", float64(b.Branches[1].Burn), burn, 1e-9)
		near(t, "pool's K", float64(b.Branches[1].K)*4*x*x, burn*2*unit.StandardGravity, 1e-8) // v = 2 x
		near(t, "surplus", float64(b.Surplus), c.shutoff-1.8-4.94, 1e-9)
	}
}

func TestBalanceShutAndGravity(t *testing.T) {
	n, lip, pool := twoFalls()
	b, faults := n.Balance([]Throttle{{Outlet: pool, Wanted: 0.004, Link: -1, Area: 0.002}, {Outlet: lip, Link: -1}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if !b.Branches[1].Shut || b.Branches[1].Link != 1 || b.Branches[0].Shut || b.Branches[0].Burn != 0 {
		t.Errorf("got %+v", b)
	}
	near(t, "need with the lip shut", float64(b.Need), 1.5+0.16+0.8, 1e-12)
	b, faults = n.Balance([]Throttle{{Outlet: pool, Link: -1}, {Outlet: lip, Link: -1}})
	if len(faults) > 0 || b.Flow != 0 || b.Reach != 0 || !b.Branches[0].Shut || !b.Branches[1].Shut {
		t.Errorf("nothing wanted: %+v, %v", b, faults)
	}
	n.Links[0].Parts = n.Links[0].Parts[1:] // no pump: a header tank at 6 m
	n.Nodes[0].Level = 6
	b, faults = n.Balance([]Throttle{{Outlet: pool, Wanted: 0.004, Link: -1, Area: 0.002}, {Outlet: lip, Wanted: 0.008, Link: -1, Area: 1}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	near(t, "surplus by gravity", float64(b.Surplus), 6-2-1.44-1-0.08, 1e-12)
}

func TestBalanceFaults(t *testing.T) {
	_, lip, pool := twoFalls()
	ok := []Throttle{{Outlet: lip, Wanted: 0.008, Link: -1, Area: 0.004}, {Outlet: pool, Wanted: 0.004, Link: -1, Area: 0.002}}
	edit := func(f func(w []Throttle)) []Throttle {
		w := slices.Clone(ok)
		f(w)
		return w
	}
	pipe := []Part{{Name: "pipe", Law: Quadratic(1e4)}}
	none := func(*Network) {}
	for name, c := range map[string]struct {
		change func(n *Network)
		want   []Throttle
		code   Code
	}{
		"loop":              {func(n *Network) { n.AddLink(Link{Name: "second", From: 1, To: 0, Parts: pipe}) }, ok, FaultNotTree},
		"twin":              {func(n *Network) { n.AddLink(n.Links[1]) }, ok, FaultNotTree},
		"ring":              {func(n *Network) { n.AddLink(Link{From: 1, To: 1, Parts: pipe}) }, ok, FaultNotTree},
		"second feed":       {func(n *Network) { n.AddLink(Link{From: n.AddNode(Node{Kind: FixedLevel}), To: 1, Parts: pipe}) }, ok, FaultNotTree},
		"on from an outlet": {func(n *Network) { n.AddLink(Link{From: lip, To: n.AddNode(Node{}), Parts: pipe}) }, ok, FaultNotTree},
		"pump on a branch": {func(n *Network) {
			n.Links[1].Parts = append(n.Links[1].Parts, Part{Role: Pump, Law: parabola{1, 1}})
		}, ok, FaultNotTree},
		"unnamed outlet":   {none, ok[:1], FaultWanted},
		"unnamed demand":   {func(n *Network) { n.Nodes[1].Demand = 0.001 }, ok, FaultWanted},
		"no wants":         {none, nil, FaultWanted},
		"twice":            {none, append(slices.Clone(ok), ok[0]), FaultWanted},
		"no outlet":        {none, edit(func(w []Throttle) { w[0].Outlet = 1 }), FaultWanted},
		"no node":          {none, edit(func(w []Throttle) { w[0].Outlet = 99 }), FaultWanted},
		"node below zero":  {none, edit(func(w []Throttle) { w[0].Outlet = -1 }), FaultWanted},
		"negative":         {none, edit(func(w []Throttle) { w[0].Wanted = -1 }), FaultWanted},
		"not a number":     {none, edit(func(w []Throttle) { w[0].Wanted = unit.Flow(math.NaN()) }), FaultWanted},
		"infinite":         {none, edit(func(w []Throttle) { w[0].Wanted = unit.Flow(math.Inf(1)) }), FaultWanted},
		"sum infinite":     {none, edit(func(w []Throttle) { w[0].Wanted, w[1].Wanted = math.MaxFloat64, math.MaxFloat64 }), FaultWanted},
		"huge":             {none, edit(func(w []Throttle) { w[0].Wanted = 1e200 }), FaultLaw},
		"no area":          {none, edit(func(w []Throttle) { w[0].Area = 0 }), FaultThrottle},
		"area no number":   {none, edit(func(w []Throttle) { w[0].Area = unit.Area(math.NaN()) }), FaultThrottle},
		"valve in main":    {none, edit(func(w []Throttle) { w[0].Link = 0 }), FaultThrottle},
		"other's valve":    {none, edit(func(w []Throttle) { w[0].Link = 2 }), FaultThrottle},
		"no such link":     {none, edit(func(w []Throttle) { w[0].Link = 3 }), FaultThrottle},
		"link below -1":    {none, edit(func(w []Throttle) { w[0].Link = -2 }), FaultThrottle},
		"shut others too":  {none, edit(func(w []Throttle) { w[0].Wanted, w[0].Link = 0, 0 }), FaultThrottle},
		"closed":           {func(n *Network) { n.Links[1].Parts[0].Shut = true }, ok, FaultNotFed},
		"main closed":      {func(n *Network) { n.Links[0].Parts[1].Shut = true }, ok, FaultNotFed},
		"pump turned":      {func(n *Network) { n.Links[0].Parts[0].Reverse = true }, ok, FaultNotFed},
		"check valve":      {func(n *Network) { n.Links[2].Parts = append(n.Links[2].Parts, Part{Role: CheckValve}) }, ok, FaultNotFed},
		"level no number":  {func(n *Network) { n.Nodes[0].Level = unit.Length(math.NaN()) }, ok, FaultLevel},
		"link to nowhere":  {func(n *Network) { n.Links[1].To = 77 }, ok, FaultEnds},
		"law of no number": {func(n *Network) { n.Links[1].Parts[0].Law = Quadratic(math.NaN()) }, ok, FaultLaw},
	} {
		n, _, _ := twoFalls()
		c.change(&n)
		b, faults := n.Balance(c.want)
		if !slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Code == string(c.code) }) || len(b.Branches) > 0 {
			t.Errorf("%s: got %v, want %s", name, faults, c.code)
		}
	}
	var empty Network
	if _, faults := empty.Balance(nil); len(faults) != 1 || faults[0].Code != string(FaultNothing) {
		t.Errorf("empty: %v", faults)
	}
	n, _, _ := twoFalls()
	n.Links[2].Parts[0].Shut = true // closed already: nothing to do
	b, faults := n.Balance(edit(func(w []Throttle) { w[1].Wanted = 0 }))
	if len(faults) > 0 || b.Branches[1].Link != -1 || !b.Branches[1].Shut {
		t.Errorf("closed and not wanted: %+v, %v", b, faults)
	}
}

// A want that is throttled as Balance says, with the surplus burnt in the main,
// is what the solver then finds; where the pump falls short it is so for the
// part that it reaches, with nothing to burn in the main.
func TestBalanceIsWhatFlows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, want := anyTree(t)
		b, faults := n.Balance(want)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if b.Surplus < 0 != (b.Reach < 1) {
			t.Fatalf("surplus %g m, reach %g", float64(b.Surplus), float64(b.Reach))
		}
		if b.Reach < 1 {
			if b.Reach < 1e-2 {
				t.Skip("it hardly lifts")
			}
			for i := range want {
				want[i].Wanted *= unit.Flow(b.At)
			}
			scaled, faults := n.Balance(want)
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			if math.Abs(float64(scaled.Surplus)) > 1e-9 {
				t.Errorf("surplus %g m at what it reaches", float64(scaled.Surplus))
			}
		}
		burnt := Network{Nodes: n.Nodes}
		for _, l := range n.Links {
			l.Parts = slices.Clone(l.Parts)
			burnt.Links = append(burnt.Links, l)
		}
		main := &burnt.Links[0]
		main.Parts = append(main.Parts, Part{Name: "main valve", Law: Quadratic(float64(max(b.Surplus, 0)) / math.Pow(float64(b.Flow), 2))})
		for i, br := range b.Branches {
			l := &burnt.Links[br.Link]
			v := Part{Name: "valve", Shut: br.Shut}
			if !br.Shut {
				v.Law = Quadratic(float64(br.K) / (2 * unit.StandardGravity * math.Pow(float64(want[i].Area), 2)))
			}
			l.Parts = append(l.Parts, v)
		}
		st := solved(t, burnt)
		for _, w := range want {
			got := st.Nodes[w.Outlet].Out
			if math.Abs(float64(got-w.Wanted)) > 1e-6*float64(b.Flow) {
				t.Errorf("outlet %d: %g m³/s, wanted %g", w.Outlet, float64(got), float64(w.Wanted))
			}
		}
	})
}

// anyTree draws a vault, a pump and main, a tree of pipes and outlets of all
// kinds at its leaves.
func anyTree(t *rapid.T) (n Network, want []Throttle) {
	n.AddNode(Node{Name: "vault", Kind: FixedLevel, Level: unit.Length(rapid.Float64Range(-1, 1).Draw(t, "vault"))})
	n.AddNode(Node{Name: "head of main"})
	n.AddLink(Link{Name: "main", From: 0, To: 1, Parts: []Part{{Name: "pump", Role: Pump, Law: anyPump(t)}, {Name: "pipe", Law: anyPipe(t)}}})
	tees := []int{1}
	for range rapid.IntRange(0, 4).Draw(t, "tees") {
		v := n.AddNode(Node{Name: "tee"})
		n.AddLink(leg(t, rapid.SampledFrom(tees).Draw(t, "at"), v))
		tees = append(tees, v)
	}
	for range rapid.IntRange(1, 5).Draw(t, "outlets") {
		x := Node{Name: "outlet", Kind: rapid.SampledFrom([]NodeKind{SubmergedReturn, FreeLip, OpenEnd}).Draw(t, "kind")}
		x.Level = unit.Length(rapid.Float64Range(-1, 3).Draw(t, "level"))
		if x.Kind == FreeLip {
			x.Law = power{rapid.Float64Range(0.5, 4).Draw(t, "weir"), 2.0 / 3}
			x.Pours = rapid.Bool().Draw(t, "pours")
			x.Inlet = x.Level + unit.Length(rapid.Float64Range(-0.2, 0.3).Draw(t, "inlet"))
		}
		v := n.AddNode(x)
		n.AddLink(leg(t, rapid.SampledFrom(tees).Draw(t, "at"), v))
		w := Throttle{Outlet: v, Link: rapid.SampledFrom([]int{-1, len(n.Links) - 1}).Draw(t, "valve"), Area: unit.Area(rapid.Float64Range(3e-4, 8e-3).Draw(t, "area"))}
		if len(want) == 0 || rapid.IntRange(0, 4).Draw(t, "wants") > 0 {
			w.Wanted = unit.Flow(rapid.Float64Range(1e-4, 5e-3).Draw(t, "wanted"))
		}
		want = append(want, w)
	}
	return n, want
}

func leg(t *rapid.T, from, to int) Link {
	l := Link{Name: "leg", From: from, To: to, Parts: []Part{{Name: "pipe", Law: anyPipe(t)}}}
	if rapid.IntRange(0, 5).Draw(t, "check valve") == 0 {
		l.Parts = append(l.Parts, Part{Name: "check", Role: CheckValve, Law: cracking{0.1, 2e4}})
	}
	if rapid.Bool().Draw(t, "turned") {
		return turnLink(l)
	}
	return l
}
