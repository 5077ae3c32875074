package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/trace"
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
	stop := func(faults []trace.Fault, s unit.System) error {
		if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, s); err != nil {
			return err
		}
		return errJob
	}
	for i := 0; i < len(pairs); i += 2 {
		pairs[i] = "/" + strings.TrimPrefix(pairs[i], "/") // as the faults name it
	}
	j, faults := job.Decode(data)
	if j == nil {
		return nil, stop(faults, unit.US)
	}
	if lost := losses(faults, pairs); len(lost) > 0 {
		return nil, stop(lost, j.System())
	}
	_, before := job.Read(data)
	for i := 0; i < len(pairs); i += 2 {
		if f := j.Set(pairs[i], pairs[i+1]); f != nil {
			return nil, stop([]trace.Fault{*f}, j.System())
		}
	}
	next, err := job.Encode(j)
	if err != nil {
		return nil, ours{err}
	}
	_, after := job.Read(next)
	if fresh := beyond(after, before); len(fresh) > 0 {
		return nil, stop(fresh, j.System())
	}
	return next, tell(cmd.ErrOrStderr(), spoken(cmd), after, j.System())
}

// losses picks the faults that would be lost with what was typed, because the
// decoder leaves a faulty field empty: all but those of fields that are set
// anew, and those that say something is missing. Without units even sound
// fields are left empty.
func losses(faults []trace.Fault, pairs []string) []trace.Fault {
	var lost []trace.Fault
	for _, f := range faults {
		missing := f.Code == job.CodeMissing || f.Code == job.CodeMissingPart
		anew := false
		for i := 0; i < len(pairs); i += 2 {
			anew = anew || f.Path == pairs[i] || strings.HasPrefix(f.Path, pairs[i]+"/")
		}
		if f.Path == "/units" || !missing && !anew {
			lost = append(lost, f)
		}
	}
	return lost
}

// beyond gives the faults that were not there before.
func beyond(after, before []trace.Fault) []trace.Fault {
	was := map[[2]string]bool{}
	for _, f := range before {
		was[[2]string{f.Code, f.Path}] = true
	}
	var fresh []trace.Fault
	for _, f := range after {
		if !was[[2]string{f.Code, f.Path}] {
			fresh = append(fresh, f)
		}
	}
	return fresh
}
