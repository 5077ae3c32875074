package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/shelf"
	"plashet/words"
)

// csvFlags say how a file of rows is read.
type csvFlags struct {
	database string
	columns  []string
	units    []string
	decimal  string
	currency string
	system   string
	untitled bool
	yes      bool
}

func (f *csvFlags) flags(c *cobra.Command) {
	databaseFlag(c, &f.database)
	c.Flags().StringArrayVar(&f.columns, "column", nil, "take a field from a column: `FIELD=TITLE`, or its number from 1, or FIELD= for none; again for each")
	c.Flags().StringArrayVar(&f.units, "unit", nil, "the unit of a field's bare numbers: `FIELD=UNIT`; again for each")
	c.Flags().StringVar(&f.decimal, "decimals", "", "decimals have a `mark`: point or comma; guessed when not given")
	c.Flags().StringVar(&f.currency, "currency", "", "the `code` of the currency of amounts that name none")
	c.Flags().StringVar(&f.system, "units", "us", "the `system` of numbers without any unit: us or metric")
	c.Flags().BoolVar(&f.untitled, "no-titles", false, "the first row names no columns")
	c.Flags().BoolVar(&f.yes, "yes", false, "take the rows in; without it nothing is changed")
}

// mapping is the guess with what the flags say otherwise.
func (f *csvFlags) mapping(t *shelf.Table, fields []shelf.Field) (shelf.Mapping, error) {
	if f.untitled {
		t.Titled = false
	}
	m := shelf.Guess(t, fields)
	switch f.decimal {
	case "":
	case "point", "comma":
		m.Comma = f.decimal == "comma"
	default:
		return m, fmt.Errorf("--decimals cannot be %q; there are: point, comma", f.decimal)
	}
	switch f.system {
	case "us":
	case "metric":
		m.System = unit.Metric
	default:
		return m, fmt.Errorf("--units cannot be %q; there are: us, metric", f.system)
	}
	if f.currency != "" {
		m.Currency = strings.ToUpper(f.currency)
	}
	if bad := m.Choose(t, fields, f.columns, f.units); bad != nil {
		return m, fmt.Errorf("--%s: %s", bad.Path, choiceText(*bad, fields))
	}
	return m, nil
}

// choiceText words a choice that cannot be; of a field that there is not, the
// one near it.
func choiceText(bad trace.Fault, fields []shelf.Field) string {
	if bad.Code == shelf.FaultNoField {
		var names []string
		for _, f := range fields {
			names = append(names, f.Name)
		}
		if n := near(bad.Args[0].Text, names); n != "" {
			return fmt.Sprintf("there is no field %q; near it: %s", bad.Args[0].Text, n)
		}
	}
	return words.English().Row(bad, unit.US)
}

// table reads the file and how it is meant, and tells what was guessed.
func (f *csvFlags) table(cmd *cobra.Command, file string, fields []shelf.Field) (*shelf.Table, shelf.Mapping, error) {
	data, err := load(cmd, file)
	if err != nil {
		return nil, shelf.Mapping{}, err
	}
	t, bad := shelf.ReadTable(data)
	if bad != nil {
		return nil, shelf.Mapping{}, errors.New(words.English().Row(*bad, unit.US))
	}
	m, err := f.mapping(t, fields)
	if err != nil {
		return nil, m, err
	}
	l := words.English()
	out := cmd.OutOrStdout()
	_, _ = fmt.Fprintf(out, "%s %s; %s; decimals %s.\n", l.Word("app.csv.guessed"), l.Word("app.csv.letters."+string(t.Letters)),
		l.Word("app.csv.comma."+map[rune]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar"}[t.Comma]), l.Word(map[bool]string{true: "app.csv.comma", false: "app.csv.point"}[m.Comma]))
	for _, x := range fields {
		if c, ok := m.Column[x.Name]; ok {
			in := m.Unit[x.Name]
			if in != "" {
				in = " in " + in
			} else if u := x.Kind.UnitName(m.System); u != "" { // nothing says it
				in = "; guessed: numbers without a unit are in " + u
			}
			_, _ = fmt.Fprintf(out, "  %s from “%s”%s\n", x.Name, t.Titles()[c], in)
		}
	}
	return t, m, nil
}

// rowFaults tells the rows that cannot be taken.
func rowFaults(cmd *cobra.Command, faults []trace.Fault) {
	for _, f := range faults {
		text := words.English().Row(f, unit.US)
		if f.Line > 0 {
			text = fmt.Sprintf("Row %d: %s", f.Line, text)
		}
		_, _ = fmt.Fprintln(cmd.ErrOrStderr(), text)
	}
}

// ended tells what was done, or would be; rows with faults make the exit code 1.
func (f *csvFlags) ended(cmd *cobra.Command, x taking) error {
	done, moved := "Would be taken in", x.fresh+x.changed > 0
	if f.yes && moved {
		done = "Taken in"
	}
	_, _ = fmt.Fprintf(cmd.OutOrStdout(), "%s: %d new, %d changed; %d are as they were.\n", done, x.fresh, x.changed, x.same)
	if !f.yes && moved {
		_, _ = fmt.Fprintln(cmd.OutOrStdout(), "Nothing was changed. --yes takes them in.")
	}
	if len(x.faults) > 0 {
		return errJob
	}
	return nil
}
