package drawing

import "slices"

// table is rows of cells under one another, numbers under numbers.
type table struct {
	columns []column
	head    []string // may run over the cells of an empty neighbour
	heads   []string // where there is room for one over each column
	rows    [][]string
	indent  float64 // mm
	title   string  // of its data, where the sheet's would not tell
}

// column says how a column stands. A table has one flexible column: it takes
// what the others leave.
type column struct {
	anchor   Anchor // Start or End
	bold     bool
	flexible bool
}

// gutter is the paper between two columns, mm.
const gutter = 5.0

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

// lay gives each column's left edge and width. Words that are still too wide are
// broken into lines where they are written; figures keep their width.
func (t *table) lay() (left, width []float64) {
	room := wide - 2*margin - t.indent - gutter*float64(len(t.columns)-1)
	width = make([]float64, len(t.columns))
	left = make([]float64, len(t.columns))
	sum, flexible := 0.0, 0
	for i, c := range t.columns {
		for _, r := range t.rows {
			width[i] = max(width[i], (Text{Size: small, Bold: c.bold, Text: r[i]}).Width())
		}
		if c.flexible {
			flexible = i
		}
	}
	t.widen(width)
	for i, w := range width {
		if i != flexible {
			sum += w
		}
	}
	const least = 0.25 // of the room, for the flexible column
	if most := room * (1 - least); sum > most {
		sum = t.squeeze(width, flexible, sum-most)
	}
	width[flexible] = max(0, room-sum)
	x := margin + t.indent
	for i := range width {
		left[i] = x
		x += width[i] + gutter
	}
	return left, width
}

// squeeze takes width off the columns of words. Those of figures, which stand to
// the right, keep theirs: a figure cut short is another figure. It gives the sum
// of all but the flexible column.
func (t *table) squeeze(width []float64, flexible int, over float64) float64 {
	words := 0.0
	for i, c := range t.columns {
		if i != flexible && c.anchor != End {
			words += width[i]
		}
	}
	sum := 0.0
	for i, c := range t.columns {
		if i == flexible {
			continue
		}
		if c.anchor != End && words > 0 {
			width[i] *= max(0, words-over) / words
		}
		sum += width[i]
	}
	return sum
}

// widen widens the columns to their heads. A head over numbers may run to the
// left over a column that has none.
func (t *table) widen(width []float64) {
	for i, h := range t.head {
		need := (Text{Size: small, Text: h}).Width()
		if i > 0 && h != "" && t.head[i-1] == "" && t.columns[i].anchor == End {
			width[i-1] = max(width[i-1], need-gutter-width[i])
			continue
		}
		width[i] = max(width[i], need)
	}
}

// lineStep is how far apart the lines of one cell stand, mm.
const lineStep = small * 1.2

// table writes a table where the page is filled to, and gives where each row
// begins.
func (p *page) table(t table) (at []float64) {
	p.data(t.title, t.head, t.rows)
	left, width := t.lay()
	cell := func(i int, y float64, text string, bold bool) {
		at := Point{left[i], y + small}
		if t.columns[i].anchor == End {
			at.X += width[i]
		}
		p.text(Text{At: at, Size: small, Bold: bold, Anchor: t.columns[i].anchor, Text: text})
	}
	if len(t.head) > 0 {
		for i, h := range t.head {
			if h != "" {
				cell(i, p.y, fitted(h, false, wide), false)
			}
		}
		p.y += row
		p.add(Line{Point{margin, p.y}, Point{wide - margin, p.y}, fine})
		p.y += 0.9
	}
	for _, r := range t.rows {
		at = append(at, p.y)
		most := 1
		for i, text := range r {
			list := wrap(text, t.columns[i].bold, width[i]+1e-6)
			for k, l := range list {
				cell(i, p.y+float64(k)*lineStep, l, t.columns[i].bold)
			}
			most = max(most, len(list))
		}
		p.y += row + float64(most-1)*lineStep
	}
	return at
}

// widestOf gives the width of the widest of some texts in small letters.
func widestOf(texts ...string) float64 {
	widths := make([]float64, 0, len(texts)+1)
	for _, s := range texts {
		widths = append(widths, (Text{Size: small, Text: s}).Width())
	}
	return slices.Max(append(widths, 0))
}
