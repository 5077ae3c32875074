package paper

import (
	"plashet/drawing"
	"plashet/words"
)

// write sets a line of letters.
func (f *flow) write(x, y, size float64, bold bool, s string) {
	f.add(drawing.Text{At: drawing.Point{X: x, Y: y}, Size: size, Bold: bold, Ink: drawing.Black, Text: s})
}

// paragraph writes a text over as many lines as it needs, over pages too.
func (f *flow) paragraph(s string, bold bool) { f.lines(f.x0, f.x1, s, body, bold) }

func (f *flow) lines(x0, x1 float64, s string, size float64, bold bool) {
	list := wrap(words.Plain(s), size, bold, x1-x0)
	for i, l := range list {
		f.need(size * lead * together(i, len(list)))
		f.write(x0, f.y+size, size, bold, l)
		f.y += size * lead
	}
}

// together gives how many of a paragraph's n lines stand on one page from line i
// on: one alone at the foot of a page or the head of the next is read past.
func together(i, n int) float64 {
	switch {
	case n <= 3 && i == 0:
		return float64(n)
	case i == 0 || i == n-2:
		return 2
	}
	return 1
}

// bullet writes an entry of a list.
func (f *flow) bullet(s string) {
	for i, l := range wrap(words.Plain(s), body, false, f.x1-f.x0-4) {
		f.need(body * lead)
		if i == 0 {
			f.write(f.x0, f.y+body, body, false, "·")
		}
		f.write(f.x0+4, f.y+body, body, false, l)
		f.y += body * lead
	}
}

// warn writes what can hurt, in bold behind a bar that stands out without colour. It
// is not torn over two pages, unless it takes more than one.
func (f *flow) warn(s string) {
	list := f.warning(s)
	f.gap(0.8)
	f.need(float64(len(list)) * body * lead)
	for _, l := range list {
		f.need(body * lead)
		f.add(drawing.Line{From: drawing.Point{X: f.x0 + 0.8, Y: f.y + 0.4}, To: drawing.Point{X: f.x0 + 0.8, Y: f.y + body*lead - 0.2}, Pen: drawing.Pen{Ink: drawing.Black, Wide: 1.3}})
		f.write(f.x0+4, f.y+body, body, true, l)
		f.y += body * lead
	}
	f.gap(0.8)
}

// warning breaks what can hurt into its lines.
func (f *flow) warning(s string) []string { return wrap(words.Plain(s), body, true, f.x1-f.x0-5) }

// warningTall gives how much paper a warning takes, mm.
func (f *flow) warningTall(s string) float64 {
	return float64(len(f.warning(s)))*body*lead + 1.6*f.set.loose
}

// banner writes what stops the work, in a heavy frame.
func (f *flow) banner(s string) {
	f.need(float64(len(f.inFrame(s)))*large*lead + 4)
	f.framed(s)
}

// bannerAll likewise, and again at the top of every page to come: one that is
// taken from the clipboard alone still says it.
func (f *flow) bannerAll(s string) {
	f.banner(s)
	f.again = s
}

func (f *flow) inFrame(s string) []string { return wrap(words.Plain(s), large, true, f.x1-f.x0-8) }

// framed writes letters in a heavy frame.
func (f *flow) framed(s string) {
	list := f.inFrame(s)
	tall := float64(len(list))*large*lead + 4
	f.add(drawing.Polygon{Points: box(f.x0, f.y, f.x1, f.y+tall), Pen: heavy})
	y := f.y + 2
	for _, l := range list {
		f.write(f.x0+4, y+large, large, true, l)
		y += large * lead
	}
	f.y += tall + 2
}

// tick draws a box to tick.
func (f *flow) tick(x, y float64) {
	f.add(drawing.Polygon{Points: box(x, y, x+body, y+body), Pen: rule})
}

// check writes something to do with a box to tick.
func (f *flow) check(s string) {
	list := wrap(words.Plain(s), body, false, f.x1-f.x0-7)
	f.need(min(float64(len(list)), 3) * body * lead)
	f.tick(f.x0, f.y+0.3)
	for _, l := range list {
		f.need(body * lead)
		f.write(f.x0+7, f.y+body, body, false, l)
		f.y += body * lead
	}
	f.gap(1.2)
}

func box(x0, y0, x1, y1 float64) []drawing.Point {
	return []drawing.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}
