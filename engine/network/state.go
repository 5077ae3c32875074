package network

import "plashet/engine/unit"

// Stop says how a solve ended.
type Stop uint8

// The endings.
const (
	// StopConverged: continuity holds within MassTolerance at every node and
	// energy within EnergyTolerance along every link.
	StopConverged Stop = iota
	// StopNoSteadyState: some part of the network has none (a demand that
	// nothing can supply, a flow that nothing limits). The parts that are
	// solved are still good; State.Reasons names the others.
	StopNoSteadyState
	// StopIterations: the search did not meet the tolerances in its limit.
	StopIterations
	// StopLaw: a law gave a value that is not a number.
	StopLaw
)

func (s Stop) String() string {
	return [...]string{"converged", "no steady state", "iterations", "law"}[s]
}

// What StopConverged promises.
const (
	MassTolerance   unit.Flow = 1e-9 // m³/s at each node
	EnergyTolerance unit.Head = 1e-6 // m along each link
)

// LinkStatus says what a link does.
type LinkStatus uint8

// The states of a link.
const (
	LinkRuns     LinkStatus = iota // it carries what the laws say (which may be zero)
	LinkHeld                       // its check valve holds: water would run backwards
	LinkStalled                    // its pump stands at no flow: the head against it is its shutoff head or more
	LinkIdle                       // no flow, because something else in its row stands: a pump, a valve that holds, a dry outlet
	LinkShut                       // a valve in it is closed
	LinkDead                       // it leads nowhere: no flow
	LinkOpposed                    // one-way elements face each other: no flow either way
	LinkFaulty                     // left out: see the faults of NewSolver
	LinkUnsolved                   // its part of the network has no answer
)

func (s LinkStatus) String() string {
	return [...]string{"runs", "held", "stalled", "idle", "shut", "dead", "opposed", "faulty", "unsolved"}[s]
}

// NodeStatus says what is known of a node.
type NodeStatus uint8

// The states of a node.
const (
	NodeSet      NodeStatus = iota // its head is determined
	NodeDry                        // an outlet that the water does not reach: no flow
	NodeLoose                      // only a range of heads is known (between valves that hold); Head is the least, or the greatest when there is no least
	NodeRelative                   // its part of the network touches no level: heads are relative to one another
	NodeCut                        // not connected to any level or outlet by open links: its head is not known (NaN)
	NodeUnsolved                   // its part of the network has no answer
)

func (s NodeStatus) String() string {
	return [...]string{"set", "dry", "loose", "relative", "cut", "unsolved"}[s]
}

// LinkState is the answer for one link.
type LinkState struct {
	Flow   unit.Flow // positive from From to To
	Loss   unit.Head // head at From less head at To by the laws of its parts; negative where a pump lifts
	Status LinkStatus
	Beyond bool // a part runs outside the data of its law: the flow is a bound, not a figure
}

// NodeState is the answer for one node.
type NodeState struct {
	Head   unit.Head // level of still water in a standpipe here
	Out    unit.Flow // flow that leaves the network here (outlet, fixed level, demand); negative where it enters
	Short  unit.Head // NodeDry: how much higher the head would have to be before water runs
	Status NodeStatus
}

// State is the answer of one solve, and the start of the next: solving again
// with the same State begins from its flows, which is quicker when little has
// changed, and allocates nothing. The answer does not depend on the start.
type State struct {
	Stop       Stop
	Iterations int // Newton steps, all parts together
	Links      []LinkState
	Nodes      []NodeState
	Mass       unit.Flow // worst imbalance at a node that is solved
	Energy     unit.Head // worst difference along a link that runs
	Reasons    []Reason  // what is to be known of this answer, in a stable order

	warm   bool
	flow   []float64 // of each chain
	closed []bool    // of each chain
}

// Reset makes the next solve begin afresh.
func (st *State) Reset() { st.warm = false }

// Reason is one thing to know about an answer: a code of this package and the
// elements it speaks of (-1: none).
type Reason struct {
	Code Code
	Node int
	Link int
	Head unit.Head // how much head it is about, 0 when none
}
