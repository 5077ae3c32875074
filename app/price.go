package app

import (
	"cmp"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/shelf"
	"plashet/shelf/keep"
)

// priceForm is a price in a form.
type priceForm struct {
	Index  string // "" for a new one
	Base   int
	Fields []priceField
	Aside  bool
	Wrong  bool
}

type priceField struct {
	Name, Title, Value, Example, Error, Hint, Keyboard string
	Must                                               bool
}

// fieldAside is filled for a price that is put aside.
const fieldAside = "aside"

// written gives the fields of a price as a form has them.
func written(p shelf.Price) url.Values {
	v := url.Values{}
	for name, text := range map[string]string{
		shelf.FieldItem: p.Item, shelf.FieldPrice: p.Amount, shelf.FieldCurrency: p.Currency, shelf.FieldUnit: p.Unit, shelf.FieldDate: p.Date,
		shelf.FieldCounter: p.Counter, shelf.FieldNote: p.Note,
	} {
		v.Set(name, text)
	}
	if p.Order != 0 {
		v.Set(shelf.FieldOrder, strconv.Itoa(p.Order))
	}
	if p.Aside {
		v.Set(fieldAside, "true")
	}
	return v
}

// priceForm makes the form of a price.
func (a *app) priceForm(p shelf.Price, index string, faults []trace.Fault) priceForm {
	values := written(p)
	f := priceForm{Index: index, Aside: p.Aside, Wrong: len(faults) > 0}
	for _, x := range shelf.PriceFields() {
		in := priceField{
			Name: x.Name, Title: a.Language.Word("app.shelf.field." + x.Name), Value: values.Get(x.Name), Example: x.Example, Must: x.Must || x.Name == shelf.FieldCurrency,
			Hint: a.Language.Word("app.prices.hint." + x.Name), Keyboard: "text",
		}
		switch x.Name {
		case shelf.FieldPrice:
			in.Keyboard = "decimal"
		case shelf.FieldOrder:
			in.Keyboard = "numeric"
		}
		for _, fault := range faults {
			if fault.Path == "/"+x.Name {
				in.Error = a.rowText(fault)
			}
		}
		f.Fields = append(f.Fields, in)
	}
	return f
}

// typedPrice reads a price from a form.
func typedPrice(form url.Values) (shelf.Price, []trace.Fault) {
	p := shelf.Price{
		Item: form.Get(shelf.FieldItem), Amount: form.Get(shelf.FieldPrice), Currency: form.Get(shelf.FieldCurrency), Unit: form.Get(shelf.FieldUnit),
		Date: strings.TrimSpace(form.Get(shelf.FieldDate)), Counter: form.Get(shelf.FieldCounter), Note: form.Get(shelf.FieldNote), Aside: form.Get(fieldAside) != "",
	}
	order := strings.TrimSpace(form.Get(shelf.FieldOrder))
	if n, err := strconv.Atoi(order); err == nil {
		p.Order = n
	} else if order != "" {
		p.Order = -1 // told by CheckPrice
	}
	return shelf.CheckPrice(p, 0, nil)
}

// price shows one price to change.
func (a *app) price(w http.ResponseWriter, r *http.Request) error {
	list, rev, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(r.PathValue("number"))
	if err != nil || n < 0 || n >= len(list.List) {
		return errNoPage
	}
	f := a.priceForm(list.List[n], strconv.Itoa(n), nil)
	f.Base = rev.Number
	a.show(w, r, http.StatusOK, "price", list.List[n].Item, nil, f)
	return nil
}

// setPrice changes a price or adds one. The place of a price in the list never
// changes but by a return to an earlier state, so that a form from an older state
// still names its price; where that price has changed since, both are shown.
func (a *app) setPrice(w http.ResponseWriter, r *http.Request) error {
	if err := a.form(r); err != nil {
		return err
	}
	list, rev, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return err
	}
	p, faults := typedPrice(r.PostForm)
	index := r.PostFormValue("index")
	n := len(list.List)
	var before shelf.Price
	if index != "" {
		if n, err = strconv.Atoi(index); err != nil || n < 0 || n >= len(list.List) {
			return a.refuse(http.StatusConflict, "app.error.moved")
		}
		before = list.List[n]
		if base(r) != rev.Number && !a.samePrice(r, n, before) {
			faults = append(faults, trace.Fault{Path: "/" + shelf.FieldItem, Message: trace.Message{Code: "app.prices.clash", Args: []trace.Arg{trace.Str("now", before.Line())}}})
		}
	}
	faults = append(faults, twice(list, p, n)...)
	if len(list.List) >= shelf.MostPrices && index == "" {
		return a.refuse(http.StatusUnprocessableEntity, "app.prices.full")
	}
	if len(faults) > 0 {
		f := a.priceForm(p, index, faults)
		if index == "" {
			return a.showPrices(w, r, http.StatusUnprocessableEntity, f)
		}
		f.Base = rev.Number
		a.show(w, r, http.StatusUnprocessableEntity, "price", cmp.Or(before.Item, p.Item), nil, f)
		return nil
	}
	next := withPrice(list, p, n)
	if what := a.pricesBetween(list, next); what != "" {
		if _, err := keep.SavePrices(r.Context(), a.Store, rev.Number, next, a.change(r, what)); err != nil {
			return a.stale(err)
		}
	}
	see(w, r, "/prices")
	return nil
}

// twice tells that a price, at its place in the list, stands elsewhere in it too.
func twice(list *shelf.Prices, p shelf.Price, n int) []trace.Fault {
	other := list.Find(p)
	if other < 0 || other == n {
		return nil
	}
	return []trace.Fault{{Path: "/" + shelf.FieldItem, Message: trace.Message{Code: "app.prices.twice", Args: []trace.Arg{trace.Str("now", list.List[other].Line())}}}}
}

// withPrice gives a list with a price at a place of it, or behind its end.
func withPrice(list *shelf.Prices, p shelf.Price, n int) *shelf.Prices {
	next := shelf.NewPrices()
	next.List = append(append(next.List, list.List[:n]...), p)
	if n < len(list.List) {
		next.List = append(next.List, list.List[n+1:]...)
	}
	return next
}

// samePrice tells that a price is what it was in the state that a form was made
// on.
func (a *app) samePrice(r *http.Request, n int, now shelf.Price) bool {
	rev, err := a.Store.At(r.Context(), keep.PricesID, base(r))
	if err != nil {
		return false
	}
	old, err := keep.PricesAt(rev)
	return err == nil && n < len(old.List) && old.List[n] == now
}

// rowText words a fault of a row.
func (a *app) rowText(f trace.Fault) string { return a.Language.Row(f, unit.US) }
