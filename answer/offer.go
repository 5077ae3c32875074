package answer

import (
	"io"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/quote"
	"plashet/words"
)

// Offered prints an offer for the firm: what everything costs, how cost becomes
// price, and the designs side by side.
func Offered(w io.Writer, j *job.Job, d *offer.Document, l *words.Language) error {
	p := &offered{printer: printer{w: w, say: l, unit: j.System(), style: j.Style()}, j: j}
	p.tell("", "offer.title", p.heads(j.Name))
	p.note()
	p.firm(d, 0)
	p.line("")
	p.tell("", "offer.agree")
	return p.err
}

// firm prints what a design costs, how cost becomes price, and what is offered.
func (p *offered) firm(d *offer.Document, design int) {
	one := &d.Designs[design]
	p.costs(&one.Offer)
	p.built(&one.Offer)
	p.offers(d)
	p.change(d)
	p.told(d)
}

// items names lines of cost in the reader's language, each once.
func (p *offered) items(names []string) (out []string) {
	for _, n := range names {
		if s := p.say.Item(n); !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// total prints a design's name and total, marked where it is not the whole.
func (p *offered) total(one *offer.Priced) {
	name, amount := one.Name, one.Offer.Total.Format(p.style)
	if name == "" {
		name = p.word("offer.own")
	}
	switch {
	case one.Offer.Unpriced():
		amount = p.word("offer.none")
	case !one.Offer.Complete:
		amount += "*"
	}
	p.row(name, amount)
}

type offered struct {
	printer
	j     *job.Job
	parts []OfferPart // not nil: what would be printed is gathered here
}

func (p *offered) note() {
	if p.j.Note != "" {
		p.tell("", "offer.invented", str("note", p.j.Note))
	}
}

func (p *offered) word(code string) string { return p.say.Word(code) }

// scope names a part of the work: in the reader's language where it is one of
// our own, else as it was typed.
func (p *offered) scope(name string) string {
	if code := "offer.scope." + name; p.say.Has(code) {
		return p.word(code)
	}
	return name
}

func (p *offered) costs(o *quote.Offer) {
	p.head("offer.head.cost")
	for _, g := range quote.Groups() {
		told := false
		for _, l := range o.Lines {
			if l.Group != g {
				continue
			}
			if !told {
				p.line("%s", p.word("offer.group."+string(g)))
				told = true
			}
			amount := p.word("offer.none")
			if l.Counts {
				amount = l.Amount.Format(p.style)
			}
			p.row("  "+p.say.Item(l.Name), amount)
			if g == quote.Labour && l.Counts {
				p.tell("      ", "offer.hours", str("hours", p.style.Write(l.Quantity.String())), str("rate", l.Each.FormatExact(p.style)))
			}
		}
	}
}

func (p *offered) built(o *quote.Offer) {
	p.head("offer.head.price")
	if p.lacking(o) {
		return
	}
	for _, b := range o.Groups {
		p.line("%s", p.word("offer.group."+string(b.Group)))
		p.row("  "+p.word("offer.row.lines"), b.Lines.Format(p.style))
		if !b.Waste.Amount.IsZero() {
			p.row("  "+p.word("offer.row.waste"), b.Waste.Format(p.style))
		}
		if !b.Contingency.Amount.IsZero() {
			p.row("  "+p.word("offer.row.contingency"), b.Contingency.Format(p.style))
		}
		p.row("  "+p.word("offer.row.profit"), b.Profit.Format(p.style))
		p.row("  "+p.word("offer.row.price"), b.Price.Format(p.style))
	}
	p.row(p.word("offer.row.cost"), o.Cost.Format(p.style))
	if !o.Discount.Amount.IsZero() {
		p.row(p.word("offer.row.discount"), o.Discount.Format(p.style))
	}
	p.head("offer.head.scopes")
	p.scopes(o)
	p.payments(o)
}

// lacking tells that not everything has a price, and whether nothing has: then
// there is no total to show.
func (p *offered) lacking(o *quote.Offer) (nothing bool) {
	switch {
	case o.Complete:
	case o.Unpriced():
		p.tell("", "offer.nototal")
		return true
	default:
		p.tell("", "offer.part")
	}
	return false
}

// scopes prints what the client pays for, down to the total, as the firm sees it:
// with what each tax is on.
func (p *offered) scopes(o *quote.Offer) {
	p.pieces(o)
	p.row(p.word("offer.row.net"), o.Net.Format(p.style))
	for _, t := range o.Taxes {
		p.row(p.text("offer.row.tax", str("name", t.Name), p.rate(t), str("base", t.Base.Format(p.style))), t.Amount.Format(p.style))
	}
	p.foot(o)
}

func (p *offered) pieces(o *quote.Offer) {
	for _, s := range o.Scopes {
		p.row(p.scope(s.Name), s.Price.Format(p.style))
	}
}

func (p *offered) rate(t quote.Taxed) trace.Arg {
	return str("rate", p.style.Write(t.Rate.Shift(2).String())+" %")
}

// foot prints the rows under the taxes.
func (p *offered) foot(o *quote.Offer) {
	if !o.Rounding.Amount.IsZero() {
		p.row(p.word("offer.row.rounding"), o.Rounding.Format(p.style))
	}
	total := "offer.row.total"
	if !o.Complete {
		total = "offer.row.sofar"
	}
	p.row(p.word(total), o.Total.Format(p.style))
	if how := taxRounded(p.j, o); how != "" {
		p.tell("", "offer.tax."+how)
	}
}

// taxRounded tells how a tax comes to whole coins: on the "sum", or for each "part"
// of the work; nothing without one. The two differ by coins, and the client adds up.
func taxRounded(j *job.Job, o *quote.Offer) string {
	switch {
	case len(o.Taxes) == 0:
		return ""
	case j.Offer.TaxByScope:
		return "part"
	}
	return "sum"
}

func (p *offered) payments(o *quote.Offer) {
	if !o.Planned || o.Deposit.Amount.IsZero() && len(o.Stages) == 0 {
		return
	}
	p.head("offer.head.pay")
	if !o.Deposit.Amount.IsZero() {
		p.row(p.word("offer.row.deposit"), o.Deposit.Format(p.style))
	}
	for _, s := range o.Stages {
		p.row(s.Name, s.Amount.Format(p.style))
	}
	p.row(p.word("offer.row.rest"), o.Rest.Format(p.style))
}

func (p *offered) clauses(head string, list []job.Clause) {
	if len(list) == 0 {
		return
	}
	p.head(head)
	for _, c := range list {
		p.line("- %s", c.Text)
	}
}

// offers prints the designs side by side.
func (p *offered) offers(d *offer.Document) {
	if len(d.Designs) < 2 {
		return
	}
	p.head("offer.head.options")
	for _, o := range d.Designs {
		p.total(&o)
		if o.Flow > 0 {
			p.line("    %s %s; %s", p.word("offer.flow"), show(&p.printer, o.Flow, unit.KindFlow), strings.TrimSpace(p.severity(o.Worst)))
		}
	}
	for _, o := range d.Designs {
		if !o.Offer.Complete && !o.Offer.Unpriced() {
			p.line("* %s", p.text("offer.part"))
			break
		}
	}
}

// change prints a change order.
func (p *offered) change(d *offer.Document) {
	c := d.Change
	if c == nil || c.By.Amount.IsZero() && len(c.Moves) == 0 {
		return
	}
	p.head("offer.head.change")
	p.row(p.word("offer.row.before"), c.Before.Format(p.style))
	for _, m := range append(c.Moves[:len(c.Moves):len(c.Moves)], c.Taxes...) {
		name := "  " + p.scope(m.Name)
		switch {
		case m.New:
			name += ", " + p.word("offer.new")
		case m.Gone:
			name += ", " + p.word("offer.gone")
		}
		p.row(name, m.By.Format(p.style))
	}
	if !c.Rounding.Amount.IsZero() {
		p.row("  "+p.word("offer.row.rounding"), c.Rounding.Format(p.style))
	}
	p.row(p.word("offer.row.by"), c.By.Format(p.style))
	p.row(p.word("offer.row.after"), c.After.Format(p.style))
}

// told prints findings, assumptions and faults of all designs, each once.
func (p *offered) told(d *offer.Document) {
	findings, faults := d.Findings, d.Faults
	seen := map[string]bool{}
	head := false
	say := func(s string) {
		if seen[s] {
			return
		}
		if !head {
			p.head("offer.head.findings")
			head = true
		}
		seen[s] = true
		p.line("%s", s)
	}
	for _, o := range d.Designs {
		findings, faults = append(findings, o.Findings...), append(faults, o.Faults...)
		for _, a := range o.Assumptions {
			say(p.say.Assumption(a, p.unit))
		}
	}
	for _, f := range findings {
		if f.Code == quote.FindPartial {
			continue // told where the amounts stand
		}
		say(p.severity(f.Severity) + p.say.Finding(f, p.unit))
	}
	for _, f := range faults {
		say(p.say.Say(f.Message, p.unit))
	}
}
