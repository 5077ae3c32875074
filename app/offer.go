package app

import (
	"net/http"
	"strconv"

	"plashet/answer"
	pricing "plashet/offer"
)

type offerBody struct {
	ID      string
	Client  bool // what the client sees
	Which   int
	Designs []offerDesign
	Parts   []answer.OfferPart
	Low     string
}

// offerDesign is the design itself, or an option.
type offerDesign struct {
	Number      int
	Name, Total string
	Here        bool
	Open        bool // something in it has no price
}

// offer shows what is offered: as the client sees it, or how the price came
// about. A design is priced anew with each of its options, so nothing of it is
// kept.
func (a *app) offer(w http.ResponseWriter, r *http.Request) error {
	o, err := a.open(r)
	if err != nil {
		return err
	}
	d := pricing.Of(a.Book, o.job, o.faults...)
	b := offerBody{ID: o.rev.ID, Client: r.URL.Query().Get("for") != "firm"}
	if n, err := strconv.Atoi(r.URL.Query().Get("option")); err == nil && n > 0 && n < len(d.Designs) {
		b.Which = n
	}
	for i := range d.Designs {
		x := &d.Designs[i]
		name := x.Name
		if name == "" {
			name = a.Language.Word("offer.own")
		}
		total := x.Offer.Total.Format(o.job.Style())
		if x.Offer.Unpriced() {
			total = ""
		}
		b.Designs = append(b.Designs, offerDesign{i, name, total, i == b.Which, !x.Offer.Complete})
	}
	b.Parts = answer.OfferParts(o.job, &d, b.Which, b.Client, a.Language)
	code := "app.offer.client"
	if !b.Client {
		code = "app.offer.firm"
	}
	a.show(w, r, http.StatusOK, "offer", a.say(code), a.heading(o, "material"), b)
	return nil
}
