package takeoff

import (
	"strings"
	"testing"

	"plashet/engine/unit"
)

func TestPipePrices(t *testing.T) {
	const by20 = 20 * unit.Foot
	foot, tens := unit.Of(unit.Foot, unit.KindDistance), unit.Of(10*unit.Foot, unit.KindDistance)
	for _, c := range []struct {
		name, want string
		p          Pipe
		prices     []Price
	}{
		{"by length, sticks", "76.00", Pipe{Run: 25 * unit.Foot, Stick: by20}, []Price{{Name: "PVC Sch 40", Size: "2", Amount: usd("1.90"), Per: foot}}},
		{"by length, for ten feet", "76.00", Pipe{Run: 25 * unit.Foot, Stick: by20}, []Price{{Name: "PVC Sch 40", Size: "2", Amount: usd("19"), Per: tens}}},
		{"by length, no sticks", "47.50", Pipe{Run: 25 * unit.Foot}, []Price{{Name: "PVC Sch 40", Size: "2", Amount: usd("1.90"), Per: foot}}},
		{"by the stick", "68.40", Pipe{Run: 25 * unit.Foot, Stick: by20}, []Price{{Name: "PVC Sch 40", Size: "2", Amount: usd("34.20")}}},
		{"the stick's own beats both", "60.00", Pipe{Run: 25 * unit.Foot, Stick: by20, Price: usd("30")}, []Price{
			{Name: "PVC Sch 40", Size: "2", Amount: usd("34.20")}, {Name: "PVC Sch 40", Size: "2", Amount: usd("1.90"), Per: foot},
		}},
		{"both kinds of price, no sticks", "47.50", Pipe{Run: 25 * unit.Foot}, []Price{
			{Name: "PVC Sch 40", Size: "2", Amount: usd("34.20")}, {Name: "PVC Sch 40", Size: "2", Amount: usd("1.90"), Per: foot},
		}},
		{"of the kind", "76.00", Pipe{Run: 25 * unit.Foot, Stick: by20}, []Price{{Name: "PVC Sch 40", Amount: usd("1.90"), Per: foot}}},
	} {
		c.p.Kind, c.p.Size = "PVC Sch 40", "2"
		items, findings, faults := List(Input{Book: book, Currency: "USD", Pipe: []Pipe{c.p}, Prices: c.prices})
		if len(faults)+len(findings) > 0 || !items[0].Priced || !items[0].Total.Low.Amount.Equal(usd(c.want).Amount) {
			t.Errorf("%s: %s, want %s; %+v %+v", c.name, items[0].Total.Low.FormatExact(unit.StyleOf("", unit.US)), c.want, findings, faults)
		}
	}
	_, _, faults := List(Input{Book: book, Currency: "USD", Pipe: []Pipe{{Kind: "PVC Sch 40", Size: "2", Run: 1, Stick: 3, Price: unit.Money{Currency: "EUR"}}}})
	if len(faults) != 1 || faults[0].Code != FaultPriceCurrency {
		t.Errorf("a stick in euros: %+v", faults)
	}
}

func TestPricesUnused(t *testing.T) {
	for _, c := range []struct {
		name, size string
		told       bool
		near       string
	}{
		{"elbow 90", "3", false, ""},
		{"Elbow 90", "3 in", false, ""},
		{"PVC Sch 40", "1-1/2", false, ""},
		{"PVC Sch 40", "", false, ""},
		{"union", "", false, ""},
		{"tee", "d63", false, ""},
		{"gravel", "", false, ""},
		{"soil", "clay", false, ""},
		{"soil", "clya", true, "soil"},
		{"elbow 91", "3", true, "elbow 90"},
		{"elbow 90", "22", true, ""},
		{"PVC Sch 40", "22 in", true, "2-1/2"},
		{"PVC Shc 40", "2", true, "PVC Sch 40"},
		{"linr", "", true, "liner"},
	} {
		in := full()
		in.Prices = []Price{{Name: c.name, Size: c.size, Amount: usd("1"), Path: "/x"}}
		in.Fittings, in.Pipe, in.Pond, in.Streams = nil, nil, nil, nil
		in.Soil = "loam"
		_, findings, _ := List(in)
		told, near := false, ""
		for _, f := range findings {
			if f.Code == FindPriceUnused {
				told = true
				for _, a := range f.Args {
					if a.Name == "near" {
						near = a.Text
					}
				}
			}
		}
		if told != c.told || !strings.Contains(near, c.near) {
			t.Errorf("%s, %s: told %v, near %q", c.name, c.size, told, near)
		}
	}
}

// Pieces sold in boxes are paid by whole boxes: 8 elbows out of boxes of 5 are
// two boxes, 2 x 12.40 = 24.80; out of a box of 25 one.
func TestPricesByTheBox(t *testing.T) {
	for pieces, want := range map[float64]string{5: "24.80", 8: "12.40", 25: "12.40", 1: "99.20"} {
		in := full()
		in.Prices = []Price{{Name: "elbow 90", Size: "2", Amount: usd("12.40"), Per: unit.Value{SI: pieces, Kind: unit.KindCount}}}
		items, _, _ := List(in)
		i := find(t, items, CodeFitting, "")
		if !i.Priced || i.Buy.Low != 8 || !i.Total.Low.Amount.Equal(usd(want).Amount) {
			t.Errorf("boxes of %g: %s for %g, want %s", pieces, i.Total.Low.FormatExact(unit.StyleOf("", unit.US)), i.Buy.Low, want)
		}
	}
}

func TestPrices(t *testing.T) {
	items, findings, _ := List(full())
	// By hand: 8 x 3.15; 252 ft2 x 1.10; boulders 96/65 = 1.477 up to 1.48 and 2.40 tons x 185.
	for _, c := range []struct{ code, place, low, high string }{
		{CodeFitting, "", "25.20", "25.20"},
		{CodeLiner, PlacePond, "277.20", "277.20"},
		{CodeBoulders, PlacePond, "273.80", "444.00"},
	} {
		i := find(t, items, c.code, c.place)
		if !i.Priced || !i.Total.Low.Amount.Equal(usd(c.low).Amount) || !i.Total.High.Amount.Equal(usd(c.high).Amount) {
			t.Errorf("%s: %s to %s, want %s to %s", i.ID, i.Total.Low.FormatExact(unit.StyleOf("", unit.US)), i.Total.High.FormatExact(unit.StyleOf("", unit.US)), c.low, c.high)
		}
	}
	sum, unpriced, err := Sum(items)
	// By hand: 25.20 + 277.20 + the brook's liner 189 ft2 x 1.10 = 207.90, and
	// boulders 273.80 and 1.5 x 185 = 277.50 to 444.00 and 555.00.
	if err != nil || unpriced != len(items)-5 || sum.Low.Format(unit.StyleOf("", unit.US)) != "1,061.60 USD" || sum.High.Format(unit.StyleOf("", unit.US)) != "1,509.30 USD" {
		t.Errorf("%s to %s, %d unpriced, %v", sum.Low.Format(unit.StyleOf("", unit.US)), sum.High.Format(unit.StyleOf("", unit.US)), unpriced, err)
	}
	if _, _, err := Sum(append(items, Item{Priced: true, Total: Total{unit.Money{Currency: "EUR"}, unit.Money{Currency: "EUR"}}})); err == nil {
		t.Error("euros were added to dollars")
	}
	for _, f := range findings {
		if f.Code == FindUnpriced && f.Found.SI != float64(unpriced) {
			t.Errorf("%+v", f)
		}
	}
}
