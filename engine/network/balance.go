package network

import (
	"strconv"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Throttle says what is wanted at one outlet and where its valve stands.
type Throttle struct {
	Outlet int       // node
	Wanted unit.Flow // 0: no water is wanted there, the valve is to be shut
	Link   int       // the link with the valve; -1: the last link on the way to the outlet
	Area   unit.Area // bore area on whose velocity the coefficient is stated; of no account where Wanted is 0
}

// Branch is the answer for one outlet of a balance. Where no water is wanted
// only Outlet, Link and Shut are set.
type Branch struct {
	Outlet int
	Link   int // -1: no way leads to the outlet, and no water is wanted there
	Wanted unit.Flow
	Need   unit.Head  // head that the pump must give for this outlet alone at the wanted flows
	Burn   unit.Head  // head to burn in its valve at Balance.At of the wanted flow; 0 for the outlet that needs most
	K      unit.Ratio // Burn = K v²/2g, v = Balance.At x wanted flow / Area
	Short  unit.Head  // head that the pump lacks for this outlet; 0 when it reaches
	Shut   bool       // no water wanted: shut its valve
}

// Balance is how the branches of a tree are to be throttled.
type Balance struct {
	Branches []Branch   // in the order of the wants
	Flow     unit.Flow  // sum of the wanted flows: what the pump must give
	Need     unit.Head  // head that the pump must give: the greatest Need of the branches
	Has      unit.Head  // head that the pump gives at Flow; 0 without a pump
	Surplus  unit.Head  // Has - Need: to burn in the main; negative: the pump cannot reach
	Reach    unit.Ratio // the part of the wanted flows, all scaled alike, that the pump does give with the best-off branches throttled and nothing burnt in the main
	At       unit.Ratio // the part of the wanted flows for which the branches' Burn and K hold: 1, or Reach where that is less
	Beyond   bool       // at the wanted flows a part runs outside the data of its law: the heads are bounds, not figures
}

// MostReach is the greatest Balance.Reach that is looked for: whoever gets so
// much more than is wanted has a network that hardly resists.
const MostReach unit.Ratio = 16

// Balance finds the throttling that makes a tree share its water as wanted.
//
// The tree is what open links join to the outlets of the wants. It must hold
// one FixedLevel node, which feeds it, no loop, no demand, and pumps only
// where all the wanted water passes. Then every flow is a sum of wanted flows, and
// for each outlet
//
//	Need = its level at the wanted flow (FreeLip: with the head over the crest)
//	       - the feeding level + sum of the losses on the way, without the pump
//	Has  = sum of the pumps' heads at the sum of the wanted flows
//	At   = least of 1 and Reach
//	Burn = greatest Need - Need, each at At x the wanted flows
//	K    = Burn 2 g Area² / (At Wanted)², g standard gravity
//
// A valve that is set for flows the pump cannot reach shares those it does
// reach otherwise than wanted; so Burn and K are those of the reachable flows,
// and 0 where nothing is reached.
//
// Reach is the scale x at which the pump's head at x Flow is what the neediest
// outlet needs when all flows are x times as wanted, by bisection, from 0 (it
// does not lift to the highest outlet) to MostReach. The losses are those
// before throttling: valves that stand open are open.
//
// Every outlet of the tree must have one want; wants are at least zero. Faults
// are FaultNotTree, FaultNotFed, FaultWanted, FaultThrottle (paths "/want/0",
// counted in want, or as in NewSolver) and those that NewSolver finds in the
// elements; with any fault the Balance is empty. With no water wanted at all,
// only Flow and the branches' Shut are given.
//
// Source: energy equation (Bernoulli, with losses) along each way.
func (n *Network) Balance(want []Throttle) (Balance, []trace.Fault) {
	s := Solver{net: *n}
	faults := s.check()
	if len(faults) > 0 {
		return Balance{}, faults
	}
	if faults = n.checkWants(want); len(faults) > 0 {
		return Balance{}, faults
	}
	t, faults := s.tree(want)
	if len(faults) > 0 {
		return Balance{}, faults
	}
	b := Balance{Branches: make([]Branch, len(want))}
	for i, w := range want {
		b.Branches[i] = Branch{Outlet: w.Outlet, Link: t.valve[i], Wanted: w.Wanted, Shut: w.Wanted == 0}
		b.Flow += w.Wanted
	}
	if !finite(b.Flow) {
		return Balance{}, []trace.Fault{{Message: trace.Message{Code: string(FaultWanted)}}}
	}
	if b.Flow == 0 {
		return b, nil
	}
	if faults = t.numbers(); len(faults) > 0 {
		return Balance{}, faults
	}
	needs, scaled := make([]unit.Head, len(want)), make([]unit.Head, len(want))
	b.Need, b.Has = t.heads(1, needs)
	b.Surplus = b.Has - b.Need
	b.Reach, b.Beyond = t.reach(scaled), t.beyond()
	b.At = min(1, b.Reach)
	most, _ := t.heads(float64(b.At), scaled)
	for i, w := range want {
		if w.Wanted == 0 {
			continue
		}
		br := &b.Branches[i]
		br.Need, br.Short = needs[i], max(0, needs[i]-b.Has)
		br.burn(most-scaled[i], w, b.At)
		if !finite(br.K) {
			faults = append(faults, n.wantFault(FaultThrottle, i, w, br.Link))
		}
	}
	if len(faults) > 0 {
		return Balance{}, faults
	}
	return b, nil
}

// burn sets what the valve must take at a part of the wanted flow.
func (br *Branch) burn(h unit.Head, w Throttle, at unit.Ratio) {
	if at == 0 {
		return
	}
	v := float64(at) * float64(w.Wanted) / float64(w.Area)
	br.Burn, br.K = h, unit.Ratio(float64(h)*2*unit.StandardGravity/(v*v))
}

// checkWants finds what is wrong with the wants by themselves.
func (n *Network) checkWants(want []Throttle) (faults []trace.Fault) {
	if len(want) == 0 {
		return []trace.Fault{{Message: trace.Message{Code: string(FaultWanted)}}}
	}
	named := make([]bool, len(n.Nodes))
	for i, w := range want {
		switch {
		case w.Outlet < 0 || w.Outlet >= len(n.Nodes) || !n.Nodes[w.Outlet].Kind.IsOutlet() || named[w.Outlet],
			!finite(w.Wanted) || w.Wanted < 0:
			faults = append(faults, n.wantFault(FaultWanted, i, w, -1))
			continue
		case w.Wanted > 0 && !(w.Area > 0 && finite(w.Area)), w.Link < -1, w.Link >= len(n.Links):
			faults = append(faults, n.wantFault(FaultThrottle, i, w, w.Link))
		}
		named[w.Outlet] = true
	}
	return faults
}

// wantFault names what it can of a want: the outlet and, when it is about a
// valve, the link.
func (n *Network) wantFault(c Code, i int, w Throttle, link int) trace.Fault {
	m := trace.Message{Code: string(c)}
	if w.Outlet >= 0 && w.Outlet < len(n.Nodes) {
		m.Args = append(m.Args, trace.Str("node", n.Nodes[w.Outlet].Name))
	}
	if link >= 0 && link < len(n.Links) {
		m.Args = append(m.Args, trace.Str("link", n.Links[link].Name))
	}
	return trace.Fault{Message: m, Path: "/want/" + strconv.Itoa(i)}
}
