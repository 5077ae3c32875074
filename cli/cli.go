// Package cli is the command line: it reads files and flags, calls the engine
// and prints. It holds no engineering.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/demo"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/words"
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
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	root.AddCommand(designCommand(), checkCommand(), schemaCommand(), demoCommand())
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

func tell(w io.Writer, faults []trace.Fault, s unit.System) error {
	l := words.English()
	for _, f := range faults {
		if _, err := fmt.Fprintf(w, "line %d, %s: %s\n", f.Line, f.Path, l.Say(f.Message, s)); err != nil {
			return ours{err}
		}
	}
	return nil
}

// shape says how the answer is printed.
type shape struct {
	json    bool
	figures bool
}

func designJob(cmd *cobra.Command, j *job.Job, faults []trace.Fault, as shape) error {
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	if j == nil {
		if err := tell(cmd.ErrOrStderr(), faults, unit.US); err != nil {
			return err
		}
		return errJob
	}
	r := design.Solve(book, j)
	if as.json {
		err = answer.JSON(cmd.OutOrStdout(), r, faults, words.English())
	} else {
		if err = tell(cmd.ErrOrStderr(), faults, j.System()); err != nil {
			return err
		}
		err = answer.Text(cmd.OutOrStdout(), r, words.English())
		if err == nil && as.figures {
			err = answer.Figures(cmd.OutOrStdout(), r)
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

func designCommand() *cobra.Command {
	var as shape
	c := &cobra.Command{
		Use: "design JOB", Short: "Design a job and print the answer", Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := read(cmd, args[0])
			if err != nil {
				return err
			}
			return designJob(cmd, j, faults, as)
		},
	}
	c.Flags().BoolVar(&as.json, "json", false, "print JSON, SI and display units (docs/answer.md)")
	c.Flags().BoolVar(&as.figures, "figures", false, "open every figure to its formula, values and source")
	return c
}

func checkCommand() *cobra.Command {
	return &cobra.Command{
		Use: "check JOB", Short: "Read a job and name its faults, without designing it", Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := read(cmd, args[0])
			if err != nil {
				return err
			}
			s := unit.US
			if j != nil {
				s = j.System()
			}
			if err := tell(cmd.OutOrStdout(), faults, s); err != nil {
				return err
			}
			if len(faults) > 0 {
				return errJob
			}
			_, err = fmt.Fprintln(cmd.OutOrStdout(), "no faults")
			return err
		},
	}
}

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use: "schema", Short: "Print the JSON Schema of the job file", Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			data, err := job.Schema()
			if err != nil {
				return ours{err}
			}
			_, err = cmd.OutOrStdout().Write(data)
			return err
		},
	}
}

func demoCommand() *cobra.Command {
	c := &cobra.Command{
		Use: "demo [NAME]", Short: "Design the invented example jobs and print the answers", Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			names := demo.Names()
			if len(args) == 1 {
				names = args
			}
			for _, name := range names {
				data := demo.Job(name)
				if data == nil {
					return fmt.Errorf("there is no example %q; there are %v", name, demo.Names())
				}
				j, faults := job.Read(data)
				if err := designJob(cmd, j, faults, shape{}); err != nil && !errors.Is(err, errJob) {
					return err
				}
				_, _ = fmt.Fprintln(cmd.OutOrStdout())
			}
			return nil
		},
	}
	c.Flags().Bool("no-serve", false, "print only (serving the examples is not built yet, so this is what happens anyway)")
	return c
}
