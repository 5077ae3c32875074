// Package cut lays pieces of pipe into sticks and offcuts. It knows lengths,
// prices and a saw cut; it knows no pipe kind, pump or pond: call it once for
// each kind and size of pipe.
//
// # What is best
//
// Plans are compared in this order, and the answer is proven best in it:
//
//  1. the cost of the new sticks, lowest first;
//  2. the number of offcuts opened, fewest first;
//  3. the longest single remnant, longest first. Remnants are what is left of
//     the bars that the plan cuts; one shorter than Keep counts as none, and an
//     offcut that stays closed is not a remnant.
//
// Plans equal in all three are equally good: which of them is returned is not
// chosen by any further rule, but the same problem always gives the same plan.
//
// # The saw
//
// Between two pieces of a bar goes one kerf. After the last piece there are
// three cases: the bar ends with the piece (flush: no cut); what is left is no
// longer than a kerf (the blade runs off the end and leaves nothing); or more
// is left, and after one more kerf the rest is the remnant. So k pieces take k
// kerfs, or k-1 when the last ends flush, and they fit when
//
//	sum of the pieces + (k-1) kerfs <= length of the bar
//
// which is the same as: sum of (piece + kerf) <= bar + kerf. A bar whose last
// cut runs off the end asks for a saw that can take off less than its own
// width; the plan says where (Bar.End).
//
// # Method
//
// All is whole numbers on a grid that the caller names. The levels are taken in
// turn, each as a chain of yes-or-no questions "can these pieces be laid into
// these bars?":
//
//   - Level 1 tries stick combinations in order of cost, with every offcut at
//     hand; the first that can be laid is cheapest.
//   - Level 2 counts the offcuts up. Of any number of offcuts the longest serve
//     at least as well as others, so one question for each number is enough.
//   - Level 3 asks for a remnant as for one more piece.
//
// A "no" is proven by a dual bound: each piece is given a worth, and the bars,
// at the most that their dearest pattern is worth, are worth less together
// (Gilmore and Gomory, Operations Research 9 (1961) and 11 (1963): column
// generation over knapsacks). The worths come from the linear relaxation in
// floating point and are then rounded to whole numbers and verified by an exact
// knapsack, so that no rounding enters the proof (as Held, Cook and Sewell,
// Mathematical Programming Computation 4 (2012), do for colouring). The bounds
// found also rule out other stick combinations, as cuts (Benders, Numerische
// Mathematik 4 (1962)). A "yes" is a layout. Where the bound says nothing, these
// take turns, with more effort each time:
//
//   - A search bar by bar: bin completion (Korf, IJCAI 2003) with the dominance
//     of Martello and Toth (Knapsack Problems, 1990, chapter 8), in which the
//     bounds serve as budgets: a pattern may fall short of the best by no more
//     than the slack that the bars have over the pieces.
//   - An exact cover: all patterns within the budgets are listed (as Baldacci,
//     Christofides and Mingozzi, Mathematical Programming 115 (2008), list
//     routes), and picked from by the piece or bar with the fewest (Knuth,
//     "Dancing links", 2000). Near the best remnant little is to spare and the
//     list is short. Bars with too many patterns to list come last, as a question
//     of their own. With restarts (Gomes, Selman and Kautz, AAAI 1998) it comes
//     out of a bad turn taken early.
//   - A dive: the patterns that the relaxation uses most are taken whole, and it
//     is asked again for the rest. It only ever finds a "yes".
//
// The search and the cover are exhaustive: when they end, that is a proof.
//
// The search has an effort limit counted in steps, not by a clock. When it is
// reached the best plan found comes back with its bounds, and Proof says so.
package cut
