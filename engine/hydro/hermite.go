package hydro

import "math"

// hermite is a piecewise cubic through given points with given slopes. Between
// the points it is smooth; beyond them it is not defined here.
type hermite struct{ spans []span }

// span is one cubic from x0 to x1: y0 + s (d0 + s (c2 + s c3)), s = x - x0.
type span struct{ x0, x1, y0, y1, d0, d1, c2, c3 float64 }

// newHermite joins points (x rising strictly, at least two) by the cubics that
// have the slopes d there.
func newHermite(x, y, d []float64) hermite {
	h := hermite{spans: make([]span, len(x)-1)}
	h.fit(x, y, d)
	return h
}

// fit puts other points and slopes in the place of those there, as many.
func (h hermite) fit(x, y, d []float64) {
	for i := range h.spans {
		w := x[i+1] - x[i]
		chord := (y[i+1] - y[i]) / w
		h.spans[i] = span{
			x0: x[i], x1: x[i+1], y0: y[i], y1: y[i+1], d0: d[i], d1: d[i+1],
			c2: (3*chord - 2*d[i] - d[i+1]) / w,
			c3: (d[i] + d[i+1] - 2*chord) / (w * w),
		}
	}
}

// newPCHIP is the monotone piecewise cubic of Fritsch and Butland, A method
// for constructing local monotone piecewise cubic interpolants, SIAM J. Sci.
// Stat. Comput. 5 (1984) 300: where the chords on both sides rise or fall
// together, the slope at a point is their harmonic mean,
//
//	1/d = (w1/m0 + w2/m1)/(w1 + w2),  w1 = 2 h1 + h0,  w2 = h1 + 2 h0
//
// (h0, h1 the widths, m0, m1 the chords before and after the point; the
// weights by Brodlie as that paper gives them), else 0. The end slopes are the
// three-point ones, held to 0 or three chords where they would turn. This is
// the rule of PCHIM in SLATEC and of scipy's PchipInterpolator.
//
// Fritsch and Butland's first form, without the widths, takes
// 3 m0 m1/(max + 2 min): on the thirteen points of the reference's pump curve
// (equal widths) the two differ by at most 0.26 ft of 200 ft between points and
// by nothing at them.
func newPCHIP(x, y []float64) hermite {
	d := make([]float64, len(x))
	pchipSlopes(x, y, d)
	return newHermite(x, y, d)
}

// pchipSlopes writes the slopes at the points into d.
func pchipSlopes(x, y, d []float64) {
	n := len(x)
	width := func(i int) float64 { return x[i+1] - x[i] }
	chord := func(i int) float64 { return (y[i+1] - y[i]) / width(i) }
	if n == 2 {
		d[0], d[1] = chord(0), chord(0)
		return
	}
	for i := 1; i < n-1; i++ {
		m0, m1 := chord(i-1), chord(i)
		if m0*m1 > 0 {
			w1, w2 := 2*width(i)+width(i-1), width(i)+2*width(i-1)
			d[i] = (w1 + w2) / (w1/m0 + w2/m1)
		}
	}
	d[0] = endSlope(width(0), width(1), chord(0), chord(1))
	d[n-1] = endSlope(width(n-2), width(n-3), chord(n-2), chord(n-3))
}

// endSlope is the three-point slope at an end; h0, m0 are the width and chord
// next to the end.
func endSlope(h0, h1, m0, m1 float64) float64 {
	d := ((2*h0+h1)*m0 - h0*m1) / (h0 + h1)
	switch {
	case d*m0 <= 0:
		return 0
	case m0*m1 <= 0 && math.Abs(d) > 3*math.Abs(m0):
		return 3 * m0
	}
	return d
}

func (h hermite) first() *span { return &h.spans[0] }
func (h hermite) last() *span  { return &h.spans[len(h.spans)-1] }

// at gives value and slope for x within the points.
func (h hermite) at(x float64) (y, dy float64) {
	i := 0
	for i < len(h.spans)-1 && x >= h.spans[i].x1 {
		i++
	}
	return h.spans[i].at(x)
}

func (s *span) at(x float64) (y, dy float64) {
	u := x - s.x0
	return s.y0 + u*(s.d0+u*(s.c2+u*s.c3)), s.d0 + u*(2*s.c2+u*3*s.c3)
}

// solve gives the least x at which a falling span reaches y, for y1 <= y <= y0.
// Newton's steps are held between the ends that enclose the root.
func (s *span) solve(y float64) float64 {
	low, high := s.x0, s.x1
	switch { // at the ends the slope may be nothing, and Newton lame
	case y >= s.y0:
		return low
	case y <= s.y1:
		return high
	}
	x := low + (high-low)*(s.y0-y)/(s.y0-s.y1)
	for range 100 {
		have, slope := s.at(x)
		if have > y {
			low = x
		} else {
			high = x
		}
		next := x - (have-y)/slope
		isNewton := next >= low && next <= high
		if !isNewton {
			next = low + (high-low)/2
		}
		if isNewton && math.Abs(next-x) <= settled*(s.x1-s.x0) || next == x {
			return next
		}
		x = next
	}
	return x
}
