package answer

import (
	"io"
	"slices"
	"strings"

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

// OfferedTo prints one design as the client sees it: scope, price, terms, the
// totals of all designs, and nothing of what it costs.
func OfferedTo(w io.Writer, j *job.Job, d *offer.Document, design int, l *words.Language) error {
	p := &offered{printer: printer{w: w, say: l, unit: j.System(), style: j.Style()}, j: j}
	p.tell("", "offer.title.client", p.heads(j.Name))
	p.client(d, design)
	p.choices(d)
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

// client prints scope, price and terms of a design.
func (p *offered) client(d *offer.Document, design int) {
	j, one := p.j, &d.Designs[design]
	p.draft(d)
	if j.ClientNote != "" {
		p.line("%s", j.ClientNote)
	}
	if one.Name != "" {
		p.line("%s", one.Name)
		if one.Note != "" {
			p.line("%s", one.Note)
		}
	}
	p.head("offer.head.scopes")
	nothing := p.lacking(&one.Offer)
	if !nothing {
		p.scopes(&one.Offer)
	}
	p.stops(one)
	p.clauses("offer.head.includes", j.Offer.Includes)
	p.clauses("offer.head.excludes", j.Offer.Excludes)
	if !nothing {
		p.payments(&one.Offer)
	}
	p.clauses("offer.head.terms", j.Offer.Terms)
	if n := j.Offer.ValidDays; n > 0 {
		p.tell("", "offer.valid", count("days", n))
	}
	p.tell("", "offer.safe")
	p.change(d)
}

// draft heads an offer that is not whole, as its sheet does, with what it lacks and
// what is wrong.
func (p *offered) draft(d *offer.Document) {
	x, draft := d.Draft(d.Designs)
	if !draft {
		return
	}
	p.tell("", "offer.draft")
	if list := p.items(x.Lacks); len(list) > 0 {
		p.tell("", "offer.lacks", count("count", len(list)))
		p.line("  %s", strings.Join(list, "; "))
	}
	said := map[string]bool{}
	for _, f := range x.Faults {
		if s := p.say.Say(f.Message, p.unit); !said[s] {
			said[s] = true
			p.line("%s", s)
		}
	}
	p.line("")
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

// stops tells plainly of a design that ends in danger, as its sheet does.
func (p *offered) stops(one *offer.Priced) {
	switch {
	case one.Stops == 0:
	case one.Name == "":
		p.tell("", "paper.offer.stopped", count("count", one.Stops))
	default:
		p.tell("", "paper.offer.stops", str("name", one.Name), count("count", one.Stops))
	}
}

// choices prints the totals of the designs for the client.
func (p *offered) choices(d *offer.Document) {
	if len(d.Designs) < 2 {
		return
	}
	p.head("offer.head.options")
	part := false
	for i := range d.Designs {
		p.total(&d.Designs[i])
		part = part || !d.Designs[i].Offer.Complete && !d.Designs[i].Offer.Unpriced()
	}
	if part {
		p.line("* %s", p.text("offer.part"))
	}
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

// scopes prints what the client pays for, down to the total.
func (p *offered) scopes(o *quote.Offer) {
	for _, s := range o.Scopes {
		p.row(p.scope(s.Name), s.Price.Format(p.style))
	}
	p.row(p.word("offer.row.net"), o.Net.Format(p.style))
	for _, t := range o.Taxes {
		rate := p.style.Write(t.Rate.Shift(2).String()) + " %"
		p.row(p.text("offer.row.tax", str("name", t.Name), str("rate", rate), str("base", t.Base.Format(p.style))), t.Amount.Format(p.style))
	}
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
