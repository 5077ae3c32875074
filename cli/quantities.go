package cli

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
	"plashet/job"
)

func quantitiesCommand() *cobra.Command {
	return &cobra.Command{
		Use: "quantities JOB", Short: "Show every quantity of a job as typed and as read",
		Long: `Prints each quantity of a job: its path, what was typed, what it was read as, its source
and tolerance. A number without a unit took the unit of its field: it is marked, because
that is where a slip hides. Count the marks at the end before you trust the answer.`,
		Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := read(cmd, args[0])
			if err != nil {
				return err
			}
			s := unit.US
			if j != nil {
				s = j.System()
				if err := listQuantities(cmd.OutOrStdout(), j); err != nil {
					return ours{err}
				}
			}
			if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, s); err != nil {
				return err
			}
			if len(faults) > 0 {
				return errJob
			}
			return nil
		},
	}
}

func listQuantities(w io.Writer, j *job.Job) error {
	var table strings.Builder
	t := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	count, bare := 0, 0
	for path, q := range j.Quantities() {
		count++
		if q.Bare {
			bare++
		}
		if _, err := fmt.Fprintf(t, "%s\t%s\t%s\t%s\n", path, oneLine(q.Text), asRead(j, q), strings.Join(remarks(j.System(), q), "; ")); err != nil {
			return err
		}
	}
	if err := t.Flush(); err != nil {
		return err
	}
	for line := range strings.Lines(table.String()) { // empty cells leave blanks behind
		if _, err := fmt.Fprintln(w, strings.TrimRight(line, " \n")); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintf(w, "%d quantities, %d of them bare numbers\n", count, bare)
	return err
}

// asRead says what a quantity was read as.
func asRead(j *job.Job, q job.Quantity) string {
	switch {
	case q.Money && j.Site.Currency == "":
		return "money, no currency given"
	case q.Money && q.Amount.Currency == "":
		return "money, not read"
	case q.Money:
		return q.Amount.FormatExact(j.Style())
	case q.Point != "" && q.Read.SI == 0:
		return "level of " + oneLine(q.Point)
	case q.Point != "":
		return "level of " + oneLine(q.Point) + " and " + q.Read.Format(j.System())
	}
	return q.Read.Format(j.System())
}

func remarks(s unit.System, q job.Quantity) []string {
	var out []string
	if q.Bare {
		out = append(out, "BARE, taken as "+q.Unit)
	}
	if q.DensityKgM3 != 0 {
		out = append(out, fmt.Sprintf("pressure turned into head of water of %g kg/m3", q.DensityKgM3))
	}
	if q.Source != job.OriginNone {
		out = append(out, string(q.Source))
	}
	if q.Tolerance != "" {
		out = append(out, "+/- "+oneLine(q.Tolerance)+", read as "+q.Plus.Format(s))
	}
	if q.Note != "" {
		out = append(out, oneLine(q.Note))
	}
	return out
}

// oneLine keeps a text in its cell.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
