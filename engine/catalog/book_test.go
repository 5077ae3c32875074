package catalog

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plashet/engine/trace"
)

// book is built once for the tests of this package; it never changes.
var book = func() *Book {
	b, err := New()
	if err != nil {
		panic(err)
	}
	return b
}()

// fails tells that an error is of this package and has a code; it gives the
// names the error calls near.
func fails(t *testing.T, err error, code string) (near string) {
	t.Helper()
	var e *Error
	if !errors.As(err, &e) {
		t.Fatalf("error %v, want code %s", err, code)
	}
	if e.Code != code {
		t.Fatalf("error %v, want code %s", e, code)
	}
	if e.Message().Code != code || !strings.Contains(e.Error(), code) {
		t.Errorf("message and text of %v do not carry the code", e)
	}
	return e.Arg("near")
}

// TestReferenceTables guards the two copies of the reference tables against
// drifting apart: the catalogue reads its own, package checks its own.
func TestReferenceTables(t *testing.T) {
	for _, name := range []string{"pipe", "sockets", "laying", "threads", "losses", "solventweld", "practice"} {
		ours, err := os.ReadFile(filepath.Join("data", name+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		theirs, err := os.ReadFile(filepath.Join("..", "..", "checks", "reference", name+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		if name != "practice" {
			if string(ours) != string(theirs) {
				t.Errorf("data/%s.csv is not the reference table", name)
			}
			continue
		}
		lines := strings.Split(string(theirs), "\n") // practice holds some of the topics only
		for _, line := range strings.Split(string(ours), "\n") {
			if !slices.Contains(lines, line) {
				t.Errorf("data/practice.csv has a row that the reference lacks: %s", line)
			}
		}
	}
}

func TestRows(t *testing.T) {
	bases := []trace.Basis{trace.BasisPublished, trace.BasisLibrary, trace.BasisPractice, trace.BasisMemory}
	for _, name := range book.Tables() {
		rows := 0
		for r := range book.Rows(name) {
			rows++
			if r.Get("source") == "" || !slices.Contains(bases, trace.Basis(r.Get("basis"))) {
				t.Errorf("table %s, row %d: source %q, basis %q", name, rows, r.Get("source"), r.Get("basis"))
			}
			cells := 0
			for column, text := range r.Cells() {
				cells++
				if r.Get(column) != text {
					t.Errorf("table %s, row %d, column %s: %q and %q", name, rows, column, r.Get(column), text)
				}
			}
			if cells < 6 || r.Get("no such column") != "" {
				t.Errorf("table %s, row %d has %d cells", name, rows, cells)
			}
			if rows == 1 {
				for range r.Cells() { // a reader may stop early
					break
				}
			}
		}
		if rows == 0 {
			t.Errorf("table %s has no rows", name)
		}
	}
	for range book.Rows("no such table") {
		t.Error("an unknown table has rows")
	}
	for range book.Rows("pipe") {
		break
	}
	if (Row{}).Get("source") != "" {
		t.Error("an empty row has a source")
	}
}

// TestOwnTablesSayWhereFrom: what this package adds to the reference was read
// in no document, and must not say that it was.
func TestOwnTablesSayWhereFrom(t *testing.T) {
	for _, name := range []string{"kinds", "hose", "fittings", "laying_metric", "losses_more", "limits"} {
		for r := range book.Rows(name) {
			if b := trace.Basis(r.Get("basis")); b == trace.BasisPublished || b == trace.BasisLibrary {
				t.Errorf("table %s calls %q %s: its values were not read in print", name, r.Get("source"), b)
			}
		}
	}
}

// TestUnchanged shows that what the book hands out can be changed without
// changing the book.
func TestUnchanged(t *testing.T) {
	book.Kinds()[0] = "x"
	book.Tables()[0] = "x"
	book.FittingNames()[0] = "x"
	book.LossNames()[0] = "x"
	book.PipeSizes("PVC Sch 40")[0] = "x"
	book.FittingSizes("Sch 40")[0] = "x"
	book.Expansions()[0].PerKelvin = 1
	book.Rules("rock")[0].Name = "x"
	f, err := book.Fitting("elbow 90", "2", nil)
	if err != nil {
		t.Fatal(err)
	}
	f.Ends[0].Size = "x"
	ls, err := book.Losses("elbow 90", "2")
	if err != nil {
		t.Fatal(err)
	}
	ls[0].K1 = -1
	again, _ := book.Fitting("elbow 90", "2", nil)
	l, _ := book.Loss("elbow 90", "2")
	if book.Kinds()[0] != "PVC Sch 40" || book.Tables()[0] != "kinds" || book.FittingNames()[0] != "elbow 90" ||
		book.LossNames()[0] != "elbow 90" || book.PipeSizes("PVC Sch 40")[0] != "1/2" || book.FittingSizes("Sch 40")[0] != "1/2" ||
		book.Expansions()[0].PerKelvin == 1 || book.Rules("rock")[0].Name == "x" || again.Ends[0].Size != "2" || l.K1 != 800 {
		t.Error("the book was changed through what it handed out")
	}
}

func TestLoaderFaults(t *testing.T) {
	row := func(column, cell string) Row {
		return Row{&table{name: "t", columns: []string{column, "source", "basis"}}, []string{cell, "s", "memory"}}
	}
	for _, c := range []struct {
		name string
		read func(*loader)
	}{
		{"number", func(l *loader) { l.num(row("n", "two"), "n") }},
		{"size", func(l *loader) { l.size(row("n", "large"), "n") }},
		{"span", func(l *loader) { l.span(row("n", "2 to many"), "n") }},
		{"duration", func(l *loader) { l.duration(row("n", "2 weeks"), "n") }},
		{"pressure", func(l *loader) { l.topPressure(row("pressure_psi", "high")) }},
		{"range", func(l *loader) { l.timed(row("size_nps_in", "all"), 0) }},
		{"basis", func(l *loader) {
			l.source(Row{&table{name: "t", columns: []string{"source", "basis"}}, []string{"s", "hearsay"}})
		}},
		{"source", func(l *loader) {
			l.source(Row{&table{name: "t", columns: []string{"source", "basis"}}, []string{"", "memory"}})
		}},
	} {
		l := &loader{}
		if c.read(l); l.err == nil {
			t.Errorf("a wrong %s is read without a fault", c.name)
		}
	}
	if _, err := readTable("no such table"); err == nil {
		t.Error("a table that is not there is read")
	}
}

func BenchmarkNew(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := New(); err != nil {
			b.Fatal(err)
		}
	}
}
