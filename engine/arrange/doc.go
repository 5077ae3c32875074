// Package arrange finds the rigid plumbing for a vault: which fittings in which
// order, how they are rolled, how long each piece of pipe is, in which attitude
// and where the pump stands, so that the chain meets the hole in the wall,
// touches nothing, keeps its check valve the right way, can be opened at a union
// and lets the pump out. It gives the assemblies that no other beats in every
// respect, with what each costs in every respect, and says how far its claim
// reaches; where nothing fits it says what is short and by how much.
//
// Every assembly it gives has been laid by engine/layout and proved by
// engine/verify. The search itself works with lines and planes only: directions
// are chosen one by one, lengths and places follow from a linear program, and
// what would collide is kept apart by planes, decided by branch and bound.
//
// Directions: the axes and half way between two of them, and the same turned
// with the pump. A rolled offset (two elbows in a row whose outer legs lie along
// one line) is also looked at between the steps of 45 degrees, at the rolls where
// the pipe closes, but only where no step closes it, and from four elbows on only
// while nothing else is found. Where nothing rigid fits at these directions, all
// legs may point anywhere that the elbows let them, up to two unknown angles at
// once, the pump's turn among them where the input leaves it open: found from
// seeds all round, and not proven best (see limber). A short hose is looked at where the input allows one: as the first turn
// from the pump, at its least radius, by any angle between two of the directions;
// what it would gain elsewhere, or bent wider, is not. One coupling between two
// pieces of pipe is looked at where the pipe is limited. A pump leaned over on its
// way out is looked at only where nothing else comes out. Parts glued already stay
// as they are; with elbows glued to the pump only the attitude in which they were
// glued is looked at.
//
// Frames, rolls and marks are those of engine/layout. Lengths in metres, angles
// in radians. Nothing panics; the same input gives the same outcome, on one core
// as on many.
package arrange
