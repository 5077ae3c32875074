package cli

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
)

// read opens a job by name; "-" is standard input.
func read(cmd *cobra.Command, name string) (*job.Job, []trace.Fault, error) {
	in := cmd.InOrStdin()
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, nil, fmt.Errorf("there is no file %q that can be read; give the path of a job file, or - for standard input", name)
		}
		defer func() { _ = f.Close() }()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, job.MaxBytes+1))
	if err != nil {
		return nil, nil, fmt.Errorf("reading %q stopped: %w", name, err)
	}
	j, faults := job.Read(data)
	return j, faults, nil
}

// tell prints the faults of a job, one a line.
func tell(w io.Writer, faults []trace.Fault, s unit.System) error {
	l := words.English()
	for _, f := range faults {
		if _, err := fmt.Fprintf(w, "line %d, %s: %s\n", f.Line, f.Path, l.Say(f.Message, s)); err != nil {
			return ours{err}
		}
	}
	return nil
}
