package cli

import (
	"errors"
	"fmt"
	"strings"

	"plashet/engine/trace"
)

var (
	errNoAnswer = errors.New("the answers ended before the questions did; nothing was written")
	errNeeded   = errors.New("this is needed")
)

// line reads one answer.
func (m *making) line() (string, error) {
	if !m.in.Scan() {
		m.print("\n")
		if err := m.in.Err(); err != nil {
			return "", fmt.Errorf("the answer cannot be read: %w; nothing was written", err)
		}
		return "", errNoAnswer
	}
	return strings.TrimSpace(m.in.Text()), nil
}

// ask asks until the answer can be used.
func (m *making) ask(q *question) error {
	prompt := strings.ToUpper(q.ask[:1]) + q.ask[1:]
	if eg := q.example(m.j.System()); eg != "" {
		prompt += ", as " + eg
	}
	if q.take != "" {
		prompt += ", else " + q.take
	}
	for {
		m.print("%s: ", prompt)
		text, err := m.line()
		if err != nil {
			return err
		}
		if text == "" {
			text = q.take
		}
		if text == "" && q.may {
			return nil
		}
		err = errNeeded
		if text != "" {
			err = m.set(q, text)
		}
		if err == nil {
			m.bare(q.path)
			return nil
		}
		m.print("  %v\n", err)
	}
}

// askCurve asks for the points of the pump's curve, one a line.
func (m *making) askCurve() error {
	m.print("Pump curve from its sheet, one point a line, as %s; four or more, an empty line ends it.\n", m.pointExample())
	m.j.Pumps[0].Curve = nil
	for {
		m.print("Point %d: ", len(m.j.Pumps[0].Curve)+1)
		text, err := m.line()
		switch {
		case err != nil:
			return err
		case text != "":
			if err := m.point(text); err != nil {
				m.print("  %v\n", err)
				continue
			}
			m.bare(fmt.Sprintf("%s/%d/", pathCurve, len(m.j.Pumps[0].Curve)-1))
		case len(m.j.Pumps[0].Curve) == 0:
			m.print("  A pump without a curve cannot be designed with.\n")
		default:
			return nil
		}
	}
}

// again asks once more what the faults are about. Where nobody can be asked,
// or no question is about it, the job stays faulty.
func (m *making) again(faults []trace.Fault) error {
	if m.in == nil {
		return errJob
	}
	about := func(path string) bool {
		for _, f := range faults {
			if f.Path == path || strings.HasPrefix(f.Path, path+"/") {
				return true
			}
		}
		return false
	}
	asked := false
	for i := range questions {
		if q := &questions[i]; about(q.path) && (q.idle == nil || !q.idle(m)) {
			asked = true
			if err := m.ask(q); err != nil {
				return err
			}
		}
	}
	if about("/pumps") {
		asked = true
		if err := m.askCurve(); err != nil {
			return err
		}
	}
	if !asked {
		return errJob
	}
	return nil
}
