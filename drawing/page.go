package drawing

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// Input is what is drawn.
type Input struct {
	Job    *job.Job
	Result *design.Result
	Curves design.Curves
	Say    *words.Language
}

// Sheets gives all the sheets that the answer has enough for: the pond in plan,
// pump and pipe, the pumps in hand, levels, start and stop case by case, sticks,
// the assembly over its four corners, the pump's way out.
func Sheets(in Input) []Sheet {
	var out []Sheet
	for _, draw := range []func(Input) (Sheet, bool){Plan, Curve, Front, Levels} {
		if s, ok := draw(in); ok {
			out = append(out, s)
		}
	}
	if in.Result != nil && in.Result.Motion != nil {
		for i := range in.Result.Motion.Cases {
			if s, ok := Course(in, in.Result.Motion.Cases[i].Case); ok {
				out = append(out, s)
			}
		}
	}
	out = append(out, Sticks(in)...)
	for _, c := range Corners() {
		if s, ok := Assembly(in, c); ok {
			out = append(out, s)
		}
	}
	if s, ok := WayOut(in); ok {
		out = append(out, s)
	}
	return Numbered(out)
}

// Numbered gives sheets of one name a number each: their names are addresses and
// names of files.
func Numbered(list []Sheet) []Sheet {
	seen := map[string]int{}
	for i := range list {
		name := list[i].Name
		if seen[name]++; seen[name] > 1 {
			list[i].Name += "-" + strconv.Itoa(seen[name])
		}
	}
	return list
}

// Sizes of every sheet, mm. The small letters are 10 px high on a screen that
// shows the sheet 320 px wide.
const (
	wide   = 148.0
	margin = 7.0
	small  = 4.6
	figure = 5.2
	title  = 6.4
	row    = 6.6 // from line to line of small letters
)

// The pens.
var (
	thick  = Pen{Ink: Black, Wide: 0.75}
	line   = Pen{Ink: Black, Wide: 0.4}
	fine   = Pen{Ink: Black, Wide: 0.22}
	help   = Pen{Ink: Pencil, Wide: 0.2}
	hidden = Pen{Ink: Pencil, Wide: 0.25, Dash: Dashed}
	dots   = Pen{Ink: Pencil, Wide: 0.3, Dash: Dotted}
	stream = Pen{Ink: Water, Wide: 0.8}
	grid   = Pen{Ink: Wash, Wide: 0.25}
)

// page is a sheet while it is drawn.
type page struct {
	in    Input
	sheet Sheet
	y     float64 // how far down it is filled
}

// newPage starts a sheet with its head: what it shows, of which job.
func newPage(in Input, name, heading string) *page {
	p := &page{in: in, sheet: Sheet{Name: name, Title: heading + ": " + in.Result.Name, Width: wide}}
	head := Text{At: Point{margin, 13}, Size: title, Bold: true, Text: heading}
	for head.Width() > wide-2*margin && head.Size > small {
		head.Size -= 0.2
	}
	p.text(head)
	sub := in.Result.Name
	if in.Job.Date != "" {
		date := Text{At: Point{wide - margin, 20}, Size: small, Anchor: End, Text: in.Job.Date}
		p.text(date)
		sub = fit(sub, wide-2*margin-date.Width()-3)
	}
	p.text(Text{At: Point{margin, 20}, Size: small, Text: fit(sub, wide-2*margin)})
	p.add(
		Line{Point{margin, 23.4}, Point{wide - margin, 23.4}, line},
		Line{Point{margin, 24.4}, Point{wide - margin, 24.4}, Pen{Ink: Water, Wide: 0.3}},
	)
	p.y = 28
	return p
}

func (p *page) add(items ...Item) { p.sheet.Items = append(p.sheet.Items, items...) }

// text adds a text, where it says anything; black unless it says otherwise.
func (p *page) text(t Text) {
	if t.Text == "" {
		return
	}
	if t.Ink == Clear {
		t.Ink = Black
	}
	p.add(t)
}

// group adds what f draws as one named group.
func (p *page) group(name string, f func()) {
	p.touch(Group{Name: name}, f)
}

// touch adds what f draws as one group that can be touched.
func (p *page) touch(g Group, f func()) {
	before := p.sheet.Items
	p.sheet.Items = nil
	f()
	g.Items = p.sheet.Items
	p.sheet.Items = before
	p.add(g)
}

// data keeps the figures behind a picture; rows are as wide as the widest.
func (p *page) data(title string, head []string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	if title == "" {
		title = p.sheet.Title
	}
	p.sheet.Data = append(p.sheet.Data, Data{title, head, rows})
}

// done closes the sheet below what is drawn.
func (p *page) done(desc []string) Sheet {
	// The crew's own note stays out: drawings are handed on.
	if p.in.Job != nil && p.in.Job.ClientNote != "" {
		desc = append(desc, p.in.Job.ClientNote)
	}
	p.sheet.Desc = strings.Join(desc, " ")
	p.sheet.Height = p.y + margin
	return p.sheet
}

// paragraph writes a text over as many lines as it needs.
func (p *page) paragraph(s string, bold bool) {
	for _, l := range wrap(s, bold, wide-2*margin) {
		p.text(Text{At: Point{margin, p.y + small}, Size: small, Bold: bold, Text: l})
		p.y += row
	}
}

func (p *page) show(si float64, k unit.Kind) string {
	return minus(unit.Value{SI: si, Kind: k}.Format(p.in.Result.Units))
}

// tape shows a length as it is cut or taped.
func (p *page) tape(l unit.Length) string { return p.show(float64(l), unit.KindTape) }

// minus makes a hyphen before a number a minus sign, as wide as a plus.
func minus(s string) string {
	if after, ok := strings.CutPrefix(s, "-"); ok {
		return "−" + after
	}
	return s
}

// fit shortens a plain text of small letters to a width.
func fit(s string, width float64) string { return fitted(s, false, width) }

func fitted(s string, bold bool, width float64) string {
	whole := []rune(s)
	for n := len(whole); n > 0; n-- {
		out := string(whole[:n])
		if n < len(whole) {
			out = strings.TrimRight(out, " ") + "…"
		}
		if (Text{Size: small, Bold: bold, Text: out}).Width() <= width {
			return out
		}
	}
	return ""
}

// wrap breaks a text of small letters into lines; a word longer than a line is shortened.
func wrap(s string, bold bool, width float64) []string {
	var out []string
	now := ""
	for _, w := range Words(s) {
		try := w
		if now != "" {
			try = now + " " + w
		}
		if (Text{Size: small, Bold: bold, Text: try}).Width() <= width {
			now = try
			continue
		}
		if now != "" {
			out = append(out, now)
		}
		now = fitted(w, bold, width)
	}
	if now != "" {
		out = append(out, now)
	}
	return out
}

// Words takes a text apart where a line may end: at its blanks, but for the one
// between the feet and the inches of a length, and between a figure and its unit.
// With that broken, 9' at the end of one line would be cut as nine feet.
func Words(s string) []string {
	var out []string
	for _, w := range strings.Fields(s) {
		if n := len(out); n > 0 && (feet(out[n-1]) && strings.IndexFunc(w, digit) == 0 || measured(out[n-1], w)) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// units are those that a figure keeps on its line.
var units = [...]string{"mm", "cm", "m", "in", "ft", "mm²", "m²", "ft²", "m³", "ft³", "yd³", "L", "mL", "gal", "gpm", "gph", "L/h", "m/s", "ft/s", "W", "V", "A", "kWh", "°C", "°F", "%"}

// measured tells that a word is a figure and the next its unit, with or without
// the mark that ends a sentence.
func measured(w, next string) bool {
	return w != "" && digit(rune(w[len(w)-1])) && slices.Contains(units[:], strings.TrimRight(next, ".,;:)"))
}

// feet tells that a word ends in a figure of feet.
func feet(w string) bool {
	n := len(w)
	return n > 1 && w[n-1] == '\'' && digit(rune(w[n-2]))
}

func digit(r rune) bool { return '0' <= r && r <= '9' }
