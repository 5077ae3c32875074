package shelf

import "strings"

// A spreadsheet takes a cell that begins with one of these signs for a formula,
// and runs it when the file is opened. Such a cell goes out with an apostrophe
// before it, which a spreadsheet shows as text, and comes in without. (OWASP,
// CSV Injection: from memory; the wide signs are their full-width forms.)
const starts = "=+-@\t\r＝＋－＠"

// guarded is a cell as it goes out. A text that begins with an apostrophe before
// one of the signs, or before another apostrophe, gets one more, so that
// unguarded gives back what stood there.
func guarded(cell string) string {
	rest := strings.TrimLeft(cell, "'")
	if rest != "" && strings.ContainsAny(firstOf(rest), starts) {
		return "'" + cell
	}
	return cell
}

// unguarded takes the apostrophe away again, and no other.
func unguarded(cell string) string {
	inner, ok := strings.CutPrefix(cell, "'")
	if rest := strings.TrimLeft(inner, "'"); ok && rest != "" && strings.ContainsAny(firstOf(rest), starts) {
		return inner
	}
	return cell
}

func firstOf(s string) string {
	for _, r := range s {
		return string(r)
	}
	return ""
}
