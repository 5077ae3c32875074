package unit

import (
	"errors"
	"maps"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"golang.org/x/text/currency"
	"pgregory.net/rapid"
)

// TestStylesOfCurrencies: each text is what ICU 78.2 with CLDR 48 writes for the
// amount in the language and country named (Intl.NumberFormat of Node 20), but
// for the narrow space between thousands, where CLDR has a wide one that does not
// break.
func TestStylesOfCurrencies(t *testing.T) {
	for _, c := range []struct {
		locale, currency, amount string
		system                   System
		want                     string
	}{
		{"en-US", "USD", "1234567.5", US, "$1,234,567.50"},
		{"en-US", "USD", "-1234567.5", US, "-$1,234,567.50"},
		{"en-US", "USD", "1234567.5", Metric, "$1,234,567.50"},
		{"de-DE", "EUR", "1234567.5", Metric, "1.234.567,50 €"},
		{"de-DE", "EUR", "-1234567.5", Metric, "-1.234.567,50 €"},
		{"en-GB", "GBP", "1234567.5", Metric, "£1,234,567.50"},
		{"de-CH", "CHF", "1234567.5", Metric, "CHF 1'234'567.50"},
		{"sv-SE", "SEK", "1234567.5", Metric, "1\u202f234\u202f567,50 kr"},
		{"da-DK", "DKK", "1234567.5", Metric, "1.234.567,50 kr."},
		{"pl-PL", "PLN", "1234567.5", Metric, "1\u202f234\u202f567,50 zł"},
		{"es-MX", "MXN", "1234567.5", Metric, "$1,234,567.50"},
		{"es-CO", "COP", "1234567.5", Metric, "$ 1.234.567,50"},
		{"pt-BR", "BRL", "1234567.5", Metric, "R$ 1.234.567,50"},
		{"tr-TR", "TRY", "1234567.5", Metric, "₺1.234.567,50"},
		{"ko-KR", "KRW", "1234567", Metric, "₩1,234,567"},
	} {
		m := Money{decimal.RequireFromString(c.amount), c.currency}
		if got := m.Format(StyleOf(c.currency, c.system)); got != c.want {
			t.Errorf("%s as in %s is %q, want %q", m, c.locale, got, c.want)
		}
	}
}

// TestStyleAsSaid: what a job may say otherwise, by hand.
func TestStyleAsSaid(t *testing.T) {
	m := Money{decimal.RequireFromString("-1234.5"), "EUR"}
	st := StyleOf("EUR", Metric)
	for got, want := range map[string]string{
		m.Format(st):                                       "-1.234,50 €",
		m.Format(st.Code()):                                "-1.234,50 EUR",
		m.Format(st.On(true)):                              "-€1.234,50",
		m.Format(st.Code().On(true)):                       "-EUR 1.234,50",
		m.Format(StyleOf("EUR", US)):                       "-1,234.50 €",
		m.Format(StyleOf("USD", US)):                       "-1,234.50 EUR", // not the style's currency
		m.Format(Style{}):                                  "-1234.50 EUR",
		m.String():                                         "-1234.50 EUR",
		(Money{}).Format(st):                               "0,00",
		StyleOf("USD", US).On(false).Sign:                  "$",
		m.FormatExact(Style{Marks: Marks{Decimal: Comma}}): "-1234,50 EUR",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// TestTableOfCurrencies holds the table against the decimals of the general
// library golang.org/x/text/currency (CLDR 32). Where CLDR counts none or
// otherwise, for coins that nobody uses, ISO 4217 is ours: those are listed.
func TestTableOfCurrencies(t *testing.T) {
	// CLDR says 0 where ISO 4217 has the decimals behind (list one, 2024-06-25).
	iso := map[string]int32{
		"AFN": 2, "ALL": 2, "AMD": 2, "COP": 2, "CRC": 2, "GYD": 2, "IDR": 2, "IQD": 3, "IRR": 2, "KPW": 2, "LAK": 2, "LBP": 2, "MGA": 2, "MMK": 2,
		"MNT": 2, "MUR": 2, "PKR": 2, "RSD": 2, "SOS": 2, "SYP": 2, "TZS": 2, "UZS": 2, "YER": 2, "BIF": 0,
	}
	// Younger than the library's data.
	young := []string{"MRU", "SLE", "STN", "VED", "VES", "ZWG"}
	held := 0
	for _, code := range slices.Sorted(maps.Keys(currencies)) {
		c := currencies[code]
		if !IsCurrencyCode(code) || c.decimal == c.group || c.decimal != Point && c.decimal != Comma || c.close && !c.before && code != "BDT" && code != "KHR" {
			t.Errorf("%s is %+v", code, c)
		}
		unit, err := currency.ParseISO(code)
		if err != nil {
			if !slices.Contains(young, code) {
				t.Errorf("%s is not in the library", code)
			}
			continue
		}
		if want, ok := iso[code]; ok {
			if c.minor != want {
				t.Errorf("%s has %d decimals, by ISO 4217 %d", code, c.minor, want)
			}
			continue
		}
		held++
		if scale, _ := currency.Standard.Rounding(unit); c.minor != int32(scale) {
			t.Errorf("%s has %d decimals, in CLDR %d", code, c.minor, scale)
		}
	}
	if held < 100 {
		t.Errorf("only %d currencies were held against the library", held)
	}
}

// drawStyle draws a style that a job may say for a currency.
func drawStyle(t *rapid.T, code string) Style {
	st := StyleOf(code, rapid.SampledFrom([]System{US, Metric}).Draw(t, "system"))
	st.Decimal = rapid.SampledFrom([]rune{Point, Comma}).Draw(t, "decimal")
	st.Group = rapid.SampledFrom([]rune{NoGroup, Point, Comma, Space, Apostrophe}).Draw(t, "group")
	if st.Group == st.Decimal {
		st.Group = NoGroup
	}
	st.Said = true
	if rapid.Bool().Draw(t, "code") {
		st = st.Code()
	}
	return st.On(rapid.Bool().Draw(t, "before"))
}

// TestMoneyReadsBackInEveryStyle: what is written for people is read as the same
// amount, in every currency and every style that a job may say.
func TestMoneyReadsBackInEveryStyle(t *testing.T) {
	codes := append(slices.Sorted(maps.Keys(currencies)), "ZZZ")
	rapid.Check(t, func(t *rapid.T) {
		st := drawStyle(t, rapid.SampledFrom(codes).Draw(t, "currency"))
		m := Money{decimal.New(rapid.Int64Range(-1e12, 1e12).Draw(t, "coins"), -minorUnit(st.Currency)), st.Currency}
		if rapid.Bool().Draw(t, "small") {
			m.Amount = m.Amount.Div(decimal.New(1e6, 0)).Round(minorUnit(st.Currency))
		}
		text := m.Format(st)
		back, err := st.Parse(text)
		if err != nil || !back.Amount.Equal(m.Amount) || back.Format(st) != text {
			t.Fatalf("%s is written %q, which reads as %s (%v)", m, text, back, err)
		}
	})
}

// TestMoneyAsAssumed: where the job does not say its marks, what is written for
// people reads as the same amount or is asked for, never as another.
func TestMoneyAsAssumed(t *testing.T) {
	codes := append(slices.Sorted(maps.Keys(currencies)), "ZZZ")
	rapid.Check(t, func(t *rapid.T) {
		st := StyleOf(rapid.SampledFrom(codes).Draw(t, "currency"), rapid.SampledFrom([]System{US, Metric}).Draw(t, "system"))
		m := Money{decimal.New(rapid.Int64Range(0, 1e7).Draw(t, "coins"), -minorUnit(st.Currency)), st.Currency}
		back, err := st.Parse(m.Format(st))
		if pe, ok := errors.AsType[*ParseError](err); ok && pe.Code == CodeAmbiguous && bothWays(st.Currency) {
			return
		}
		if err != nil || !back.Amount.Equal(m.Amount) {
			t.Fatalf("%s is written %q, which reads as %s (%v)", m, m.Format(st), back, err)
		}
	})
}

// TestMoneyByMarks: what is typed, by hand.
func TestMoneyByMarks(t *testing.T) {
	comma := func(code string) Style {
		st := StyleOf(code, Metric)
		st.Decimal, st.Group, st.Said = Comma, Point, true
		return st
	}
	swiss := StyleOf("CHF", Metric)
	swiss.Said = true
	for _, c := range []struct {
		style Style
		text  string
		want  string // "" where it is asked
	}{
		{comma("EUR"), "1.234,50 EUR", "1234.5"},
		{comma("EUR"), "1.234,50 €", "1234.5"},
		{comma("EUR"), "12,5", "12.5"},
		{comma("EUR"), "12.50", "12.5"}, // can be nothing else
		{comma("EUR"), "1.234", "1234"},
		{comma("EUR"), "1,234", ""},
		{comma("EUR"), "0,234", "0.234"},
		{comma("EUR"), ",50", "0.5"},
		{comma("EUR"), "1 234,50", "1234.5"},
		{comma("TND"), "1,234", "1.234"},
		{comma("TND"), "1.234,567", "1234.567"},
		{StyleOf("EUR", Metric), "1.234,50 EUR", "1234.5"},
		{StyleOf("EUR", Metric), "1,234", ""},
		{StyleOf("EUR", Metric), "1.234", ""},
		{swiss, "CHF 1'234.50", "1234.5"},
		{swiss, "Fr. 1’234.50", "1234.5"},
		{swiss, "1,234", ""},
		{StyleOf("USD", US), "$1,234", "1234"},
		{StyleOf("JPY", Metric), "¥1,234", "1234"},
	} {
		m, err := c.style.Parse(c.text)
		if c.want == "" {
			if pe, ok := errors.AsType[*ParseError](err); !ok || pe.Code != CodeAmbiguous {
				t.Errorf("%q in %s reads as %s (%v), and should be asked", c.text, c.style.Currency, m, err)
			}
			continue
		}
		if err != nil || !m.Amount.Equal(decimal.RequireFromString(c.want)) {
			t.Errorf("%q in %s reads as %s (%v), want %s", c.text, c.style.Currency, m, err, c.want)
		}
	}
}
