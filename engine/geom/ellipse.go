package geom

import "math"

// ellipse has half axes a along x and b along y and its centre at (a, b).
type ellipse struct{ a, b float64 }

// area is pi a b.
func (e ellipse) area() float64 { return math.Pi * e.a * e.b }

// perimeter is 4 a E(k), a the longer half axis, k^2 = 1 - (b/a)^2.
func (e ellipse) perimeter() float64 {
	long, short := max(e.a, e.b), min(e.a, e.b)
	return 4 * long * completeE(short/long)
}

func (e ellipse) centroid() Vec2         { return Vec2{e.a, e.b} }
func (e ellipse) bounds() Rect           { return Rect{Max: Vec2{2 * e.a, 2 * e.b}} }
func (e ellipse) scaled(k float64) shape { return ellipse{e.a * k, e.b * k} }

// event is the smallest radius of curvature, short^2/long, at the ends of the
// long axis; k is pi as for every smooth convex outline (Steiner's formula).
func (e ellipse) event() (d, k float64) {
	long, short := max(e.a, e.b), min(e.a, e.b)
	return short * short / long, math.Pi
}

func (e ellipse) insets() func(float64) float64 { return e.inset }

// inset past the event: the parallel curve crosses itself on the long axis, and
// only its part between the crossings bounds water. A point of the curve at
// angle t, moved in by d, is (cos t (a - d b/w), sin t (b - d a/w)) with
// w = sqrt(a^2 sin^2 t + b^2 cos^2 t); it lies on the long axis where w = d a/b.
// The area is four times the integral of y dx over a quarter between the
// crossing and the short axis.
func (e ellipse) inset(d float64) float64 {
	a, b := max(e.a, e.b), min(e.a, e.b)
	if d >= b {
		return 0
	}
	if ev, k := e.event(); d <= ev {
		return max(0, e.area()-e.perimeter()*d+k*d*d)
	}
	t0 := math.Asin(min(1, math.Sqrt((d*d*a*a/(b*b)-b*b)/((a-b)*(a+b)))))
	quarter := integrate(func(t float64) float64 {
		s, c := math.Sincos(t)
		w2 := a*a*s*s + b*b*c*c
		w := math.Sqrt(w2)
		y := s * (b - d*a/w)
		dx := -s*(a-d*b/w) + c*d*b*(a*a-b*b)*s*c/(w2*w)
		return -y * dx
	}, t0, math.Pi/2, 16)
	return max(0, 4*quarter)
}

func (e ellipse) polyline(sag float64) []Vec2 {
	// A chord over an angle h of the circumscribed circle bows by a(1 - cos h/2);
	// squeezing the circle to the ellipse only lessens it.
	long := max(e.a, e.b)
	n := max(12, int(math.Ceil(math.Pi/math.Acos(max(0, 1-sag/long)))))
	out := make([]Vec2, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = Vec2{e.a + e.a*c, e.b + e.b*s}
	}
	return out
}
