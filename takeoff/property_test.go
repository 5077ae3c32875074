package takeoff

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func drawInput(t *rapid.T) Input {
	size := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in := full()
	in.Fittings = nil
	for range rapid.IntRange(0, 6).Draw(t, "fittings") {
		in.Fittings = append(in.Fittings, Fitting{
			Name: rapid.SampledFrom([]string{"elbow 90", "union", "tee"}).Draw(t, "name"), Size: "2", Count: rapid.IntRange(1, 500).Draw(t, "count"),
		})
	}
	in.Joints[0].Count = rapid.IntRange(0, 300).Draw(t, "joints")
	in.Pond.Length, in.Pond.Width, in.Pond.Depth = unit.Length(size("l", 0.5, 40)), unit.Length(size("w", 0.5, 40)), unit.Length(size("d", 0, 4))
	in.Pond.Volume = unit.Volume(size("v", 0, 1000))
	in.Pipe[1].Run, in.Pipe[2].Run = unit.Length(size("run", 0, 200)), unit.Length(size("hose", 0, 200))
	in.Spare = unit.Ratio(size("spare", 0, 2))
	return in
}

func TestSumIsTheItemsTotals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, _, _ := List(drawInput(t))
		sum, unpriced, err := Sum(items)
		if err != nil {
			t.Fatal(err)
		}
		low, high, priced := usd("0").Amount, usd("0").Amount, 0
		for _, i := range items {
			if i.Priced {
				low, high, priced = low.Add(i.Total.Low.Round().Amount), high.Add(i.Total.High.Round().Amount), priced+1
			}
		}
		if !sum.Low.Amount.Equal(low) || !sum.High.Amount.Equal(high) || priced+unpriced != len(items) || low.GreaterThan(high) {
			t.Fatalf("%s to %s of %d items, want %s to %s", sum.Low.FormatExact(unit.StyleOf("", unit.US)), sum.High.FormatExact(unit.StyleOf("", unit.US)), len(items), low, high)
		}
	})
}

func TestSpareNeverLowers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawInput(t)
		more := in
		more.Spare = unit.Ratio(rapid.Float64Range(float64(in.Spare), 2).Draw(t, "more"))
		a, _, _ := List(in)
		b, _, _ := List(more)
		if len(a) != len(b) {
			t.Fatalf("%d and %d items", len(a), len(b))
		}
		for k := range a {
			if a[k].ID != b[k].ID || a[k].Buy.Low > b[k].Buy.Low || a[k].Buy.High > b[k].Buy.High || a[k].Need != b[k].Need {
				t.Fatalf("%+v becomes %+v", a[k], b[k])
			}
		}
	})
}

func TestBuyCoversNeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawInput(t)
		in.Pipe = in.Pipe[1:] // the first takes offcuts that are not bought
		items, _, _ := List(in)
		for _, i := range items {
			pack := i.Pack.SI
			if pack == 0 {
				pack = 1
			}
			if i.Buy.Low > i.Buy.High || i.Need.Low > i.Need.High || i.Buy.Low*pack < i.Need.Low*(1-1e-8) || i.Buy.High*pack < i.Need.High*(1-1e-8) || i.Spare.Low < 0 || i.Waste.Low < 0 {
				t.Fatalf("%+v", i)
			}
		}
	})
}

func TestMorePondMoreLiner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawInput(t)
		grown := *in.Pond
		by := unit.Length(rapid.Float64Range(0.01, 5).Draw(t, "by"))
		switch rapid.IntRange(0, 2).Draw(t, "which") {
		case 0:
			grown.Length += by
		case 1:
			grown.Width += by
		default:
			grown.Depth += by
		}
		larger := in
		larger.Pond = &grown
		area := func(in Input) (sum float64) {
			items, _, _ := List(in)
			for _, i := range items {
				if i.Code == CodeLiner {
					sum += i.Buy.Low
				}
			}
			return sum
		}
		if a, b := area(in), area(larger); b <= a {
			t.Fatalf("%g m2 for %+v, %g m2 for %+v", a, *in.Pond, b, grown)
		}
	})
}

// Whatever comes in, List answers, and nothing that it answers is infinite or
// not a number.
func TestBadInput(t *testing.T) {
	wild := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, math.MaxFloat64, 5e-324}))
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string) float64 { return wild.Draw(t, name) }
		n := func(name string) int { return rapid.Int().Draw(t, name) }
		s := func(name string) string { return rapid.String().Draw(t, name) }
		in := Input{
			Book: book, Currency: s("currency"),
			Fittings: []Fitting{{s("name"), s("size"), n("count"), ""}},
			Pipe:     []Pipe{{s("kind"), s("size"), unit.Length(f("length")), unit.Length(f("run")), unit.Length(f("stick")), n("sticks"), unit.Length(f("offcuts")), unit.Length(f("rest")), true, false, unit.Money{}, ""}},
			Joints:   []Joints{{rapid.SampledFrom([]string{"2", "3", "x"}).Draw(t, "joint"), n("count"), ""}},
			Threads:  []Threads{{"NPT", "2", n("count"), ""}, {s("standard"), s("size"), 1, ""}},
			Truck:    unit.Volume(f("truck")), Can: unit.Volume(f("can")), TapeRoll: unit.Length(f("roll")),
			Pond:    &Pond{unit.Length(f("l")), unit.Length(f("w")), unit.Length(f("d")), unit.Volume(f("v")), true, ""},
			Streams: []Stream{{s("stream"), unit.Length(f("l")), unit.Length(f("w")), unit.Length(f("drop")), unit.Length(f("bank")), f("bank") == 0, []Basin{{"pool", unit.Length(f("pl")), unit.Length(f("pw")), unit.Length(f("pd")), ""}}, true, "", ""}},
			Beds:    []Basin{{"bed", unit.Length(f("bl")), unit.Length(f("bw")), unit.Length(f("bd")), ""}},
			Overlap: unit.Length(f("overlap")), Layers: n("layers"), Soil: rapid.SampledFrom([]string{"clay", "x"}).Draw(t, "soil"),
			Holes: []Hole{{"vault", unit.Volume(f("hole")), unit.Volume(f("back")), ""}}, Mound: Mound{unit.Volume(f("mound")), unit.Ratio(f("shrinkage")), ""},
			Spare:  unit.Ratio(f("spare")),
			Prices: []Price{{Name: NameLiner, Amount: usd("1"), Per: unit.Value{SI: f("per"), Kind: unit.KindArea}}},
		}
		in.Prices[0].Amount.Currency = in.Currency
		items, _, _ := List(in)
		Assumed(in)
		for _, i := range items {
			for _, r := range []Range{i.Need, i.Buy, i.Spare, i.Waste} {
				if !from(r.Low) || !from(r.High) {
					t.Fatalf("%+v", i)
				}
			}
		}
	})
}

func TestFormulasOutside(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, v := range []float64{
		float64(LinerSide(0, 1, 1)), float64(LinerSide(1, unit.Length(nan), 1)), float64(LinerSide(1, 1, unit.Length(inf))), float64(LinerSide(1, -1, 1)),
		float64(StreamLiner(1, -1, 0, 0)), float64(StreamLiner(-1, 2, 0, 0)), float64(StreamLiner(1, 1, -1, 0)), float64(StreamLiner(0, 0, 1, 1)), float64(BoxHole(1, 0, 1, 1)), float64(BoxHole(1, 1, 1, -1)), float64(Trench(1, -1, 1)), float64(Trench(1, unit.Length(nan), 1)), float64(LooseVolume(-1, 0.1)), float64(LooseVolume(1, unit.Ratio(nan))),
		float64(BankForFill(1, 0)), float64(BankForFill(1, 1.01)), float64(BankForFill(unit.Volume(inf), 1)),
		Loads(-1, 1), Loads(1, 0), Sticks(-1, 1), Sticks(1, 0), Sticks(unit.Length(inf), 1),
		float64(Boulders(1, 1, 0)), float64(Boulders(unit.Length(nan), 1, 1)),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%g outside the range of a formula", v)
		}
	}
}
