package answer

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/words"
)

// TestSure: both answers tell the bands of every example, in words without
// codes or holes; what an answer without bands prints has none.
func TestSure(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range demo.Names() {
		j, _ := job.Read(demo.Job(name))
		r := design.SolveBands(book, j, 128, 1)
		var text, data bytes.Buffer
		if err := Text(&text, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		lines := 0
		for _, line := range strings.Split(text.String(), "\n") {
			if strings.Contains(line, "to be surer") || strings.Contains(line, "% of the doubt") {
				lines++
			}
			for _, bad := range []string{" sure.", " lessen.", " doubt.", " design.band", " {", " NaN"} {
				if strings.Contains(" "+line, bad) {
					t.Errorf("%s: %s", name, line)
				}
			}
		}
		if lines < 2 || lines > 1+fewest {
			t.Errorf("%s: %d lines tell what to measure again", name, lines)
		}
		if err := JSON(&data, r, nil, words.English()); err != nil {
			t.Fatal(err)
		}
		var d Document
		dec := json.NewDecoder(&data)
		dec.DisallowUnknownFields()
		if err := dec.Decode(&d); err != nil || d.Bands == nil {
			t.Fatalf("%s: %v, %v", name, err, d.Bands)
		}
		ids := map[string]bool{}
		for _, f := range d.Figures {
			ids[f.ID] = true
		}
		for _, f := range d.Bands.Figures {
			if !ids[f.Figure] || f.Low.SI > f.High.SI || f.Low.Text == "" {
				t.Errorf("%s: %+v", name, f)
			}
			for _, s := range f.Shares {
				if s.Doubt < 0 || s.Doubt >= len(d.Bands.Doubts) || s.Part <= 0 || s.Part > 1 {
					t.Errorf("%s: %s: share %+v", name, f.Figure, s)
				}
			}
		}
		for _, x := range d.Bands.Doubts {
			if strings.Contains(x.Text+x.Lessen, "doubt.") || strings.Contains(x.Lessen, "lessen.") || strings.Contains(x.Text+x.Lessen, "{") {
				t.Errorf("%s: %+v", name, x)
			}
		}
		text.Reset()
		if err := Text(&text, design.Solve(book, j), nil, words.English()); err != nil || strings.Contains(text.String(), "How sure") {
			t.Errorf("%s: bands that were not asked for (%v)", name, err)
		}
	}
}

// TestLowToHigh: the unit once where both ends have the same, else both whole.
func TestLowToHigh(t *testing.T) {
	for _, c := range [][3]string{
		{"41.9 gpm", "48.7 gpm", "41.9 to 48.7 gpm"},
		{"999 L/h", "1.2 m³/h", "999 L/h to 1.2 m³/h"},
		{`11-1/2"`, `1' 2"`, `11-1/2" to 1' 2"`},
	} {
		if got := (&printer{say: words.English()}).lowToHigh(c[0], c[1]); got != c[2] {
			t.Errorf("%q, want %q", got, c[2])
		}
	}
}
