package paper

import (
	"math"

	"plashet/drawing"
)

// inked gives from where to where down a drawing anything is drawn, mm: the blank
// above and below it is left off where that saves paper. Of no drawing at all it is
// the whole height.
func inked(s *drawing.Sheet) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	at := func(margin float64, points ...drawing.Point) {
		for _, p := range points {
			from, to = math.Min(from, p.Y-margin), math.Max(to, p.Y+margin)
		}
	}
	s.Each(func(it drawing.Item) {
		switch v := it.(type) {
		case drawing.Line:
			at(v.Pen.Wide/2, v.From, v.To)
		case drawing.Polyline:
			at(v.Pen.Wide/2, v.Points...)
		case drawing.Polygon:
			at(v.Pen.Wide/2, v.Points...)
		case drawing.Arc: // the circle round it, which holds every part of it
			at(math.Max(v.RX, v.RY)+v.Pen.Wide/2, v.Centre)
		case drawing.Text:
			corners := v.Corners()
			at(0, corners[:]...)
		}
	})
	if from > to {
		return 0, s.Height
	}
	return math.Max(0, from), math.Min(s.Height, to)
}
