package export

import (
	"bytes"
	gocsv "encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"plashet/demo"
	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/internal/reader"
	"plashet/job"
	"plashet/render/csv"
	"plashet/render/xlsx"
	"plashet/table"
	"plashet/words"
)

// inputOf designs a job.
func inputOf(t *testing.T, data []byte) Input {
	t.Helper()
	book, err := catalog.New()
	if err != nil {
		t.Fatal(err)
	}
	j, faults := job.Read(data)
	if j == nil {
		t.Fatal(faults)
	}
	r := design.Solve(book, j, faults...)
	return Input{
		Input:   table.Input{Job: j, Result: r, Faults: faults, Say: words.English(), Digest: strings.Repeat("0", 64)},
		Drawing: drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, 31)},
		Bytes:   data, Workbook: xlsx.Write,
	}
}

// hostile are texts that a spreadsheet program would run, or that break rows.
var hostile = []string{
	"=1+1", "=HYPERLINK(\"http://x\",\"y\")", "+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "\n=1", " =1", "＝1", "'=1",
	"a,b", "a\"b", "two\nlines", "½ ″ Łódź 池", "<script>", strings.Repeat("long ", 900),
}

func hostileTable() table.Table {
	t := table.Table{Name: "hostile", Title: "Hostile", Head: []string{"text", "=head", "number"}}
	for i, s := range hostile {
		t.Rows = append(t.Rows, []table.Cell{{Text: s}, {Text: s}, {Number: -1.25 * float64(i), Is: true}})
	}
	return t
}

// flat makes one kind of line break of all: reading may turn one into the other
// (XML 1.0, 2.11; RFC 4180 ends lines with both).
var flat = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// read is what the other readers found.
type read struct {
	CSV      map[string][][]string `json:"csv"`
	XLSX     map[string][][][2]any `json:"xlsx"`
	Formulas []string              `json:"formulas"`
	Quoted   []string              `json:"quoted"`
}

// Every cell of every table is found again by three readers: Go's encoding/csv,
// Python's csv and openpyxl.
func TestTablesAreReadAgain(t *testing.T) {
	names := []string{}
	tables := map[string]table.Table{}
	dir := t.TempDir()
	put := func(name string, data []byte) {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, data, 0o644); err != nil {
			t.Fatal(err)
		}
		names = append(names, path)
	}
	for _, job := range demo.Names() {
		in := inputOf(t, demo.Job(job))
		for _, name := range table.Names() {
			x, _ := table.Make(in.Input, name)
			if len(x.Rows) == 0 {
				continue
			}
			files, err := Make(in, name)
			if err != nil {
				t.Fatal(err)
			}
			tables[job+"-"+name] = x
			put(job+"-"+name+".csv", files[0].Data)
		}
	}
	tables["hostile"] = hostileTable()
	var b bytes.Buffer
	x := tables["hostile"]
	if err := csv.Write(&b, &x); err != nil {
		t.Fatal(err)
	}
	put("hostile.csv", b.Bytes())
	var list []table.Table
	for name, x := range tables {
		x.Title = strings.NewReplacer("hillside", "h", "courtyard", "c", "start-and-stop", "times").Replace(name)
		list = append(list, x)
	}
	b.Reset()
	if err := xlsx.Write(&b, list); err != nil {
		t.Fatal(err)
	}
	put("all.xlsx", b.Bytes())

	for _, path := range names {
		if strings.HasSuffix(path, ".csv") {
			data, _ := os.ReadFile(path)
			rows, err := gocsv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), csv.Mark))).ReadAll()
			if err != nil {
				t.Fatal(path, err)
			}
			same(t, "encoding/csv", tables[strings.TrimSuffix(filepath.Base(path), ".csv")], rows)
		}
	}
	var got read
	if err := json.Unmarshal(reader.Python(t, "openpyxl", "testdata/tables.py", names...), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Formulas) > 0 {
		t.Errorf("openpyxl finds formulas at %v", got.Formulas)
	}
	for name, x := range tables {
		same(t, "Python's csv", x, got.CSV[name+".csv"])
	}
	for _, x := range list {
		sameBook(t, x, got.XLSX[x.Title])
	}
	for _, s := range hostile {
		if marked := contains(got.Quoted, s); table.Risky(s) && !marked && !strings.ContainsAny(s, "\r\t\n") {
			t.Errorf("%q is not marked as a text in the spreadsheet", s)
		}
	}
	t.Logf("%d tables read by three readers", len(tables))
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// same holds what a reader of CSV found against the table.
func same(t *testing.T, who string, want table.Table, rows [][]string) {
	t.Helper()
	if len(rows) != len(want.Rows)+1 {
		t.Fatalf("%s finds %d rows in %s, want %d", who, len(rows), want.Name, len(want.Rows)+1)
	}
	for r, row := range rows[1:] {
		if len(row) != len(want.Head) {
			t.Fatalf("%s: row %d of %s has %d cells, want %d", who, r, want.Name, len(row), len(want.Head))
		}
		for c, got := range row {
			w := want.Rows[r][c]
			if w.Is {
				if x, err := strconv.ParseFloat(got, 64); err != nil || x != w.Number {
					t.Errorf("%s: %s row %d, %q: %q, want %v", who, want.Name, r, want.Head[c], got, w.Number)
				}
				continue
			}
			if table.Risky(got) {
				t.Errorf("%s: %s row %d: %q would run as a formula", who, want.Name, r, got)
			}
			meant := flat.Replace(w.Text)
			if table.Risky(w.Text) {
				meant = "'" + meant
			}
			if flat.Replace(got) != meant {
				t.Errorf("%s: %s row %d, %q: %q, want %q", who, want.Name, r, want.Head[c], got, meant)
			}
		}
	}
}

// sameBook holds what a reader of spreadsheets found against the table.
func sameBook(t *testing.T, want table.Table, rows [][][2]any) {
	t.Helper()
	if len(rows) != len(want.Rows)+1 {
		t.Fatalf("openpyxl finds %d rows in %s, want %d", len(rows), want.Title, len(want.Rows)+1)
	}
	for r, row := range rows[1:] {
		for c, w := range want.Rows[r] {
			kind, value := row[c][0], row[c][1]
			switch {
			case w.Is:
				if x, ok := value.(float64); kind != "n" || !ok || math.Abs(x-w.Number) > 1e-12*math.Abs(w.Number) {
					t.Errorf("%s row %d, %q: %v %v, want the number %v", want.Title, r, want.Head[c], kind, value, w.Number)
				}
			case w.Text == "":
				if value != nil {
					t.Errorf("%s row %d, %q: %v, want an empty cell", want.Title, r, want.Head[c], value)
				}
			default:
				if s, ok := value.(string); kind == "n" || kind == "f" || !ok || flat.Replace(s) != flat.Replace(w.Text) {
					t.Errorf("%s row %d, %q: %v %q, want the text %q", want.Title, r, want.Head[c], kind, value, w.Text)
				}
			}
		}
	}
}
