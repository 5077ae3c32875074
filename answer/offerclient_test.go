package answer

import (
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/offer"
	"plashet/words"
)

// forClient prints an example's offer as the client sees it, changed first.
func forClient(t *testing.T, name string, l *words.Language, set map[string]string) (string, *offer.Document) {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job(name))
	for path, value := range set {
		if f := j.Set(path, value); f != nil {
			t.Fatal(path, f)
		}
	}
	d := offer.Of(book, j, faults...)
	var b strings.Builder
	if err := OfferedTo(&b, j, &d, 0, l); err != nil {
		t.Fatal(err)
	}
	return b.String(), &d
}

// TestClientSeesDiscount: a discount that is given stands between the price before
// it and the price before tax, in both languages; without one no line tells of it.
func TestClientSeesDiscount(t *testing.T) {
	for l, row := range map[*words.Language][3]string{
		words.English(): {"price before discount", "discount, in the parts above already", "before tax"},
		words.Spanish(): {"precio antes del descuento", "descuento, ya está en las partes de arriba", "antes de impuesto"},
	} {
		text, d := forClient(t, "hillside-cascade", l, map[string]string{"/offer/discount": "10 %"})
		o := &d.Designs[0].Offer
		if !o.Price.Amount.Sub(o.Discount.Amount).Equal(o.Net.Amount) || !o.Off().Amount.IsNegative() {
			t.Fatalf("%s less %s is not %s", o.Price.Amount, o.Discount.Amount, o.Net.Amount)
		}
		at := -1
		for _, name := range row {
			i := strings.Index(text, "\n"+name)
			if i <= at {
				t.Errorf("%q is not told, or not in order:\n%s", name, text)
			}
			if line, _, _ := strings.Cut(text[i+1:], "\n"); !strings.Contains(line, "$") {
				t.Errorf("%q has no amount", line)
			}
			at = i
		}
		if text, _ := forClient(t, "hillside-cascade", l, nil); strings.Contains(text, row[1]) {
			t.Errorf("a discount that is not given:\n%s", text)
		}
	}
}

// TestClientTextTellsAsPaper: the text for the client tells the water over each
// fall beside what is wanted, that it is less where it is, and the options' notes;
// what a tax is on, the price of a group, it keeps to the firm.
func TestClientTextTellsAsPaper(t *testing.T) {
	for l, want := range map[*words.Language][3]string{
		words.English(): {"Water over the falls", ", wanted ", "* This is less than is wanted."},
		words.Spanish(): {"Agua sobre las caídas", ", se pide ", "* Esto es menos de lo que se pide."},
	} {
		short := 0
		for _, name := range demo.Names() {
			text, d := forClient(t, name, l, nil)
			less := false
			for i := range d.Designs {
				one := &d.Designs[i]
				for _, x := range one.Falls {
					less = less || x.Short
					if !strings.Contains(text, x.Name) {
						t.Errorf("%s: the water over %q is not told", name, x.Name)
					}
				}
				if !strings.Contains(text, one.Note) {
					t.Errorf("%s: the note %q is not told", name, one.Note)
				}
				for _, x := range one.Offer.Taxes {
					if base := x.Base.Format(styleOf(name)); !x.Base.Amount.Equal(one.Offer.Net.Amount) && strings.Contains(text, base) {
						t.Errorf("%s: the client is told what %q is on, %s:\n%s", name, x.Name, base, text)
					}
				}
			}
			if len(d.Designs[0].Falls) > 0 && !strings.Contains(text, want[0]) {
				t.Errorf("%s: no water:\n%s", name, text)
			}
			if less != strings.Contains(text, want[2]) {
				t.Errorf("%s: less than is wanted %v:\n%s", name, less, text)
			}
			if less {
				short++
				if !strings.Contains(text, want[1]) {
					t.Errorf("%s: what is wanted is not told", name)
				}
			}
		}
		if short == 0 {
			t.Error("no example gets less than is wanted: nothing was looked at")
		}
	}
}

func styleOf(name string) unit.Style {
	j, _ := job.Read(demo.Job(name))
	return j.Style()
}
