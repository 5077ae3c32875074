package paper

import (
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/words"
)

// A set of sheets in Spanish has nothing of the catalogue in English.
func TestSpanishSheets(t *testing.T) {
	const least = 14 // letters: shorter English may stand in a longer Spanish word
	seen := 0
	for _, name := range demo.Names() {
		in := input(t, example(t, name), Letter)
		in.Say = words.Spanish()
		sheets, err := Make(in)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range sheets {
			var b strings.Builder
			for i := range s.Pages {
				s.Pages[i].Each(func(it drawing.Item) {
					if x, ok := it.(drawing.Text); ok {
						b.WriteString(x.Text + " ")
						seen++
					}
				})
			}
			for _, left := range words.EnglishIn(b.String(), least) {
				t.Errorf("%s, %s: %q is English", name, s.Name, left)
			}
		}
	}
	if seen < 1000 {
		t.Fatalf("only %d texts were seen", seen)
	}
}
