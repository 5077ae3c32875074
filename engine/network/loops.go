package network

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// BalanceLoops finds the throttling as Balance does, in a network with loops
// and with pumps side by side or one after the other. Each outlet takes what is
// wanted of it, as a demand; the solver gives the head at which the water then
// arrives, and
//
//	margin  = head at which the water arrives - level at the wanted flow
//	          (FreeLip: with the head over the crest)
//	Surplus = least margin, to burn where all the water passes
//	Reach   = scale x at which the least margin is 0 when every outlet takes
//	          x times what is wanted, from 0 to MostReach
//	At      = least of 1 and Reach
//	Burn    = margin - least margin, at At x the wanted flows
//	K       = Burn 2 g Area² / (At Wanted)², g standard gravity
//
// On a tree that is what Balance gives. Need, of the whole and of a branch, and
// Has are 0: with several ways and pumps they are no one figure. The valve of an
// outlet stands in its only link.
//
// Every outlet of the network must have one want. Faults are FaultWanted,
// FaultThrottle, FaultWays (the outlet has several links), FaultNotFed (also where the wanted flows have no steady state)
// and those that NewSolver finds; with any fault the Balance is empty.
//
// Source: continuity and energy; E. Todini and S. Pilati, A gradient algorithm
// for the analysis of pipe networks, 1988.
func (n *Network) BalanceLoops(want []Throttle) (Balance, []trace.Fault) {
	s := Solver{net: *n}
	faults := s.check()
	if len(faults) == 0 {
		faults = n.checkWants(want)
	}
	if len(faults) > 0 {
		return Balance{}, faults
	}
	b := Balance{Branches: make([]Branch, len(want))}
	for i, w := range want {
		link, several := n.only(w.Outlet)
		switch {
		case link < 0 && w.Wanted > 0:
			faults = append(faults, n.wantFault(FaultNotFed, i, w, -1))
		case several:
			faults = append(faults, n.wantFault(FaultWays, i, w, -1))
		case link >= 0 && w.Link >= 0 && w.Link != link:
			faults = append(faults, n.wantFault(FaultThrottle, i, w, w.Link))
		}
		b.Branches[i] = Branch{Outlet: w.Outlet, Link: link, Wanted: w.Wanted, Shut: w.Wanted == 0}
		b.Flow += w.Wanted
	}
	for k := range n.Nodes {
		if n.Nodes[k].Kind.IsOutlet() && !slices.ContainsFunc(want, func(w Throttle) bool { return w.Outlet == k }) {
			faults = append(faults, n.nodeFault(FaultWanted, k))
		}
	}
	if len(faults) > 0 {
		return Balance{}, faults
	}
	if b.Flow == 0 {
		return b, nil
	}
	m := drawn{net: n, want: want, margin: make([]unit.Head, len(want))}
	least, ok := m.least(1)
	if !ok {
		return Balance{}, []trace.Fault{n.wantFault(FaultNotFed, 0, want[0], -1)}
	}
	b.Surplus, b.Beyond = least, m.beyond
	for i, w := range want {
		if w.Wanted > 0 {
			b.Branches[i].Short = max(0, -m.margin[i])
		}
	}
	b.Reach = m.reach()
	b.At = min(1, b.Reach)
	if least, ok = m.least(float64(b.At)); !ok {
		return Balance{}, []trace.Fault{n.wantFault(FaultNotFed, 0, want[0], -1)}
	}
	for i, w := range want {
		if w.Wanted > 0 {
			b.Branches[i].burn(m.margin[i]-least, w, b.At)
		}
	}
	return b, nil
}

// only gives the link at a node, -1 when there is none.
func (n *Network) only(node int) (link int, several bool) {
	link = -1
	for i := range n.Links {
		if l := &n.Links[i]; l.From == node || l.To == node {
			several = several || link >= 0
			link = i
		}
	}
	return link, several
}

// drawn is a network whose outlets take what is asked of them.
type drawn struct {
	net    *Network
	want   []Throttle
	margin []unit.Head // of each want, from the last solve
	beyond bool        // a law ran outside its data in it
	solver *Solver     // for scales above 0, once one was asked for
	state  *State
}

// ready sets what the outlets take to all wanted flows times scale, in a solver
// that is made once: another scale changes demands only, unless it is 0, at
// which nothing is asked for.
func (d *drawn) ready(scale float64) (*Solver, *State, bool) {
	if d.solver != nil && scale > 0 {
		for _, w := range d.want {
			if w.Wanted > 0 {
				d.solver.setDemand(w.Outlet, unit.Flow(scale)*w.Wanted)
			}
		}
		return d.solver, d.state, true
	}
	n := Network{Nodes: slices.Clone(d.net.Nodes), Links: d.net.Links}
	for _, w := range d.want {
		n.Nodes[w.Outlet] = Node{Name: n.Nodes[w.Outlet].Name, Demand: unit.Flow(scale) * w.Wanted}
	}
	s, faults := NewSolver(n)
	st := s.NewState()
	if scale > 0 && len(faults) == 0 {
		d.solver, d.state = s, st
	}
	return s, st, len(faults) == 0
}

// least solves with all wanted flows times scale and gives the least margin.
func (d *drawn) least(scale float64) (unit.Head, bool) {
	s, st, ok := d.ready(scale)
	if !ok {
		return 0, false
	}
	st.Reset() // the flows of another scale meet no demand of this one
	if s.Solve(st) != StopConverged {
		return 0, false
	}
	d.beyond = slices.ContainsFunc(st.Links, func(l LinkState) bool { return l.Beyond })
	least := unit.Head(math.Inf(1))
	for i, w := range d.want {
		if w.Wanted == 0 {
			continue
		}
		x := &d.net.Nodes[w.Outlet]
		level := x.Level
		if x.spills() {
			level, _ = outflow{x}.Loss(unit.Flow(scale) * w.Wanted)
		}
		d.margin[i] = st.Nodes[w.Outlet].Head - level
		if !finite(d.margin[i]) {
			return 0, false
		}
		least = min(least, d.margin[i])
	}
	return least, true
}

// scaleTold is how near reach comes to the scale it looks for.
const scaleTold = 1e-6

// reach finds the scale at which the least margin is 0, by halves: the margin
// falls as all flows grow. Where a scale has no steady state it is too much.
func (d *drawn) reach() unit.Ratio {
	low, high := 0.0, float64(MostReach)
	enough := func(scale float64) bool {
		least, ok := d.least(scale)
		return ok && least >= 0
	}
	if enough(high) {
		return MostReach
	}
	for high-low > scaleTold {
		if mid := (low + high) / 2; enough(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return unit.Ratio(low)
}
