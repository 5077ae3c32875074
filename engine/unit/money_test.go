package unit

import (
	"errors"
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func TestParseMoney(t *testing.T) {
	for _, c := range []struct{ text, currency, want, exact string }{
		{"18.40", "USD", "18.40 USD", "18.40 USD"},
		{"420", "USD", "420.00 USD", "420.00 USD"},
		{"$420", "USD", "420.00 USD", "420.00 USD"},
		{"$ 1,234.50", "USD", "1,234.50 USD", "1,234.50 USD"},
		{"1,410", "USD", "1,410.00 USD", "1,410.00 USD"},
		{"USD 420", "USD", "420.00 USD", "420.00 USD"},
		{"420 usd", "USD", "420.00 USD", "420.00 USD"},
		{"US$420", "USD", "420.00 USD", "420.00 USD"},
		{"C$420", "CAD", "420.00 CAD", "420.00 CAD"},
		{"$420", "CAD", "420.00 CAD", "420.00 CAD"},
		{"-$5.25", "USD", "-5.25 USD", "-5.25 USD"},
		{"$-5.25", "USD", "-5.25 USD", "-5.25 USD"},
		{"-0.001", "USD", "0.00 USD", "-0.001 USD"},
		{"£3.15", "GBP", "3.15 GBP", "3.15 GBP"},
		{"3,15 €", "EUR", "3.15 EUR", "3.15 EUR"},
		{"€3,15", "EUR", "3.15 EUR", "3.15 EUR"},
		{"1.234,50 EUR", "EUR", "1,234.50 EUR", "1,234.50 EUR"},
		{"0,185", "EUR", "0.19 EUR", "0.185 EUR"},
		{"1.4150", "EUR", "1.42 EUR", "1.4150 EUR"},
		{"¥1,500", "JPY", "1,500 JPY", "1,500 JPY"},
		{"1499.5", "JPY", "1,500 JPY", "1,499.5 JPY"},
		{"125 kr", "SEK", "125.00 SEK", "125.00 SEK"},
		{"125 kr.", "DKK", "125.00 DKK", "125.00 DKK"},
		{"12 zł", "PLN", "12.00 PLN", "12.00 PLN"},
		{"12 Kč", "CZK", "12.00 CZK", "12.00 CZK"},
		{"Fr. 12.50", "CHF", "12.50 CHF", "12.50 CHF"},
		{"0.1834", "USD", "0.18 USD", "0.1834 USD"},
		{"12.5", "INR", "12.50 INR", "12.50 INR"},
	} {
		m, err := ParseMoney(c.text, c.currency)
		if err != nil || m.Format(coded) != c.want || m.FormatExact(coded) != c.exact {
			t.Errorf("%q is %q, exact %q (%v), want %q, %q", c.text, m.Format(coded), m.FormatExact(coded), err, c.want, c.exact)
		}
	}
}

func TestParseMoneyErrors(t *testing.T) {
	for _, c := range []struct {
		text, currency string
		code           Code
	}{
		{"", "USD", CodeEmpty},
		{"5", "", CodeCurrency},
		{"5", "usd", CodeCurrency},
		{"5", "DOLLAR", CodeCurrency},
		{"€5", "USD", CodeCurrency},
		{"5 EUR", "USD", CodeCurrency},
		{"$5", "EUR", CodeCurrency},
		{"5 gpm", "USD", CodeCurrency},
		{"five", "USD", CodeNumber},
		{"$", "USD", CodeNumber},
		{"NaN", "USD", CodeNumber},
		{"--5", "USD", CodeNumber},
		{"1.2.3", "USD", CodeNumber},
		{"1e9", "USD", CodeCurrency},
		{"5 USD 6", "USD", CodeTrailing},
		{"1,410", "EUR", CodeAmbiguous},
		{"1.410", "EUR", CodeAmbiguous},
		{"1,410", "ZZZ", CodeAmbiguous},
		{"1234567890123", "USD", CodeRange},
		{"0.1234567", "USD", CodeRange},
		{string(make([]byte, 200)), "USD", CodeLong},
		{"\xff5", "USD", CodeNumber},
		{"?5", "USD", CodeNumber},
		{"12.5,", "USD", CodeTrailing},
		{"5,-", "EUR", CodeTrailing},
		{"5 ؋", "EUR", CodeCurrency},
	} {
		m, err := ParseMoney(c.text, c.currency)
		var pe *ParseError
		if !errors.As(err, &pe) || pe.Code != c.code || m.Currency != "" {
			t.Errorf("%q in %s is %+v (%v), want %s", c.text, c.currency, m, err, c.code)
			continue
		}
		checkError(t, pe, c.text, KindMoney, US)
	}
}

// TestMinorUnits: ISO 4217:2015, list one (from memory).
func TestMinorUnits(t *testing.T) {
	for c, want := range map[string]int{"USD": 2, "EUR": 2, "GBP": 2, "CAD": 2, "AUD": 2, "NZD": 2, "MXN": 2, "JPY": 0, "CHF": 2, "SEK": 2, "NOK": 2, "DKK": 2, "PLN": 2, "CZK": 2} {
		if d, listed := MinorUnit(c); d != want || !listed {
			t.Errorf("%s has %d decimals, listed %v", c, d, listed)
		}
	}
	if d, listed := MinorUnit("ZZZ"); d != 2 || listed {
		t.Errorf("a currency outside the list has %d decimals, listed %v", d, listed)
	}
}

// coded writes amounts with a point, commas between thousands and the code.
var coded = StyleOf("", US)

func usd(t *testing.T, s string) Money {
	t.Helper()
	m, err := ParseMoney(s, "USD")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMoneyArithmetic(t *testing.T) {
	// By hand: 3 × 18.40 + 0.10 × 3 = 55.50.
	three, err := usd(t, "18.40").Times(3)
	if err != nil {
		t.Fatal(err)
	}
	waste, err := usd(t, "3").Times(0.1)
	if err != nil {
		t.Fatal(err)
	}
	sum, err := SumMoney("USD", three, waste)
	if err != nil || sum.Format(coded) != "55.50 USD" {
		t.Errorf("sum is %s (%v)", sum.Format(coded), err)
	}
	if none, err := SumMoney("USD"); err != nil || none.Format(coded) != "0.00 USD" {
		t.Errorf("the sum of nothing is %s (%v)", none.Format(coded), err)
	}
	euro, err := ParseMoney("5", "EUR")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := SumMoney("USD", three, euro); !errors.Is(err, ErrCurrency) {
		t.Errorf("dollars and euros add up: %v", err)
	}
	for _, f := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e10} {
		if _, err := three.Times(f); !errors.Is(err, ErrFactor) {
			t.Errorf("times %v gives %v", f, err)
		}
	}
	if v := three.Value(); v.Kind != KindMoney || v.SI != 55.2 {
		t.Errorf("value is %+v", v)
	}
	if got := (Money{}).Format(coded); got != "0.00" {
		t.Errorf("the zero amount is %q", got)
	}
}

func TestMoneyRoundsHalfUp(t *testing.T) {
	for in, want := range map[string]string{
		"1.005": "1.01 USD", "1.0049": "1.00 USD", "-1.005": "-1.01 USD", "0.995": "1.00 USD", "-0.004": "0.00 USD", "2.675": "2.68 USD",
	} {
		m := usd(t, in)
		if m.Format(coded) != want || m.Round().FormatExact(coded) != want {
			t.Errorf("%s is %s, rounded %s, want %s", in, m.Format(coded), m.Round().FormatExact(coded), want)
		}
	}
}

func TestMoneyReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cur := rapid.SampledFrom([]string{"USD", "EUR", "GBP", "JPY", "CHF", "SEK", "INR"}).Draw(t, "currency")
		m := Money{decimal.New(rapid.Int64Range(-1e12, 1e12).Draw(t, "coins"), -int32(rapid.IntRange(0, 2).Draw(t, "places"))), cur}.Round()
		back, err := ParseMoney(m.Format(coded), cur)
		if err != nil || !back.Amount.Equal(m.Amount) || back.Format(coded) != m.Format(coded) {
			t.Fatalf("%s reads as %s (%v)", m.Format(coded), back.Format(coded), err)
		}
	})
}
