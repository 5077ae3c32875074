package unit

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// maxUnit is the longest unit text looked up, in bytes of its normal form.
const maxUnit = 48

// normalize writes the normal form of a unit as typed: lower case, "per" as a
// slash, superscripts as digits, the degree sign as "deg", without the spaces,
// dots, hyphens and brackets that may stand within a unit. It reports false for
// a text that cannot be a unit.
func normalize(dst []byte, text string) ([]byte, bool) {
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
		case r == '-', r == '·':
			ok = isLetter(prev) && isLetter(next|0x20)
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
	b, _ := normalize(nil, name)
	return string(b)
}

// confusable lists spellings that capitals set a millionfold or more apart from
// a unit of the table; lower-casing would hide that, so they are refused.
var confusable = [...]string{"ML", "mPa", "Mbar"}

// findUnit looks a unit up as typed.
func findUnit(text string) (unitDef, bool) {
	for _, c := range confusable {
		if text == c {
			return unitDef{}, false
		}
	}
	var buf [maxUnit + 8]byte
	b, ok := normalize(buf[:0], text)
	if !ok {
		return unitDef{}, false
	}
	return findNormal(b)
}

func findNormal(b []byte) (unitDef, bool) {
	if u, ok := unitBySpelling[string(b)]; ok {
		return *u, true
	}
	if rest, imperial, ok := cutRegion(b); ok {
		return findRegional(rest, imperial)
	}
	return compose(b, findNormal)
}

// cutRegion takes the word off that says whose gallon (pint, ton) is meant,
// before or behind the unit.
func cutRegion(b []byte) (rest []byte, imperial, ok bool) {
	for _, w := range [...]string{"imperial", "imp", "uk", "us"} {
		if bytes.HasPrefix(b, []byte(w)) {
			return b[len(w):], w != "us", true
		}
		if bytes.HasSuffix(b, []byte(w)) {
			return b[:len(b)-len(w)], w != "us", true
		}
	}
	return b, false, false
}

// findRegional finds a unit that exists in both regions; "US m" is no unit.
func findRegional(b []byte, imperial bool) (unitDef, bool) {
	if u, ok := unitBySpelling[string(b)]; ok {
		if u.imperial == "" {
			return unitDef{}, false
		}
		if imperial {
			u = unitBySpelling[normalName(u.imperial)]
		}
		return *u, true
	}
	return compose(b, func(left []byte) (unitDef, bool) { return findRegional(left, imperial) })
}

// compose reads squares, cubes and quotients of other units. The quotient's
// left part is found by the function given.
func compose(b []byte, find func([]byte) (unitDef, bool)) (unitDef, bool) {
	if i := bytes.LastIndexByte(b, '/'); i > 0 {
		left, ok := find(b[:i])
		if !ok {
			return unitDef{}, false
		}
		right, ok := findNormal(b[i+1:])
		if !ok {
			return unitDef{}, false
		}
		return quotient(left, right)
	}
	for _, p := range [...]struct {
		before, behind string
		power          int
	}{{"square", "2", 2}, {"sq", "2", 2}, {"cubic", "3", 3}, {"cu", "3", 3}} {
		rest, ok := bytes.CutPrefix(b, []byte(p.before))
		if !ok {
			rest, ok = bytes.CutSuffix(b, []byte(p.behind))
		}
		if u, found := unitBySpelling[string(rest)]; ok && found && u.dim == DimLength {
			return power(*u, p.power), true
		}
	}
	return unitDef{}, false
}

func power(u unitDef, n int) unitDef {
	p := unitDef{name: u.name + "²", dim: DimArea, mul: u.mul * u.mul, div: u.div * u.div, grouped: u.grouped}
	if n == 3 {
		p = unitDef{name: u.name + "³", dim: DimVolume, mul: p.mul * u.mul, div: p.div * u.div, grouped: u.grouped}
	}
	return p
}

func quotient(a, b unitDef) (unitDef, bool) {
	q := unitDef{mul: a.mul * b.div, div: a.div * b.mul, grouped: a.grouped}
	switch {
	case a.dim == DimVolume && b.dim == DimDuration:
		q.dim = DimFlow
	case a.dim == DimLength && b.dim == DimDuration:
		q.dim = DimSpeed
	case a.dim == DimFlow && b.dim == DimLength, a.dim == DimArea && b.dim == DimDuration:
		q.dim = DimFlowPerWidth
	default:
		return unitDef{}, false
	}
	by := "/"
	if strings.Contains(a.name, "/") {
		by = " per "
	}
	q.name = a.name + by + b.name
	return q, true
}
