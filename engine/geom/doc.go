// Package geom measures shapes: points and boxes in space, rolling offsets of
// pipe, outlines in plan with their areas, perimeters and inward offsets, and
// volumes from areas. It knows no water, pump or pipe wall.
//
// Inside, all lengths are metres, areas square metres, angles radians.
// In space x, y and z are right-handed with z up; an angle about an axis turns
// by the right hand (anticlockwise seen against the axis). In plan x runs
// along the baseline and y to its left; an outline has the inside on its left
// when its area counts positive (anticlockwise).
//
// Bad input never panics. A function that can refuse returns an *Error with
// one of the codes below; a vector operation without a meaning (the direction
// of nothing) gives NaN in each component, which every later step hands on.
package geom
