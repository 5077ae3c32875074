package takeoff

import (
	"math"
	"slices"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// prices puts the prices on the items: total = price x buy / per. Loose goods
// are sold by hundredths of what the price is for, rounded up; whole ones by
// the piece, by whole packs of pieces, or by what the pieces hold.
func (w *work) prices() {
	prices := w.listed()
	used, faulted := make([]bool, len(prices)), make([]bool, len(prices))
	unpriced := 0
	for i := range w.items {
		it := &w.items[i]
		if !it.Priced {
			of := match(prices, it)
			for _, k := range of {
				used[k] = true
				if !it.Priced {
					it.price(prices[k].Price)
				}
			}
			if !it.Priced && len(of) > 0 && !faulted[of[0]] {
				faulted[of[0]] = true
				w.fault(prices[of[0]].Path, FaultPriceUnit, trace.Str("name", prices[of[0]].Name))
			}
		}
		if !it.Priced {
			unpriced++
		}
	}
	for k, p := range prices {
		if used[k] {
			continue
		}
		if like, unknown := w.unknown(p.Price); unknown {
			args := named(p.Name, p.Size)
			if like != "" {
				args = append(args, trace.Str("near", like))
			}
			w.findings = append(w.findings, trace.Finding{Message: trace.Message{Code: FindPriceUnused, Args: args}, Path: p.Path, Severity: trace.Info})
		}
	}
	if unpriced > 0 && (len(prices) > 0 || unpriced < len(w.items)) {
		w.findings = append(w.findings, trace.Finding{
			Message:  trace.Message{Code: FindUnpriced, Args: []trace.Arg{trace.Num("of", unit.Ratio(len(w.items)), unit.KindCount)}},
			Severity: trace.Info, Found: unit.Of(unit.Ratio(unpriced), unit.KindCount),
		})
	}
}

// listing is a price with the names it is compared by.
type listing struct {
	Price
	key
}

// key is a name and size as they are compared, and what kind of unit a price is
// for.
type key struct {
	name, size string
	per        unit.Dim
}

// listed gives the prices that can be used. Two for one item stand beside each
// other where they are for different units.
func (w *work) listed() []listing {
	prices := make([]listing, 0, len(w.in.Prices))
	seen := map[key]bool{}
	for _, p := range w.in.Prices {
		k := key{fold(p.Name), fold(p.Size), p.Per.Kind.Dim()}
		switch {
		case p.Amount.Currency != w.in.Currency:
			w.fault(p.Path, FaultPriceCurrency, trace.Str("name", p.Name), trace.Str("currency", p.Amount.Currency), trace.Str("wanted", w.in.Currency))
		case seen[k]:
			w.fault(p.Path, FaultPriceTwice, named(p.Name, p.Size)...)
		default:
			seen[k] = true
			prices = append(prices, listing{p, k})
		}
	}
	return prices
}

// match gives the prices of an item: those of its size, then those of its name
// alone.
func match(prices []listing, it *Item) (found []int) {
	name, its := fold(it.Name), fold(it.Size)
	for _, size := range []string{its, ""} {
		for k, p := range prices {
			if p.name == name && p.size == size {
				found = append(found, k)
			}
		}
		if its == "" {
			break
		}
	}
	return found
}

// own are the names of items that are in no catalogue.
var own = [...]string{NameCement, NamePrimer, NameTape, NameLiner, NameUnderlay, NameBoulders, NameGravel, NameDig, NameSoil, NameLoads}

// Named tells that an item of this package goes by the name, in no size but the
// soil's.
func Named(name string) bool { return slices.Contains(own[:], fold(name)) }

// unknown tells that a price names nothing that could ever be on a list: no
// item of this package, no pipe and no fitting of the book. like are the names
// or sizes that come near it.
func (w *work) unknown(p Price) (like string, unknown bool) {
	if name := fold(p.Name); Named(name) {
		soil := name == NameSoil && w.in.Book != nil && slices.Contains(w.in.Book.Soils(), fold(p.Size))
		return name, fold(p.Size) != "" && !soil
	}
	if w.in.Book == nil {
		return "", true
	}
	var err error
	if _, pipe := w.in.Book.KindName(p.Name); pipe {
		_, err = w.in.Book.FindPipe(p.Name, p.Size)
	} else if w.in.Book.HasFitting(p.Name) {
		_, err = w.in.Book.Fitting(p.Name, p.Size, nil)
	} else {
		return strings.Join(w.in.Book.Near(p.Name, own[:]...), ", "), true
	}
	if err == nil || fold(p.Size) == "" {
		return "", false
	}
	return near(err), true
}

// fold makes names that differ in case or in spaces alike.
func fold(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// price works out the total; the item stays without one where the price is for
// a unit that it is not sold by.
func (i *Item) price(p Price) {
	per := p.Per
	if per == (unit.Value{}) {
		per = unit.Value{SI: 1, Kind: unit.KindCount}
	}
	if !above(per.SI) {
		return
	}
	held := 1.0 // what one of Buy counts for
	whole := i.Buy.Kind == unit.KindCount
	switch {
	case whole && per.Kind == unit.KindCount:
	case whole && i.Pack.SI > 0 && per.Kind.Dim() == i.Pack.Kind.Dim():
		held, whole = i.Pack.SI, false
	case whole || per.Kind == unit.KindCount || per.Kind.Dim() != i.Buy.Kind.Dim():
		return
	}
	low, errLow := p.Amount.Times(units(i.Buy.Low*held/per.SI, whole))
	high, errHigh := p.Amount.Times(units(i.Buy.High*held/per.SI, whole))
	if errLow != nil || errHigh != nil {
		return
	}
	i.Priced, i.Price, i.Per, i.Total = true, p.Amount, per, Total{low, high}
	i.Counter, i.Order = p.Counter, p.Order
}

// units rounds loose goods up to hundredths, and pieces up to whole packs.
func units(n float64, whole bool) float64 {
	if whole {
		return math.Ceil(n - 1e-9)
	}
	return math.Ceil(n*100-1e-6) / 100
}
