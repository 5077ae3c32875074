// Package layout lays the rigid plumbing in the vault as the fitter does: an
// ordered chain of fittings from the pump's port to the hole in the wall, each
// with its roll, each joint with its distance. From that it works out where
// every piece stands, what to cut and mark, whether the chain meets the hole,
// keeps off walls, pump, obstacles and itself, what the check valve and the
// union do, and whether the pump comes out. It knows no hydraulics, no prices
// and no order of gluing, and it searches nothing: it judges one chain.
//
// Frame of the vault, in metres: x along the length from the left wall, y along
// the width from the front wall, z up from the floor. The origin is the corner
// left, front of the rim's plan, on the level of the floor; a tapered vault's
// floor lies centred under its rim, a round vault in the square round its rim.
// Frame of the pump: x along its length, y along its width, z up, origin in
// the corner of its box before it is turned.
//
// Directions of flow run from the pump to the wall. An elbow's roll is read
// looking along the flow into it: 0 is up, or to the back wall (+y) when the
// inlet is upright, and it counts clockwise, which is the right-hand turn about
// the flow.
//
// Solids are flat-ended cylinders and blocks. An elbow's legs are drawn on past
// its centre to the mitre, so that the round corner of the real fitting lies
// inside; a hose in its bend is enclosed by a row of cylinders (hoseSolids). Distances are lower bounds proved by a separating plane and sharp to
// less than a micrometre; they are never optimistic. Method: E. G. Gilbert,
// D. W. Johnson, S. S. Keerthi, "A fast procedure for computing the distance
// between complex objects in three-dimensional space", IEEE Journal of
// Robotics and Automation 4 (1988) 193-203.
//
// Bad input never panics: it comes back as faults. Sizes that were not given
// come back as assumptions.
package layout
