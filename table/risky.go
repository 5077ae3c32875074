package table

import "strings"

// Risky tells that a spreadsheet program could take a text for a formula: it
// begins, perhaps after blanks, with a sign that such programs read as the
// beginning of one (= + - @, also as wide characters), or with a tab or a line
// break. Rule: OWASP, CSV Injection, from memory.
func Risky(s string) bool {
	s = strings.TrimLeft(s, " \u00a0\u200b\ufeff")
	for _, sign := range []string{"=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"} {
		if strings.HasPrefix(s, sign) {
			return true
		}
	}
	return false
}
