package checks

import (
	"fmt"
	"strconv"
	"strings"

	"plashet/engine/trace"
)

// exactly is the tolerance of rows whose arithmetic leaves nothing to round.
const exactly = 1e-9

// fromRow makes the check of a row of fluids_checks.csv or examples.csv: the
// published value against ours, in the row's unit and to the row's tolerance.
// Where the table's tolerance is "exact" the published figure is a rounded
// print, and its unrounded recomputation is held against ours.
func fromRow(r Row, group string, got float64) (Check, error) {
	c := Check{ID: r["id"], Group: group, Unit: r["unit"], Got: got, Source: r["source"], Basis: trace.Basis(r["basis"]), Note: r["note"]}
	column := "value"
	c.What = r["quantity"] + ": " + r["inputs"]
	if _, isExample := r["published_answer"]; isExample {
		column = "published_answer"
		c.What = r["title"] + ": " + r["inputs"]
		if r["tolerance"] == "exact" {
			column = "recomputed"
		}
	}
	var err error
	if c.Want, err = r.Num(column); err != nil {
		return Check{}, err
	}
	c.Abs, c.Rel, err = rowTolerance(r)
	return c, err
}

// rowTolerance reads a tolerance column: "1e-7 rel", "0.1 percent", "exact",
// else a number in the row's unit.
func rowTolerance(r Row) (abs, rel float64, err error) {
	text := r["tolerance"]
	if text == "exact" {
		return 0, exactly, nil
	}
	number, kind, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return 0, 0, fmt.Errorf("reference row %s, tolerance %q: %w", r["id"], text, err)
	}
	switch kind {
	case "rel":
		return 0, v, nil
	case "percent":
		return 0, v / 100, nil
	}
	return v, 0, nil
}

// input reads one number from a row's inputs: the last "name=value".
func input(r Row, name string) (float64, error) {
	text := " " + r["inputs"]
	at := strings.LastIndex(text, " "+name+"=")
	if at < 0 {
		return 0, fmt.Errorf("reference row %s has no input %s", r["id"], name)
	}
	rest := text[at+len(name)+2:]
	end := strings.IndexFunc(rest, func(c rune) bool { return !strings.ContainsRune("0123456789.eE+-", c) })
	if end >= 0 {
		rest = rest[:end]
	}
	v, err := strconv.ParseFloat(rest, 64)
	if err != nil {
		return 0, fmt.Errorf("reference row %s, input %s: %w", r["id"], name, err)
	}
	return v, nil
}

// inputs reads several numbers from a row's inputs.
func inputs(r Row, names ...string) ([]float64, error) {
	out := make([]float64, len(names))
	for i, n := range names {
		v, err := input(r, n)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

// groupRows gives the rows of fluids_checks.csv of one group.
func groupRows(group string) ([]Row, error) {
	rows, err := Table("fluids_checks")
	if err != nil {
		return nil, err
	}
	var out []Row
	for _, r := range rows {
		if r["group"] == group {
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("fluids_checks has no group %s", group)
	}
	return out, nil
}

// worked is one worked example and what we get for it.
type worked struct {
	id  string
	got float64
	err error
}

// fromExamples makes the checks of rows of examples.csv.
func fromExamples(group string, list []worked) ([]Check, error) {
	rows, err := Table("examples")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, w := range list {
		if w.err != nil {
			return nil, fmt.Errorf("example %s: %w", w.id, w.err)
		}
		r, err := Find(rows, w.id)
		if err != nil {
			return nil, err
		}
		c, err := fromRow(r, group, w.got)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// given turns a value with its error into the two last fields of worked.
func given[Q ~float64](id string, perUnit Q) func(Q, error) worked {
	return func(v Q, err error) worked { return worked{id, float64(v / perUnit), err} }
}
