// Package level works out where the water stands: in the pond and in the vault,
// at rest, running and after a stop, with the check valve holding, stuck open
// or absent. It knows shapes (package geom) and the weir of a skimmer (package
// hydro); flows, running depths and heads over lips come in as inputs. Movement
// through time is not here; the stores and area-elevation curves are made to
// carry it.
//
// Inside, all is SI: metres above the job's datum for levels, metres for
// depths, cubic metres for volumes. Levels grow upward; a draw-down is a fall of
// the pond, a rise its gain.
//
// Method: the books of water. Nothing is lost or won between one moment and the
// next of a course of events, so the water in pond and vault is the total less
// what the stores hold, and the levels follow from the area-elevation curves.
// Rain, top-up and evaporation enter as volumes of their own.
package level
