package unit

import (
	"strings"
	"unicode"
)

// further are ways to write a currency besides its code and the sign of the
// table, upper case, between spaces (common practice, no source).
var further = map[string]string{
	"USD": " US$ ", "CAD": " C$ CA$ ", "AUD": " A$ AU$ ", "NZD": " NZ$ ", "MXN": " MX$ ",
	"JPY": " ￥ ", "CHF": " FR SFR ",
}

// MinorUnit gives the decimals of a currency's smallest unit (ISO 4217). For a
// currency outside our list it is 2, and listed is false: the caller says that
// this is assumed.
func MinorUnit(currency string) (decimals int, listed bool) {
	c, ok := currencies[currency]
	if !ok {
		return 2, false
	}
	return int(c.minor), true
}

func minorUnit(currency string) int32 {
	d, _ := MinorUnit(currency)
	return int32(d)
}

// IsCurrencyCode tells whether the text has the form of an ISO 4217 code.
func IsCurrencyCode(s string) bool {
	if len(s) != 3 {
		return false
	}
	for i := range len(s) {
		if s[i] < 'A' || s[i] > 'Z' {
			return false
		}
	}
	return true
}

// means tells whether what stands beside an amount may mean the currency.
func means(written, currency string) bool {
	w := strings.ToUpper(strings.TrimRight(written, "."))
	sign := strings.ToUpper(strings.TrimRight(currencies[currency].sign, "."))
	return w == currency || w == sign && w != "" || strings.Contains(further[currency], " "+w+" ")
}

// names tells that a text has a letter or the sign of some currency in it, so
// that it may be meant for one.
func names(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.Sc, r) })
}

// bothWays tells that a mark before three digits of an amount may group
// thousands or start decimals, where the job does not say its marks: with a
// decimal comma at home, in a country of two habits, or outside our list.
func bothWays(currency string) bool {
	c, listed := currencies[currency]
	return !listed || c.decimal == Comma || currency == "CAD"
}
