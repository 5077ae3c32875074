package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
	"plashet/job"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/words"
)

func pumpsCommand() *cobra.Command {
	f := csvFlags{}
	in := &cobra.Command{
		Use: "import FILE", Short: "Take pumps from a CSV file onto the pump shelf", Args: operands,
		Long: "Takes pumps from a CSV file onto the shelf that all jobs share. Rows of one name are one\n" +
			"pump; each may hold a point of its curve. A pump that is there by that name is changed and\n" +
			"keeps what the rows do not say; one with a fault in any row is not taken at all." + csvLong,
		Example: "  plashet pumps import pumps.csv\n  plashet pumps import pumps.csv --unit curve/flow=l/h --unit curve/head=m --yes",
		RunE:    func(cmd *cobra.Command, args []string) error { return importPumps(cmd, &f, args[0]) },
	}
	f.flags(in)
	var database string
	var to save
	out := &cobra.Command{
		Use: "export", Short: "Write the pump shelf as CSV", Args: operands,
		Long: "Writes the pumps of the shelf as CSV, one row for each point of a curve, which plashet\n" +
			"pumps import reads back to the same values. Ways to stand, further speeds and NPSH have no\nplace in a row: a job file carries them.",
		Example: "  plashet pumps export --out pumps.csv",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if err := to.check(); err != nil {
				return err
			}
			s, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			list, unread, _, err := keep.Pumps(cmd.Context(), s, "", false, shelf.MostRows)
			if err != nil {
				return blame(err)
			}
			var jobs []*job.Job
			for _, p := range list {
				jobs = append(jobs, p.Job)
			}
			leftOut(cmd, unread)
			return to.write(cmd, shelf.PumpsCSV(jobs))
		},
	}
	databaseFlag(out, &database)
	to.flags(out)
	return group("pumps", "The pump shelf that all jobs share, from and to CSV", in, out)
}

// leftOut tells of pumps that cannot be read.
func leftOut(cmd *cobra.Command, unread int) {
	if unread > 0 {
		_, _ = fmt.Fprintf(cmd.ErrOrStderr(), "%d pumps on the shelf cannot be read and are left out.\n", unread)
	}
}

func importPumps(cmd *cobra.Command, f *csvFlags, file string) (err error) {
	t, m, err := f.table(cmd, file, shelf.PumpFields())
	if err != nil {
		return err
	}
	s, err := openStore(cmd.Context(), f.database)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	rows, faults := shelf.ReadPumps(t, m)
	// Pumps put aside are met too: a row for one changes it where it lies.
	var there []keep.Pump
	for _, aside := range []bool{true, false} {
		list, _, _, err := keep.Pumps(cmd.Context(), s, "", aside, shelf.MostRows)
		if err != nil {
			return blame(err)
		}
		there = append(there, list...)
	}
	steps, bad := keep.Plan(there, rows)
	if bad != nil {
		return errors.New(words.English().Row(*bad, unit.US))
	}
	fresh, changed, same := 0, 0, 0
	for _, x := range steps {
		switch {
		case x.ID == "":
			fresh++
			_, _ = fmt.Fprintf(cmd.OutOrStdout(), "new: %s, %d points\n", x.Job.Name, len(x.Job.Pumps[0].Curve))
		case len(x.Differs) == 0:
			same++
		default:
			changed++
			for _, d := range x.Differs {
				_, _ = fmt.Fprintf(cmd.OutOrStdout(), "changed: %s, %s: %q; was %q\n", x.Job.Name, d.Path, d.After, d.Before)
			}
		}
	}
	rowFaults(cmd, faults)
	for _, x := range steps {
		if !f.yes || x.ID != "" && len(x.Differs) == 0 {
			continue
		}
		id := x.ID
		if id == "" {
			id = strings.ToLower(rand.Text())
		}
		if _, err := keep.SavePump(cmd.Context(), s, id, x.Base, x.Job, fromFile(cmd, file, "")); err != nil {
			return taken(err)
		}
	}
	return f.ended(cmd, fresh, changed, same, faults)
}
