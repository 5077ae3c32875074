package paper

import (
	"math"
	"strings"

	"plashet/drawing"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/words"
)

// Sizes, mm.
const (
	holes  = 20.0 // margin at the left, for a punch
	side   = 9.0  // at the right
	top    = 38.0 // where a page is filled from, below its head
	bottom = 24.0 // kept for the foot
	body   = 3.6  // size of the letters: about 10 points
	hand   = 4.3  // of what is read beside the saw or with glue on the hands: above 12 points
	small  = 3.2  // above 9 points
	large  = 4.8
	huge   = 6.2
	lead   = 1.36 // from line to line, in sizes
)

var (
	thin  = drawing.Pen{Ink: drawing.Black, Wide: 0.2}
	rule  = drawing.Pen{Ink: drawing.Black, Wide: 0.35}
	heavy = drawing.Pen{Ink: drawing.Black, Wide: 0.8}
)

// flow fills pages from the top down and begins a new one where the next thing
// does not fit.
type flow struct {
	in      *Input
	art     *art
	set     setting
	name    string
	title   string
	pages   [][]drawing.Item
	headed  headed
	y       float64
	x0      float64
	x1      float64
	foot    float64                      // how far down a page is filled
	fresh   bool                         // nothing stands on the page yet
	about   func(code, path string) bool // what the sheet's figures hang on; nil: nothing of it is listed
	full    func(code, path string) bool // of that, what is listed in full here; nil: all. The rest stands on the sheet of the assembly
	accepts func(code, path string) bool // the accepted findings that bear on it, where those are others
	client  bool                         // the sheet is for the client
	stood   bool                         // what the sheet hangs on is written
	afloat  []drawing.Sheet              // pictures that stand where a page has room for them
}

func newFlow(in *Input, drawings *art, name string, set setting) *flow {
	wide, _ := in.Paper.Size()
	f := &flow{in: in, art: drawings, set: set, name: name, x0: holes, x1: wide - side}
	f.title = f.word("paper.title." + name)
	f.page()
	return f
}

// page begins a new one.
func (f *flow) page() {
	f.pages = append(f.pages, nil)
	_, tall := f.in.Paper.Size()
	f.foot = tall - bottom
	if len(f.pages) == f.set.page {
		f.foot -= f.set.less
	}
	f.y, f.fresh = top, true
	f.land()
}

// float puts drawings, two side by side, where there is room: here, or else at the
// top of the pages to come, with the text that follows round them.
func (f *flow) float(list []drawing.Sheet) {
	f.afloat = append(f.afloat, list...)
	f.land()
}

// land sets down the next row of what is afloat, where it fits.
func (f *flow) land() {
	if len(f.afloat) == 0 {
		return
	}
	row := f.afloat[:min(2, len(f.afloat))]
	if tall, _ := f.rowOf(row); f.room() < tall+2 && !f.fresh {
		return
	}
	f.afloat = f.afloat[len(row):]
	f.pictures(row)
	if !f.fresh {
		f.gap(2)
	}
}

// aground sets down all that is still afloat.
func (f *flow) aground() {
	for len(f.afloat) > 0 {
		n := len(f.afloat)
		if f.land(); n == len(f.afloat) {
			f.page()
		}
	}
}

func (f *flow) add(items ...drawing.Item) {
	p := &f.pages[len(f.pages)-1]
	*p = append(*p, items...)
	f.fresh = false
}

// room gives how much of the page is left, mm.
func (f *flow) room() float64 { return f.foot - f.y }

// need begins a new page where less than tall is left, unless the page is empty. A
// heading that nothing stands under yet goes along.
func (f *flow) need(tall float64) {
	if f.room() >= tall || f.fresh {
		return
	}
	h, last := f.headed, len(f.pages)-1
	if alone := h.page == last && h.from > 0 && h.to == len(f.pages[last]); !alone {
		f.page()
		return
	}
	f.pages[last] = f.pages[last][:h.from]
	f.page()
	f.headline(h.text)
}

// headed is the last heading: its text, and which things of which page it is.
type headed struct {
	text           string
	page, from, to int
}

// gap leaves paper between two things, less where the sheet is set tighter.
func (f *flow) gap(mm float64) { f.apart(mm * f.set.loose) }

// apart leaves as much paper in every setting: to write on.
func (f *flow) apart(mm float64) {
	if !f.fresh {
		f.y += mm
	}
}

func (f *flow) word(code string) string { return f.in.Say.Word(code) }

func (f *flow) text(code string, args ...trace.Arg) string {
	return words.Plain(f.in.Say.Say(trace.Message{Code: code, Args: args}, f.units()))
}

func (f *flow) units() unit.System { return f.in.Result.Units }

// money is how amounts are written.
func (f *flow) money() unit.Style { return f.in.Result.Style }

func (f *flow) show(v unit.Value) string { return f.in.Say.Value(v, f.units()) }

func show[Q unit.Quantity](f *flow, q Q, k unit.Kind) string { return f.show(unit.Of(q, k)) }

func num[Q unit.Quantity](name string, q Q, k unit.Kind) trace.Arg { return trace.Num(name, q, k) }

func str(name, text string) trace.Arg { return trace.Str(name, text) }

func count(name string, n int) trace.Arg { return trace.Num(name, unit.Ratio(n), unit.KindCount) }

// write sets a line of letters.
func (f *flow) write(x, y, size float64, bold bool, s string) {
	f.add(drawing.Text{At: drawing.Point{X: x, Y: y}, Size: size, Bold: bold, Ink: drawing.Black, Text: s})
}

// heading begins a part of the sheet; it never stands alone at a page's foot.
func (f *flow) heading(s string) {
	f.headingOver(s, 3*body*lead)
}

// headingOver likewise, with so much of what follows on the same page.
func (f *flow) headingOver(s string, under float64) {
	f.gap(3)
	f.need(large*lead + 2.2 + under)
	f.headline(s)
}

// headline writes a heading with its line.
func (f *flow) headline(s string) {
	last := len(f.pages) - 1
	f.headed = headed{text: s, page: last, from: len(f.pages[last])}
	f.write(f.x0, f.y+large, large, true, fit(s, large, true, f.x1-f.x0))
	f.y += large*lead + 0.6
	f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: f.y}, To: drawing.Point{X: f.x1, Y: f.y}, Pen: thin})
	f.headed.to = len(f.pages[last])
	f.gap(1.6)
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

// warn writes what can hurt, in bold behind a bar that stands out without colour.
func (f *flow) warn(s string) {
	list := wrap(words.Plain(s), body, true, f.x1-f.x0-5)
	f.gap(0.8)
	for _, l := range list {
		f.need(body * lead)
		f.add(drawing.Line{From: drawing.Point{X: f.x0 + 0.8, Y: f.y + 0.4}, To: drawing.Point{X: f.x0 + 0.8, Y: f.y + body*lead - 0.2}, Pen: drawing.Pen{Ink: drawing.Black, Wide: 1.3}})
		f.write(f.x0+4, f.y+body, body, true, l)
		f.y += body * lead
	}
	f.gap(0.8)
}

// banner writes what stops the work, in a heavy frame.
func (f *flow) banner(s string) {
	list := wrap(words.Plain(s), large, true, f.x1-f.x0-8)
	tall := float64(len(list))*large*lead + 4
	f.need(tall)
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

// shrink is how much smaller than wished a picture may be drawn so that it goes
// on the page that is begun.
const shrink = 0.72

// leastScale keeps the letters of a picture, 4.6 mm on its sheet, above 8 points.
const leastScale = 0.614

// scaled gives how large a picture is drawn that is wished so wide: smaller where
// that saves a page, or where it would be higher than a page.
func (f *flow) scaled(s *drawing.Sheet, wide float64) float64 {
	k := min(wide/s.Width, (f.foot-top)/s.Height)
	if fits := f.room() / s.Height; fits < k && fits >= max(shrink*k, leastScale) {
		return fits
	}
	return k
}

// picture puts a drawing on the page, so wide or somewhat smaller.
func (f *flow) picture(s *drawing.Sheet, wide float64) {
	k := f.scaled(s, wide)
	f.need(s.Height*k - 1e-6)
	f.add(drawing.Placed(s, drawing.Point{X: f.x0, Y: f.y}, k)...)
	f.y += s.Height*k + 1
}

// pictures puts drawings on the page, two side by side.
func (f *flow) pictures(list []drawing.Sheet) {
	for len(list) > 0 {
		row := list[:min(2, len(list))]
		list = list[len(row):]
		f.gap(2)
		tall, k := f.rowOf(row)
		f.need(tall - 1e-6)
		for i := range row {
			f.add(drawing.Placed(&row[i], drawing.Point{X: f.x0 - outside + float64(i)*f.half(), Y: f.y}, k)...)
		}
		f.y += tall + 1
	}
}

// outside is how far a picture's own blank margin may lie outside what a page is
// filled to, mm: so its letters are larger.
const outside = 3.0

// half is the width of each of two pictures side by side.
func (f *flow) half() float64 { return (f.x1 - f.x0 + 2*outside) / 2 }

// rowOf gives how tall two pictures side by side are, and at which scale.
func (f *flow) rowOf(row []drawing.Sheet) (tall, k float64) {
	k = math.Inf(1)
	for i := range row {
		k = min(k, f.scaled(&row[i], f.half()))
	}
	for i := range row {
		tall = max(tall, row[i].Height*k)
	}
	return tall, k
}

func box(x0, y0, x1, y1 float64) []drawing.Point {
	return []drawing.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

func width(s string, size float64, bold bool) float64 {
	return drawing.Text{Size: size, Bold: bold, Text: s}.Width()
}

// fit shortens a text to a width.
func fit(s string, size float64, bold bool, most float64) string {
	if width(s, size, bold) <= most {
		return s
	}
	used := width("…", size, bold)
	for i, r := range s {
		if used += width(string(r), size, bold); used > most {
			return strings.TrimRight(s[:i], " ") + "…"
		}
	}
	return s
}

// wrap breaks a text into lines; a word longer than a line is broken too.
func wrap(s string, size float64, bold bool, most float64) []string {
	var out []string
	now, used := "", 0.0
	blank := width(" ", size, bold)
	for _, w := range drawing.Words(s) {
		wide := width(w, size, bold)
		if now != "" && used+blank+wide <= most {
			now, used = now+" "+w, used+blank+wide
			continue
		}
		if now != "" {
			out = append(out, now)
		}
		now, used = "", 0
		for _, r := range w {
			each := width(string(r), size, bold)
			if used+each > most && now != "" {
				out = append(out, now)
				now, used = "", 0
			}
			now, used = now+string(r), used+each
		}
	}
	if now != "" {
		out = append(out, now)
	}
	return out
}
