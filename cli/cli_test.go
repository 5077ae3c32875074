package cli

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/engine/catalog"
)

func run(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = Run(args, strings.NewReader(""), &o, &e)
	return code, o.String(), e.String()
}

// TestDemo: each example reveals its trap. The traps are those of the
// scenarios; no figure here comes from the code.
func TestDemo(t *testing.T) {
	traps := map[string][]string{
		"courtyard-rill":   {"skimmer needs", "the pump draws air", "U1, E1, V1, E2, P5, B1 and the right wall of the vault"},
		"hillside-cascade": {"“cascade” gets", "Pump L", "more over five years", "vault falls to"},
		"old-pond":         {"“fall” gets", "cord is 16.0 ft", "arrow points against the flow", "no union", "Pump O"},
	}
	for _, name := range demo.Names() {
		code, out, errs := run("demo", name, "--no-serve")
		if code != ExitDone || errs != "" {
			t.Errorf("%s: exit %d, errors %q", name, code, errs)
		}
		for _, want := range traps[name] {
			if !strings.Contains(out, want) {
				t.Errorf("%s does not tell %q", name, want)
			}
		}
	}
}

func TestWrongUse(t *testing.T) {
	if code, _, errs := run("design", "no-such-file.json"); code != ExitUsage || !strings.Contains(errs, "no-such-file.json") {
		t.Errorf("missing file: exit %d, %q", code, errs)
	}
	if code, _, errs := run("desing", "x"); code != ExitUsage || !strings.Contains(errs, "design") {
		t.Errorf("mistyped command: exit %d, %q", code, errs)
	}
	if code, _, errs := run("design", "-"); code != ExitJob || errs == "" {
		t.Errorf("empty input: exit %d, %q", code, errs)
	}
}

func TestSchema(t *testing.T) {
	if code, out, _ := run("schema"); code != ExitDone || !strings.Contains(out, "json-schema.org") {
		t.Errorf("exit %d", code)
	}
}

// broken fails every write and read.
type broken struct{}

var errBroken = errors.New("no space left")

func (broken) Write([]byte) (int, error) { return 0, errBroken }
func (broken) Read([]byte) (int, error)  { panic("a mistake of ours") }

// TestOurs: an output that cannot be written and a panic are our fault, and
// are not taken for wrong usage.
func TestOurs(t *testing.T) {
	file := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(file, demo.Job("old-pond"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"design", file},
		{"design", file, "--json"},
		{"design", file, "--figures"},
		{"check", file},
		{"schema"},
		{"demo"},
		{"tables"},
		{"tables", "pipe"},
		{"explain", file},
		{"explain", file, "pump.flow"},
		{"quantities", file},
		{"set", file, "/note", "x"},
	} {
		var e bytes.Buffer
		if code := Run(args, strings.NewReader(""), broken{}, &e); code != ExitOurs || !strings.Contains(e.String(), errBroken.Error()) {
			t.Errorf("%v into a broken output: exit %d, %q", args, code, e.String())
		}
	}
	var o, e bytes.Buffer
	if code := Run([]string{"check", "-"}, broken{}, &o, &e); code != ExitOurs || e.String() != "Something failed on our side: a mistake of ours\n" || o.Len() > 0 {
		t.Errorf("panic: exit %d, output %q, errors %q", code, o.String(), e.String())
	}
}

// TestTablesAreDescribed: every table has its line, and no line is left over.
func TestTablesAreDescribed(t *testing.T) {
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range book.Tables() {
		if holds[name] == "" {
			t.Errorf("nothing says what table %s holds", name)
		}
	}
	if len(holds) != len(book.Tables()) {
		t.Errorf("%d tables are described, there are %d", len(holds), len(book.Tables()))
	}
}

func TestNear(t *testing.T) {
	names := []string{"a", "design", "demo", "check", "pump.flow", "pump.head"}
	for typed, want := range map[string]string{
		"desing": "design", "DESIGN": "design", "chekc": "check", "pmup.flow": "pump.flow", "pump.hed": "pump.head",
		"": "", "x": "", "A": "a", "zzzzzz": "", "serve": "",
	} {
		if got := near(typed, names); got != want {
			t.Errorf("near %q: %q, want %q", typed, got, want)
		}
	}
}

// TestPainter: control characters do not reach a terminal, in whatever pieces
// they come, and a severity is coloured at the start of a line alone.
func TestPainter(t *testing.T) {
	for _, c := range []struct {
		colour bool
		pieces []string
		want   string
	}{
		{true, []string{"[stop] x\n[note] y\n[alto] z\n"}, "[\x1b[1;31mstop\x1b[0m] x\n[\x1b[36mnote\x1b[0m] y\n[\x1b[1;31malto\x1b[0m] z\n"},
		{false, []string{"[stop] x\n"}, "[stop] x\n"},
		{true, []string{"a ", "[stop]\n", "[watch]\n"}, "a [stop]\n[\x1b[33mwatch\x1b[0m]\n"},
		{true, []string{"\x1b[2J\a\u009b1m\tb\n"}, "\uFFFD[2J\uFFFD\uFFFD1m\tb\n"},
		{true, []string{"\x1b", "[2J"}, "\uFFFD[2J"},
	} {
		var b bytes.Buffer
		p := &painter{w: &b, colour: c.colour}
		for _, s := range c.pieces {
			if n, err := p.Write([]byte(s)); n != len(s) || err != nil {
				t.Errorf("wrote %d of %d: %v", n, len(s), err)
			}
		}
		if b.String() != c.want {
			t.Errorf("%q became %q, want %q", c.pieces, b.String(), c.want)
		}
	}
}

// TestReplaceLeavesNothing: a file that cannot be put in its place leaves no
// half of itself beside it. Here a folder with something in it stands there.
func TestReplaceLeavesNothing(t *testing.T) {
	root := t.TempDir()
	taken := filepath.Join(root, "job.json")
	if err := os.MkdirAll(filepath.Join(taken, "full"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := replace(taken, []byte("x")); err == nil {
		t.Error("a folder was written over")
	}
	entries, err := os.ReadDir(root)
	if err != nil || len(entries) != 1 || entries[0].Name() != "job.json" {
		t.Errorf("the folder holds %v (%v)", entries, err)
	}
}

// TestCentredPump: the hillside's trap in the vault: with pump and hole in the
// middle the pump does not lift out.
func TestCentredPump(t *testing.T) {
	name := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(name, demo.Job("hillside-cascade"), 0o600); err != nil {
		t.Fatal(err)
	}
	code, set, errs := run("set", name, "/assembly/at/y", "5-1/4", "/vault/outlet/along", "9 in")
	if code != ExitDone {
		t.Fatal(errs)
	}
	if err := os.WriteFile(name, []byte(set), 0o600); err != nil {
		t.Fatal(err)
	}
	_, out, _ := run("design", name)
	for _, want := range []string{"does not come out", "11/16\" is missing", "HELD BACK"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not told", want)
		}
	}
}
