package cli

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/words"
)

func explainCommand() *cobra.Command {
	return &cobra.Command{
		Use: "explain JOB [FIGURE]", Short: "Open one figure of the answer to its formula, values and source",
		Long: `Designs the job and opens one figure by its name, as --figures and the JSON answer
print it: its formula, the values in it, where each comes from, and the source. Without
a name it lists all of them. A value that is a figure itself can be opened in turn.`,
		Example: `  plashet explain garden.json
  plashet explain garden.json pump.flow`,
		Args: operands,
		RunE: func(cmd *cobra.Command, args []string) error {
			j, faults, err := sound(cmd, args[0])
			if err != nil {
				return err
			}
			book, err := catalog.New()
			if err != nil {
				return ours{err}
			}
			r := design.Solve(book, j, faults...)
			faults = append(faults, r.Faults...)
			if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, r.Units); err != nil {
				return err
			}
			if len(args) == 1 {
				err = listFigures(cmd.OutOrStdout(), spoken(cmd), r)
			} else {
				err = openFigure(cmd.OutOrStdout(), spoken(cmd), r, args[1])
			}
			if err == nil && len(faults) > 0 {
				return errJob
			}
			return err
		},
	}
}

func listFigures(w io.Writer, l *words.Language, r *design.Result) error {
	for _, f := range r.Figures {
		if _, err := fmt.Fprintf(w, "%s = %s\n", f.ID, l.Value(f.Value, r.Units)); err != nil {
			return ours{err}
		}
	}
	return nil
}

func openFigure(w io.Writer, l *words.Language, r *design.Result, id string) error {
	ids := make([]string, 0, len(r.Figures))
	for _, f := range r.Figures {
		if f.ID == id {
			one := design.Result{Units: r.Units, Figures: []trace.Figure{f}}
			if err := answer.Figures(w, &one, l); err != nil {
				return ours{err}
			}
			return nil
		}
		ids = append(ids, f.ID)
	}
	if len(ids) == 0 {
		return errJob // its faults have been told
	}
	return noFigure(id, ids)
}

// noFigure names the figures that were most likely meant: the one spelt nearly
// so, else those that hold what was typed.
func noFigure(id string, ids []string) error {
	const most = 12 // shown; the rest is in the list
	if n := near(id, ids); n != "" {
		return fmt.Errorf("this answer has no figure %q; near it: %s", id, n)
	}
	var like []string
	for _, other := range ids {
		if strings.Contains(strings.ToLower(other), strings.ToLower(id)) {
			like = append(like, other)
		}
	}
	switch {
	case len(like) > most:
		return fmt.Errorf("this answer has no figure %q; %d hold it, among them: %s", id, len(like), strings.Join(like[:most], ", "))
	case len(like) > 0:
		return fmt.Errorf("this answer has no figure %q; these hold it: %s", id, strings.Join(like, ", "))
	}
	return fmt.Errorf("this answer has no figure %q; without a name explain lists all %d", id, len(ids))
}
