package quote

import (
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"plashet/engine/unit"
)

// paid makes an offer of one cost, its payments shares of the total in per cent,
// the deposit first.
func paid(currency, cost string, shares ...string) Offer {
	in := Input{Currency: currency, Costs: []Cost{{Group: Other, Total: unit.Money{Amount: dec(cost), Currency: currency}}}}
	in.Deposit.Of = dec(shares[0]).Shift(-2)
	for i, s := range shares[1:] {
		in.Stages = append(in.Stages, Stage{Name: fmt.Sprint(i), Share: Share{Of: dec(s).Shift(-2)}})
	}
	return Make(in)
}

// TestWholePayments: payments of exactly 100 % that round up are none too many: the
// last takes up the rounding (common practice, no source). By hand, 33.33 % of 0.05
// is 0.0167 and rounds to 0.02, so does 33.34 %; the third gets 0.01. 33.33 % of
// 100.01 is 33.3333, to 33.33, and 33.34 % is 33.3433, to 33.34, which leaves 0.01
// to the last. In thousandths, 33.33 % of 0.005 is 0.0017, to 0.002.
func TestWholePayments(t *testing.T) {
	for _, c := range []struct {
		currency, cost string
		shares, want   []string // of the payments, with the rest
	}{
		{"USD", "0.05", []string{"33.33", "33.33", "33.34"}, []string{"0.02", "0.02", "0.01", "0"}},
		{"USD", "100.01", []string{"33.33", "33.33", "33.34"}, []string{"33.33", "33.33", "33.35", "0"}},
		{"USD", "0.05", []string{"50", "50", "0"}, []string{"0.03", "0.02", "0", "0"}},
		{"USD", "0.01", []string{"50", "49"}, []string{"0.01", "0", "0"}},
		{"TND", "0.005", []string{"33.33", "33.33", "33.34"}, []string{"0.002", "0.002", "0.001", "0"}},
		{"JPY", "5", []string{"50", "50"}, []string{"3", "2", "0"}},
		{"USD", "100", []string{"30", "40"}, []string{"30", "40", "30"}},
		{"USD", "0", []string{"50", "50"}, []string{"0", "0", "0"}},
	} {
		o := paid(c.currency, c.cost, c.shares...)
		if len(o.Faults) > 0 || !o.Planned {
			t.Errorf("%v of %s: %v", c.shares, c.cost, o.Faults)
			continue
		}
		got := []unit.Money{o.Deposit}
		for _, s := range o.Stages {
			got = append(got, s.Amount)
		}
		for i, m := range append(got, o.Rest) {
			same(t, fmt.Sprintf("payment %d of %v of %s %s", i, c.shares, c.cost, c.currency), m, c.want[i])
		}
	}
}

// TestPastTotal: shares of more than the whole are at fault, by however little, and
// by a coin at the least.
func TestPastTotal(t *testing.T) {
	for shares, over := range map[[2]string]string{{"50", "50.001"}: "0.01 USD", {"60", "50"}: "10.00 USD"} {
		o := paid("USD", "100", shares[0], shares[1])
		if len(o.Faults) != 1 || o.Faults[0].Code != FaultStages || o.Planned || !o.Rest.Amount.Equal(o.Total.Amount) {
			t.Errorf("%v: %+v", shares, o.Faults)
			continue
		}
		if got := o.Faults[0].Args[0].Text; got != over {
			t.Errorf("%v: over by %q, want %s", shares, got, over)
		}
	}
}

// TestPaymentsAddUp: whatever the total and the shares up to the whole of it, the
// payments are whole coins, none below zero, and add up to the total.
func TestPaymentsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		currency := rapid.SampledFrom([]string{"USD", "JPY", "TND"}).Draw(t, "currency")
		left, shares := 10000, []string{}
		for range rapid.IntRange(1, 12).Draw(t, "payments") {
			s := rapid.IntRange(0, left).Draw(t, "share")
			left -= s
			shares = append(shares, decimal.New(int64(s), -2).String())
		}
		if rapid.Bool().Draw(t, "whole") {
			shares = append(shares, decimal.New(int64(left), -2).String())
		}
		o := paid(currency, decimal.New(int64(rapid.IntRange(0, 100000).Draw(t, "total")), -3).String(), shares...)
		if len(o.Faults) > 0 || !o.Planned {
			t.Fatalf("%v: %v", shares, o.Faults)
		}
		sum := decimal.Zero
		due := []unit.Money{o.Deposit, o.Rest}
		for _, s := range o.Stages {
			due = append(due, s.Amount)
		}
		for _, m := range due {
			if m.Amount.IsNegative() || !m.Amount.Mod(coin(currency)).IsZero() {
				t.Fatalf("%v: a payment of %s", shares, m.Amount)
			}
			sum = sum.Add(m.Amount)
		}
		if !sum.Equal(o.Total.Amount) {
			t.Fatalf("%v come to %s of %s", shares, sum, o.Total.Amount)
		}
	})
}
