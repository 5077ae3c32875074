package cli

import (
	"errors"
	"fmt"
	"runtime"
	"strconv"

	"github.com/spf13/cobra"

	"plashet/answer"
	"plashet/drawing"
	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// arranger holds the flags of arrange.
type arranger struct {
	want design.ArrangeWant
	keep string
	to   save
	draw folder
	json bool
	full bool
}

// keepDrawn keeps the assembly as it is drawn.
const keepDrawn = "drawn"

func arrangeCommand() *cobra.Command {
	var f arranger
	c := &cobra.Command{
		Use: "arrange JOB", Short: "Find the layouts of the plumbing in the vault that no other beats", Args: operands,
		Long: `Searches every order of fittings from the pump's port to the hole in the wall, every way
the pump may stand and every run of elbows, for the layouts that no other beats in every
respect: head, joints, cost, what the pump must be slid before it is lifted, whether the
water above comes down when the union is opened. Depth of the union under the rim, how
much comes down and elbows are told beside. Each is laid, checked a second way, and told
with its parts in order, rolls, cuts, the pump's way out and the play it needs; --full
adds the steps of gluing and what makes the play, --json also where each part stands. Where nothing fits it tells what failed and which size would mend it, by how much
(docs/layouts.md).

What it may choose from stands in the job: the pump's attitudes (or assembly, search,
stands), the hole and how far it may still be moved, obstacles, fittings in stock, parts
that are glued already.

The search shows on standard error how far it has got. Ctrl-C stops it; the best so far
are then printed, as what they are: not proven.

--keep writes one of the layouts into the job as its assembly, with a record of what it
stands on and of its cut card; design then tells what a later change breaks.
--keep ` + keepDrawn + ` keeps the assembly as it is drawn.`,
		Example: `  plashet arrange garden.json
  plashet arrange garden.json --elbows 3 --best 8
  plashet arrange garden.json --keep 1 --out garden-2.json`,
		RunE: func(cmd *cobra.Command, args []string) error { return f.run(cmd, args[0]) },
	}
	c.Flags().IntVar(&f.want.Elbows, "elbows", 0, "look at layouts with up to this `many` elbows; 4 when not given")
	c.Flags().IntVar(&f.want.Best, "best", 0, "tell this `many` layouts at most; 5 when not given")
	c.Flags().IntVar(&f.want.Nodes, "nodes", 0, "give up an order of fittings after so many `nodes` of branch and bound")
	c.Flags().StringVar(&f.keep, "keep", "", "write layout `number`, or the one "+keepDrawn+", into the job at --out")
	c.Flags().BoolVar(&f.json, "json", false, "print JSON (docs/answer.md)")
	c.Flags().BoolVar(&f.full, "full", false, "tell of each layout all of its play and the steps of gluing it up")
	c.Flags().StringVar(&f.draw.to, "draw", "", "draw the layouts side by side, as layouts.svg in this `folder`")
	f.to.flags(c)
	return c
}

func (f *arranger) run(cmd *cobra.Command, name string) error {
	number, err := f.check()
	if err != nil {
		return err
	}
	j, faults, err := sound(cmd, name)
	if err != nil {
		return err
	}
	if f.keep != "" && len(faults) > 0 { // a field that could not be read would be lost in writing
		if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, j.System()); err != nil {
			return err
		}
		return errJob
	}
	book, err := catalog.New()
	if err != nil {
		return ours{err}
	}
	if f.keep == keepDrawn {
		next, of := design.KeepDrawn(book, j)
		return f.write(cmd, next, of, j.System())
	}
	a := f.search(cmd, book, j, faults)
	if !f.to.toFile() && f.keep != "" {
		next, of := a.Keep(book, j, number-1)
		return f.write(cmd, next, of, j.System())
	}
	if f.json {
		err = answer.ArrangedJSON(cmd.OutOrStdout(), a, faults, spoken(cmd))
	} else {
		err = answer.Arranged(cmd.OutOrStdout(), a, faults, spoken(cmd), f.full)
	}
	if err != nil {
		return ours{err}
	}
	if len(faults)+len(a.Faults) > 0 {
		return errJob
	}
	if err := f.drawn(cmd, j, a); err != nil {
		return err
	}
	if f.keep != "" {
		next, of := a.Keep(book, j, number-1)
		return f.write(cmd, next, of, j.System())
	}
	return nil
}

// drawn draws the layouts where that is asked for.
func (f *arranger) drawn(cmd *cobra.Command, j *job.Job, a *design.Arranging) error {
	if f.draw.to == "" {
		return nil
	}
	s, ok := drawing.Layouts(j, a, spoken(cmd))
	if !ok {
		_, _ = fmt.Fprintln(cmd.ErrOrStderr(), "there is no layout to draw")
		return nil
	}
	f.draw.force = f.to.force
	return f.draw.put([]drawing.Sheet{s}, cmd.ErrOrStderr())
}

// check reads the flags that belong together before any work is done.
func (f *arranger) check() (number int, err error) {
	switch {
	case f.keep == "" && f.to.out != "":
		return 0, errors.New("--out is where a kept layout goes; say which with --keep NUMBER")
	case f.keep == "" || f.keep == keepDrawn:
	default:
		if number, err = strconv.Atoi(f.keep); err != nil || number < 1 {
			return 0, fmt.Errorf("--keep is %q; write the number of a layout, such as 1, or %s", f.keep, keepDrawn)
		}
	}
	return number, f.to.check()
}

// search runs the search until it is done or somebody stops it.
func (f *arranger) search(cmd *cobra.Command, book *catalog.Book, j *job.Job, faults []trace.Fault) *design.Arranging {
	ctx, stop := stoppable(cmd)
	defer stop()
	want := f.want
	want.Cores = runtime.GOMAXPROCS(0)
	show := progress{w: cmd.ErrOrStderr(), say: spoken(cmd), every: shownEvery}
	return design.Arrange(ctx, book, j, want, func(g arrange.Progress) {
		show.tell(func() string { return answer.Progress(g, show.say) })
	}, faults...)
}

// write puts the job with the kept layout in its place.
func (f *arranger) write(cmd *cobra.Command, next *job.Job, faults []trace.Fault, s unit.System) error {
	if next == nil {
		if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, s); err != nil {
			return err
		}
		return errJob
	}
	data, err := job.Encode(next)
	if err != nil {
		return ours{err}
	}
	if err := f.to.write(cmd, data); err != nil {
		return err
	}
	if f.to.toFile() {
		_, _ = fmt.Fprintf(cmd.ErrOrStderr(), "Written to %s. Next: plashet design %s\n", f.to.out, f.to.out)
	}
	return nil
}
