package motion

import (
	"math"

	"plashet/engine/hydro"
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
const levelClose = 1e-5

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
	crest float64
	coef  float64
	lip   *hydro.Lip
}

// free is the flow falling free at a head.
func (s *sill) free(h float64) float64 { return overLip(s.lip, s.coef, h) }

// overLip is the flow over a lip at a head above nought; coef is that of one
// without tilt, else 0.
func overLip(l *hydro.Lip, coef, h float64) float64 {
	if coef > 0 && h > float64(hydro.FilmHead) {
		return coef * h * math.Sqrt(h)
	}
	q, _ := l.Flow(unit.Head(h))
	return float64(q)
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

// nearlyPart is the part of the free flow there over nearlyLevel.
var nearlyPart = math.Pow(1-math.Pow(1-nearlyLevel, 1.5), villemonte) / nearlyLevel

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
	if 1-ratio < nearlyLevel {
		return q1 * nearlyPart * (1 - ratio), q1 * nearlyPart / hp
	}
	lack := 1 - ratio*math.Sqrt(ratio)
	part := power(lack, villemonte)
	return q1 * part, drownedSlope(q1*part, lack, ratio, hp)
}

// drownedSlope is dQ/dh2 of the formula at a flow, lack = 1 - (h2/h1)^1.5.
func drownedSlope(q, lack, ratio, h1 float64) float64 {
	return q * villemonte / lack * 1.5 * math.Sqrt(ratio) / h1
}

// behind is the inverse: the vault's head over the crest at which q comes from
// a pond at the head hp (q below 0: runs back into it), where the drowned weir
// lets it; the crest where it does not. It gives the slope of flow too.
func (s *sill) behind(hp, q float64) (hv, slope float64) {
	if hp <= 0 {
		return 0, 0
	}
	q1 := s.free(hp)
	if q >= q1 {
		return 0, 0
	}
	hv, lack, ratio := hp, 0.0, 1.0
	switch {
	case q > 0:
		lack = power(q/q1, 1/villemonte)
		ratio = twoThirds(1 - lack)
		hv = hp * ratio
	case q < 0:
		// The vault's own free flow counts, which is little more than the pond's.
		for range 2 {
			lack = power(min(1, -q/s.free(hv)), 1/villemonte)
			ratio = max(0.1, twoThirds(1-lack))
			hv = hp / ratio
		}
	}
	if 1-ratio < nearlyLevel {
		return hv, q1 * nearlyPart / hp
	}
	return hv, drownedSlope(math.Abs(q), lack, ratio, max(hp, hv))
}

// drop is behind at one head and flow, with its slopes: the law is homogeneous
// of degree 3/2 in the two heads, so the slope by the one follows from that by
// the other.
type drop struct {
	hp, q, hv, slope float64
	byPond, byFlow   float64
	smooth           bool
}

// dropNear is how far, as a part of head and flow, a drop is carried on straight:
// what that leaves is its square.
const dropNear = 1e-2

func (s *sill) drop(hp, q float64) drop {
	d := drop{hp: hp, q: q}
	d.hv, d.slope = s.behind(hp, q)
	if hp <= 0 || d.hv < 0.7*hp || d.hv > 1.05*hp || q == 0 || d.slope <= 0 {
		return d // where the law has corners, or bends fast
	}
	byPond, byVault := (1.5*q+d.slope*d.hv)/hp, -d.slope
	if q < 0 {
		byPond, byVault = d.slope, (1.5*q-d.slope*hp)/d.hv
	}
	d.byPond, d.byFlow, d.smooth = -byPond/byVault, 1/byVault, true
	return d
}

func (d *drop) near(hp, q float64) bool {
	return hp == d.hp && q == d.q || d.smooth && math.Abs(hp-d.hp) <= dropNear*d.hp && math.Abs(q-d.q) <= dropNear*math.Abs(d.q)
}

func (d *drop) at(hp, q float64) (hv, slope float64) {
	return d.hv + d.byPond*(hp-d.hp) + d.byFlow*(q-d.q), d.slope
}

// power is x^p for x above 0, without the care that math.Pow takes of all else.
func power(x, p float64) float64 { return math.Exp(p * math.Log(x)) }

// twoThirds is x^(2/3), 0 for x below 0.
func twoThirds(x float64) float64 {
	if x <= 0 {
		return 0
	}
	y := math.Cbrt(x)
	return y * y
}
