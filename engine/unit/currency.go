package unit

import "strings"

// currencyDef is one currency that people write with more than its code.
type currencyDef struct {
	minor int32  // decimals of the smallest unit in use
	signs string // ways to write it besides the code, upper case, between spaces
	comma bool   // its people write a decimal comma
}

// currencies lists minor units by ISO 4217:2015, list one (from memory).
var currencies = map[string]currencyDef{
	"USD": {minor: 2, signs: " $ US$ "},
	"CAD": {minor: 2, signs: " $ C$ CA$ ", comma: true},
	"AUD": {minor: 2, signs: " $ A$ AU$ "},
	"NZD": {minor: 2, signs: " $ NZ$ "},
	"MXN": {minor: 2, signs: " $ MX$ "},
	"GBP": {minor: 2, signs: " £ "},
	"EUR": {minor: 2, signs: " € ", comma: true},
	"JPY": {minor: 0, signs: " ¥ ￥ "},
	"CHF": {minor: 2, signs: " FR SFR "},
	"SEK": {minor: 2, signs: " KR ", comma: true},
	"NOK": {minor: 2, signs: " KR ", comma: true},
	"DKK": {minor: 2, signs: " KR ", comma: true},
	"PLN": {minor: 2, signs: " ZŁ ", comma: true},
	"CZK": {minor: 2, signs: " KČ ", comma: true},
}

// MinorUnit gives the decimals of a currency's smallest unit (ISO 4217). For a
// currency outside our small list it is 2, and listed is false: the caller says
// that this is assumed.
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

// isCurrencyCode tells whether the text has the form of an ISO 4217 code.
func isCurrencyCode(s string) bool {
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
	return w == currency || strings.Contains(currencies[currency].signs, " "+w+" ")
}
