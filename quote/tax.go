package quote

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/trace"
)

// discount takes the discount off and shares it among the groups.
func (w *work) discount() {
	share := w.part(w.in.Discount, "discount", w.in.Path+"/discount", false)
	off := w.round(w.offer.Price.Amount.Mul(share))
	prices := make([]decimal.Decimal, len(w.offer.Groups))
	for i, b := range w.offer.Groups {
		prices[i] = b.Price.Amount
	}
	for i, s := range Apportion(w.money(off), prices) {
		b := &w.offer.Groups[i]
		b.Net = w.money(b.Price.Amount.Sub(s.Amount))
	}
	w.offer.Discount = w.money(off)
	w.offer.Net = w.money(w.offer.Price.Amount.Sub(off))
	w.offer.Profit = w.money(w.offer.Net.Amount.Sub(w.offer.Cost.Amount))
}

// share spreads each group's price over the scopes by what they cost.
func (w *work) share() {
	sums := make([]decimal.Decimal, len(w.scopes))
	for _, b := range w.offer.Groups {
		weights := make([]decimal.Decimal, len(w.scopes))
		for _, l := range w.offer.Lines {
			if l.Counts && l.Group == b.Group {
				i := slices.Index(w.scopes, l.Scope)
				weights[i] = weights[i].Add(l.Amount.Amount)
			}
		}
		row := make([]decimal.Decimal, len(w.scopes))
		for i, s := range Apportion(b.Net, weights) {
			row[i] = s.Amount
			sums[i] = sums[i].Add(s.Amount)
		}
		w.grid[b.Group] = row
	}
	for i, name := range w.scopes {
		w.offer.Scopes = append(w.offer.Scopes, Scope{Name: name, Price: w.money(sums[i])})
	}
}

// taxes works out each tax in order, on the whole or scope by scope.
func (w *work) taxes() {
	before := make([]decimal.Decimal, len(w.scopes)) // taxes so far, by scope
	above := decimal.Zero                            // taxes so far, on the whole
	for _, t := range w.in.Taxes {
		rate := w.part(t.Rate, t.Name, t.Path, true)
		base, amount := decimal.Zero, decimal.Zero
		for i := range w.scopes {
			on := decimal.Zero
			for g, row := range w.grid {
				if len(t.On) == 0 || slices.Contains(t.On, g) {
					on = on.Add(row[i])
				}
			}
			if t.Over {
				on = on.Add(before[i])
			}
			base = base.Add(on)
			if w.in.TaxByRow {
				tax := w.round(on.Mul(rate))
				before[i] = before[i].Add(tax)
				amount = amount.Add(tax)
			}
		}
		if !w.in.TaxByRow {
			if t.Over {
				base = base.Add(above)
			}
			amount = w.round(base.Mul(rate))
			above = above.Add(amount)
		}
		w.offer.Taxes = append(w.offer.Taxes, Taxed{Name: t.Name, Rate: rate, Base: w.money(base), Amount: w.money(amount)})
	}
}

// total adds up and rounds to the multiple that is wanted.
func (w *work) total() {
	sum := w.offer.Net.Amount
	for _, t := range w.offer.Taxes {
		sum = sum.Add(t.Amount.Amount)
	}
	total := sum
	switch to := w.in.RoundTo; {
	case to.Amount.IsZero():
	case to.Currency != w.in.Currency:
		w.fault(w.in.Path+"/roundTo", FaultCurrency, trace.Str("name", "rounding"), trace.Str("currency", to.Currency), trace.Str("wanted", w.in.Currency))
	case to.Amount.IsNegative():
		w.fault(w.in.Path+"/roundTo", FaultNegative, trace.Str("name", "rounding"))
	default:
		total = w.round(sum.DivRound(to.Amount, 12).Round(0).Mul(to.Amount))
	}
	w.offer.Total, w.offer.Rounding = w.money(total), w.money(total.Sub(sum))
}
