package paper

import (
	"slices"

	"plashet/drawing"
)

// column says how a column of a table stands.
type column struct {
	head  string
	wide  float64 // mm; 0: as wide as its widest cell; below 0: what the others leave
	end   bool    // figures stand to the right
	bold  bool
	hand  bool // letters for an arm's length
	tick  bool // an empty box to tick, in place of cells
	blank bool // a line to write on, in place of cells
}

// size gives how tall a column's letters are, mm.
func (c column) size() float64 {
	if c.hand {
		return hand
	}
	return body
}

// tallest gives how tall the tallest letters of a row are, mm.
func tallest(columns []column) float64 {
	tall := body
	for _, c := range columns {
		tall = max(tall, c.size())
	}
	return tall
}

// rest is the width of the column that takes what the others leave.
const rest = -1

// blankTall is added to a row that somebody writes in by hand, mm.
const blankTall = 2.0

// gutter is the paper between two columns, mm.
const gutter = 3.0

// table writes rows under their heads. Long cells are broken into lines; a table
// runs over pages, its heads written again. The rows in sums add up what stands
// above them: they are bold, with a line over them.
func (f *flow) table(columns []column, rows [][]string, sums ...int) {
	if len(rows) == 0 {
		return
	}
	wide := f.widths(columns, rows, sums)
	left := make([]float64, len(columns))
	x := f.x0
	for i := range wide {
		left[i] = x
		x += wide[i] + gutter
	}
	size := body // of the tallest letters in the row: all stand on one line
	cell := func(i int, s string, bold bool) {
		t := drawing.Text{At: drawing.Point{X: left[i], Y: f.y + size}, Size: min(size, columns[i].size()), Bold: bold, Ink: drawing.Black, Text: s}
		if columns[i].end {
			t.At.X, t.Anchor = left[i]+wide[i], drawing.End
		}
		if s != "" {
			f.add(t)
		}
	}
	heads := func() {
		size = body
		defer func() { size = tallest(columns) }()
		lines, tall := broken(plain(columns), wide, headsOf(columns), false)
		if tall == 0 {
			return
		}
		for k := range tall {
			for i := range columns {
				cell(i, line(lines[i], k), false)
			}
			f.y += body * lead
		}
		f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: f.y}, To: drawing.Point{X: f.x1, Y: f.y}, Pen: thin})
		f.y += 0.8
	}
	f.need(f.begins(columns, rows, sums...))
	heads()
	for n, r := range rows {
		sum := slices.Contains(sums, n)
		lines, tall := broken(columns, wide, r, sum)
		if t := min(float64(tall), 4) * size * lead; f.room() < t && !f.fresh {
			f.page()
			heads()
		}
		if sum {
			f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: f.y}, To: drawing.Point{X: f.x1, Y: f.y}, Pen: thin})
			f.y += 0.6
		}
		for i, c := range columns {
			if c.tick {
				f.tick(left[i], f.y+0.3+size-body)
			}
		}
		for k := range tall {
			if f.room() < size*lead {
				f.page()
				heads()
			}
			for i, c := range columns {
				cell(i, line(lines[i], k), c.bold || sum)
			}
			f.y += size * lead
		}
		for i, c := range columns {
			if c.blank {
				f.y += blankTall // room for handwriting
				f.add(drawing.Line{From: drawing.Point{X: left[i], Y: f.y}, To: drawing.Point{X: left[i] + wide[i], Y: f.y}, Pen: thin})
			}
		}
		f.gap(0.7)
	}
	f.gap(1.5)
}

// begins gives how much of a table stands on the page it begins on, mm: all of a short
// one, else its heads and the first row, or four lines of that.
func (f *flow) begins(columns []column, rows [][]string, sums ...int) float64 {
	wide, size := f.widths(columns, rows, sums), tallest(columns)*lead
	_, heads := broken(plain(columns), wide, headsOf(columns), false)
	_, first := broken(columns, wide, rows[0], slices.Contains(sums, 0))
	least := float64(heads)*body*lead + 0.8 + float64(min(first, 4))*size
	return max(3*size, least, f.tall(columns, wide, rows, sums))
}

// tall gives the height of a table that is short enough to be kept on one page,
// 0 of a longer one.
func (f *flow) tall(columns []column, wide []float64, rows [][]string, sums []int) float64 {
	const short = 90.0 // mm
	_, n := broken(plain(columns), wide, headsOf(columns), false)
	tall := float64(n)*body*lead + 1
	for i, r := range rows {
		_, n := broken(columns, wide, r, slices.Contains(sums, i))
		tall += float64(n)*tallest(columns)*lead + 1.3
		for _, c := range columns {
			if c.blank {
				tall += blankTall
			}
		}
	}
	if tall > short {
		return 0
	}
	return tall
}

func headsOf(columns []column) []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.head
	}
	return out
}

func line(lines []string, k int) string {
	if k < len(lines) {
		return lines[k]
	}
	return ""
}

// plain gives the columns as their heads are written.
func plain(columns []column) []column {
	out := slices.Clone(columns)
	for i := range out {
		out[i].bold, out[i].hand = false, false
	}
	return out
}

// broken breaks the cells of a row into lines and gives how many there are.
func broken(columns []column, wide []float64, row []string, bold bool) (lines [][]string, tall int) {
	lines = make([][]string, len(columns))
	for i, s := range row {
		if i >= len(columns) {
			break
		}
		lines[i] = wrap(s, columns[i].size(), bold || columns[i].bold, wide[i]+1e-6)
		tall = max(tall, len(lines[i]))
	}
	return lines, tall
}

// widths gives each column its width. One that asks for more than its share of
// the page gets that share, and its cells are broken.
func (f *flow) widths(columns []column, rows [][]string, sums []int) []float64 {
	all := f.x1 - f.x0 - gutter*float64(len(columns)-1)
	most := all * 0.4
	out := make([]float64, len(columns))
	left, at := all, -1
	for i, c := range columns {
		switch {
		case c.tick:
			out[i] = body
		case c.wide > 0:
			out[i] = c.wide
		case c.wide < 0:
			at = i
			continue
		default:
			out[i] = width(c.head, body, false)
			for n, r := range rows {
				if i < len(r) {
					out[i] = max(out[i], width(r[i], c.size(), c.bold || slices.Contains(sums, n)))
				}
			}
			out[i] = min(out[i], most)
		}
		left -= out[i]
	}
	least := all * 0.2 // for the one that takes the rest
	if at < 0 {
		least = 0
	}
	if left < least { // take it from all alike
		k := (all - least) / (all - left)
		for i := range out {
			out[i] *= k
		}
		left = least
	}
	if at >= 0 {
		out[at] = left
	}
	return out
}
