package app

import (
	"cmp"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/shelf"
	"plashet/shelf/keep"
)

// perPrices is how many prices a page shows.
const perPrices = 200

// priceLine is one price of the list.
type priceLine struct {
	shelf.Price
	Index  int
	Amount string // with its currency
}

type pricesBody struct {
	Base     int
	Last     string
	Prices   []priceLine
	All      int
	Text     string
	Archived bool
	Next     string // address of the next page
	Form     priceForm
}

// prices shows the list, in the order of the round and then by item.
func (a *app) prices(w http.ResponseWriter, r *http.Request) error {
	return a.showPrices(w, r, http.StatusOK, a.priceForm(shelf.Price{}, "", nil))
}

func (a *app) showPrices(w http.ResponseWriter, r *http.Request, status int, form priceForm) error {
	list, rev, err := keep.Prices(r.Context(), a.Store)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	b := pricesBody{Base: rev.Number, Last: rev.What, Text: q.Get("text"), Archived: q.Get("aside") != "", Form: form}
	b.Form.Base = rev.Number
	from, _ := strconv.Atoi(q.Get("from"))
	var found []priceLine
	sought := strings.ToLower(strings.TrimSpace(b.Text))
	for i, p := range list.List {
		if p.Aside != b.Archived || !strings.Contains(strings.ToLower(p.Item+"\n"+p.Counter+"\n"+p.Note), sought) {
			continue
		}
		found = append(found, priceLine{Price: p, Index: i, Amount: p.Exact()})
	}
	slices.SortStableFunc(found, func(x, y priceLine) int { return inRound(x.Price, y.Price) })
	b.All = len(found)
	from = min(max(from, 0), len(found))
	if b.Prices = found[from:]; len(b.Prices) > perPrices {
		b.Prices = b.Prices[:perPrices]
		q.Set("from", strconv.Itoa(from+perPrices))
		b.Next = "/prices?" + q.Encode()
	}
	a.show(w, r, status, "prices", a.say("app.prices.title"), nil, b)
	return nil
}

// inRound orders prices by the counters' places in the round, those without one
// last, then by counter and item.
func inRound(x, y shelf.Price) int {
	return cmp.Or(cmp.Compare(x.Order+last(x), y.Order+last(y)), cmp.Compare(strings.ToLower(x.Counter), strings.ToLower(y.Counter)), cmp.Compare(strings.ToLower(x.Item), strings.ToLower(y.Item)))
}

func last(p shelf.Price) int {
	if p.Order == 0 {
		return 1_000_000
	}
	return 0
}

// pricesBetween tells in plain words how two lists differ; "" where they do not.
func (a *app) pricesBetween(from, to *shelf.Prices) string {
	var said []string
	count := 0
	tell := func(text string) {
		if count++; count <= mostTold {
			said = append(said, text)
		}
	}
	for i, p := range to.List {
		switch {
		case i >= len(from.List):
			tell(a.say("app.prices.new", "new", p.Line()))
		case from.List[i] == p:
		case p.Aside != from.List[i].Aside && p.Aside:
			tell(a.say("app.prices.aside", "item", p.Item))
		case p.Aside != from.List[i].Aside:
			tell(a.say("app.prices.back", "item", p.Item))
		default:
			tell(a.say("app.change.set", "where", p.Item, "old", strings.TrimPrefix(from.List[i].Line(), p.Item+": "), "new", strings.TrimPrefix(p.Line(), p.Item+": ")))
		}
	}
	for i := len(to.List); i < len(from.List); i++ {
		tell(a.say("app.prices.gone", "old", from.List[i].Line()))
	}
	if count > mostTold {
		said = append(said, a.say("app.change.more", "count", strconv.Itoa(count-mostTold)))
	}
	return strings.Join(said, "; ")
}
