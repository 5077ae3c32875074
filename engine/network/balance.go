package network

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Throttle says what is wanted at one outlet and where its valve stands.
type Throttle struct {
	Outlet int       // node
	Wanted unit.Flow // 0: no water is wanted there, the valve is to be shut
	Link   int       // the link with the valve; -1: the last link on the way to the outlet
	Area   unit.Area // bore area on whose velocity the coefficient is stated
}

// Branch is the answer for one outlet of a balance.
type Branch struct {
	Outlet int
	Link   int
	Wanted unit.Flow
	Need   unit.Head  // head that the pump must give for this outlet alone at the wanted flows
	Burn   unit.Head  // head to burn in its valve at the wanted flow; 0 for the outlet that needs most
	K      unit.Ratio // Burn = K v²/2g, v = wanted flow in the valve's link / Area
	Short  unit.Head  // head that the pump lacks for this outlet; 0 when it reaches
	Shut   bool       // no water wanted: shut its valve
}

// Balance is how the branches of a tree are to be throttled.
type Balance struct {
	Branches []Branch
	Flow     unit.Flow  // sum of the wanted flows: what the pump must give
	Need     unit.Head  // head that the pump must give: the greatest Need of the branches
	Has      unit.Head  // head that the pump gives at Flow
	Surplus  unit.Head  // Has - Need: to burn in the main; negative: the pump cannot reach
	Reach    unit.Ratio // the part of the wanted flows, all scaled alike, that the pump does give with the best-off branches throttled and nothing burnt in the main
}

// Balance finds the throttling that makes a tree share its water as wanted.
func (n *Network) Balance(want []Throttle) (Balance, []trace.Fault) {
	panic("not built")
}
