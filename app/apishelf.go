package app

import (
	"net/http"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/shelf"
)

// apiImported is what the rows of a file did to a shelf, or would do.
type apiImported struct {
	Taken   bool         `json:"taken" doc:"the rows were taken in; false where that was not asked for, and where there is nothing to take"`
	New     int          `json:"new" doc:"rows for what was not on the shelf"`
	Changed int          `json:"changed" doc:"rows that change what is"`
	Same    int          `json:"same" doc:"rows that say what stands there already"`
	Bad     int          `json:"bad" doc:"rows that cannot be read; the others are taken without them"`
	Told    []string     `json:"told" doc:"what changes, in words; the first of many"`
	Faults  []apiBadRow  `json:"faults" doc:"what is wrong with the rows that cannot be read; the first of many"`
	Columns []apiColumns `json:"columns" doc:"which column each field was taken from"`
}

type apiBadRow struct {
	Line int    `json:"line" doc:"in the file, from 1; 0 for the whole of it"`
	Text string `json:"text" doc:"what is wrong, in words"`
}

type apiColumns struct {
	Field  string `json:"field" doc:"name of the field"`
	Column int    `json:"column" doc:"number of the column, from 1"`
	Unit   string `json:"unit,omitempty" doc:"what its bare numbers were taken in; absent where that is the usual unit, or none"`
}

// rowProblem tells a fault of a file, of a price, or of what is said of columns.
func (a *app) rowProblem(f trace.Fault) error {
	x := Problem{Status: http.StatusUnprocessableEntity, Code: f.Code, Detail: a.rowText(f), Where: f.Path}
	for _, arg := range f.Args {
		switch arg.Name {
		case "expected":
			x.Expected = arg.Text
		case "example":
			x.Example = arg.Text
		}
	}
	return x
}

// apiImport takes the rows of a CSV file onto a shelf, as the command import does:
// letters, separator, columns and units are guessed where they are not said, and
// told, and nothing is changed without yes.
func (a *app) apiImport(of func() importing) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		x, q := of(), r.URL.Query()
		if _, err := a.asker(r); err != nil {
			return err
		}
		data, err := a.sent(r)
		if err != nil {
			return err
		}
		t, f := shelf.ReadTable(data)
		if f != nil {
			return a.rowProblem(*f)
		}
		if q.Has("titles") {
			t.Titled = q.Get("titles") == "true"
		}
		m := shelf.Guess(t, x.fields)
		if c := strings.ToUpper(strings.TrimSpace(q.Get("currency"))); c != "" {
			m.Currency = c
		}
		if m.Currency == "" {
			m.Currency = a.usualCurrency(r)
		}
		if q.Get("units") == "metric" {
			m.System = unit.Metric
		}
		if d := q.Get("decimals"); d != "" {
			m.Comma = d == "comma"
		}
		if f := m.Choose(t, x.fields, q["column"], q["unit"]); f != nil {
			return a.rowProblem(*f)
		}
		o, err := x.look(r, t, m)
		if err != nil {
			return err
		}
		out := apiImported{New: o.New, Changed: o.Changed, Same: o.Same, Bad: o.Bad, Told: append([]string{}, o.Told...), Faults: []apiBadRow{}, Columns: []apiColumns{}}
		for _, f := range o.Faults {
			out.Faults = append(out.Faults, apiBadRow(f))
		}
		for _, f := range x.fields {
			if c, ok := m.Column[f.Name]; ok {
				out.Columns = append(out.Columns, apiColumns{f.Name, c + 1, m.Unit[f.Name]})
			}
		}
		if q.Get("yes") == "true" && o.New+o.Changed > 0 {
			name := "CSV"
			if q.Get("file") != "" {
				name = fileName(q.Get("file"))
			}
			if err := x.take(r, t, m, name); err != nil {
				return err
			}
			out.Taken = true
		}
		return sendJSON(w, http.StatusOK, out)
	}
}
