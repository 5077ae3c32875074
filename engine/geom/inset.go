package geom

import (
	"math"

	"plashet/engine/unit"
)

// Inset is the area left when the edge has moved inward by a distance: the part
// of the outline at least that far from its edge.
type Inset struct {
	Area unit.Area
	// Simple: the distance is within the range in which the closed form
	// A - P d + k d^2 holds, before the edge meets itself.
	Simple bool
	// Exact but for rounding. A smooth curve past its first event is not: it is
	// taken as a polygon of fine steps then, good to 0.3 % of the outline's area,
	// mostly to 0.1 %.
	Exact bool
}

// Event gives the inset up to which A(d) = A - P d + k d^2 holds, and k, which
// is the sum over the corners: tan(theta/2) where the edge turns inside by
// theta, -theta/2 where it turns outside by theta; pi for a smooth edge. For
// rectangle, circle, ellipse and convex polygons it is the first event itself
// (an edge vanishes, or the smallest radius of curvature is reached); for other
// outlines it may stop short of it, never past it but for the 2 % slack of a
// smooth curve's sampling. Source: Steiner's formula for parallel bodies, taken
// inward.
func (o *Outline) Event() (unit.Length, unit.Ratio) {
	d, k := o.shape.event()
	return unit.Length(d), unit.Ratio(k)
}

// InsetAt gives the area at least d inside the edge, d from 0 up; an *Error
// for a negative d or one that is no number. Nothing is left past the middle
// (area 0). Before the first event it is A - P d + k d^2; past it polygons stay
// exact (see shrink and parallel), the ellipse is integrated, and a smooth
// curve is taken as a polygon.
func (o *Outline) InsetAt(d unit.Length) (Inset, error) {
	if err := notNegative("inset", d, unit.KindDepth); err != nil {
		return Inset{}, err
	}
	ev, _ := o.shape.event()
	_, curved := o.shape.(smooth)
	simple := float64(d) <= ev
	return Inset{Area: unit.Area(o.shape.insets()(float64(d))), Simple: simple, Exact: simple || !curved}, nil
}

// Inradius gives the greatest inset that leaves any area: the radius of the
// largest circle that fits inside, to a billionth of the outline's size.
func (o *Outline) Inradius() unit.Length {
	if g, ok := o.shape.(polygon); ok && g.stages != nil {
		return unit.Length(g.stages[len(g.stages)-1].until)
	}
	inset := o.shape.insets()
	lo, _ := o.shape.event()
	// A circle of that radius has the whole area: none larger fits.
	hi := math.Sqrt(o.shape.area() / math.Pi)
	lo = min(lo, hi)
	for i := 0; i < 40 && hi-lo > sameSpot*hi; i++ {
		if mid := (lo + hi) / 2; inset(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return unit.Length(lo)
}

// InsetPiece is a range of insets over which the area is a quadratic:
// A(d) = Area - Edge (d - From) + K (d - From)^2 for From <= d <= Until. Area
// and K are in m2 and 1, Edge in m.
type InsetPiece struct {
	From, Until unit.Length
	Area        unit.Area
	Edge        unit.Length
	K           unit.Ratio
	Exact       bool // false: fitted, within pieceMisfit of the outline's area
}

// At gives the piece's area at d.
func (p InsetPiece) At(d unit.Length) unit.Area {
	x := float64(d - p.From)
	return p.Area + unit.Area(-float64(p.Edge)*x+float64(p.K)*x*x)
}

// pieceMisfit is how far, relative to the outline's area, a fitted quadratic
// may be from the area between its three points; pieceHalvings bounds how often
// a range is halved to get there.
const (
	pieceMisfit   = 2e-5
	pieceHalvings = 11
)

// InsetPieces gives the areas of all insets from 0 to d as quadratics, end to
// end, so that volumes between insets can be integrated exactly. Before the
// first event and for convex polygons they are the closed form; past it they
// are fitted through three points each and halved until four more between them
// agree. An *Error with CodeMiddle when d reaches past the middle.
func (o *Outline) InsetPieces(d unit.Length) ([]InsetPiece, error) {
	if err := notNegative("inset", d, unit.KindDepth); err != nil {
		return nil, err
	}
	to := float64(d)
	inset := o.shape.insets()
	if inset(to) <= 0 {
		r := o.Inradius()
		if d > r+unit.Length(sameSpot)*r {
			return nil, &Error{Code: CodeMiddle, Name: "inset", Found: unit.Of(d, unit.KindDepth), Limit: unit.Of(r, unit.KindDepth)}
		}
		to = min(to, float64(r))
	}
	if g, ok := o.shape.(polygon); ok && g.stages != nil {
		return g.stagePieces(to), nil
	}
	ev, k := o.shape.event()
	a, p := o.shape.area(), o.shape.perimeter()
	out := []InsetPiece{{0, unit.Length(min(ev, to)), unit.Area(a), unit.Length(p), unit.Ratio(k), true}}
	if to > ev {
		f := fitter{inset, pieceMisfit * a, out}
		f.fit(sampled{ev, inset(ev)}, sampled{(ev + to) / 2, inset((ev + to) / 2)}, sampled{to, inset(to)}, pieceHalvings)
		out = f.out
	}
	return out, nil
}

func (g polygon) stagePieces(to float64) []InsetPiece {
	var out []InsetPiece
	for i, s := range g.stages {
		if i > 0 && s.from >= to {
			break
		}
		out = append(out, InsetPiece{unit.Length(s.from), unit.Length(min(s.until, to)), unit.Area(s.area), unit.Length(s.edge), unit.Ratio(s.k), true})
	}
	return out
}

// fitter gathers quadratics that follow inset within misfit.
type fitter struct {
	inset  func(float64) float64
	misfit float64
	out    []InsetPiece
}

// sampled is the area at an inset.
type sampled struct{ d, area float64 }

// fit appends the quadratic through three evenly spaced samples, or halves the
// range until it agrees with the area at the quarters and near both ends.
func (f *fitter) fit(a, b, c sampled, halvings int) {
	h := c.d - a.d
	// A = a - e x + k x^2.
	k := 2 * (a.area - 2*b.area + c.area) / (h * h)
	e := (a.area-c.area)/h + k*h
	at := func(x float64) float64 { return a.area - e*x + k*x*x }
	q1, q3 := sampled{d: a.d + h/4}, sampled{d: a.d + 3*h/4}
	q1.area, q3.area = f.inset(q1.d), f.inset(q3.d)
	agrees := func(x float64) bool { return math.Abs(f.inset(a.d+x)-at(x)) <= f.misfit }
	if halvings == 0 || math.Abs(q1.area-at(h/4)) <= f.misfit && math.Abs(q3.area-at(3*h/4)) <= f.misfit && agrees(h/8) && agrees(7*h/8) {
		f.out = append(f.out, InsetPiece{unit.Length(a.d), unit.Length(c.d), unit.Area(a.area), unit.Length(e), unit.Ratio(k), false})
		return
	}
	f.fit(a, q1, b, halvings-1)
	f.fit(b, q3, c, halvings-1)
}
