package dxf

import (
	"math"
	"slices"

	"plashet/drawing"
)

// cover is a fill that hides what was drawn before it.
type cover struct {
	after     int // the item's place in the order of drawing
	points    []drawing.Point
	low, high drawing.Point
}

// covers lists the fills of a sheet.
func covers(items []drawn) []cover {
	var out []cover
	for i, it := range items {
		var points []drawing.Point
		switch v := it.item.(type) {
		case drawing.Polygon:
			if v.Fill != drawing.Clear {
				points = v.Points
			}
		case drawing.Arc:
			if v.Fill != drawing.Clear && v.RX > 0 && v.RY > 0 {
				points = flat(v)
			}
		}
		if len(points) < 3 {
			continue
		}
		c := cover{after: i, points: points, low: points[0], high: points[0]}
		for _, p := range points {
			c.low = drawing.Point{X: math.Min(c.low.X, p.X), Y: math.Min(c.low.Y, p.Y)}
			c.high = drawing.Point{X: math.Max(c.high.X, p.X), Y: math.Max(c.high.Y, p.Y)}
		}
		out = append(out, c)
	}
	return out
}

// edgeRoom is how far inside a fill a line must lie to be hidden, mm: what runs
// along the edge of the next shape stays.
const edgeRoom = 0.02

// hides tells that a point lies inside the fill and not on its edge (nonzero
// winding, as the other renderers fill).
func (c *cover) hides(p drawing.Point) bool {
	winding := 0
	for i, a := range c.points {
		b := c.points[(i+1)%len(c.points)]
		if distance(p, a, b) < edgeRoom {
			return false
		}
		side := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		if a.Y <= p.Y && b.Y > p.Y && side > 0 {
			winding++
		} else if a.Y > p.Y && b.Y <= p.Y && side < 0 {
			winding--
		}
	}
	return winding != 0
}

// distance gives the distance of p from the piece of line from a to b.
func distance(p, a, b drawing.Point) float64 {
	d := b.Sub(a)
	t := 0.0
	if l := d.X*d.X + d.Y*d.Y; l > 0 {
		t = math.Max(0, math.Min(1, ((p.X-a.X)*d.X+(p.Y-a.Y)*d.Y)/l))
	}
	return p.Sub(a.Add(d.Scale(t))).Norm()
}

// cuts gives where along a to b (0 to 1) the fill's edges cross it.
func (c *cover) cuts(a, b drawing.Point) []float64 {
	if math.Max(a.X, b.X) < c.low.X || math.Min(a.X, b.X) > c.high.X || math.Max(a.Y, b.Y) < c.low.Y || math.Min(a.Y, b.Y) > c.high.Y {
		return nil
	}
	out := []float64{0, 1}
	d := b.Sub(a)
	for i, p := range c.points {
		e := c.points[(i+1)%len(c.points)].Sub(p)
		den := d.X*e.Y - d.Y*e.X
		if den == 0 {
			continue
		}
		q := p.Sub(a)
		t, u := (q.X*e.Y-q.Y*e.X)/den, (q.X*d.Y-q.Y*d.X)/den
		if t > 0 && t < 1 && u >= 0 && u <= 1 {
			out = append(out, t)
		}
	}
	slices.Sort(out)
	return out
}

// span is a part of a piece of line, by its length from 0 to 1.
type span struct{ from, to float64 }

// seen gives the parts of a to b that no later fill hides.
func seen(a, b drawing.Point, later []cover) []span {
	open := []span{{0, 1}}
	at := func(t float64) drawing.Point { return a.Add(b.Sub(a).Scale(t)) }
	for i := range later {
		cuts := later[i].cuts(a, b)
		if cuts == nil {
			continue
		}
		var left []span
		for _, s := range open {
			from := s.from
			ends := []float64{}
			for _, t := range cuts {
				if t > s.from && t < s.to {
					ends = append(ends, t)
				}
			}
			for _, to := range append(ends, s.to) {
				if !later[i].hides(at((from + to) / 2)) {
					if n := len(left); n > 0 && left[n-1].to == from {
						left[n-1].to = to
					} else {
						left = append(left, span{from, to})
					}
				}
				from = to
			}
		}
		open = left
	}
	return open
}

// visible gives the parts of a chain that no later fill hides, and whether that
// is all of it.
func visible(points []drawing.Point, later []cover) (parts [][]drawing.Point, all bool) {
	all = true
	var now []drawing.Point
	for i := 0; i+1 < len(points); i++ {
		a, b := points[i], points[i+1]
		spans := seen(a, b, later)
		all = all && len(spans) == 1 && spans[0] == span{0, 1}
		for _, s := range spans {
			from, to := a.Add(b.Sub(a).Scale(s.from)), a.Add(b.Sub(a).Scale(s.to))
			if s.from > 0 || len(now) == 0 || now[len(now)-1] != a {
				parts, now = keep(parts, now), []drawing.Point{from}
			}
			now = append(now, to)
			if s.to < 1 {
				parts, now = keep(parts, now), nil
			}
		}
	}
	return keep(parts, now), all
}

// keep adds a part that is long enough to be seen.
func keep(parts [][]drawing.Point, now []drawing.Point) [][]drawing.Point {
	long := 0.0
	for i := 1; i < len(now); i++ {
		long += now[i].Sub(now[i-1]).Norm()
	}
	if long < edgeRoom {
		return parts
	}
	return append(parts, now)
}

// flat gives points along an arc; closed arcs end where they began.
func flat(a drawing.Arc) []drawing.Point {
	sweep := math.Max(-360, math.Min(360, a.Sweep))
	n := int(math.Max(8, math.Ceil(math.Abs(sweep)/5)))
	out := make([]drawing.Point, 0, n+1)
	for i := range n + 1 {
		out = append(out, a.At(a.From+sweep*float64(i)/float64(n)))
	}
	if math.Abs(sweep) == 360 {
		out[n] = out[0]
	}
	return out
}
