package takeoff

import (
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

var book = func() *catalog.Book {
	b, err := catalog.New()
	if err != nil {
		panic(err)
	}
	return b
}()

func usd(s string) unit.Money {
	return unit.Money{Amount: decimal.RequireFromString(s), Currency: "USD"}
}

// same tells whether two numbers agree to rel, the noise of binary arithmetic.
func same(got, want float64) bool { return math.Abs(got-want) <= 1e-9*math.Max(1e-9, math.Abs(want)) }

// find gives the one item of a code and a place.
func find(t *testing.T, items []Item, code, place string) Item {
	t.Helper()
	for _, i := range items {
		if i.Code == code && i.Place == place {
			return i
		}
	}
	t.Fatalf("no item %s at %q", code, place)
	return Item{}
}

// full is a job with every part. Its sizes are those of the reference's example
// E79 where it has a pond; the rest is invented.
func full() Input {
	return Input{
		Book: book, Currency: "USD",
		Fittings: []Fitting{
			{Name: "elbow 90", Size: "2", Count: 3, Path: "/a"}, {Name: "union", Size: "2", Count: 1, Path: "/b"}, {Name: "elbow 90", Size: "2", Count: 4, Path: "/c"},
		},
		Pipe: []Pipe{
			{Kind: "PVC Sch 40", Size: "2", Length: 15 * unit.Foot, Stick: 10 * unit.Foot, Sticks: 1, Offcuts: 6 * unit.Foot, Path: "/p"},
			{Kind: "PVC Sch 40", Size: "3", Run: 45 * unit.Foot, Stick: 10 * unit.Foot, Path: "/q"},
			{Kind: "hose", Size: "1-1/4", Length: 30 * unit.Foot, Path: "/r"},
		},
		Joints:  []Joints{{Size: "2", Count: 14, Path: "/j"}, {Size: "3", Count: 10, Path: "/k"}},
		Threads: []Threads{{Standard: "NPT", Size: "2", Count: 2, Path: "/t"}},
		Pond:    &Pond{Length: 12 * unit.Foot, Width: 8 * unit.Foot, Depth: 2 * unit.Foot, Volume: 100 * unit.CubicFoot, Stone: true, Path: "/pond"},
		Streams: []Stream{{Name: "brook", Length: 20 * unit.Foot, Width: 3 * unit.Foot, Drop: 4 * unit.Foot, Bank: unit.Foot, Stone: true, Path: "/s"}},
		Truck:   unit.CubicYard,
		Overlap: unit.Foot, Layers: 2, Soil: "common earth", Holes: []Hole{{"vault", 8 * unit.CubicFoot, "/v"}},
		Spare: 0.10,
		Paths: Paths{Can: "/w/can", TapeRoll: "/w/roll", Overlap: "/w/overlap", Layers: "/w/layers", Soil: "/w/soil", Truck: "/w/truck", Spare: "/w/spare"},
		Prices: []Price{
			{Name: "Elbow 90", Size: "2", Amount: usd("3.15"), Path: "/x"},
			{Name: "liner", Amount: usd("1.10"), Per: unit.Of(unit.SquareFoot, unit.KindArea), Path: "/y"},
			{Name: "boulders", Amount: usd("185"), Per: unit.Of(unit.ShortTon, unit.KindMass), Path: "/z"},
		},
	}
}

func TestList(t *testing.T) {
	items, findings, faults := List(full())
	if len(faults) > 0 {
		t.Fatalf("faults %+v", faults)
	}
	ft2, ton, yd3 := float64(unit.SquareFoot), float64(unit.ShortTon), float64(unit.CubicYard)
	for _, c := range []struct {
		code, place string
		per         float64
		low, high   float64
		why         string
	}{
		{CodeFitting, "", 1, 8, 8, "hand: 3 + 4 elbows, 7 x 1.1 = 7.7, up to 8"},
		{CodePipe, "", 1, 1, 1, "hand: 1 stick by the plan, no spare"},
		// Joints per quart of the book: the package's own table, read in cement_test.
		{CodeLiner, PlacePond, ft2, 18 * 14, 18 * 14, "reference example E79: 14 ft by 18 ft"},
		{CodeLiner, "brook", ft2, 26 * 7, 26 * 7, "hand: (20 + 4 + 2) x (3 + 2 + 2) ft; common practice, no source"},
		{CodeUnderlay, PlacePond, ft2, 2 * 18 * 14, 2 * 18 * 14, "two layers of the liner's size, trade retailer pages"},
		{CodeBoulders, PlacePond, ton, 96.0 / 65, 96.0 / 40, "practice table: L x W / 65 and / 40, four trade pages"},
		{CodeGravel, PlacePond, ton, 96.0 / 65 * 0.25, 96.0 / 40 * 0.45, "practice table: 25 to 45 percent of boulders"},
		{CodeBoulders, "brook", ton, 1.5, 3, "practice table: 0.75 to 1.5 t per 10 ft, three trade pages"},
		{CodeGravel, "brook", ton, 0.5, 1, "practice table: 0.25 to 0.5 t per 10 ft, three trade pages"},
		{CodeDig, "", yd3, 4, 4, "hand: (100 + 8) ft3 / 27"},
		{CodeSoil, "", yd3, 4 * 1.20, 4 * 1.45, "Construction Planning, Equipment and Methods, table 4-1, as quoted: 20 to 45 percent"},
		{CodeLoads, "", 1, 5, 6, "hand: 4.8 and 5.8 yd3 in loads of 1 yd3"},
	} {
		i := find(t, items, c.code, c.place)
		if !same(i.Buy.Low/c.per, c.low) || !same(i.Buy.High/c.per, c.high) {
			t.Errorf("%s %s: %g to %g, want %g to %g (%s)", c.code, c.place, i.Buy.Low/c.per, i.Buy.High/c.per, c.low, c.high, c.why)
		}
		if i.Formula == "" || len(i.Terms) == 0 || i.Source.Title == "" {
			t.Errorf("%s cannot be opened: %+v", i.ID, i)
		}
	}
	rules := 0
	for _, f := range findings {
		if f.Code == FindRules {
			rules++
			if f.Found.SI <= float64(RulesLimit) || len(f.Args) != 4 {
				t.Errorf("%+v", f)
			}
		}
	}
	if rules != 4 {
		t.Errorf("%d findings on rules that differ, want one for each heap of stone", rules)
	}
}

// Spare is for fittings alone: 45 ft of pipe are five sticks of 10 ft, not six.
func TestPipe(t *testing.T) {
	const by10 = 10 * unit.Foot
	for _, c := range []struct {
		name      string
		p         Pipe
		buy       float64
		joined    int
		wasteFeet float64
		why       string
	}{
		{"plan", Pipe{Length: 15 * unit.Foot, Stick: by10, Sticks: 1, Offcuts: 6 * unit.Foot}, 1, 0, 1, "hand: 10 + 6 ft for 15 ft of pieces"},
		{"run", Pipe{Run: 45 * unit.Foot, Stick: by10}, 5, 5, 5, "hand: 45 ft in 10 ft sticks"},
		{"run of whole sticks", Pipe{Run: 60 * unit.Foot, Stick: 20 * unit.Foot}, 3, 3, 0, "hand: 60 ft in 20 ft sticks"},
		{"both", Pipe{Length: 18 * unit.Foot, Run: 36 * unit.Foot, Stick: 20 * unit.Foot, Sticks: 1}, 3, 2, 6, "hand: 54 ft in 20 ft sticks"},
		{"rest shared", Pipe{Length: 12 * unit.Foot, Run: 26 * unit.Foot, Stick: by10, Sticks: 2, Rest: 8 * unit.Foot}, 4, 2, 2, "hand: 18 ft in two sticks, 8 ft lie in the plan's"},
		{"rest is enough", Pipe{Length: 12 * unit.Foot, Run: 5 * unit.Foot, Stick: by10, Sticks: 2, Rest: 8 * unit.Foot}, 2, 0, 3, "hand: 17 ft in two sticks"},
	} {
		items, _, faults := List(Input{Book: book, Pipe: []Pipe{c.p}, Spare: 0.10})
		if len(items) != 1 || len(faults) > 0 {
			t.Errorf("%s: %+v, faults %+v", c.name, items, faults)
			continue
		}
		i := items[0]
		if i.Buy != (Range{c.buy, c.buy, unit.KindCount}) || i.Laid.Joined != c.joined || i.Spare.High != 0 ||
			!same(i.Need.Low, float64(c.p.Length+c.p.Run)) || math.Abs(i.Waste.Low-c.wasteFeet*float64(unit.Foot)) > 1e-9 {
			t.Errorf("%s: %+v, want %+v", c.name, i, c)
		}
		how, ok := i.How()
		if !ok || how.Code != CodeSticks || len(how.Args) == 0 {
			t.Errorf("%s: how is not told: %+v", c.name, how)
		}
	}
	items, _, _ := List(full())
	for _, i := range items {
		if _, ok := i.How(); i.Size == "1-1/4" && (ok || i.Buy.Kind != unit.KindDistance || !same(i.Buy.Low, float64(30*unit.Foot)) || i.Spare.High != 0) {
			t.Errorf("30 ft of hose by length: %+v", i)
		}
		if i.Spare.High > 0 && i.Code != CodeFitting {
			t.Errorf("spare is for fittings: %+v", i)
		}
	}
}

// Pipe is priced by the stick or by length.
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
			t.Errorf("%s: %s, want %s; %+v %+v", c.name, items[0].Total.Low.FormatExact(), c.want, findings, faults)
		}
	}
	_, _, faults := List(Input{Book: book, Currency: "USD", Pipe: []Pipe{{Kind: "PVC Sch 40", Size: "2", Run: 1, Stick: 3, Price: unit.Money{Currency: "EUR"}}}})
	if len(faults) != 1 || faults[0].Code != FaultPriceCurrency {
		t.Errorf("a stick in euros: %+v", faults)
	}
}

// A price for a part of the catalogue that this job does not need is no slip of
// the pen; one for a name or size that nobody knows is.
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

// A can is assumed to be a quart; the demo's 24 joints of 2 and 3 in take one
// quart of cement and one of primer by common practice, no source.
func TestCement(t *testing.T) {
	in := full()
	in.Spare = 0
	items, _, _ := List(in)
	two, _ := book.JointsPerQuart("2")
	three, _ := book.JointsPerQuart("3")
	quart := float64(unit.USQuart)
	cement := find(t, items, CodeCement, "")
	if !same(cement.Need.High/quart, 14/two.Low+10/three.Low) || !same(cement.Need.Low/quart, 14/two.High+10/three.High) {
		t.Errorf("cement %+v", cement.Need)
	}
	if cement.Buy.High != 1 || find(t, items, CodePrimer, "").Buy.High != 1 {
		t.Errorf("24 joints take %g quarts", cement.Buy.High)
	}
	if cement.Waste.High <= 0 || cement.Waste.High+cement.Need.High > quart*(1+1e-9) {
		t.Errorf("what is left in the can: %+v", cement.Waste)
	}
	// Two 2 in NPT threads: outside diameter 2.375 in (ASME B1.20.1), 2 to 4
	// wraps (four how-to pages).
	tape := find(t, items, CodeTape, "")
	if in := float64(unit.Inch); !same(tape.Need.Low/in, 2*math.Pi*2.375*2) || !same(tape.Need.High/in, 2*math.Pi*2.375*4) {
		t.Errorf("tape %+v", tape.Need)
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
			t.Errorf("%s: %s to %s, want %s to %s", i.ID, i.Total.Low.FormatExact(), i.Total.High.FormatExact(), c.low, c.high)
		}
	}
	sum, unpriced, err := Sum(items)
	// By hand: 25.20 + 277.20 + the brook's liner 182 ft2 x 1.10 = 200.20, and
	// boulders 273.80 and 1.5 x 185 = 277.50 to 444.00 and 555.00.
	if err != nil || unpriced != len(items)-5 || sum.Low.Format() != "1,053.90 USD" || sum.High.Format() != "1,501.60 USD" {
		t.Errorf("%s to %s, %d unpriced, %v", sum.Low.Format(), sum.High.Format(), unpriced, err)
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

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(*Input)
	}{
		{"no book", FaultBook, func(in *Input) { in.Book = nil }},
		{"spare", FaultRange, func(in *Input) { in.Spare = -0.1 }},
		{"spare not a number", FaultFinite, func(in *Input) { in.Spare = unit.Ratio(math.NaN()) }},
		{"count", FaultRange, func(in *Input) { in.Fittings[0].Count = -1 }},
		{"sticks", FaultSticks, func(in *Input) { in.Pipe[0].Offcuts = 0 }},
		{"no stick", FaultRange, func(in *Input) { in.Pipe[0].Stick = 0 }},
		{"joints", FaultJoints, func(in *Input) { in.Joints[0].Size = "20 in" }},
		{"joints unread", FaultJoints, func(in *Input) { in.Joints[0].Size = "big" }},
		{"thread", FaultThread, func(in *Input) { in.Threads[0].Standard = "none" }},
		{"pond", FaultRange, func(in *Input) { in.Pond.Length = 0 }},
		{"pond endless", FaultFinite, func(in *Input) { in.Pond.Depth = unit.Length(math.Inf(1)) }},
		{"stream", FaultRange, func(in *Input) { in.Streams[0].Drop = -1 }},
		{"overlap", FaultRange, func(in *Input) { in.Overlap = -1 }},
		{"layers", FaultRange, func(in *Input) { in.Layers = -1 }},
		{"can", FaultRange, func(in *Input) { in.Can = -1 }},
		{"roll", FaultRange, func(in *Input) { in.TapeRoll = 1e-9 }},
		{"soil", FaultSoil, func(in *Input) { in.Soil = "common erth" }},
		{"hole", FaultFinite, func(in *Input) { in.Holes[0].Volume = unit.Volume(math.NaN()) }},
		{"truck", FaultRange, func(in *Input) { in.Truck = -1 }},
		{"shrinkage", FaultRange, func(in *Input) { in.Mound = Mound{Volume: 1} }},
		{"currency", FaultPriceCurrency, func(in *Input) { in.Prices[0].Amount.Currency = "EUR" }},
		{"price unit", FaultPriceUnit, func(in *Input) { in.Prices[1].Per = unit.Value{} }},
		{"price twice", FaultPriceTwice, func(in *Input) { in.Prices = append(in.Prices, in.Prices[0]) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := full()
			c.change(&in)
			items, _, faults := List(in)
			if len(faults) != 1 || faults[0].Code != c.want {
				t.Errorf("faults %+v, want %s", faults, c.want)
			}
			if len(items) == 0 {
				t.Error("a fault voids only what depends on it")
			}
		})
	}
}

func TestFindings(t *testing.T) {
	for _, c := range []struct {
		want   string
		change func(*Input)
	}{
		{FindPriceUnused, func(in *Input) { in.Prices[0].Name = "elbow 91" }},
		{FindUnpriced, func(*Input) {}},
		{FindSoilShort, func(in *Input) { in.Mound = Mound{Volume: 10, Shrinkage: 0.9} }},
	} {
		in := full()
		c.change(&in)
		_, findings, _ := List(in)
		if !hasFinding(findings, c.want) {
			t.Errorf("no %s in %+v", c.want, findings)
		}
	}
}

func hasFinding(fs []trace.Finding, code string) bool {
	for _, f := range fs {
		if f.Code == code {
			return true
		}
	}
	return false
}

func TestAssumed(t *testing.T) {
	if got := Assumed(full()); len(got) != 1 || got[0].Code != AssumeCan {
		t.Errorf("all but the can is given: %+v", got)
	}
	in := full()
	in.Overlap, in.Layers, in.Streams[0].Bank = 0, 0, 0
	codes := map[string]trace.Assumption{}
	for _, a := range Assumed(in) {
		codes[a.Code] = a
	}
	for _, want := range []string{AssumeCan, AssumeOverlap, AssumeLayers, AssumeBank} {
		if a, ok := codes[want]; !ok || a.Source.Title == "" {
			t.Errorf("%s is not told: %+v", want, a)
		}
	}
	// Gardening article "How To Build A Garden Pond - Part 2": 1 to 1.5 ft per side.
	if o := codes[AssumeOverlap]; !same(o.Value.SI, 1.5*float64(unit.Foot)) || len(o.Weight) == 0 || o.Weight[0].After.SI >= o.Weight[0].Before.SI {
		t.Errorf("overlap %+v", o)
	}
	if got := Assumed(Input{Book: book}); len(got) != 0 {
		t.Errorf("nothing depends on a default: %+v", got)
	}
}
