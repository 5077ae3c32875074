package unit

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// decimalText is a run of digits with its marks, as typed: "1,234.5".
type decimalText struct {
	clean     string // digits with at most one point: "1234.5"
	end       int    // offset behind it
	whole     bool   // no decimal mark
	ambiguous bool   // "1,410": the comma may be a decimal mark; clean groups thousands
	dotted    bool   // "1.410": the point may group thousands; clean takes it as decimal
}

// scanDecimal reads digits, a decimal point or comma, and groups of thousands
// set off by commas, dots or spaces. A comma before exactly three digits is
// ambiguous, unless a zero or more than three digits stand before it or another
// mark tells. It reports false when no number starts at i or its marks make no
// sense; end is then the end of the run.
func scanDecimal(text string, i int) (d decimalText, ok bool) {
	end, commas, dots, spaces := scanRun(text, i)
	run := text[i:end]
	d = decimalText{clean: run, end: end}
	if strings.IndexByte("0123456789", lastByte(run)) < 0 && run != "" {
		// A point or comma behind the last digit ends a sentence or parts two
		// quantities; a point is swallowed, a comma left to the caller.
		if lastByte(run) == ',' {
			d.end--
			commas--
		} else {
			dots--
		}
		run = run[:len(run)-1]
		d.clean = run
	}
	if run == "" || run == "." {
		return d, false
	}
	if commas == 0 && dots <= 1 && spaces == 0 {
		d.whole = dots == 0
		d.dotted = dots == 1 && groupsOK(run, ".")
		return d, true
	}
	mark := byte(0) // the decimal mark
	switch {
	case commas > 0 && dots > 0:
		mark = run[strings.LastIndexAny(run, ".,")]
	case dots == 1:
		mark = '.'
	case commas == 1 && !groupsOK(run, ","):
		mark = ','
	}
	body, fraction := run, ""
	if mark != 0 {
		at := strings.LastIndexByte(run, mark)
		body, fraction = run[:at], run[at+1:]
	}
	if !groupsOK(body, "") || strings.IndexByte(body, mark) >= 0 || digitsOf(fraction) != fraction {
		return d, false
	}
	d.whole = mark == 0
	d.ambiguous = commas == 1 && dots == 0 && spaces == 0 && mark == 0
	d.clean = digitsOf(body)
	if mark != 0 {
		d.clean += "." + fraction
	}
	return d, true
}

func lastByte(s string) byte {
	if s == "" {
		return 0
	}
	return s[len(s)-1]
}

// scanRun finds the end of a run of digits, points, commas and spaces between
// groups of three, and counts its marks.
func scanRun(text string, i int) (end, commas, dots, spaces int) {
	for end = i; end < len(text); {
		switch c := text[end]; {
		case isDigit(c):
			end++
		case c == ',' && end > i && isDigit(text[end-1]):
			commas++
			end++
		case c == '.' && (end == i || isDigit(text[end-1])):
			dots++
			end++
		default:
			next := groupSpace(text, i, end)
			if next == end {
				return end, commas, dots, spaces
			}
			spaces++
			end = next
		}
	}
	return end, commas, dots, spaces
}

// groupSpace gives the offset behind one space at end when exactly three
// digits follow it, as between thousands, and end itself otherwise.
func groupSpace(text string, start, end int) int {
	r, size := utf8.DecodeRuneInString(text[end:])
	if end == start || end-start > 3 && !strings.ContainsFunc(text[start:end], isSpace) || !isSpace(r) || text[start] == '0' {
		return end
	}
	next := end + size
	n := next
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	if n-next != 3 || startsFraction(text[n:]) {
		return end
	}
	return next
}

// groupsOK tells whether the text is digits only, or groups of thousands: one
// to three digits that don't start with zero, then three in each group, with
// one kind of mark between them (the mark asked for, or any when it is "").
func groupsOK(s, mark string) bool {
	first, n, used := true, 0, rune(0)
	for _, r := range s {
		if r < utf8.RuneSelf && isDigit(byte(r)) {
			n++
			continue
		}
		if isSpace(r) {
			r = ' '
		}
		if used != 0 && r != used || mark != "" && string(r) != mark {
			return false
		}
		used = r
		if first && (n < 1 || n > 3 || s[0] == '0') || !first && n != 3 {
			return false
		}
		first, n = false, 0
	}
	if used == 0 {
		return n > 0 && mark == ""
	}
	return n == 3
}

func digitsOf(s string) string {
	b := make([]byte, 0, len(s))
	for i := range len(s) {
		if isDigit(s[i]) {
			b = append(b, s[i])
		}
	}
	return string(b)
}

// number is one number as typed, fraction and all.
type number struct {
	value     float64
	at, end   int
	whole     bool
	ambiguous bool
	dotted    bool
}

// scanNumber reads "55", "55.5", "55-1/2", "55 1/2", "7/16", "7½", "1.5e-6".
// The code is "" when it is well.
func scanNumber(text string, i int) (number, Code) {
	n := number{at: i, end: i}
	if f, end, ok := vulgar(text, i); ok {
		n.value, n.end = f, end
		return n, ""
	}
	d, ok := scanDecimal(text, i)
	n.end = d.end
	if !ok {
		return n, CodeNumber
	}
	var err error
	if n.value, err = strconv.ParseFloat(d.clean, 64); err != nil {
		return n, CodeRange
	}
	n.whole, n.ambiguous, n.dotted = d.whole, d.ambiguous, d.dotted
	if end, code := scanExponent(text, d.end); code != "" {
		n.end = end
		return n, code
	} else if end > d.end {
		if n.ambiguous {
			return n, CodeAmbiguous
		}
		n.value, err = strconv.ParseFloat(d.clean+text[d.end:end], 64)
		if err != nil {
			return n, CodeRange
		}
		n.end, n.whole, n.dotted = end, false, false
		return n, ""
	}
	return scanFraction(text, n)
}

// maxExponent is the largest power of ten read, either way.
const maxExponent = 15

// scanExponent reads "e-6" and gives its end, or i when there is none.
func scanExponent(text string, i int) (int, Code) {
	if i >= len(text) || text[i] != 'e' && text[i] != 'E' {
		return i, ""
	}
	j := i + 1
	if j < len(text) && (text[j] == '-' || text[j] == '+') {
		j++
	}
	start := j
	for j < len(text) && isDigit(text[j]) {
		j++
	}
	if j == start {
		return i, ""
	}
	if e, err := strconv.Atoi(text[start:j]); err != nil || e > maxExponent {
		return j, CodeRange
	}
	return j, ""
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// isSpace covers the spaces that keyboards and word processors make.
func isSpace(r rune) bool {
	switch r {
	case ' ', '\t', '\n', '\r', '\u00a0', '\u2009', '\u200a', '\u202f':
		return true
	}
	return false
}

// isHyphen covers the hyphens and dashes that stand for a minus or part a
// whole number from its fraction.
func isHyphen(r rune) bool {
	switch r {
	case '-', '\u2010', '\u2011', '\u2012', '\u2013', '\u2212':
		return true
	}
	return false
}
