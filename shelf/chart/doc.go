// Package chart reads values off the picture of a chart: two marks on each axis
// in, the flow and head of any pixel out, and back. It also tells from the first
// bytes of a file whether it is a picture that may be shown. It sees no picture
// itself and keeps nothing.
//
// Pixels count from the upper left corner, x to the right and y down; they may
// lie between pixels. Both axes are taken as evenly divided (no logarithms). A
// picture that is turned, stretched or slanted is made straight by the marks
// (an affine map, which keeps parallels parallel); one taken at a slant to the
// paper, so that parallels run together, is not: Slant tells a part of it, and
// the rest has to be held against a known point of the grid (Off).
package chart
