package network

// Code names a fault or a remark of this package.
type Code string

// Faults of the network as it is given. The element is left out and the rest
// is solved. Args: "link" or "node" (the name), and those named here.
const (
	FaultEnds     Code = "network.link.ends"     // a link ends at a node that does not exist
	FaultLevel    Code = "network.node.level"    // a level, inlet or demand is not a finite number
	FaultKind     Code = "network.node.kind"     // a node of no known kind
	FaultLaw      Code = "network.law"           // a law gives a value that is not a finite number where it was tried; arg "part" for a link
	FaultNoLoss   Code = "network.link.noLoss"   // a loop that has no resistance at all
	FaultNoPipe   Code = "network.levels.noPipe" // two given levels that agree, and no resistance between them; args "node", "other", "link"
	FaultLevels   Code = "network.levels.differ" // two given levels that differ, and no resistance between them; args as FaultNoPipe, "level" of the node, "found" of the other
	FaultNoWeir   Code = "network.lip.law"       // a lip without a law for the head over it
	FaultNothing  Code = "network.empty"         // no links, or no nodes
	FaultNotTree  Code = "network.balance.tree"  // balancing needs a tree fed from one level; arg "link" closes a loop, brings a second feed, leads on from an outlet, or has a pump that not all the wanted water passes
	FaultNotFed   Code = "network.balance.fed"   // no open way leads from the level to an outlet that water is wanted at; args "node", and "link" where a one-way element faces the water
	FaultWanted   Code = "network.balance.want"  // a wanted flow that is negative or not a number, is wanted at no outlet or twice at one, or an outlet or demand of the tree that none is given for; arg "node" (none when there are no wants, or their sum is no number)
	FaultWays     Code = "network.balance.ways"  // several links lead to an outlet, so that no one valve sets what it gets; arg "node"
	FaultThrottle Code = "network.balance.valve" // the valve of an outlet stands on a link that leads not to that outlet or to other wanted water too, or its area is not positive; args "node", "link"
)

// Remarks on an answer (State.Reasons). Args: the names of "node" and "link".
const (
	ReasonDry        Code = "network.outlet.dry"    // an outlet is not reached; Head: how much is missing
	ReasonHeld       Code = "network.link.held"     // a check valve holds against the flow
	ReasonStalled    Code = "network.pump.stalled"  // a pump delivers nothing: the head against it is at or above its shutoff head
	ReasonDeadHead   Code = "network.pump.deadHead" // a pump pushes against a closed part of the network, or a shut valve in its own link
	ReasonDead       Code = "network.link.dead"     // a link leads nowhere
	ReasonOpposed    Code = "network.link.opposed"  // one-way elements in a row face each other
	ReasonCut        Code = "network.node.cut"      // a node that no open link joins to a level or an outlet
	ReasonLoose      Code = "network.node.loose"    // only bounds of the head are known
	ReasonRelative   Code = "network.node.relative" // heads relative to one another only
	ReasonBeyond     Code = "network.link.beyond"   // a part runs outside its data
	ReasonNoSupply   Code = "network.demand.supply" // a demand that nothing can supply, or an inflow that cannot leave
	ReasonUnlimited  Code = "network.flow.limit"    // a flow that nothing limits
	ReasonIterations Code = "network.iterations"    // the search stopped at its limit; Head: the worst energy difference
	ReasonLaw        Code = "network.law.nan"       // a law gave a value that is not a number
	ReasonSeveral    Code = "network.several"       // a law falls as the flow grows here: other steady states are possible

	// What Several finds (SteadyStates.Messages).
	ReasonStates Code = "network.several.state"    // one of several steady states; args "link", "found" (flow), "head"
	ReasonTips   Code = "network.several.unstable" // one that does not last; the same args
	ReasonStands Code = "network.several.stands"   // at no flow; args "link", "head"
	ReasonOpen   Code = "network.several.open"     // a range in which another is not ruled out; args "link", "low", "high" (flows)
	ReasonSample Code = "network.several.sample"   // others may have been passed over; arg "link"
)
