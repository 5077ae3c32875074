package paper

import (
	"strings"
	"testing"
)

// TestPriceSaysWhatFor: the list to fetch by says what a price is for where it is
// not each piece: a roll, a stick, a measure; for each it is the amount alone.
func TestPriceSaysWhatFor(t *testing.T) {
	in := input(t, example(t, "hillside-cascade"), Letter)
	text := written(one(t, in, "material"))
	for _, want := range []string{"$1.90 / 43.0 ft", "$0.92 / ft²", "$165.00 / ton", "$34.20 / 20.0 ft", "$14.00 / yd³"} {
		if !strings.Contains(text, "\n"+want+"\n") {
			t.Errorf("%q is not on the sheet:\n%s", want, text)
		}
	}
	if !strings.Contains(text, "\n$3.15\n") {
		t.Error("an elbow has more than its price")
	}
}
