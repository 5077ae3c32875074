package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"plashet/engine/unit"
)

func checkCommand() *cobra.Command {
	return &cobra.Command{
		Use: "check JOB", Short: "Read a job and name its faults, without designing it", Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := read(cmd, args[0])
			if err != nil {
				return err
			}
			s := unit.US
			if j != nil {
				s = j.System()
			}
			if err := tell(cmd.OutOrStdout(), spoken(cmd), faults, s); err != nil {
				return err
			}
			if len(faults) > 0 {
				return errJob
			}
			if _, err = fmt.Fprintln(cmd.OutOrStdout(), "no faults"); err != nil {
				return ours{err}
			}
			return nil
		},
	}
}
