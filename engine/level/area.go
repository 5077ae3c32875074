package level

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

// AreaElevation tells, for a vessel open to the sky, the area of its surface
// and the water in it at every level. Between the corners of its side the area
// is a quadratic of the level, so the volume is integrated exactly, piece by
// piece. Above its top it goes on straight up: for a pond, whose edge leans
// back, that tells a rise too high rather than too low. Build one with
// NewPond, NewBox or NewRound; the zero value holds nothing.
type AreaElevation struct {
	pieces []piece // from the floor up, end to end
	top    piece   // without end
	void   float64 // part of the volume that is water
	grown  float64 // plan areas over those of the pieces
	up     float64 // levels over those of the pieces, m
	// shift is added to the volumes where the whole was measured: measured less
	// drawn.
	shift    float64
	measured bool
	drawn    float64 // volume up to the top of the drawing by geometry
}

// piece is a slice with the plan area a + b x + c x^2, x metres above from.
type piece struct {
	from, until float64
	a, b, c     float64
	below       float64 // plan volume under it
}

func (p *piece) area(z float64) float64 {
	x := z - p.from
	return p.a + x*(p.b+x*p.c)
}

// volume is the plan volume up to z.
func (p *piece) volume(z float64) float64 {
	x := z - p.from
	return p.below + x*(p.a+x*(p.b/2+x*p.c/3))
}

// height is the inverse of volume: how far above from the slice holds v, by
// Newton's steps between two heights that enclose it.
func (p *piece) height(v float64) float64 {
	if p.b == 0 && p.c == 0 && p.a > 0 {
		return v / p.a
	}
	low, high := 0.0, p.until-p.from
	x := min(2*v/(p.a+math.Sqrt(max(0, p.a*p.a+2*p.b*v))), high) // exact where the area grows evenly
	for range 100 {
		have := x * (p.a + x*(p.b/2+x*p.c/3))
		if have > v {
			high = x
		} else {
			low = x
		}
		next := x - (have-v)/(p.a+x*(p.b+x*p.c))
		if !(next > low && next < high) {
			next = low + (high-low)/2
		}
		if math.Abs(next-x) <= heightDigits*high {
			return next
		}
		x = next
	}
	return x
}

// heightDigits, of the slice's height, is where a search for a height ends. In
// the tip of a cone Newton's steps only shrink in proportion, so the last step
// must be as small as what is left may be.
const heightDigits = 4e-16

// assemble puts the slices, from the floor up, on each other, and on top a
// straight wall round an area.
func assemble(pieces []piece, area, void float64) *AreaElevation {
	v := 0.0
	for i := range pieces {
		if i+1 < len(pieces) {
			pieces[i].until = pieces[i+1].from
		}
		pieces[i].below = v
		v = pieces[i].volume(pieces[i].until)
	}
	last := pieces[len(pieces)-1]
	return &AreaElevation{
		pieces: pieces, void: void, grown: 1, drawn: v * void,
		top: piece{from: last.until, a: area, below: v},
	}
}

// Floor gives the level of the floor.
func (a *AreaElevation) Floor() unit.Length { return unit.Length(a.pieces[0].from + a.up) }

// Changed is the same vessel with its plan areas in proportion to a ratio above
// 0, and raised by a height: for a band, whose draws differ in what was taped
// and levelled. It allocates nothing.
func (a *AreaElevation) Changed(area unit.Ratio, up unit.Length) AreaElevation {
	out := *a
	out.grown *= float64(area)
	out.drawn *= float64(area)
	out.up += float64(up)
	return out
}

// Top gives the level up to which the vessel was drawn: a pond's water line, a
// vault's upper edge.
func (a *AreaElevation) Top() unit.Length { return unit.Length(a.top.from + a.up) }

// at gives the slice that holds the level, as the pieces have it; for a level
// below the floor nil.
func (a *AreaElevation) at(z float64) *piece {
	if z >= a.top.from {
		return &a.top
	}
	i, found := slices.BinarySearchFunc(a.pieces, z, func(p piece, z float64) int {
		switch {
		case p.from < z:
			return -1
		case p.from > z:
			return 1
		}
		return 0
	})
	if !found {
		i--
	}
	if i < 0 {
		return nil
	}
	return &a.pieces[i]
}

// Plan gives the area of the surface as seen from above (stones and all), on a
// shelf the wider one; 0 below the floor.
func (a *AreaElevation) Plan(z unit.Length) unit.Area {
	x := float64(z) - a.up
	p := a.at(x)
	if p == nil {
		return 0
	}
	return unit.Area(max(0, p.area(x)) * a.grown)
}

// Water gives the area that a rise of level fills: the plan area times the void
// ratio.
func (a *AreaElevation) Water(z unit.Length) unit.Area {
	return a.Plan(z) * unit.Area(a.void)
}

// Volume gives the water up to a level: void ratio times the integral of the
// plan area from the floor, plus, where the whole was measured, what the
// measurement says more or less than the drawing. At the floor and below it is
// what then remains (0 without a measurement; below 0 when less was measured
// than drawn).
func (a *AreaElevation) Volume(z unit.Length) unit.Volume {
	x := float64(z) - a.up
	p := a.at(x)
	if p == nil {
		return unit.Volume(a.shift)
	}
	return unit.Volume(a.void*a.grown*p.volume(x) + a.shift)
}

// Filled gives Volume and, in m², how fast it grows with the level.
func (a *AreaElevation) Filled(z unit.Length) (v unit.Volume, grows unit.Area) {
	x := float64(z) - a.up
	p := a.at(x)
	if p == nil {
		return unit.Volume(a.shift), 0
	}
	k := a.void * a.grown
	return unit.Volume(k*p.volume(x) + a.shift), unit.Area(k * max(0, p.area(x)))
}

// Level is the inverse of Volume. For less water than the floor has it gives
// the floor and false (the vessel is empty); likewise for NaN.
func (a *AreaElevation) Level(v unit.Volume) (unit.Length, bool) {
	plan := (float64(v) - a.shift) / (a.void * a.grown)
	if !(plan > 0) {
		return a.Floor(), plan >= -emptySlack*(a.drawn/(a.void*a.grown))
	}
	if plan >= a.top.below {
		return unit.Length(a.up + a.top.from + (plan-a.top.below)/a.top.a), true
	}
	i, found := slices.BinarySearchFunc(a.pieces, plan, func(p piece, v float64) int {
		switch {
		case p.below < v:
			return -1
		case p.below > v:
			return 1
		}
		return 0
	})
	if !found {
		i--
	}
	p := &a.pieces[i]
	return unit.Length(a.up + p.from + p.height(plan-p.below)), true
}

// emptySlack is the part of the whole by which rounding may take a vessel that
// is just empty below nothing.
const emptySlack = 1e-12

// Rise gives how far the level moves when a volume is added at a level (taken
// away: a negative volume, a negative rise). False when more is taken than
// there is; the rise then ends at the floor.
func (a *AreaElevation) Rise(v unit.Volume, from unit.Length) (unit.Length, bool) {
	z, ok := a.Level(a.Volume(from) + v)
	return z - from, ok
}

// Total gives the water up to the top of the drawing (the water line of a pond,
// the rim of a vault), and whether it was measured; Drawn the same by geometry.
func (a *AreaElevation) Total() (v unit.Volume, measured bool) {
	return unit.Volume(a.drawn + a.shift), a.measured
}

// Drawn gives the water up to the top of the drawing by geometry alone.
func (a *AreaElevation) Drawn() unit.Volume { return unit.Volume(a.drawn) }
