package hydro

import (
	"cmp"
	"math"

	"plashet/engine/unit"
)

// LipLaw is a lip as a weir: a crest of a width, straight from its low end to
// its high end, with the water falling free behind it.
type LipLaw struct {
	Width unit.Length // clear width of the crest, above 0
	C     float64     // weir coefficient in m^0.5/s, above 0
	Tilt  unit.Length // the high end above the low end, 0 or more
}

// Lip is a LipLaw made ready.
type Lip struct {
	LipLaw
	wet      float64 // flow when the water just reaches the high end; 0 without tilt
	filmFlow float64 // flow at FilmHead
	film     creep
}

// Prepare makes the law ready. A width or coefficient that is not above zero
// or a negative tilt gives CodeRange, values that are not finite CodeNotFinite.
func (l LipLaw) Prepare() (*Lip, error) {
	out := new(Lip)
	if err := out.Renew(l); err != nil {
		return nil, err
	}
	return out, nil
}

// Renew makes a lip ready again in its place, for another law, as Prepare does;
// with an error it stays as it was.
func (l *Lip) Renew(law LipLaw) error {
	err := cmp.Or(
		positive("width", law.Width, unit.KindTape),
		positive("c", unit.Ratio(law.C), unit.KindRatio),
		notNegative("tilt", law.Tilt, unit.KindDepth),
	)
	if err != nil {
		return err
	}
	*l = Lip{LipLaw: law}
	t := float64(law.Tilt)
	l.wet = 0.4 * law.C * float64(law.Width) * t * math.Sqrt(t)
	q, dq := l.power(float64(FilmHead))
	l.filmFlow, l.film = q, newCreep(dq*float64(FilmHead)/q)
	return nil
}

// power is the weir's flow and its derivative by the head, for h >= 0 over the
// low end.
func (l *Lip) power(h float64) (q, dq float64) {
	c, t := l.C*float64(l.Width), float64(l.Tilt)
	root := math.Sqrt(h)
	switch {
	case t == 0:
		return c * h * root, 1.5 * c * root
	case h <= t:
		return 0.4 * c / t * h * h * root, c / t * h * root
	}
	// (1-(1-r)^n)/r without the loss of digits that a small tilt would bring
	r := t / h
	log := math.Log1p(-r)
	return -0.4 * c * h * root * math.Expm1(2.5*log) / r, -c * root * math.Expm1(1.5*log) / r
}

// Flow is the flow over the lip at an upstream head, measured over the low end
// in still water, and its derivative in m²/s. A crest that rises from 0 to t
// over the width L gives
//
//	Q = C ∫ (H - z)^1.5 dx = (2/5) C (L/t) (H^2.5 - (H-t)^2.5),  H >= t
//	Q = (2/5) C (L/t) H^2.5,                                     H < t
//	Q = C L H^1.5,                                               t = 0
//
// Under FilmHead it is joined to zero by an odd cubic (law.go), also for a
// negative head, so that the inverse has a finite slope at zero flow.
func (l *Lip) Flow(head unit.Head) (q unit.Flow, dqdh float64) {
	h := float64(head)
	if math.Abs(h) < float64(FilmHead) {
		y, dy := l.film.at(h / float64(FilmHead))
		return unit.Flow(l.filmFlow * y), l.filmFlow / float64(FilmHead) * dy
	}
	v, dv := l.power(math.Abs(h))
	return unit.Flow(math.Copysign(v, h)), dv
}

// Head is the inverse of Flow: the upstream head over the low end at a flow,
// and its derivative in s/m². With a tilt and the whole crest wet it is found
// by Newton's steps, which run down to it without passing it, since the flow
// bends upward with the head.
func (l *Lip) Head(q unit.Flow) (head unit.Head, dhdq float64) {
	a := math.Abs(float64(q))
	c, t := l.C*float64(l.Width), float64(l.Tilt)
	var h float64
	switch {
	case math.IsNaN(a) || math.IsInf(a, 0):
		return unit.Head(q), math.NaN()
	case a < l.filmFlow:
		h = float64(FilmHead) * l.film.inverse(a/l.filmFlow)
	case t == 0:
		h = twoThirds(a / c)
		return unit.Head(math.Copysign(h, float64(q))), 2.0 / 3 * h / a
	case a <= l.wet:
		h = math.Pow(a*t/(0.4*c), 0.4)
	default:
		h = max(twoThirds(a/c)+t/2, t)
		for range 50 {
			have, slope := l.power(h)
			step := (have - a) / slope
			h = max(h-step, t)
			if math.Abs(step) <= settled*h {
				break
			}
		}
	}
	_, slope := l.Flow(unit.Head(h))
	return unit.Head(math.Copysign(h, float64(q))), 1 / slope
}

// twoThirds is x^(2/3) for x >= 0.
func twoThirds(x float64) float64 {
	r := math.Cbrt(x)
	return r * r
}

// Loss makes a lip a Law: the head that the flow needs over it.
func (l *Lip) Loss(q unit.Flow) (h unit.Head, dhdq float64) { return l.Head(q) }

// DryWidth is the part of the crest that the water does not reach at an
// upstream head over the low end: L (1 - H/t) for H < t, else 0.
func (l *Lip) DryWidth(head unit.Head) unit.Length {
	if l.Tilt == 0 || head >= l.Tilt {
		return 0
	}
	return l.Width * (1 - max(head, 0)/l.Tilt)
}
