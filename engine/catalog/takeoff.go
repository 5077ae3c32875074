package catalog

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// ruleName points at a row of trade practice.
type ruleName struct{ topic, name string }

// The rows that quantities are taken off by. Their units are fixed here; New
// refuses a table that lacks one.
var (
	linerOverlapTotal = ruleName{"liner", "length or width = bottom-to-top measure: size + 2 x greatest depth + overlap"}
	linerOverlap      = ruleName{"liner", "overlap beyond edge"}
	underlayLayers    = ruleName{"underlayment", "same plan size as liner, under (and often over) it"}
	rockCover         = ruleName{"rock", "boulders in pond: tons = L x W / divisor (ft)"}
	gravelShare       = ruleName{"rock", "gravel in pond, part of boulder tons"}
	streamBoulders    = ruleName{"rock", "boulders along stream"}
	streamGravel      = ruleName{"rock", "gravel in stream"}
	solidRock         = ruleName{"rock", "solid rock density"}
	looseGravel       = ruleName{"rock", "loose gravel or cobble"}
	stoneVoid         = ruleName{"rock", "void space in rock-filled basin"}
	worksRules        = []ruleName{linerOverlapTotal, linerOverlap, underlayLayers, rockCover, gravelShare, streamBoulders, streamGravel, solidRock, looseGravel, stoneVoid}
)

// soils ties the soils of the job document to the rows of swell.
var soils = []struct {
	name string
	row  ruleName
}{
	{"sand or gravel", ruleName{"excavation", "swell of clean sand or gravel"}},
	{"top soil", ruleName{"excavation", "swell of top soil"}},
	{"loam", ruleName{"excavation", "swell of loamy soil"}},
	{"common earth", ruleName{"excavation", "swell of common earth"}},
	{"clay", ruleName{"excavation", "swell of clay"}},
	{"rock", ruleName{"excavation", "swell of solid rock"}},
}

// practice reads a rule as a typed range; per is the unit it is written in.
func practice[Q ~float64](b *Book, n ruleName, per Q) Span[Q] {
	r, _ := b.rule(n)
	return Span[Q]{Low: Q(r.Low) * per, High: Q(r.High) * per, Source: r.Source}
}

// LinerOverlap gives the liner beyond the edge on each side.
func (b *Book) LinerOverlap() Span[unit.Length] { return practice(b, linerOverlap, unit.Foot) }

// LinerOverlapTotal gives the same for both sides together, as other pages
// give it.
func (b *Book) LinerOverlapTotal() Span[unit.Length] {
	return practice(b, linerOverlapTotal, unit.Foot)
}

// UnderlayLayers gives the layers of underlayment, each of the liner's size.
func (b *Book) UnderlayLayers() Span[float64] { return practice(b, underlayLayers, 1.0) }

// RockCover gives the plan area (length x width of the pond) that one short ton
// of boulders serves. The two ends are two rules that contradict one another:
// price both.
func (b *Book) RockCover() Span[unit.Area] { return practice(b, rockCover, unit.SquareFoot) }

// GravelShare gives the gravel in a pond as a part of the mass of its boulders.
func (b *Book) GravelShare() Span[unit.Ratio] { return practice(b, gravelShare, unit.Ratio(1)) }

// StreamStretch is the length of stream that StreamBoulders and StreamGravel
// are for.
const StreamStretch = 10 * unit.Foot

// StreamBoulders gives the boulders along each StreamStretch of stream.
func (b *Book) StreamBoulders() Span[unit.Mass] { return practice(b, streamBoulders, unit.ShortTon) }

// StreamGravel gives the gravel in each StreamStretch of stream.
func (b *Book) StreamGravel() Span[unit.Mass] { return practice(b, streamGravel, unit.ShortTon) }

// SolidRock gives the mass of one cubic metre of solid rock.
func (b *Book) SolidRock() Span[unit.Mass] {
	return practice(b, solidRock, unit.Pound/unit.Mass(unit.CubicFoot))
}

// LooseGravel gives the mass of one cubic metre of loose gravel or cobble.
func (b *Book) LooseGravel() Span[unit.Mass] {
	return practice(b, looseGravel, unit.Pound/unit.Mass(unit.CubicYard))
}

// StoneVoid gives the part of a stone-filled basin that holds water. The one
// published row is 0.29; 0.3 to 0.4 is the common range for clean stone.
func (b *Book) StoneVoid() Span[unit.Ratio] { return practice(b, stoneVoid, unit.Ratio(1)) }

// Soils names the soils that SoilSwell knows, as the job document does.
func (b *Book) Soils() []string {
	out := make([]string, 0, len(soils))
	for _, s := range soils {
		out = append(out, s.name)
	}
	return out
}

// SoilSwell gives how much larger dug soil is than the hole it came from: loose
// volume = bank volume x (1 + swell). Error: CodeSoilUnknown.
func (b *Book) SoilSwell(soil string) (Span[unit.Ratio], error) {
	for _, s := range soils {
		if s.name == soil {
			return practice(b, s.row, unit.Ratio(0.01)), nil
		}
	}
	return Span[unit.Ratio]{}, fault(CodeSoilUnknown, trace.Str("soil", soil), nearest(near(soil, b.Soils())))
}
