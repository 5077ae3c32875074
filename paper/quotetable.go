package paper

import (
	"slices"

	"plashet/engine/unit"
	"plashet/offer"
	"plashet/quote"
	"plashet/words"
)

// sideBySide is how many designs stand in one table.
const sideBySide = 3

// designs writes up to three designs side by side, down to the payments.
func (f *flow) designs(list []offer.Priced, again bool) {
	if again {
		f.heading(f.word("paper.offer.further"))
	} else {
		f.heading(f.word("offer.head.scopes"))
	}
	if !slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Unpriced() }) {
		f.paragraph(f.word("offer.nototal"), true)
		f.gives(list)
		f.stops(list)
		return
	}
	columns := []column{{wide: rest}}
	for i := range list {
		columns = append(columns, column{head: f.columnName(list[i].Name, ""), end: true, wide: f.amountWide(list)})
	}
	g := grid{f: f, list: list}
	for _, s := range scopesOf(list) {
		g.row(f.scopeName(s), func(o *quote.Offer) (unit.Money, bool) {
			i := slices.IndexFunc(o.Scopes, func(x quote.Scope) bool { return x.Name == s })
			if i < 0 {
				return unit.Money{}, false
			}
			return o.Scopes[i].Price, true
		})
	}
	if slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Discount.Amount.IsZero() }) {
		g.row(f.word("offer.row.full"), func(o *quote.Offer) (unit.Money, bool) { return o.Price, true })
		g.row(f.word("offer.row.off"), func(o *quote.Offer) (unit.Money, bool) { return o.Off(), true })
	}
	g.sum(f.word("offer.row.net"), func(o *quote.Offer) (unit.Money, bool) { return o.Net, true })
	for k := range list[0].Offer.Taxes { // the same rules in every design
		t := &list[0].Offer.Taxes[k]
		g.row(f.text("paper.offer.tax", str("name", f.brief(t.Name)), str("rate", f.money().Write(t.Rate.Shift(2).String())+" %")), func(o *quote.Offer) (unit.Money, bool) {
			return o.Taxes[k].Amount, true
		})
	}
	if slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Rounding.Amount.IsZero() }) {
		g.row(f.word("offer.row.rounding"), func(o *quote.Offer) (unit.Money, bool) { return o.Rounding, true })
	}
	total := "offer.row.total"
	if slices.ContainsFunc(list, func(p offer.Priced) bool { return !p.Offer.Complete }) {
		total = "offer.row.sofar"
	}
	g.sum(f.word(total), func(o *quote.Offer) (unit.Money, bool) { return o.Total, true })
	f.table(columns, g.rows, g.sums...)
	if len(list[0].Offer.Taxes) > 0 {
		how := "offer.tax.sum"
		if f.in.Job.Offer.TaxByScope {
			how = "offer.tax.part"
		}
		f.paragraph(f.word(how), false)
	}
	f.gives(list)
	f.stops(list)
	f.payments(list, columns)
}

// stops tells plainly of designs that end in danger, beside less water than is
// wanted, which stands in the table.
func (f *flow) stops(list []offer.Priced) {
	for i := range list {
		p := &list[i]
		switch {
		case p.Stops == 0:
		case p.Name == "":
			f.warn(f.text("paper.offer.stopped", count("count", p.Stops)))
		default:
			f.warn(f.text("paper.offer.stops", str("name", f.brief(p.Name)), count("count", p.Stops)))
		}
	}
}

// gives tells what each design gives: its note, and the water over each fall
// beside what is wanted, so that nobody signs for less unawares.
func (f *flow) gives(list []offer.Priced) {
	for i := range list {
		if list[i].Note != "" {
			f.paragraph(f.designName(list[i].Name)+": "+list[i].Note, false)
		}
	}
	if len(list[0].Falls) == 0 {
		return
	}
	columns := []column{{head: f.word("paper.offer.water"), wide: rest}, {head: f.word("paper.wanted"), end: true}}
	for i := range list {
		columns = append(columns, column{head: f.columnName(list[i].Name, "paper.gets"), end: true, wide: f.amountWide(list)})
	}
	var rows [][]string
	short := false
	for k, x := range list[0].Falls {
		wanted := "—"
		if x.Wanted.SI > 0 {
			wanted = f.show(x.Wanted)
		}
		row := []string{x.Name, wanted}
		for i := range list {
			cell := "—"
			if k < len(list[i].Falls) {
				if y := list[i].Falls[k]; y.Name == x.Name {
					cell = f.show(y.Flow)
					if y.Short {
						cell, short = cell+" *", true
					}
				}
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	f.gap(1)
	f.table(columns, rows)
	if short {
		f.paragraph(f.word("paper.offer.short"), true)
	}
}

// columnName heads the column of a design; where there is one only, by a word.
func (f *flow) columnName(name, code string) string {
	if len(f.in.Offer.Designs) > 1 {
		return f.designName(name)
	}
	if code == "" {
		return ""
	}
	return f.word(code)
}

// payments writes when what falls due.
func (f *flow) payments(list []offer.Priced, columns []column) {
	first := &list[0].Offer
	if !first.Planned || first.Deposit.Amount.IsZero() && len(first.Stages) == 0 {
		return
	}
	g := grid{f: f, list: list}
	if !first.Deposit.Amount.IsZero() {
		g.row(f.word("offer.row.deposit"), func(o *quote.Offer) (unit.Money, bool) { return o.Deposit, o.Planned })
	}
	for k := range first.Stages {
		g.row(first.Stages[k].Name, func(o *quote.Offer) (unit.Money, bool) {
			if !o.Planned {
				return unit.Money{}, false
			}
			return o.Stages[k].Amount, true
		})
	}
	g.row(f.word("offer.row.rest"), func(o *quote.Offer) (unit.Money, bool) { return o.Rest, o.Planned })
	f.heading(f.word("offer.head.pay"))
	f.table(columns, g.rows)
}

// grid is rows of amounts, a column for each design.
type grid struct {
	f    *flow
	list []offer.Priced
	rows [][]string
	sums []int // rows that add up what stands above
}

func (g *grid) row(name string, of func(*quote.Offer) (unit.Money, bool)) {
	r := []string{fit(name, body, false, longName+30)}
	for i := range g.list {
		cell := "—"
		if m, ok := of(&g.list[i].Offer); ok && !g.list[i].Offer.Unpriced() {
			cell = m.Format(g.f.money())
		}
		r = append(r, cell)
	}
	g.rows = append(g.rows, r)
}

func (g *grid) sum(name string, of func(*quote.Offer) (unit.Money, bool)) {
	g.sums = append(g.sums, len(g.rows))
	g.row(name, of)
}

// scopesOf lists the parts of the work of all designs, each once.
func scopesOf(list []offer.Priced) []string {
	var out []string
	for i := range list {
		for _, s := range list[i].Offer.Scopes {
			if !slices.Contains(out, s.Name) {
				out = append(out, s.Name)
			}
		}
	}
	return out
}

// amountWide is the width of a column of amounts: room for the largest, but not
// so much that the names have none.
func (f *flow) amountWide(list []offer.Priced) float64 {
	wide := 30.0
	for i := range list {
		wide = max(wide, width(list[i].Offer.Total.Format(f.money()), body, true))
	}
	return min(wide, (f.x1-f.x0)*0.7/float64(len(list))-gutter)
}

func (f *flow) designName(name string) string {
	if name == "" {
		return f.word("offer.own")
	}
	return f.brief(name)
}

// brief cuts a name short: one that fills a page is no name.
func (f *flow) brief(name string) string { return fit(words.Plain(name), body, false, longName) }

// longName is how long a name may be on an offer, mm.
const longName = 90.0

// scopeName names a part of the work: in the reader's language where it is one
// of the tool's own, else as it was typed.
func (f *flow) scopeName(name string) string {
	if code := "offer.scope." + name; f.in.Say.Has(code) {
		return f.word(code)
	}
	return f.brief(name)
}
