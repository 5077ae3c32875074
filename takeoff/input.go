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
	Can      unit.Volume // of cement and of primer; 0: a US quart, assumed
	TapeRoll unit.Length // length of a roll of thread tape; 0: tape is listed by length

	Pond    *Pond
	Streams []Stream
	Overlap unit.Length // liner beyond the edge on each side; 0: the book's larger figure, assumed
	Layers  int         // of underlayment; 0: one, assumed

	Soil  string // as Book.Soils names it; "" : no loose volume
	Holes []Hole // besides the pond
	Mound Mound
	Truck unit.Volume // loose soil that a truck takes; 0: no loads are listed

	Spare  unit.Ratio // spare on top of the need, 0 to 2
	Prices []Price
}

// Fitting is a kind of fitting and how many there are; equal names and sizes
// are added up.
type Fitting struct {
	Name, Size string
	Count      int
	Path       string // in the job
}

// Pipe is a kind and size of pipe. With Stick, Sticks and Offcuts it comes from
// a cutting plan; with Stick alone it is a run of whole sticks joined end to
// end; without, it is sold by length.
type Pipe struct {
	Kind, Size string
	Length     unit.Length // of all pieces together, as cut
	Stick      unit.Length // of a new stick
	Sticks     int         // new sticks by the cutting plan
	Offcuts    unit.Length // of the opened offcuts together
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
	Length, Width unit.Length // along the bed; across the water
	Drop          unit.Length // all its falls together
	Bank          unit.Length // height that the liner goes up each side; 0: DefaultBank, assumed
	Stone         bool
	Path          string
}

// Hole is soil dug besides the pond: vault, trench, box.
type Hole struct {
	Name   string
	Volume unit.Volume // in the ground
	Path   string
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
	Per        unit.Value // what it is for: one square foot, one short ton; zero: each
	Path       string
}
