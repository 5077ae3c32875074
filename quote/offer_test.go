package quote

import (
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"plashet/engine/unit"
)

func usd(s string) unit.Money {
	return unit.Money{Amount: decimal.RequireFromString(s), Currency: "USD"}
}

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func same(t *testing.T, what string, got unit.Money, want string) {
	t.Helper()
	if !got.Amount.Equal(dec(want)) {
		t.Errorf("%s: %s, want %s", what, got.Format(unit.StyleOf("", unit.US)), want)
	}
}

// A worked example by hand, common practice, no source: 1,000 of material with
// 5 % waste on it, 800 of labour, contingency 3 % on 1,850, markup 20 % on
// material, margin 35 % on labour, tax 8.25 % on material only.
func TestByHand(t *testing.T) {
	o := Make(Input{
		Currency: "USD",
		Costs: []Cost{
			{Group: Material, Name: "pipe", Scope: "plumbing", Total: usd("400"), Wasted: true},
			{Group: Material, Name: "liner", Scope: "pond", Total: usd("600"), Wasted: true},
			{Group: Labour, Name: "gluing", Scope: "plumbing", Quantity: dec("10"), Each: usd("80")},
		},
		Waste: dec("0.05"), Contingency: dec("0.03"),
		Profit:  map[Group]Profit{Material: {Markup: dec("0.2")}, Labour: {Margin: dec("0.35")}},
		Taxes:   []Tax{{Name: "sales tax", Rate: dec("0.0825"), On: []Group{Material}}},
		Deposit: Share{Of: dec("0.3")},
		Stages:  []Stage{{Name: "digging done", Share: Share{Of: dec("0.4")}}},
	})
	if len(o.Faults) != 0 || !o.Complete || !o.Planned {
		t.Fatalf("faults %v, complete %v", o.Faults, o.Complete)
	}
	// contingency 0.03 x 1,850 = 55.50, shared 1,050 : 800 = 31.50 : 24.00
	same(t, "waste", o.Groups[0].Waste, "50")
	same(t, "contingency on material", o.Groups[0].Contingency, "31.50")
	same(t, "contingency on labour", o.Groups[1].Contingency, "24")
	same(t, "cost", o.Cost, "1905.50")
	same(t, "material", o.Groups[0].Price, "1297.80") // 1,081.50 x 1.2
	same(t, "labour", o.Groups[1].Price, "1267.69")   // 824 / 0.65 = 1,267.692
	same(t, "net", o.Net, "2565.49")
	same(t, "tax", o.Taxes[0].Amount, "107.07") // 1,297.80 x 0.0825 = 107.0685
	same(t, "total", o.Total, "2672.56")
	same(t, "deposit", o.Deposit, "801.77")           // 801.768
	same(t, "stage", o.Stages[0].Amount, "1069.02")   // 1,069.024
	same(t, "rest", o.Rest, "801.77")                 // takes up the rounding
	same(t, "plumbing", o.Scopes[0].Price, "1786.81") // 1,297.80 x 400/1,000 = 519.12, and all labour
	same(t, "pond", o.Scopes[1].Price, "778.68")
}

// Markup is on cost, margin of price (common practice, no source): 50 % on top
// of 100 is 150 and leaves a third; a margin of 50 % on 100 is 200.
func TestMarkupIsNotMargin(t *testing.T) {
	for _, c := range []struct {
		p    Profit
		want string
	}{
		{Profit{Markup: dec("0.5")}, "150"},
		{Profit{Margin: dec("0.5")}, "200"},
		{Profit{Margin: dec("0.333333")}, "150"},
	} {
		o := Make(Input{Currency: "USD", Costs: []Cost{{Group: Other, Total: usd("100")}}, Profit: map[Group]Profit{Other: c.p}})
		same(t, fmt.Sprint(c.p), o.Net, c.want)
	}
}

// A tax on a tax, and a tax rounded by row beside one rounded once (common
// practice, no source): 3 x 0.35 at 7 % is 3 x 0.02 = 0.06 by row (0.0245) and
// 0.07 once (0.0735).
func TestTaxRules(t *testing.T) {
	three := []Cost{{Group: Other, Scope: "a", Total: usd("0.35")}, {Group: Other, Scope: "b", Total: usd("0.35")}, {Group: Other, Scope: "c", Total: usd("0.35")}}
	for byRow, want := range map[bool]string{true: "0.06", false: "0.07"} {
		o := Make(Input{Currency: "USD", Costs: three, Taxes: []Tax{{Name: "t", Rate: dec("0.07")}}, TaxByRow: byRow})
		same(t, fmt.Sprint("by row ", byRow), o.Taxes[0].Amount, want)
	}
	// 5 % on 100, then 9.5 % on 105: 9.975, to coins 9.98.
	o := Make(Input{Currency: "USD", Costs: []Cost{{Group: Other, Total: usd("100")}}, Taxes: []Tax{{Name: "first", Rate: dec("0.05")}, {Name: "over", Rate: dec("0.095"), Over: true}}})
	same(t, "tax on tax", o.Taxes[1].Amount, "9.98")
	same(t, "total", o.Total, "114.98")
}

// The largest remainder method on a case by hand: 100 coins to 3 equal parts
// are 34, 33, 33; to 1 : 2 : 4 they are 14.29, 28.57, 57.14: 14, 29, 57.
func TestApportion(t *testing.T) {
	for _, c := range []struct{ weights, want []string }{
		{[]string{"1", "1", "1"}, []string{"0.34", "0.33", "0.33"}},
		{[]string{"1", "2", "4"}, []string{"0.14", "0.29", "0.57"}},
		{[]string{"0", "0"}, []string{"1", "0"}},
		{[]string{"-3", "1"}, []string{"0", "1"}},
	} {
		var weights []decimal.Decimal
		for _, x := range c.weights {
			weights = append(weights, dec(x))
		}
		for i, s := range Apportion(usd("1.00"), weights) {
			same(t, fmt.Sprint(c.weights, i), s, c.want[i])
		}
	}
}

func TestBadInput(t *testing.T) {
	good := []Cost{{Group: Other, Name: "a", Total: usd("100")}}
	for name, c := range map[string]struct {
		in   Input
		code string
	}{
		"no currency":   {Input{Costs: good}, FaultNoMoney},
		"other money":   {Input{Currency: "EUR", Costs: good}, FaultCurrency},
		"negative":      {Input{Currency: "USD", Costs: []Cost{{Group: Other, Total: usd("-1")}}}, FaultNegative},
		"credit by two": {Input{Currency: "USD", Costs: []Cost{{Group: Other, Quantity: dec("-2"), Each: usd("-1")}}}, FaultNegative},
		"margin":        {Input{Currency: "USD", Costs: good, Profit: map[Group]Profit{Other: {Margin: dec("1")}}}, FaultMargin},
		"both":          {Input{Currency: "USD", Costs: good, Profit: map[Group]Profit{Other: {Margin: dec("0.1"), Markup: dec("0.1")}}}, FaultBoth},
		"share":         {Input{Currency: "USD", Costs: good, Discount: dec("1.2")}, FaultShare},
		"stages":        {Input{Currency: "USD", Costs: good, Deposit: Share{Of: dec("0.6")}, Stages: []Stage{{Name: "x", Share: Share{Of: dec("0.5")}}}}, FaultStages},
		"round to":      {Input{Currency: "USD", Costs: good, RoundTo: usd("-5")}, FaultNegative},
	} {
		o := Make(c.in)
		if len(o.Faults) != 1 || o.Faults[0].Code != c.code {
			t.Errorf("%s: faults %+v, want one %s", name, o.Faults, c.code)
		}
	}
}

// drawn draws an input that has no faults.
func drawn(t *rapid.T) Input {
	share := func(name string, most int) decimal.Decimal {
		return decimal.New(int64(rapid.IntRange(0, most).Draw(t, name)), -3)
	}
	in := Input{
		Currency: rapid.SampledFrom([]string{"USD", "JPY", "KWD"}).Draw(t, "currency"),
		Waste:    share("waste", 300), Contingency: share("contingency", 300), Discount: share("discount", 900),
		TaxByRow: rapid.Bool().Draw(t, "by row"),
		Deposit:  Share{Of: share("deposit", 400)},
		Profit:   map[Group]Profit{},
	}
	for _, g := range Groups() {
		if rapid.Bool().Draw(t, "margin") {
			in.Profit[g] = Profit{Margin: share("margin", 900)}
		} else {
			in.Profit[g] = Profit{Markup: share("markup", 2000)}
		}
	}
	for i := range rapid.IntRange(0, 12).Draw(t, "lines") {
		in.Costs = append(in.Costs, Cost{
			Group: rapid.SampledFrom(Groups()).Draw(t, "group"), Name: fmt.Sprint(i),
			Scope:    rapid.SampledFrom([]string{"", "pond", "falls", "plumbing"}).Draw(t, "scope"),
			Quantity: decimal.New(int64(rapid.IntRange(0, 100000).Draw(t, "quantity")), -2),
			Each:     unit.Money{Amount: decimal.New(int64(rapid.IntRange(0, 10000000).Draw(t, "each")), -4), Currency: in.Currency},
			Wasted:   rapid.Bool().Draw(t, "wasted"),
		})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "taxes") {
		in.Taxes = append(in.Taxes, Tax{
			Name: fmt.Sprint("t", i), Rate: share("rate", 250), Over: rapid.Bool().Draw(t, "over"),
			On: rapid.SampledFrom([][]Group{nil, {Material}, {Labour, Other}}).Draw(t, "on"),
		})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "stages") {
		in.Stages = append(in.Stages, Stage{Name: fmt.Sprint("s", i), Share: Share{Of: share("stage", 200)}})
	}
	if rapid.Bool().Draw(t, "rounded") {
		in.RoundTo = unit.Money{Amount: decimal.New(int64(rapid.IntRange(1, 100).Draw(t, "round")), 0), Currency: in.Currency}
	}
	return in
}

// Everything that is shown is whole coins and adds up.
func TestAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		o := Make(in)
		if len(o.Faults) != 0 || !o.Planned {
			t.Fatalf("faults %v", o.Faults)
		}
		equal := func(what string, a, b decimal.Decimal) {
			if !a.Equal(b) {
				t.Fatalf("%s: %s and %s", what, a, b)
			}
			if c := coin(in.Currency); !a.Mod(c).IsZero() {
				t.Fatalf("%s: %s is no whole number of %s", what, a, c)
			}
		}
		lines, cost, price, net := decimal.Zero, decimal.Zero, decimal.Zero, decimal.Zero
		for _, l := range o.Lines {
			lines = lines.Add(l.Amount.Amount)
		}
		for _, b := range o.Groups {
			lines = lines.Sub(b.Lines.Amount)
			own := b.Lines.Amount.Add(b.Waste.Amount).Add(b.Contingency.Amount)
			equal("price of a group", b.Price.Amount, own.Add(b.Profit.Amount))
			cost, price, net = cost.Add(own), price.Add(b.Price.Amount), net.Add(b.Net.Amount)
		}
		equal("lines", lines, decimal.Zero)
		equal("cost", o.Cost.Amount, cost)
		equal("price", o.Price.Amount, price)
		equal("net", o.Net.Amount, net)
		equal("discount", o.Price.Amount.Sub(o.Discount.Amount), net)
		equal("profit", o.Profit.Amount, net.Sub(cost))
		scopes := decimal.Zero
		for _, s := range o.Scopes {
			scopes = scopes.Add(s.Price.Amount)
		}
		equal("scopes", scopes, net)
		total := net.Add(o.Rounding.Amount)
		for _, x := range o.Taxes {
			total = total.Add(x.Amount.Amount)
		}
		equal("total", o.Total.Amount, total)
		if to := in.RoundTo.Amount; to.IsPositive() && (!o.Total.Amount.Mod(to).IsZero() || o.Rounding.Amount.Abs().Mul(dec("2")).GreaterThan(to)) {
			t.Fatalf("rounding to %s: total %s by %s", to, o.Total.Amount, o.Rounding.Amount)
		}
		due := o.Deposit.Amount.Add(o.Rest.Amount)
		for _, s := range o.Stages {
			due = due.Add(s.Amount.Amount)
		}
		equal("due", due, o.Total.Amount)
	})
}

// A change order's parts add up to what it changes, whatever both offers are;
// an offer held against itself changes nothing.
func TestOrderAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawn(t), drawn(t)
		b.Currency = a.Currency
		for i := range b.Costs {
			b.Costs[i].Each.Currency = a.Currency
		}
		b.RoundTo.Currency = a.Currency
		was, is := Make(a), Make(b)
		c, err := is.Against(was.Keep())
		if err != nil {
			t.Fatal(err)
		}
		sum := c.Rounding.Amount
		for _, m := range append(c.Moves, c.Taxes...) {
			sum = sum.Add(m.By.Amount)
		}
		if !sum.Equal(c.By.Amount) || !c.Before.Amount.Add(c.By.Amount).Equal(c.After.Amount) {
			t.Fatalf("moves come to %s, the change to %s", sum, c.By.Amount)
		}
		if self, _ := is.Against(is.Keep()); len(self.Moves)+len(self.Taxes) != 0 || !self.By.Amount.IsZero() {
			t.Fatalf("against itself: %+v", self)
		}
	})
}
