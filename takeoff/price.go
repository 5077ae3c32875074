package takeoff

import (
	"math"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// prices puts the prices on the items: total = price x buy / per. Loose goods
// are sold by hundredths of what the price is for, rounded up; whole ones by
// the piece.
func (w *work) prices() {
	if len(w.in.Prices) == 0 {
		return
	}
	prices := make([]Price, 0, len(w.in.Prices))
	seen := map[[2]string]bool{}
	for _, p := range w.in.Prices {
		key := [2]string{fold(p.Name), fold(p.Size)}
		switch {
		case p.Amount.Currency != w.in.Currency:
			w.fault(p.Path, FaultPriceCurrency, trace.Str("name", p.Name), trace.Str("currency", p.Amount.Currency), trace.Str("wanted", w.in.Currency))
		case seen[key]:
			w.fault(p.Path, FaultPriceTwice, named(p.Name, p.Size)...)
		default:
			seen[key] = true
			prices = append(prices, p)
		}
	}
	used := make([]bool, len(prices))
	faulted := make([]bool, len(prices))
	unpriced := 0
	for i := range w.items {
		it := &w.items[i]
		if k := match(prices, it); k >= 0 {
			used[k] = true
			if !it.price(prices[k]) && !faulted[k] {
				faulted[k] = true
				w.fault(prices[k].Path, FaultPriceUnit, trace.Str("name", prices[k].Name))
			}
		}
		if !it.Priced {
			unpriced++
		}
	}
	for k, p := range prices {
		if !used[k] {
			w.findings = append(w.findings, trace.Finding{
				Message: trace.Message{Code: FindPriceUnused, Args: named(p.Name, p.Size)},
				Path:    p.Path, Severity: trace.Info,
			})
		}
	}
	if unpriced > 0 {
		w.findings = append(w.findings, trace.Finding{
			Message:  trace.Message{Code: FindUnpriced, Args: []trace.Arg{trace.Num("of", unit.Ratio(len(w.items)), unit.KindCount)}},
			Severity: trace.Info, Found: unit.Of(unit.Ratio(unpriced), unit.KindCount),
		})
	}
}

// match finds the price of an item: of its size, else of its name alone; -1
// where there is none.
func match(prices []Price, it *Item) int {
	found := -1
	for k, p := range prices {
		switch {
		case fold(p.Name) != fold(it.Name):
		case fold(p.Size) == fold(it.Size):
			return k
		case p.Size == "":
			found = k
		}
	}
	return found
}

// fold makes names that differ in case or in spaces alike.
func fold(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// price works out the total; false where the price is for a unit that the item
// is not sold by.
func (i *Item) price(p Price) bool {
	per := p.Per
	if per == (unit.Value{}) {
		per = unit.Value{SI: 1, Kind: unit.KindCount}
	}
	whole := i.Buy.Kind == unit.KindCount
	if per.Kind.Dim() != i.Buy.Kind.Dim() || whole != (per.Kind == unit.KindCount) || !above(per.SI) {
		return false
	}
	low, errLow := p.Amount.Times(units(i.Buy.Low/per.SI, whole))
	high, errHigh := p.Amount.Times(units(i.Buy.High/per.SI, whole))
	if errLow != nil || errHigh != nil {
		return false
	}
	i.Priced, i.Price, i.Per, i.Total = true, p.Amount, per, Total{low, high}
	return true
}

// units rounds loose goods up to hundredths and leaves whole ones.
func units(n float64, whole bool) float64 {
	if whole {
		return n
	}
	return math.Ceil(n*100-1e-6) / 100
}
