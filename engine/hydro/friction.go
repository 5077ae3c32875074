package hydro

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The Reynolds numbers at which the flow in a full pipe changes its law, and
// the roughest wall (relative to the bore) that the Colebrook-White formula is
// used for: the end of the chart in Moody, Friction factors for pipe flow,
// Trans. ASME 66 (1944).
const (
	LaminarEnd           = 2000
	TurbulentStart       = 4000
	MaxRelativeRoughness = 0.05
)

// Where the friction factor comes from.
var (
	SourceColebrook = trace.Source{
		Title: "Colebrook, Turbulent flow in pipes, J. Inst. Civ. Eng. 11 (1939) 133, in the form 1/sqrt f = -2 log10(k/3.7 + 2.51/(Re sqrt f))",
		Basis: trace.BasisLibrary,
		Note:  "solved to about 1e-15; checked against 40-digit arithmetic",
	}
	SourceBridge = trace.Source{
		Title: "cubic bridge between Re 2000 and 4000: Hermite cubic of f Re^2 over Re",
		Basis: trace.BasisPractice,
		Note:  "no formula is accepted there; this one has no jump in loss or slope and always rises with the flow",
	}
)

// PipeRegime names the law that holds at a Reynolds number.
type PipeRegime uint8

// The laws. The bridge is named because no figure in it is certain.
const (
	Laminar PipeRegime = iota
	Bridge
	Turbulent
)

func (r PipeRegime) String() string { return [...]string{"laminar", "bridge", "turbulent"}[r] }

// RegimeOf tells which law holds at a Reynolds number of either sign.
func RegimeOf(re unit.Ratio) PipeRegime {
	switch a := math.Abs(float64(re)); {
	case a <= LaminarEnd:
		return Laminar
	case a < TurbulentStart:
		return Bridge
	default:
		return Turbulent
	}
}

// Friction gives Darcy's friction factor f of a full round pipe and its
// derivative by the Reynolds number, for Re >= 0 and a relative roughness
// rel = roughness / bore from 0 to 0.05.
//
//	Re <= 2000:  f = 64 / Re
//	Re >= 4000:  1/sqrt f = -2 log10(rel/3.7 + 2.51/(Re sqrt f))
//	between:     the cubic bridge, f = g / Re², with
//	             t  = (Re - 2000) / 2000
//	             g0 = 64·2000 = 128000            (f Re² at 2000)
//	             s0 = 64                          (its slope there)
//	             g1 = f(4000)·4000²               (f Re² at 4000)
//	             s1 = g1/4000 · 2 s/(1 + s)       (its slope there)
//	             s  = ln(10)/18.574 · rel·4000 + ln(10)/(2 sqrt f(4000))
//	             g  = (2t³-3t²+1) g0 + (t³-2t²+t)·2000 s0
//	                + (3t²-2t³) g1 + (t³-t²)·2000 s1
//
// The head loss of a pipe is in proportion to g = f Re² over Re, as the flow
// is; so the loss and its slope have no jump. It always rises: the chord of
// the bridge is (g1-128000)/2000 with g1 >= 638512 (a smooth wall), hence
// s0 < 0.26 chord and s1 < 1.26 chord, both under the 3 chords up to which a
// Hermite cubic is monotone (Fritsch and Carlson, SIAM J. Numer. Anal. 17
// (1980) 238).
//
// At Re = 0 f is +Inf and its derivative -Inf; a negative Re or rel, a rel
// above 0.05, or not a number give not a number for both.
func Friction(re, rel unit.Ratio) (f unit.Ratio, dfdRe float64) {
	r := float64(re)
	if !(r >= 0) || !(rel >= 0 && rel <= MaxRelativeRoughness) {
		return unit.Ratio(math.NaN()), math.NaN()
	}
	switch {
	case r == 0:
		return unit.Ratio(math.Inf(1)), math.Inf(-1)
	case r <= LaminarEnd:
		return unit.Ratio(64 / r), -64 / (r * r)
	case r >= TurbulentStart:
		inverseF, share := colebrook(float64(rel)*perRe, r)
		root := halfLn10 * inverseF
		return unit.Ratio(root * root), -2 * root * root * share / r
	}
	w := newWall(float64(rel))
	g, dg := w.number(r)
	fr := g / (r * r)
	return unit.Ratio(fr), dg/(r*r) - 2*fr/r
}

// wall is a pipe wall ready for use: its roughness as the solution of
// Colebrook-White wants it, and the far end of the bridge.
type wall struct {
	perRe  float64 // relative roughness · ln(10)/18.574
	g1, s1 float64 // f Re² and its slope at TurbulentStart
}

func newWall(rel float64) wall {
	w := wall{perRe: rel * perRe}
	w.g1, w.s1 = w.turbulent(TurbulentStart)
	return w
}

// number gives f Re² and its derivative by Re, for re >= 0. At 0 it is 0 with
// the slope 64.
func (w *wall) number(re float64) (g, dg float64) {
	switch {
	case re >= TurbulentStart:
		return w.turbulent(re)
	case re <= LaminarEnd:
		return 64 * re, 64
	case re < TurbulentStart:
		return w.bridge(re)
	}
	return math.NaN(), math.NaN()
}

func (w *wall) bridge(re float64) (g, dg float64) {
	const span, g0, s0 = TurbulentStart - LaminarEnd, 64 * LaminarEnd, 64
	t := (re - LaminarEnd) / span
	u := 1 - t
	g = u*u*((1+2*t)*g0+t*span*s0) + t*t*((3-2*t)*w.g1-u*span*w.s1)
	dg = 6*t*u*(w.g1-g0)/span + u*(1-3*t)*s0 + t*(3*t-2)*w.s1
	return g, dg
}

func (w *wall) turbulent(re float64) (g, dg float64) {
	inverseF, share := colebrook(w.perRe, re)
	slope := halfLn10 * inverseF // sqrt f
	root := slope * re
	return root * root, 2 * slope * root * (1 - share)
}
