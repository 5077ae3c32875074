package offer

import (
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/quote"
	"plashet/takeoff"
)

// The parts of the work that the client sees, where the job names none.
const (
	ScopePump     = "pump"
	ScopePlumbing = "plumbing"
	ScopePond     = "pond and streams"
	ScopeStone    = "stone"
	ScopeEarth    = "earthwork"
	ScopeWhole    = "the work as a whole"
)

type work struct {
	job    *job.Job
	result *design.Result
	ranged bool // two rules differ somewhere
	told   bool // what is wrong with the input was told

	findings []trace.Finding
	faults   []trace.Fault
}

func at(path string, i int) string { return path + "/" + strconv.Itoa(i) }

func (w *work) fault(path, code string, args ...trace.Arg) {
	if !w.told {
		w.faults = append(w.faults, trace.Fault{Path: path, Message: trace.Message{Code: code, Args: append(args, trace.At("where", w.job.PlaceOf(path)))}})
	}
}

// amount reads an amount of the job; one that cannot be read was told in
// reading and has no currency.
func (w *work) amount(m job.Money) unit.Money {
	a, err := m.Amount(w.job.Style())
	if err != nil || m.IsZero() {
		return unit.Money{}
	}
	return a
}

// input fills what package quote takes, at the higher or the lower end of every
// amount.
func (w *work) input(high bool) quote.Input {
	o := &w.job.Offer
	in := quote.Input{
		Currency: w.job.Site.Currency, Style: w.job.Style(), Path: "/offer",
		Waste: ratio(o.Waste), Contingency: ratio(o.Contingency), Discount: ratio(o.Discount),
		TaxByRow: o.TaxByScope, Deposit: quote.Share{Of: ratio(o.Deposit), Path: "/offer/deposit"},
		Profit: w.profit(),
	}
	if !o.RoundTo.IsZero() {
		in.RoundTo = w.amount(o.RoundTo)
	}
	in.Costs = append(w.material(high), w.pumps()...)
	in.Costs = append(in.Costs, w.labour(high)...)
	in.Costs = append(in.Costs, w.expenses()...)
	for i := range in.Costs { // by the name that it is kept by when the offer is agreed
		if in.Costs[i].Scope == "" {
			in.Costs[i].Scope = ScopeWhole
		}
	}
	for i, t := range o.Taxes {
		tax := quote.Tax{Name: t.Name, Rate: ratio(t.Rate), Over: t.Over, Path: at("/offer/taxes", i)}
		for _, on := range t.On {
			tax.On = append(tax.On, quote.Group(on.Group))
		}
		in.Taxes = append(in.Taxes, tax)
	}
	for i, s := range o.Stages {
		in.Stages = append(in.Stages, quote.Stage{Name: s.Name, Share: quote.Share{Of: ratio(s.Share), Path: at("/offer/stages", i)}})
	}
	w.told = true
	return in
}

// material gives the lines of the material list, one for each item.
func (w *work) material(high bool) []quote.Cost {
	var out []quote.Cost
	missing, first := 0, ""
	for _, it := range w.result.Materials {
		total := it.Total.High
		if !high {
			total = it.Total.Low
		}
		if it.Priced && !it.Total.High.Amount.Equal(it.Total.Low.Amount) {
			w.ranged = true
		}
		group, scope := place(it.Code)
		c := quote.Cost{Group: group, Scope: scope, Name: it.Name, Path: it.Path, Wasted: group == quote.Material && it.Pack.SI == 0 && it.Buy.Kind != unit.KindCount}
		if it.Size != "" {
			c.Name += ", " + it.Size
		}
		if it.Place != "" {
			c.Name += ", " + it.Place
		}
		if it.Priced {
			c.Total = total
		} else {
			missing++
			if first == "" {
				first = c.Name
			}
		}
		out = append(out, c)
	}
	w.unpriced("/prices", missing, first)
	return out
}

func (w *work) unpriced(path string, missing int, first string) {
	if missing == 0 || w.told {
		return
	}
	w.findings = append(w.findings, trace.Finding{
		Message:  trace.Message{Code: FindUnpriced, Args: []trace.Arg{trace.Num("count", unit.Ratio(missing), unit.KindCount), trace.Str("first", first)}},
		Severity: trace.Caution, Path: path,
	})
}

// place gives an item's group and the part of the work that it belongs to.
func place(code string) (quote.Group, string) {
	switch code {
	case takeoff.CodeLiner, takeoff.CodeUnderlay:
		return quote.Material, ScopePond
	case takeoff.CodeBoulders, takeoff.CodeGravel:
		return quote.Material, ScopeStone
	case takeoff.CodeDig, takeoff.CodeSoil, takeoff.CodeLoads:
		return quote.Other, ScopeEarth
	}
	return quote.Material, ScopePlumbing
}

// used gives the pump in use and those that run beside it.
func (w *work) used() (out []*job.Pump) {
	use := w.job.Use
	if use == "" && len(w.job.Pumps) > 0 {
		use = w.job.Pumps[0].Name
	}
	names := []string{use}
	for _, f := range w.job.FurtherPumps {
		names = append(names, f.Pump)
	}
	for _, name := range names {
		if i := slices.IndexFunc(w.job.Pumps, func(p job.Pump) bool { return p.Name == name }); i >= 0 {
			out = append(out, &w.job.Pumps[i])
		}
	}
	return out
}

// pumps gives the pumps that are bought.
func (w *work) pumps() []quote.Cost {
	var out []quote.Cost
	for _, p := range w.used() {
		if p.Existing {
			continue
		}
		i := slices.IndexFunc(w.job.Pumps, func(x job.Pump) bool { return x.Name == p.Name })
		c := quote.Cost{Group: quote.Material, Scope: ScopePump, Name: p.Name, Total: w.amount(p.Price), Path: at("/pumps", i)}
		if c.Total.Currency == "" {
			w.unpriced(c.Path, 1, p.Name)
		}
		out = append(out, c)
	}
	return out
}

// expenses gives equipment and other costs.
func (w *work) expenses() []quote.Cost {
	var out []quote.Cost
	for i, e := range w.job.Offer.Expenses {
		c := quote.Cost{Group: quote.Equipment, Scope: e.Scope, Name: e.Name, Quantity: decimal.New(1, 0), Each: w.amount(e.Price), Path: at("/offer/expenses", i)}
		if e.Group == "other" {
			c.Group = quote.Other
		}
		if !e.Count.IsZero() {
			c.Quantity = ratio(e.Count)
		}
		out = append(out, c)
	}
	return out
}

// profit gives markup and margin by group; what is for all holds where a group
// has none of its own.
func (w *work) profit() map[quote.Group]quote.Profit {
	out := map[quote.Group]quote.Profit{}
	seen := map[string]bool{}
	for _, own := range []bool{false, true} {
		for i, p := range w.job.Offer.Profit {
			group, path := p.Group, at("/offer/profit", i)
			if all := group == "" || group == "all"; all == own {
				continue
			} else if all {
				group = "all"
			}
			if seen[group] {
				w.fault(path, FaultProfit, trace.Str("group", group))
				continue
			}
			seen[group] = true
			is := quote.Profit{Markup: ratio(p.Markup), Margin: ratio(p.Margin), Path: path}
			for _, g := range quote.Groups() {
				if group == "all" || string(g) == group {
					out[g] = is
				}
			}
		}
	}
	return out
}
