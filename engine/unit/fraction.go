package unit

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// startsFraction tells whether a fraction bar and a denominator stand here.
func startsFraction(s string) bool {
	return strings.HasPrefix(s, "/") && len(s) > 1 && isDigit(s[1]) || strings.HasPrefix(s, "⁄")
}

// scanFraction adds the fraction behind a whole number, or reads the number as
// the numerator of one.
func scanFraction(text string, n number) (number, Code) {
	if startsFraction(text[n.end:]) {
		if !n.whole || n.ambiguous {
			return n, CodeFraction
		}
		return divide(text, n, n.at, 0)
	}
	next, sep := n.end, false
	for next < len(text) {
		r, size := utf8.DecodeRuneInString(text[next:])
		hyphen := isHyphen(r) && next == n.end
		if !hyphen && !isSpace(r) {
			break
		}
		next += size
		sep = true
		if hyphen {
			break
		}
	}
	if f, end, ok := vulgar(text, next); ok {
		if !n.whole {
			n.end = end
			return n, CodeFraction
		}
		return number{value: n.value + f, at: n.at, end: end}, ""
	}
	d := next
	for d < len(text) && isDigit(text[d]) {
		d++
	}
	if !sep || d == next || !startsFraction(text[d:]) {
		return n, ""
	}
	if !n.whole {
		n.end = d
		return n, CodeFraction
	}
	whole := n.value
	n.end = d
	return divide(text, n, next, whole)
}

// maxTerm is the largest numerator or denominator read.
const maxTerm = 9999

// divide reads the denominator at n.end and adds the fraction, whose numerator
// starts at top, to the whole. Behind a whole number it must be proper.
func divide(text string, n number, top int, whole float64) (number, Code) {
	mixed := top != n.at
	numerator, err := strconv.Atoi(text[top:n.end])
	_, slash := utf8.DecodeRuneInString(text[n.end:])
	start := n.end + slash
	end := start
	for end < len(text) && isDigit(text[end]) {
		end++
	}
	denominator, err2 := strconv.Atoi(text[start:end])
	n.end = end
	if err != nil || err2 != nil || numerator > maxTerm || denominator > maxTerm || denominator == 0 || mixed && numerator >= denominator {
		return n, CodeFraction
	}
	n.value = (whole*float64(denominator) + float64(numerator)) / float64(denominator)
	n.whole, n.ambiguous = false, false
	return n, ""
}

// vulgar reads one fraction character.
func vulgar(text string, i int) (float64, int, bool) {
	if i >= len(text) || text[i] < utf8.RuneSelf {
		return 0, i, false
	}
	r, size := utf8.DecodeRuneInString(text[i:])
	for _, f := range &vulgars {
		if f.r == r {
			return f.top / f.bottom, i + size, true
		}
	}
	return 0, i, false
}

var vulgars = [...]struct {
	r           rune
	top, bottom float64
}{
	{'½', 1, 2},
	{'¼', 1, 4},
	{'¾', 3, 4},
	{'⅛', 1, 8},
	{'⅜', 3, 8},
	{'⅝', 5, 8},
	{'⅞', 7, 8},
	{'⅓', 1, 3},
	{'⅔', 2, 3},
	{'⅕', 1, 5},
	{'⅖', 2, 5},
	{'⅗', 3, 5},
	{'⅘', 4, 5},
	{'⅙', 1, 6},
	{'⅚', 5, 6},
	{'⅐', 1, 7},
	{'⅑', 1, 9},
	{'⅒', 1, 10},
}
