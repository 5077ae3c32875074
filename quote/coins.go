package quote

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/unit"
)

// coin gives the smallest amount that is paid in a currency.
func coin(currency string) decimal.Decimal {
	one := unit.Money{Amount: decimal.New(1, 0), Currency: currency}
	for places := int32(4); places > 0; places-- {
		c := decimal.New(1, -places)
		if (unit.Money{Amount: c, Currency: currency}).Round().Amount.Equal(c) {
			return c
		}
	}
	return one.Amount
}

// round rounds to coins, half a coin up on the magnitude.
func (w *work) round(a decimal.Decimal) decimal.Decimal {
	return unit.Money{Amount: a, Currency: w.in.Currency}.Round().Amount
}

// Apportion shares an amount of whole coins among parts in the proportion of
// their weights, so that the shares are whole coins and add up to the amount:
// each gets its share rounded towards zero, and the coins that are left go to
// the largest remainders, of equal ones to the first (largest remainder method,
// T. Hare, The Election of Representatives, 1859: from memory). Without a
// weight above zero all goes to the first part. Weights below zero count as
// zero.
func Apportion(amount unit.Money, weights []decimal.Decimal) []unit.Money {
	shares := make([]unit.Money, len(weights))
	for i := range shares {
		shares[i].Currency = amount.Currency
	}
	if len(weights) == 0 {
		return shares
	}
	sum := decimal.Zero
	for _, weight := range weights {
		sum = sum.Add(decimal.Max(weight, decimal.Zero))
	}
	if sum.IsZero() {
		shares[0] = amount
		return shares
	}
	one := coin(amount.Currency)
	coins := amount.Amount.Div(one).Truncate(0)
	type rest struct {
		part int
		left decimal.Decimal
	}
	rests := make([]rest, len(weights))
	given := decimal.Zero
	for i, weight := range weights {
		// The whole division is in integers: quotient and remainder are exact.
		whole, left := coins.Abs().Mul(decimal.Max(weight, decimal.Zero)).QuoRem(sum, 0)
		rests[i] = rest{i, left}
		shares[i].Amount = whole
		given = given.Add(whole)
	}
	slices.SortStableFunc(rests, func(a, b rest) int { return b.left.Cmp(a.left) })
	for i := range coins.Abs().Sub(given).IntPart() {
		part := rests[int(i)%len(rests)].part
		shares[part].Amount = shares[part].Amount.Add(decimal.New(1, 0))
	}
	for i := range shares {
		shares[i].Amount = shares[i].Amount.Mul(one)
		if coins.IsNegative() {
			shares[i].Amount = shares[i].Amount.Neg()
		}
	}
	return shares
}
