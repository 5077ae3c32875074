package quote

import (
	"slices"

	"github.com/shopspring/decimal"

	"plashet/engine/unit"
)

// Kept is an offer as the client accepted it.
type Kept struct {
	Scopes   []Scope
	Taxes    []Taxed
	Rounding unit.Money
	Total    unit.Money
}

// Keep takes of an offer what a later change is held against.
func (o Offer) Keep() Kept {
	return Kept{Scopes: slices.Clone(o.Scopes), Taxes: slices.Clone(o.Taxes), Rounding: o.Rounding, Total: o.Total}
}

// Order is a change order: what a change of the work does to the price. Its
// moves, taxes and rounding add up to By, and By to the new total.
type Order struct {
	Moves    []Move
	Taxes    []Move
	Rounding unit.Money
	Before   unit.Money
	By       unit.Money // below zero: a credit
	After    unit.Money
}

// Move is what one scope or tax changes by.
type Move struct {
	Name          string
	Before, After unit.Money
	By            unit.Money
	New, Gone     bool
}

// Against gives what the offer changes of an accepted one. Error:
// unit.ErrCurrency where they are in different currencies.
func (o Offer) Against(k Kept) (Order, error) {
	if o.Total.Currency != k.Total.Currency {
		return Order{}, unit.ErrCurrency
	}
	c := Order{Before: k.Total, After: o.Total}
	c.By = unit.Money{Amount: o.Total.Amount.Sub(k.Total.Amount), Currency: o.Total.Currency}
	c.Rounding = unit.Money{Amount: o.Rounding.Amount.Sub(k.Rounding.Amount), Currency: o.Total.Currency}
	var before, after []Scope
	for _, t := range k.Taxes {
		before = append(before, Scope{t.Name, t.Amount})
	}
	for _, t := range o.Taxes {
		after = append(after, Scope{t.Name, t.Amount})
	}
	c.Moves, c.Taxes = moves(k.Scopes, o.Scopes, o.Total.Currency), moves(before, after, o.Total.Currency)
	return c, nil
}

// moves compares two lists by name; what is alike in both is left out.
func moves(before, after []Scope, currency string) []Move {
	var out []Move
	sum := func(list []Scope, name string) (decimal.Decimal, bool) {
		s, found := decimal.Zero, false
		for _, e := range list {
			if e.Name == name {
				s, found = s.Add(e.Price.Amount), true
			}
		}
		return s, found
	}
	var seen []string
	for _, e := range slices.Concat(before, after) {
		if slices.Contains(seen, e.Name) {
			continue
		}
		seen = append(seen, e.Name)
		was, had := sum(before, e.Name)
		is, has := sum(after, e.Name)
		if had == has && was.Equal(is) {
			continue
		}
		money := func(d decimal.Decimal) unit.Money { return unit.Money{Amount: d, Currency: currency} }
		out = append(out, Move{Name: e.Name, Before: money(was), After: money(is), By: money(is.Sub(was)), New: !had, Gone: !has})
	}
	return out
}
