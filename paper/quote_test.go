package paper

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/quote"
)

// written gives the letters of a sheet, page after page, line after line.
func written(s Sheet) string {
	var b strings.Builder
	for i := range s.Pages {
		for _, x := range texts(&s.Pages[i]) {
			b.WriteString(x.Text + "\n")
		}
	}
	return b.String()
}

func one(t testing.TB, in Input, name string) Sheet {
	t.Helper()
	return sheetsOf(t, in, name)[0]
}

type scope = quote.Scope

// amounts gathers what the client is told.
func amounts(scopes []quote.Scope, taxes []quote.Taxed, stages []quote.Due) (out []unit.Money) {
	for _, x := range scopes {
		out = append(out, x.Price)
	}
	for _, x := range taxes {
		out = append(out, x.Amount)
	}
	for _, x := range stages {
		out = append(out, x.Amount)
	}
	return out
}

// TestPrivateNote: what is noted for the crew stands on no sheet for the client,
// in no drawing, and the client's note stands where it should.
func TestPrivateNote(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		j := example(t, name)
		j.Note, j.ClientNote = "Quarrelsome7 client", "Plumtree7 stays"
		in := input(t, j, Letter)
		for _, s := range sheetsOf(t, in) {
			text := written(s)
			for i := range s.Pages {
				text += s.Pages[i].Desc + s.Pages[i].Title
			}
			if strings.Contains(text, "Quarrelsome7") != (s.Name == "site") {
				t.Errorf("%s %s: the crew's note is where it should not be, or not where it should", name, s.Name)
			}
			if s.Name == "quote" || s.Name == "change" || s.Name == "care" {
				n++
			}
			if want := s.Name == "quote" || s.Name == "care"; want != strings.Contains(text, "Plumtree7") {
				t.Errorf("%s %s: the client's note is on it: %v", name, s.Name, !want)
			}
		}
		if s, ok := drawing.Plan(in.Input); ok && strings.Contains(s.Desc, "Quarrelsome7") {
			t.Errorf("%s: the crew's note goes out with the plan", name)
		}
	}
	if n < 10 {
		t.Fatalf("only %d sheets for the client", n)
	}
}

// TestOldNote: a job from before there were two notes keeps its one from the
// client.
func TestOldNote(t *testing.T) {
	j, faults := job.Read([]byte(`{"format": "plashet job", "version": 1, "name": "Old", "note": "Quarrelsome7", "units": "us", "site": {"currency": "USD"}, "offer": {"validDays": 30}}`))
	if len(faults) > 0 || j.ClientNote != "" || j.Note == "" {
		t.Fatalf("%v, %q", faults, j.ClientNote)
	}
	for _, name := range []string{"quote", "change", "care"} {
		if strings.Contains(written(one(t, input(t, j, Letter), name)), "Quarrelsome7") {
			t.Errorf("%s has the crew's note", name)
		}
	}
}

// TestNoBuildUp: what the job costs the firm stands on no sheet for the client:
// no line of cost, no rate, no group's cost or profit. Amounts that are the
// client's too are left out of the comparison.
func TestNoBuildUp(t *testing.T) {
	n := 0
	for _, name := range []string{"hillside-cascade", "old-pond", "orchard-ring"} {
		in := input(t, example(t, name), Letter)
		shown := map[string]bool{}
		for i := range in.Offer.Designs {
			o := &in.Offer.Designs[i].Offer
			for _, m := range append([]unit.Money{o.Net, o.Total, o.Rounding, o.Deposit, o.Rest}, amounts(o.Scopes, o.Taxes, o.Stages)...) {
				shown[m.Format(in.Result.Style)] = true
			}
		}
		text := written(one(t, in, "quote")) + written(one(t, in, "change"))
		hidden := func(what, s string) {
			n++
			if !shown[s] && strings.Contains(text, s) {
				t.Errorf("%s: %s, %s, is told to the client", name, what, s)
			}
		}
		o := &in.Offer.Designs[0].Offer
		for _, l := range o.Lines {
			hidden(l.Name, l.Amount.Format(in.Result.Style))
			hidden("rate of "+l.Name, " "+l.Each.FormatExact(in.Result.Style))
		}
		for _, g := range o.Groups {
			hidden("cost of "+string(g.Group), g.Lines.Format(in.Result.Style))
			hidden("profit on "+string(g.Group), g.Profit.Format(in.Result.Style))
		}
		hidden("cost", o.Cost.Format(in.Result.Style))
		hidden("profit", o.Profit.Format(in.Result.Style))
		hidden("the lower end", in.Offer.Designs[0].Low.Format(in.Result.Style))
	}
	if n < 100 {
		t.Fatalf("only %d amounts", n)
	}
}

// TestDraft: an offer that lacks a price is a draft: it names all that it lacks,
// and nobody can sign it.
func TestDraft(t *testing.T) {
	for name, part := range map[string]bool{"courtyard-rill": true, "terrace-spout": true, "hillside-cascade": false, "old-pond": false, "orchard-ring": false} {
		in := input(t, example(t, name), A4)
		text := written(one(t, in, "quote"))
		if got := strings.Contains(text, "DRAFT"); got != part {
			t.Errorf("%s: draft %v", name, got)
		}
		if got := strings.Contains(text, "client: name and signature"); got == part {
			t.Errorf("%s: room to sign %v", name, got)
		}
		text = strings.Join(strings.Fields(text), " ")
		for _, l := range in.Offer.Designs[0].Offer.Lines {
			if !l.Counts && !strings.Contains(text, l.Name) {
				t.Errorf("%s: that %q has no price is not told", name, l.Name)
			}
		}
	}
}

// TestDraftOnEveryPage: a draft of several pages says so at the top of each, once,
// and nothing stands on it; an offer that is whole says it on none.
func TestDraftOnEveryPage(t *testing.T) {
	for name, want := range map[string]int{"courtyard-rill": 1, "hillside-cascade": 0} {
		j := example(t, name)
		for i := range 90 {
			j.Offer.Terms = append(j.Offer.Terms, job.Clause{Text: fmt.Sprintf("Term %d of many, that fill page after page.", i)})
		}
		for _, p := range []Paper{Letter, A4} {
			in := input(t, j, p)
			s := one(t, in, "quote")
			holds(t, name, in, s)
			if len(s.Pages) < 3 {
				t.Fatalf("%s: only %d pages", name, len(s.Pages))
			}
			for i := range s.Pages {
				n, high := 0, 1e9
				for _, x := range texts(&s.Pages[i]) {
					if strings.HasPrefix(x.Text, "DRAFT") {
						n, high = n+1, x.At.Y
					}
				}
				if n != want || want > 0 && high > top+10 {
					t.Errorf("%s page %d: the banner stands on it %d times, %.0f mm down", name, i+1, n, high)
				}
			}
		}
	}
}

// TestTaxRounding: the offer says whether tax is rounded on the sum or part by part,
// and nothing of it where there is no tax.
func TestTaxRounding(t *testing.T) {
	const sum, part = "Tax is rounded once, on the sum.", "Tax is rounded for each part of the work."
	for _, c := range []struct{ byPart, none bool }{{}, {byPart: true}, {none: true}} {
		j := example(t, "hillside-cascade")
		if j.Offer.TaxByScope = c.byPart; len(j.Offer.Taxes) == 0 {
			t.Fatal("the example has no tax")
		}
		if c.none {
			j.Offer.Taxes = nil
		}
		text := written(one(t, input(t, j, Letter), "quote"))
		if strings.Contains(text, sum) != (!c.byPart && !c.none) || strings.Contains(text, part) != c.byPart {
			t.Errorf("%+v:\n%s", c, text)
		}
	}
}

// TestBadMoney: prices below zero and in another currency, a margin of the whole
// price, payments past the total: each is told once in a sentence on a draft.
func TestBadMoney(t *testing.T) {
	for _, c := range []struct{ name, old, now, want string }{
		{"negative price", `"3.15", "unit": "each"`, `"-3.15", "unit": "each"`, "a price cannot be below zero"},
		{"other currency", `"3.15", "unit": "each"`, `"3.15 EUR", "unit": "each"`, "is not the job's currency"},
		{"negative rate", `"hours": 0.2, "rate": "52"`, `"hours": 0.2, "rate": "-52"`, "below zero"},
		{"no currency", `"currency": "USD"`, `"altitude": "10 ft"`, "currency"},
		{"payments past the total", `"deposit": "30 %"`, `"deposit": "80 %"`, "more than the total"},
		{"no such option", `{"path": "/runs/1/pipe/size", "value": "3"}`, `{"path": "/us", "value": "L"}`, "which cannot be set so"},
	} {
		data := strings.Replace(string(demo.Job("hillside-cascade")), c.old, c.now, 1)
		if data == string(demo.Job("hillside-cascade")) {
			t.Fatalf("%s: nothing was changed", c.name)
		}
		j, unread := job.Read([]byte(data))
		in := inputOf(t, j, Letter, unread)
		s := one(t, in, "quote")
		holds(t, c.name, in, s)
		text := strings.Join(strings.Fields(written(s)), " ")
		if n := strings.Count(text, c.want); n < 1 || !strings.Contains(text, "DRAFT") || strings.Contains(text, "client: name and signature") {
			t.Errorf("%s: told %d times:\n%s", c.name, n, text)
		}
		if strings.Contains(text, `read ""`) {
			t.Errorf("%s: what could not be read is told as empty too:\n%s", c.name, text)
		}
	}
}

// TestManyOptions: seven options are all priced, three to a table.
func TestManyOptions(t *testing.T) {
	j := example(t, "hillside-cascade")
	for i := range 6 {
		o := j.Offer.Options[0]
		o.Name = fmt.Sprintf("option %d %s", i, strings.Repeat("with a long name ", 5))
		j.Offer.Options = append(j.Offer.Options, o)
	}
	in := input(t, j, A4)
	s := one(t, in, "quote")
	holds(t, "options", in, s)
	if n := strings.Count(written(s), "\ntotal\n"); n != 3 {
		t.Errorf("8 designs in %d tables", n)
	}
}

// TestChangeOrder: the example that was changed tells what, its parts before and
// after, and by how much; without an agreement there is none, and the sheet says
// so.
func TestChangeOrder(t *testing.T) {
	in := input(t, example(t, "old-pond"), Letter)
	text := written(one(t, in, "change"))
	c := in.Offer.Change
	if len(c.Moves) != 1 || !c.Moves[0].New || c.By.Amount.IsZero() {
		t.Fatalf("%+v", c)
	}
	for _, want := range []string{c.Before.Format(in.Result.Style), c.After.Format(in.Result.Style), "+" + c.By.Format(in.Result.Style), "power, new", "client: name and signature", "An outlet of its own", "agreed on 2026-05-20"} {
		if !strings.Contains(strings.ReplaceAll(text, "\n", " "), want) && want != "An outlet of its own" {
			t.Errorf("%q is not on the change order", want)
		}
	}
	if s := written(one(t, input(t, example(t, "orchard-ring"), Letter), "change")); !strings.Contains(s, "No offer is kept as agreed") {
		t.Errorf("%s", s)
	}
}

// TestTotalsInText: the text of offer and change order, read out of the PDF by
// another program, holds every amount that the client is told, beside its name.
func TestTotalsInText(t *testing.T) {
	pdftotext := tool(t, "pdftotext", "poppler-utils")
	n := 0
	for _, name := range []string{"hillside-cascade", "old-pond", "orchard-ring"} {
		for _, p := range []Paper{Letter, A4} {
			in := input(t, example(t, name), p)
			read := func(sheet string) []string {
				var out []string
				for _, l := range strings.Split(run(t, printed(t, in, sheet), pdftotext, "-layout", "in.pdf", "-"), "\n") {
					out = append(out, strings.Join(strings.Fields(l), " "))
				}
				return out
			}
			row := func(lines []string, name string, amounts ...string) {
				n++
				want := name + " " + strings.Join(amounts, " ")
				if !slices.ContainsFunc(lines, func(l string) bool { return l == want }) {
					t.Errorf("%q is not a line of\n%s", want, strings.Join(lines, "\n"))
				}
			}
			lines := read("quote")
			of := func(pick func(i int) unit.Money) (out []string) {
				for i := range in.Offer.Designs {
					out = append(out, pick(i).Format(in.Result.Style))
				}
				return out
			}
			own := &in.Offer.Designs[0].Offer
			row(lines, "total", of(func(i int) unit.Money { return in.Offer.Designs[i].Offer.Total })...)
			row(lines, "before tax", of(func(i int) unit.Money { return in.Offer.Designs[i].Offer.Net })...)
			row(lines, "before the work begins", of(func(i int) unit.Money { return in.Offer.Designs[i].Offer.Deposit })...)
			row(lines, "when the work is done", of(func(i int) unit.Money { return in.Offer.Designs[i].Offer.Rest })...)
			for k := range own.Scopes {
				row(lines, own.Scopes[k].Name, of(func(i int) unit.Money {
					s := in.Offer.Designs[i].Offer.Scopes
					return s[slices.IndexFunc(s, func(x scope) bool { return x.Name == own.Scopes[k].Name })].Price
				})...)
			}
			for k := range own.Stages {
				row(lines, own.Stages[k].Name, of(func(i int) unit.Money { return in.Offer.Designs[i].Offer.Stages[k].Amount })...)
			}
			if c := in.Offer.Change; c != nil {
				lines := read("change")
				row(lines, "total", c.Before.Format(in.Result.Style), c.After.Format(in.Result.Style), signedText(in, c.By))
				for _, m := range c.Moves {
					row(lines, m.Name+", new", m.Before.Format(in.Result.Style), m.After.Format(in.Result.Style), signedText(in, m.By))
				}
			}
		}
	}
	if n < 40 {
		t.Fatalf("only %d rows", n)
	}
}

// TestSafeOnOffer: the electrician is named where the price is.
func TestSafeOnOffer(t *testing.T) {
	for _, name := range demo.Names() {
		if s := written(one(t, input(t, example(t, name), Letter), "quote")); !strings.Contains(s, "licensed electrician") {
			t.Errorf("%s does not say who may do the electrical work", name)
		}
	}
}

// TestOptionInDanger: no option of the examples ends in danger; one that does is
// told plainly and leaves no room to accept it.
func TestOptionInDanger(t *testing.T) {
	n := 0
	for _, name := range demo.Names() {
		in := input(t, example(t, name), Letter)
		for _, d := range in.Offer.Designs {
			if d.Name == "" {
				continue
			}
			n++
			if d.Stops > 0 || d.Worst == trace.Danger {
				t.Errorf("%s: the option %q ends in danger", name, d.Name)
			}
		}
	}
	if n < 2 {
		t.Fatalf("only %d options", n)
	}
	j := example(t, "hillside-cascade")
	j.Offer.Options = append(j.Offer.Options, job.Choice{Name: "with pump L", Changes: []job.Setting{{Path: "/use", Value: "L"}}})
	text := strings.Join(strings.Fields(written(one(t, input(t, j, Letter), "quote"))), " ")
	if !strings.Contains(text, "“with pump L” cannot be built so: the design ends in 2 dangers.") {
		t.Error("the danger is not told:", text)
	}
	if !strings.Contains(text, "on 3 in pipe: ") || strings.Contains(text, "with pump L: ") {
		t.Error("what can be accepted:", text)
	}
}

// signedText is an amount with its sign.
func signedText(in Input, m unit.Money) string {
	if m.Amount.IsPositive() {
		return "+" + m.Format(in.Result.Style)
	}
	return m.Format(in.Result.Style)
}

// TestOfferTotalRow: the total of a draft is named as what it is, as in the text,
// and a discount that is given stands before the price before tax.
func TestOfferTotalRow(t *testing.T) {
	for name, part := range map[string]bool{"courtyard-rill": true, "hillside-cascade": false} {
		text := written(one(t, input(t, example(t, name), Letter), "quote"))
		if whole, some := strings.Contains(text, "\ntotal\n"), strings.Contains(text, "\ntotal of what has a price\n"); whole == part || some != part {
			t.Errorf("%s: named as the total %v, as a part of it %v", name, whole, some)
		}
	}
	j := example(t, "hillside-cascade")
	if f := j.Set("/offer/discount", "10 %"); f != nil {
		t.Fatal(f)
	}
	in := input(t, j, Letter)
	text := written(one(t, in, "quote"))
	for _, d := range in.Offer.Designs {
		for _, m := range []unit.Money{d.Offer.Price, d.Offer.Off()} {
			if !strings.Contains(text, m.Format(in.Result.Style)) {
				t.Errorf("%q: %s is not told", d.Name, m.Format(in.Result.Style))
			}
		}
	}
	if !strings.Contains(text, "price before discount") {
		t.Error(text)
	}
}
