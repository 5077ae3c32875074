package geom

import "math"

// smooth is a closed curve of cubic pieces, anticlockwise, its tangent turning
// without a jump.
type smooth struct {
	arcs       []cubic
	steps      []int   // into how many chords each piece is cut
	fine       []Vec2  // points of the curve for what has no closed form: see fineSag
	size, edge float64 // area and perimeter
	reach      float64 // the inset up to which the edge moves in without meeting itself
}

// cubic is one piece as a Bezier curve.
type cubic [4]Vec2

func (c cubic) at(t float64) Vec2 {
	s := 1 - t
	return c[0].scale(s * s * s).add(c[1].scale(3 * s * s * t)).add(c[2].scale(3 * s * t * t)).add(c[3].scale(t * t * t))
}

func (c cubic) rate(t float64) Vec2 {
	s := 1 - t
	return c[1].sub(c[0]).scale(3 * s * s).add(c[2].sub(c[1]).scale(6 * s * t)).add(c[3].sub(c[2]).scale(3 * t * t))
}

// fineSag is how far, relative to the square root of the area, a chord of the
// fine points may lie from the curve; leastSteps and mostSteps bound the chords
// of a piece.
const (
	fineSag    = 5e-4
	leastSteps = 3
	mostSteps  = 24
)

// steps is into how many chords the piece is cut so that none lies farther from
// it than sag: the chord of a step 1/n bows by at most |second derivative|/(8
// n^2), and that derivative runs straight from end to end.
func (c cubic) steps(sag float64) int {
	bend := max(c.bend(0).norm(), c.bend(1).norm())
	return int(math.Ceil(math.Sqrt(bend / (8 * sag))))
}

// SmoothCurve gives the smooth outline through the points, in order round the
// edge, either way. It is the closed Catmull-Rom curve with centripetal
// parameters: it passes through every point, stays near the chords, makes no
// loop or cusp between two points, and moving a point moves only the four
// nearest pieces. Points are refused as in Polygon, also when it is the curve
// between them that crosses itself. Source: Catmull and Rom, A class of local
// interpolating splines (1974); Yuksel, Schaefer and Keyser, Parameterization
// and applications of Catmull-Rom curves, Computer-Aided Design 43 (2011).
func SmoothCurve(points []Vec2) (*Outline, error) {
	p, edge, err := simple(points)
	if err != nil {
		return nil, err
	}
	s := newSmooth(p)
	box := rectOf(s.fine)
	if i, j, met := meeting(s.fine, sameSpot*box.Max.sub(box.Min).norm()); met {
		return nil, &Error{Code: CodeCrosses, At: edge[s.pieceOf(i)], Other: edge[s.pieceOf(j)]}
	}
	return &Outline{s}, nil
}

func newSmooth(p []Vec2) smooth {
	n := len(p)
	s := smooth{arcs: make([]cubic, n), steps: make([]int, n)}
	for i := range p {
		s.arcs[i] = catmullRom(p[(i+n-1)%n], p[i], p[(i+1)%n], p[(i+2)%n])
	}
	s.size, s.edge = s.enclosed(), s.around()
	sag := fineSag * math.Sqrt(shoelace(p))
	for i, c := range s.arcs {
		s.steps[i] = min(mostSteps, max(leastSteps, c.steps(sag)))
		for k := range s.steps[i] {
			s.fine = append(s.fine, c.at(float64(k)/float64(s.steps[i])))
		}
	}
	s.reach = s.selfReach()
	return s
}

// pieceOf tells which piece the fine step i lies on.
func (s smooth) pieceOf(i int) int {
	for piece, n := range s.steps {
		if i < n {
			return piece
		}
		i -= n
	}
	return len(s.steps) - 1
}

// catmullRom gives the piece from p1 to p2 as a Bezier curve. With knots apart
// by the square roots d1, d2, d3 of the three chords, its tangent at p1 is
//
//	(p1-p0)/d1 - (p2-p0)/(d1+d2) + (p2-p1)/d2,
//
// likewise at p2, and the inner points lie d2/3 along them.
func catmullRom(p0, p1, p2, p3 Vec2) cubic {
	d1, d2, d3 := math.Sqrt(p0.distance(p1)), math.Sqrt(p1.distance(p2)), math.Sqrt(p2.distance(p3))
	m1 := p1.sub(p0).scale(1 / d1).sub(p2.sub(p0).scale(1 / (d1 + d2))).add(p2.sub(p1).scale(1 / d2))
	m2 := p2.sub(p1).scale(1 / d2).sub(p3.sub(p1).scale(1 / (d2 + d3))).add(p3.sub(p2).scale(1 / d3))
	return cubic{p1, p1.add(m1.scale(d2 / 3)), p2.sub(m2.scale(d2 / 3)), p2}
}

func (s smooth) area() float64      { return s.size }
func (s smooth) perimeter() float64 { return s.edge }

// enclosed gives the area by Green's theorem, half the integral of x dy - y dx; on a cubic piece
// that is a polynomial of degree 5, which five Gauss points integrate exactly.
func (s smooth) enclosed() float64 {
	o := s.arcs[0][0]
	sum := 0.0
	for _, c := range s.arcs {
		sum += integrate(func(t float64) float64 { return c.at(t).sub(o).cross(c.rate(t)) }, 0, 1, 1) / 2
	}
	return sum
}

// centroid by Green's theorem: a piece sweeps triangles from the first point
// whose centres lie at two thirds of the way; degree 8, exact.
func (s smooth) centroid() Vec2 {
	o := s.arcs[0][0]
	var m Vec2
	for _, c := range s.arcs {
		m.X += integrate(func(t float64) float64 { v := c.at(t).sub(o); return v.X * v.cross(c.rate(t)) / 3 }, 0, 1, 1)
		m.Y += integrate(func(t float64) float64 { v := c.at(t).sub(o); return v.Y * v.cross(c.rate(t)) / 3 }, 0, 1, 1)
	}
	return o.add(m.scale(1 / s.area()))
}

// around adds up the lengths of the pieces.
func (s smooth) around() float64 {
	sum := 0.0
	for _, c := range s.arcs {
		sum += c.length()
	}
	return sum
}

// lengthTold is how near to itself a piece's length must come when its panels
// are halved, relative to it; mostPanels ends that at a near cusp, where the
// speed all but vanishes and the halves gain little.
const (
	lengthTold = 1e-9
	mostPanels = 512
)

// length integrates the speed over panels of five Gauss points each.
func (c cubic) length() float64 {
	speed := func(t float64) float64 { return c.rate(t).norm() }
	last := integrate(speed, 0, 1, 4)
	for n := 8; n <= mostPanels; n *= 2 {
		next := integrate(speed, 0, 1, n)
		if math.Abs(next-last) <= lengthTold*next {
			return next
		}
		last = next
	}
	return last
}

// bounds takes the ends of the pieces and the places where a coordinate's rate
// (a quadratic) is nought.
func (s smooth) bounds() Rect {
	r := Rect{s.arcs[0][0], s.arcs[0][0]}
	for _, c := range s.arcs {
		r.take(c[0])
		a, b, d := c[1].sub(c[0]), c[2].sub(c[1]), c[3].sub(c[2])
		for _, t := range append(quadraticRoots(a.X-2*b.X+d.X, 2*(b.X-a.X), a.X), quadraticRoots(a.Y-2*b.Y+d.Y, 2*(b.Y-a.Y), a.Y)...) {
			if t > 0 && t < 1 {
				r.take(c.at(t))
			}
		}
	}
	return r
}

// quadraticRoots gives the real roots of a t^2 + b t + c without cancellation.
func quadraticRoots(a, b, c float64) []float64 {
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	var out []float64
	if a != 0 {
		out = append(out, q/a)
	}
	if q != 0 {
		out = append(out, c/q)
	}
	return out
}

func (s smooth) scaled(k float64) shape {
	q := smooth{
		arcs: make([]cubic, len(s.arcs)), steps: s.steps, fine: make([]Vec2, len(s.fine)),
		size: s.size * k * k, edge: s.edge * k, reach: s.reach * k,
	}
	for i, c := range s.arcs {
		for j, v := range c {
			q.arcs[i][j] = v.scale(k)
		}
	}
	for i, v := range s.fine {
		q.fine[i] = v.scale(k)
	}
	return q
}

// selfReach finds how far the edge can move in before it meets itself: the
// least radius of a circle that touches the edge from inside at one place and
// reaches it again at another, (q-p)^2 / (2 (q-p).n); as q nears p that is the
// radius of curvature (Federer, Curvature measures, 1959, theorem 4.18). It is
// sought over pairs of fine points and, for the curvature, along each piece;
// reachSlack allows for what lies between them.
func (s smooth) selfReach() float64 {
	reach := math.Inf(1)
	for i, c := range s.arcs {
		h := 1 / float64(s.steps[i])
		for k := range s.steps[i] {
			t := float64(k) * h
			p, v := c.at(t), c.rate(t)
			nrm := v.left().scale(1 / v.norm())
			for _, q := range s.fine {
				w := q.sub(p)
				if up := w.dot(nrm); up > 0 {
					reach = min(reach, w.dot(w)/(2*up))
				}
			}
			// Curvature twice on each step, and on both sides of each joint of
			// pieces, where it may jump.
			for _, u := range [...]float64{t, t + h/2, t + h} {
				v := c.rate(u)
				if turning := v.cross(c.bend(u)); turning > 0 {
					speed := v.norm()
					reach = min(reach, speed*speed*speed/turning)
				}
			}
		}
	}
	return reach * (1 - reachSlack)
}

const reachSlack = 0.02

// bend is the second derivative.
func (c cubic) bend(t float64) Vec2 {
	a := c[2].sub(c[1].scale(2)).add(c[0])
	b := c[3].sub(c[2].scale(2)).add(c[1])
	return a.scale(6 * (1 - t)).add(b.scale(6 * t))
}

// event: a closed curve that turns once round has k = pi (Steiner's formula).
func (s smooth) event() (d, k float64) { return s.reach, math.Pi }

// insets past the event take the curve as the polygon of its fine points, by a
// factor that fits it to the closed form at the event, so that the area has no
// jump there. The chords lie within 0.05 % of the outline's size from the curve,
// so the area is good to 0.3 % of the whole, mostly 0.1 %.
func (s smooth) insets() func(float64) float64 {
	closed := func(d float64) float64 { return max(0, s.size-s.edge*d+math.Pi*d*d) }
	fit := 0.0
	return func(d float64) float64 {
		if d <= s.reach {
			return closed(d)
		}
		if fit == 0 {
			fit = closed(s.reach) / parallel(s.fine, s.reach)
			if !finite(fit) {
				fit = 1 // nothing is left at the event: nothing to fit
			}
		}
		return fit * parallel(s.fine, d)
	}
}

func (s smooth) polyline(sag float64) []Vec2 {
	var out []Vec2
	for _, c := range s.arcs {
		n := max(1, min(1000, c.steps(sag)))
		for k := range n {
			out = append(out, c.at(float64(k)/float64(n)))
		}
	}
	return out
}
