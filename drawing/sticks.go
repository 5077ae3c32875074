package drawing

import (
	"strconv"
	"strings"

	"plashet/engine/cut"
	"plashet/engine/design"
	"plashet/engine/unit"
)

// Sticks draws every stick and offcut that is cut up, to scale, with its pieces
// and what is left. Many bars go on several sheets.
func Sticks(in Input) []Sheet {
	if in.Result == nil {
		return nil
	}
	d := &stickPlan{in: in}
	for i := range in.Result.Cutting {
		c := &in.Result.Cutting[i]
		if len(c.Plan.Bars) == 0 {
			continue
		}
		d.longest = 0
		for _, b := range c.Plan.Bars {
			d.longest = max(d.longest, b.Length)
		}
		d.heading(c)
		for k := range c.Plan.Bars {
			d.bar(c, k)
		}
		d.y += 2
	}
	d.close()
	return d.out
}

// stickPlan is the sheets of sticks while they are drawn.
type stickPlan struct {
	*page
	in      Input
	out     []Sheet
	longest unit.Length // of one kind of pipe: as long as the sheet is wide
	desc    []string
}

// Sizes of the bars, mm.
const (
	barTall   = 9.0
	sheetTall = 215.0 // a sheet is closed where the next bar would pass this
)

func (d *stickPlan) open() {
	name := "sticks"
	if n := len(d.out); n > 0 {
		name += "-" + strconv.Itoa(n+1)
	}
	d.page = newPage(d.in, name, d.in.say("sticks.title"))
	d.desc = nil
}

func (d *stickPlan) close() {
	if d.page != nil {
		d.out = append(d.out, d.done(d.desc))
		d.page = nil
	}
}

// heading names the pipe that the next bars are of.
func (d *stickPlan) heading(c *design.Cutting) {
	if d.page == nil || d.y > sheetTall-4*row-barTall {
		d.close()
		d.open()
	}
	d.paragraph(d.in.language().Term(c.Pipe), true)
	if c.NotToCut {
		d.paragraph(d.in.say("assembly.held"), true)
	}
	d.y += 1
}

// bar draws one of them with a list of its pieces below.
func (d *stickPlan) bar(c *design.Cutting, k int) {
	b := &c.Plan.Bars[k]
	code := "sticks.stick"
	if b.From == cut.FromOffcut {
		code = "sticks.offcut"
	}
	name := d.in.say(code, "number", strconv.Itoa(k+1), "length", d.tapeOf(b.Length))
	var parts []string
	for _, p := range b.Cuts {
		parts = append(parts, c.Pieces[p.Piece].Mark+" "+d.tapeOf(p.Length))
	}
	left := d.in.say("sticks.flush")
	if b.Remnant > 0 {
		left = d.in.say("sticks.left", "left", d.tapeOf(b.Remnant))
		if !b.Kept {
			left = d.in.say("sticks.waste", "left", d.tapeOf(b.Remnant))
		}
	}
	parts = append(parts, left)
	list := strings.Join(parts, " · ")
	lines := wrap(list, false, wide-2*margin)
	if tall := row + barTall + float64(len(lines))*row + 4; d.y+tall > sheetTall && d.y > 45 {
		d.close()
		d.open()
	}
	d.paragraph(name, false)
	d.group(name, func() { d.pieces(c, b, name) })
	d.y += barTall + 0.6
	for _, l := range lines {
		d.text(Text{At: Point{margin, d.y + small}, Size: small, Text: l})
		d.y += row
	}
	d.y += 2.5
	d.desc = append(d.desc, name+": "+list+".")
	d.data(name, []string{d.in.say("piece"), d.say("piece.cut")}, d.rows(c, b))
}

func (d *stickPlan) tapeOf(l unit.Length) string {
	return minus(unit.Of(l, unit.KindTape).Format(d.in.Result.Units))
}

func (d *stickPlan) rows(c *design.Cutting, b *cut.Bar) [][]string {
	var rows [][]string
	for _, p := range b.Cuts {
		rows = append(rows, []string{c.Pieces[p.Piece].Mark, d.tapeOf(p.Length)})
	}
	return append(rows, []string{d.in.say("sticks.rest"), d.tapeOf(b.Remnant)})
}

// pieces draws the pieces along the bar, each with its mark and length where
// they fit, and hatches what is left.
func (d *stickPlan) pieces(c *design.Cutting, b *cut.Bar, name string) {
	scale := (wide - 2*margin) / float64(d.longest)
	foot := d.y + barTall
	kerf := 0.0
	if b.Kerfs > 0 { // what is neither piece nor left is sawdust, the same at each cut
		rest := b.Length - b.Remnant
		for _, p := range b.Cuts {
			rest -= p.Length
		}
		kerf = max(0, float64(rest)) / float64(b.Kerfs)
	}
	at := 0.0
	for _, p := range b.Cuts {
		mark := c.Pieces[p.Piece].Mark
		x0, x1 := margin+at*scale, margin+(at+float64(p.Length))*scale
		d.touch(Group{Name: "piece " + mark, Mark: mark, Title: mark + ", " + d.tapeOf(p.Length) + ", " + name}, func() {
			d.add(polygonOf(rectangle(x0, d.y, x1, foot), line, Wash))
			for _, label := range []string{mark + " " + d.tapeOf(p.Length), mark} {
				t := Text{At: Point{(x0 + x1) / 2, (d.y+foot)/2 + small*0.36}, Size: small, Bold: true, Anchor: Middle, Text: label}
				if t.Width() < x1-x0-1 {
					d.text(t)
					break
				}
			}
		})
		at += float64(p.Length) + kerf
	}
	x0, x1 := margin+(float64(b.Length)-float64(b.Remnant))*scale, margin+float64(b.Length)*scale
	d.add(polygonOf(rectangle(margin, d.y, x1, foot), Pen{Ink: Black, Wide: 0.25}, Clear))
	if b.Remnant <= 0 {
		return
	}
	for x := x0 + 1.2; x+barTall/2 < x1; x += 3 {
		d.add(Line{Point{x, foot}, Point{x + barTall/2, d.y}, help})
	}
}
