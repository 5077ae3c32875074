package app

import (
	"net/http"
	"slices"
	"strings"

	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
)

// jobPrice is an item of the material list with the price on the shelf.
type jobPrice struct {
	Item, Key   string
	Now, New    string
	NewDate     string
	Others      int // further prices of the item on the shelf
	Same, Older bool
}

// offer is a price of the shelf for an item of a job.
type offer struct {
	jobPrice
	price shelf.Price
	index int // of the price in the job; -1 none
}

// offers gives for each item of the job's material list, and for each that has a
// price in the job, the price of the shelf: the first counter in the round, of
// one counter the newest day.
func (a *app) offers(o *opened, prices *shelf.Prices) []offer {
	byItem := map[string][]shelf.Price{}
	for _, p := range prices.List {
		if !p.Aside && p.Currency == o.job.Site.Currency {
			byItem[shelf.Fold(p.Item)] = append(byItem[shelf.Fold(p.Item)], p)
		}
	}
	var out []offer
	seen := map[string]bool{}
	add := func(name string, index int) {
		key := shelf.Fold(name)
		list := byItem[key]
		if len(list) == 0 || seen[key] {
			return
		}
		seen[key] = true
		slices.SortStableFunc(list, func(x, y shelf.Price) int {
			if x.Order+last(x) != y.Order+last(y) {
				return x.Order + last(x) - y.Order - last(y)
			}
			return strings.Compare(y.Date, x.Date)
		})
		p := list[0]
		x := offer{price: p, index: index, jobPrice: jobPrice{Item: name, Key: key, New: p.Per(), NewDate: strings.TrimPrefix(strings.TrimSpace(p.Date+" "+p.Counter), " "), Others: len(list) - 1}}
		if index >= 0 {
			own := o.job.Prices[index]
			was := shelf.Price{Amount: own.Price.Text, Currency: o.job.Site.Currency, Unit: own.Unit}
			x.Now = was.Per()
			x.Same = x.Now == x.New
			x.Older = own.Date != "" && p.Date != "" && p.Date < own.Date
		}
		out = append(out, x)
	}
	for i, p := range o.job.Prices {
		add(p.Item, i)
	}
	for _, m := range o.result.Materials {
		name := m.Name
		if m.Size != "" {
			name += ", " + m.Size
		}
		for _, n := range []string{name, strings.ReplaceAll(name, ", ", " ")} {
			add(n, a.priceIndex(o.job, n))
		}
	}
	return out
}

func (a *app) priceIndex(j *job.Job, item string) int {
	return slices.IndexFunc(j.Prices, func(p job.Price) bool { return shelf.Fold(p.Item) == shelf.Fold(item) })
}

// takePrices copies the prices that are ticked into the job.
func (a *app) takePrices(w http.ResponseWriter, r *http.Request) error {
	o, err := a.current(r)
	if err != nil {
		return err
	}
	prices, _, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return err
	}
	next := o.job.Clone()
	for _, x := range a.offers(o, prices) {
		if !slices.Contains(r.PostForm["item"], x.Key) {
			continue
		}
		i := x.index
		if i < 0 {
			i = len(next.Prices)
		}
		at := "/prices/" + itoa(i) + "/"
		name := x.Item
		if x.index >= 0 {
			name = next.Prices[i].Item
		}
		order := ""
		if x.price.Order > 0 {
			order = itoa(x.price.Order)
		}
		for _, e := range []edit{{at + "item", name}, {at + "price", x.price.Amount}, {at + "unit", x.price.Unit}, {at + "counter", x.price.Counter}, {at + "order", order}, {at + "date", x.price.Date}} {
			if f := next.Set(e.path, e.text); f != nil {
				return refusal{status: http.StatusUnprocessableEntity, text: a.Language.Say(f.Message, next.System())}
			}
		}
	}
	what := a.describe(o.job, next)
	if what == "" {
		return a.refuse(http.StatusUnprocessableEntity, "app.jobshelf.none")
	}
	return a.saveTold(w, r, o, next, a.say("app.jobshelf.prices", "what", what))
}
