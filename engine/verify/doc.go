// Package verify proves or refutes a laid assembly a second time. It takes what
// was typed (layout.Input: vault, pump, pose, parts with their sizes and rolls,
// settings) and what engine/layout says of it (layout.Assembly: places, cut
// lengths, marks, way out) and works out by itself whether the one follows from
// the other and whether it can be built. Of engine/layout and engine/geom it
// uses data types and codes only, no function or method: a test proves that.
//
// Another method throughout. Layout seeks the nearest points of two solids by
// supports and simplices (Gilbert, Johnson, Keerthi 1988). Here every solid is
// a sum of segments and a disc, and so is the difference of two of them, also
// while one moves along a line. Any direction n gives a bound of the distance,
//
//	n.c - sum |n.s| - sum r |n x a|
//
// with c the vector between the centres, s the half segments, r and a the
// radius and axis of the discs (separating planes: H. Minkowski, Geometrie der
// Zahlen, 1896). Directions are tried first (S. Gottschalk, M. C. Lin, D.
// Manocha, "OBBTree", SIGGRAPH 1996: the axes and their products); where they
// do not do, the nearest point of the sum is sought one segment or disc at a
// time (cyclic descent), and the direction to it is the next bound. What is
// told as found is always such a bound: never more than the true distance.
//
// Where the fittings do not say where their true surface lies, the envelope is
// layout's by its description: flat-ended cylinders, an elbow's legs drawn on
// past its centre to the mitre. Errors adding up are found by turning all that
// lies on the pump's side through a small angle both ways, not by levers; water
// by adding up from the wall; a tilt on the way out by drawing bodies along their
// way over small pieces of the angle. A hose is walked along its middle line in
// small steps for its length, and points all over it must lie in its envelope.
//
// Lengths in metres, angles in radians; frame, rolls and marks as in
// engine/layout. Nothing panics: what is missing, not a number or does not
// match in count is a check that fails.
package verify
