package geom

import (
	"math"

	"plashet/engine/unit"
)

// Vec2 is a point in plan, in metres.
type Vec2 struct{ X, Y float64 }

func (a Vec2) add(b Vec2) Vec2         { return Vec2{a.X + b.X, a.Y + b.Y} }
func (a Vec2) sub(b Vec2) Vec2         { return Vec2{a.X - b.X, a.Y - b.Y} }
func (a Vec2) scale(k float64) Vec2    { return Vec2{a.X * k, a.Y * k} }
func (a Vec2) dot(b Vec2) float64      { return a.X*b.X + a.Y*b.Y }
func (a Vec2) cross(b Vec2) float64    { return a.X*b.Y - a.Y*b.X }
func (a Vec2) norm() float64           { return math.Hypot(a.X, a.Y) }
func (a Vec2) left() Vec2              { return Vec2{-a.Y, a.X} } // a quarter turn anticlockwise
func (a Vec2) distance(b Vec2) float64 { return a.sub(b).norm() }
func (a Vec2) mid(b Vec2) Vec2         { return Vec2{(a.X + b.X) / 2, (a.Y + b.Y) / 2} }
func along(a, b Vec2, t float64) Vec2  { return Vec2{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }
func direction(a, b Vec2) (Vec2, float64) {
	d := b.sub(a)
	n := d.norm()
	return d.scale(1 / n), n
}

// Rect is the smallest rectangle along the axes round a shape, in metres.
type Rect struct{ Min, Max Vec2 }

func (r *Rect) take(p Vec2) {
	r.Min = Vec2{min(r.Min.X, p.X), min(r.Min.Y, p.Y)}
	r.Max = Vec2{max(r.Max.X, p.X), max(r.Max.Y, p.Y)}
}

func rectOf(ps []Vec2) Rect {
	r := Rect{ps[0], ps[0]}
	for _, p := range ps[1:] {
		r.take(p)
	}
	return r
}

// Outline is a closed shape in plan that does not cross itself: what the water
// line, or the edge of a shelf, draws on the ground. Build one with Rectangle,
// Circle, Ellipse, Polygon or SmoothCurve.
type Outline struct{ shape shape }

// shape is what each kind of outline knows of itself. All in metres; depths of
// inset grow inward.
type shape interface {
	area() float64
	perimeter() float64
	centroid() Vec2
	bounds() Rect
	scaled(k float64) shape
	// event is the inset up to which A(d) = A - P d + k d^2 holds for certain,
	// and that k.
	event() (d, k float64)
	// insets gives the function that tells the area left by an inset, at any
	// inset from 0 up. It may remember what it has worked out: not to be shared.
	insets() func(d float64) float64
	// polyline follows the edge with chords no farther from it than sag.
	polyline(sag float64) []Vec2
}

// Area gives the enclosed area.
func (o *Outline) Area() unit.Area { return unit.Area(o.shape.area()) }

// Perimeter gives the length of the edge.
func (o *Outline) Perimeter() unit.Length { return unit.Length(o.shape.perimeter()) }

// Centroid gives the centre of the area.
func (o *Outline) Centroid() Vec2 { return o.shape.centroid() }

// Bounds gives the smallest rectangle along the axes round the outline.
func (o *Outline) Bounds() Rect { return o.shape.bounds() }

// Scaled gives the outline enlarged by k in plan about the origin (k above 0
// and finite; an *Error outside): with k = sqrt(measured area / drawn area) it
// is the drawn shape brought to the measured area.
func (o *Outline) Scaled(k unit.Ratio) (*Outline, error) {
	if err := notNegative("scale", k, unit.KindRatio); err != nil {
		return nil, err
	}
	if k == 0 {
		return nil, &Error{Code: CodeRange, Name: "scale", Found: unit.Of(k, unit.KindRatio)}
	}
	return &Outline{o.shape.scaled(float64(k))}, nil
}

// Polyline gives points round the edge, anticlockwise, the first not repeated,
// so dense that no chord is farther than sag from the edge (corners stay
// corners). Sag is held to at least a millionth of the outline's size.
func (o *Outline) Polyline(sag unit.Length) []Vec2 {
	r := o.shape.bounds()
	least := 1e-6 * r.Max.sub(r.Min).norm()
	s := float64(sag)
	if !(s > least) {
		s = least
	}
	return o.shape.polyline(s)
}

// maxPlan is the greatest coordinate read, in metres: no pond is larger, and
// products of coordinates stay exact enough.
const maxPlan = 1e5

// Rectangle gives a rectangle with a corner at the origin, length along x. Both
// sizes above 0; an *Error outside.
func Rectangle(length, width unit.Length) (*Outline, error) {
	if err := checkSizes(length, width); err != nil {
		return nil, err
	}
	l, w := float64(length), float64(width)
	return &Outline{newPolygon([]Vec2{{0, 0}, {l, 0}, {l, w}, {0, w}})}, nil
}

// Circle gives a circle that touches both axes from above. Diameter above 0;
// an *Error outside.
func Circle(diameter unit.Length) (*Outline, error) { return Ellipse(diameter, diameter) }

// Ellipse gives an ellipse with its length along x (either may be the longer)
// that touches both axes from above. Both above 0; an *Error outside.
func Ellipse(length, width unit.Length) (*Outline, error) {
	if err := checkSizes(length, width); err != nil {
		return nil, err
	}
	return &Outline{ellipse{a: float64(length) / 2, b: float64(width) / 2}}, nil
}

func checkSizes(length, width unit.Length) error {
	for _, s := range [...]struct {
		name string
		v    unit.Length
	}{{"length", length}, {"width", width}} {
		if err := notNegative(s.name, s.v, unit.KindPlan); err != nil {
			return err
		}
		if s.v < minPlan || s.v > maxPlan {
			limit := unit.Length(minPlan)
			if s.v > minPlan {
				limit = maxPlan
			}
			return &Error{Code: CodeRange, Name: s.name, Found: unit.Of(s.v, unit.KindPlan), Limit: unit.Of(limit, unit.KindPlan)}
		}
	}
	return nil
}

// minPlan is the smallest size of an outline, in metres: below a tenth of a
// millimetre nothing was built.
const minPlan = 1e-4
