package cli

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"plashet/drawing"
	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/export"
	"plashet/job"
	"plashet/render/xlsx"
	"plashet/table"
)

func exportCommand() *cobra.Command {
	var f folder
	c := &cobra.Command{
		Use: "export JOB [WHAT...]", Short: "Design a job and write it out for other programs", Args: exportArgs,
		Long: `Writes what other programs need of a job, all or what is named, in open formats:
materials, cuts, sticks, levels, start-and-stop (levels through time) and basis (findings,
assumptions) as CSV; workbook, all of those as one spreadsheet (XLSX); plan, section and isometric as
DXF at full size; model (the assembly in three dimensions, GLB); drawings (every drawing as
SVG and PNG); job and schema (the job file and its JSON Schema). Numbers are in the job's
units (docs/exchange.md). What a job does not have is told. The folder is made when it is
not there.`,
		Example: "  plashet export garden.json --to out\n  plashet export garden.json cuts workbook --to out",
		RunE: func(cmd *cobra.Command, args []string) error {
			if f.to == "" {
				return errors.New("give the folder for the files: --to FOLDER")
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
			if err := tell(cmd.ErrOrStderr(), spoken(cmd), slices.Concat(faults, r.Faults), j.System()); err != nil {
				return err
			}
			data, err := job.Encode(j)
			if err != nil {
				return ours{err}
			}
			digest, err := digestOf(j)
			if err != nil {
				return ours{err}
			}
			in := export.Input{
				Input:   table.Input{Job: j, Result: r, Faults: faults, Say: spoken(cmd), Digest: digest},
				Drawing: drawing.Input{Job: j, Result: r, Curves: design.CurvesOf(book, j, r, curvePoints), Say: spoken(cmd)},
				Bytes:   data, Workbook: xlsx.Write,
			}
			if err := f.export(cmd, in, args[1:]); err != nil {
				return err
			}
			if len(faults)+len(r.Faults) > 0 {
				return errJob
			}
			return nil
		},
	}
	c.Flags().StringVar(&f.to, "to", "", "write into this `folder`")
	c.Flags().BoolVar(&f.force, "force", false, "write over files that are there")
	return c
}

func exportArgs(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return errors.New("JOB is missing; write: plashet export JOB [WHAT...]")
	}
	for _, a := range args[1:] {
		if !slices.Contains(export.Names(), a) {
			return fmt.Errorf("there is no %q to export; there is %s", a, strings.Join(export.Names(), ", "))
		}
	}
	return nil
}

// export makes the files and writes them, all or none. What the answer has
// nothing for is told.
func (f *folder) export(cmd *cobra.Command, in export.Input, names []string) error {
	if len(names) == 0 {
		names = export.Names()
	}
	var files []written
	for _, name := range names {
		list, err := export.Make(in, name)
		if errors.Is(err, export.ErrNone) {
			_, _ = fmt.Fprintf(cmd.ErrOrStderr(), "%s: %v\n", name, err)
			continue
		}
		if err != nil {
			return ours{err}
		}
		for _, x := range list {
			if !slices.ContainsFunc(files, func(w written) bool { return w.name == x.Name }) { // named twice
				files = append(files, written{x.Name, x.Data})
			}
		}
	}
	if len(files) == 0 {
		return errJob
	}
	return f.write(files, cmd.OutOrStdout())
}
