package takeoff

import (
	"plashet/engine/catalog"
	"plashet/engine/unit"
)

// Input is what the list is taken off from. A part that is left out gives no
// item. Bad values give faults, and void only the items that depend on them.
type Input struct {
	Book     *catalog.Book
	Currency string // of the prices, ISO 4217

	Fittings []Fitting
	Pipe     []Pipe
	Joints   []Joints
	Threads  []Threads
	Can      unit.Volume // of cement and of primer; 0: a US quart, of a metric list a litre, assumed
	Metric   bool        // what is sold comes in metric packs
	TapeRoll unit.Length // length of a roll of thread tape; 0: tape is listed by length

	Pond    *Pond
	Streams []Stream
	Beds    []Basin     // lined, each under a sheet of its own
	Overlap unit.Length // liner beyond the edge on each side
	Bare    bool        // Overlap is given as nothing; else 0 stands for the book's larger figure, assumed
	Layers  int         // of underlayment; 0: one, assumed

	Soil  string // as Book.Soils names it; "": DefaultSoil, assumed
	Holes []Hole // besides the pond
	Mound Mound
	Truck unit.Volume // loose soil that a truck takes; 0: no loads are listed

	Spare  unit.Ratio // spare fittings on top of the count, 0 to 2; nothing else gets spare
	Prices []Price
	Paths  Paths
}

// Paths tells where in the job the values stand that are no part of a list.
type Paths struct{ Can, TapeRoll, Overlap, Layers, Soil, Truck, Spare string }

// Fitting is a kind of fitting and how many there are; equal names and sizes
// are added up.
type Fitting struct {
	Name, Size string
	Count      int
	Path       string // in the job
}

// Pipe is a kind and size of pipe in sticks of one length, or sold by length
// where Stick is 0. The pieces come from a cutting plan; what the runs need
// beyond the pieces is laid in whole sticks joined end to end.
type Pipe struct {
	Kind, Size string
	Length     unit.Length // of the plan's pieces together, as cut
	Run        unit.Length // of the runs beyond those pieces
	Stick      unit.Length // of a new stick
	Sticks     int         // new sticks by the cutting plan
	Offcuts    unit.Length // of the opened offcuts together
	Rest       unit.Length // of Run, what the plan leaves of its sticks and can be laid
	Welded     bool        // joined with solvent cement
	Bell       bool        // one end of a stick is a socket: no couplings between sticks
	Price      unit.Money  // of a stick; without a currency one of Prices is taken
	Path       string
}

// Joints is how many sockets of a size are cemented.
type Joints struct {
	Size  string
	Count int
	Path  string
}

// Threads is how many male threads of a size are taped.
type Threads struct {
	Standard, Size string // "NPT" or "BSPT"
	Count          int
	Path           string
}

// Pond is the pond as a box of greatest sizes.
type Pond struct {
	Length, Width unit.Length // greatest, at the edge
	Depth         unit.Length // greatest, below the edge
	Volume        unit.Volume // of the hole; 0: no soil is taken off
	Stone         bool        // lined with boulders and gravel
	Path          string
}

// Stream is one watercourse under one sheet of liner.
type Stream struct {
	Name          string
	Length, Width unit.Length // of its reaches, along the bed; the widest of them and of its lips
	Drop          unit.Length // all its falls together
	Bank          unit.Length // height that the liner goes up each side; 0: DefaultBank, assumed, unless Banked
	Banked        bool        // Bank is given, be it 0
	Pools         []Basin     // on its way, under the same sheet
	Stone         bool
	Path          string
	BankPath      string
}

// Basin is a pool or a lined bed as a box of its sizes.
type Basin struct {
	Name                 string
	Length, Width, Depth unit.Length
	Path                 string
}

// Hole is soil dug besides the pond: vault, stream, pool, trench.
type Hole struct {
	Name   string
	Volume unit.Volume // in the ground
	Back   unit.Volume // of that, what is filled in again: round the vault, over the pipe
	Path   string      // in the job, or the ID of the figure that tells Volume
}

// Mound is what is built of the dug soil.
type Mound struct {
	Volume    unit.Volume // compacted
	Shrinkage unit.Ratio  // compacted volume over volume in the ground, above 0 and at most 1; needed with Volume
	Path      string
}

// Price is the price of an item by its name; without a size it is for all sizes
// of the name.
type Price struct {
	Name, Size string
	Amount     unit.Money
	Per        unit.Value // what it is for: one square foot, one short ton, 25 pieces; zero: each. What is sold by sticks, cans or rolls may be priced by what they hold
	Counter    string     // where it is bought; may be empty
	Order      int        // place of that counter in the round; 0: not said
	Path       string
}
