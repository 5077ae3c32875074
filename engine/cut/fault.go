package cut

import (
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of the faults of this package, with their arguments. Paths run within
// the Problem: "/pieces/3/length".
const (
	// CodeGrid: the grid is not a length more than zero. found.
	CodeGrid = "cut.grid"
	// CodeLength: a length is not a number, or zero or less (kerf and keep may
	// be zero). found.
	CodeLength = "cut.length"
	// CodeOffGrid: a length is not a multiple of the grid. found, grid.
	CodeOffGrid = "cut.length.grid"
	// CodeLong: a length has more steps of the grid than can be searched. found, limit.
	CodeLong = "cut.length.long"
	// CodeCount: a count or limit is too small or too large. found, and limit
	// where it is too large.
	CodeCount = "cut.count"
	// CodeMany: there are too many pieces, offcuts or kinds of sticks in all. found, limit.
	CodeMany = "cut.many"
	// CodePrice: a price is below zero or too large, or is missing while other
	// sticks have one. found.
	CodePrice = "cut.price"
	// CodeBasis: the cost basis is not one of the named ones.
	CodeBasis = "cut.basis"
	// CodeEffort: the effort is below zero. found.
	CodeEffort = "cut.effort"
	// CodeNothing: there are no pieces.
	CodeNothing = "cut.pieces.none"
	// CodeTooLong: a piece is longer than every stick and offcut. found, limit
	// (the longest bar), mark.
	CodeTooLong = "cut.piece.long"
	// CodeShort: the stock is proven not enough for all pieces; one fault for
	// each piece that finds no place when the longest are cut first. found,
	// count (how many of them), mark.
	CodeShort = "cut.stock.short"
	// CodeUndecided: the effort ran out before a plan was found, nor was it
	// proven that there is none; faults as with CodeShort.
	CodeUndecided = "cut.stock.undecided"
	// CodeCancelled: the caller stopped the search before a plan was found.
	CodeCancelled = "cut.cancelled"
)

// Error holds all faults of a problem, in its order.
type Error struct{ Faults []trace.Fault }

func (e *Error) Error() string {
	var b strings.Builder
	for i, f := range e.Faults {
		if i > 0 {
			b.WriteString("; ")
		}
		b.WriteString(f.Code)
		if f.Path != "" {
			b.WriteString(" at " + f.Path)
		}
	}
	return b.String()
}

// faults gathers what is wrong.
type faults []trace.Fault

func (f *faults) add(code, path string, args ...trace.Arg) {
	*f = append(*f, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

func (f faults) err() error {
	if len(f) == 0 {
		return nil
	}
	return &Error{Faults: f}
}

func argLength(name string, l unit.Length) trace.Arg { return trace.Num(name, l, unit.KindTape) }

func argCount(name string, n int) trace.Arg {
	return trace.Num(name, unit.Ratio(n), unit.KindCount)
}

func at(list string, i int, field string) string {
	return "/" + list + "/" + strconv.Itoa(i) + "/" + field
}
