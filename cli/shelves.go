package cli

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
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
	for _, c := range f.columns {
		name, title, ok := strings.Cut(c, "=")
		if err := knownField(name, fields); err != nil || !ok {
			return m, cmpErr(err, fmt.Errorf("--column %q has no = between the field and the column", c))
		}
		if title == "" {
			delete(m.Column, name)
			continue
		}
		i := slices.IndexFunc(t.Titles(), func(s string) bool { return strings.EqualFold(s, title) })
		if n, err := strconv.Atoi(title); i < 0 && err == nil && n >= 1 && n <= t.Columns() {
			i = n - 1
		}
		if i < 0 {
			return m, fmt.Errorf("there is no column %q; there are: %s", title, strings.Join(t.Titles(), ", "))
		}
		m.Column[name] = i
	}
	for _, u := range f.units {
		name, in, ok := strings.Cut(u, "=")
		if err := knownField(name, fields); err != nil || !ok {
			return m, cmpErr(err, fmt.Errorf("--unit %q has no = between the field and the unit", u))
		}
		m.Unit[name] = in
	}
	return m, nil
}

func cmpErr(first, second error) error {
	if first != nil {
		return first
	}
	return second
}

func knownField(name string, fields []shelf.Field) error {
	var names []string
	for _, f := range fields {
		if f.Name == name {
			return nil
		}
		names = append(names, f.Name)
	}
	if n := near(name, names); n != "" {
		return fmt.Errorf("there is no field %q; near it: %s", name, n)
	}
	return fmt.Errorf("there is no field %q; there are: %s", name, strings.Join(names, ", "))
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
func (f *csvFlags) ended(cmd *cobra.Command, fresh, changed, same int, faults []trace.Fault) error {
	done := "Would be taken in"
	if f.yes && fresh+changed > 0 {
		done = "Taken in"
	}
	_, _ = fmt.Fprintf(cmd.OutOrStdout(), "%s: %d new, %d changed; %d are as they were.\n", done, fresh, changed, same)
	if !f.yes && fresh+changed > 0 {
		_, _ = fmt.Fprintln(cmd.OutOrStdout(), "Nothing was changed. --yes takes them in.")
	}
	if len(faults) > 0 {
		return errJob
	}
	return nil
}

func fromFile(cmd *cobra.Command, file, rest string) store.Change {
	return store.Change{When: time.Now(), What: "From " + filepath.Base(file) + " by " + cmd.CommandPath() + rest}
}

// group makes a command that holds others.
func group(use, short string, subs ...*cobra.Command) *cobra.Command {
	c := &cobra.Command{Use: use, Short: short, Args: func(cmd *cobra.Command, args []string) error {
		if len(args) > 0 {
			return noCommand(cmd, args[0])
		}
		return nil
	}, RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() }}
	c.AddCommand(subs...)
	return c
}

// taken is a conflict with another save, in plain words.
func taken(err error) error {
	var stale *store.Stale
	if errors.As(err, &stale) {
		return errors.New("somebody else changed the shelf meanwhile; nothing of it was written: run the command again")
	}
	return blame(err)
}

const csvLong = `

Letters, separator, decimals and columns are guessed and told; the flags say otherwise. A
row that cannot be read is told with its line, column and what is expected, and the
others can be taken without it; the exit code is then 1. Nothing is changed without --yes.
The format stands in docs/shelf.md.`

func pricesCommand() *cobra.Command {
	f := csvFlags{}
	in := &cobra.Command{
		Use: "import FILE", Short: "Take prices from a CSV file onto the price shelf", Args: operands,
		Long:    "Takes prices from a CSV file, one on each row, onto the shelf that all jobs share. A price\nthat is there for the same item, unit, currency and counter is changed." + csvLong,
		Example: "  plashet prices import list.csv\n  plashet prices import list.csv --column item=Description --currency USD --yes",
		RunE:    func(cmd *cobra.Command, args []string) error { return importPrices(cmd, &f, args[0]) },
	}
	f.flags(in)
	var database string
	var to save
	out := &cobra.Command{
		Use: "export", Short: "Write the price shelf as CSV", Args: operands,
		Long:    "Writes the prices in use as CSV, which plashet prices import reads back to the same values.\nA text that a spreadsheet would take for a formula has an apostrophe before it.",
		Example: "  plashet prices export --out prices.csv",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if err := to.check(); err != nil {
				return err
			}
			s, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			list, _, err := keep.Prices(cmd.Context(), s)
			if err != nil {
				return blame(err)
			}
			return to.write(cmd, shelf.PricesCSV(list))
		},
	}
	databaseFlag(out, &database)
	to.flags(out)
	return group("prices", "The price shelf that all jobs share, from and to CSV", in, out)
}

func importPrices(cmd *cobra.Command, f *csvFlags, file string) (err error) {
	t, m, err := f.table(cmd, file, shelf.PriceFields())
	if err != nil {
		return err
	}
	s, err := openStore(cmd.Context(), f.database)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	list, rev, err := keep.Prices(cmd.Context(), s)
	if err != nil {
		return blame(err)
	}
	if m.Currency == "" && len(list.List) > 0 {
		m.Currency = list.List[0].Currency
	}
	rows, faults := shelf.ReadPrices(t, m)
	next, moves, full := list.Take(rows)
	if full != nil {
		return errors.New(words.English().Row(*full, unit.US))
	}
	for _, c := range moves.Changed {
		_, _ = fmt.Fprintf(cmd.OutOrStdout(), "changed: %s; was %s\n", c.After.Line(), c.Before.Per())
	}
	for _, p := range moves.New {
		_, _ = fmt.Fprintf(cmd.OutOrStdout(), "new: %s\n", p.Line())
	}
	rowFaults(cmd, faults)
	if f.yes && len(moves.New)+len(moves.Changed) > 0 {
		what := fmt.Sprintf(": %d new, %d changed", len(moves.New), len(moves.Changed))
		if _, err := keep.SavePrices(cmd.Context(), s, rev.Number, next, fromFile(cmd, file, what)); err != nil {
			return taken(err)
		}
	}
	return f.ended(cmd, len(moves.New), len(moves.Changed), moves.Same, faults)
}
