// Package glue puts the joints of a laid assembly into an order in which they
// can be made: what to try dry and mark, which threads come before which
// cement, what is made on the bench and what in the vault, which way a valve is
// tilted, how long to hold and to wait, and how much cement it takes. It moves
// no part, cuts no pipe and prices nothing; the chain comes from package
// layout, the times from the catalogue.
//
// The chain is cut at its union faces and its closing pieces into
// sub-assemblies, each rigid once made. The order:
//
//  1. The pieces cut, their ends made ready. The whole chain dry, with stubs;
//     insertion marks, roll marks, arrows, covers, lines.
//  2. Threads, before any cement: a thread turns its part.
//  3. The sub-assemblies on the bench, those towards the wall first; in each
//     the joints of a valve first, while it is light enough to be tilted.
//  4. The one joint that ties the wall's sub-assembly to the wall.
//  5. The pump's sub-assembly on the bench; the pump set in the middle of its
//     play.
//  6. The closing pieces from the wall inward, each in five steps: the whole
//     chain stood in the vault with its unions made up dry; the gap measured;
//     one side taken out and joined on the bench; put back; the other side
//     joined in the vault, with the union's faces together.
//  7. The unions by hand, dry.
//
// Common practice, no source. Not checked: that a sub-assembly passes the hatch
// and has room to go home along its last joint; the dry fit shows it.
//
// Durations are in s, volumes in m³. Bad input never panics: it comes back as
// faults, with as much of the plan as does not depend on it.
package glue
