package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plashet/demo"
	"plashet/engine/design"
	"plashet/job"
	"plashet/serve"
	"plashet/store/memory"
)

func demoCommand() *cobra.Command {
	printOnly := false
	o := serve.Options{}
	c := &cobra.Command{
		Use: "demo [NAME]", Short: "Design the invented example jobs, print the answers and show them in a browser", Args: operands,
		ValidArgs: demo.Names(),
		Long: `Designs the example jobs, or the one named, and prints the answers. Sites, pumps and
prices are invented. Each job hides a trap; that the answer tells of it is no failure,
so the exit code is 0. Then serves the pages of all of them on this machine until Ctrl-C;
what is changed there is kept in memory only.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			names := demo.Names()
			if len(args) == 1 {
				names = args
			}
			for _, name := range names {
				data := demo.Job(name)
				if data == nil {
					return noDemo(name)
				}
				j, faults := job.Read(data)
				if err := designJob(cmd, j, faults, shape{draws: design.UsualDraws}); err != nil && !errors.Is(err, errJob) {
					return err
				}
				_, _ = fmt.Fprintln(cmd.OutOrStdout())
			}
			if printOnly {
				return nil
			}
			return servePages(cmd, memory.New(), o, "")
		},
	}
	c.Flags().BoolVar(&printOnly, "no-serve", false, "print only")
	c.Flags().StringVar(&o.Addr, "addr", serve.Usual, "serve on this `address`")
	return c
}

func noDemo(typed string) error {
	if n := near(typed, demo.Names()); n != "" {
		return fmt.Errorf("there is no example %q; near it: plashet demo %s", typed, n)
	}
	return fmt.Errorf("there is no example %q; there are: %s", typed, strings.Join(demo.Names(), ", "))
}
