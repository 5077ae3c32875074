package shelf

import (
	"slices"
	"strconv"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Where a choice was made: the path of its fault.
const (
	ChoiceColumn = "column"
	ChoiceUnit   = "unit"
)

// Choose sets in a mapping what is said otherwise than it stands there. Of
// columns: FIELD=TITLE, with the column's number from 1 for its title too, or
// FIELD= for none. Of the units of bare numbers: FIELD=UNIT, or FIELD= for the
// usual one. Of several for one field the last counts. The fault is of the first
// that cannot be, with ChoiceColumn or ChoiceUnit as its path; the mapping may
// have been changed by then.
func (m *Mapping) Choose(t *Table, fields []Field, columns, units []string) *trace.Fault {
	for _, c := range columns {
		f, title, bad := chosen(c, fields, ChoiceColumn)
		if bad != nil {
			return bad
		}
		if title == "" {
			delete(m.Column, f.Name)
			continue
		}
		titles := t.Titles()
		i := slices.IndexFunc(titles, func(s string) bool { return strings.EqualFold(s, title) })
		if n, err := strconv.Atoi(title); i < 0 && err == nil && n >= 1 && n <= t.Columns() {
			i = n - 1
		}
		if i < 0 {
			return choice(FaultNoColumn, ChoiceColumn, "found", short(title), "expected", strings.Join(titles, ", "))
		}
		m.Column[f.Name] = i
	}
	for _, u := range units {
		f, in, bad := chosen(u, fields, ChoiceUnit)
		switch {
		case bad != nil:
			return bad
		case in == "":
			delete(m.Unit, f.Name)
			continue
		case f.Kind == unit.KindNone:
			return choice(FaultUnitless, ChoiceUnit, "field", f.Name)
		case !fitsUnit(in, f.Kind):
			return choice(FaultNoUnit, ChoiceUnit, "found", short(in), "field", f.Name, "example", f.Example)
		}
		m.Unit[f.Name] = in
	}
	return nil
}

// chosen parts a choice into its field and what is chosen for it.
func chosen(text string, fields []Field, where string) (f Field, what string, bad *trace.Fault) {
	name, what, ok := strings.Cut(text, "=")
	if !ok {
		return f, "", choice(FaultChoice, where, "found", short(text), "example", map[string]string{ChoiceColumn: "note=3", ChoiceUnit: "curve/flow=gpm"}[where])
	}
	var names []string
	for _, f := range fields {
		if f.Name == name {
			return f, strings.TrimSpace(what), nil
		}
		names = append(names, f.Name)
	}
	return f, "", choice(FaultNoField, where, "found", short(name), "expected", strings.Join(names, ", "))
}

func choice(code, where string, pairs ...string) *trace.Fault {
	f := fault(code, 0, pairs...)
	f.Path = where
	return &f
}
