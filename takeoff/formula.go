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

// StreamLiner = length + drop + bank + 2 overlap: the length of the sheet under a
// watercourse. It goes along its beds and pools, down the face of each fall, and
// rises behind the topmost one as high as at the sides. Range length + drop > 0,
// each from 0 up, all finite; NaN outside. By geometry; that the liner rises
// behind the fall and goes on beyond the edge is trade practice.
func StreamLiner(length, drop, bank, overlap unit.Length) unit.Length {
	if !from(length) || !from(bank) {
		return unit.Length(math.NaN())
	}
	return LinerSide(length+drop, bank/2, overlap)
}

// BoxHole = (length + 2 room)(width + 2 room) depth: the hole for a vault, with
// room round it, its lid level with the ground. Range length, width, depth > 0,
// room from 0 up, all finite; NaN outside. By geometry; upright sides, which the
// ground may not stand: slopes take more.
func BoxHole(length, width, depth, room unit.Length) unit.Volume {
	if !above(length) || !above(width) || !above(depth) || !from(room) {
		return unit.Volume(math.NaN())
	}
	return unit.Volume(float64(length+2*room) * float64(width+2*room) * float64(depth))
}

// Trench = length width depth. Range all from 0 up and finite; NaN outside. By
// geometry; upright sides.
func Trench(length, width, depth unit.Length) unit.Volume {
	if !from(length) || !from(width) || !from(depth) {
		return unit.Volume(math.NaN())
	}
	return unit.Volume(float64(length) * float64(width) * float64(depth))
}

// Couplings = pieces - 1: what joins so many pieces of pipe with plain ends in
// one line, also where fittings part it, because the rest of a stick that was cut
// there is laid on behind the fitting. It is on the safe side: where a stick ends
// at a fitting it takes one less. By geometry.
func Couplings(pieces int) int { return max(0, pieces-1) }

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
