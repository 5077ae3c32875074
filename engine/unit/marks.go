package unit

import (
	"strings"
	"unicode/utf8"
)

// markUnit gives the unit of a foot or inch mark, nil for anything else.
func markUnit(typed string) *unitDef {
	r, size := utf8.DecodeRuneInString(typed)
	switch {
	case isInchMark(r) && size == len(typed):
		return inch
	case isFootMark(r) && size == len(typed):
		return foot
	case isFootMark(r):
		if r2, size2 := utf8.DecodeRuneInString(typed[size:]); isFootMark(r2) && size+size2 == len(typed) {
			return inch // two foot marks make an inch mark
		}
	}
	return nil
}

func isFootMark(r rune) bool {
	switch r {
	case '\'', '’', '′', '‘', '`', '´':
		return true
	}
	return false
}

func isInchMark(r rune) bool {
	switch r {
	case '"', '”', '″', '“':
		return true
	}
	return false
}

// unitEnd gives the end of the unit that starts here: behind a foot or inch
// mark, or before the next number. Digits belong to a unit as an exponent
// ("m3/h", "ft2", "H2O"), not where they start the inches of "4ft2in".
func (p *parser) unitEnd() int {
	i := p.at
	r, size := p.peek()
	if isInchMark(r) {
		return i + size
	}
	if isFootMark(r) {
		i += size
		if r2, size2 := utf8.DecodeRuneInString(p.text[i:]); isFootMark(r2) {
			i += size2
		}
		return i
	}
	prev := rune(0)
	for i < len(p.text) {
		r, size := utf8.DecodeRuneInString(p.text[i:])
		rest := p.text[i+size:]
		switch {
		case r < utf8.RuneSelf && isDigit(byte(r)):
			if !isExponent(prev, r, rest) {
				return i
			}
		case r == ',', isFootMark(r), isInchMark(r), r == '.' && startsNumber(rest), isHyphen(r) && startsNumber(strings.TrimLeftFunc(rest, isSpace)):
			return i
		case i > p.at:
			if _, _, ok := vulgar(p.text, i); ok {
				return i
			}
		}
		prev = r
		i += size
	}
	return i
}

func startsNumber(s string) bool {
	if s == "" {
		return false
	}
	_, _, ok := vulgar(s, 0)
	return ok || isDigit(s[0]) || s[0] == '.' && len(s) > 1 && isDigit(s[1])
}

// isExponent tells whether a digit behind prev is part of the unit.
func isExponent(prev, digit rune, rest string) bool {
	if prev == '^' {
		return true
	}
	letter := 'a' <= prev|0x20 && prev|0x20 <= 'z'
	if !letter || digit != '2' && digit != '3' {
		return false
	}
	if prev|0x20 == 'h' && strings.HasPrefix(strings.ToLower(rest), "o") {
		return true
	}
	rest = strings.TrimLeftFunc(rest, isSpace)
	if after, ok := strings.CutPrefix(rest, "/"); ok {
		return !startsNumber(after)
	}
	return rest == "" || strings.HasPrefix(strings.ToLower(rest), "per")
}
