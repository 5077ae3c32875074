package unit

import (
	"unicode"
	"unicode/utf8"
)

// Style is how amounts of a currency are written for people. The zero Style
// writes "1234.50", with the code of the amount behind it.
type Style struct {
	Marks
	Currency string // ISO 4217 code, "" where it is not known
	Sign     string // stands for the currency; "" for its code
	Before   bool   // sign or code stand in front of the amount
	Close    bool   // without a space
}

// StyleOf is how amounts of a currency are written where nothing else is said:
// with its sign, marks and side as at home (the table in currencies.go), but
// with a decimal point and commas between thousands where the units are US ones,
// for their numbers are written so. Of no currency, and of one outside our list,
// the marks are point and comma; a code without a sign stands behind the amount
// there.
func StyleOf(currency string, s System) Style {
	st := Style{Marks: Marks{Decimal: Point, Group: Comma}, Currency: currency}
	c, listed := currencies[currency]
	if !listed {
		return st
	}
	st.Sign, st.Before, st.Close = c.sign, c.before, c.close
	if s.Is(Metric) {
		st.Decimal, st.Group = c.decimal, c.group
	}
	return st
}

// Code gives the style with the currency's code for its sign.
func (st Style) Code() Style {
	st.Sign, st.Close = "", false
	return st
}

// On gives the style with sign or code before the amount, or behind it. A sign
// that is no letter stands close before an amount; all else has a space between.
func (st Style) On(before bool) Style {
	if before == st.Before {
		return st
	}
	last, _ := utf8.DecodeLastRuneInString(st.Sign)
	st.Before, st.Close = before, before && unicode.Is(unicode.Sc, last)
	return st
}

// Parse reads an amount in the style's currency, with the code, a sign of it, or
// none, whatever side: "18.40", "$18.40", "1,234.50 USD", "€ 12,50". A currency
// written in the text must be the style's; a "$" or "kr" is taken as the style's
// where that is written so.
//
// One mark before three digits ("1,410", "1.410") can mean two things. Where the
// marks are said, the mark between thousands groups them, and the decimal mark is
// one; but a decimal comma before three digits is refused as ambiguous, unless
// the currency has three decimals, and so is any other point or comma. Where they
// are not said, both are refused for currencies that people write with a decimal
// comma (and for those outside our list); for others a comma groups thousands.
// The error is a *ParseError with KindMoney.
func (st Style) Parse(text string) (Money, error) {
	p := parser{typed: text, text: text, kind: KindMoney}
	if st.Said {
		p.system = US.With(st.Marks)
	}
	if !IsCurrencyCode(st.Currency) {
		return Money{}, p.fail(CodeCurrency, 0, 0)
	}
	if len(text) > MaxText {
		return Money{}, p.fail(CodeLong, MaxText, MaxText)
	}
	p.text = spaced(st.plain(text))
	p.skipSpace()
	if p.at == len(text) {
		return Money{}, p.fail(CodeEmpty, p.at, p.at)
	}
	negative := p.sign()
	if err := p.currency(st.Currency, true); err != nil {
		return Money{}, err
	}
	if !negative {
		negative = p.sign()
	}
	amount, err := p.amount(st)
	if err != nil {
		return Money{}, err
	}
	if err := p.currency(st.Currency, false); err != nil {
		return Money{}, err
	}
	if p.at < len(text) {
		return Money{}, p.fail(CodeTrailing, p.at, len(text))
	}
	if negative {
		amount = amount.Neg()
	}
	return Money{Amount: amount, Currency: st.Currency}, nil
}

// unclear tells that an amount of which three digits behind its only mark are
// typed may be another. The mark is the one in the plain text.
func (st Style) unclear(mark byte) bool {
	if !st.Said {
		return bothWays(st.Currency)
	}
	if mark == ',' { // groups thousands, where that is the mark for it
		return st.Group != Comma && st.Group != Point
	}
	return st.Decimal == Comma && minorUnit(st.Currency) != 3
}
