package drawing

import (
	"cmp"
	"slices"

	"plashet/engine/design"
	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// Curve draws the curves of the pumps in hand and of the system as drawn, with
// the operating point. Without a pump whose curve holds there is no sheet.
func Curve(in Input) (Sheet, bool) {
	if in.Result == nil || len(in.Curves.Pumps) == 0 {
		return Sheet{}, false
	}
	c := &curvePlot{page: newPage(in, "curve", in.say("curve.title"))}
	c.plot()
	c.y = plotBottom + 13
	c.figures()
	c.heads()
	return c.done(c.desc()), true
}

// plot draws all of it but the figures below.
func (c *curvePlot) plot() {
	c.axes()
	c.point()
	c.lines()
	c.texts()
}

// curvePlot is the sheet of the curves while it is drawn.
type curvePlot struct {
	*page
	x, h  axis
	field field
	met   meeting
	short bool // meetBeyond at the left end: the pump gives less
	flow  unit.Flow
	head  unit.Head
}

// meeting says how the pump and the system meet.
type meeting uint8

const (
	meetUnknown meeting = iota
	meetAt
	meetBeyond // past an end of the pump's data: no figure
	meetNone   // the pump does not lift the water that high
)

// Size of the plot, mm.
const (
	plotLeft   = 24.0
	plotRight  = 138.0
	plotTop    = 38.0
	plotBottom = 122.0
	steps      = 6
	samples    = 60 // points of a pump's curve
)

func (c *curvePlot) axes() {
	var flow, head float64
	for _, p := range c.in.Curves.Pumps {
		_, q, _, _ := p.Curve.Range()
		flow, head = max(flow, float64(q)), max(head, float64(p.Curve.Peak()))
	}
	if s := c.in.Curves.System; len(s) > 0 { // so far up that one sees where the system begins
		head = max(head, float64(s[0].Head)*1.15)
	}
	one, name := flowUnit(c.in.Result.Units)
	for n := steps; n > 0; n-- { // as many ticks as their numbers leave room for
		c.x = newAxis(c.in.Result.Units, plotLeft, plotRight, flow, one, name, n)
		_, written := c.x.ticks()
		if each := (plotRight - plotLeft) / float64(len(written)-1); n == 1 || widestOf(written...) < each-2 {
			break
		}
	}
	one, name = headUnit(c.in.Result.Units)
	c.h = newAxis(c.in.Result.Units, plotBottom, plotTop, head*1.02, one, name, steps+1)
	c.field.area = rectangle(plotLeft+0.5, plotTop-4, plotRight+1, plotBottom-0.5)

	c.group("axes", func() {
		si, written := c.x.ticks()
		for i, v := range si {
			x := c.x.at(v)
			c.add(Line{Point{x, plotTop}, Point{x, plotBottom}, grid})
			c.text(Text{At: Point{x, plotBottom + 5.6}, Size: small, Anchor: Middle, Text: written[i]})
		}
		si, written = c.h.ticks()
		for i, v := range si {
			y := c.h.at(v)
			c.add(Line{Point{plotLeft, y}, Point{plotRight, y}, grid})
			c.text(Text{At: Point{plotLeft - 2, y + small*0.36}, Size: small, Anchor: End, Text: written[i]})
		}
		c.add(Line{Point{plotLeft, plotTop}, Point{plotLeft, plotBottom}, line},
			Line{Point{plotLeft, plotBottom}, Point{plotRight, plotBottom}, line})
		c.text(Text{At: Point{margin, plotTop - 5}, Size: small, Text: c.say("curve.head", "unit", c.h.name)})
		c.text(Text{At: Point{plotRight, plotBottom + 11.6}, Size: small, Anchor: End, Text: c.say("curve.flow", "unit", c.x.name)})
	})
}

// sortByX puts points from left to right.
func sortByX(points []Point) {
	slices.SortFunc(points, func(a, b Point) int { return cmp.Compare(a.X, b.X) })
}

// at gives the place of a flow and head on the plot.
func (c *curvePlot) at(q unit.Flow, h unit.Head) Point {
	return Point{c.x.at(float64(q)), c.h.at(float64(h))}
}

func (c *curvePlot) used() (design.PumpCurve, bool) {
	for _, p := range c.in.Curves.Pumps {
		if p.Used {
			return p, true
		}
	}
	return design.PumpCurve{}, false
}

// point finds out how pump and system meet.
func (c *curvePlot) point() {
	d := c.in.Result.Delivery
	p, ok := c.used()
	if d == nil || !ok {
		return
	}
	least, most, _, _ := p.Curve.Range()
	c.flow, c.head = d.Flow, d.Head
	switch {
	case d.Beyond == unit.MoreThan:
		c.met, c.flow = meetBeyond, most
	case d.Beyond == unit.LessThan:
		c.met, c.flow, c.short = meetBeyond, least, true
	case d.Flow <= 0:
		c.met = meetNone
	default:
		c.met = meetAt
	}
}

// lines draws the system's curve with what is lost in pipe and fittings washed
// in, the pumps' curves and the lines to the operating point.
func (c *curvePlot) lines() {
	system := c.clipped()
	c.group("system", func() {
		if c.met == meetAt {
			c.wash(system)
		}
		if len(system) > 1 {
			c.add(Polyline{system, stream})
		}
	})
	c.field.lines = append(c.field.lines, patchOf(system...))
	for _, p := range c.in.Curves.Pumps {
		points := c.along(p.Curve)
		pen := Pen{Ink: Pencil, Wide: 0.45}
		if p.Used {
			pen = thick
		}
		c.touch(Group{Name: "pump " + p.Name, Mark: p.Name, Title: c.say("curve.pump", "name", p.Name)}, func() {
			if estimated(p) { // a band, and the estimate in it broken
				pen.Dash = Dashed
				low, high := p.Curve.Band()
				c.add(Polyline{c.along(low), help}, Polyline{c.along(high), help})
			}
			c.add(Polyline{points, pen})
		})
		c.field.lines = append(c.field.lines, patchOf(points...))
	}
	if c.met != meetAt {
		return
	}
	for _, o := range c.others() {
		for _, p := range c.in.Curves.Pumps {
			if p.Name == o.Pump {
				h, _, _ := p.Curve.Head(o.Flow)
				c.add(Arc{Centre: c.at(o.Flow, h), RX: 1, RY: 1, Sweep: 360, Pen: Pen{Ink: Pencil, Wide: 0.45}, Fill: Paper})
			}
		}
	}
	c.band()
	at := c.at(c.flow, c.head)
	foot, side := Point{at.X, plotBottom}, Point{plotLeft, at.Y}
	c.group("operating point", func() {
		c.add(Line{at, foot, dots}, Line{at, side, dots}, Arc{Centre: at, RX: 1.7, RY: 1.7, Sweep: 360, Pen: thick, Fill: Paper})
	})
	c.field.lines = append(c.field.lines, patchOf(at, foot), patchOf(at, side))
	ring := rectangle(at.X-2.2, at.Y-2.2, at.X+2.2, at.Y+2.2)
	c.field.texts = append(c.field.texts, patchOf(ring[:]...))
}

// estimated tells that a pump's curve is made from the two figures on its box.
func estimated(p design.PumpCurve) bool { return p.Curve.Basis() == hydro.CurveNameplate }

// along gives points along a pump's curve.
func (c *curvePlot) along(curve *hydro.Curve) []Point {
	low, high, _, _ := curve.Range()
	points := make([]Point, 0, samples+1)
	for i := range samples + 1 {
		q := low + (high-low)*unit.Flow(i)/samples
		h, _, _ := curve.Head(q)
		points = append(points, c.at(q, h))
	}
	return points
}

// clipped gives the system's curve as far as it lies on the plot.
func (c *curvePlot) clipped() []Point {
	var out []Point
	for i, s := range c.in.Curves.System {
		h := float64(s.Head)
		if h <= c.h.most && h >= 0 && float64(s.Flow) <= c.x.most {
			out = append(out, c.at(s.Flow, s.Head))
			continue
		}
		if i > 0 && len(out) > 0 && h > c.h.most { // up to the edge
			b := c.in.Curves.System[i-1]
			t := (c.h.most - float64(b.Head)) / (h - float64(b.Head))
			out = append(out, c.at(b.Flow+unit.Flow(t)*(s.Flow-b.Flow), unit.Head(c.h.most)))
		}
		if len(out) > 0 {
			break
		}
	}
	return out
}

// wash lays the colour between the static head and the system's curve up to the
// operating point: what pipe and fittings take.
func (c *curvePlot) wash(system []Point) {
	static := c.h.at(float64(c.in.Result.Delivery.Static))
	at := c.at(c.flow, c.head)
	if static <= at.Y || static > plotBottom {
		return
	}
	area := []Point{{plotLeft, static}}
	for _, p := range system {
		if p.X < at.X && p.Y < static {
			area = append(area, p)
		}
	}
	area = append(area, at, Point{at.X, static})
	c.add(Polygon{Points: area, Fill: Wash}, Line{Point{plotLeft, static}, Point{at.X, static}, hidden})
	c.field.lines = append(c.field.lines, patchOf(Point{plotLeft, static}, Point{at.X, static}))
}
