package offer

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/quote"
)

// Priced is one design with its price.
type Priced struct {
	Name  string // of the option; empty for the design itself
	Note  string
	Offer quote.Offer
	Low   unit.Money // total at the lower end of every rule; the same where they agree
	Worst trace.Severity
	Stops int       // open dangers, but for falls that get less water than is wanted (Falls tells of them)
	Flow  unit.Flow // that the pump in use moves; 0 where it is not known
	Falls []Fall    // what comes over each watercourse; none where it is not known

	Findings    []trace.Finding
	Assumptions []trace.Assumption
	Faults      []trace.Fault
}

// Fall is the water of one watercourse, and what is wanted of it.
type Fall struct {
	Name   string
	Flow   unit.Value // exact, or a bound
	Wanted unit.Value // none where nothing is wanted
	Short  bool       // the design finds that it gets less
}

// Document is all that is offered.
type Document struct {
	Currency string
	Designs  []Priced // the job's own first, then its options in order
	Change   *quote.Order
	Against  string // name of the design that the change is of
	Faults   []trace.Fault
	Findings []trace.Finding
	Unsolved []trace.Fault // what keeps the designs from being worked out

	money []trace.Fault // of reading and of the design, in what the offer is made from
}

// Of prices a job and its options. Unread are the faults of reading. It never
// panics; what cannot be priced is told.
func Of(book *catalog.Book, j *job.Job, unread ...trace.Fault) Document {
	d := Document{Currency: j.Site.Currency}
	own := design.Solve(book, j, unread...)
	d.money = ofMoney(slices.Concat(unread, own.Faults))
	d.Unsolved = slices.Clone(own.Faults)
	d.Designs = append(d.Designs, price(j, own))
	for i, o := range j.Offer.Options {
		other := j.Clone()
		if f := change(other, o, i); f != nil {
			d.Faults = append(d.Faults, *f)
			continue
		}
		r := design.Solve(book, other, unread...)
		d.Unsolved = append(d.Unsolved, r.Faults...)
		p := price(other, r)
		p.Name, p.Note = o.Name, o.Note
		d.Designs = append(d.Designs, p)
	}
	d.agreed(j)
	return d
}

// change makes an option's changes.
func change(j *job.Job, o job.Choice, i int) *trace.Fault {
	path := at("/offer/options", i)
	for k, c := range o.Changes {
		if f := j.Set(c.Path, c.Value); f != nil {
			return &trace.Fault{
				Path:    at(path+"/changes", k),
				Message: trace.Message{Code: FaultOption, Args: []trace.Arg{trace.Str("name", o.Name), trace.Str("path", c.Path), trace.Str("cause", f.Code)}},
			}
		}
	}
	return nil
}

// price prices one design.
func price(j *job.Job, r *design.Result) Priced {
	w := &work{job: j, result: r}
	high, low := w.input(true), w.input(false)
	p := Priced{Offer: quote.Make(high)}
	p.Low = p.Offer.Total
	if w.ranged {
		p.Low = quote.Make(low).Total
		p.Assumptions = append(p.Assumptions, trace.Assumption{
			Message: trace.Message{Code: AssumeHigh, Args: []trace.Arg{trace.Str("low", p.Low.Format(j.Style())), trace.Str("high", p.Offer.Total.Format(j.Style()))}},
			Path:    "/offer", Source: trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice},
		})
	}
	p.Worst, _ = r.Worst()
	for _, f := range r.Findings {
		if f.Severity == trace.Danger && f.Accepted == "" && f.Code != design.FindShort {
			p.Stops++
		}
	}
	if r.Delivery != nil {
		p.Flow = r.Delivery.Drawn
		for i := range r.Delivery.Feeds {
			x := &r.Delivery.Feeds[i]
			fall := Fall{Name: x.Name, Flow: unit.Bounded(x.Flow, unit.KindFlow, r.Delivery.Bound())}
			if x.Wanted > 0 {
				fall.Wanted = unit.Of(x.Wanted, unit.KindFlow)
			}
			fall.Short = x.Dry || slices.ContainsFunc(r.Findings, func(f trace.Finding) bool { return f.Code == design.FindShort && f.Path == x.Path })
			p.Falls = append(p.Falls, fall)
		}
	}
	p.Findings = slices.Concat(w.findings, p.Offer.Findings)
	p.Faults = slices.Concat(w.faults, p.Offer.Faults)
	return p
}

// agreed compares with the offer that was accepted.
func (d *Document) agreed(j *job.Job) {
	a := j.Offer.Agreed
	if a.Total.IsZero() || j.Site.Currency == "" {
		return
	}
	i := slices.IndexFunc(d.Designs, func(p Priced) bool { return p.Name == a.Option })
	if i < 0 {
		d.Faults = append(d.Faults, trace.Fault{Path: "/offer/agreed/option", Message: trace.Message{Code: FaultAgreed, Args: []trace.Arg{trace.Str("name", a.Option)}}})
		return
	}
	k, ok := kept(a, j.Style())
	if !ok {
		return // told in reading
	}
	order, err := d.Designs[i].Offer.Against(k)
	if err != nil {
		return // one job has one currency
	}
	d.Against = a.Option
	d.Change = &order
	if !order.By.Amount.IsZero() || len(order.Moves) > 0 {
		d.Findings = append(d.Findings, trace.Finding{
			Message:  trace.Message{Code: FindChanged, Args: []trace.Arg{trace.Str("by", order.By.Format(j.Style())), trace.Str("total", order.After.Format(j.Style()))}},
			Severity: trace.Caution, Path: "/offer/agreed",
		})
	}
}

// kept reads an accepted offer.
func kept(a job.Agreed, st unit.Style) (quote.Kept, bool) {
	k := quote.Kept{}
	var err error
	if k.Total, err = a.Total.Amount(st); err != nil {
		return k, false
	}
	k.Rounding = k.Total
	for _, s := range a.Scopes {
		m, err := s.Amount.Amount(st)
		if err != nil {
			return k, false
		}
		k.Scopes = append(k.Scopes, quote.Scope{Name: s.Name, Price: m})
		k.Rounding.Amount = k.Rounding.Amount.Sub(m.Amount)
	}
	for _, t := range a.Taxes {
		m, err := t.Amount.Amount(st)
		if err != nil {
			return k, false
		}
		k.Taxes = append(k.Taxes, quote.Taxed{Name: t.Name, Amount: m})
		k.Rounding.Amount = k.Rounding.Amount.Sub(m.Amount)
	}
	return k, true
}

// Agree writes an offer into the job as accepted on a day (year-month-day).
func Agree(j *job.Job, p Priced, day string) {
	exact := func(m unit.Money) job.Money { return job.Money{Text: plainAmount(m.Amount)} }
	a := job.Agreed{Date: day, Option: p.Name, Total: exact(p.Offer.Total)}
	for _, s := range p.Offer.Scopes {
		a.Scopes = append(a.Scopes, job.Amount{Name: s.Name, Amount: exact(s.Price)})
	}
	for _, t := range p.Offer.Taxes {
		a.Taxes = append(a.Taxes, job.Amount{Name: t.Name, Amount: exact(t.Amount)})
	}
	j.Offer.Agreed = a
}

// plainAmount writes an amount so that it reads the same whatever mark for decimals
// and thousands the job says: three decimals get a fourth.
func plainAmount(d decimal.Decimal) string {
	s := d.String()
	if _, decimals, _ := strings.Cut(s, "."); len(decimals) == 3 {
		s += "0"
	}
	return s
}

// ratio takes a share as it was typed: the binary fraction is rounded to the
// decimals that a share can have.
func ratio(r job.Ratio) decimal.Decimal {
	return decimal.NewFromFloat(float64(r.SI)).Round(8)
}
