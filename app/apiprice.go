package app

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
)

// apiShelfPrice is a price of the shelf; its fields go by these names where they are
// set.
type apiShelfPrice struct {
	Item     string `json:"item" doc:"as the material list names it"`
	Amount   string `json:"price" doc:"of one of unit, without a currency, with a decimal point"`
	Currency string `json:"currency" doc:"its code (ISO 4217)"`
	Unit     string `json:"unit,omitempty" doc:"what it is for; each where absent"`
	Date     string `json:"date,omitempty" doc:"year-month-day"`
	Counter  string `json:"counter,omitempty" doc:"where it is bought"`
	Order    int    `json:"order,omitempty" doc:"place of the counter in the round; absent where it is not said"`
	Note     string `json:"note,omitempty" doc:"anything worth knowing"`
	Aside    bool   `json:"aside,omitempty" doc:"put aside: kept, and offered to no job"`
}

// onePrice is a price with the list that it stands in.
type onePrice struct {
	list *shelf.Prices
	at   int
	rev  store.Revision // of the list
}

// onPrice does something with the price of the shelf that a request names.
func (a *app) onPrice(f func(w http.ResponseWriter, r *http.Request, p onePrice) error) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		p, err := a.namedPrice(r)
		if err != nil {
			return err
		}
		return f(w, r, p)
	}
}

// namedPrice finds a price by its item and, where an item has several, by what
// else tells them apart; those in use before those put aside.
func (a *app) namedPrice(r *http.Request) (onePrice, error) {
	list, rev, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return onePrice{}, err
	}
	item, q := r.PathValue("item"), r.URL.Query()
	same := func(field, text string) bool { return !q.Has(field) || shelf.Fold(q.Get(field)) == shelf.Fold(text) }
	for _, aside := range []bool{false, true} {
		var found []int
		var lines []string
		for i, p := range list.List {
			unit := p.Unit
			if unit == "" {
				unit = "each"
			}
			if p.Aside == aside && shelf.Fold(p.Item) == shelf.Fold(item) && same(shelf.FieldUnit, unit) && same(shelf.FieldCurrency, p.Currency) && same(shelf.FieldCounter, p.Counter) {
				found, lines = append(found, i), append(lines, p.Line())
			}
		}
		switch {
		case len(found) == 1:
			return onePrice{list, found[0], rev}, nil
		case len(found) > 1:
			return onePrice{}, a.wrong(http.StatusConflict, "app.api.prices", "item", item, strings.Join(lines[:min(len(lines), mostTold)], "; "), "?unit=each&currency=USD")
		}
	}
	return onePrice{}, a.wrong(http.StatusNotFound, "app.api.noprice", "item", item, "", "")
}

func (a *app) apiPrice(w http.ResponseWriter, _ *http.Request, p onePrice) error {
	w.Header().Set("ETag", etag(p.rev.Number))
	return sendJSON(w, http.StatusOK, apiShelfPrice(p.list.List[p.at]))
}

// apiSetPrice sets fields of a price as its form does.
func (a *app) apiSetPrice(w http.ResponseWriter, r *http.Request, p onePrice) error {
	if err := a.onShelf(r, p.rev); err != nil {
		return err
	}
	sets, err := a.sentSets(r, `{"set": [{"path": "/price", "value": "3.30"}]}`)
	if err != nil {
		return err
	}
	form := written(p.list.List[p.at])
	var known []string
	for _, f := range shelf.PriceFields() {
		known = append(known, "/"+f.Name)
	}
	known = append(known, "/"+fieldAside)
	for _, s := range sets {
		if !slices.Contains(known, s.Path) {
			return a.wrong(http.StatusUnprocessableEntity, "app.api.pricepath", short(s.Path), s.Path, strings.Join(known, ", "), known[1])
		}
		if s.Path == "/"+fieldAside && s.Value != "" {
			b, err := strconv.ParseBool(s.Value)
			if err != nil {
				return a.wrong(http.StatusUnprocessableEntity, "app.api.param", s.Path, s.Value, "true, false", "true")
			}
			if !b {
				s.Value = ""
			}
		}
		form.Set(s.Path[1:], strings.ToValidUTF8(s.Value, "\uFFFD"))
	}
	next, faults := typedPrice(form)
	if faults = append(faults, twice(p.list, next, p.at)...); len(faults) > 0 {
		return a.rowProblem(faults[0])
	}
	return a.keepPrice(w, r, p, next)
}

func (a *app) apiRemovePrice(w http.ResponseWriter, r *http.Request, p onePrice) error {
	if err := a.onShelf(r, p.rev); err != nil {
		return err
	}
	next := p.list.List[p.at]
	next.Aside = true
	return a.keepPrice(w, r, p, next)
}

// keepPrice keeps the list with a price as it is to be.
func (a *app) keepPrice(w http.ResponseWriter, r *http.Request, p onePrice, next shelf.Price) error {
	list := withPrice(p.list, next, p.at)
	rev, what := p.rev, a.pricesBetween(p.list, list)
	var err error
	if what != "" {
		rev, err = keep.SavePrices(r.Context(), a.Store, rev.Number, list, a.change(r, what))
	}
	return a.shelvedAs(w, rev, what, err)
}
