package size

import (
	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Cost is an amount of money in millionths of the currency's unit.
type Cost int64

// Whole is one unit of the currency.
const Whole Cost = 1_000_000

// MostCost is the greatest amount that a price, a segment or the energy of all
// years may come to: sums of a few thousand of them do not overflow.
const MostCost = 1_000_000_000 * Whole

// Problem is what is wanted and what is on the shelf.
type Problem struct {
	// Level is the water that the pumps draw from, running at the wanted flows.
	// It is taken as the same for the reserve.
	Level    unit.Length
	Segments []Segment // a parent stands before its children
	Outlets  []Outlet
	Pumps    []Pump
	Pairs    Pairs
	// Legs are what the two pumps of a pair may each be joined by: pipe, check
	// valve and the way into the join, the same for both. Its laws are those of
	// one leg, its Cost that of both with the join. None: a pair is joined by
	// nothing, at no cost and no loss.
	Legs []Choice
	// Uniform: one choice throughout. Choice k of a segment then goes with choice
	// k of every other; a segment with a single choice stays as it is.
	Uniform bool
	// Unpriced: prices are not known. Cost of choices and legs is then how pipe is
	// ranked (what is smaller counts as cheaper), and Design.Years is the energy
	// alone.
	Unpriced  bool
	MostSpeed unit.Speed // limit on the speed in every segment at the wanted flows; 0: none
	Energy    Energy
	// Reserves are the flow factors that count as steps of reserve, above 1 and
	// rising: a design has reserve step t when its pumps still reach Reserves[t-1]
	// times every wanted flow with the valve in the main opened. Empty: the
	// reserve is no criterion.
	Reserves []unit.Ratio
}

// Pairs says which two pumps may run in parallel.
type Pairs uint8

// The ways: one pump only, two of a kind too, any two.
const (
	PairsNone Pairs = iota
	PairsAlike
	PairsAny
)

// Segment is a length of the tree that takes one size of pipe.
type Segment struct {
	Name    string
	Parent  int // the segment it goes on from; -1: the pump
	Choices []Choice
}

// Choice is one kind and size of pipe for a segment, with its fittings.
type Choice struct {
	Name     string
	Bore     unit.Length
	Length   unit.Length
	Pipe     hydro.Law // of the whole length; nil: no loss
	Fittings hydro.Law // nil: none
	Cost     Cost      // of pipe and fittings
}

// Outlet is a wanted flow at the end of a segment.
type Outlet struct {
	Name    string
	Segment int
	Wanted  unit.Flow
	Level   unit.Length // the crest, or the water for a submerged return
	Lip     hydro.Law   // head over the crest; nil: none
	Pours   bool        // the pipe pours in from over the water, at Inlet
	Inlet   unit.Length
}

// Pump is a pump of the shelf.
type Pump struct {
	Name  string
	Curve *hydro.Curve // as it stands in the line; nil: Barred says why
	Price Cost
	Least unit.Flow // least flow by its sheet; 0: not given
	// LeastBore is the narrowest bore that passes what this pump passes; 0: any.
	LeastBore unit.Length
	// Barred names a limit that this pump does not keep (its port, the space in
	// the vault, the water over it); nil: none.
	Barred *trace.Message
}

// Energy is what running costs.
type Energy struct {
	PerYear unit.Duration // running time in a year
	Tariff  Cost          // of one kWh
	Worth   unit.Ratio    // present value of one unit of money a year, see PresentWorth
}

// Result is the answer.
type Result struct {
	Front []Design // what no other design beats on all criteria; by Years rising, then First
	Lost  []Lost   // the other pumps that serve, each with its best design; by Years rising
	Out   []Out    // the pumps that do not serve, in the shelf's order
	// Covered is the number of designs that the front is proven best over:
	// pumps and pairs times choices of pipe. Solved is how many pairs had to be
	// solved; bounds settled the others.
	Covered       float64
	Pairs, Solved int
	// Stopped: the search ended before it was done, so that the front is that of
	// what Progress tells and proves nothing of the rest.
	Stopped  bool
	Progress Progress
}

// Progress is how far a search has got.
type Progress struct {
	Pumps, Of      int // looked at alone, of all on the shelf
	Pairs, PairsOf int // and two by two
}

// Design is one way to serve all wanted flows.
type Design struct {
	Pumps   []int       // one or two, in the shelf's order
	Choices []int       // of each segment
	Leg     int         // of a pair, among Problem.Legs; -1: none
	First   Cost        // pumps, pipe, fittings
	Years   Cost        // First and the present value of the energy
	Step    int         // of the reserve: 0, or t for Reserves[t-1]
	Flow    unit.Flow   // sum of the wanted flows
	Each    []unit.Flow // of each pump
	Head    unit.Head   // of the pump at Flow; of a pair at the join, past its legs
	Need    unit.Head   // that the pipe takes at Flow
	Power   unit.Power  // of all pumps at Flow
	Burns   []unit.Head // that the valve of each outlet takes to share as wanted, beside Surplus
	Speeds  []unit.Speed
	Open    Open
}

// Surplus is the head that the valve in the main takes at the wanted flows.
func (d *Design) Surplus() unit.Head { return d.Head - d.Need }

// Open is how a design runs with the valve in the main opened fully, those of
// the outlets set to share.
type Open struct {
	Factor  unit.Ratio // of the wanted flows
	Power   unit.Power
	AtLeast bool // the published curve ends there: the true factor may be greater
}

// Lost is a pump that serves and is beaten.
type Lost struct {
	Design Design // its cheapest over the years; Open is not worked out
	By     int    // the design of the front that beats it
	First  Cost   // how much more it costs at first, 0 or more
	Years  Cost   // how much more over the years, 0 or more
	Steps  int    // how many steps of reserve it has less, 0 or more
}

// Out is a pump that does not serve alone, and why.
type Out struct {
	Pump int
	trace.Message
}

// Codes of the reasons.
const (
	// ReasonHead: at the wanted flow the pump gives less head than the pipe with
	// the least loss needs. Args: name, found, limit.
	ReasonHead = "size.out.head"
	// ReasonEnd: the wanted flow lies beyond the pump's published curve. Args: name, found, limit.
	ReasonEnd = "size.out.end"
	// ReasonLeast: the wanted flow is less than the pump may run at. Args: name, found, limit.
	ReasonLeast = "size.out.least"
	// ReasonCurve: the pump has no curve to go by. Args: name.
	ReasonCurve = "size.out.curve"
	// ReasonWatts: no watts are given, so the cost over the years is not known. Args: name.
	ReasonWatts = "size.out.watts"
	// ReasonBore: no size of pipe for a segment passes what the pump passes. Args: name, found (bore needed), segment.
	ReasonBore = "size.out.bore"
)

// Codes of the faults.
const (
	// CodeNothing: no flow is wanted anywhere. No args.
	CodeNothing = "size.nothing.wanted"
	// CodeWanted: a wanted flow that is not above zero. Args: name.
	CodeWanted = "size.wanted.none"
	// CodeTree: a segment or outlet that hangs on nothing. Args: name.
	CodeTree = "size.tree.broken"
	// CodeChoice: a segment has no pipe to choose that keeps the limit on speed. Args: name, and speed, limit where the speed is the reason.
	CodeChoice = "size.choice.none"
	// CodeUniform: segments have different numbers of choices, so that no one choice can run through. Args: name.
	CodeUniform = "size.choice.uniform"
	// CodeAmount: an amount of money that is below zero or too great. Args: name.
	CodeAmount = "size.amount.range"
	// CodeReserve: the steps of reserve do not rise from above 1. No args.
	CodeReserve = "size.reserve.steps"
	// CodePumps: the shelf is empty. No args.
	CodePumps = "size.shelf.empty"
)
