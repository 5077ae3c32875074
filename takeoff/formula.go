package takeoff

import (
	"math"

	"plashet/engine/unit"
)

// practice is the source of what everybody does and nobody wrote down.
const practice = "common practice, no source"

// LinerSide = size + 2 depth + 2 overlap: one side of the sheet for a pond of
// that length or width; overlap is what lies beyond the edge on each side. It is
// on the safe side for sides that slope. Range size > 0, the others from 0 up,
// all finite; NaN outside. Source: trade pages, reference examples E79, E80.
func LinerSide(size, depth, overlap unit.Length) unit.Length {
	if !above(size) || !from(depth) || !from(overlap) {
		return unit.Length(math.NaN())
	}
	return size + 2*depth + 2*overlap
}

// StreamLiner = length + drop + 2 overlap: the length of the sheet under a
// stream, which goes down the face of each fall. Range length > 0, the others
// from 0 up, all finite; NaN outside. By geometry; the overlap is trade practice.
func StreamLiner(length, drop, overlap unit.Length) unit.Length {
	return LinerSide(length, drop/2, overlap)
}

// LooseVolume = bank (1 + swell): dug soil takes up more room than the hole it
// came from. Range both from 0 up and finite; NaN outside. Source: reference
// example E77.
func LooseVolume(bank unit.Volume, swell unit.Ratio) unit.Volume {
	if !from(bank) || !from(swell) {
		return unit.Volume(math.NaN())
	}
	return bank * unit.Volume(1+swell)
}

// Loads = loose / truck, rounded up: the trips of a truck that holds so much.
// Range loose from 0 up, truck > 0, both finite; NaN outside. Source: reference
// example E77.
func Loads(loose, truck unit.Volume) float64 {
	if !from(loose) || !above(truck) {
		return math.NaN()
	}
	return wholes(float64(loose / truck))
}

// Sticks = run / stick, rounded up: the sticks that reach as far as the run when
// joined end to end. Range run from 0 up, stick > 0, both finite; NaN outside.
// By geometry: sockets and couplings that overlap the pipe are not counted.
func Sticks(run, stick unit.Length) float64 {
	if !from(run) || !above(stick) {
		return math.NaN()
	}
	return wholes(float64(run / stick))
}

// BankForFill = compacted / shrinkage: soil in the ground that a compacted fill
// takes. Range compacted from 0 up, 0 < shrinkage <= 1; NaN outside. Source:
// reference example E78.
func BankForFill(compacted unit.Volume, shrinkage unit.Ratio) unit.Volume {
	if !from(compacted) || !above(shrinkage) || shrinkage > 1 {
		return unit.Volume(math.NaN())
	}
	return compacted / unit.Volume(shrinkage)
}

// Boulders = length x width / cover: the mass of boulders for a pond of those
// sizes, where one short ton serves the area cover (40 or 65 ft² by two rules).
// Range all > 0 and finite; NaN outside. Source: trade pages that contradict one
// another (Book.RockCover).
func Boulders(length, width unit.Length, cover unit.Area) unit.Mass {
	if !above(length) || !above(width) || !above(cover) {
		return unit.Mass(math.NaN())
	}
	return unit.Mass(float64(length)*float64(width)/float64(cover)) * unit.ShortTon
}

// wholes rounds up to whole things; a hair's breadth over is noise of the
// arithmetic (10 x 1.1), not one more.
func wholes(v float64) float64 { return math.Ceil(v * (1 - 1e-12)) }

func above[Q ~float64](v Q) bool { return v > 0 && !math.IsInf(float64(v), 0) }
func from[Q ~float64](v Q) bool  { return v >= 0 && !math.IsInf(float64(v), 0) }
