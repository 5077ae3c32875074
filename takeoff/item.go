package takeoff

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Names of the items that have none of their own; prices use them.
const (
	NameCoupling = "coupling"         // as the catalogue names it
	NameUnnamed  = "fitting, no name" // of a run, where nobody says which
	NameCement   = "cement"
	NamePrimer   = "primer"
	NameTape     = "thread tape"
	NameLiner    = "liner"
	NameUnderlay = "underlayment"
	NameBoulders = "boulders"
	NameGravel   = "gravel"
	NameDig      = "digging"
	NameSoil     = "soil"
	NameLoads    = "truck load"
)

// Range is an amount; Low and High differ where two rules do.
type Range struct {
	Low, High float64
	Kind      unit.Kind
}

// Values gives both ends with their kind.
func (r Range) Values() (low, high unit.Value) {
	return unit.Value{SI: r.Low, Kind: r.Kind}, unit.Value{SI: r.High, Kind: r.Kind}
}

// One tells that both ends are the same.
func (r Range) One() bool { return r.Low == r.High }

// Item is one line of the list.
type Item struct {
	ID            string // stable within a list: "takeoff.item.pipe.0"
	Code          string
	Name, Size    string      // as prices name it
	Place         string      // the pond or the stream's name
	Length, Width unit.Length // of a sheet

	Need  Range      // what is built in, by the formula
	Buy   Range      // what to get: Need with spare, in whole packs where it is sold so
	Spare Range      // the part of Buy that is spare, of fittings; zero for all else
	Waste Range      // what is bought for the need but not built in: kerf and remnants of sticks, the rest of the last can
	Laid  Laid       // how the sticks come about, for pipe in sticks
	Pack  unit.Value // what one of Buy holds: a stick, a can, a roll; zero when sold each or loose

	Priced bool
	Price  unit.Money // for one Per
	Per    unit.Value
	Total  Total // of Buy

	Counter string // where it is bought, by the price; may be empty
	Order   int    // place of that counter in the round; 0: not said

	Formula string // of Buy, in the terms' symbols
	Terms   []trace.Term
	Source  trace.Source
	Path    string
}

// Laid tells of pipe in sticks how many come from what.
type Laid struct {
	Planned int         // sticks that the cutting plan opens
	Joined  int         // whole sticks for the runs, joined end to end
	Run     unit.Length // what the runs need beyond the plan's pieces
	Rest    unit.Length // of that, what the plan leaves of its sticks
}

// How tells as a message how the sticks of pipe come about; false for all else.
func (i Item) How() (trace.Message, bool) {
	if i.Code != CodePipe || i.Pack.SI == 0 {
		return trace.Message{}, false
	}
	m := trace.Message{Code: CodeSticks}
	if i.Laid.Planned > 0 {
		m.Args = append(m.Args, trace.Num("planned", unit.Ratio(i.Laid.Planned), unit.KindCount))
	}
	if i.Laid.Run > 0 {
		m.Args = append(m.Args, trace.Num("joined", unit.Ratio(i.Laid.Joined), unit.KindCount), trace.Num("run", i.Laid.Run, unit.KindDistance))
	}
	if i.Laid.Rest > 0 {
		m.Args = append(m.Args, trace.Num("rest", i.Laid.Rest, unit.KindDistance))
	}
	_, waste := i.Waste.Values()
	m.Args = append(m.Args, trace.Arg{Name: "waste", Value: waste})
	return m, true
}

// Total is what an item or the list costs; Low and High differ where the
// amounts do. An item's is exact, not rounded to coins.
type Total struct{ Low, High unit.Money }

// Sold gives what its price is for: what one stick, can or roll holds, a measure, or
// several pieces; false where it is for each piece, or there is none.
func (i Item) Sold() (unit.Value, bool) {
	switch {
	case !i.Priced:
		return unit.Value{}, false
	case i.Per.Kind != unit.KindCount || i.Per.SI != 1:
		return i.Per, true
	}
	return i.Pack, i.Pack.Kind != unit.KindNone
}

// Message gives the item's name as a message for package words.
func (i Item) Message() trace.Message {
	m := trace.Message{Code: i.Code}
	switch i.Code {
	case CodeFitting, CodePipe:
		m.Args = named(i.Name, i.Size)
	case CodeLiner, CodeUnderlay:
		m.Args = []trace.Arg{
			trace.Str("place", i.Place),
			trace.Num("length", i.Length, unit.KindPlan), trace.Num("width", i.Width, unit.KindPlan),
		}
	case CodeBoulders, CodeGravel:
		m.Args = []trace.Arg{trace.Str("place", i.Place)}
	}
	return m
}

// named makes the arguments of a name and, where there is one, a size.
func named(name, size string) []trace.Arg {
	args := []trace.Arg{trace.Str("name", name)}
	if size != "" {
		args = append(args, trace.Str("size", size))
	}
	return args
}

// Sum adds the totals of the items that have a price, each rounded to coins as
// it is shown, and counts the items that have none. Without a priced item the
// sum has no currency. Error: unit.ErrCurrency when the currencies differ.
func Sum(items []Item) (sum Total, unpriced int, err error) {
	for _, i := range items {
		if !i.Priced {
			unpriced++
			continue
		}
		low, high := i.Total.Low.Round(), i.Total.High.Round()
		if sum.Low.Currency == "" {
			sum = Total{low, high}
			continue
		}
		if sum.Low, err = sum.Low.Plus(low); err != nil {
			return Total{}, 0, err
		}
		if sum.High, err = sum.High.Plus(high); err != nil {
			return Total{}, 0, err
		}
	}
	return sum, unpriced, nil
}
