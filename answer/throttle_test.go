package answer

import (
	"bytes"
	"strings"
	"testing"

	"plashet/engine/design"
	"plashet/engine/unit"
	"plashet/words"
)

// What a valve must take is told for the part that the pump reaches, and not at
// all where it reads as nothing.
func TestThrottle(t *testing.T) {
	for _, c := range []struct {
		at   unit.Ratio
		burn unit.Head
		want string
	}{
		{1, 1e-15, ""},
		{1, 0.001, ""}, // 0.003 ft
		{1, unit.Foot, "to share as wanted its valve must take 1.00 ft more (K 5.0)"},
		{0.84, unit.Foot, "to give every feed the 84% of what is wanted that the pump reaches, its valve must take 1.00 ft more (K 5.0)"},
	} {
		var b bytes.Buffer
		p := &printer{w: &b, say: words.English(), unit: unit.US}
		p.throttle(&design.Share{Reach: c.at, At: c.at}, design.Feed{Burn: c.burn, K: 5})
		if got := strings.TrimSpace(b.String()); got != c.want {
			t.Errorf("at %v, %v: %q", c.at, c.burn, got)
		}
	}
}
