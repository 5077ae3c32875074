package export

import (
	"bytes"
	"encoding/csv"
	"html"
	"io"
	"regexp"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/internal/masked"
	"plashet/job"
	"plashet/render/svg"
	"plashet/table"
	"plashet/words"
)

// TestSpanishWords: no word of the drawings, rows and models in Spanish is one of
// the tool's English words. The job's own words are masked.
func TestSpanishWords(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, name := range demo.Names() {
		j, faults := job.Read(masked.Job(name))
		r := design.Solve(book, j, faults...)
		in := Input{
			Input:   table.Input{Job: j, Result: r, Faults: faults, Say: words.Spanish(), Digest: "d"},
			Drawing: drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, 31), Say: words.Spanish()},
		}
		for _, what := range Names() {
			if what == Job || what == Schema || what == Workbook {
				continue
			}
			files, err := made(in, what)
			if err != nil {
				t.Fatal(what, err)
			}
			for _, f := range files {
				for _, said := range lettersOf(t, f) {
					seen++
					if left := words.EnglishWordsIn(said); len(left) > 0 {
						t.Errorf("%s, %s: %q has the English %q", name, f.Name, said, left)
					}
				}
			}
		}
	}
	if seen < 3000 {
		t.Fatalf("only %d texts were seen", seen)
	}
}

var (
	svgText = regexp.MustCompile(`>([^<>]+)<`)
	glbText = regexp.MustCompile(`"title":"([^"]*)"`)         // names and kinds are for programs
	code    = regexp.MustCompile(`^[a-z]+([.-][a-z0-9-]+)+$`) // of a finding or an item, for programs
)

// lettersOf gives what a file says to a person.
func lettersOf(t *testing.T, f File) []string {
	t.Helper()
	var out []string
	find := func(r *regexp.Regexp) {
		for _, m := range r.FindAllSubmatch(f.Data, -1) {
			out = append(out, html.UnescapeString(string(m[1])))
		}
	}
	switch {
	case strings.HasSuffix(f.Name, ".svg"):
		find(svgText)
	case strings.HasSuffix(f.Name, ".glb"):
		find(glbText)
	case strings.HasSuffix(f.Name, ".dxf"):
		lines := strings.Split(strings.ReplaceAll(string(f.Data), "\r", ""), "\n")
		kind := ""
		for i := 0; i+1 < len(lines); i += 2 {
			switch strings.TrimSpace(lines[i]) {
			case "0":
				kind = lines[i+1]
			case "1":
				if kind == "TEXT" {
					out = append(out, lines[i+1])
				}
			}
		}
	case strings.HasSuffix(f.Name, ".csv"):
		rows, err := csv.NewReader(bytes.NewReader(f.Data)).ReadAll()
		if err != nil {
			t.Fatal(f.Name, err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if !code.MatchString(cell) {
					out = append(out, cell)
				}
			}
		}
	}
	return out
}

// made is Make but for the pixels, which take long and say what the lines say.
func made(in Input, what string) ([]File, error) {
	if what != Drawings {
		return Make(in, what)
	}
	var out []File
	for _, s := range drawing.Sheets(in.Drawing) {
		f, err := one(s.Name+".svg", typeSVG, func(w io.Writer) error { return svg.Write(w, &s) })
		if err != nil {
			return nil, err
		}
		out = append(out, f...)
	}
	return out, nil
}
