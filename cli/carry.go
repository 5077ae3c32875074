package cli

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"plashet/store"
	"plashet/store/carry"
)

func moveCommand() *cobra.Command {
	var from, to string
	c := &cobra.Command{
		Use: "move", Short: "Copy all jobs and shelves to another database", Args: operands,
		Long: `Copies all jobs and shelves, with every revision and what was ticked, to another
database, and compares both by a digest at the end. The source stays as it is. The
target must be empty, or hold a part of the source: a move that was cut short goes on
where it ended. Stop the servers that save to the source first.`,
		Example: "  plashet move --from jobs.db --to postgres://office@127.0.0.1/plashet",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if from == "" || to == "" {
				return errors.New("name both databases: --from and --to")
			}
			if _, err := os.Stat(from); err != nil && !strings.Contains(from, ":") {
				return fmt.Errorf("there is no database %q to move from", from)
			}
			source, err := openStore(cmd.Context(), from)
			if err != nil {
				return err
			}
			defer closing(source, &err)
			target, err := openStore(cmd.Context(), to)
			if err != nil {
				return err
			}
			defer closing(target, &err)
			return carried(cmd, source, target, "Moved")
		},
	}
	c.Flags().StringVar(&from, "from", "", "take from this `database`: the path of an SQLite file or postgres://...")
	c.Flags().StringVar(&to, "to", "", "copy to this `database`")
	return c
}

// carried moves and says what was done.
func carried(cmd *cobra.Command, from, to store.Store, done string) error {
	all, err := carry.Move(cmd.Context(), from, to)
	switch {
	case errors.Is(err, carry.ErrOther), errors.Is(err, carry.ErrDiffers):
		return err
	case err != nil:
		return blame(err)
	}
	sayCount(cmd, done, all)
	return nil
}

func sayCount(cmd *cobra.Command, done string, all carry.Count) {
	_, _ = fmt.Fprintf(cmd.OutOrStdout(), "%s: %d jobs and shelves, %d revisions. Digest %s\n", done, all.Documents, all.Revisions, all.Digest)
}

func backupCommand() *cobra.Command {
	var database string
	var to save
	c := &cobra.Command{
		Use: "backup", Short: "Write all jobs and shelves into one file", Args: operands,
		Long: `Writes all jobs and shelves, with every revision and what was ticked, into one file
of lines of JSON that ends with a digest. It can be done while the jobs are in use.`,
		Example: "  plashet backup --out jobs.backup",
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if err := to.check(); err != nil {
				return err
			}
			s, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			var file bytes.Buffer
			all, err := carry.Write(cmd.Context(), &file, s)
			if err != nil {
				return blame(err)
			}
			if err := to.write(cmd, file.Bytes()); err != nil || !to.toFile() {
				return err
			}
			sayCount(cmd, "Written", all)
			return nil
		},
	}
	databaseFlag(c, &database)
	to.flags(c)
	return c
}

func restoreCommand() *cobra.Command {
	var database string
	c := &cobra.Command{
		Use: "restore FILE", Short: "Bring the jobs and shelves of a backup into a database", Args: operands,
		Long: `Reads a file of plashet backup whole, holds it against its digest, and only then
brings it into the database, which must be empty or hold a part of the file.`,
		Example: "  plashet restore jobs.backup --database new.db",
		RunE: func(cmd *cobra.Command, args []string) (err error) {
			f, err := os.Open(args[0])
			if err != nil {
				return fmt.Errorf("%q cannot be read: %s", args[0], reason(err))
			}
			defer func() { _ = f.Close() }()
			held, err := carry.Read(cmd.Context(), f)
			var bad *carry.FileError
			if errors.As(err, &bad) {
				return fmt.Errorf("%q: %w; nothing was brought in", args[0], bad)
			}
			if err != nil {
				return fmt.Errorf("%q cannot be read: %s", args[0], reason(err))
			}
			s, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			return carried(cmd, held, s, "Restored")
		},
	}
	databaseFlag(c, &database)
	return c
}
