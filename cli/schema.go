package cli

import (
	"github.com/spf13/cobra"

	"plashet/job"
)

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use: "schema", Short: "Print the JSON Schema of the job file", Args: operands,
		RunE: func(cmd *cobra.Command, _ []string) error {
			data, err := job.Schema()
			if err != nil {
				return ours{err}
			}
			if _, err = cmd.OutOrStdout().Write(data); err != nil {
				return ours{err}
			}
			return nil
		},
	}
}
