package answer

import (
	"encoding/json"
	"io"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/quote"
	"plashet/words"
)

// OfferDocument is what is offered, as JSON: for the firm, or as the client sees
// it.
type OfferDocument struct {
	Format    string        `json:"format" doc:"says that this is an answer"`
	Version   int           `json:"version" doc:"version of the answer's fields"`
	Name      string        `json:"name" doc:"the job's name"`
	Note      string        `json:"note,omitempty" doc:"the job's note; for the client, the note for the client"`
	Units     string        `json:"units" one:"us metric" doc:"us or metric: the units of every text"`
	Currency  string        `json:"currency,omitempty" doc:"of every amount; absent where the job has none"`
	Client    bool          `json:"client,omitempty" doc:"as the client sees it: without what it costs the firm"`
	Draft     bool          `json:"draft,omitempty" doc:"not for the client yet: something has no price or is at fault; lacks and faults say what"`
	Lacks     []string      `json:"lacks,omitempty" doc:"what has no price and is in no sum"`
	Designs   []OfferDesign `json:"designs" doc:"the design itself, then each option as a design of its own"`
	Change    *OfferChange  `json:"change,omitempty" doc:"what changed since an offer was agreed on"`
	Includes  []string      `json:"includes,omitempty" doc:"what is included"`
	Excludes  []string      `json:"excludes,omitempty" doc:"what is not"`
	Terms     []string      `json:"terms,omitempty" doc:"the terms"`
	ValidDays int           `json:"validDays,omitempty" doc:"days that the offer is held"`
	Findings  []Said        `json:"findings,omitempty" doc:"worth knowing, of the firm's alone"`
	Assumed   []string      `json:"assumed,omitempty" doc:"defaults in force"`
	Faults    []Fault       `json:"faults,omitempty" doc:"errors in the input"`
}

// OfferDesign is one design with its price.
type OfferDesign struct {
	Name       string       `json:"name,omitempty" doc:"of the option; absent for the design itself"`
	Note       string       `json:"note,omitempty" doc:"of the option"`
	Complete   bool         `json:"complete" doc:"everything in it has a price; else every sum lacks a part"`
	Flow       *Quantity    `json:"flow,omitempty" doc:"that the pump in use moves; absent where it is not known"`
	Falls      []OfferFall  `json:"falls,omitempty" doc:"what comes over each watercourse"`
	Worst      string       `json:"worst" one:"info caution danger" doc:"worst finding of the design"`
	Scopes     []OfferPrice `json:"scopes" doc:"the parts of the work, before tax; they add up to net"`
	Net        *Money       `json:"net,omitempty" doc:"before tax; absent where nothing has a price"`
	Taxes      []OfferTax   `json:"taxes,omitempty" doc:"taxes"`
	TaxRounded string       `json:"taxRounded,omitempty" one:"sum part" doc:"taxes are rounded once on the sum, or for each part of the work; absent without tax"`
	Rounding   *Money       `json:"rounding,omitempty" doc:"that the total is rounded by"`
	Total      *Money       `json:"total,omitempty" doc:"net, taxes and rounding; where rules for an amount differ, the higher end; absent where nothing has a price"`
	Low        *Money       `json:"low,omitempty" doc:"the total at the lower end of every rule; for the firm"`
	Deposit    *Money       `json:"deposit,omitempty" doc:"due at first"`
	Stages     []OfferPrice `json:"stages,omitempty" doc:"due on the way"`
	Rest       *Money       `json:"rest,omitempty" doc:"due at the end; absent where payments could not be worked out, or nothing has a price"`

	Lines    []OfferCost  `json:"lines,omitempty" doc:"what it costs the firm, line by line"`
	Groups   []OfferGroup `json:"groups,omitempty" doc:"how cost becomes price, by group of cost"`
	Cost     *Money       `json:"cost,omitempty" doc:"what it costs the firm"`
	Price    *Money       `json:"price,omitempty" doc:"before discount and tax; for the client where there is a discount"`
	Discount *Money       `json:"discount,omitempty" doc:"taken off"`
	Profit   *Money       `json:"profit,omitempty" doc:"net less cost"`
}

// OfferFall is the water of one watercourse.
type OfferFall struct {
	Name   string    `json:"name" doc:"of the watercourse"`
	Flow   Quantity  `json:"flow" doc:"what comes over it"`
	Wanted *Quantity `json:"wanted,omitempty" doc:"what is wanted"`
	Short  bool      `json:"short,omitempty" doc:"it gets less than is wanted"`
}

// OfferPrice is a name with an amount.
type OfferPrice struct {
	Name   string `json:"name" doc:"its name"`
	Amount *Money `json:"amount,omitempty" doc:"the amount"`
}

// OfferTax is a tax and what it is on.
type OfferTax struct {
	Name   string `json:"name" doc:"its name"`
	Rate   string `json:"rate" doc:"a part of 1, decimal and exact"`
	Base   *Money `json:"base,omitempty" doc:"what it is on; for the firm"`
	Amount *Money `json:"amount,omitempty" doc:"the tax"`
}

// OfferCost is a line of cost.
type OfferCost struct {
	Group    string `json:"group" one:"material labour equipment other" doc:"group of cost"`
	Scope    string `json:"scope" doc:"the part of the work it belongs to"`
	Name     string `json:"name" doc:"what it is"`
	Path     string `json:"path,omitempty" doc:"where in the job"`
	Quantity string `json:"quantity,omitempty" doc:"how many; absent where the line has one amount"`
	Unit     string `json:"unit,omitempty" doc:"of the quantity"`
	Each     *Money `json:"each,omitempty" doc:"of one"`
	Amount   *Money `json:"amount,omitempty" doc:"of the line; absent where it has no price"`
	Counts   bool   `json:"counts" doc:"it is in the sum"`
}

// OfferGroup is how a group's price comes about.
type OfferGroup struct {
	Group       string `json:"group" one:"material labour equipment other" doc:"group of cost"`
	Lines       *Money `json:"lines,omitempty" doc:"sum of its lines"`
	Waste       *Money `json:"waste,omitempty" doc:"for waste"`
	Contingency *Money `json:"contingency,omitempty" doc:"for what is not foreseen"`
	Profit      *Money `json:"profit,omitempty" doc:"markup or margin"`
	Price       *Money `json:"price,omitempty" doc:"before discount"`
	Net         *Money `json:"net,omitempty" doc:"after it"`
}

// OfferChange is a change order.
type OfferChange struct {
	Against  string      `json:"against,omitempty" doc:"option that was agreed on; absent for the design itself"`
	Before   *Money      `json:"before,omitempty" doc:"total agreed on"`
	Moves    []OfferMove `json:"moves" doc:"the parts of the work that changed"`
	Taxes    []OfferMove `json:"taxes,omitempty" doc:"the taxes that changed"`
	Rounding *Money      `json:"rounding,omitempty" doc:"what the rounding changed by"`
	By       *Money      `json:"by,omitempty" doc:"the sum of the changes; below zero: a credit"`
	After    *Money      `json:"after,omitempty" doc:"the new total"`
}

// OfferMove is what one part of the work, or one tax, changes by.
type OfferMove struct {
	Name   string `json:"name" doc:"its name"`
	Before *Money `json:"before,omitempty" doc:"agreed on"`
	After  *Money `json:"after,omitempty" doc:"now"`
	By     *Money `json:"by,omitempty" doc:"the difference"`
	New    bool   `json:"new,omitempty" doc:"it was not there before"`
	Gone   bool   `json:"gone,omitempty" doc:"it is there no more"`
}

// OfferJSON prints an offer as JSON: as the client sees it, or for the firm.
func OfferJSON(w io.Writer, j *job.Job, d *offer.Document, client bool, read []trace.Fault, l *words.Language) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(BuildOffer(j, d, client, read, l))
}

// BuildOffer gives an offer as values: what OfferJSON writes. The client's has
// nothing of cost, of the job's note for the crew, or of what was found in the
// reckoning. Faults of reading stand with the offer's.
func BuildOffer(j *job.Job, d *offer.Document, client bool, read []trace.Fault, l *words.Language) OfferDocument {
	p := &offered{printer: printer{say: l, unit: j.System(), style: j.Style()}, j: j}
	x := OfferDocument{
		Format: FormatName, Version: FormatVersion, Name: j.Name, Note: j.Note, Units: systemName(j.System()), Currency: d.Currency, Client: client,
		Includes: clauses(j.Offer.Includes), Excludes: clauses(j.Offer.Excludes), Terms: clauses(j.Offer.Terms), ValidDays: j.Offer.ValidDays,
	}
	if client {
		x.Note = j.ClientNote
	}
	draft, is := d.Draft(d.Designs)
	x.Draft, x.Lacks = is, p.items(draft.Lacks)
	for i := range d.Designs {
		x.Designs = append(x.Designs, p.designJSON(&d.Designs[i], client))
	}
	if c := d.Change; c != nil {
		x.Change = &OfferChange{
			Against: d.Against, Before: p.amount(c.Before), Moves: p.moves(c.Moves), Taxes: p.moves(c.Taxes),
			Rounding: p.some(c.Rounding), By: p.amount(c.By), After: p.amount(c.After),
		}
	}
	if client {
		p.faultsJSON(&x, draft.Faults)
	} else {
		p.toldJSON(&x, d, read)
	}
	return whole(x)
}

func (p *offered) faultsJSON(x *OfferDocument, list []trace.Fault) {
	for _, f := range list {
		if s := FaultOf(f, p.unit, p.say); !slices.Contains(x.Faults, s) {
			x.Faults = append(x.Faults, s)
		}
	}
}

// toldJSON adds what the firm is told, each once.
func (p *offered) toldJSON(x *OfferDocument, d *offer.Document, read []trace.Fault) {
	findings, faults := slices.Clone(d.Findings), append(slices.Clone(read), d.Faults...)
	for i := range d.Designs {
		o := &d.Designs[i]
		findings, faults = append(findings, o.Findings...), append(faults, o.Faults...)
		for _, a := range o.Assumptions {
			if s := p.say.Assumption(a, p.unit); !slices.Contains(x.Assumed, s) {
				x.Assumed = append(x.Assumed, s)
			}
		}
	}
	for _, f := range findings {
		if s := (Said{f.Code, f.Severity.String(), p.say.Finding(f, p.unit)}); !slices.Contains(x.Findings, s) {
			x.Findings = append(x.Findings, s)
		}
	}
	p.faultsJSON(x, faults)
}

func clauses(list []job.Clause) (out []string) {
	for _, c := range list {
		out = append(out, c.Text)
	}
	return out
}

// some is an amount, or nil for nothing.
func (p *offered) some(m unit.Money) *Money {
	if m.Amount.IsZero() {
		return nil
	}
	return p.amount(m)
}

func (p *offered) amount(m unit.Money) *Money { return money(m, p.style) }

func (p *offered) moves(list []quote.Move) (out []OfferMove) {
	for _, m := range list {
		out = append(out, OfferMove{p.scope(m.Name), p.amount(m.Before), p.amount(m.After), p.amount(m.By), m.New, m.Gone})
	}
	return out
}

func (p *offered) designJSON(d *offer.Priced, client bool) OfferDesign {
	m, o := maker{unit: p.unit, style: p.style, say: p.say}, &d.Offer
	x := OfferDesign{
		Name: d.Name, Note: d.Note, Complete: o.Complete, Worst: d.Worst.String(), Flow: known(m, d.Flow, unit.KindFlow),
	}
	if !o.Unpriced() {
		x.Net, x.Rounding, x.Total = p.amount(o.Net), p.some(o.Rounding), p.amount(o.Total)
	}
	for _, f := range d.Falls {
		fall := OfferFall{Name: f.Name, Flow: m.value(f.Flow), Short: f.Short}
		if f.Wanted.Kind != unit.KindNone {
			fall.Wanted = new(m.value(f.Wanted))
		}
		x.Falls = append(x.Falls, fall)
	}
	for _, s := range o.Scopes {
		x.Scopes = append(x.Scopes, OfferPrice{p.scope(s.Name), p.amount(s.Price)})
	}
	for _, t := range o.Taxes {
		tax := OfferTax{Name: t.Name, Rate: t.Rate.String(), Amount: p.amount(t.Amount)}
		if !client {
			tax.Base = p.amount(t.Base)
		}
		x.Taxes = append(x.Taxes, tax)
	}
	x.TaxRounded = taxRounded(p.j, o)
	if o.Planned && !o.Unpriced() {
		x.Deposit, x.Rest = p.some(o.Deposit), p.amount(o.Rest)
		for _, s := range o.Stages {
			x.Stages = append(x.Stages, OfferPrice{s.Name, p.amount(s.Amount)})
		}
	}
	if x.Discount = p.some(o.Discount); x.Discount != nil || !client {
		x.Price = p.amount(o.Price)
	}
	if !client {
		x.Low, x.Cost, x.Profit = p.amount(d.Low), p.amount(o.Cost), p.amount(o.Profit)
		p.costsJSON(&x, o)
	}
	return x
}

// costsJSON adds what a design costs the firm.
func (p *offered) costsJSON(x *OfferDesign, o *quote.Offer) {
	for i := range o.Lines {
		l := &o.Lines[i]
		c := OfferCost{Group: string(l.Group), Scope: p.scope(l.Scope), Name: p.say.Item(l.Name), Path: l.Path, Unit: l.Unit, Counts: l.Counts}
		if l.Total.Currency == "" && !l.Quantity.IsZero() {
			c.Quantity = l.Quantity.String()
			if l.Each.Currency != "" {
				c.Each = &Money{l.Each.Amount.String(), l.Each.Currency, l.Each.FormatExact(p.style)}
			}
		}
		if l.Counts {
			c.Amount = p.amount(l.Amount)
		}
		x.Lines = append(x.Lines, c)
	}
	for _, g := range o.Groups {
		x.Groups = append(x.Groups, OfferGroup{string(g.Group), p.amount(g.Lines), p.some(g.Waste), p.some(g.Contingency), p.amount(g.Profit), p.amount(g.Price), p.amount(g.Net)})
	}
}
