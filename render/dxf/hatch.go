package dxf

import "plashet/drawing"

// fillLayer is where water is filled in: by itself, so that a program that draws
// gardens can turn it off and keep the lines.
const fillLayer = "WATER-FILL"

// washColour is the colour of water laid on thinly, as the other renderers have it
// (group 420: red, green and blue in a byte each).
const washColour = 0xd8e8ec

// isWater tells that what is filled with the wash on this layer is an area of
// water. On the others the same wash fills the pipes that are looked at.
func isWater(layer string, fill drawing.Ink) bool {
	return fill == drawing.Wash && (layer == "POND" || layer == "WATER" || layer == "NOT-PLACED")
}

// hatch fills an area of water, with what later fills cover of it left out: each
// is an island (style 0 fills what lies within an odd number of edges).
func (e *encoder) hatch(points []drawing.Point, later []cover) {
	if len(points) < 3 {
		return
	}
	if points[0] == points[len(points)-1] { // an arc that ends where it began
		points = points[:len(points)-1]
	}
	loops := [][]drawing.Point{points}
	var taken []cover
	for i := range later {
		c := &later[i]
		if !convex(c.points) || overlapsAny(taken, c) {
			continue // two islands on each other would be filled again where both are
		}
		if inside := clip(points, c.points); area(inside) > edgeRoom*edgeRoom {
			loops, taken = append(loops, inside), append(taken, *c)
		}
	}
	e.begin("HATCH", fillLayer, "", drawing.Pen{})
	e.whole(420, washColour)
	e.put(100, "AcDbHatch")
	e.at(10, point{})
	e.real(210, 0)
	e.real(220, 0)
	e.real(230, 1)
	e.put(2, "SOLID")
	e.whole(70, 1)
	e.whole(71, 0) // of no other entity
	e.whole(91, len(loops))
	for i, l := range loops {
		kind := 2 // a chain of points
		if i == 0 {
			kind |= 1 // the outer edge
		}
		e.whole(92, kind)
		e.whole(72, 0)
		e.whole(73, 1)
		e.whole(93, len(l))
		for _, p := range l {
			q := e.world(p)
			e.real(10, q.x)
			e.real(20, q.y)
		}
		e.whole(97, 0)
	}
	e.whole(75, 0)
	e.whole(76, 1)
	e.whole(98, 0)
}

// overlapsAny tells that a fill's box meets that of another.
func overlapsAny(list []cover, c *cover) bool {
	for i := range list {
		if o := &list[i]; c.low.X < o.high.X && o.low.X < c.high.X && c.low.Y < o.high.Y && o.low.Y < c.high.Y {
			return true
		}
	}
	return false
}

// cross is twice the area of a, b, c: above 0 where they turn one way.
func cross(a, b, c drawing.Point) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

// convex tells that a chain turns one way all along and goes round once.
func convex(points []drawing.Point) bool {
	n, turns, turned := len(points), 0.0, 0
	for i := range n {
		c := cross(points[i], points[(i+1)%n], points[(i+2)%n])
		if c*turns < 0 {
			return false
		}
		if c != 0 {
			turns = c
		}
		// Each convex chain goes up once and down once.
		a, b, d := points[i].Y, points[(i+1)%n].Y, points[(i+2)%n].Y
		if (a < b) != (b < d) {
			turned++
		}
	}
	return turns != 0 && turned <= 2
}

// clip gives what of an area lies within a convex one (I. E. Sutherland and
// G. W. Hodgman, Reentrant polygon clipping, 1974). Parts of it may hang together
// by lines without width.
func clip(points, within []drawing.Point) []drawing.Point {
	side := 1.0
	if signed(within) < 0 {
		side = -1
	}
	out := points
	for i, a := range within {
		b := within[(i+1)%len(within)]
		in := out
		out = nil
		for k, p := range in {
			q := in[(k+1)%len(in)]
			dp, dq := side*cross(a, b, p), side*cross(a, b, q)
			if dp >= 0 {
				out = append(out, p)
			}
			if dp > 0 && dq < 0 || dp < 0 && dq > 0 {
				out = append(out, p.Add(q.Sub(p).Scale(dp/(dp-dq))))
			}
		}
	}
	return out
}

// signed is twice the area of a chain, by the way it goes round.
func signed(points []drawing.Point) float64 {
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum
}

func area(points []drawing.Point) float64 { return max(signed(points), -signed(points)) / 2 }
