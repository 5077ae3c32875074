// Package takeoff makes the material list of a job: counts, sizes, waste and
// spare of what is glued together, and liner, underlayment, stone and soil by
// formula. It knows no job and no design: plain typed values come in, items go
// out. Text is made at the edge from the codes in codes.go.
//
// Inside, all is SI: metres, square metres, cubic metres, kilograms. Where two
// rules of the trade give different amounts, both ends are kept as a range, and
// the price follows both.
//
// Spare is added to fittings alone, rounded up to whole ones. Pipe has its kerf
// and remnants, cans and rolls their rest, liner and underlayment their overlap,
// stone and soil their range.
package takeoff
