package paper

import (
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/internal/masked"
	"plashet/job"
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

// TestSpanishWords: no word of the sheets in Spanish is one of the tool's English
// words, be it of a sentence or of the engine. The job's own words are masked.
func TestSpanishWords(t *testing.T) {
	seen := 0
	for _, name := range demo.Names() {
		j, faults := job.Read(masked.Job(name))
		in := inputOf(t, j, A4, faults)
		in.Say = words.Spanish()
		for _, s := range sheetsOf(t, in) {
			for i := range s.Pages {
				for _, x := range texts(&s.Pages[i]) {
					if x.At.Y > s.Pages[i].Height-bottom && strings.HasSuffix(x.Text, "…") {
						t.Errorf("%s, %s %d: the foot is cut short: %q", name, s.Name, i+1, x.Text)
					}
				}
				for _, said := range saidOn(&s.Pages[i]) {
					seen++
					if left := words.EnglishWordsIn(said); len(left) > 0 {
						t.Errorf("%s, %s %d: %q has the English %q", name, s.Name, i+1, said, left)
					}
				}
			}
		}
	}
	if seen < 3000 {
		t.Fatalf("only %d texts were seen", seen)
	}
}

// saidOn lists all that a page says: its letters, its title and what its parts
// are called to who touches them.
func saidOn(s *drawing.Sheet) []string {
	out := []string{s.Title, s.Desc}
	for _, d := range s.Data {
		out = append(out, d.Title)
		for _, row := range append([][]string{d.Head}, d.Rows...) {
			out = append(out, row...)
		}
	}
	var groups func(items []drawing.Item)
	groups = func(items []drawing.Item) {
		for _, it := range items {
			switch v := it.(type) {
			case drawing.Group:
				out = append(out, v.Title)
				groups(v.Items)
			case drawing.Text:
				out = append(out, v.Text)
			}
		}
	}
	groups(s.Items)
	return out
}

// TestSpanishWordsPrinted: the same, read out of the PDF by another program.
func TestSpanishWordsPrinted(t *testing.T) {
	pdftotext := tool(t, "pdftotext", "poppler-utils")
	seen := 0
	for _, name := range demo.Names() {
		j, faults := job.Read(masked.Job(name))
		in := inputOf(t, j, Letter, faults)
		in.Say = words.Spanish()
		for _, s := range sheetsOf(t, in) {
			said := run(t, printed(t, in, s.Name), pdftotext, "in.pdf", "-")
			seen += len(strings.Fields(said))
			if left := words.EnglishWordsIn(said); len(left) > 0 {
				t.Errorf("%s, %s has the English %q", name, s.Name, left)
			}
		}
	}
	if seen < 10000 {
		t.Fatalf("only %d words were read", seen)
	}
}
