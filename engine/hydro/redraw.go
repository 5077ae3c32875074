package hydro

import (
	"slices"

	"plashet/engine/unit"
)

// Redraw is a pump's curve to be drawn again and again through points that
// move a little, in one place and without allocating: what a band needs, whose
// draws differ in what the points were read as.
type Redraw struct {
	Curve *Curve // as last drawn; a curve of its own
	// Points are how many the curve is drawn through; 0 for a curve from the box
	// alone.
	Points int

	q, h    []float64 // as the curve was given
	x, y, d []float64 // as drawn
	droops  bool      // its head rises somewhere, and goes on doing so
}

// Redraw makes a copy of the curve to be drawn again.
func (c *Curve) Redraw() *Redraw {
	out := *c
	out.head = hermite{slices.Clone(c.head.spans)}
	r := &Redraw{Curve: &out, droops: c.Droops()}
	for i := range c.head.spans {
		s := &c.head.spans[i]
		r.q, r.h = append(r.q, s.x0), append(r.h, s.y0)
	}
	last := c.head.last()
	r.q, r.h = append(r.q, last.x1), append(r.h, last.y1)
	r.x, r.y, r.d = slices.Clone(r.q), slices.Clone(r.h), make([]float64, len(r.q))
	if c.basis != CurveNameplate {
		r.Points = len(r.q)
	}
	return r
}

// Point gives a point of the curve as it was given.
func (r *Redraw) Point(i int) CurvePoint {
	return CurvePoint{Flow: unit.Flow(r.q[i]), Head: unit.Head(r.h[i])}
}

// Draw draws the curve through the points it was given, each flow and head in
// proportion to the ratios, each head then moved by its part of by (none: nil),
//
//	(flow q_i, head h_i + by_i),
//
// so that by says how far the reading was off and the ratios how far the pump
// is from its sheet. A head that would come to stand above the one before it is
// held level with it, unless the curve Droops, and none falls below nothing.
//
// A curve from the box alone has no points to move; its shape lies between its
// Band, and bend says where: -1 the low curve, 0 the estimate, 1 the high one
// (bend counts for no other curve). The power is not redrawn.
func (r *Redraw) Draw(flow, head unit.Ratio, by []unit.Head, bend float64) {
	for i, q := range r.q {
		r.x[i] = q * float64(flow)
		y := r.h[i]
		if by != nil {
			y += float64(by[i])
		}
		r.y[i] = max(0, y*float64(head))
		if i > 0 && !r.droops {
			r.y[i] = min(r.y[i], r.y[i-1])
		}
	}
	if r.Curve.basis == CurveNameplate {
		// H = Hmax (1 - (Q/Qmax)^n) has the end slopes -Hmax/Qmax (n = 1; else 0)
		// and -n Hmax/Qmax, and cubics mix as their ends do.
		steep := r.y[0] / r.x[1]
		r.d[0], r.d[1] = min(0, bend)*steep, -(2+bend)*steep
	} else {
		pchipSlopes(r.x, r.y, r.d)
	}
	r.Curve.head.fit(r.x, r.y, r.d)
	r.Curve.fall = r.y[0] / (r.x[len(r.x)-1] * r.x[len(r.x)-1])
}
