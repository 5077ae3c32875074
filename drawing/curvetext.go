package drawing

import (
	"math"
	"slices"

	"plashet/engine/design"
	"plashet/engine/unit"
)

// texts names the operating point and the curves beside them.
func (c *curvePlot) texts() {
	c.group("names", func() {
		c.pointText()
		for _, p := range c.in.Curves.Pumps {
			t := Text{Size: small, Bold: p.Used, Ink: Black, Halo: true, Text: fit(c.say("curve.pump", "name", p.Name), 50)}
			if estimated(p) {
				t.Text += ", " + c.say("curve.box")
			}
			c.name(c.along(p.Curve), 0.3, t)
		}
		if points := c.clipped(); len(points) > 1 {
			c.name(points, 0.8, Text{Size: small, Ink: Black, Halo: true, Text: c.say("curve.system")})
		}
		c.split()
	})
}

// pointText says how pump and system meet, where they do.
func (c *curvePlot) pointText() {
	t := Text{Size: figure, Bold: true, Ink: Black, Halo: true}
	at, ring := c.at(c.flow, c.head), 2.2
	switch c.met {
	case meetAt:
		t.Text = c.show(float64(c.flow), unit.KindFlow)
		if p, _ := c.used(); estimated(p) {
			t.Text = c.say("curve.about", "flow", t.Text)
		}
	case meetBeyond:
		p, _ := c.used()
		h, _, _ := p.Curve.Head(c.flow)
		at, ring = c.at(c.flow, h), 1
		t.Text = c.say(c.beyond("curve.over", "curve.under"), "flow", c.show(float64(c.flow), unit.KindFlow))
	case meetNone:
		at, ring = Point{plotLeft, plotBottom}, 0
		t.Text = c.say("curve.none")
	default:
		return
	}
	p, ok := c.field.callout(at, ring, t, Point{0.7, -0.7})
	if !ok {
		return // the table has it
	}
	if p.lead != nil {
		c.add(Line{p.lead[0], p.lead[1], help})
	}
	c.text(p.text)
}

// name puts a text by a curve, best at a part of its length.
func (c *curvePlot) name(points []Point, wish float64, t Text) {
	var places []place
	last := float64(len(points) - 1)
	for i, p := range points {
		off := math.Abs(float64(i)/last - wish)
		for _, d := range [...]struct {
			a      Anchor
			dx, dy float64
		}{{Start, 2.5, -1.5}, {Start, 2.5, small}, {End, -2.5, -1.5}, {End, -2.5, small}, {Start, 4, -4}, {End, -4, -4}} {
			t.Anchor, t.At = d.a, p.Add(Point{d.dx, d.dy})
			places = append(places, place{text: t, cost: 40*off + math.Hypot(d.dx, d.dy)})
		}
	}
	if p, ok := c.field.best(places); ok {
		c.text(p.text)
	}
}

// split names the two parts of the head beside the line down from the operating
// point, where there is room; the table names them in any case.
func (c *curvePlot) split() {
	at := c.at(c.flow, c.head)
	if c.met != meetAt {
		return
	}
	static := c.h.at(float64(c.in.Result.Delivery.Static))
	for _, part := range []struct {
		from, to float64
		name     string
	}{{plotBottom, static, c.say("curve.static")}, {static, at.Y, c.say("curve.loss")}} {
		if part.from-part.to < small*1.2 {
			continue
		}
		left := Text{Size: small, Ink: Black, Text: part.name, Anchor: End, At: Point{at.X - 2, (part.from+part.to)/2 + small*0.36}}
		right := left
		right.Anchor, right.At.X = Start, at.X+2
		if p, ok := c.field.ifFree([]place{{text: left}, {text: right, cost: 1}}); ok {
			c.text(p.text)
		}
	}
}

// figures writes the figures below the plot.
func (c *curvePlot) figures() {
	d := c.in.Result.Delivery
	if d == nil || c.met == meetUnknown {
		return
	}
	c.y += 3
	t := table{columns: []column{{flexible: true}, {anchor: End, bold: true}, {}}, indent: 9}
	static := -1 // the row of the static head
	if c.met == meetAt {
		t.add(c.say("curve.pump", "name", d.Pump), c.show(float64(c.flow), unit.KindFlow), c.say("curve.at", "head", c.show(float64(c.head), unit.KindHead)))
		c.bandRows(&t)
		static = len(t.rows)
		t.add(c.say("curve.static"), c.show(float64(d.Static), unit.KindHead), "")
		t.add(c.say("curve.loss"), c.show(float64(d.Head-d.Static), unit.KindHead), "")
	}
	for _, f := range d.Feeds {
		wanted, got := "", c.show(float64(f.Flow), unit.KindFlow)
		if f.Wanted > 0 {
			wanted = c.say("curve.feed", "flow", c.show(float64(f.Wanted), unit.KindFlow))
		}
		if f.Dry {
			got = c.say("curve.dry")
		}
		if c.met == meetBeyond {
			got = "—" // the flows rest on a pump curve that does not reach them
		}
		t.add(f.Name, got, wanted)
	}
	for _, o := range c.others() {
		t.add(c.say("curve.pump", "name", o.Pump), c.show(float64(o.Flow), unit.KindFlow), c.say("curve.same"))
	}
	at := c.table(t)
	if static >= 0 { // what its line and the wash below it mean
		line, loss := at[static]+small*0.64, at[static+1]+small*0.64
		c.add(Line{Point{margin, line}, Point{margin + 6, line}, hidden},
			polygonOf(rectangle(margin, loss-1.6, margin+6, loss+1.6), Pen{}, Wash))
	}
}

// others gives what the other pumps in hand would give on the same pipe.
func (c *curvePlot) others() []design.Option {
	var out []design.Option
	pipe := ""
	for _, o := range c.in.Result.Options {
		if o.AsIs {
			pipe = o.Pipe
		}
	}
	for _, o := range c.in.Result.Options {
		if o.AsIs || o.Pipe != pipe || o.Flow <= 0 || o.Beyond != unit.Exact {
			continue
		}
		if slices.ContainsFunc(c.in.Curves.Pumps, func(p design.PumpCurve) bool { return p.Name == o.Pump }) {
			out = append(out, o)
		}
	}
	return out
}

// beyond chooses between what is said past the right end of the pump's data and
// past the left.
func (c *curvePlot) beyond(right, left string) string {
	if c.short {
		return left
	}
	return right
}

// desc says the sheet in words.
func (c *curvePlot) desc() []string {
	var out []string
	p, _ := c.used()
	d := c.in.Result.Delivery
	flow := c.show(float64(c.flow), unit.KindFlow)
	switch c.met {
	case meetAt:
		out = append(out, c.say("curve.desc", "name", p.Name, "flow", flow, "head", c.show(float64(c.head), unit.KindHead)),
			c.say("curve.parts", "static", c.show(float64(d.Static), unit.KindHead), "loss", c.show(float64(d.Head-d.Static), unit.KindHead)))
	case meetBeyond:
		out = append(out, c.say(c.beyond("curve.overdesc", "curve.underdesc"), "name", p.Name, "flow", flow))
	case meetNone:
		out = append(out, c.say("curve.nonedesc", "name", p.Name))
	}
	for _, o := range c.others() {
		out = append(out, c.say("curve.other", "name", o.Pump, "flow", c.show(float64(o.Flow), unit.KindFlow)))
	}
	return out
}
