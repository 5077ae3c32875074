package paper

import (
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
	from    float64 // where the page is filled from: top, or below what stands again on it
	began   int     // how many things that are
	again   string  // what stops the work, written at the top of every page to come
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
	f.y, f.from = top, top
	if f.again != "" {
		f.framed(f.again)
		f.from = f.y
	}
	f.began, f.fresh = len(f.pages[len(f.pages)-1]), true
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
	if alone := h.page == last && h.from > f.began && h.to == len(f.pages[last]); !alone {
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
