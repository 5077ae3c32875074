package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
	"plashet/shelf"
	"plashet/shelf/keep"
	"plashet/store"
	"plashet/words"
)

func pumpsCommand() *cobra.Command {
	return shelfCommand(shelfVerbs{
		use: "pumps", one: "pump", outName: "pumps.csv", fields: shelf.PumpFields(), take: takePumps, give: keep.PumpsCSV,
		in: "Takes pumps from a CSV file onto the shelf that all jobs share. Rows of one name are one\n" +
			"pump; each may hold a point of its curve. A pump that is there by that name is changed and\n" +
			"keeps what the rows do not say; one with a fault in any row is not taken at all.",
		inExample: "  plashet pumps import pumps.csv\n  plashet pumps import pumps.csv --unit curve/flow=l/h --unit curve/head=m --yes",
		out: "Writes the pumps of the shelf as CSV, one row for each point of a curve, which plashet\n" +
			"pumps import reads back to the same values. Ways to stand, further speeds and NPSH have no\nplace in a row: a job file carries them.",
	})
}

// takePumps takes each pump in a save of its own.
func takePumps(cmd *cobra.Command, s store.Store, f *csvFlags, t *shelf.Table, m shelf.Mapping, file string) (x taking, err error) {
	rows, faults := shelf.ReadPumps(t, m)
	x.faults = faults
	// Pumps put aside are met too: a row for one changes it where it lies.
	var there []keep.Pump
	for _, aside := range []bool{true, false} {
		list, _, _, err := keep.Pumps(cmd.Context(), s, "", aside, shelf.MostRows)
		if err != nil {
			return x, blame(err)
		}
		there = append(there, list...)
	}
	steps, bad := keep.Plan(there, rows)
	if bad != nil {
		return x, errors.New(words.English().Row(*bad, unit.US))
	}
	for _, step := range steps {
		switch {
		case step.ID == "":
			x.fresh++
			_, _ = fmt.Fprintf(cmd.OutOrStdout(), "new: %s, %d points\n", step.Job.Name, len(step.Job.Pumps[0].Curve))
		case len(step.Differs) == 0:
			x.same++
		default:
			x.changed++
			for _, d := range step.Differs {
				_, _ = fmt.Fprintf(cmd.OutOrStdout(), "changed: %s, %s: %q; was %q\n", step.Job.Name, d.Path, d.After, d.Before)
			}
		}
	}
	rowFaults(cmd, faults)
	for _, step := range steps {
		if !f.yes || step.ID != "" && len(step.Differs) == 0 {
			continue
		}
		id := step.ID
		if id == "" {
			id = strings.ToLower(rand.Text())
		}
		if _, err := keep.SavePump(cmd.Context(), s, id, step.Base, step.Job, fromFile(cmd, file, "")); err != nil {
			return x, taken(err)
		}
	}
	return x, nil
}
