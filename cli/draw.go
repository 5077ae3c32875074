package cli

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/job"
	"plashet/render/svg"
)

// curvePoints is at how many flows the system curve is worked out.
const curvePoints = 121

// folder is where drawings go.
type folder struct {
	to    string
	force bool
}

func drawCommand() *cobra.Command {
	var f folder
	c := &cobra.Command{
		Use: "draw JOB", Short: "Design a job and draw the answer as SVG files", Args: operands,
		Long: `Draws what the answer has enough for: plan.svg (the pond), curve.svg (pump and
system curve), front.svg (the pumps in hand), levels.svg (pond and vault in section, the
water at rest, running and after a stop), course-first.svg and so on (levels through start
and stop), sticks.svg (sticks cut to scale), the assembly with its cut lengths, seen over
each corner of the vault (assembly-front-left.svg and so on), and way-out.svg (how the pump
comes out, move by move). The folder is made when it is not there.`,
		Example: "  plashet draw garden.json --to pictures",
		RunE: func(cmd *cobra.Command, args []string) error {
			if f.to == "" {
				return errors.New("give the folder for the drawings: --to FOLDER")
			}
			j, faults, err := sound(cmd, args[0])
			if err != nil {
				return err
			}
			book, err := catalog.New()
			if err != nil {
				return ours{err}
			}
			r := design.Solve(book, j, faults...)
			faults = append(slices.Clone(faults), r.Faults...)
			if err := tell(cmd.ErrOrStderr(), spoken(cmd), faults, j.System()); err != nil {
				return err
			}
			if err := f.draw(cmd, j, r, book); err != nil {
				return err
			}
			if len(faults) > 0 {
				return errJob
			}
			return nil
		},
	}
	c.Flags().StringVar(&f.to, "to", "", "write into this `folder`")
	c.Flags().BoolVar(&f.force, "force", false, "write over drawings that are there")
	return c
}

// draw writes the sheets, each whole or not at all; none where one is in the
// way and may not be written over.
func (f *folder) draw(cmd *cobra.Command, j *job.Job, r *design.Result, book *catalog.Book) error {
	sheets := drawing.Sheets(drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, curvePoints), Say: spoken(cmd)})
	if len(sheets) == 0 {
		_, _ = fmt.Fprintln(cmd.ErrOrStderr(), "nothing could be worked out that can be drawn")
		return errJob
	}
	return f.put(sheets, cmd.OutOrStdout())
}

// put writes drawings into the folder as SVG, each whole or not at all, and tells
// their names.
func (f *folder) put(sheets []drawing.Sheet, names io.Writer) error {
	var files []written
	for i := range sheets {
		var b bytes.Buffer
		if err := svg.Write(&b, &sheets[i]); err != nil {
			return ours{fmt.Errorf("draw %s: %w", sheets[i].Name, err)}
		}
		files = append(files, written{sheets[i].Name + ".svg", b.Bytes()})
	}
	return f.write(files, names)
}

// written is a file that is to be in the folder.
type written struct {
	name string
	data []byte
}

// write writes the files, each whole or not at all, and tells their names;
// none where one is in the way and may not be written over.
func (f *folder) write(files []written, names io.Writer) error {
	if err := f.check(files); err != nil {
		return err
	}
	for _, w := range files {
		name := filepath.Join(f.to, w.name)
		switch err := replace(name, w.data); {
		case errors.Is(err, fs.ErrPermission):
			return fmt.Errorf("%q may not be written: the permissions of its folder keep you out", name)
		case err != nil:
			return ours{fmt.Errorf("write %q: %w", name, err)}
		}
		if _, err := fmt.Fprintln(names, name); err != nil {
			return ours{err}
		}
	}
	return nil
}

// check makes the folder and tells what stands in the way.
func (f *folder) check(files []written) error {
	if info, err := os.Stat(f.to); err == nil && !info.IsDir() {
		return fmt.Errorf("%q is no folder", f.to)
	}
	if err := os.MkdirAll(f.to, 0o755); err != nil {
		return fmt.Errorf("the folder %q cannot be made: %s", f.to, reason(err))
	}
	for _, w := range files {
		name := filepath.Join(f.to, w.name)
		info, err := os.Stat(name)
		switch {
		case err == nil && !info.Mode().IsRegular():
			return fmt.Errorf("%q is no file that can be written over", name)
		case err == nil && !f.force:
			return fmt.Errorf("there is a file %q already; --force writes over it", name)
		}
	}
	return nil
}
