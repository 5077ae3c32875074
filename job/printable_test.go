package job

import "testing"

// TestPrintable: names with emoji put together of several, with right-to-left
// letters and with the joiners of other scripts are names; what cannot be seen, or
// makes two names look alike, is not.
func TestPrintable(t *testing.T) {
	for s, want := range map[string]bool{
		"Hillside pond": true,
		"😀 pond 🐟":      true,
		"👨‍👩‍👧‍👦 pond":  true, // a family: four put together
		"❤️ pond":       true, // with a variation selector
		"🏴\U000e0067\U000e0062\U000e0065\U000e006e\U000e0067\U000e007f": true, // a flag spelt by tags
		"בריכה":          true,
		"می\u200cخواهم":  true, // Persian, with a non-joiner
		"po\u200dnd":     false,
		"\u200d":         false,
		"pond\u200d":     false,
		"\u200d😀":        false,
		"😀\u200d":        false,
		"😀\u200d\u200d😀": false,
		"a\u202eb":       false, // turns the way of writing
		"a\u200bb":       false, // a blank of no width
		"a\tb":           false,
		"a\u0000b":       false,
		"\ufeffpond":     false,
		"pond\U000e0067": false,
	} {
		if got := printable(s); got != want {
			t.Errorf("%q: %v", s, got)
		}
	}
}
