// Package checks compares the engine with the outside: published tables,
// worked examples and general-purpose libraries. Every row of reference/ that
// the engine covers is computed here and held against its published value; the
// list is printed to docs/checks.md by the test's -update flag. It holds no
// engineering of its own: each row calls the engine as the design does.
package checks

import (
	"embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"

	"plashet/engine/trace"
)

//go:embed reference/*.csv
var reference embed.FS

// Check is one comparison with the outside.
type Check struct {
	ID     string      // unique: the row of the reference ("C012", "E30"), or a name of our own
	Group  string      // "friction", "weir", "cutting" ...
	What   string      // what is compared, with the inputs
	Unit   string      // unit of Want and Got
	Want   float64     // the outside's value
	Got    float64     // ours
	Abs    float64     // tolerance, absolute
	Rel    float64     // tolerance, relative to Want
	Source string      // the outside by name
	Basis  trace.Basis // how the outside's value is known
	Note   string      // for rows from memory: the check that its note shows
}

// Error gives the absolute and the relative difference (NaN-safe: a NaN result
// is infinitely wrong).
func (c Check) Error() (abs, rel float64) {
	abs = math.Abs(c.Got - c.Want)
	if math.IsNaN(abs) {
		return math.Inf(1), math.Inf(1)
	}
	if c.Want == 0 {
		return abs, abs
	}
	return abs, abs / math.Abs(c.Want)
}

// OK tells whether the check holds: within Abs or within Rel of the outside's
// value, whichever is wider, as the reference's tolerance column means it.
func (c Check) OK() bool {
	abs, rel := c.Error()
	return abs <= c.Abs || rel <= c.Rel
}

// All computes every check, in a stable order.
func All() ([]Check, error) {
	var all []Check
	for _, g := range groups {
		rows, err := g()
		if err != nil {
			return nil, err
		}
		all = append(all, rows...)
	}
	return all, nil
}

// groups lists the files of this package, one function each.
var groups = []func() ([]Check, error){
	units, friction, water, pipes, tank, weirs, pumpChecks, channel, evaporation,
	suctionAndWorth, electrical, catalogChecks, geometry, layoutChecks, networks, takeoffChecks, motions, cutting,
}

// Row is one row of a reference table by column name.
type Row map[string]string

// Table reads reference/<name>.csv.
func Table(name string) ([]Row, error) {
	f, err := reference.Open("reference/" + name + ".csv")
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }() // embedded: closing cannot fail
	r := csv.NewReader(f)
	lines, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("reference %s: %w", name, err)
	}
	rows := make([]Row, 0, len(lines)-1)
	for _, l := range lines[1:] {
		row := Row{}
		for i, h := range lines[0] {
			row[h] = l[i]
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// Find gives the row of a table with this id.
func Find(rows []Row, id string) (Row, error) {
	i := slices.IndexFunc(rows, func(r Row) bool { return r["id"] == id })
	if i < 0 {
		return nil, fmt.Errorf("reference row %s not found", id)
	}
	return rows[i], nil
}

// Num reads a column as a number.
func (r Row) Num(column string) (float64, error) {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		return 0, fmt.Errorf("reference row %s, column %s: %w", r["id"], column, err)
	}
	return v, nil
}
