package png

import (
	"math"

	"plashet/drawing"
)

// dashes are the lengths drawn and left out, mm, as on the screen.
var dashes = [...][2]float64{drawing.Dashed: {1.6, 1.3}, drawing.Dotted: {0.1, 1.1}}

// stroke draws a chain of lines with round ends and corners: each line as a
// quadrangle, each corner as a disc, all turned the same way so that they add up.
func (c *canvas) stroke(points []drawing.Point, closed bool, pen drawing.Pen) {
	if pen.Ink == drawing.Clear || pen.Wide <= 0 || len(points) == 0 {
		return
	}
	if closed && len(points) > 2 {
		points = append(append(make([]drawing.Point, 0, len(points)+1), points...), points[0])
	}
	half := math.Max(pen.Wide, 0.75/c.scale) / 2 // never thinner than three quarters of a pixel
	var shapes [][]drawing.Point
	for _, l := range broken(points, pen.Dash) {
		for i := 1; i < len(l); i++ {
			if q := bar(l[i-1], l[i], half); q != nil {
				shapes = append(shapes, q)
			}
		}
		for _, p := range l {
			shapes = append(shapes, disc(p, half))
		}
	}
	c.fill(shapes, pen.Ink)
}

// bar gives the quadrangle along a line; nil where the line has no length.
func bar(a, b drawing.Point, half float64) []drawing.Point {
	d := b.Sub(a)
	l := d.Norm()
	if l == 0 {
		return nil
	}
	n := drawing.Point{X: -d.Y / l * half, Y: d.X / l * half}
	return []drawing.Point{a.Sub(n), b.Sub(n), b.Add(n), a.Add(n)}
}

// disc gives a circle, turned as bar is.
func disc(p drawing.Point, r float64) []drawing.Point {
	const n = 12
	out := make([]drawing.Point, 0, n)
	for i := range n {
		s, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out = append(out, drawing.Point{X: p.X + r*cos, Y: p.Y + r*s})
	}
	return out
}

// broken gives the parts of a chain that a dash draws.
func broken(points []drawing.Point, dash drawing.Dash) [][]drawing.Point {
	if dash == drawing.Whole || int(dash) >= len(dashes) {
		return [][]drawing.Point{points}
	}
	var out [][]drawing.Point
	now := []drawing.Point{points[0]}
	on, left := true, dashes[dash][0]
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		long := b.Sub(a).Norm()
		if !(long > 0) || math.IsInf(long, 0) {
			continue
		}
		at := 0.0
		for long-at > left {
			at += left
			p := a.Add(b.Sub(a).Scale(at / long))
			if on {
				out = append(out, append(now, p))
			}
			on = !on
			now = []drawing.Point{p}
			left = dashes[dash][0]
			if !on {
				left = dashes[dash][1]
			}
		}
		left -= long - at
		if on {
			now = append(now, b)
		}
	}
	if on {
		out = append(out, now)
	}
	return out
}
