// Package motion follows the water through a start and a stop of the feature:
// how the vault falls while pipe, boxes, streams and pools fill, whether the
// pump draws air and when, how high the pond comes when all of it runs back,
// and how long it takes. Where the water stands at rest and in steady running
// is package level's; flows between given levels come from package network or
// any other Supply.
//
// Inside, all is SI: metres over the job's datum, cubic metres, seconds.
//
// Method: the books of water as differential equations. The states are the
// volumes in the pond, the vault, the pipe of each feed and each part of its
// watercourse; a flow leaves one and enters another, so no water is won or
// lost. They are integrated by an explicit Runge-Kutta pair of orders 5 and 4
// with error control and dense output (J. Dormand and P. Prince, A family of
// embedded Runge-Kutta formulae, Journal of Computational and Applied
// Mathematics 6, 1980; interpolant as in Hairer, Norsett and Wanner, Solving
// Ordinary Differential Equations I, section II.6). Where thin water over lips
// settles so fast that it would hold these steps short, steps of a method made
// for that, of order 2, take their place (B. Sommeijer, L. Shampine and J.
// Verwer, RKC: an explicit solver for parabolic PDEs, Journal of Computational
// and Applied Mathematics 88, 1998), under the same error control; an accuracy
// finer than 1e-6 m³ is met by the pair alone. Where the rule changes (the pump
// draws air, the pond reaches its rim, a pipe is full or empty, air breaks a
// siphon) the moment is found on the interpolant and the integration begins
// anew there.
//
// What is tiny and fast is taken as steady: pond and vault behind a drowned
// weir share their water with the drop that the flow needs, and a box that
// empties within half a second passes on what it gets. Water in the pipe has no
// inertia, and a wave takes no time to run down a stream: its storage delays it.
package motion
