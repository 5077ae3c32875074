package hydro

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// CurvePoint is one point of a pump's curve.
type CurvePoint struct {
	Flow  unit.Flow
	Head  unit.Head
	Watts unit.Power // electrical power there; 0 when not given
}

// PumpData is what is known of a pump's delivery.
type PumpData struct {
	Points  []CurvePoint // in any order
	Reading unit.Length  // how far a head may be off by reading the sheet; a rise up to this is made level
	BoxFlow unit.Flow    // flow printed on the box, at no head; 0 when not given
	MaxHead unit.Head    // greatest head printed on the box, at no flow; 0 when not given
	Watts   unit.Power   // one figure for the electrical power; 0 when not given
}

// CurveBasis says what a curve stands on.
type CurveBasis uint8

// The bases: four or more points, two or three, or only the box.
const (
	CurvePoints CurveBasis = iota
	CurveFew
	CurveNameplate
)

// Sources of the curve's shape.
var (
	SourcePCHIP = trace.Source{
		Title: "Fritsch and Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5 (1984) 300",
		Basis: trace.BasisLibrary,
		Note:  "the slope rule of scipy's PchipInterpolator; equal to it within 1e-8 in the outside checks",
	}
	SourceNameplate = trace.Source{
		Title: "common practice, no source",
		Basis: trace.BasisPractice,
		Note:  "H = Hmax (1 - (Q/Qmax)^2); the band runs from the straight line to the third power",
	}
)

// usualPoints is the number of points from which a curve is normal.
const usualPoints = 4

// Curve is a pump's head over its flow: smooth, and falling (never rising) but
// where it Droops.
type Curve struct {
	head  hermite
	fall  float64 // m for each (m³/s)²: how the continuation bends down
	power power
	basis CurveBasis
	low   *Curve
	high  *Curve
	notes []trace.Message
}

// NewCurve makes a pump's curve.
//
// Two or more points are joined by PCHIP (Fritsch-Butland slopes); the box's
// figures are then left aside. One point is joined with the box's flow (at no
// head) and greatest head (at no flow), unless it says the same. With no point, the box's two figures
// give the estimate H = Hmax (1 - (Q/Qmax)²) and a band, see Band. Anything
// less is an error with CodeCurveNone.
//
// Two points at one flow give CodeCurveDuplicate. A head that rises with the
// flow by no more than Reading is made level at the mean and comes with a
// caution; one that rises by up to DroopMost of the head at the least flow, in
// four points or more of which the last two fall below it, is a drooping curve,
// which is kept and comes with a caution; any other rise gives CodeCurveRise. Negative flows or heads, or
// no head above zero at all, give CodeRange; values that are not finite
// CodeNotFinite.
func NewCurve(d PumpData) (*Curve, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	points := slices.Clone(d.Points)
	if len(points) == 1 {
		for _, b := range boxPoints(d) {
			if off := b.Head - points[0].Head; b.Flow != points[0].Flow || off > d.Reading || -off > d.Reading {
				points = append(points, b)
			}
		}
	}
	switch {
	case len(points) >= 2:
		return pointCurve(points, d)
	case len(points) == 0 && d.BoxFlow > 0 && d.MaxHead > 0:
		return nameplateCurve(d), nil
	}
	return nil, fail(CodeCurveNone)
}

func (d PumpData) check() error {
	err := cmp.Or(
		notNegative("reading", d.Reading, unit.KindHead),
		notNegative("boxFlow", d.BoxFlow, unit.KindFlow),
		notNegative("maxHead", d.MaxHead, unit.KindHead),
		notNegative("watts", d.Watts, unit.KindPower),
	)
	for _, p := range d.Points {
		err = cmp.Or(err,
			notNegative("flow", p.Flow, unit.KindFlow),
			notNegative("head", p.Head, unit.KindHead),
			notNegative("watts", p.Watts, unit.KindPower),
		)
	}
	return err
}

// boxPoints are the box's figures as the two ends of a curve.
func boxPoints(d PumpData) []CurvePoint {
	var out []CurvePoint
	if d.MaxHead > 0 {
		out = append(out, CurvePoint{Head: d.MaxHead})
	}
	if d.BoxFlow > 0 {
		out = append(out, CurvePoint{Flow: d.BoxFlow})
	}
	return out
}

func pointCurve(points []CurvePoint, d PumpData) (*Curve, error) {
	slices.SortFunc(points, func(a, b CurvePoint) int {
		switch {
		case a.Flow < b.Flow:
			return -1
		case a.Flow > b.Flow:
			return 1
		}
		return 0
	})
	q, h := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		q[i], h[i] = float64(p.Flow), float64(p.Head)
		if i > 0 && q[i] == q[i-1] {
			return nil, fail(CodeCurveDuplicate, trace.Num("flow", p.Flow, unit.KindFlow))
		}
	}
	if err := positive("head", unit.Head(slices.Max(h)), unit.KindHead); err != nil {
		return nil, err
	}
	c := &Curve{}
	rise, at := greatestRise(h)
	told := []trace.Arg{trace.Num("flow", points[at].Flow, unit.KindFlow), trace.Num("rise", unit.Head(rise), unit.KindHead)}
	switch most, drooping := droop(h, rise); {
	case rise > float64(d.Reading) && drooping:
		c.note(CautionCurveDroop, told...)
	case rise > float64(d.Reading):
		return nil, fail(CodeCurveRise, append(told, trace.Num("limit", unit.Head(most), unit.KindHead))...)
	case rise > 0:
		level(h)
		c.note(CautionCurveLevelled, trace.Num("rise", unit.Head(rise), unit.KindHead), trace.Num("limit", d.Reading, unit.KindHead))
	}
	if len(points) < usualPoints {
		c.basis = CurveFew
		c.note(CautionCurveFew, trace.Num("count", unit.Ratio(len(points)), unit.KindCount))
	}
	c.setHead(newPCHIP(q, h))
	c.setPower(points, d.Watts)
	return c, nil
}

func nameplateCurve(d PumpData) *Curve {
	c := boxCurve(d, 2)
	c.low, c.high = boxCurve(d, 1), boxCurve(d, 3)
	c.note(CautionCurveNameplate, trace.Num("flow", d.BoxFlow, unit.KindFlow), trace.Num("head", d.MaxHead, unit.KindHead))
	return c
}

// boxCurve is H = Hmax (1 - (Q/Qmax)^n) for n 1, 2 or 3, which one cubic holds
// exactly.
func boxCurve(d PumpData, n float64) *Curve {
	q, h := float64(d.BoxFlow), float64(d.MaxHead)
	start := 0.0
	if n == 1 {
		start = -h / q
	}
	c := &Curve{basis: CurveNameplate}
	c.setHead(newHermite([]float64{0, q}, []float64{h, 0}, []float64{start, -n * h / q}))
	c.setPower(nil, d.Watts)
	return c
}

func (c *Curve) setHead(h hermite) {
	c.head = h
	q := h.last().x1
	c.fall = h.first().y0 / (q * q)
}

func (c *Curve) note(code string, args ...trace.Arg) {
	c.notes = append(c.notes, trace.Message{Code: code, Args: args})
}

// Head is the head that the pump gives at a flow, its derivative in s/m², and
// whether the flow lies within the pump's data. Outside them there is no
// figure: the curve goes on with its end's slope and bends down (up, on the
// left) by a parabola, smooth and falling strictly, for a solver to walk on; an
// answer there may only be told as "more than" the end of the data.
func (c *Curve) Head(q unit.Flow) (h unit.Head, dhdq float64, inside bool) {
	x := float64(q)
	first, last := c.head.first(), c.head.last()
	switch {
	case x >= first.x0 && x <= last.x1:
		y, dy := c.head.at(x)
		return unit.Head(y), dy, true
	case x > last.x1:
		u := x - last.x1
		return unit.Head(last.y1 + u*(last.d1-u*c.fall)), last.d1 - 2*c.fall*u, false
	case x < first.x0:
		u, slope := first.x0-x, min(first.d0, 0) // a drooping curve does not go on downward
		return unit.Head(first.y0 + u*(c.fall*u-slope)), slope - 2*c.fall*u, false
	}
	return unit.Head(math.NaN()), math.NaN(), false
}

// Flow is the flow at which the pump gives a head, and whether that lies
// within its data; on a level stretch of the curve it is the least such flow.
// A curve that Droops has several, which Flow does not tell apart.
// Outside the data it follows the continuation that Head describes.
func (c *Curve) Flow(h unit.Head) (q unit.Flow, inside bool) {
	y := float64(h)
	first, last := c.head.first(), c.head.last()
	switch {
	case y > first.y0:
		return unit.Flow(first.x0 - reach(y-first.y0, -first.d0, c.fall)), false
	case y < last.y1:
		return unit.Flow(last.x1 + reach(last.y1-y, -last.d1, c.fall)), false
	}
	for i := range c.head.spans {
		if s := &c.head.spans[i]; y >= s.y1 {
			return unit.Flow(s.solve(y)), true
		}
	}
	return unit.Flow(math.NaN()), false
}

// reach is the positive root u of slope·u + bend·u² = drop.
func reach(drop, slope, bend float64) float64 {
	return 2 * drop / (slope + math.Sqrt(slope*slope+4*bend*drop))
}

// Range is what the data span: the least and greatest flow, and the head at
// each.
func (c *Curve) Range() (least, greatest unit.Flow, atLeast, atGreatest unit.Head) {
	first, last := c.head.first(), c.head.last()
	return unit.Flow(first.x0), unit.Flow(last.x1), unit.Head(first.y0), unit.Head(last.y1)
}

// Basis says what the curve stands on.
func (c *Curve) Basis() CurveBasis { return c.basis }

// Cautions are the cautions that come with the curve, nil for a normal one.
func (c *Curve) Cautions() []trace.Message { return slices.Clone(c.notes) }

// Band gives the curves between which the true one may lie, for a curve from
// the box alone: the straight line between its two figures below, and
// H = Hmax (1 - (Q/Qmax)³) above. For a curve from points it gives the curve
// itself twice: how far the points are off is another question.
func (c *Curve) Band() (low, high *Curve) {
	if c.low == nil {
		return c, c
	}
	return c.low, c.high
}
