package cli

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"plashet/engine/trace"
	"plashet/shelf"
	"plashet/store"
)

// shelfVerbs is what differs between the commands of the two shelves.
type shelfVerbs struct {
	use, one           string // "prices", "price"
	in, out            string // what import and export do, in full
	inExample, outName string
	fields             []shelf.Field
	// take holds the rows of a file against the shelf, tells what they do, and does
	// it where the flags say so.
	take func(cmd *cobra.Command, s store.Store, f *csvFlags, t *shelf.Table, m shelf.Mapping, file string) (taking, error)
	give func(ctx context.Context, s store.Store) (data []byte, unread int, err error)
}

// taking is what the rows of a file do.
type taking struct {
	fresh, changed, same int
	faults               []trace.Fault
}

// shelfCommand gives the commands of a shelf: in from CSV, and out.
func shelfCommand(v shelfVerbs) *cobra.Command {
	f := csvFlags{}
	in := &cobra.Command{
		Use: "import FILE", Short: "Take " + v.use + " from a CSV file onto the " + v.one + " shelf", Args: operands, Long: v.in + csvLong, Example: v.inExample,
		RunE: func(cmd *cobra.Command, args []string) (err error) {
			t, m, err := f.table(cmd, args[0], v.fields)
			if err != nil {
				return err
			}
			s, err := openStore(cmd.Context(), f.database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			done, err := v.take(cmd, s, &f, t, m, args[0])
			if err != nil {
				return err
			}
			return f.ended(cmd, done)
		},
	}
	f.flags(in)
	var database string
	var to save
	out := &cobra.Command{
		Use: "export", Short: "Write the " + v.one + " shelf as CSV", Args: operands, Long: v.out, Example: "  plashet " + v.use + " export --out " + v.outName,
		RunE: func(cmd *cobra.Command, _ []string) (err error) {
			if err := to.check(); err != nil {
				return err
			}
			s, err := openStore(cmd.Context(), database)
			if err != nil {
				return err
			}
			defer closing(s, &err)
			data, unread, err := v.give(cmd.Context(), s)
			if err != nil {
				return blame(err)
			}
			leftOut(cmd, unread)
			return to.write(cmd, data)
		},
	}
	databaseFlag(out, &database)
	to.flags(out)
	return group(v.use, "The "+v.one+" shelf that all jobs share, from and to CSV", in, out)
}

// leftOut tells of pumps that cannot be read.
func leftOut(cmd *cobra.Command, unread int) {
	if unread > 0 {
		_, _ = fmt.Fprintf(cmd.ErrOrStderr(), "%d pumps on the shelf cannot be read and are left out.\n", unread)
	}
}

func fromFile(cmd *cobra.Command, file, rest string) store.Change {
	return store.Change{When: time.Now(), What: "From " + filepath.Base(file) + " by " + cmd.CommandPath() + rest}
}

// group makes a command that holds others.
func group(use, short string, subs ...*cobra.Command) *cobra.Command {
	c := &cobra.Command{Use: use, Short: short, Args: func(cmd *cobra.Command, args []string) error {
		if len(args) > 0 {
			return noCommand(cmd, args[0])
		}
		return nil
	}, RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() }}
	c.AddCommand(subs...)
	return c
}

// taken is a conflict with another save, in plain words.
func taken(err error) error {
	var stale *store.Stale
	if errors.As(err, &stale) {
		return errors.New("somebody else changed the shelf meanwhile; nothing of it was written: run the command again")
	}
	return blame(err)
}

const csvLong = `

Letters, separator, decimals and columns are guessed and told; the flags say otherwise. A
row that cannot be read is told with its line, column and what is expected, and the
others can be taken without it; the exit code is then 1. Nothing is changed without --yes.
The format stands in docs/shelf.md.`
