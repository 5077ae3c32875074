// Package cli is the command line: it reads files and flags, calls the engine
// and prints. It holds no engineering. Each command has a file of its name.
package cli

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

// Exit codes.
const (
	ExitDone  = 0 // findings included
	ExitJob   = 1 // the job has a fault
	ExitUsage = 2 // wrong usage
	ExitOurs  = 3 // our fault
)

var errJob = errors.New("the job has faults")

// ours marks an error that is not the user's.
type ours struct{ error }

// Run runs one command and gives the exit code.
func Run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.Execute()
	var our ours
	switch {
	case err == nil:
		return ExitDone
	case errors.Is(err, errJob):
		return ExitJob
	case errors.As(err, &our):
		fmt.Fprintln(stderr, "Something failed on our side:", err)
		return ExitOurs
	default:
		fmt.Fprintln(stderr, err)
		fmt.Fprintln(stderr, "See: plashet --help")
		return ExitUsage
	}
}

// newRoot puts the commands together.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "plashet",
		Short: "From a surveyed garden to pump, flow, water levels, cut list",
		Long: `Plashet reads one job file (the measurements of a pond, its falls, pump, pipe and
vault) and computes flow, water levels, the assembly and the cutting plan.

Exit codes: 0 done (findings included), 1 a fault in the job, 2 wrong usage, 3 our fault.
Not a code approval: electricity is for a licensed electrician; makers' sheets and
local code have the last word.`,
		SilenceErrors: true, SilenceUsage: true,
	}
	root.AddCommand(designCommand(), checkCommand(), schemaCommand(), demoCommand())
	return root
}
