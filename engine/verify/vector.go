package verify

import (
	"math"

	"plashet/engine/geom"
)

// vec is a point or a direction.
type vec struct{ x, y, z float64 }

func from(v geom.Vec3) vec { return vec{v.X, v.Y, v.Z} }

func (a vec) plus(b vec) vec          { return vec{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec) minus(b vec) vec         { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) times(k float64) vec     { return vec{k * a.x, k * a.y, k * a.z} }
func (a vec) along(b vec) float64     { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) length() float64         { return math.Sqrt(a.along(a)) }
func (a vec) toward(b vec) float64    { return b.minus(a).length() }
func (a vec) at(d vec, k float64) vec { return vec{a.x + k*d.x, a.y + k*d.y, a.z + k*d.z} }

// square gives the vector square to a and b, by the right hand.
func (a vec) square(b vec) vec {
	return vec{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// flat gives what of a lies square to the direction n (length 1).
func (a vec) flat(n vec) vec { return a.at(n, -a.along(n)) }

// one gives a with length 1; ok is false where a has no direction.
func (a vec) one() (vec, bool) {
	l := a.length()
	if !(l > 1e-12) || math.IsInf(l, 0) {
		return vec{}, false
	}
	return a.times(1 / l), true
}

// between gives the angle of two directions, 0 to pi.
func between(a, b vec) float64 { return math.Atan2(a.square(b).length(), a.along(b)) }

// spun gives v turned about the upright, anticlockwise seen from above.
func (a vec) spun(angle float64) vec {
	s, c := math.Sincos(angle)
	return vec{a.x*c - a.y*s, a.x*s + a.y*c, a.z}
}

// nearUpright is how far the plan of a direction may be from nothing for it to
// count as upright, whose clock starts at the back wall: part of what a roll
// means, as engine/layout describes it (a hundredth of a degree).
const nearUpright = 2e-4

// noon gives the direction of roll 0 about a flow.
func noon(flow vec) vec {
	up := vec{z: 1}
	if flow.x*flow.x+flow.y*flow.y < nearUpright*nearUpright {
		up = vec{y: 1}
	}
	n, _ := up.flat(flow).one()
	return n
}

// clock gives the direction at a roll about a flow, clockwise looking along it.
func clock(flow vec, roll float64) vec {
	n := noon(flow)
	s, c := math.Sincos(roll)
	return n.times(c).plus(flow.square(n).times(s))
}

// hour is the roll of a direction about a flow, 0 up to a full turn.
func hour(flow, start, side vec) float64 {
	t := math.Atan2(start.square(side).along(flow), start.along(side))
	if t < 0 {
		t += 2 * math.Pi
	}
	return t
}
