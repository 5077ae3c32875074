package answer

import (
	"io"
	"slices"
	"strings"

	"plashet/job"
	"plashet/offer"
	"plashet/quote"
	"plashet/words"
)

// OfferedTo prints one design as the client sees it: scope, price, terms, the
// totals of all designs, and nothing of what it costs.
func OfferedTo(w io.Writer, j *job.Job, d *offer.Document, design int, l *words.Language) error {
	p := &offered{printer: printer{w: w, say: l, unit: j.System(), style: j.Style()}, j: j}
	p.tell("", "offer.title.client", p.heads(j.Name))
	p.client(d, design)
	p.choices(d, design)
	return p.err
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
		p.sold(&one.Offer)
	}
	if len(one.Falls) > 0 {
		p.head("offer.head.water")
		p.falls(one, "")
		p.short(one.Falls)
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
	} else {
		p.tell("", "paper.offer.open")
	}
	if slices.ContainsFunc(d.Designs, func(x offer.Priced) bool { return len(x.Assumptions) > 0 }) {
		p.tell("", "paper.offer.high")
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

// sold prints what the client pays for, down to the total: the discount, and no
// word of what a tax is on, which would tell what a group of cost is sold for.
func (p *offered) sold(o *quote.Offer) {
	p.pieces(o)
	if !o.Discount.Amount.IsZero() {
		p.row(p.word("offer.row.full"), o.Price.Format(p.style))
		p.row(p.word("offer.row.off"), o.Off().Format(p.style))
	}
	p.row(p.word("offer.row.net"), o.Net.Format(p.style))
	for _, t := range o.Taxes {
		p.row(p.text("paper.offer.tax", str("name", t.Name), p.rate(t)), t.Amount.Format(p.style))
	}
	p.foot(o)
}

// falls prints the water over each fall of a design beside what is wanted, marked
// where it is less.
func (p *offered) falls(one *offer.Priced, margin string) {
	for _, x := range one.Falls {
		name := x.Name
		if x.Wanted.SI > 0 {
			name = p.text("offer.fall", str("name", x.Name), str("wanted", p.value(x.Wanted)))
		}
		if x.Short {
			name += " *"
		}
		p.row(margin+name, p.value(x.Flow))
	}
}

// short says what the mark means, where one stands.
func (p *offered) short(falls []offer.Fall) {
	if slices.ContainsFunc(falls, func(x offer.Fall) bool { return x.Short }) {
		p.tell("", "paper.offer.short")
	}
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

// choices prints for the client what the designs come to, and of those that are not
// printed above what they are, how much water they give, and danger.
func (p *offered) choices(d *offer.Document, above int) {
	if len(d.Designs) < 2 {
		return
	}
	p.head("offer.head.options")
	part, falls := false, []offer.Fall(nil)
	for i := range d.Designs {
		one := &d.Designs[i]
		p.total(one)
		if i != above {
			if one.Note != "" {
				p.line("    %s", one.Note)
			}
			p.falls(one, "    ")
			falls = append(falls, one.Falls...)
		}
		part = part || !d.Designs[i].Offer.Complete && !d.Designs[i].Offer.Unpriced()
	}
	if part {
		p.line("* %s", p.text("offer.part"))
	}
	p.short(falls)
	for i := range d.Designs {
		if i != above {
			p.stops(&d.Designs[i])
		}
	}
}
