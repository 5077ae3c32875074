package offer

import (
	"testing"

	"github.com/shopspring/decimal"

	"plashet/quote"
)

// TestWasteByHand: waste is on material that is bought loose, not on digging nor on
// the soil that is carted off (common practice, no source). The hillside's loose
// goods: liner 380.88 + 300.26 + 20.44 + 73.60, underlayment 128.34 + 101.17 + 6.89
// + 24.80, stone 726.00 + 114.84 + 693.00 + 81.20, pipe by the foot 24.20, in all
// 2,675.62; 5 % of it is 133.78. Digging 238.00 and soil 433.84 bear none.
func TestWasteByHand(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	o := Of(book, j).Designs[0].Offer
	dug := 0
	for _, l := range o.Lines {
		if l.Scope == ScopeEarth && l.Group == quote.Other {
			dug++
			if l.Wasted {
				t.Errorf("%s bears waste", l.Name)
			}
		}
	}
	if dug != 2 {
		t.Fatalf("%d lines of digging and soil", dug)
	}
	for _, g := range o.Groups {
		want := "0"
		if g.Group == quote.Material {
			want = "133.78"
		}
		if !g.Waste.Amount.Equal(decimal.RequireFromString(want)) {
			t.Errorf("waste on %s: %s, by hand %s", g.Group, g.Waste.Amount, want)
		}
	}
}

// TestWholePaymentsOfAJob: payments of exactly the total are no fault, though each
// rounds up.
func TestWholePaymentsOfAJob(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	for path, value := range map[string]string{
		"/offer/deposit": "33.33 %", "/offer/stages/0/share": "33.33 %", "/offer/roundTo": "0.05", "/offer/discount": "7.77 %",
	} {
		if f := j.Set(path, value); f != nil {
			t.Fatal(path, f)
		}
	}
	j.Offer.Stages = append(j.Offer.Stages[:1:1], j.Offer.Stages[0])
	if f := j.Set("/offer/stages/1/share", "33.34 %"); f != nil {
		t.Fatal(f)
	}
	d := Of(book, j)
	for i := range d.Designs {
		o := &d.Designs[i].Offer
		sum := o.Deposit.Amount.Add(o.Stages[0].Amount.Amount).Add(o.Stages[1].Amount.Amount)
		if len(o.Faults) > 0 || !o.Planned || !o.Rest.Amount.IsZero() || !sum.Equal(o.Total.Amount) {
			t.Errorf("%q: %v, rest %s, paid %s of %s", d.Designs[i].Name, o.Faults, o.Rest.Amount, sum, o.Total.Amount)
		}
	}
	if _, draft := d.Draft(d.Designs); draft {
		t.Error("it is a draft")
	}
}
