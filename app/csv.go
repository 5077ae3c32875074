package app

import (
	"encoding/base64"
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/shelf"
)

// Rows that a page of an import shows.
const (
	previewRows = 6
	mostShown   = 60 // changes
	mostFaults  = 200
)

// importing is what differs between the import of prices and that of pumps.
type importing struct {
	At     string // "/prices"
	Title  string
	Lead   string
	fields []shelf.Field
	// look works out what the rows would do; take does it.
	look func(r *http.Request, t *shelf.Table, m shelf.Mapping) (outcome, error)
	take func(r *http.Request, t *shelf.Table, m shelf.Mapping, name string) error
}

// outcome is what the rows of a file would do.
type outcome struct {
	New, Changed, Same, Bad int // Bad: rows that cannot be taken
	Told                    []string
	Faults                  []rowFault
	MoreTold, MoreFaults    int
}

type rowFault struct {
	Line int
	Text string
}

// csvBody is the page of an import.
type csvBody struct {
	At, Lead string
	Error    string // why the file could not be read; "" with no file yet too
	Data     string // the file, as it goes round with the form
	File     string
	Rows     int
	Letters  string
	Comma    string
	Titles   []string
	Preview  []shelf.Row
	Columns  []csvColumn
	Rest     int // of Columns: those without a column and not needed
	Titled   bool
	Decimal  string // point or comma
	System   string
	Currency string
	Priced   bool // the currency matters
	Measured bool // the units of bare numbers matter
	Out      outcome
}

// csvColumn is one of our fields and the column chosen for it.
type csvColumn struct {
	Name, Title, Example string
	Must, Guess, Unit    bool
	Column               int // -1 none
	In                   string
}

// importForm asks for the file.
func (a *app) importForm(of func() importing) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		x := of()
		a.show(w, r, http.StatusOK, "csv", x.Title, nil, csvBody{At: x.At, Lead: x.Lead})
		return nil
	}
}

// importCSV takes a file in three steps: the file; which column is which, with
// what it would do; and doing it, once the person says so.
func (a *app) importCSV(of func() importing) func(w http.ResponseWriter, r *http.Request) error {
	return func(w http.ResponseWriter, r *http.Request) error {
		x := of()
		data, name, first, err := a.csvFile(r)
		if err != nil {
			return err
		}
		t, f := shelf.ReadTable(data)
		if f != nil {
			a.show(w, r, http.StatusUnprocessableEntity, "csv", x.Title, nil, csvBody{At: x.At, Lead: x.Lead, Error: a.rowText(*f)})
			return nil
		}
		guess := shelf.Guess(t, x.fields)
		if guess.Currency == "" {
			guess.Currency = a.usualCurrency(r)
		}
		m := guess
		if !first {
			m = mapped(r, x.fields, t)
		}
		if r.PostFormValue("do") == "take" && !first {
			if err := x.take(r, t, m, name); err != nil {
				return err
			}
			see(w, r, x.At)
			return nil
		}
		out, err := x.look(r, t, m)
		if err != nil {
			return err
		}
		a.show(w, r, http.StatusOK, "csv", x.Title, nil, a.csvPage(x, t, m, guess, out, data, name))
		return nil
	}
}

// csvFile gives the file of a form: uploaded, or as it goes round with the form.
func (a *app) csvFile(r *http.Request) (data []byte, name string, first bool, err error) {
	if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/") {
		data, err = a.upload(r, "file")
		if err == nil {
			if _, h, e := r.FormFile("file"); e == nil {
				name = fileName(h.Filename)
			}
		}
		return data, name, true, err
	}
	if err := a.form(r); err != nil {
		return nil, "", false, err
	}
	data, e := base64.RawURLEncoding.DecodeString(r.PostFormValue("data"))
	if e != nil || len(data) == 0 {
		return nil, "", false, a.refuse(http.StatusUnprocessableEntity, "app.error.nofile")
	}
	return data, fileName(r.PostFormValue("name")), false, nil
}

// mapped reads the choices of a form.
func mapped(r *http.Request, fields []shelf.Field, t *shelf.Table) shelf.Mapping {
	m := shelf.Mapping{
		Column: map[string]int{}, Unit: map[string]string{}, Titled: r.PostFormValue("titled") != "", Comma: r.PostFormValue("decimal") == "comma",
		Currency: strings.ToUpper(strings.TrimSpace(r.PostFormValue("currency"))),
	}
	if r.PostFormValue("system") == "metric" {
		m.System = unit.Metric
	}
	for _, f := range fields {
		if c, err := strconv.Atoi(r.PostFormValue("column-" + f.Name)); err == nil && c >= 0 && c < t.Columns() {
			m.Column[f.Name] = c
		}
		if in := strings.TrimSpace(r.PostFormValue("unit-" + f.Name)); in != "" && len(in) < 20 {
			m.Unit[f.Name] = in
		}
	}
	return m
}

func (a *app) csvPage(x importing, t *shelf.Table, m, guess shelf.Mapping, out outcome, data []byte, name string) csvBody {
	u := *t
	u.Titled = m.Titled
	b := csvBody{
		At: x.At, Lead: x.Lead, Data: base64.RawURLEncoding.EncodeToString(data), File: name, Rows: len(u.Body()), Titles: u.Titles(), Titled: m.Titled,
		Letters: a.say("app.csv.letters." + string(t.Letters)), Comma: a.say("app.csv.comma." + map[rune]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar"}[t.Comma]),
		Decimal: "point", System: "us", Currency: m.Currency, Out: out,
	}
	if m.Comma {
		b.Decimal = "comma"
	}
	if m.System.Is(unit.Metric) {
		b.System = "metric"
	}
	b.Preview = u.Body()[:min(previewRows, len(u.Body()))]
	for i, row := range b.Preview { // rows cut short look whole
		for len(row.Cells) < len(b.Titles) {
			row.Cells = append(row.Cells, "")
		}
		b.Preview[i] = row
	}
	b.Preview = slices.Clone(b.Preview)
	for _, f := range x.fields {
		c := csvColumn{Name: f.Name, Title: a.Language.Word("app.shelf.field." + f.Name), Example: f.Example, Must: f.Must, Unit: f.Kind != unit.KindNone, Column: -1, In: m.Unit[f.Name]}
		if i, ok := m.Column[f.Name]; ok {
			c.Column = i
			g, guessed := guess.Column[f.Name]
			c.Guess = guessed && g == i
		}
		if f.Name == shelf.FieldPrice {
			b.Priced = c.Column >= 0
		}
		b.Measured = b.Measured || c.Unit
		if !c.Must && c.Column < 0 {
			b.Rest++
		}
		b.Columns = append(b.Columns, c)
	}
	return b
}

// rows words the faults of rows.
func (a *app) rows(o *outcome, faults []trace.Fault) {
	bad := map[int]bool{}
	for _, f := range faults {
		bad[f.Line] = true
		if len(o.Faults) < mostFaults {
			o.Faults = append(o.Faults, rowFault{f.Line, a.rowText(f)})
		} else {
			o.MoreFaults++
		}
	}
	delete(bad, 0)
	o.Bad = len(bad)
}

func (o *outcome) tell(text string) {
	if len(o.Told) < mostShown {
		o.Told = append(o.Told, text)
	} else {
		o.MoreTold++
	}
}

// errNothing tells that no row could be taken.
var errNothing = errors.New("no row can be taken")

// nothing words it.
func (a *app) nothing(err error) error {
	if errors.Is(err, errNothing) {
		return a.refuse(http.StatusUnprocessableEntity, "app.csv.nothing")
	}
	return a.stale(err)
}
