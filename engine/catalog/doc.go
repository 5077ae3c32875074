// Package catalog is the book of pipe, fittings, threads, resistances and
// joint practice. It holds typed rows read once from embedded tables; each
// value carries where it comes from and how far it can be trusted. It knows no
// job, no water and no layout: it gives sizes and coefficients, others compute
// with them.
//
// Tables. data/pipe, sockets, laying, threads, losses, solventweld and practice
// (the topics used here) are the reference tables that package checks holds the
// engine against; kinds, hose, fittings, laying_metric, losses_more and limits
// are this package's own, mostly from memory and marked so.
//
// Inside, all lengths are metres, pressures pascals, temperatures degrees
// Celsius, durations seconds. A size is a name, not a length: "2" is an inch
// size (neither outside nor inside diameter), "d50" a metric size (the outside
// diameter in mm), "32 mm" a hose (its bore). They are never mixed by name.
//
// Geometry of a fitting. Every end has a Stop: the distance from the fitting's
// centre, along the end's axis, to the plane where the mate's end stands. That
// is the socket's stop, a spigot's own end, the face of the port a male thread
// is screwed into, the end of the male thread in a female one, the shoulder a
// hose is pushed against. The centre of a straight fitting is midway between
// its two stops.
//
// Bad input never panics. A name or size that is not in the book gives an
// *Error with a code below; a formula outside its range gives NaN, which every
// later step hands on.
package catalog
