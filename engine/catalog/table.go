package catalog

import (
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"iter"
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

//go:embed data/*.csv
var data embed.FS

// tableNames lists the tables in the order they are shown.
var tableNames = [...]string{
	"kinds", "pipe", "hose", "fittings", "sockets", "laying", "laying_metric", "threads",
	"losses", "losses_more", "solventweld", "practice", "limits",
}

// table is one embedded table, as written.
type table struct {
	name    string
	columns []string
	rows    [][]string
}

// Row is one row of a table, to be shown. It cannot be changed.
type Row struct {
	t     *table
	cells []string
}

// Get gives the text in a column, or nothing when there is no such column.
func (r Row) Get(column string) string {
	if r.t == nil {
		return ""
	}
	if i := slices.Index(r.t.columns, column); i >= 0 {
		return r.cells[i]
	}
	return ""
}

// Cells gives each column's name and text in order.
func (r Row) Cells() iter.Seq2[string, string] {
	return func(yield func(string, string) bool) {
		for i := range r.cells {
			if !yield(r.t.columns[i], r.cells[i]) {
				return
			}
		}
	}
}

// Tables names the tables of the book.
func (b *Book) Tables() []string { return slices.Clone(tableNames[:]) }

// Rows gives the rows of a table as they stand in the data, source and basis
// included. An unknown table has no rows.
func (b *Book) Rows(name string) iter.Seq[Row] {
	t := b.tables[name]
	return func(yield func(Row) bool) {
		if t == nil {
			return
		}
		for _, cells := range t.rows {
			if !yield(Row{t, cells}) {
				return
			}
		}
	}
}

func readTable(name string) (*table, error) {
	text, err := data.ReadFile("data/" + name + ".csv")
	if err != nil {
		return nil, fmt.Errorf("table %s: %w", name, err)
	}
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("table %s: %w", name, err)
	}
	if len(lines) < 2 {
		return nil, fmt.Errorf("table %s: no rows", name)
	}
	return &table{name: name, columns: lines[0], rows: lines[1:]}, nil
}

// loader reads cells and keeps the first fault, so that the code that fills
// the book reads as a list of columns.
type loader struct{ err error }

func (l *loader) fail(r Row, column, why string) {
	if l.err == nil {
		l.err = fmt.Errorf("table %s, column %s: %q %s", r.t.name, column, r.Get(column), why)
	}
}

// num reads a number; an empty cell is a fault.
func (l *loader) num(r Row, column string) float64 {
	v, err := strconv.ParseFloat(r.Get(column), 64)
	if err != nil {
		l.fail(r, column, "is no number")
	}
	return v
}

// opt reads a number; an empty cell is 0.
func (l *loader) opt(r Row, column string) float64 {
	if r.Get(column) == "" {
		return 0
	}
	return l.num(r, column)
}

func (l *loader) inches(r Row, column string) unit.Length {
	return unit.Length(l.opt(r, column)) * unit.Inch
}

func (l *loader) millimetres(r Row, column string) unit.Length {
	return unit.Length(l.opt(r, column)) * unit.Millimetre
}

func (l *loader) feet(r Row, column string) unit.Length {
	return unit.Length(l.num(r, column)) * unit.Foot
}

// size reads a size that names its system by its form: inches, or d50.
func (l *loader) size(r Row, column string) size {
	s, ok := parseSize(r.Get(column))
	if !ok {
		l.fail(r, column, "is no size")
	}
	if s.sys == bare {
		s.sys = inch
	}
	return s
}

// span reads "2 to 4", "about 105", "hand-tight plus 1 to 2" or one number.
func (l *loader) span(r Row, column string) (low, high float64) {
	text := strings.TrimPrefix(strings.TrimPrefix(r.Get(column), "about "), "hand-tight plus ")
	a, c, two := strings.Cut(text, " to ")
	low, ok := mixedNumber(a)
	high = low
	if two {
		var okHigh bool
		high, okHigh = mixedNumber(c)
		ok = ok && okHigh
	}
	if !ok {
		l.fail(r, column, "is no range")
	}
	return low, high
}

// duration reads "15 min", "1.5 h" or "8 d".
func (l *loader) duration(r Row, column string) unit.Duration {
	return l.parsed(r, column, r.Get(column))
}

func (l *loader) parsed(r Row, column, text string) unit.Duration {
	num, name, _ := strings.Cut(text, " ")
	v, ok := mixedNumber(num)
	per := map[string]unit.Duration{"s": unit.Second, "min": unit.Minute, "h": unit.Hour, "d": unit.Day}[name]
	if !ok || per == 0 {
		l.fail(r, column, "is no duration")
	}
	return unit.Duration(v) * per
}

// source reads the columns that every table has.
func (l *loader) source(r Row) trace.Source {
	s := trace.Source{Title: r.Get("source"), Basis: trace.Basis(r.Get("basis")), Note: r.Get("note")}
	switch s.Basis {
	case trace.BasisPublished, trace.BasisLibrary, trace.BasisPractice, trace.BasisMemory:
	default:
		l.fail(r, "basis", "is no basis")
	}
	if s.Title == "" {
		l.fail(r, "source", "is empty")
	}
	return s
}
