package cli

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/catalog"
)

// holds says what stands in each table of the catalogue.
var holds = map[string]string{
	"kinds":         "kinds of pipe and hose: standard, roughness, Hazen-Williams C",
	"pipe":          "outside diameter, wall and bore of rigid and flexible pipe",
	"hose":          "bore of hose",
	"fittings":      "fittings: ends, turn, how they may stand",
	"sockets":       "depth and diameters of solvent sockets",
	"laying":        "laying lengths of inch fittings",
	"laying_metric": "laying lengths of metric fittings",
	"threads":       "tapered and parallel pipe threads",
	"losses":        "loss coefficients of fittings",
	"losses_more":   "loss coefficients of fittings, from further sources",
	"solventweld":   "fit, set and cure of cemented joints, cement, make-up of threads",
	"practice":      "rules of the trade: falls, pipe, liner, rock, soil",
	"limits":        "ranges outside which a formula is not used unflagged; how long a joint is held",
}

func tablesCommand() *cobra.Command {
	return &cobra.Command{
		Use: "tables [NAME] [WORD]...", Short: "Show the tables behind the figures, with source and basis",
		Long: `Lists the tables of the catalogue, or prints the rows of one, each with its source and
basis: published (read in the document named), library (computed by a named library or
formula), practice (common practice, no source), memory (to be checked before it is
relied on). Words behind the name keep the rows in which each of them stands as a word.
Column names end in the unit of their figures: od_in is in inches, od_mm in millimetres.`,
		Example: `  plashet tables
  plashet tables pipe "Sch 40" 2
  plashet tables losses "90 elbow"`,
		Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			book, err := catalog.New()
			if err != nil {
				return ours{err}
			}
			if len(args) == 0 {
				return listTables(cmd.OutOrStdout(), book)
			}
			return printTable(cmd.OutOrStdout(), book, args[0], args[1:])
		},
	}
}

func listTables(w io.Writer, book *catalog.Book) error {
	for _, name := range book.Tables() {
		n := 0
		for range book.Rows(name) {
			n++
		}
		if _, err := fmt.Fprintf(w, "%-14s %4d rows  %s\n", name, n, holds[name]); err != nil {
			return ours{err}
		}
	}
	return nil
}

func printTable(w io.Writer, book *catalog.Book, name string, words []string) error {
	known, found := false, false
	for row := range book.Rows(name) {
		known = true
		if !matches(row, words) {
			continue
		}
		found = true
		if err := printRow(w, row); err != nil {
			return ours{err}
		}
	}
	switch names := book.Tables(); {
	case !known && near(name, names) != "":
		return fmt.Errorf("there is no table %q; near it: plashet tables %s", name, near(name, names))
	case !known:
		return fmt.Errorf("there is no table %q; there are: %s", name, strings.Join(names, ", "))
	case !found:
		return fmt.Errorf("table %s has no row with all of: %s", name, strings.Join(words, ", "))
	}
	return nil
}

// Columns that tell where a row comes from.
const (
	columnSource = "source"
	columnBasis  = "basis"
	columnNote   = "note"
)

func printRow(w io.Writer, row catalog.Row) error {
	var cells []string
	for column, text := range row.Cells() {
		if text != "" && column != columnSource && column != columnBasis && column != columnNote {
			cells = append(cells, column+" "+text)
		}
	}
	said := strings.Join(cells, "; ") + "\n    by " + row.Get(columnSource) + " (" + row.Get(columnBasis) + ")\n"
	if note := row.Get(columnNote); note != "" {
		said += "    note: " + note + "\n"
	}
	_, err := io.WriteString(w, said)
	return err
}

// matches tells whether each of the words stands as a word in a cell: 2 is
// not in 1/2 nor in 2.375.
func matches(row catalog.Row, words []string) bool {
	for _, word := range words {
		found := false
		for column, text := range row.Cells() {
			if column != columnSource && column != columnNote {
				found = found || strings.Contains(spaced(text), spaced(word))
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// spaced puts a blank round every word.
func spaced(s string) string {
	return " " + strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return strings.ContainsRune(" ,;:()", r) }), " ") + " "
}
