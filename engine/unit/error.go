package unit

import (
	"fmt"
	"strings"
)

// Code says what is wrong with a text. Codes are stable.
type Code string

// The codes. Each carries Text, At, Found, Kind, System and Example.
const (
	CodeEmpty     Code = "unit.empty"     // nothing was written
	CodeLong      Code = "unit.long"      // longer than MaxText bytes
	CodeNumber    Code = "unit.number"    // a number is expected at At, Found stands there
	CodeFraction  Code = "unit.fraction"  // Found is no proper fraction
	CodeUnknown   Code = "unit.unknown"   // Found is no known unit; Near may name one
	CodeDimension Code = "unit.dimension" // Found is a unit of Dim, which is not the kind's
	CodeTrailing  Code = "unit.trailing"  // Found is left over behind a complete quantity
	CodeAmbiguous Code = "unit.ambiguous" // Found has a comma or dot that may group thousands or mark decimals
	CodeParts     Code = "unit.parts"     // in feet and inches (hours and minutes ...) the first is not whole or the second too large
	CodeRange     Code = "unit.range"     // larger than MaxNumber of the kind's unit, a power of ten beyond 15, or an amount of money too large or too finely divided
	CodePercent   Code = "unit.percent"   // a bare number above 1 where a percentage is meant
	CodeWhole     Code = "unit.whole"     // a count is not whole
	CodeCurrency  Code = "unit.currency"  // Found is another currency than the job's, or none
	CodeKind      Code = "unit.kind"      // the caller's mistake: a kind that cannot be read so
)

// ParseError says why a text could not be read.
type ParseError struct {
	Code    Code
	Text    string // as typed
	At      int    // byte offset in Text of what is wrong
	Found   string // the part of Text that is wrong, "" for its end
	Near    string // a unit spelt nearly like Found, or ""
	Dim     Dim    // dimension of Found, for CodeDimension
	Kind    Kind
	System  System
	Example string // as the kind may be written in that system
}

// Error says what was read, what is wrong with it and how to write it.
func (e *ParseError) Error() string {
	text := e.Text
	if len(text) > MaxText {
		text = strings.ToValidUTF8(text[:MaxText], "") + "..."
	}
	msg := fmt.Sprintf("read %q as %s: %s", text, withArticle(e.Kind.what()), e.reason())
	if e.Example != "" {
		msg += fmt.Sprintf("; write it like %s", quote(e.Example))
	}
	return msg
}

func (e *ParseError) reason() string {
	switch e.Code {
	case CodeEmpty:
		return "nothing is written"
	case CodeLong:
		return fmt.Sprintf("longer than %d characters", MaxText)
	case CodeNumber:
		if e.Found == "" {
			return "a number is missing at the end"
		}
		return fmt.Sprintf("a number is expected where %s stands", quote(e.Found))
	case CodeFraction:
		return fmt.Sprintf("%s is not a fraction between 0 and 1 of whole numbers", quote(e.Found))
	case CodeUnknown:
		if e.Near != "" {
			return fmt.Sprintf("%s is not a unit, did you mean %s", quote(e.Found), quote(e.Near))
		}
		return fmt.Sprintf("%s is not a unit of %s", quote(e.Found), e.Kind.what())
	case CodeDimension:
		return fmt.Sprintf("%s is a unit of %s, not of %s", quote(e.Found), e.Dim, e.Kind.what())
	case CodeTrailing:
		return fmt.Sprintf("%s is left over at the end", quote(e.Found))
	case CodeAmbiguous:
		plain, decimal := bothReadings(e.Found)
		return fmt.Sprintf("%s can mean %s or %s, write one of these", quote(e.Found), plain, decimal)
	case CodeParts:
		return fmt.Sprintf("%s does not fit: in two units the first number is whole and the second smaller than one of the first", quote(e.Found))
	case CodeRange:
		if e.Kind == KindMoney {
			return fmt.Sprintf("%s is more than %s or has more than %d decimals", quote(e.Found), maxMoney, maxMoneyDecimals)
		}
		return fmt.Sprintf("more than %.0f %s", float64(MaxNumber), e.Kind.UnitName(e.System))
	case CodePercent:
		return fmt.Sprintf("a number above 1 needs its percent sign: %s %%, or as a ratio 0.4", e.Found)
	case CodeWhole:
		return "a whole number is expected"
	case CodeCurrency:
		if e.Found == "" {
			return "the job's currency is not a code of three letters"
		}
		return fmt.Sprintf("%s is not the job's currency", quote(e.Found))
	case CodeKind:
		return "this kind is not read this way"
	}
	return string(e.Code)
}

// bothReadings spells the two meanings of "1,410": 1410 and 1.4100. The zero
// behind keeps the second one from being ambiguous again.
func bothReadings(found string) (plain, decimal string) {
	plain = strings.NewReplacer(",", "", ".", "").Replace(found)
	return plain, strings.Replace(found, ",", ".", 1) + "0"
}

// quote puts a text between quotes that are not inch marks.
func quote(s string) string {
	if strings.ContainsRune(s, '"') && !strings.ContainsRune(s, '`') {
		return "`" + s + "`"
	}
	return fmt.Sprintf("%q", s)
}

func withArticle(noun string) string {
	if noun != "" && strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}
