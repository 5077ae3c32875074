package cut

import "plashet/engine/unit"

// Problem is what to cut from what. All lengths are whole multiples of Grid;
// one that is not is a fault, unless Round says to round it.
type Problem struct {
	Pieces  []Piece
	Sticks  []Stick
	Offcuts []Offcut
	Kerf    unit.Length // width of the saw cut, zero or more
	Keep    unit.Length // shortest remnant worth keeping; zero: any remnant is
	Grid    unit.Length // step of all lengths, for example unit.Inch / 64
	// Round rounds what lies off the grid to the safe side and tells it in
	// Plan.Rounded: pieces, Kerf and Keep up, sticks and offcuts down.
	Round bool
	Basis CostBasis
	// Effort limits the search, in steps; zero means DefaultEffort.
	Effort int
}

// Piece is a length to cut, Count times.
type Piece struct {
	Length unit.Length // more than zero
	Mark   string      // the mark on the piece, handed through
	Count  int         // one or more
}

// Stick is a length that can be bought.
type Stick struct {
	Length unit.Length // more than zero
	Cost   int64       // price of one in the money's minor unit, more than zero; zero: no price known
	Limit  int         // how many there are; zero: any number
}

// Offcut is a length already at hand, without cost. Whole sticks at hand are
// offcuts too.
type Offcut struct {
	Length unit.Length // more than zero
	Count  int         // one or more
}

// CostBasis says what the cost of a stick is.
type CostBasis uint8

// The bases. With ByPrice every stick has a price, or none has: then the length
// stands in for it and Plan.BasisAssumed tells so.
const (
	ByPrice  CostBasis = iota // Stick.Cost
	ByLength                  // one for each step of the grid; prices are ignored
	ByCount                   // one for each stick; prices are ignored
)

// The bounds of what Solve takes on.
const (
	DefaultEffort = 6_000_000 // steps of search, a few seconds
	MaxPieces     = 1000      // pieces in all
	MaxOffcuts    = 1000      // offcuts in all
	MaxSticks     = 40        // kinds of sticks
	MaxSteps      = 1 << 17   // steps of the grid in the longest bar
	MaxCost       = 1 << 40   // cost of one stick
)
