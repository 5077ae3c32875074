package shelf

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plashet/demo"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

func tableOf(t testing.TB, text string) *Table {
	t.Helper()
	x, f := ReadTable([]byte(text))
	if f != nil {
		t.Fatalf("%q: %v", text, f)
	}
	return x
}

// told lists faults as line, code and column.
func told(faults []trace.Fault) string {
	var out []string
	for _, f := range faults {
		column := ""
		for _, a := range f.Args {
			if a.Name == "column" {
				column = " " + a.Text
			}
		}
		out = append(out, fmt.Sprintf("%d %s%s", f.Line, f.Code, column))
	}
	return strings.Join(out, "; ")
}

// What a file is written in is found out, and said.
func TestTableIsReadAsWritten(t *testing.T) {
	want := "[Artikel Preis] [Bogen, 50 mm 3,15] [Rohr ½ 1,90]"
	for name, c := range map[string]struct {
		data    string
		comma   rune
		letters Letters
	}{
		"semicolons":     {"Artikel;Preis\r\nBogen, 50 mm;3,15\r\n\r\nRohr ½;1,90\r\n", ';', UTF8},
		"mark at start":  {"\ufeffArtikel;Preis\nBogen, 50 mm;3,15\nRohr ½;1,90", ';', UTF8},
		"tabs":           {"Artikel\tPreis\nBogen, 50 mm\t3,15\nRohr ½\t1,90\n", '\t', UTF8},
		"commas, quoted": {"Artikel,Preis\n\"Bogen, 50 mm\",\"3,15\"\nRohr ½,\"1,90\"\n", ',', UTF8},
		"bars":           {"Artikel|Preis\nBogen, 50 mm|3,15\nRohr ½|1,90\n", '|', UTF8},
		"Windows-1252":   {"Artikel;Preis\nBogen, 50 mm;3,15\nRohr \xbd;1,90\n", ';', Western},
		"CR alone":       {"Artikel;Preis\rBogen, 50 mm;3,15\rRohr ½;1,90\r", ';', UTF8},
		"UTF-16":         {"\xff\xfe" + wide16("Artikel\tPreis\nBogen, 50 mm\t3,15\nRohr ½\t1,90\n"), '\t', UTF16},
	} {
		x := tableOf(t, c.data)
		var rows []string
		for _, r := range x.Rows {
			rows = append(rows, fmt.Sprint(r.Cells))
		}
		if got := strings.Join(rows, " "); got != want || x.Comma != c.comma || x.Letters != c.letters || !x.Titled {
			t.Errorf("%s: %s, %q, %s, titled %v", name, got, x.Comma, x.Letters, x.Titled)
		}
	}
}

func wide16(s string) string {
	var b strings.Builder
	for _, r := range s {
		b.WriteByte(byte(r))
		b.WriteByte(byte(r >> 8))
	}
	return b.String()
}

// What is no such file is refused with a code of its own.
func TestWrongFiles(t *testing.T) {
	for name, c := range map[string]struct{ data, code string }{
		"nothing":       {"", FaultEmpty},
		"blank":         {" \n;;;\n\n", FaultEmpty},
		"spreadsheet":   {"PK\x03\x04rest", FaultBinary},
		"picture":       {"\x89PNG\r\n", FaultBinary},
		"bytes":         {"a,b\n\x00\x01\x02,3", FaultBinary},
		"too large":     {strings.Repeat("a,b\n", MostBytes/4+1), FaultLarge},
		"too many rows": {strings.Repeat("a,b\n", MostRows+2), FaultRows},
		"too wide":      {strings.Repeat("a,", MostColumns+1) + "\n", FaultColumns},
		"long cell":     {strings.Repeat("a", MostCell+1) + ",b\n", FaultCell},
		"cut off":       {"a,b\n\"c,d\ne,f\n", FaultQuote},
	} {
		if _, f := ReadTable([]byte(c.data)); f == nil || f.Code != c.code {
			t.Errorf("%s: %v, want %s", name, f, c.code)
		}
	}
}

// An inch mark is no quotation.
func TestInchMarks(t *testing.T) {
	x := tableOf(t, "Item,Price\nelbow 2\",3.15\n\"union, 2\"\"\",14.20\n")
	if got := fmt.Sprint(x.Rows[1].Cells, x.Rows[2].Cells); got != `[elbow 2" 3.15] [union, 2" 14.20]` {
		t.Error(got)
	}
}

// Decimals are read by what they are said to have, and refused where they
// cannot be that.
func TestNumber(t *testing.T) {
	for _, c := range []struct {
		cell  string
		comma bool
		want  string
		ok    bool
	}{
		{"3.15", false, "3.15", true},
		{"3,15", true, "3.15", true},
		{"1,234.50", false, "1234.50", true},
		{"1.234,50", true, "1234.50", true},
		{"1 234,50", true, "1234.50", true},
		{"1\u00a0234.5", false, "1234.5", true},
		{"12.000", true, "12000", true},
		{"12.000", false, "12.0000", true},
		{"1,410 m", true, "1.4100 m", true},
		{"3,15", false, "3,15", false},
		{"3.15", true, "3.15", false},
		{"€ 1.234,50", true, "€ 1234.50", true},
		{",5", true, ".5", true},
		{"4' 7-1/2\"", false, "4' 7-1/2\"", true},
		{"10 1/2", false, "10 1/2", true},
		{"1,234,567", false, "1234567", true},
		{"54 gpm", false, "54 gpm", true},
	} {
		if got, ok := number(c.cell, c.comma); got != c.want || ok != c.ok {
			t.Errorf("%q, comma %v: %q %v", c.cell, c.comma, got, ok)
		}
	}
}

func TestGuessPrices(t *testing.T) {
	x := tableOf(t, "Description;Unit price (EUR);Sold by;Department;Colour\nelbow 90, 50;3,15;each;pipe;grey\nunion, 50;14,20;box of 10;pipe;grey\n")
	m := Guess(x, PriceFields())
	if !m.Comma || m.Currency != "EUR" || m.Column[FieldItem] != 0 || m.Column[FieldPrice] != 1 || m.Column[FieldUnit] != 2 || m.Column[FieldCounter] != 3 || len(m.Column) != 4 {
		t.Errorf("%+v", m)
	}
	rows, faults := ReadPrices(x, m)
	if len(faults) > 0 || len(rows) != 2 || rows[1].Price != (Price{Item: "union, 50", Amount: "14.20", Currency: "EUR", Unit: "box of 10", Counter: "pipe"}) {
		t.Errorf("%+v %s", rows, told(faults))
	}
}

// Rows that cannot be taken are told by line and column; the others are taken.
func TestPriceRowsWithFaults(t *testing.T) {
	x := tableOf(t, `Item,Price,Currency,Unit,Date,Order
"elbow 90, 2",3.15,USD,each,2026-03-01,1
,4.00,USD,each,,
"union, 2",,USD,each,,
"union, 2",about 14,USD,each,,
"union, 2",-14,USD,each,,
"union, 2","14,5",USD,each,,
"union, 2",14.20,$,each,,
"union, 2",14.20,USD,bushel,,
"union, 2",14.20,USD,each,3/1/26,
"union, 2",14.20,USD,each,,first
"Elbow 90,  2",3.20,USD,each,,
"cement",12.00,USD,pint,,
"PVC Sch 40 2",1.90,USD,ft,,
`)
	rows, faults := ReadPrices(x, Guess(x, PriceFields()))
	want := "3 shelf.row.missing Item; 4 shelf.row.missing Price; 5 shelf.row.money Price; 6 shelf.row.negative Price; 7 shelf.row.comma Price; 8 shelf.row.currency Currency; " +
		"9 shelf.row.unit Unit; 10 shelf.row.date Date; 11 shelf.row.order Order; 12 shelf.row.twice"
	if got := told(faults); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(rows) != 3 || rows[0].Line != 2 || rows[2].Price.Unit != "ft" {
		t.Errorf("%+v", rows)
	}
	if _, faults := ReadPrices(x, Mapping{Titled: true}); told(faults) != "0 shelf.row.unmapped; 0 shelf.row.unmapped" {
		t.Error(told(faults))
	}
}

// A list takes rows: what is there is changed, what is new stands behind, and
// what a row does not say stays.
func TestTakeRows(t *testing.T) {
	list := NewPrices()
	list.List = []Price{{Item: "elbow 90, 2", Amount: "3.15", Currency: "USD", Date: "2025-03-01", Note: "by the bin", Aside: true}, {Item: "cement", Amount: "12.00", Currency: "USD", Unit: "pint"}}
	next, m, f := list.Take([]PriceRow{
		{2, Price{Item: "Elbow 90, 2", Amount: "3.40", Currency: "USD", Unit: "each", Date: "2026-03-01"}},
		{3, Price{Item: "cement", Amount: "12.00", Currency: "USD", Unit: "pint"}},
		{4, Price{Item: "cement", Amount: "20.00", Currency: "USD", Unit: "qt"}},
	})
	if f != nil || len(m.New) != 1 || len(m.Changed) != 1 || m.Same != 1 || len(next.List) != 3 {
		t.Fatalf("%+v %v", m, f)
	}
	if got := next.List[0]; got != (Price{Item: "elbow 90, 2", Amount: "3.40", Currency: "USD", Date: "2026-03-01", Note: "by the bin"}) {
		t.Errorf("%+v", got)
	}
	if list.List[0].Amount != "3.15" || !list.List[0].Aside {
		t.Error("the list that was given was changed")
	}
}

// No cell of a file that goes out begins like a formula, and each comes back as
// it was.
func TestFormulasAreGuarded(t *testing.T) {
	for _, cell := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "'=1", "''=1", "'x", "'", "", "x=1", "＝1", "12"} {
		out := guarded(cell)
		if out != "" && strings.ContainsAny(out[:1], "=+-@\t\r") || unguarded(out) != cell {
			t.Errorf("%q goes out as %q and comes back as %q", cell, out, unguarded(out))
		}
	}
	list := NewPrices()
	list.List = []Price{{Item: `=HYPERLINK("x")`, Amount: "3.15", Currency: "USD", Note: "-2 for ten", Counter: "@counter"}}
	out := string(PricesCSV(list))
	for _, cell := range strings.FieldsFunc(strings.TrimPrefix(out, "\ufeff"), func(r rune) bool { return r == ',' || r == '\n' }) {
		if strings.ContainsAny(strings.Trim(cell, `"`+"\r")[:min(1, len(strings.Trim(cell, `"`+"\r")))], "=+-@") {
			t.Errorf("the cell %q would be run", cell)
		}
	}
	if !strings.Contains(out, ",3.15,") {
		t.Error("the number is no number any more")
	}
}

// What goes out comes back the same.
func TestPricesThereAndBack(t *testing.T) {
	text := rapid.StringMatching(`['=+@a-z"½,;-][ a-zA-Z0-9'"=+@½,;.-]{0,30}[a-z"=']`)
	rapid.Check(t, func(t *rapid.T) {
		list := NewPrices()
		for i := range rapid.IntRange(1, 6).Draw(t, "count") {
			currency := rapid.SampledFrom([]string{"USD", "EUR", "JPY", "INR"}).Draw(t, "currency")
			amount := fmt.Sprintf("%d.%0*d", rapid.IntRange(0, 99999).Draw(t, "whole"), rapid.IntRange(1, 4).Draw(t, "decimals"), rapid.IntRange(1, 9).Draw(t, "part"))
			amount, _ = number(amount, false)
			p, faults := CheckPrice(Price{
				Item: text.Draw(t, "item") + fmt.Sprint(i), Amount: amount, Currency: currency, Unit: rapid.SampledFrom([]string{"", "each", "box of 25", "10 ft", "pint"}).Draw(t, "unit"),
				Date: rapid.SampledFrom([]string{"", "2026-03-01"}).Draw(t, "date"), Counter: rapid.SampledFrom([]string{"", "@pipe", "-x"}).Draw(t, "counter"),
				Order: rapid.IntRange(0, 999).Draw(t, "order"), Note: rapid.OneOf(rapid.Just(""), text).Draw(t, "note"),
			}, 0, nil)
			if len(faults) > 0 {
				t.Fatalf("%+v: %s", p, told(faults))
			}
			list.List = append(list.List, p)
		}
		x, f := ReadTable(PricesCSV(list))
		if f != nil {
			t.Fatal(f)
		}
		m := Guess(x, PriceFields())
		m.Comma = false
		rows, faults := ReadPrices(x, m)
		if len(faults) > 0 || len(rows) != len(list.List) {
			t.Fatalf("%d of %d; %s\n%s", len(rows), len(list.List), told(faults), PricesCSV(list))
		}
		for i := range rows {
			if rows[i].Price != list.List[i] {
				t.Fatalf("%+v came back as %+v", list.List[i], rows[i].Price)
			}
		}
		data, err := list.Encode()
		back, f := DecodePrices(data)
		if err != nil || f != nil || !slices.Equal(back.List, list.List) {
			t.Fatal(err, f)
		}
	})
}

// The invented shelf goes out as CSV and comes back, pump by pump and value by
// value; only what a row has no place for stays behind.
func TestPumpsThereAndBack(t *testing.T) {
	whole := &job.Job{Units: "us"}
	whole.Site.Currency = "USD"
	pumps, _, faults := job.ReadShelf(demo.Shelf(), whole)
	if len(faults) > 0 || len(pumps) < 10 {
		t.Fatal(len(pumps), faults)
	}
	whole.Pumps = pumps
	var shelf []*job.Job
	for i, p := range pumps {
		j, f := NewPump(p.Name, "us", "USD")
		if f != nil {
			t.Fatal(f)
		}
		if left, f := CopyPump(j, "/pumps/0", whole, fmt.Sprintf("/pumps/%d", i)); f != nil || left {
			t.Fatal(p.Name, f, left)
		}
		shelf = append(shelf, j)
	}
	out := PumpsCSV(shelf)
	x, f := ReadTable(out)
	if f != nil {
		t.Fatal(f)
	}
	rows, faults := ReadPumps(x, Guess(x, PumpFields()))
	if len(faults) > 0 || len(rows) != len(shelf) {
		t.Fatalf("%d of %d: %s\n%s", len(rows), len(shelf), told(faults), out[:600])
	}
	for i, r := range rows {
		for _, d := range Differs(shelf[i], "/pumps/0", r.Job, "/pumps/0") {
			if !strings.HasPrefix(d.Path, "attitudes/") && !strings.HasPrefix(d.Path, "speeds/") && !strings.HasPrefix(d.Path, "npsh/") {
				t.Errorf("%s: %+v", pumps[i].Name, d)
			}
		}
	}
	records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(out), "\ufeff"))).ReadAll()
	if err != nil || records[0][1] != "Flow (gpm)" || records[1][1] != "0" || records[2][2] != "11.5" {
		t.Error(err, records[0], records[1])
	}
}

// Columns with units in their titles, decimals with a comma, and pumps that
// cannot be taken whole.
func TestPumpRowsWithFaults(t *testing.T) {
	x := tableOf(t, "Pump;Q (l/h);H (m);Power;Price EUR\nweir 8;0;4,2;90 W;189,00\nweir 8;4000;3,1;;\nweir 8;8.000;0;;189,00\n"+
		"weir 9;0;5;;\nweir 9;4000;;;\nweir 10;0;5;;12\nweir 10;4000;3;;13\nweir 11;0;2;;\nweir 11;1000;9;;\n;1;1;;\nweir 12;deep;1;;\n")
	rows, faults := ReadPumps(x, Guess(x, PumpFields()))
	want := "6 shelf.row.pair; 8 shelf.row.differs Price EUR; 9 hydro.curve.rise; 11 shelf.row.missing Pump; 12 job.read.number"
	if got := told(faults); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(rows) != 1 {
		t.Fatalf("%+v", rows)
	}
	p := rows[0].Job.Pumps[0]
	// 8000 l/h is 8/3600 m³/s by definition.
	if got := float64(p.Curve[2].Flow.SI); got < 0.002222 || got > 0.0022223 || float64(p.Curve[0].Head.SI) != 4.2 || p.Price.Text != "189.00" || rows[0].Job.Site.Currency != "EUR" {
		t.Errorf("%+v", p)
	}
}

// A copy into a job of other units and another currency means the same, and
// what belongs to the place stays.
func TestCopyPump(t *testing.T) {
	from, f := NewPump("weir 8", "metric", "EUR")
	if f != nil {
		t.Fatal(f)
	}
	set := func(j *job.Job, path, text string) {
		t.Helper()
		if f := j.Set(path, text); f != nil {
			t.Fatal(path, f)
		}
	}
	set(from, "/pumps/0/curve/0/flow", "0")
	set(from, "/pumps/0/curve/0/head", "4.2")
	set(from, "/pumps/0/curve/0/head/source", "sheet")
	set(from, "/pumps/0/curve/1/flow", "8000")
	set(from, "/pumps/0/curve/1/head", "0")
	set(from, "/pumps/0/price", "189")
	to := &job.Job{Units: "us"}
	set(to, "/site/currency", "USD")
	set(to, "/pumps/0/name", "P1")
	set(to, "/pumps/0/wear", "8 %")
	set(to, "/pumps/0/boxFlow", "100 gpm")
	left, f := CopyPump(to, "/pumps/0", from, "/pumps/0")
	p := to.Pumps[0]
	if f != nil || !left || p.Name != "P1" || p.Wear.Text != "8 %" || p.BoxFlow.Text != "" || p.Price.Text != "" || float64(p.Curve[0].Head.SI) != 4.2 || string(p.Curve[0].Head.Source) != "sheet" {
		t.Errorf("%v %v %+v", left, f, p)
	}
	set(to, "/pumps/0/curve/0/head", "4.2 m")
	d := Differs(to, "/pumps/0", from, "/pumps/0")
	if len(d) != 1 || d[0].Path != "price" || d[0].After != "189 EUR" {
		t.Errorf("%+v", d)
	}
	if unit.US != to.System() {
		t.Error("the units changed")
	}
}

// FuzzCSV: no file panics, what is read stays within its limits, and what is
// taken goes out and comes back.
func FuzzCSV(f *testing.F) {
	for _, s := range []string{
		"Item,Price,Currency\n\"elbow 90, 2\",3.15,USD\n", "a;b\n1,5;\"x", "\xff\xfea\x00", "\ufeffName\tFlow (gpm)\tHead (ft)\nA\t0\t12\nA\t5\t3\n", "'=x,'+1\n", "\"\"\"\n",
		"Name,Flow,Head,Price USD\nB,0 gpm,4 ft,1.410\nB,9,0,\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		x, fault := ReadTable(data)
		if fault != nil {
			return
		}
		m := Guess(x, PriceFields())
		m.Currency = "USD"
		rows, _ := ReadPrices(x, m)
		list, _, full := NewPrices().Take(rows)
		if full != nil || len(list.List) != len(rows) {
			t.Fatal("rows were lost")
		}
		again, fault := ReadTable(PricesCSV(list))
		if fault != nil {
			t.Fatal(fault)
		}
		m = Guess(again, PriceFields())
		m.Comma = false
		back, faults := ReadPrices(again, m)
		if len(back) != len(rows) {
			t.Fatalf("%d of %d: %s", len(back), len(rows), told(faults))
		}
		for i := range rows {
			if back[i].Price != rows[i].Price {
				t.Fatalf("%+v came back as %+v", rows[i].Price, back[i].Price)
			}
		}
		ReadPumps(x, Guess(x, PumpFields()))
	})
}
