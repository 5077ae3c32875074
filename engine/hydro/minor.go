package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceMinor names the law of fittings.
var SourceMinor = trace.Source{
	Title: "h = (K + K1/Re) v^2/(2g)",
	Basis: trace.BasisLibrary,
	Note:  "K1 as in Hooper, The two-K method, Chem. Eng. 24 Aug 1981; 0 for a plain coefficient",
}

// MinorLaw is the loss of fittings that share one bore: the sums of their
// coefficients on the speed in that bore.
type MinorLaw struct {
	Bore unit.Length // inside diameter that the coefficients count on, above 0
	K    unit.Ratio  // sum of the coefficients at high Reynolds numbers, 0 or more
	K1   unit.Ratio  // sum of the coefficients over Re, 0 or more
}

// Minor is a MinorLaw made ready for one water.
type Minor struct {
	MinorLaw
	rePerQ    float64
	linear    float64 // head for each m³/s, from K1
	square    float64 // head for each (m³/s)², from K
	creepFlow float64 // flow at CreepReynolds
	creepHead float64 // square · creepFlow²
}

// squareCreep joins a bare square to zero.
var squareCreep = newCreep(2)

// Prepare makes the law ready for a water. A bore of zero or less and negative
// coefficients give CodeRange, values that are not finite CodeNotFinite.
func (m MinorLaw) Prepare(w Water) (*Minor, error) {
	out := new(Minor)
	if err := out.Renew(m, w); err != nil {
		return nil, err
	}
	return out, nil
}

// Renew makes fittings ready again in their place, for another law or water, as
// Prepare does; with an error they stay as they were.
func (m *Minor) Renew(law MinorLaw, w Water) error {
	err := cmp.Or(
		positive("bore", law.Bore, unit.KindBore),
		notNegative("k", law.K, unit.KindRatio),
		notNegative("k1", law.K1, unit.KindRatio),
		w.check(),
	)
	if err != nil {
		return err
	}
	d, nu, area := float64(law.Bore), w.KinematicM2S, areaOf(law.Bore)
	*m = Minor{
		MinorLaw: law,
		rePerQ:   4 / (math.Pi * d * nu),
		linear:   float64(law.K1) * nu / (2 * unit.StandardGravity * d * area),
		square:   float64(law.K) / (2 * unit.StandardGravity * area * area),
	}
	m.creepFlow = CreepReynolds / m.rePerQ
	m.creepHead = m.square * m.creepFlow * m.creepFlow
	return nil
}

// Loss is the head lost and its derivative:
//
//	h = (K + K1/|Re|) v|v|/(2g)
//
// The part with K1 is linear in the flow. Below Re = 100 the part with K is
//
//	K v100²/(2g) (x/2 + x³/2),  x = Re/100, v100 = 100 nu/D
//
// which has the same value and slope at Re = 100, so that the slope at zero
// flow is K·100 nu/(4 g D A) and not nothing. Strictly rising unless K and K1
// are both zero (a fitting without loss takes no head at all).
func (m *Minor) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	a := math.Abs(float64(q))
	if a < m.creepFlow {
		y, dy := squareCreep.at(float64(q) / m.creepFlow)
		return unit.Head(m.creepHead*y + m.linear*float64(q)), m.creepHead/m.creepFlow*dy + m.linear
	}
	return unit.Head(float64(q) * (m.square*a + m.linear)), 2*m.square*a + m.linear
}

// Join is both fittings as one, where bore and water are the same.
func (m *Minor) Join(next Law) (both Law, ok bool) {
	n, ok := next.(*Minor)
	if !ok || n.Bore != m.Bore || n.rePerQ != m.rePerQ {
		return nil, false
	}
	sum := *m
	sum.K += n.K
	sum.K1 += n.K1
	sum.linear += n.linear
	sum.square += n.square
	sum.creepHead += n.creepHead
	return &sum, true
}

// CoefficientFor is the loss coefficient that takes the head h at the flow q
// in a bore: K = h 2g/v². It is what a valve has to be throttled to. The flow
// must be above zero and the head at least zero.
func CoefficientFor(h unit.Head, q unit.Flow, bore unit.Length) (unit.Ratio, error) {
	err := cmp.Or(
		notNegative("head", h, unit.KindHead),
		positive("flow", q, unit.KindFlow),
		positive("bore", bore, unit.KindBore),
	)
	if err != nil {
		return 0, err
	}
	v := float64(Velocity(q, bore))
	return unit.Ratio(2 * unit.StandardGravity * float64(h) / (v * v)), nil
}

// Resistance is a loss in pure proportion to the square of the flow,
// h = r Q|Q|, in s²/m⁵: the form for hand sums in series and in parallel. It
// has no slope at zero flow, so a network takes Pipe and Minor instead.
type Resistance float64

// FixedFriction is the resistance of a full round pipe with a friction factor
// taken as constant: r = 8 f L/(pi² g D⁵).
func FixedFriction(f unit.Ratio, length, bore unit.Length) (Resistance, error) {
	err := cmp.Or(
		positive("friction", f, unit.KindRatio),
		positive("length", length, unit.KindDistance),
		positive("bore", bore, unit.KindBore),
	)
	if err != nil {
		return 0, err
	}
	area := areaOf(bore)
	return Resistance(float64(f*unit.Ratio(length/bore)) / (2 * unit.StandardGravity * area * area)), nil
}

// Series is the resistance of elements that one flow passes one after the
// other: the sum. Of none it is 0.
func Series(rs ...Resistance) Resistance {
	var sum Resistance
	for _, r := range rs {
		sum += r
	}
	return sum
}

// Parallel is the resistance of elements that share a flow between the same
// two points: 1/sqrt r = sum of 1/sqrt r_i, since all take the same head. Of
// none it is +Inf, and an element without resistance makes it 0.
func Parallel(rs ...Resistance) Resistance {
	sum := 0.0
	for _, r := range rs {
		sum += 1 / math.Sqrt(float64(r))
	}
	return Resistance(1 / (sum * sum))
}

// Head is the head taken at a flow: h = r Q|Q|.
func (r Resistance) Head(q unit.Flow) unit.Head {
	return unit.Head(float64(r) * float64(q) * math.Abs(float64(q)))
}

// Flow is the flow at which the head h is taken: sqrt(|h|/r), of h's sign.
func (r Resistance) Flow(h unit.Head) unit.Flow {
	return unit.Flow(math.Copysign(math.Sqrt(math.Abs(float64(h))/float64(r)), float64(h)))
}
