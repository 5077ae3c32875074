package cli

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"plashet/engine/catalog"
	"plashet/engine/design"
	"plashet/engine/trace"
	"plashet/job"
	"plashet/words"
)

// making is a job in the making.
type making struct {
	cmd    *cobra.Command
	book   *catalog.Book
	say    *words.Language
	j      *job.Job
	points []string
	in     *bufio.Scanner // nil when nobody can be asked
	taken  []string       // what was taken without being said
}

func newCommand() *cobra.Command {
	var to save
	var points []string
	c := &cobra.Command{
		Use: "new", Short: "Start a job file from a handful of questions or flags", Args: operands,
		Long: `Starts a job file with one pond, one fall, one pump and one run of pipe. On a terminal
it asks for what no flag tells; elsewhere the flags must tell all of it. Heights are
counted from the water line at rest. Sizes are written as on the tape: 4' 7-1/2",
55 1/2 in, 1.41 m, 54 gpm, 12 m3/h; a bare number takes the units of the job.

The file is written only when it reads without faults and flow and water levels can
be worked out from it.
Fittings, vault, stock and prices are added to it later, by hand or with set.`,
		Example: `  plashet new --units us --name "Back garden" --length "16 ft" --width "11 ft" \
    --depth "2.5 ft" --rim "3 in" --lip-width "24 in" --lip-height "4 ft" --flow "50 gpm" \
    --pipe-kind "PVC Sch 40" --pipe-size 2 --pipe-length "40 ft" \
    --point "0 gpm @ 24 ft" --point "30 gpm @ 21 ft" --point "54 gpm @ 16 ft" \
    --point "90 gpm @ 6 ft" --out garden.json`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := to.check(); err != nil {
				return err
			}
			m, err := begin(cmd, points)
			if err != nil {
				return err
			}
			data, err := m.make()
			if err != nil {
				return err
			}
			if err := to.write(cmd, data); err != nil {
				return err
			}
			return m.close(to)
		},
	}
	c.Flags().SortFlags = false // in the order of the questions
	for _, q := range questions {
		c.Flags().Var(q.answer(), q.flag, q.ask)
	}
	c.Flags().StringArrayVar(&points, "point", nil, "point of the pump's curve, `flow @ head`, once for each; give four or more")
	to.flags(c)
	return c
}

// begin lays down what every new job has.
func begin(cmd *cobra.Command, points []string) (*making, error) {
	book, err := catalog.New()
	if err != nil {
		return nil, ours{err}
	}
	m := &making{cmd: cmd, book: book, say: spoken(cmd), points: points, j: &job.Job{
		Watercourses: []job.Watercourse{{Name: "fall", Parts: []job.Part{{Lip: &job.Lip{Name: "L1"}}}}},
		Pumps:        []job.Pump{{Name: "P1"}},
		Runs:         []job.Run{{Name: "main", From: "pump", To: "fall"}},
	}}
	if terminal(cmd.InOrStdin()) {
		m.in = bufio.NewScanner(cmd.InOrStdin())
	}
	for _, pair := range [][2]string{{"flow", "sheet"}, {"flow", "sheet-at"}} {
		if m.said(pair[0]) && m.said(pair[1]) {
			return nil, fmt.Errorf("--%s and --%s both say what is wanted over the lip; give one of them", pair[0], pair[1])
		}
	}
	return m, nil
}

// said tells that a flag was given and says something.
func (m *making) said(flag string) bool { return m.text(flag) != "" }

func (m *making) text(flag string) string { return m.cmd.Flags().Lookup(flag).Value.String() }

// make fills the job and gives its file.
func (m *making) make() ([]byte, error) {
	if err := m.units(); err != nil {
		return nil, err
	}
	if err := m.fromFlags(); err != nil {
		return nil, err
	}
	if err := m.rest(); err != nil {
		return nil, err
	}
	for {
		data, faults, err := m.try()
		if err != nil || len(faults) == 0 {
			return data, err
		}
		if err := tell(m.cmd.ErrOrStderr(), spoken(m.cmd), faults, m.j.System()); err != nil {
			return nil, err
		}
		if err := m.again(faults); err != nil {
			return nil, err
		}
	}
}

// units settles first what the numbers are read in, and what elevation 0 is.
func (m *making) units() error {
	q := &questions[0]
	switch {
	case m.said(q.flag):
		if err := m.set(q, m.text(q.flag)); err != nil {
			m.print("--%s: %v\n", q.flag, err)
			return errJob
		}
	case m.in != nil:
		if err := m.ask(q); err != nil {
			return err
		}
	default:
		return m.missing()
	}
	datum := "0 ft"
	if m.j.Units == "metric" {
		datum = "0 m"
	}
	for _, s := range [][2]string{{"/survey/points/0/name", "water"}, {"/survey/points/0/elevation", datum}, {"/pond/water", "@water"}} {
		if f := m.j.Set(s[0], s[1]); f != nil {
			return ours{m.sentence(f.Message)}
		}
	}
	return nil
}

// fromFlags reads every flag that is given and tells all faults at once.
func (m *making) fromFlags() error {
	faulty := false
	for i := range questions[1:] {
		q := &questions[1+i]
		if !m.said(q.flag) {
			continue
		}
		if err := m.set(q, m.text(q.flag)); err != nil {
			m.print("--%s: %v\n", q.flag, err)
			faulty = true
		}
	}
	for i, p := range m.points {
		if err := m.point(p); err != nil {
			m.print("--point, the %d. given: %v\n", i+1, err)
			faulty = true
		}
	}
	if faulty {
		return errJob
	}
	if m.said("sheet-at") && !hasSheet(m) && m.in == nil {
		return errors.New("--sheet-at tells where a sheet depth is meant; give --sheet too")
	}
	return nil
}

// rest asks for what no flag has told.
func (m *making) rest() error {
	if m.in == nil {
		return m.missing()
	}
	for i := range questions[1:] {
		q := &questions[1+i]
		if m.said(q.flag) || (q.idle != nil && q.idle(m)) {
			continue
		}
		if err := m.ask(q); err != nil {
			return err
		}
	}
	if len(m.points) == 0 {
		return m.askCurve()
	}
	return nil
}

// missing names all flags that are needed where nobody can be asked.
func (m *making) missing() error {
	var names []string
	for i := range questions {
		q := &questions[i]
		switch {
		case m.said(q.flag) || (q.idle != nil && q.idle(m)):
		case q.take != "":
			if f := m.j.Set(q.path, q.take); f != nil {
				return ours{m.sentence(f.Message)}
			}
			m.taken = append(m.taken, q.flag+" "+q.take)
		case q.flag == "flow":
			names = append(names, "--flow or --sheet")
		case q.flag != "sheet":
			names = append(names, "--"+q.flag)
		}
	}
	if len(m.points) == 0 {
		names = append(names, "--point")
	}
	if len(names) > 0 {
		return fmt.Errorf("nobody can be asked here, so these are needed too: %s", strings.Join(names, ", "))
	}
	return nil
}

// try reads the job as a file would be read, and designs it: flow and levels
// must come out. What other parts of the design lack is added later.
func (m *making) try() ([]byte, []trace.Fault, error) {
	data, err := job.Encode(m.j)
	if err != nil {
		return nil, nil, ours{err}
	}
	j, faults := job.Read(data)
	if len(faults) > 0 {
		return data, faults, nil
	}
	if r := design.Solve(m.book, j); r.Delivery == nil || r.Levels == nil && r.Delivery.Drawn > 0 {
		return data, r.Faults, nil
	}
	return data, nil, nil
}

// close tells what was taken and what comes next.
func (m *making) close(to save) error {
	if len(m.taken) > 0 {
		m.print("Taken, because no flag says otherwise: %s.\n", strings.Join(m.taken, ", "))
	}
	if m.in == nil { // a person has seen them one by one
		m.bare("")
	}
	m.print("The water line is elevation 0. The run has no fittings yet, so the flow comes out too high until they are added.\n")
	if to.toFile() {
		m.print("Written to %s. Next: plashet design %s\n", to.out, to.out)
	}
	return nil
}

// bare shows how the bare numbers from a path downward were read: 3 may have
// been meant as inches where the field takes feet.
func (m *making) bare(path string) {
	for at, q := range m.j.Quantities() {
		if q.Bare && strings.HasPrefix(at, path) {
			m.print("  bare number %s read as %s (%s)\n", q.Text, q.Read.Format(m.j.System()), m.j.Where(at))
		}
	}
}

// print talks to the person; standard output is the job's.
func (m *making) print(format string, args ...any) {
	_, _ = io.WriteString(m.cmd.ErrOrStderr(), fmt.Sprintf(format, args...))
}
