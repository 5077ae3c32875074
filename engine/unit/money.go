package unit

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// Money is an exact decimal amount in a currency (ISO 4217 code). Prices for
// one unit may have more decimals than the currency's coins (0.1834 a kWh);
// only what is paid is rounded.
type Money struct {
	Amount   decimal.Decimal
	Currency string
}

// maxMoneyDecimals is the most decimals of an amount as typed.
const maxMoneyDecimals = 6

// maxMoney is the largest amount read.
var maxMoney = decimal.New(1, 12)

// ParseMoney reads an amount of a currency whose marks nobody has said; see
// Style.Parse.
func ParseMoney(text, currency string) (Money, error) {
	return Style{Currency: currency}.Parse(text)
}

// currency reads a currency's sign or code, if one stands here, up to the
// number or to the end.
func (p *parser) currency(job string, before bool) error {
	p.skipSpace()
	start, end := p.at, p.at
	for end < len(p.text) {
		r, size := utf8.DecodeRuneInString(p.text[end:])
		if isSpace(r) || before && (isDigit(p.text[end]) || isHyphen(r) || r == '+' || startsNumber(p.text[end:])) {
			break
		}
		end += size
	}
	if end == start {
		return nil
	}
	if !means(p.text[start:end], job) {
		code := CodeCurrency
		switch {
		case before && (end == len(p.text) || !names(p.text[start:end])):
			code = CodeNumber
		case !names(p.text[start:end]):
			code = CodeTrailing
		}
		return p.fail(code, start, end)
	}
	p.at = end
	p.skipSpace()
	return nil
}

// amount reads the digits, exactly.
func (p *parser) amount(st Style) (decimal.Decimal, error) {
	d, ok := scanDecimal(p.text, p.at)
	if !ok {
		return decimal.Decimal{}, p.fail(CodeNumber, p.at, len(p.text))
	}
	whole, fraction, _ := strings.Cut(d.clean, ".")
	mark := byte(0)
	switch {
	case d.ambiguous:
		mark = ','
	case len(fraction) == 3 && len(whole) <= 3 && whole != "" && whole[0] != '0' && d.clean == p.text[p.at:min(d.end, p.at+len(d.clean))]:
		mark = '.'
	}
	if mark != 0 && st.unclear(mark) {
		return decimal.Decimal{}, p.fail(CodeAmbiguous, p.at, d.end)
	}
	amount, err := decimal.NewFromString(d.clean)
	if err != nil {
		return decimal.Decimal{}, p.fail(CodeNumber, p.at, d.end)
	}
	if amount.GreaterThan(maxMoney) || len(fraction) > maxMoneyDecimals {
		return decimal.Decimal{}, p.fail(CodeRange, p.at, d.end)
	}
	p.at = d.end
	return amount, nil
}

// Round rounds to the currency's minor unit, half a unit up on the magnitude.
func (m Money) Round() Money {
	return Money{Amount: m.Amount.Round(minorUnit(m.Currency)), Currency: m.Currency}
}

// Format writes the amount for people, rounded to the currency's minor unit:
// "$1,234.50", "1.234,50 €", "-$5.00". An amount of another currency than the
// style's has its own code behind it. A price for one unit is written by
// FormatExact.
func (m Money) Format(st Style) string {
	return m.write(st, m.Amount.StringFixed(minorUnit(m.Currency)))
}

// FormatExact writes all decimals of the amount, at least those of the
// currency's minor unit: "$0.1834".
func (m Money) FormatExact(st Style) string {
	return m.write(st, m.Amount.StringFixed(max(minorUnit(m.Currency), -m.Amount.Exponent())))
}

// String is the amount for messages of programs: all its decimals behind a
// point, and the code.
func (m Money) String() string { return m.FormatExact(Style{}) }

func (m Money) write(st Style, digits string) string {
	negative := strings.HasPrefix(digits, "-") && strings.ContainsAny(digits, "123456789")
	digits = strings.TrimPrefix(digits, "-")
	whole, fraction, has := strings.Cut(digits, ".")
	b := appendGrouped(make([]byte, 0, 32), []byte(whole))
	if has {
		b = append(append(b, '.'), fraction...)
	}
	b = st.append(nil, b)
	name := m.Currency
	switch {
	case m.Currency != st.Currency:
		st.Before, st.Close = false, false
	case st.Sign != "":
		name = st.Sign
	}
	between := " "
	if st.Close {
		between = ""
	}
	text := string(b)
	switch {
	case name == "":
	case st.Before:
		text = name + between + text
	default:
		text += between + name
	}
	if negative {
		return "-" + text
	}
	return text
}

// ErrCurrency is returned when amounts of different currencies meet.
var ErrCurrency = errors.New("amounts of different currencies")

// ErrFactor is returned for a factor that is not finite or beyond MaxNumber.
var ErrFactor = errors.New("factor is not a number in range")

// Plus adds an amount of the same currency.
func (m Money) Plus(n Money) (Money, error) {
	if m.Currency != n.Currency {
		return Money{}, fmt.Errorf("add %s to %s: %w", n.Currency, m.Currency, ErrCurrency)
	}
	return Money{Amount: m.Amount.Add(n.Amount), Currency: m.Currency}, nil
}

// SumMoney adds amounts of one currency; of none it is zero.
func SumMoney(currency string, amounts ...Money) (Money, error) {
	sum := Money{Currency: currency}
	for _, m := range amounts {
		var err error
		if sum, err = sum.Plus(m); err != nil {
			return Money{}, err
		}
	}
	return sum, nil
}

// Times multiplies by a factor (a count, a waste factor, kilowatt-hours), taken
// at the shortest decimal that stands for it, without rounding. The magnitude of
// the factor is at most MaxNumber.
func (m Money) Times(factor float64) (Money, error) {
	if math.IsNaN(factor) || math.Abs(factor) > MaxNumber {
		return Money{}, fmt.Errorf("multiply %s by %g: %w", m, factor, ErrFactor)
	}
	return Money{Amount: m.Amount.Mul(decimal.NewFromFloat(factor)), Currency: m.Currency}, nil
}

// Value gives the amount for display beside other figures. It is binary: don't
// compute with it.
func (m Money) Value() Value { return Value{SI: m.Amount.InexactFloat64(), Kind: KindMoney} }
