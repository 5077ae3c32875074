package quote

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/trace"
)

var one = decimal.New(1, 0)

// lines gives each line its amount. A line that cannot be right is left out.
func (w *work) lines() {
	for _, c := range w.in.Costs {
		l := Line{Cost: c, Amount: w.money(decimal.Zero)}
		amount, each := c.Total, c.Total
		if amount.Currency == "" {
			each = c.Each
			amount.Amount, amount.Currency = c.Quantity.Mul(c.Each.Amount), c.Each.Currency
		}
		switch {
		case each.Currency == "": // no price yet: told by who knows why
			w.offer.Complete = false
		case each.Currency != w.in.Currency:
			w.fault(c.Path, FaultCurrency, trace.Str("name", c.Name), trace.Str("currency", each.Currency), trace.Str("wanted", w.in.Currency))
			w.offer.Complete = false
		case amount.Amount.IsNegative() || each.Amount.IsNegative():
			w.fault(c.Path, FaultNegative, trace.Str("name", c.Name))
			w.offer.Complete = false
		default:
			l.Counts = true
			l.Amount = w.money(w.round(amount.Amount))
			if !slices.Contains(w.scopes, c.Scope) {
				w.scopes = append(w.scopes, c.Scope)
			}
		}
		w.offer.Lines = append(w.offer.Lines, l)
	}
}

// groups adds up each group and puts waste, contingency and profit on top.
// Contingency is worked out on the whole and shared among the groups, so that
// it is what its share says to the coin.
func (w *work) groups() {
	waste := w.part(w.in.Waste, "waste", w.in.Path+"/waste", false)
	contingency := w.part(w.in.Contingency, "contingency", w.in.Path+"/contingency", false)
	var costs []decimal.Decimal
	all := decimal.Zero
	for _, g := range Groups() {
		b := Built{Group: g}
		sum, wasted, any := decimal.Zero, decimal.Zero, false
		for _, l := range w.offer.Lines {
			if l.Group != g || !l.Counts {
				continue
			}
			any = true
			sum = sum.Add(l.Amount.Amount)
			if l.Wasted {
				wasted = wasted.Add(l.Amount.Amount)
			}
		}
		if !any {
			continue
		}
		b.Lines, b.Waste = w.money(sum), w.money(w.round(wasted.Mul(waste)))
		costs = append(costs, sum.Add(b.Waste.Amount))
		all = all.Add(sum).Add(b.Waste.Amount)
		w.offer.Groups = append(w.offer.Groups, b)
	}
	held := w.round(all.Mul(contingency))
	price := decimal.Zero
	for i, share := range Apportion(w.money(held), costs) {
		b := &w.offer.Groups[i]
		b.Contingency = share
		cost := costs[i].Add(share.Amount)
		b.Price = w.money(w.priced(b.Group, cost))
		b.Profit = w.money(b.Price.Amount.Sub(cost))
		price = price.Add(b.Price.Amount)
	}
	w.offer.Cost, w.offer.Price = w.money(all.Add(held)), w.money(price)
}

// priced puts markup or margin on a group's cost.
func (w *work) priced(g Group, cost decimal.Decimal) decimal.Decimal {
	p := w.in.Profit[g]
	switch {
	case !p.Markup.IsZero() && !p.Margin.IsZero():
		w.fault(p.Path, FaultBoth, trace.Str("group", string(g)))
		return cost
	case p.Margin.GreaterThanOrEqual(one):
		w.fault(p.Path, FaultMargin, trace.Str("group", string(g)), trace.Str("share", percent(p.Margin)))
		return cost
	case p.Markup.IsNegative() || p.Margin.IsNegative():
		w.fault(p.Path, FaultShare, trace.Str("name", string(g)), trace.Str("share", percent(decimal.Min(p.Markup, p.Margin))))
		return cost
	case !p.Margin.IsZero():
		return w.round(cost.DivRound(one.Sub(p.Margin), 12))
	}
	return w.round(cost.Mul(one.Add(p.Markup)))
}

// part reads a share of 0 to 1, or more where it may be. One that cannot be
// right counts as zero and is told.
func (w *work) part(share decimal.Decimal, name, path string, more bool) decimal.Decimal {
	if share.IsNegative() || !more && share.GreaterThan(one) {
		w.fault(path, FaultShare, trace.Str("name", name), trace.Str("share", percent(share)))
		return decimal.Zero
	}
	return share
}

// percent writes a share as it is typed.
func percent(share decimal.Decimal) string {
	return share.Mul(decimal.New(100, 0)).String() + " %"
}
