package motion

import (
	"math"

	"plashet/engine/level"
	"plashet/engine/unit"
)

// vessel finds the level for a volume by Newton's steps from the last level,
// which is near.
type vessel struct {
	curve *level.AreaElevation
	z     float64 // the last level
	floor float64
}

func newVessel(c *level.AreaElevation) vessel {
	return vessel{curve: c, z: float64(c.Top()), floor: float64(c.Floor())}
}

func (v *vessel) volume(z float64) float64 { return max(0, float64(v.curve.Volume(unit.Length(z)))) }
func (v *vessel) area(z float64) float64   { return float64(v.curve.Water(unit.Length(z))) }

// levelClose is the last of Newton's steps, in metres; what it leaves is its
// square.
const levelClose = 1e-7

func (v *vessel) level(volume float64) float64 {
	z := v.z
	for range 12 {
		area := v.area(z)
		if area <= 0 {
			break
		}
		step := (volume - float64(v.curve.Volume(unit.Length(z)))) / area
		z += step
		if z <= v.floor {
			break
		}
		if math.Abs(step) < levelClose {
			v.z = z
			return z
		}
	}
	found, _ := v.curve.Level(unit.Volume(volume))
	v.z = max(float64(found), v.floor)
	return v.z
}

// sill is the weir between pond and vault, both ways.
type sill struct {
	*level.Sill
	crest float64
	free  func(head float64) float64 // flow falling free
}

// villemonte is the exponent of the drowned weir's formula: Q = Q1 (1 -
// (h2/h1)^1.5)^0.385, Q1 the free flow at the higher head h1, h2 the lower head
// behind, both over the crest (J. Villemonte, Submerged-weir discharge studies,
// Engineering News-Record, 25 December 1947; from memory, and the same formula
// as package level's).
const villemonte = 0.385

// nearlyLevel is 1 - h2/h1 under which the formula, whose slope there has no
// bound, is joined straight to zero.
const nearlyLevel = 1e-3

// flow gives the flow from the pond (head hp over the crest) into the vault (hv),
// and how fast it changes with the lower of the two heads, in m²/s.
func (s *sill) flow(hp, hv float64) (q, slope float64) {
	if hv > hp {
		q, slope = s.flow(hv, hp)
		return -q, slope
	}
	if hp <= 0 {
		return 0, 0
	}
	q1 := s.free(hp)
	if hv <= 0 {
		return q1, 0
	}
	ratio := hv / hp
	lack := 1 - ratio*math.Sqrt(ratio)
	if 1-ratio < nearlyLevel {
		const r = 1 - nearlyLevel
		least := 1 - r*math.Sqrt(r)
		at := math.Pow(least, villemonte) / nearlyLevel
		return q1 * at * (1 - ratio), q1 * at / hp
	}
	part := math.Pow(lack, villemonte)
	return q1 * part, q1 * villemonte * part / lack * 1.5 * math.Sqrt(ratio) / hp
}

// behind is the inverse: the vault's head over the crest at which q comes from
// a pond at the head hp (q below 0: runs back into it), where the drowned weir
// lets it; the crest where it does not. It gives the slope of flow too.
func (s *sill) behind(hp, q float64) (hv, slope float64) {
	if hp <= 0 {
		return 0, 0
	}
	hv = hp
	switch {
	case q > 0:
		q1 := s.free(hp)
		if q >= q1 {
			return 0, 0
		}
		hv = hp * twoThirds(1-math.Pow(q/q1, 1/villemonte))
	case q < 0:
		// The vault's own free flow counts; it is looked for from the pond's up.
		for range 20 {
			part := 1 - math.Pow(min(1, -q/s.free(hv)), 1/villemonte)
			next := hp / max(0.1, twoThirds(part))
			if math.Abs(next-hv) < 1e-10 {
				break
			}
			hv = next
		}
	}
	_, slope = s.flow(hp, hv)
	return hv, slope
}

func twoThirds(x float64) float64 {
	r := math.Cbrt(max(0, x))
	return r * r
}
