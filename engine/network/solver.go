package network

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Solver is a network made ready for solving many times: checked, freed of
// what leads nowhere, links in a row joined to chains, chains sorted into
// blocks that do not touch one another but at given heads. One Solver serves
// one goroutine.
type Solver struct {
	net      Network
	ground   int32 // the node behind all outlets, at head 0: their levels are part of their law
	linkNote []LinkStatus
	nodeBad  []bool
	falls    []bool // of each link: a law in it falls somewhere as flow grows
	cutOut   []bool // of each node: it spills, but no water can come to it
	chains   []chain
	chainOf  []int32 // of each edge, -1 when it carries nothing
	kept     []bool  // of each node: a chain ends there
	blocks   []block
	head     []float64 // of each node and the ground
	at       [][]int32 // edges at each node, those that carry nothing too
	queue    []int32
	met      []bool // of each node: its head is settled (reportDead)
	shift    []unit.Head
	loose    bool // laws change in their places: none are joined
}

// NewSolver checks and orders a network. Faults name elements by index:
// "/nodes/3", "/links/0"; a faulty element is left out and the rest can be
// solved. The solver keeps its own copy of the network; a Law must not change
// behind its back (SetLaw and Changed tell it).
func NewSolver(n Network) (*Solver, []trace.Fault) {
	s := &Solver{net: Network{Nodes: slices.Clone(n.Nodes), Links: slices.Clone(n.Links)}}
	for i := range s.net.Links {
		s.net.Links[i].Parts = slices.Clone(n.Links[i].Parts)
	}
	s.ground = int32(len(n.Nodes))
	faults := s.check()
	s.falls = make([]bool, len(n.Links))
	for i := range s.net.Links {
		s.falls[i] = s.linkNote[i] == LinkRuns && s.net.Links[i].fallsSomewhere()
	}
	for {
		s.dropDead()
		s.join()
		more, again := s.dropIdle()
		faults = append(faults, more...)
		if !again {
			break
		}
	}
	s.sort()
	s.head = make([]float64, len(n.Nodes)+1)
	s.queue, s.met, s.shift = make([]int32, 0, len(n.Nodes)), make([]bool, len(n.Nodes)), make([]unit.Head, len(n.Nodes))
	s.at = s.incidence(func(int32) bool { return true })
	return s, faults
}

// NewState makes a state of the right size for this network.
func (s *Solver) NewState() *State {
	nodes, links := len(s.net.Nodes), len(s.net.Links)
	return &State{
		Links:   make([]LinkState, links),
		Nodes:   make([]NodeState, nodes),
		Reasons: make([]Reason, 0, 2*nodes+3*links),
		flow:    make([]float64, len(s.chains)),
		closed:  make([]bool, len(s.chains)),
	}
}

// Solve finds the steady state and allocates nothing. What it finds satisfies,
// for every link that runs, head(From) - head(To) = sum of its losses, within
// EnergyTolerance; for every node, inflow = outflow + demand, within
// MassTolerance; for every one-way element, flow ≥ 0, and where it is 0 the
// head would drive water the other way. It gives the worst ending of all
// blocks; blocks that end well are good whatever the others do.
func (s *Solver) Solve(st *State) Stop {
	for i := range s.net.Nodes {
		n := &s.net.Nodes[i]
		s.head[i] = 0
		if n.fixed() {
			s.head[i] = float64(n.Level)
		}
	}
	s.head[s.ground] = 0
	st.Stop, st.Iterations, st.Energy, st.Mass = StopConverged, 0, 0, 0
	st.Reasons = st.Reasons[:0]
	for i := range s.blocks {
		b := &s.blocks[i]
		b.solve(s, st)
		st.Stop = max(st.Stop, b.stop)
		st.Iterations += b.iterations
	}
	st.warm = true
	s.report(st)
	return st.Stop
}

// SetLevel changes the level of a node (the water, the crest, the end) for
// the next solve; a pipe that pours in goes with its crest. A level that is not
// a finite number changes nothing and gives a fault.
func (s *Solver) SetLevel(node int, level unit.Length) []trace.Fault {
	n := &s.net.Nodes[node]
	was := n.Level
	n.Level = level
	if !finite(level) {
		n.Level = was
		return []trace.Fault{s.net.nodeFault(FaultLevel, node)}
	}
	n.Inlet += level - was
	if c := s.chainOf[len(s.net.Links)+node]; c >= 0 {
		if s.loose {
			s.chains[c].again()
		} else {
			s.chains[c].measure()
		}
	}
	return nil
}

// Changed tells that laws have changed in their places, for the next solve, as
// when each of many solves draws its laws a little otherwise. Not checked: such
// laws must still give numbers, and their losses fall nowhere that they did not
// fall before. A Quadratic cannot change in its place: see SetLaw.
//
// From the first call on, like elements in a row are no longer joined to one
// law: that would hold what they were.
func (s *Solver) Changed() {
	again := s.loose
	s.loose = true
	for i := range s.chains {
		if again {
			s.chains[i].again()
		} else {
			s.fill(&s.chains[i])
		}
	}
}

// SetLaw changes the law of a part for the next solve. A law that gives no
// numbers changes nothing and gives a fault.
func (s *Solver) SetLaw(link, part int, law Law) []trace.Fault {
	p := &s.net.Links[link].Parts[part]
	was := p.Law
	p.Law = law
	if !p.gives() {
		p.Law = was
		return []trace.Fault{s.net.linkFault(FaultLaw, link, trace.Str("part", p.Name))}
	}
	s.falls[link] = law != nil && everFalls(law) || s.falls[link] && s.net.Links[link].fallsSomewhere()
	if c := s.chainOf[link]; c >= 0 {
		s.fill(&s.chains[c])
	}
	return nil
}

// setDemand changes the demand of a junction that had one when the solver was
// made; neither may be zero.
func (s *Solver) setDemand(node int, demand unit.Flow) {
	s.net.Nodes[node].Demand = demand
	for i := range s.blocks {
		b := &s.blocks[i]
		if k := slices.Index(b.nodes, int32(node)); k >= 0 {
			b.wanted[k] = float64(demand)
			b.routeAll()
		}
	}
}

// fixed tells that the head of the node is given.
func (n *Node) fixed() bool { return n.Kind == FixedLevel || n.Kind == SubmergedReturn }

// spills tells that water leaves the network here by a law of its own.
func (n *Node) spills() bool { return n.Kind == FreeLip || n.Kind == OpenEnd }

// outflow is the law of a node that spills: the head of the node, above the
// datum, at an outflow.
type outflow struct{ node *Node }

// Loss gives max(Inlet, Level + loss of the node's law), the Inlet only where
// the pipe pours in from above the water.
func (o outflow) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	if o.node.Law != nil {
		h, dhdq = o.node.Law.Loss(q)
	}
	h += o.node.Level
	if o.node.Pours && o.node.Inlet > h {
		return o.node.Inlet, 0
	}
	return h, dhdq
}

func finite[T ~float64](v T) bool { return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0) }
