// Package size finds the best pump and pipe for wanted flows over a whole shelf:
// every pump, alone or two in parallel, with every kind and size of pipe for
// every segment of a tree. It knows the tree, the wanted flows, laws of loss,
// prices and the worth of money; it knows nothing of the job document.
//
// Inside: SI; heads are metres of water; amounts of money are whole millionths
// of the currency's unit, so that sums do not depend on their order.
//
// Method: valves share the water as wanted, so every flow is a given sum of
// wanted flows and the head that a choice of pipe needs is known without a
// search (the energy equation along each way):
//
//	need(y) = greatest over the outlets of
//	          level(y wanted) + sum of the losses on the way at y times the flows
//	          - level drawn from
//
// y is 1 at the wanted flows. Losses never fall with the flow and a pump's head
// never rises, so a design serves y times the wanted flows exactly where
// need(y) is at most the head of its pumps there. What pumps cost, draw and give
// does not depend on the pipe and what pipe costs and needs does not depend on
// the pump; they meet in one inequality. So the pipe is boiled down once to a
// staircase (the least cost for each head, stairs.go), by dynamic programming
// from the outlets to the pump in which only what another choice beats on both
// counts is dropped, and each pump takes the cheapest step that it reaches.
// Nothing is sampled: docs/sizing.md holds the proof, and tests hold the fronts
// against the enumeration of all designs.
package size
