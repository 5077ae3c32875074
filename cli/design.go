package cli

import (
	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// shape says how the answer is printed.
type shape struct {
	json    bool
	figures bool
	draws   int // of the bands; 0: none
}

// drawSeed starts the draws of what may be off: always alike, so that the same
// job prints the same answer.
const drawSeed = 1

func designCommand() *cobra.Command {
	var as shape
	c := &cobra.Command{
		Use: "design JOB", Short: "Design a job and print the answer", Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := read(cmd, args[0])
			if err != nil {
				return err
			}
			return designJob(cmd, j, faults, as)
		},
	}
	c.Flags().BoolVar(&as.json, "json", false, "print JSON, SI and display units (docs/answer.md)")
	c.Flags().IntVar(&as.draws, "draws", design.UsualDraws, "how many times to draw what may be off, for how sure the answer is; 0 for none")
	c.Flags().BoolVar(&as.figures, "figures", false, "open every figure to its formula, values and source")
	return c
}

func designJob(cmd *cobra.Command, j *job.Job, faults []trace.Fault, as shape) error {
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	if j == nil {
		if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, unit.US); err != nil {
			return err
		}
		return errJob
	}
	r := design.SolveBands(book, j, as.draws, drawSeed, faults...)
	if as.json {
		err = answer.JSON(cmd.OutOrStdout(), r, faults, spoken(cmd))
	} else {
		err = answer.Text(cmd.OutOrStdout(), r, faults, spoken(cmd))
		if err == nil && as.figures {
			err = answer.Figures(cmd.OutOrStdout(), r, spoken(cmd))
		}
	}
	if err != nil {
		return ours{err}
	}
	if len(faults)+len(r.Faults) > 0 {
		return errJob
	}
	return nil
}
