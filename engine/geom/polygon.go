package geom

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

// maxPoints bounds the corners read: the search for crossings grows with their
// square.
const maxPoints = 500

// sameSpot is the distance, relative to the outline's size, within which two
// points count as one and a point counts as lying on an edge: a hair on the
// ground, far above the rounding of the coordinates.
const sameSpot = 1e-9

// polygon is a simple polygon with its inside on the left.
type polygon struct {
	p []Vec2
	// Of a convex polygon its insets, stage by stage; nil for another.
	stages []stage
	// See event.
	first, k float64
}

// Polygon gives the outline with straight edges between the points, in order
// round the edge, either way; the last is joined to the first. A point that
// repeats its neighbour (a corner taped twice, the first point again at the
// end) is passed over. An *Error is returned for fewer than three different
// points or more than 500, for coordinates that are not finite or beyond
// 100 km, for edges that cross or touch (with the two edges), and for an
// outline without area.
func Polygon(points []Vec2) (*Outline, error) {
	p, _, err := simple(points)
	if err != nil {
		return nil, err
	}
	return &Outline{newPolygon(p)}, nil
}

// simple checks the points as Polygon promises and gives them anticlockwise
// without repeats; edge tells, for each edge of these, which edge as given it
// is.
func simple(points []Vec2) (p []Vec2, edge []int, err error) {
	if len(points) > maxPoints {
		return nil, nil, countError(len(points), maxPoints)
	}
	for i, v := range points {
		for _, c := range [...]struct {
			name string
			v    float64
		}{{"x", v.X}, {"y", v.Y}} {
			if !finite(c.v) {
				return nil, nil, &Error{Code: CodeNotFinite, Name: c.name, At: i, Found: plan(c.v)}
			}
			if math.Abs(c.v) > maxPlan {
				return nil, nil, &Error{Code: CodeRange, Name: c.name, At: i, Found: plan(c.v), Limit: plan(math.Copysign(maxPlan, c.v))}
			}
		}
	}
	if len(points) < 3 {
		return nil, nil, countError(len(points), 3)
	}
	box := rectOf(points)
	size := box.Max.sub(box.Min).norm()
	hair := sameSpot * size
	for i, v := range points {
		if len(p) > 0 && v.distance(p[len(p)-1]) <= hair {
			continue
		}
		p, edge = append(p, v), append(edge, i)
	}
	for len(p) > 1 && p[len(p)-1].distance(p[0]) <= hair {
		p, edge = p[:len(p)-1], edge[:len(edge)-1]
	}
	if len(p) < 3 || size < minPlan {
		return nil, nil, countError(len(p), 3)
	}
	if i, j, met := meeting(p, hair); met {
		return nil, nil, &Error{Code: CodeCrosses, At: edge[i], Other: edge[j]}
	}
	a := shoelace(p)
	if math.Abs(a) <= hair*size {
		return nil, nil, &Error{Code: CodeFlat, Found: unit.Of(unit.Area(math.Abs(a)), unit.KindArea)}
	}
	if a < 0 {
		slices.Reverse(p)
		// The edge that left a point now ends there.
		last := len(edge) - 1
		slices.Reverse(edge[:last])
	}
	return p, edge, nil
}

func plan(v float64) unit.Value { return unit.Of(unit.Length(v), unit.KindPlan) }

func countError(found, limit int) error {
	return &Error{
		Code: CodePoints, Name: "points",
		Found: unit.Of(unit.Ratio(found), unit.KindCount), Limit: unit.Of(unit.Ratio(limit), unit.KindCount),
	}
}

// meeting finds two edges that share a point they should not: edges apart that
// come within a hair, or neighbours that fold back on each other.
func meeting(p []Vec2, hair float64) (i, j int, met bool) {
	n := len(p)
	for i := range n {
		a, b := p[i], p[(i+1)%n]
		lo, hi := minVec(a, b), maxVec(a, b)
		for j := i + 1; j < n; j++ {
			c, d := p[j], p[(j+1)%n]
			switch {
			case j == i+1:
				if foldsBack(a, b, d, hair) {
					return i, j, true
				}
			case i == 0 && j == n-1:
				if foldsBack(c, d, b, hair) {
					return i, j, true
				}
			default:
				if max(c.X, d.X) < lo.X-hair || min(c.X, d.X) > hi.X+hair ||
					max(c.Y, d.Y) < lo.Y-hair || min(c.Y, d.Y) > hi.Y+hair {
					continue
				}
				if gap(a, b, c, d) <= hair {
					return i, j, true
				}
			}
		}
	}
	return 0, 0, false
}

// foldsBack tells that the path a-b-c turns round on itself at b.
func foldsBack(a, b, c Vec2, hair float64) bool {
	if b.sub(a).dot(c.sub(b)) >= 0 {
		return false
	}
	return toSegment(c, a, b) <= hair || toSegment(a, b, c) <= hair
}

// gap is the distance between the segments a-b and c-d.
func gap(a, b, c, d Vec2) float64 {
	ab, cd := b.sub(a), d.sub(c)
	s1, s2 := ab.cross(c.sub(a)), ab.cross(d.sub(a))
	s3, s4 := cd.cross(a.sub(c)), cd.cross(b.sub(c))
	if (s1 > 0) != (s2 > 0) && (s3 > 0) != (s4 > 0) && s1 != s2 && s3 != s4 {
		return 0
	}
	return min(toSegment(a, c, d), toSegment(b, c, d), toSegment(c, a, b), toSegment(d, a, b))
}

// toSegment is the distance from v to the segment a-b.
func toSegment(v, a, b Vec2) float64 {
	ab := b.sub(a)
	l2 := ab.dot(ab)
	if l2 == 0 {
		return v.distance(a)
	}
	t := v.sub(a).dot(ab) / l2
	return v.distance(along(a, b, min(1, max(0, t))))
}

func minVec(a, b Vec2) Vec2 { return Vec2{min(a.X, b.X), min(a.Y, b.Y)} }
func maxVec(a, b Vec2) Vec2 { return Vec2{max(a.X, b.X), max(a.Y, b.Y)} }

// shoelace gives the signed area: half the sum of cross products, taken about
// the first point so that an outline far from the origin loses no digits.
func shoelace(p []Vec2) float64 {
	sum := 0.0
	for i := 1; i+1 < len(p); i++ {
		sum += p[i].sub(p[0]).cross(p[i+1].sub(p[0]))
	}
	return sum / 2
}

func newPolygon(p []Vec2) polygon {
	g := polygon{p: p}
	convex := true
	for i := range p {
		convex = convex && turn(p, i) > -straight
	}
	if convex {
		g.stages = shrink(p)
		g.first, g.k = g.stages[0].until, g.stages[0].k
		return g
	}
	g.first, g.k = certain(p)
	return g
}

// straight is the turn, in radians, that rounding may leave at a corner on a
// straight line.
const straight = 1e-9

// turn is the angle by which the edge turns left at point i, in -pi..pi.
func turn(p []Vec2, i int) float64 {
	n := len(p)
	in, out := p[i].sub(p[(i+n-1)%n]), p[(i+1)%n].sub(p[i])
	return math.Atan2(in.cross(out), in.dot(out))
}

func (g polygon) area() float64 { return shoelace(g.p) }

func (g polygon) perimeter() float64 {
	sum := 0.0
	for i, v := range g.p {
		sum += v.distance(g.p[(i+1)%len(g.p)])
	}
	return sum
}

func (g polygon) centroid() Vec2 {
	o := g.p[0]
	var c Vec2
	a := 0.0
	for i := 1; i+1 < len(g.p); i++ {
		u, v := g.p[i].sub(o), g.p[i+1].sub(o)
		w := u.cross(v)
		a += w
		c = c.add(u.add(v).scale(w / 3))
	}
	return o.add(c.scale(1 / a))
}

func (g polygon) bounds() Rect { return rectOf(g.p) }

func (g polygon) scaled(k float64) shape {
	q := make([]Vec2, len(g.p))
	for i, v := range g.p {
		q[i] = v.scale(k)
	}
	return newPolygon(q)
}

func (g polygon) polyline(float64) []Vec2 { return append([]Vec2(nil), g.p...) }

func (g polygon) event() (d, k float64) { return g.first, g.k }

// certain gives, for a polygon with inward corners, a distance short of the
// first event for certain: no edge vanishes before it, and edges that are not
// neighbours are at least twice it apart. An outward corner takes tan(theta/2)
// d^2 off the strip along its edges, an inward corner adds a sector theta/2 d^2
// to it.
func certain(p []Vec2) (d, k float64) {
	n := len(p)
	tan := make([]float64, n)
	for i := range p {
		if t := turn(p, i); t > 0 {
			tan[i] = math.Tan(t / 2)
			k += tan[i]
		} else {
			k += t / 2
		}
	}
	d = math.Inf(1)
	for i, v := range p {
		w := p[(i+1)%n]
		if s := tan[i] + tan[(i+1)%n]; s > 0 {
			d = min(d, v.distance(w)/s)
		}
		for j := i + 2; j < n && j-i < n-1; j++ {
			d = min(d, gap(v, w, p[j], p[(j+1)%n])/2)
		}
	}
	return d, k
}

func (g polygon) insets() func(float64) float64 { return g.inset }

func (g polygon) inset(d float64) float64 {
	switch {
	case g.stages != nil:
		return areaAt(g.stages, d)
	case d <= g.first:
		return g.area() - g.perimeter()*d + g.k*d*d
	}
	return parallel(g.p, d)
}
