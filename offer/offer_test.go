package offer

import (
	"reflect"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/quote"
)

func read(t *testing.T, name string) (*catalog.Book, *job.Job) {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job(name))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return book, j
}

// TestExamplesAddUp: of every example and every option the lines add up to the
// groups, the parts of the work to the price before tax, that with taxes and
// rounding to the total, and deposit, stages and rest to the total.
func TestExamplesAddUp(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		book, j := read(t, name)
		d := Of(book, j)
		for i := range d.Designs {
			n++
			o := &d.Designs[i].Offer
			lines, groups, scopes := decimal.Zero, decimal.Zero, decimal.Zero
			for _, l := range o.Lines {
				lines = lines.Add(l.Amount.Amount)
			}
			for _, g := range o.Groups {
				groups = groups.Add(g.Lines.Amount)
			}
			for _, s := range o.Scopes {
				scopes = scopes.Add(s.Price.Amount)
			}
			total := o.Net.Amount.Add(o.Rounding.Amount)
			for _, x := range o.Taxes {
				total = total.Add(x.Amount.Amount)
			}
			due := o.Deposit.Amount.Add(o.Rest.Amount)
			for _, x := range o.Stages {
				due = due.Add(x.Amount.Amount)
			}
			if !lines.Equal(groups) || !scopes.Equal(o.Net.Amount) || !total.Equal(o.Total.Amount) || !due.Equal(o.Total.Amount) {
				t.Errorf("%s %q: lines %s groups %s, parts %s net %s, total %s of %s, due %s", name, d.Designs[i].Name, lines, groups, scopes, o.Net.Amount, total, o.Total.Amount, due)
			}
		}
	}
	if n < 7 {
		t.Fatalf("only %d designs", n)
	}
}

// TestOptionsAreIndependent: an option's price does not hang on which others
// stand beside it, nor on their order; nor does the design's own.
func TestOptionsAreIndependent(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	wide := job.Choice{Name: "wide main", Changes: []job.Setting{{Path: "/runs/1/pipe/size", Value: "3"}}}
	bare := job.Choice{Name: "less stone", Changes: []job.Setting{{Path: "/offer/contingency", Value: "0 %"}}}
	with := func(options ...job.Choice) Document {
		other := j.Clone()
		other.Offer.Options = options
		return Of(book, other)
	}
	all := with(j.Offer.Options[0], wide, bare)
	turned := with(bare, wide, j.Offer.Options[0])
	if len(all.Designs) != 4 || len(turned.Designs) != 4 || len(all.Faults) > 0 {
		t.Fatalf("%d and %d designs, %v", len(all.Designs), len(turned.Designs), all.Faults)
	}
	for _, p := range all.Designs {
		k := slices.IndexFunc(turned.Designs, func(q Priced) bool { return q.Name == p.Name })
		if k < 0 || !reflect.DeepEqual(turned.Designs[k].Offer, p.Offer) {
			t.Errorf("%q is priced otherwise in another order", p.Name)
		}
	}
	if alone := with(); !reflect.DeepEqual(alone.Designs[0].Offer, all.Designs[0].Offer) {
		t.Error("the design is priced otherwise without options")
	}
	// An option is the design with its fields set so, and nothing else.
	other := j.Clone()
	other.Offer.Options = nil
	if f := other.Set("/runs/1/pipe/size", "3"); f != nil {
		t.Fatal(f)
	}
	own := Of(book, other).Designs[0].Offer
	k := slices.IndexFunc(all.Designs, func(q Priced) bool { return q.Name == "wide main" })
	if !own.Total.Amount.Equal(all.Designs[k].Offer.Total.Amount) || own.Total.Amount.Equal(all.Designs[0].Offer.Total.Amount) {
		t.Errorf("wide main: %s as an option, %s as the design, %s without", all.Designs[k].Offer.Total.Format(unit.StyleOf("", unit.US)), own.Total.Format(unit.StyleOf("", unit.US)), all.Designs[0].Offer.Total.Format(unit.StyleOf("", unit.US)))
	}
}

// TestAgreedIsUnchanged: an offer kept as agreed and held against itself changes
// nothing, parts without a name among them.
func TestAgreedIsUnchanged(t *testing.T) {
	for _, name := range []string{"hillside-cascade", "orchard-ring"} {
		book, j := read(t, name)
		for _, p := range Of(book, j).Designs {
			Agree(j, p, "2026-06-02")
			d := Of(book, j)
			if c := d.Change; c == nil || len(c.Moves)+len(c.Taxes) > 0 || !c.By.Amount.IsZero() || !c.Rounding.Amount.IsZero() || d.Against != p.Name {
				t.Errorf("%s %q: %+v", name, p.Name, c)
			}
		}
	}
}

// TestExpenseByHand: one more expense of 210.00 on the old pond is, with 3 %
// contingency and a margin of 28 %, 210 x 1.03 / 0.72 = 300.42 more before tax
// (no tax on other costs), and the total, rounded to 5, goes from 3,695 to
// 3,995: 3,598.93 + 300.42 + 96.06 = 3,995.41 (common practice, no source).
func TestExpenseByHand(t *testing.T) {
	book, j := read(t, "old-pond")
	c := Of(book, j).Change
	if c == nil || len(c.Moves) != 1 || len(c.Taxes) != 0 {
		t.Fatalf("%+v", c)
	}
	for what, x := range map[string][2]string{
		"power": {c.Moves[0].By.Amount.String(), "300.42"}, "before": {c.Before.Amount.String(), "3695"},
		"after": {c.After.Amount.String(), "3995"}, "by": {c.By.Amount.String(), "300"}, "rounding": {c.Rounding.Amount.String(), "-0.42"},
	} {
		if !decimal.RequireFromString(x[0]).Equal(decimal.RequireFromString(x[1])) {
			t.Errorf("%s: %s, by hand %s", what, x[0], x[1])
		}
	}
}

// TestUnpriced: what has no price is told with its number and counts in no sum.
func TestUnpriced(t *testing.T) {
	book, j := read(t, "terrace-spout")
	p := Of(book, j).Designs[0]
	missing := 0
	for _, l := range p.Offer.Lines {
		if !l.Counts {
			missing++
			if !l.Amount.Amount.IsZero() {
				t.Errorf("%s counts %s", l.Name, l.Amount.Format(unit.StyleOf("", unit.US)))
			}
		}
	}
	if missing == 0 || p.Offer.Complete || len(p.Findings) == 0 {
		t.Errorf("%d lines without a price, complete %v, %d findings", missing, p.Offer.Complete, len(p.Findings))
	}
	if got := p.Offer.Lines[0].Group; got != quote.Material {
		t.Errorf("the first line is %s", got)
	}
}
