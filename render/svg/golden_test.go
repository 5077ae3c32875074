package svg

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
)

var update = flag.Bool("update", false, "write the pictures anew")

// shown is the example whose pictures stand in docs/img; those of the others
// stand in testdata. A person looks at them after every -update.
const shown = "hillside-cascade"

func sheets(t *testing.T, name string) []drawing.Sheet {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(demo.Job(name))
	if len(faults) > 0 {
		t.Fatalf("%s: %v", name, faults)
	}
	r := design.Solve(book, j)
	out := drawing.Sheets(drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, 121)})
	if len(out) < 10 {
		t.Fatalf("%s gives %d sheets", name, len(out))
	}
	return out
}

func TestPictures(t *testing.T) {
	for _, name := range demo.Names() {
		folder := filepath.Join("testdata", name)
		if name == shown {
			folder = filepath.Join("..", "..", "docs", "img")
		}
		for _, s := range sheets(t, name) {
			if name != shown && strings.HasPrefix(s.Name, "course-") && s.Name != "course-stop-open" {
				continue // they are drawn alike
			}
			var b bytes.Buffer
			if err := Write(&b, &s); err != nil {
				t.Fatalf("%s %s: %v", name, s.Name, err)
			}
			path := filepath.Join(folder, s.Name+".svg")
			if *update {
				if err := os.MkdirAll(folder, 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(b.Bytes(), want) {
				t.Errorf("%s is not what is drawn now; look at the pictures after go test ./render/svg -update", path)
			}
		}
	}
}
