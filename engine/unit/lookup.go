package unit

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// maxUnit is the longest unit text looked up, in bytes of its normal form.
const maxUnit = 48

// normalForm writes the normal form of a unit as typed: lower case, "per" as a
// slash, superscripts as digits, the degree sign as "deg", without the spaces,
// dots, hyphens and brackets that may stand within a unit. It reports false for
// a text that cannot be a unit.
func normalForm(dst []byte, text string) ([]byte, bool) {
	word := -1 // where the current word of letters starts in dst
	open := false
	prev := rune(0)
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		i += size
		next, _ := utf8.DecodeRuneInString(text[i:])
		if 'A' <= r && r <= 'Z' {
			r += 'a' - 'A'
		}
		letter := isLetter(r)
		switch {
		case letter && word < 0:
			word = len(dst)
		case !letter:
			dst, word = perToSlash(dst, word), -1
		}
		ok := true
		switch {
		case letter, '0' <= r && r <= '9', r == '/', r == '%':
			dst = append(dst, byte(r))
		case isSpace(r):
			continue // prev stays: a space is nothing
		case r == '²':
			dst = append(dst, '2')
		case r == '³':
			dst = append(dst, '3')
		case r == '°', r == 'º':
			dst = append(dst, "deg"...)
		case r == '℃':
			dst = append(dst, "degc"...)
		case r == '℉':
			dst = append(dst, "degf"...)
		case r == 'ℓ':
			dst = append(dst, 'l')
		case r == 'µ', r == 'μ':
			dst = append(dst, 'u')
		case r == '.':
			ok = isLetter(prev)
		case r == '^':
			ok = isLetter(prev) && (next == '2' || next == '3')
		case r == '-', r == '·': // "kW-h", "2-in"
			ok = (isLetter(prev) || prev == 0) && isLetter(next|0x20)
		case r == '(':
			ok, open = !open && isLetter(next|0x20), true
		case r == ')':
			ok, open = open && (isLetter(prev) || prev == '.'), false
		default:
			ok = false
		}
		if !ok || len(dst) > maxUnit {
			return dst, false
		}
		prev = r
	}
	return perToSlash(dst, word), len(dst) > 0 && !open
}

func isLetter(r rune) bool { return 'a' <= r && r <= 'z' }

// perToSlash turns the word that starts at word into a slash if it is "per".
func perToSlash(dst []byte, word int) []byte {
	if word >= 0 && string(dst[word:]) == "per" {
		return append(dst[:word], '/')
	}
	return dst
}

func normalName(name string) string {
	b, _ := normalForm(nil, name)
	return string(b)
}

// confusable lists spellings that capitals set a millionfold or more apart from
// a unit of the table; lower-casing would hide that, so they are refused.
var confusable = [...]string{"ML", "mPa", "Mbar"}

// region says whose gallon (pint, ton) is meant.
type region uint8

const (
	regionNone region = iota // not said: US
	regionUS
	regionImperial
)

// findUnit looks a unit up as typed; nil when it is none.
func findUnit(text string) *unitDef {
	for _, c := range &confusable {
		if text == c {
			return nil
		}
	}
	var buf [maxUnit + 8]byte
	b, ok := normalForm(buf[:0], text)
	if !ok {
		return nil
	}
	return findNormal(b, regionNone)
}

// findNormal looks a normal form up. With a region it finds only units that
// exist in both: "US m" is no unit.
func findNormal(b []byte, from region) *unitDef {
	u := unitBySpelling[string(b)]
	switch {
	case u == nil:
	case from == regionNone:
		return u
	case u.imperial == "":
		return nil
	case from == regionImperial:
		return tableUnit(u.imperial)
	default:
		return u
	}
	if from == regionNone {
		if rest, r := cutRegion(b); r != regionNone {
			return findNormal(rest, r)
		}
	}
	return compose(b, from)
}

// cutRegion takes the word off that says whose unit is meant, before or behind
// it.
func cutRegion(b []byte) (rest []byte, from region) {
	for _, w := range &regionWords {
		if bytes.HasPrefix(b, w.word) {
			return b[len(w.word):], w.region
		}
		if bytes.HasSuffix(b, w.word) {
			return b[:len(b)-len(w.word)], w.region
		}
	}
	return b, regionNone
}

var regionWords = [...]struct {
	word   []byte
	region region
}{
	{[]byte("imperial"), regionImperial},
	{[]byte("imp"), regionImperial},
	{[]byte("uk"), regionImperial},
	{[]byte("us"), regionUS},
}

// compose reads squares, cubes and quotients of other units. The region is that
// of the quotient's left part.
func compose(b []byte, from region) *unitDef {
	if i := bytes.LastIndexByte(b, '/'); i > 0 {
		left := findNormal(b[:i], from)
		if left == nil {
			return nil
		}
		right := findNormal(b[i+1:], regionNone)
		if right == nil {
			return nil
		}
		return quotient(left, right)
	}
	for _, p := range &powers {
		rest, ok := bytes.CutPrefix(b, p.before)
		if !ok {
			rest, ok = bytes.CutSuffix(b, p.behind)
		}
		if u := unitBySpelling[string(rest)]; ok && u != nil && u.dim == DimLength && from == regionNone {
			return power(u, p.power)
		}
	}
	return nil
}

var powers = [...]struct {
	before, behind []byte
	power          int
}{
	{[]byte("square"), []byte("2"), 2},
	{[]byte("sq"), []byte("2"), 2},
	{[]byte("cubic"), []byte("3"), 3},
	{[]byte("cu"), []byte("3"), 3},
}

func power(u *unitDef, n int) *unitDef {
	p := &unitDef{name: u.name + "²", dim: DimArea, mul: u.mul * u.mul, div: u.div * u.div, grouped: u.grouped}
	if n == 3 {
		p = &unitDef{name: u.name + "³", dim: DimVolume, mul: p.mul * u.mul, div: p.div * u.div, grouped: u.grouped}
	}
	return p
}

func quotient(a, b *unitDef) *unitDef {
	q := &unitDef{mul: a.mul * b.div, div: a.div * b.mul, grouped: a.grouped}
	switch {
	case a.dim == DimVolume && b.dim == DimDuration:
		q.dim = DimFlow
	case a.dim == DimLength && b.dim == DimDuration:
		q.dim = DimSpeed
	case a.dim == DimFlow && b.dim == DimLength, a.dim == DimArea && b.dim == DimDuration:
		q.dim = DimFlowPerWidth
	default:
		return nil
	}
	by := "/"
	if strings.Contains(a.name, "/") {
		by = " per "
	}
	q.name = a.name + by + b.name
	return q
}
