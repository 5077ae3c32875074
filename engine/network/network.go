// Package network finds how water shares itself among pumps, pipes, valves and
// falls: the steady flow in every link and the head at every node. It knows
// topology and two laws, continuity at nodes and energy along links; how a
// pipe, a fitting, a lip or a pump loses or gains head it learns through the
// interface Law, which the pipes, fittings and lips of package hydro meet.
//
// Inside: SI; heads are heights of water in metres above the job's datum,
// flows m³/s, positive from Link.From to Link.To. A loss is a drop of head
// along the flow; a pump's loss is negative.
//
// Method: Newton on heads and flows together (the global gradient method, E.
// Todini and S. Pilati, "A gradient algorithm for the analysis of pipe
// networks", 1988) on the convex content function of the network (M. Collins,
// L. Cooper, R. Helgason, J. Kennington, L. LeBlanc, "Solving the pipe network
// analysis problem using optimization techniques", Management Science 24,
// 1978), with an exact line search on its derivative and an active set for
// everything that lets water through one way only. Where no loss falls as flow
// grows there is one steady state, and this finds it (newton.go, group.go).
package network

import "plashet/engine/unit"

// Law is the loss of head in one element as a function of the flow through it.
//
// Loss gives the head lost along the flow q, and its derivative in m per m³/s.
// The laws of package hydro are such. The loss must be continuous and must not fall as
// the flow grows; for an element that carries water both ways it is odd. A
// pump's loss is minus its head, so it too rises with the flow. The derivative
// may be zero or infinite at zero flow: the solver then takes a finite one for
// the search only, never for the balance. A one-way element (Role CheckValve
// or Pump, and every outlet) is asked for flows of zero and more only; its
// loss at zero is the least that opens it.
type Law interface {
	Loss(q unit.Flow) (h unit.Head, dhdq float64)
}

// Bounded is a Law that rests on data over a range of flows (a pump's curve, a
// friction formula with limits). The solver still searches outside it; an
// answer that ends there carries LinkState.Beyond.
type Bounded interface {
	Bounds() (low, high unit.Flow)
}

// Role says which way an element lets water through.
type Role uint8

// The roles.
const (
	Passive    Role = iota // both ways: pipe, fitting, valve
	CheckValve             // from From to To only; its Law may be nil (no loss)
	Pump                   // from From to To only: a pump that would run backwards stands still
)

// Part is one element of a link: a pipe of one bore, a group of fittings, a
// valve, a check valve, a pump.
type Part struct {
	Name string
	Law  Law // nil: no loss
	Role Role
	// Reverse turns the element round: it is laid against the link's
	// direction (a check valve whose arrow points the wrong way).
	Reverse bool
	Shut    bool // a valve that is closed: nothing passes
}

// Link is a chain of parts in series, in the order the water meets them when
// it runs from node From to node To.
type Link struct {
	Name     string
	From, To int // indices in Network.Nodes
	Parts    []Part
}

// NodeKind says what a node is.
type NodeKind uint8

// The kinds of node.
const (
	// Junction: links meet; its head is looked for. Demand is drawn from it.
	Junction NodeKind = iota
	// FixedLevel: open water whose level is given (pond, vault). Water may
	// enter or leave.
	FixedLevel
	// SubmergedReturn: the same, and counted as an outlet: a pipe that ends
	// under water. The exit loss is a part of the link that ends here.
	SubmergedReturn
	// FreeLip: a box that spills over a lip. For an outflow q > 0 its level is
	// Level + loss of Law at q, and not less than Inlet where Pours is set.
	// Nothing flows back from it: a box that is not reached stays at q = 0.
	FreeLip
	// OpenEnd: a pipe that ends in the air at elevation Level; Law is the exit
	// loss (nil: none). Nothing flows back.
	OpenEnd
)

// Node is a place with one head.
type Node struct {
	Name   string
	Kind   NodeKind
	Level  unit.Length // FixedLevel, SubmergedReturn: the water; FreeLip: the crest; OpenEnd: the end
	Law    Law         // FreeLip: head over the crest; OpenEnd: exit loss
	Pours  bool        // FreeLip: the pipe pours in from above the water
	Inlet  unit.Length // FreeLip with Pours: elevation of the pipe's end
	Demand unit.Flow   // Junction: flow drawn off, negative when water is put in
}

// Network is nodes and the links between them. Parallel links, loops and
// several separate parts are all allowed.
type Network struct {
	Nodes []Node
	Links []Link
}

// AddNode appends a node and gives its index.
func (n *Network) AddNode(x Node) int {
	n.Nodes = append(n.Nodes, x)
	return len(n.Nodes) - 1
}

// AddLink appends a link and gives its index.
func (n *Network) AddLink(x Link) int {
	n.Links = append(n.Links, x)
	return len(n.Links) - 1
}

// IsOutlet tells that water leaves the network at nodes of this kind.
func (k NodeKind) IsOutlet() bool {
	return k == SubmergedReturn || k == FreeLip || k == OpenEnd
}
