package cut

import "plashet/engine/unit"

// Plan is a way to cut all pieces.
type Plan struct {
	Bars           []Bar // offcuts first, each longest first
	Cost           int64 // of the new sticks, in the unit of Basis
	Basis          CostBasis
	BasisAssumed   bool // no stick has a price: length stands in
	NewSticks      int
	NewLength      unit.Length // of all new sticks
	OffcutsOpened  int
	LongestRemnant unit.Length // zero when none is at least Keep long
	Proof          Proof
	Rounded        []Rounded // what was rounded to the grid
	Steps          int       // effort spent
}

// Source says what kind of bar is cut.
type Source uint8

// The sources.
const (
	FromStick Source = iota
	FromOffcut
)

// Bar is one stick or offcut cut up.
type Bar struct {
	From    Source
	Index   int // into Problem.Sticks or Problem.Offcuts
	Length  unit.Length
	Cuts    []Cut // longest first
	Kerfs   int   // saw cuts
	End     End
	Remnant unit.Length // what is left in one piece; zero unless End is EndRemnant
	Kept    bool        // the remnant is at least Keep long
}

// Cut is one piece cut from a bar.
type Cut struct {
	Piece  int // into Problem.Pieces
	Length unit.Length
}

// End says how a bar ends after its last piece.
type End uint8

// The ends.
const (
	EndFlush   End = iota // with the piece: no cut there
	EndRunsOff            // with a cut that leaves nothing: the rest was no longer than a kerf
	EndRemnant            // with a cut and a remnant
)

// Proof says how sure it is that no plan is better.
type Proof struct {
	Stop Stop
	// CostBound: no plan costs less. Equal to Plan.Cost when the cost is proven.
	CostBound int64
	// OffcutBound: no plan of the same cost opens fewer.
	OffcutBound int
	// RemnantBound: no plan of the same cost and the same number of offcuts
	// leaves a longer remnant. Zero when none can leave one worth keeping.
	RemnantBound unit.Length
}

// Proven tells that no plan is better.
func (p Proof) Proven() bool { return p.Stop == StopProven }

// Stop says why the search ended.
type Stop uint8

// The endings.
const (
	StopProven    Stop = iota // nothing better exists
	StopEffort                // the effort ran out: the bounds tell what may be gained
	StopCancelled             // the caller stopped it: likewise
)

// Rounded tells of a length that was rounded to the grid.
type Rounded struct {
	Path     string // "/pieces/3/length", "/kerf"
	From, To unit.Length
}
