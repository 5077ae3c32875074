// Package cli is the command line: it reads files and flags, calls the engine
// and prints. It holds no engineering. Each command has a file of its name.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

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

// Run runs one command and gives the exit code. A terminal is looked for
// behind the three streams, so that colour and questions come only there.
func Run(args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	stdout, stderr = screen(stdout, os.Getenv), screen(stderr, os.Getenv)
	defer func() {
		// A panic would end the program with code 2, which says wrong usage.
		if p := recover(); p != nil {
			code = end(stderr, nil, ours{fmt.Errorf("%v", p)})
		}
	}()
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	cmd, err := root.ExecuteContextC(context.Background())
	return end(stderr, cmd, err)
}

// end tells what went wrong and gives the exit code.
func end(stderr io.Writer, cmd *cobra.Command, err error) int {
	var our ours
	switch {
	case err == nil:
		return ExitDone
	case errors.Is(err, errJob):
		return ExitJob
	case errors.As(err, &our):
		_, _ = fmt.Fprintln(stderr, "Something failed on our side:", err)
		return ExitOurs
	}
	_, _ = fmt.Fprintln(stderr, err)
	_, _ = fmt.Fprintf(stderr, "See: %s --help\n", cmd.CommandPath())
	return ExitUsage
}

// newRoot puts the commands together.
func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "plashet",
		Short: "From a surveyed garden to pump, flow, water levels, cut list",
		Long: `Plashet reads one job file (the measurements of a pond, its falls, pump, pipe and
vault) and computes flow, water levels, the assembly and the cutting plan.

Exit codes: 0 done (findings included), 1 a fault in the job, 2 wrong usage, 3 our fault.
Colour marks severities, on a terminal only; ` + noColour + `=1 turns it off.
Not a code approval: electricity is for a licensed electrician; makers' sheets and
local code have the last word.`,
		Version:       version(),
		SilenceErrors: true, SilenceUsage: true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return noCommand(cmd, args[0])
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetVersionTemplate("{{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.SetHelpCommand(helpCommand())
	languageFlag(root)
	root.AddCommand(designCommand(), checkCommand(), schemaCommand(), demoCommand(), newCommand(), setCommand(),
		tablesCommand(), explainCommand(), quantitiesCommand(), drawCommand(), printCommand(), exportCommand(), chooseCommand(), arrangeCommand(), quoteCommand(), serveCommand(), pricesCommand(), pumpsCommand(), moveCommand(), backupCommand(), restoreCommand())
	return root
}
