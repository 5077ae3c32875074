package quote

import (
	"github.com/shopspring/decimal"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// plan works out deposit, stages and the rest, in coins that add up to the total.
// What rounding leaves falls to the rest; where deposit and stages are the whole,
// to the last of them. None is more than what is left: shares that round up do not
// come to more than the total, however many they are. Payments that exceed the
// total before rounding are at fault.
func (w *work) plan() {
	total := w.offer.Total.Amount
	exact := []decimal.Decimal{w.payment("deposit", w.in.Deposit)}
	for _, s := range w.in.Stages {
		exact = append(exact, w.payment(s.Name, s.Share))
	}
	sum, last := decimal.Zero, 0
	for i, a := range exact {
		sum = sum.Add(a)
		if a.IsPositive() {
			last = i
		}
	}
	left, due := total, make([]unit.Money, len(exact))
	for i, a := range exact {
		a = decimal.Min(w.round(a), left)
		if i == last && sum.Equal(total) {
			a = left
		}
		due[i], left = w.money(a), left.Sub(a)
	}
	if over := sum.Sub(total); over.IsPositive() {
		coin := coin(w.in.Currency)
		over = over.Div(coin).Ceil().Mul(coin) // the least that is too much is a coin
		w.fault(w.in.Path, FaultStages, trace.Str("over", w.money(over).Format(w.in.Style)), trace.Str("total", w.offer.Total.Format(w.in.Style)))
		w.offer.Deposit, w.offer.Rest = w.money(decimal.Zero), w.offer.Total
		return
	}
	w.offer.Planned, w.offer.Deposit, w.offer.Rest = true, due[0], w.money(left)
	for i, s := range w.in.Stages {
		w.offer.Stages = append(w.offer.Stages, Due{Name: s.Name, Amount: due[i+1]})
	}
}

// payment gives what falls due before it is rounded: an amount, or a share of the
// total. One that cannot be right counts as nothing and is told.
func (w *work) payment(name string, s Share) decimal.Decimal {
	switch {
	case s.Amount.Currency == "":
		return w.offer.Total.Amount.Mul(w.part(s.Of, name, s.Path, false))
	case s.Amount.Currency != w.in.Currency:
		w.fault(s.Path, FaultCurrency, trace.Str("name", name), trace.Str("currency", s.Amount.Currency), trace.Str("wanted", w.in.Currency))
	case s.Amount.Amount.IsNegative():
		w.fault(s.Path, FaultNegative, trace.Str("name", name))
	default:
		return w.round(s.Amount.Amount)
	}
	return decimal.Zero
}
