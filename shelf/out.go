package shelf

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/unit"
	"plashet/job"
)

// PricesCSV writes a list as CSV (RFC 4180) that reads back to the same values:
// titles, one row for each price, what is put aside left out. Numbers stand as
// numbers, with a decimal point; a text that a spreadsheet would take for a
// formula goes out with an apostrophe before it.
func PricesCSV(p *Prices) []byte {
	rows := [][]string{{"Item", "Price", "Currency", "Unit", "Date", "Counter", "Order", "Note"}}
	for _, x := range p.List {
		if x.Aside {
			continue
		}
		order := ""
		if x.Order != 0 {
			order = strconv.Itoa(x.Order)
		}
		rows = append(rows, []string{guarded(x.Item), x.Amount, x.Currency, guarded(x.Unit), x.Date, guarded(x.Counter), order, guarded(x.Note)})
	}
	return written(rows)
}

// written makes the bytes of rows: with a mark at the start by which a
// spreadsheet knows the letters for UTF-8, and lines that end as RFC 4180 says.
func written(rows [][]string) []byte {
	var b bytes.Buffer
	b.WriteString("\ufeff")
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	for _, r := range rows {
		_ = w.Write(r) // a buffer takes all
	}
	w.Flush()
	return b.Bytes()
}

// PumpsCSV writes pumps as CSV that reads back to the same values: one row for
// each point of a curve, what a pump has once in its first row. A column whose
// quantities all have one unit has it in its title and bare numbers below; any
// other has each with its own. What a row has no place for (the ways to stand,
// further speeds, NPSH) is left out: a job file keeps that.
func PumpsCSV(pumps []*job.Job) []byte {
	var cells []map[string]string // by field, one for each row
	for _, j := range pumps {
		if len(j.Pumps) > 0 {
			cells = append(cells, pumpCells(j)...)
		}
	}
	var columns []Field
	for _, f := range pumpFields {
		if f.Must || slices.ContainsFunc(cells, func(m map[string]string) bool { return m[f.Name] != "" }) {
			columns = append(columns, f)
		}
	}
	rows := [][]string{nil}
	for _, f := range columns {
		title := titles[f.Name]
		if in := shared(cells, f); in != "" {
			title += " (" + in + ")"
			for _, m := range cells {
				m[f.Name] = strings.TrimSuffix(m[f.Name], " "+in)
			}
		}
		rows[0] = append(rows[0], title)
	}
	for _, m := range cells {
		var row []string
		for _, f := range columns {
			row = append(row, guarded(m[f.Name]))
		}
		rows = append(rows, row)
	}
	return written(rows)
}

// titles of the columns: each is one that Guess knows.
var titles = map[string]string{
	FieldName: "Name", pointFlow: "Flow", pointHead: "Head", pointWatts: "Watts at the point", "watts": "Pump watts", "boxFlow": "Box flow", "maxHead": "Max head",
	"volts": "Volts", "amps": "Amps", "port/size": "Port size", "port/thread": "Port thread", "minWater": "Min water", "minFlow": "Min flow", "bestFlow": "Best flow",
	"motorWatts": "Motor watts", "runUp": "Run up", "solids": "Solids", "cord": "Cord", "weight": "Weight", FieldPrice: "Price", FieldCurrency: "Currency",
	"continuous": "Continuous", "note": "Note",
}

// pumpCells gives the rows of a pump.
func pumpCells(j *job.Job) []map[string]string {
	const at = "/pumps/0"
	name := j.Pumps[0].Name
	out := []map[string]string{{}}
	for _, x := range items(j, at) {
		field, row := x.path, 0
		if rest, in := strings.CutPrefix(x.path, "curve/"); in {
			number, end, _ := strings.Cut(rest, "/")
			row = index(number)
			field = "curve/" + end
		}
		for len(out) <= row {
			out = append(out, map[string]string{})
		}
		out[row][field] = x.text
	}
	if out[0][FieldPrice] != "" {
		out[0][FieldCurrency] = j.Site.Currency
	}
	for _, m := range out {
		m[FieldName] = name
	}
	return out
}

// shared is the unit that all quantities of a column have behind a plain number;
// "" where they do not.
func shared(cells []map[string]string, f Field) string {
	in := ""
	for _, m := range cells {
		text := m[f.Name]
		if text == "" {
			continue
		}
		number, u, ok := strings.Cut(text, " ")
		if f.Kind == unit.KindNone || !ok || strings.Trim(number, "0123456789.") != "" || strings.ContainsAny(u, " 0123456789()") || in != "" && u != in {
			return ""
		}
		in = u
	}
	if in != "" && !fitsUnit(in, f.Kind) {
		return ""
	}
	return in
}
