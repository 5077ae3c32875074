package paper

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/words"
)

// TestDangersWithTheirRows: in the list of material every counter's heading and
// dangers have a row under them on their page, and no page begins within a danger.
func TestDangersWithTheirRows(t *testing.T) {
	seen := 0
	for _, name := range demo.Names() {
		for _, size := range []Paper{A4, Letter} {
			for _, l := range words.Languages() {
				in := input(t, example(t, name), size)
				in.Say = l
				for i, p := range sheetsOf(t, in, "material")[0].Pages {
					seen += withRows(t, name+" "+size.Name()+" "+l.Tag, i+1, &p)
				}
			}
		}
	}
	if seen < 60 {
		t.Fatalf("only %d dangers were seen", seen)
	}
}

// withRows holds one page, and gives how many lines of dangers stand on it.
func withRows(t *testing.T, what string, page int, s *drawing.Sheet) (lines int) {
	t.Helper()
	begun, row, open := false, true, ""
	s.Each(func(it drawing.Item) {
		switch v := it.(type) {
		case drawing.Line: // the bar beside a danger
			if v.Pen.Wide == 1.3 {
				if lines++; !begun {
					t.Errorf("%s: page %d begins within a danger", what, page)
				}
				row = false
			}
		case drawing.Text:
			if v.Bold && v.Size == large && v.At.Y > top && v.At.X == holes {
				if !row {
					t.Errorf("%s: page %d: the dangers under “%s” have no row", what, page, open)
				}
				open, row = v.Text, true
			}
			begun = begun || v.At.Y > top
		case drawing.Polygon: // the box to tick
			if len(v.Points) == 4 && math.Abs(v.Points[1].X-v.Points[0].X-body) < 1e-9 && v.Points[0].X == holes {
				row = true
			}
		}
	})
	if !row {
		t.Errorf("%s: page %d: the dangers under “%s” have no row", what, page, open)
	}
	return lines
}
