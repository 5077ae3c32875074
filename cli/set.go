package cli

import (
	"errors"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
	"plashet/job"
)

func setCommand() *cobra.Command {
	var to save
	c := &cobra.Command{
		Use: "set JOB PATH VALUE [PATH VALUE]...", Short: "Change fields of a job and write it anew",
		Long: `Sets fields of a job by their paths, as docs/job-format.md lists them and check names
them, and writes the job in its canonical form. A value is written as on the tape; an
empty one ("") empties the field. Lists count from 0; - is one more at the end.

Nothing is written when a value cannot be read, when the job gets a fault that it did
not have, or when it has a faulty field besides those set, which would be lost. Other
faults of the job stay and are told.`,
		Example: `  plashet set garden.json /runs/0/length "62 ft" --out garden.json --force
  plashet set garden.json /runs/0/fittings/-/fitting "elbow 90" /runs/0/fittings/0/count 3 --out next.json
  plashet set --out next.json garden.json -- /runs/0/rise "-2 ft"`,
		Args: pairs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := to.check(); err != nil {
				return err
			}
			data, err := load(cmd, args[0])
			if err != nil {
				return err
			}
			data, err = change(cmd, data, args[1:])
			if err != nil {
				return err
			}
			return to.write(cmd, data)
		},
	}
	to.flags(c)
	return c
}

// pairs holds the operands of set: a job, then paths each with a value.
func pairs(cmd *cobra.Command, args []string) error {
	if len(args) > 2 && len(args)%2 == 0 {
		return errors.New("every path needs a value behind it; \"\" empties a field")
	}
	return operands(cmd, args)
}

// change sets the pairs of path and value and gives the job's new bytes.
func change(cmd *cobra.Command, data []byte, pairs []string) ([]byte, error) {
	var sets []job.Set
	for i := 0; i < len(pairs); i += 2 {
		sets = append(sets, job.Set{Path: pairs[i], Value: pairs[i+1]})
	}
	next, faults, err := job.Alter(data, sets)
	if err != nil {
		return nil, ours{err}
	}
	s := unit.US
	if j, _ := job.Decode(data); j != nil {
		s = j.System()
	}
	if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, s); err != nil {
		return nil, err
	}
	if next == nil {
		return nil, errJob
	}
	return next, nil
}
