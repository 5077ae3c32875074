package design

import (
	"math"

	"plashet/engine/catalog"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Solve designs a job with the tables of a book. It never panics on a job that
// package job has read; what cannot be worked out is told as a fault and the
// rest is computed.
func Solve(book *catalog.Book, j *job.Job) *Result {
	r := &Result{Name: j.Name, Note: j.Note, Units: j.System()}
	m := &model{book: book, job: j, out: r, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}}
	if !m.start() {
		return r
	}
	pump, ok := m.pump()
	switch {
	case !ok:
		m.fault("/pumps", CodeNoPump)
	case len(j.Watercourses) == 0 || len(j.Runs) == 0:
		m.fault("/watercourses", CodeNoFeed)
	default:
		m.flow(pump)
	}
	if ok {
		r.Assembly = m.lay(pump)
	}
	m.cutting(r.Assembly)
	m.material()
	m.safety()
	m.accept()
	return r
}

// settle is how near the vault's level must come to itself between two rounds.
const (
	settle    unit.Length = 1e-5
	settleMax int         = 20
)

// flow finds delivery and levels together: the pump draws from the running
// level, which depends on the flow.
func (m *model) flow(pump int) {
	vault, ok := m.survey.Level(m.job.Pond.Water)
	if !ok {
		m.fault("/pond/water", CodeNoLevel, trace.Str("name", "pond"))
		return
	}
	sys, ok := m.connect(pump, vault)
	if !ok {
		return
	}
	m.quiet = true
	for range settleMax {
		d, ok := m.operate(sys, vault)
		if !ok {
			break
		}
		l := m.levels(pump, d)
		if l == nil {
			break
		}
		next, ok := running(l)
		if !ok || math.Abs(float64(next-vault)) < float64(settle) {
			break
		}
		vault = next
	}
	m.quiet = false
	d, ok := m.operate(sys, vault)
	if !ok {
		return
	}
	m.share(sys.plumbing, d)
	m.out.Delivery = d
	m.figures(pump)
	m.out.Levels = m.levels(pump, d)
	if l := m.out.Levels; l != nil {
		m.out.Findings = append(m.out.Findings, l.Findings...)
		m.out.Assumptions = append(m.out.Assumptions, l.Assumptions...)
		m.out.Figures = append(m.out.Figures, l.Figures()...)
	}
	m.judge(pump, vault)
	m.weigh(pump, vault)
}

// running gives the vault's level of everyday running: topped up while running
// where that is the habit, else started from the water line.
func running(l *level.Levels) (unit.Length, bool) {
	for _, at := range []struct {
		c level.Course
		m level.Moment
	}{{level.CourseTopped, level.MomentRun}, {level.CourseKept, level.MomentRun}} {
		if s, ok := l.Find(at.c, at.m); ok {
			return s.Vault, true
		}
	}
	return 0, false
}
