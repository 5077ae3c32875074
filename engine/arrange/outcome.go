package arrange

import (
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// Outcome is what the search found.
type Outcome struct {
	Layouts    []Layout // none beaten by another in every respect; the least head first
	Leaned     bool     // none lifts or slides out: these were looked for with the pump leaned over
	Proof      Proof
	Short      []Change   // where nothing fits: what would make it fit, the least first
	Unfinished bool       // what would mend it was not sought to the end: it takes too much work
	Stage      Stage      // where nothing fits: what failed
	Uncut      *Layout    // where that is the stock: one that fits with more pipe than there is
	Least      unit.Angle // turn of a hose that the pump could take, as it may stand; 0: none
	Faults     []trace.Fault
	Tally      Tally

	front []Layout // all that none beats; Layouts are the best of them
}

// Layout is one assembly with what it costs in every respect.
type Layout struct {
	Chain    layout.Input // as it would be laid
	Standing int          // index in Input.Standings
	Laid     layout.Assembly
	Proved   verify.Report
	Way      []layout.Move // the pump's way out
	Worth    Worth
	Odd      bool // at angles between those of the compass: the claim says nothing of such ones

	length float64 // what the program made least, with what goes into sockets
}

// Worth is what an assembly costs in every respect; each is told, none is
// hidden in a sum. Less is better.
type Worth struct {
	Head     unit.Length // at the operating flow, pipe from stop to stop
	Joints   int         // to glue or to screw
	Cost     float64     // of fittings and pipe, pipe from stop to stop
	Priced   bool        // every part of it has a price
	Slide    unit.Length // that the pump must be slid before it can be lifted
	Lean     unit.Angle  // that it is leaned over on its way out; none where it lifts or slides out
	Deep     unit.Length // of the union's nut under the rim
	Released unit.Volume // comes down into the vault when the union is opened
	Elbows   int         // turns that are no hose
	Hoses    int
}

// Claim is how far the proof reaches: over the directions and rolls that are
// looked at (see the package's comment). Of other angles only some are.
type Claim uint8

// The claims, the strongest first.
const (
	Everything Claim = iota + 1 // no chain of any number of elbows is better
	Family                      // none of up to Rules.Elbows
	Capped                      // a limit was met: better ones may exist
	Stopped                     // the search was stopped
)

// Proof tells what was looked at.
type Proof struct {
	Claim  Claim
	Elbows int // up to which everything was looked at
	Caps   int // chains left undecided: a limit was met, or the shortest of a branch was refused by layout or verify
	Open   Gap // what the undecided ones take at least; nothing where there are none
}

// Gap is what assemblies that were left undecided take at least, in each respect:
// how much better than those found one of them may be.
type Gap struct {
	Head   unit.Length
	Joints int
	Cost   float64
}

// Stage is the first thing that failed where nothing fits.
type Stage string

// The stages, in order.
const (
	StageBody  Stage = "body"  // the pump does not go in
	StageWalls Stage = "walls" // no run of elbows reaches the hole within the walls
	StageClear Stage = "clear" // none keeps clear of pump, obstacles and itself
	StageValve Stage = "valve" // check valve and union find no place
	StageOut   Stage = "out"   // layouts exist, but the pump cannot be lifted out
	StageStock Stage = "stock" // layouts exist, but their pieces cannot be cut from the pipe there is
)

// Change is one dimension changed so that an assembly fits: proved by laying
// one at that size, and by finding none a little short of it. Or it is something
// that the input leaves out, or an obstacle taken out: then it has no size.
type Change struct {
	What     trace.Message // which dimension, or what is looked at instead
	By       unit.Length   // longer, higher, wider; below zero: lower, shorter
	Layout   Layout        // that then fits
	Sure     bool          // a hundredth of an inch less does not do; of several fittings, none can be left out
	Instead  int           // number in Input.Instead, from 1; 0: a dimension
	Besides  []int         // of fittings that do only together, the numbers of the others
	Obstacle int           // number in the vault of one that is moved, or taken out, from 1; 0: none is
}

// Tally counts the work, for the table of figures.
type Tally struct {
	Orders, Chains, Programs, Nodes int
	Refused                         int // solutions that layout or verify refused
	Tight                           int // chains that fit, if at all, with hardly anything to spare (see docs/layouts.md)
}

// Progress is told while a search runs.
type Progress struct {
	Elbows   int // number now looked at
	Done     int // orders of fittings decided
	Of       int
	Ways     int    // where only bare ways were sketched so far: how many there are
	Sketched int    // and how many are
	Layouts  int    // found so far
	Short    string // code of the change that is looked for, once nothing fits
	Args     []trace.Arg
}
