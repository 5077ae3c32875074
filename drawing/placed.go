package drawing

// Placed gives the items of a sheet at another place and scale: its upper left
// corner at a point, a millimetre of it k long. So a drawing that is made for a
// screen goes on a page of paper.
func Placed(s *Sheet, at Point, k float64) []Item { return placed(s.Items, at, k) }

func placed(items []Item, at Point, k float64) []Item {
	move := func(p Point) Point { return at.Add(p.Scale(k)) }
	chain := func(points []Point) []Point {
		out := make([]Point, len(points))
		for i, p := range points {
			out[i] = move(p)
		}
		return out
	}
	pen := func(p Pen) Pen {
		p.Wide *= k
		return p
	}
	out := make([]Item, 0, len(items))
	for _, it := range items {
		switch v := it.(type) {
		case Line:
			out = append(out, Line{move(v.From), move(v.To), pen(v.Pen)})
		case Polyline:
			out = append(out, Polyline{chain(v.Points), pen(v.Pen)})
		case Polygon:
			out = append(out, Polygon{chain(v.Points), pen(v.Pen), v.Fill})
		case Arc:
			v.Centre, v.RX, v.RY, v.Pen = move(v.Centre), v.RX*k, v.RY*k, pen(v.Pen)
			out = append(out, v)
		case Text:
			v.At, v.Size = move(v.At), v.Size*k
			out = append(out, v)
		case Group:
			v.Items = placed(v.Items, at, k)
			out = append(out, v)
		}
	}
	return out
}
