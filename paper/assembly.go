package paper

import (
	"math"

	"plashet/drawing"
	"plashet/engine/glue"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// assembly draws the plumbing in the vault over two corners that face each
// other, with the sizes, the pieces and the parts.
func assembly(f *flow) {
	f.about = aboutVault
	f.held()
	f.warn(f.word(glue.CautionUnplug))
	list := f.art.assembly()
	if len(list) == 0 {
		f.missing("paper.noassembly")
	}
	if f.in.Result.NotToCut { // why, before how it would look
		f.findings(false)
	}
	f.pictures(list) // both corners under one eye, and their lists once below
	f.lists()
	if !f.in.Result.NotToCut {
		f.findings(false)
	}
}

// lists writes what stands beside the drawing of an assembly: pieces, parts,
// rolls. The first cell of a row is its mark.
func (f *flow) lists() {
	f.tables(f.art.lists())
}

// tables writes the lists of a drawing.
func (f *flow) tables(lists []drawing.List) {
	for _, l := range lists {
		columns := make([]column, len(l.Columns))
		for i, c := range l.Columns {
			columns[i] = column{head: c.Head, bold: c.Bold, end: c.Figures}
			if c.Rest {
				columns[i].wide = rest
			}
		}
		f.table(columns, l.Rows)
		for _, s := range l.Bold {
			f.paragraph(s, true)
		}
		for _, s := range l.Notes {
			f.paragraph(s, false)
		}
		f.gap(2)
	}
}

// rolls prints for each elbow a strip to wrap round the pipe that enters it, and one
// for each hose to wrap round itself, one to one, and a bar to prove that the printer kept the scale.
func rolls(f *flow) {
	f.accepts = aboutVault
	f.held()
	f.bar()
	a := f.in.Result.Assembly
	n := 0
	if a != nil {
		for i := range a.Rolls {
			if od := odOf(a, &a.Rolls[i]); od > 0 {
				f.strip(&a.Rolls[i], od)
				n++
			}
		}
	}
	switch {
	case a == nil || !a.Laid:
		f.missing("paper.noassembly")
	case n == 0:
		f.paragraph(f.word("paper.norolls"), true)
	}
}

// odOf finds the outside of the pipe that enters an elbow, or of the hose itself; 0
// where there is none.
func odOf(a *layout.Assembly, r *layout.RollMark) unit.Length {
	for i := range a.Hoses {
		if a.Hoses[i].Part == r.Part {
			return a.Hoses[i].OD
		}
	}
	for i := range a.Pieces {
		if a.Pieces[i].Mark == r.Piece && r.Piece != "" {
			return a.Pieces[i].Pipe.OD
		}
	}
	return 0
}

// bar draws 150 mm and 6 in one under the other, each with its divisions.
func (f *flow) bar() {
	f.heading(f.word("paper.head.scale"))
	f.paragraph(f.word("paper.scale"), true)
	f.gap(2)
	for _, b := range []struct {
		name  string
		long  float64
		step  float64
		every int
	}{{"150 mm", 150, 5, 2}, {"6 in", 6 * 25.4, 25.4 / 4, 4}} {
		f.need(10)
		f.add(drawing.Group{Name: "bar " + b.name, Items: []drawing.Item{
			drawing.Polygon{Points: box(f.x0, f.y, f.x0+b.long, f.y+2.5), Fill: drawing.Black},
		}})
		for i := range int(math.Round(b.long/b.step)) + 1 {
			x, tall := f.x0+b.step*float64(i), 1.4
			if i%b.every == 0 {
				tall = 2.6
			}
			f.add(drawing.Line{From: drawing.Point{X: x, Y: f.y + 2.5}, To: drawing.Point{X: x, Y: f.y + 2.5 + tall}, Pen: thin})
		}
		f.write(f.x0+b.long+3, f.y+3, body, true, b.name)
		f.y += 9
	}
}

// stripTall is the height of a strip, mm: along the pipe.
const stripTall = 24.0

// strip draws one as long as the pipe is round, in as many lengths as the page
// asks for, with the 0 line, the elbow's line and the way the water goes.
func (f *flow) strip(r *layout.RollMark, od unit.Length) {
	round := math.Pi * float64(od) * 1000
	at := round * float64(r.Angle) / (2 * math.Pi)
	longest := f.x1 - f.x0 - 8
	parts := int(math.Ceil(round / longest))
	// All lengths of a strip on one page: they are cut out together.
	stem, head := "paper.strip.", f.text("paper.strip", str("part", r.Mark), str("piece", r.Piece))
	if r.Hose {
		stem, head = "paper.strip.hose.", f.text("paper.strip.hose", str("part", r.Mark))
	}
	f.headingOver(head, 5*body*lead+float64(parts)*(stripTall+5))
	zero := "top"
	if r.Upright {
		zero = "back"
	}
	f.paragraph(f.word(stem+zero), false)
	f.paragraph(f.text(stem+"how", num("round", unit.Length(round/1000), unit.KindTape), num("od", od, unit.KindBore), num("arc", r.Arc, unit.KindTape), num("angle", r.Angle, unit.KindAngle)), false)
	for k := range parts {
		from, to := round*float64(k)/float64(parts), round*float64(k+1)/float64(parts)
		f.gap(2)
		f.need(stripTall + 4)
		f.length(r, k, parts, from, to, at)
		f.y += stripTall + 3
	}
}

// length draws the part of a strip from one distance round the pipe to another.
func (f *flow) length(r *layout.RollMark, k, parts int, from, to, at float64) {
	y0, y1 := f.y, f.y+stripTall
	x := func(d float64) float64 { return f.x0 + d - from }
	// The frame's lines are thin and lie outside what they bound, so that from
	// edge to edge the strip is as long as it says.
	half := thin.Wide / 2
	g := drawing.Group{Name: "strip " + r.Mark, Mark: r.Mark, Items: []drawing.Item{
		drawing.Polygon{Points: box(x(from)-half, y0, x(to)+half, y1), Pen: thin},
	}}
	line := func(d float64, pen drawing.Pen) {
		g.Items = append(g.Items, drawing.Line{From: drawing.Point{X: x(d), Y: y0}, To: drawing.Point{X: x(d), Y: y1}, Pen: pen})
	}
	if k == 0 {
		line(0, rule)
	}
	if k == parts-1 {
		line(to, rule)
	}
	has := at >= from && (at < to || k == parts-1)
	if has {
		line(at, heavy)
	}
	f.add(g)
	// Texts keep off both lines: they stand where the strip is free.
	label := func(d float64, y float64, bold bool, s string) {
		w := width(s, small, bold)
		px := x(d) + 1.5
		if px+w > x(to)-1 {
			px = x(d) - 1.5 - w
		}
		if px < f.x0+0.5 {
			return
		}
		f.write(px, y, small, bold, s)
	}
	if k == 0 {
		label(0, y0+4.5, true, "0")
	}
	if has {
		label(at, y0+9, true, r.Mark)
	}
	if k == parts-1 {
		label(to, y1-3, false, f.word("paper.strip.meets"))
	} else {
		label(to, y1-3, false, f.text("paper.strip.next", count("part", k+2)))
	}
	if to-from > 60 {
		mid := (x(from) + x(to)) / 2
		if has && math.Abs(mid-x(at)) < 20 { // off the elbow's line and its name
			mid = x(from) + (to-from)/4
		}
		f.add(
			drawing.Line{From: drawing.Point{X: mid, Y: y1 - 6}, To: drawing.Point{X: mid, Y: y0 + 16}, Pen: rule},
			drawing.Polygon{Points: []drawing.Point{{X: mid, Y: y0 + 12.5}, {X: mid - 1.3, Y: y0 + 16}, {X: mid + 1.3, Y: y0 + 16}}, Fill: drawing.Black},
		)
		f.write(mid+2, y0+17, small, false, f.word("paper.strip.flow"))
	}
}
