package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceDarcyWeisbach names the law of a pipe of known roughness.
var SourceDarcyWeisbach = trace.Source{
	Title: "Darcy-Weisbach, h = f (L/D) v^2/(2g), with f by Colebrook-White",
	Basis: trace.BasisLibrary,
}

// PipeLaw is a full round pipe of known roughness.
type PipeLaw struct {
	Bore      unit.Length // inside diameter, above 0
	Length    unit.Length // above 0
	Roughness unit.Length // absolute, from 0 to 0.05 of the bore
}

// Pipe is a PipeLaw made ready for one water.
type Pipe struct {
	PipeLaw
	wall   wall
	rePerQ float64 // Reynolds number for each m³/s
	hPerG  float64 // head for each unit of f Re²
	slope  float64 // hPerG · rePerQ
}

// Prepare makes the law ready for a water. It refuses sizes that are not
// above zero and a roughness outside 0 to 0.05 of the bore (use a
// Hazen-Williams C for ribbed hose) with CodeRange, and values that are not
// finite with CodeNotFinite.
func (p PipeLaw) Prepare(w Water) (*Pipe, error) {
	out := new(Pipe)
	if err := out.Renew(p, w); err != nil {
		return nil, err
	}
	return out, nil
}

// Renew makes a pipe ready again in its place, for another law or water, as
// Prepare does; with an error it stays as it was.
func (p *Pipe) Renew(law PipeLaw, w Water) error {
	err := cmp.Or(
		positive("bore", law.Bore, unit.KindBore),
		positive("length", law.Length, unit.KindDistance),
		within("roughness", law.Roughness, 0, MaxRelativeRoughness*law.Bore, unit.KindRoughness),
		w.check(),
	)
	if err != nil {
		return err
	}
	d, nu := float64(law.Bore), w.KinematicM2S
	*p = Pipe{
		PipeLaw: law,
		wall:    newWall(float64(law.Roughness / law.Bore)),
		rePerQ:  4 / (math.Pi * d * nu),
		hPerG:   float64(law.Length) * nu * nu / (2 * unit.StandardGravity * d * d * d),
	}
	p.slope = p.hPerG * p.rePerQ
	return nil
}

// Loss is the head lost to friction and its derivative:
//
//	h = f (L/D) v²/(2g) = f Re² · L nu²/(2 g D³)
//
// with f as Friction has it. It is odd and rises strictly; at zero flow its
// slope is the laminar one, 128 nu L/(pi g D⁴).
func (p *Pipe) Loss(q unit.Flow) (h unit.Head, dhdq float64) {
	re := math.Abs(float64(q)) * p.rePerQ
	if re >= TurbulentStart { // the common case, without a call in between
		inverseF, share := colebrook(p.wall.perRe, re)
		slope := halfLn10 * inverseF
		root := slope * re
		return unit.Head(math.Copysign(root*root*p.hPerG, float64(q))), 2 * slope * root * (1 - share) * p.slope
	}
	g, dg := p.wall.number(re)
	return unit.Head(math.Copysign(g*p.hPerG, float64(q))), dg * p.slope
}

// Join is one pipe as long as both, where bore, roughness and water are the
// same.
func (p *Pipe) Join(next Law) (both Law, ok bool) {
	n, ok := next.(*Pipe)
	if !ok || n.Bore != p.Bore || n.Roughness != p.Roughness || n.rePerQ != p.rePerQ {
		return nil, false
	}
	sum := *p
	sum.Length += n.Length
	sum.hPerG += n.hPerG
	sum.slope += n.slope
	return &sum, true
}

// Reynolds is the Reynolds number at a flow, with the flow's sign.
func (p *Pipe) Reynolds(q unit.Flow) unit.Ratio { return unit.Ratio(float64(q) * p.rePerQ) }

// Friction is Darcy's friction factor at a flow; +Inf at zero flow.
func (p *Pipe) Friction(q unit.Flow) unit.Ratio {
	re := math.Abs(float64(q)) * p.rePerQ
	if re == 0 {
		return unit.Ratio(math.Inf(1))
	}
	g, _ := p.wall.number(re)
	return unit.Ratio(g / (re * re))
}

// Flow is the flow at which the pipe takes the head h, of h's sign: the
// Darcy-Weisbach and Colebrook-White formulas solved for the flow, which they
// give outright in the turbulent range,
//
//	Q = -pi/2 D² sqrt(2 g D h/L) log10( (e/D)/3.7 + 2.51 nu/(D sqrt(2 g D h/L)) )
//
// by the laminar formula below Re 2000, and by halving within the bridge.
func (p *Pipe) Flow(h unit.Head) unit.Flow {
	g := math.Abs(float64(h)) / p.hPerG
	var re float64
	switch {
	case math.IsNaN(g):
		return unit.Flow(math.NaN())
	case g <= 64*LaminarEnd:
		re = g / 64
	case g >= p.wall.g1:
		root := math.Sqrt(g) // Re sqrt f
		re = -2 * root * math.Log10(float64(p.Roughness/p.Bore)/3.7+2.51/root)
	default:
		re = bisect(LaminarEnd, TurbulentStart, func(x float64) bool {
			have, _ := p.wall.bridge(x)
			return have < g
		})
	}
	return unit.Flow(math.Copysign(re/p.rePerQ, float64(h)))
}

// bisect narrows low..high to neighbouring numbers around the place where
// below turns false; below must be true on the left of it only.
func bisect(low, high float64, below func(x float64) bool) float64 {
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if below(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low + (high-low)/2
}
