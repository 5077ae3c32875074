package answer

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/internal/masked"
	"plashet/job"
	"plashet/offer"
	"plashet/words"
)

// TestSpanishWords: no word of the answer and the offer in Spanish is
// one of the tool's English words. The job's own words are masked; paths, codes and
// what a publication is called stay.
func TestSpanishWords(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, name := range demo.Names() {
		j, faults := job.Read(masked.Job(name))
		r := design.SolveBands(book, j, 64, 1, faults...)
		var b bytes.Buffer
		if err := Text(&b, r, faults, words.Spanish()); err != nil {
			t.Fatal(err)
		}
		d := offer.Of(book, j, faults...)
		for _, client := range []bool{false, true} {
			for _, p := range OfferParts(j, &d, 0, client, words.Spanish()) {
				b.WriteString(p.Head + "\n")
				for _, l := range p.Lines {
					b.WriteString(l.Text + " " + l.Amount + "\n")
				}
			}
		}
		for line := range strings.Lines(b.String()) {
			seen++
			line = publication.ReplaceAllString(strings.TrimSpace(line), "$1")
			if left := words.EnglishWordsIn(forPrograms.ReplaceAllString(line, "")); len(left) > 0 {
				t.Errorf("%s: %q has the English %q", name, strings.TrimSpace(line), left)
			}
		}
	}
	if seen < 800 {
		t.Fatalf("only %d lines were seen", seen)
	}
}

// forPrograms are paths in the job and codes.
var forPrograms = regexp.MustCompile(`(?:/[A-Za-z0-9]+)+|[a-z]+(?:\.[a-z0-9-]+)+`)

// publication is what one is called where the answer names it: behind a limit, a
// manual or an assumption.
var publication = regexp.MustCompile(`^(límite [^:]*: |el manual [A-Z]: |/.*\. \().*`)
