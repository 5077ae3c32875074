// Package band turns doubts about inputs into a band round each output: it
// draws the inputs round their readings, and reads from the outputs that come
// of them where 90 of 100 lie, and which input makes how much of the spread. It
// knows numbers only; what they mean stands with the caller (package design).
//
// Method. An input is a reading with a tolerance. What was read is the truth
// plus an error; with nothing else known the truth lies round the reading as the
// error lies round nothing, so the inputs are drawn round the readings (JCGM
// 101:2008, Supplement 1 to the Guide to the expression of uncertainty in
// measurement: propagation of distributions; from memory).
//
//   - The draws are Sobol points (I. M. Sobol, 1967) with the direction numbers
//     of S. Joe and F. Y. Kuo (SIAM J. Sci. Comput. 30, 2008, 2635-2654) and a
//     shift of the digits by the seed; they fill space more evenly than chance
//     does, so 1,024 are enough. See Draw.
//   - The band goes from the 5 to the 95 percent point of the outputs. See
//     Study.
//   - The share of an input is its part of the variance in a straight-line
//     regression of the output on all inputs; what no straight line tells (the
//     inputs' working together, bends) is the remainder. See Study.
package band
