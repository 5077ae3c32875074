package words

import (
	"strings"
	"unicode"
)

// Plain makes text from a job fit for one line on a screen: a line break or tab
// becomes a space, and what steers a terminal or turns the writing direction
// (control and format characters) becomes the replacement character, so that a
// note can neither colour nor forge a line of the answer. What joins an emoji of
// several, or letters beyond ASCII, stays behind such a sign.
func Plain(s string) string {
	steers := func(r rune) bool { return unicode.Is(unicode.Cc, r) || unicode.Is(unicode.Cf, r) }
	if !strings.ContainsFunc(s, steers) {
		return s
	}
	before := rune(0)
	return strings.Map(func(r rune) rune {
		last := before
		before = r
		switch {
		case last > unicode.MaxASCII && (r == '\u200c' || r == '\u200d' || r >= 0xe0020 && r <= 0xe007f):
			return r
		case r == '\n' || r == '\r' || r == '\t':
			return ' '
		case steers(r):
			return unicode.ReplacementChar
		}
		return r
	}, s)
}
