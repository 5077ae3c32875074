package answer

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/unit"
	"plashet/internal/masked"
	"plashet/job"
	"plashet/words"
)

// TestSpanishFaults: what is said of an example from which one field is left out, or
// in which it is emptied, has no word of the tool's English, whichever field it is.
func TestSpanishFaults(t *testing.T) {
	es, seen := words.Spanish(), map[string]bool{}
	for _, name := range demo.Names() {
		var doc any
		if err := json.Unmarshal(masked.Job(name), &doc); err != nil {
			t.Fatal(err)
		}
		without(doc, func() {
			data, err := json.Marshal(doc)
			if err != nil {
				t.Fatal(err)
			}
			_, faults := job.Read(data)
			for _, f := range faults {
				x := FaultOf(f, unit.Metric, es)
				if seen[x.Text] {
					continue
				}
				seen[x.Text] = true
				text := typed.ReplaceAllString(x.Text, "")
				for _, a := range f.Args {
					if len(a.Places) > 0 { // with the names of the job
						text = strings.ReplaceAll(text, words.Plain(es.Places(a.Places)), "")
					}
					if a.Name == "known" { // words to be typed, and names
						text = strings.ReplaceAll(text, words.Plain(a.Text), "")
					}
					if a.Name != "doc" {
						continue
					}
					if es.Doc(a.Text) == a.Text || x.Expected == a.Text {
						t.Errorf("%s: %q is told as %q", x.Path, a.Text, x.Expected)
					}
				}
				if left := words.EnglishWordsIn(forPrograms.ReplaceAllString(text, "")); x.Code != job.CodeNextBy && len(left) > 0 {
					t.Errorf("%s: %q has the English %q", name, x.Text, left)
				}
			}
		})
	}
	if len(seen) < 100 {
		t.Fatalf("only %d sentences were seen", len(seen))
	}
}

// typed is what a fault quotes: as it stands in the job or as it is to be typed.
var typed = regexp.MustCompile(`“[^”]*”`)

// without calls do once for each field of a document, with that field left out.
func without(v any, do func()) {
	switch v := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(v))
		for k := range v {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		for _, k := range keys {
			was := v[k]
			delete(v, k)
			do()
			v[k] = was
			without(was, do)
		}
	case []any:
		for _, x := range v {
			without(x, do)
		}
	}
}
