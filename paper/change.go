package paper

import (
	"plashet/drawing"
	"plashet/engine/unit"
	"plashet/offer"
	"plashet/quote"
)

// changeOrder tells the client what a change of the work does to the price that
// was agreed: part by part before, after and by how much, the new total, and who
// signs before anything is done otherwise.
func changeOrder(f *flow) {
	d := f.in.Offer
	if d == nil || d.Change == nil {
		f.paragraph(f.word("paper.nochange"), true)
		if d != nil {
			for _, x := range d.Faults {
				f.paragraph(f.in.Say.Say(x.Message, f.units()), false)
			}
		}
		return
	}
	f.about, f.accepts = aboutOffer, aboutList
	now := f.agreedDesign(d)
	draft := f.draft(now)
	a, c := &f.in.Job.Offer.Agreed, d.Change
	s := f.text("paper.change.to", str("date", a.Date), str("total", c.Before.Format(f.money())))
	if a.Option != "" {
		s += " " + f.text("paper.change.option", str("name", a.Option))
	}
	f.paragraph(s, false)
	f.heading(f.word("paper.head.changed"))
	if list := f.in.Job.Offer.Changed; len(list) > 0 {
		for _, x := range list {
			f.bullet(x.Text)
		}
	} else {
		f.ruled(3)
	}
	if c.By.Amount.IsZero() && len(c.Moves)+len(c.Taxes) == 0 {
		f.gap(2)
		f.paragraph(f.word("paper.change.none"), true)
		return
	}
	f.moves(c)
	f.stops(now)
	f.warn(f.word("paper.change.wait"))
	if !draft {
		f.headingOver(f.word("paper.head.accept"), 3*body*lead+30)
		f.paragraph(f.text("paper.change.accept", str("by", f.signed(c.By)), str("total", c.After.Format(f.money()))), true)
		f.sign("paper.sign.client", "paper.sign.firm")
	}
}

// agreedDesign gives the design that was agreed, as it is now.
func (f *flow) agreedDesign(d *offer.Document) []offer.Priced {
	for i := range d.Designs {
		if d.Designs[i].Name == d.Against {
			return d.Designs[i : i+1]
		}
	}
	return nil
}

// moves writes what each part of the work was, is and changes by, down to the
// totals.
func (f *flow) moves(c *quote.Order) {
	var rows [][]string
	add := func(name string, before, after, by unit.Money) {
		rows = append(rows, []string{name, before.Format(f.money()), after.Format(f.money()), f.signed(by)})
	}
	for _, m := range c.Moves {
		name := f.scopeName(m.Name)
		switch {
		case m.New:
			name += ", " + f.word("offer.new")
		case m.Gone:
			name += ", " + f.word("offer.gone")
		}
		add(name, m.Before, m.After, m.By)
	}
	for _, m := range c.Taxes {
		add(f.brief(m.Name), m.Before, m.After, m.By)
	}
	if !c.Rounding.Amount.IsZero() {
		rows = append(rows, []string{f.word("offer.row.rounding"), "", "", f.signed(c.Rounding)})
	}
	add(f.word("offer.row.total"), c.Before, c.After, c.By)
	f.heading(f.word("paper.head.moves"))
	f.table([]column{
		{wide: rest}, {head: f.word("offer.row.before"), end: true}, {head: f.word("offer.row.after"), end: true}, {head: f.word("paper.change.by"), end: true, bold: true},
	}, rows, len(rows)-1)
	f.paragraph(f.word("paper.change.same"), false)
	f.paragraph(f.text("paper.change.due", str("line", "______________________________")), false)
}

// signed writes an amount with its sign, so that a credit cannot be taken for a
// charge.
func (f *flow) signed(m unit.Money) string {
	if m.Amount.IsPositive() {
		return "+" + m.Format(f.money())
	}
	return m.Format(f.money())
}

// ruled leaves lines to write on.
func (f *flow) ruled(n int) {
	for range n {
		f.apart(8)
		f.need(1)
		f.add(drawing.Line{From: drawing.Point{X: f.x0, Y: f.y}, To: drawing.Point{X: f.x1, Y: f.y}, Pen: thin})
	}
	f.y += 2
}
