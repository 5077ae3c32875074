package unit

import "github.com/shopspring/decimal"

// Money is an exact decimal amount in a currency (ISO 4217 code).
type Money struct {
	Amount   decimal.Decimal
	Currency string
}

// ParseMoney reads an amount; a currency written in the text must agree with
// the job's.
func ParseMoney(text, currency string) (Money, error) {
	return Money{}, &ParseError{Code: CodeNumber, Text: text, Kind: KindMoney}
}

// Format prints the amount rounded to the currency's minor unit.
func (m Money) Format() string { return "" }
