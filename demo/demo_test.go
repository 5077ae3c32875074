package demo

import (
	"strings"
	"testing"
)

// TestShelfSaysInvented: every pump of the shelf says that it is made up.
func TestShelfSaysInvented(t *testing.T) {
	text := string(Shelf())
	pumps, said := strings.Count(text, `"name": "`)-strings.Count(text, `{"name": "`), strings.Count(text, `"note": "invented pump`)
	if pumps < 12 || said != pumps {
		t.Errorf("%d pumps, %d of them say that they are invented", pumps, said)
	}
}
