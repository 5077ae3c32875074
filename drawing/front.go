package drawing

import (
	"math"
	"strconv"

	"plashet/engine/design"
	"plashet/engine/unit"
)

// Front draws the pumps in hand on the pipe as drawn and on larger pipe: what
// each gives over what it draws. Those that no other beats in both are joined by
// a line. With less than two there is no sheet.
func Front(in Input) (Sheet, bool) {
	if in.Result == nil {
		return Sheet{}, false
	}
	var list []design.Option
	for _, o := range in.Result.Options {
		if o.Flow > 0 && o.Power > 0 && o.Beyond == unit.Exact {
			list = append(list, o)
		}
	}
	if len(list) < 2 {
		return Sheet{}, false
	}
	f := &front{page: newPage(in, "front", in.say("front.title")), list: list, number: make([]int, len(list))}
	n := 0
	for i, o := range list { // all others are marks without a number
		if !f.beaten(o) || o.AsIs {
			n++
			f.number[i] = n
		}
	}
	f.axes()
	f.group("best", f.best)
	for i := range f.list {
		f.point(i)
	}
	f.y = plotBottom + 16
	f.table(f.rows())
	f.paragraph(in.say("front.note"), false)
	return f.done(f.desc()), true
}

// front is the sheet while it is drawn.
type front struct {
	*page
	list   []design.Option
	number []int // of those that are listed; 0 for the others
	x, z   axis
	field  field
}

func (f *front) axes() {
	flow, power, least, low := 0.0, 0.0, math.Inf(1), math.Inf(1)
	for _, o := range f.list {
		flow, power = max(flow, float64(o.Flow)), max(power, float64(o.Power))
		least, low = min(least, float64(o.Flow)), min(low, float64(o.Power))
	}
	one, name := flowUnit(f.in.Result.Units)
	f.x = newSpan(f.in.Result.Units, plotLeft, plotRight, max(0, least-(flow-least)*0.1), flow+(flow-least)*0.1, one, name, steps)
	f.z = newSpan(f.in.Result.Units, plotBottom, plotTop, max(0, low-(power-low)*0.1), power+(power-low)*0.1, 1, unit.KindPower.UnitName(f.in.Result.Units), steps)
	f.field.area = rectangle(plotLeft+0.5, plotTop-4, plotRight+2, plotBottom-0.5)
	f.group("axes", func() {
		si, written := f.x.ticks()
		each := (plotRight - plotLeft) / float64(len(written)-1)
		for i, v := range si {
			x := f.x.at(v)
			f.add(Line{Point{x, plotTop}, Point{x, plotBottom}, grid})
			if widestOf(written...) < each-1 || i%2 == 0 {
				f.text(Text{At: Point{x, plotBottom + 6.6}, Size: small, Anchor: Middle, Text: written[i]})
			}
		}
		si, written = f.z.ticks()
		for i, v := range si {
			y := f.z.at(v)
			f.add(Line{Point{plotLeft, y}, Point{plotRight, y}, grid})
			f.text(Text{At: Point{plotLeft - 2, y + small*0.36}, Size: small, Anchor: End, Text: written[i]})
		}
		f.add(Line{Point{plotLeft, plotTop}, Point{plotLeft, plotBottom}, line}, Line{Point{plotLeft, plotBottom}, Point{plotRight, plotBottom}, line})
		f.text(Text{At: Point{margin, plotTop - 5}, Size: small, Text: f.say("front.power", "unit", f.z.name)})
		f.text(Text{At: Point{plotRight, plotBottom + 12.6}, Size: small, Anchor: End, Text: f.say("curve.flow", "unit", f.x.name)})
	})
}

func (f *front) at(o design.Option) Point {
	return Point{f.x.at(float64(o.Flow)), f.z.at(float64(o.Power))}
}

// beaten tells that another gives at least as much for no more, and is better in one.
func (f *front) beaten(o design.Option) bool {
	for _, x := range f.list {
		if x.Flow >= o.Flow && x.Power <= o.Power && (x.Flow > o.Flow || x.Power < o.Power) {
			return true
		}
	}
	return false
}

// best joins those that no other beats, by rising flow.
func (f *front) best() {
	var line []Point
	for _, o := range f.list {
		if !f.beaten(o) {
			line = append(line, f.at(o))
		}
	}
	sortByX(line)
	f.add(Polyline{line, stream})
	if len(line) > 1 {
		f.field.lines = append(f.field.lines, patchOf(line...))
	}
	for i := range f.list {
		p := f.at(f.list[i])
		box := rectangle(p.X-1.4, p.Y-1.4, p.X+1.4, p.Y+1.4)
		f.field.texts = append(f.field.texts, patchOf(box[:]...))
	}
}

// point draws one with its number; full where no other beats it, a square where
// it is the design as drawn.
func (f *front) point(i int) {
	o := f.list[i]
	n := strconv.Itoa(f.number[i])
	p := f.at(o)
	fill := Paper
	if !f.beaten(o) {
		fill = Black
	}
	f.touch(Group{Name: "option " + o.Pump, Mark: o.Pump, Title: o.Pump + ", " + f.in.language().Term(o.Pipe) + ": " + f.show(float64(o.Flow), unit.KindFlow)}, func() {
		if o.AsIs {
			f.add(polygonOf(rectangle(p.X-1.5, p.Y-1.5, p.X+1.5, p.Y+1.5), line, fill))
		} else {
			f.add(Arc{Centre: p, RX: 1.2, RY: 1.2, Sweep: 360, Pen: line, Fill: fill})
		}
		if f.number[i] == 0 {
			return
		}
		t := Text{Size: small, Bold: o.AsIs, Ink: Black, Halo: true, Text: n}
		if q, ok := f.field.callout(p, 1.4, t, Point{0.5, -0.7}); ok {
			if q.lead != nil {
				f.add(Line{q.lead[0], q.lead[1], help})
			}
			f.text(q.text)
		}
	})
}

func (f *front) rows() table {
	t := table{columns: []column{{anchor: End}, {flexible: true}, {}, {anchor: End, bold: true}, {anchor: End}}, head: []string{"", f.say("front.pump"), f.say("plan.pipe"), f.say("front.flow"), f.say("front.draws")}}
	for i, o := range f.list {
		if f.number[i] == 0 {
			continue
		}
		name := o.Pump
		if o.AsIs {
			name += " *"
		}
		t.add(strconv.Itoa(f.number[i]), name, f.in.language().Term(o.Pipe), f.show(float64(o.Flow), unit.KindFlow), f.show(float64(o.Power), unit.KindPower))
	}
	return t
}

func (f *front) desc() []string {
	out := []string{f.say("front.desc")}
	for _, o := range f.list {
		if !f.beaten(o) {
			out = append(out, f.say("front.descbest", "pump", o.Pump, "pipe", f.in.language().Term(o.Pipe), "flow", f.show(float64(o.Flow), unit.KindFlow), "power", f.show(float64(o.Power), unit.KindPower)))
		}
	}
	return out
}
