package hydro

import (
	"math"

	"plashet/engine/unit"
)

// Law is the head that an element takes from the water at a flow: odd in the
// flow, without a jump in value or slope, and rising with the flow. Loss gives
// the head lost and its derivative, in s/m². A flow that is not a number gives
// not a number for both; a flow past about 1e150 m³/s may overflow to +Inf.
type Law interface {
	Loss(q unit.Flow) (h unit.Head, dhdq float64)
}

// Joiner is a Law that can be one with another that lies in the same row: a
// pipe with more pipe of its bore and wall, fittings with fittings on its bore.
// The joint law loses at every flow what the two lose, within rounding. It is
// false where the two have no such form.
type Joiner interface {
	Law
	Join(next Law) (both Law, ok bool)
}

// CreepReynolds is the Reynolds number under which a law that is a bare power
// of the flow (a constant K, Hazen-Williams) is joined to zero by a cubic, so
// that its slope at zero flow is neither nothing nor without bound. At 20 °C
// in a 50 mm pipe it is 2 mm/s: no answer can tell.
const CreepReynolds = 100

// FilmHead is the head over a lip under which the lip's power law is joined to
// zero in the same way; no weir formula holds for a film.
const FilmHead = 1 * unit.Millimetre

// settled is the last step of a Newton search over the size of what is looked
// for. The error left goes with the step's square, so it is past the digits of
// a float64; a narrower one would only chase roundings.
const settled = 1e-9

// creep is the odd cubic y = a x + b x³ through (1, 1) that has the slope m
// there, as the power law y = x^m has: a + b = 1, a + 3b = m. It rises
// everywhere for 1 <= m < 3.
type creep struct{ a, b float64 }

func newCreep(m float64) creep { return creep{a: (3 - m) / 2, b: (m - 1) / 2} }

func (c creep) at(x float64) (y, dy float64) {
	xx := x * x
	return x * (c.a + c.b*xx), c.a + 3*c.b*xx
}

// inverse gives x for y, by the root of the depressed cubic in its sinh form.
func (c creep) inverse(y float64) float64 {
	if c.b == 0 {
		return y / c.a
	}
	r := math.Sqrt(c.a / (3 * c.b))
	return 2 * r * math.Sinh(math.Asinh(y/(2*c.b*r*r*r))/3)
}

// areaOf is the section of a round bore.
func areaOf(bore unit.Length) float64 { return math.Pi / 4 * float64(bore) * float64(bore) }

// Velocity is the mean speed in a full round pipe: v = Q / (pi/4 D²). A bore
// of zero or less gives not a number.
func Velocity(q unit.Flow, bore unit.Length) unit.Speed {
	if !(bore > 0) {
		return unit.Speed(math.NaN())
	}
	return unit.Speed(float64(q) / areaOf(bore))
}

// Reynolds is the Reynolds number of a full round pipe: Re = v D / nu, with
// the flow's sign. A bore of zero or less gives not a number.
func Reynolds(q unit.Flow, bore unit.Length, w Water) unit.Ratio {
	return unit.Ratio(float64(Velocity(q, bore)) * float64(bore) / w.KinematicM2S)
}
