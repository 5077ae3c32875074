package drawing

import (
	"slices"

	"plashet/engine/design"
	"plashet/engine/unit"
)

// banded finds the band of a figure of the whole; false where no bands were
// asked for.
func banded(in Input, figure string) (design.Banded, bool) {
	if in.Result.Bands == nil {
		return design.Banded{}, false
	}
	i := slices.IndexFunc(in.Result.Bands.Outputs, func(b design.Banded) bool { return b.Figure == figure })
	if i < 0 {
		return design.Banded{}, false
	}
	return in.Result.Bands.Outputs[i], true
}

// band draws between which flows and heads the operating point lies in 90 of
// 100 draws round what was read.
func (c *curvePlot) band() {
	flow, ok := banded(c.in, "pump.flow")
	if !ok || c.met != meetAt {
		return
	}
	x0, x1 := c.x.at(max(0, flow.Low.SI)), c.x.at(min(flow.High.SI, c.x.most))
	at := c.at(c.flow, c.head)
	y0, y1 := at.Y, at.Y
	if head, ok := banded(c.in, "pump.head"); ok {
		y0, y1 = c.h.at(max(0, head.Low.SI)), c.h.at(min(head.High.SI, c.h.most))
	}
	c.touch(Group{Name: "band", Title: c.say("curve.bandof", "low", c.show(flow.Low.SI, unit.KindFlow), "high", c.show(flow.High.SI, unit.KindFlow))}, func() {
		bar := Pen{Ink: Black, Wide: 0.9}
		c.add(Line{Point{x0, at.Y}, Point{x1, at.Y}, bar}, Line{Point{at.X, y0}, Point{at.X, y1}, bar})
		for _, x := range [...]float64{x0, x1} {
			c.add(Line{Point{x, at.Y - 1.6}, Point{x, at.Y + 1.6}, bar})
		}
		for _, y := range [...]float64{y0, y1} {
			c.add(Line{Point{at.X - 1.6, y}, Point{at.X + 1.6, y}, bar})
		}
	})
	c.field.lines = append(c.field.lines, patchOf(Point{x0, at.Y}, Point{x1, at.Y}), patchOf(Point{at.X, y0}, Point{at.X, y1}))
}

// bandRows adds the bands to the table below the plot.
func (c *curvePlot) bandRows(t *table) {
	for _, f := range [...]struct {
		figure, label string
		kind          unit.Kind
	}{{"pump.flow", "curve.flowband", unit.KindFlow}, {"pump.head", "curve.headband", unit.KindHead}} {
		if b, ok := banded(c.in, f.figure); ok && c.met == meetAt {
			t.add(c.say(f.label), c.show(b.Low.SI, f.kind), c.say("curve.to", "high", c.show(b.High.SI, f.kind)))
		}
	}
}

// Compare draws the curves of two pumps in hand on the system as drawn, and
// their figures side by side. It is false where a pump is not among the curves.
func Compare(in Input, a, b string) (Sheet, bool) {
	if in.Result == nil || a == b {
		return Sheet{}, false
	}
	two := in
	two.Curves.Pumps = nil
	for _, name := range [...]string{a, b} {
		for _, p := range in.Curves.Pumps {
			if p.Name == name {
				two.Curves.Pumps = append(two.Curves.Pumps, p)
			}
		}
	}
	if len(two.Curves.Pumps) != 2 {
		return Sheet{}, false
	}
	c := &curvePlot{page: newPage(two, "compare", in.say("compare.title"))}
	c.plot()
	c.y = plotBottom + 16
	c.sideBySide(a, b)
	return c.done([]string{in.say("compare.desc", "a", a, "b", b)}), true
}

// sideBySide writes what each of two pumps gives on the pipe as drawn.
func (c *curvePlot) sideBySide(a, b string) {
	t := table{columns: []column{{flexible: true}, {anchor: End, bold: true}, {anchor: End, bold: true}}, head: []string{"", fit(a, 45), fit(b, 45)}}
	of := func(name string) (design.Option, bool) {
		pipe := ""
		for _, o := range c.in.Result.Options {
			if o.AsIs {
				pipe = o.Pipe
			}
		}
		for _, o := range c.in.Result.Options {
			if o.Pump == name && o.Pipe == pipe {
				return o, true
			}
		}
		return design.Option{}, false
	}
	row := func(label string, show func(design.Option) string) {
		cells := []string{label}
		for _, name := range [...]string{a, b} {
			cell := "—"
			if o, ok := of(name); ok {
				cell = show(o)
			}
			cells = append(cells, cell)
		}
		t.add(cells...)
	}
	row(c.say("front.flow"), func(o design.Option) string {
		flow := c.show(float64(o.Flow), unit.KindFlow)
		switch o.Beyond {
		case unit.MoreThan:
			return c.say("curve.over", "flow", flow)
		case unit.LessThan:
			return c.say("curve.under", "flow", flow)
		case unit.Exact:
		}
		return flow
	})
	row(c.say("front.draws"), func(o design.Option) string {
		if o.Power <= 0 {
			return "—"
		}
		return c.show(float64(o.Power), unit.KindPower)
	})
	row(c.say("compare.year"), func(o design.Option) string {
		if o.Cost.Currency == "" {
			return "—"
		}
		return o.Cost.Round().Format(c.in.Result.Style)
	})
	cells := []string{c.say("compare.shutoff")}
	for _, p := range c.in.Curves.Pumps {
		cells = append(cells, c.show(float64(p.Curve.Peak()), unit.KindHead))
	}
	t.add(cells...)
	c.table(t)
}

// heads keeps the curves as rows: the head of each pump and of the system at
// every tick of flow.
func (c *curvePlot) heads() {
	head := []string{c.say("curve.flow", "unit", c.x.name), c.say("curve.system")}
	for _, p := range c.in.Curves.Pumps {
		head = append(head, c.say("curve.pump", "name", p.Name))
	}
	si, written := c.x.ticks()
	var rows [][]string
	for i, q := range si {
		row := []string{written[i], c.systemAt(q)}
		for _, p := range c.in.Curves.Pumps {
			low, high, _, _ := p.Curve.Range()
			cell := "—"
			if q >= float64(low) && q <= float64(high) {
				h, _, _ := p.Curve.Head(unit.Flow(q))
				cell = c.show(float64(h), unit.KindHead)
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	c.data(c.say("curve.rows", "unit", c.h.name), head, rows)
}

// systemAt reads the system's curve at a flow, between two of its points.
func (c *curvePlot) systemAt(q float64) string {
	s := c.in.Curves.System
	for i := 1; i < len(s); i++ {
		a, b := s[i-1], s[i]
		if q < float64(a.Flow) || q > float64(b.Flow) || b.Flow <= a.Flow {
			continue
		}
		t := (q - float64(a.Flow)) / float64(b.Flow-a.Flow)
		return c.show(float64(a.Head)+t*float64(b.Head-a.Head), unit.KindHead)
	}
	return "—"
}
