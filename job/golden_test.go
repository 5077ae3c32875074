package job

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

var update = flag.Bool("update", false, "write the recorded texts again")

// files reads testdata/<folder>/*.json; a test that finds none fails.
func files(t testing.TB, folder string) map[string][]byte {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("testdata", folder, "*.json"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no files in testdata/%s: %v", folder, err)
	}
	all := make(map[string][]byte, len(paths))
	for _, p := range paths {
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		all[filepath.Base(p)] = data
	}
	return all
}

// golden holds a text against the recorded one.
func golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is not what is recorded; after reading the difference, go test ./job -update\n%s", path, firstDifference(string(want), got))
	}
}

func firstDifference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range max(len(w), len(g)) {
		a, b := "(end)", "(end)"
		if i < len(w) {
			a = w[i]
		}
		if i < len(g) {
			b = g[i]
		}
		if a != b {
			return fmt.Sprintf("line %d\n  recorded %s\n  now      %s", i+1, a, b)
		}
	}
	return ""
}

// say writes a fault as a reader gets it, with the sentence of the English
// catalogue. An argument that the sentence names and the fault lacks is an
// error.
func say(t testing.TB, f trace.Fault, s unit.System) string {
	t.Helper()
	text, ok := sentences(t)[f.Code]
	if !ok {
		t.Errorf("no sentence for %s", f.Code)
	}
	pairs := make([]string, 0, 2*len(f.Args))
	for _, a := range f.Args {
		shown := a.Text
		if a.Value != (unit.Value{}) {
			shown = a.Value.Format(s)
		}
		pairs = append(pairs, "{"+a.Name+"}", shown)
	}
	full := strings.NewReplacer(pairs...).Replace(text)
	for _, a := range placeholders(text) {
		if !strings.Contains(strings.Join(pairs, "\n"), "{"+a+"}") {
			t.Errorf("%s: the sentence names %q, which the fault lacks: %v", f.Code, a, f.Args)
		}
	}
	return fmt.Sprintf("line %d  %s  [%s]\n    %s\n", f.Line, f.Path, f.Code, full)
}

func placeholders(text string) []string {
	var names []string
	for {
		_, after, ok := strings.Cut(text, "{")
		if !ok {
			return names
		}
		name, rest, ok := strings.Cut(after, "}")
		if !ok {
			return names
		}
		names, text = append(names, name), rest
	}
}

// TestDamaged holds what a reader is told about each damaged file.
func TestDamaged(t *testing.T) {
	for name, data := range files(t, "damaged") {
		t.Run(name, func(t *testing.T) {
			j, faults := Read(data)
			if len(faults) == 0 {
				t.Fatal("no fault found")
			}
			s := unit.US
			if j != nil {
				s = j.System()
			}
			var b strings.Builder
			for i, f := range faults {
				b.WriteString(say(t, f, s))
				if f.Line < 1 || f.Line > 1+strings.Count(string(data), "\n") {
					t.Errorf("fault %d has line %d, which the file has not", i, f.Line)
				}
				if i > 0 && f.Line < faults[i-1].Line {
					t.Errorf("fault %d on line %d stands behind one on line %d", i, f.Line, faults[i-1].Line)
				}
			}
			golden(t, filepath.Join("testdata", "damaged", strings.TrimSuffix(name, ".json")+".txt"), b.String())
		})
	}
}
