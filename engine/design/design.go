package design

import (
	"math"

	"plashet/engine/band"
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Solve designs a job with the tables of a book. It never panics on a job that
// package job has read; what cannot be worked out is told as a fault and the
// rest is computed. Unread are the faults of reading: what stands on one of
// them is not worked out, and a finding says so.
//
// It tells no bands: see SolveBands.
func Solve(book *catalog.Book, j *job.Job, unread ...trace.Fault) *Result {
	return solve(book, j, 0, 0, unread)
}

// SolveBands is Solve, and draws the inputs many times round their readings to
// tell how sure the answer is (Result.Bands). The same number of draws and the
// same seed give the same answer; UsualDraws are enough. With no draws it is
// Solve.
func SolveBands(book *catalog.Book, j *job.Job, draws int, seed uint64, unread ...trace.Fault) *Result {
	return solve(book, j, draws, seed, unread)
}

// UsualDraws is the usual number of draws.
const UsualDraws = band.Usual

func solve(book *catalog.Book, j *job.Job, draws int, seed uint64, unread []trace.Fault) *Result {
	r := &Result{
		Name: j.Name, Note: j.Note, Units: j.System(), Style: j.Style(),
		// Room for what a job of middling size has to tell: growing these is a
		// good part of the work otherwise.
		Figures: make([]trace.Figure, 0, 512), Findings: make([]trace.Finding, 0, 64), Assumptions: make([]trace.Assumption, 0, 64),
	}
	m := &model{book: book, job: j, out: r, pipes: map[job.PipeName]catalog.Pipe{}, losses: map[job.PipeName]catalog.Loss{}, curves: map[int]*hydro.Curve{}, unread: unread}
	if !m.start() {
		return r
	}
	m.priced = m.prices()
	pump, ok := m.pump()
	switch {
	case !ok: // told by pump
	case len(j.Watercourses) == 0 || len(j.Runs) == 0:
		m.fault("/watercourses", CodeNoFeed)
	case m.stands(aspectFlow, FindNoFlow):
		m.blind = !m.stands(aspectLevels, FindNoLevels)
		m.flow(pump)
		if draws > 0 {
			m.bands(pump, draws, seed)
		}
	}
	if ok {
		m.upkeep(pump)
		r.Assembly = m.lay(pump)
	}
	if m.stands(aspectCut, FindNoCutting) {
		m.cutting(r.Assembly)
	}
	m.stands(aspectList, FindNoList)
	m.material()
	m.safety()
	m.accept()
	m.unheeded()
	m.written()
	return r
}

// settle is how near the vault's level must come to itself between two rounds.
const (
	settle    unit.Length = 1e-5
	settleMax int         = 50
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
	vault, settled := m.settle(pump, sys, vault)
	if !settled {
		m.fault("/vault", CodeSettle)
	}
	d, ok := m.operate(sys, vault)
	if !ok {
		return
	}
	m.several(sys, d)
	m.share(sys.plumbing, d)
	m.out.Delivery = d
	m.figures(pump)
	if d.Drawn > 0 { // else nothing moves, and no start is worth following
		m.out.Levels = m.levels(pump, d, m.leans(sys, d, vault))
	}
	if l := m.out.Levels; l != nil {
		m.out.Findings = append(m.out.Findings, l.Findings...)
		m.mendLevels(l)
		m.out.Assumptions = append(m.out.Assumptions, l.Assumptions...)
		m.out.Figures = append(m.out.Figures, l.Figures()...)
		m.judgeJoined()
	}
	m.judge(pump, vault)
	m.weigh(pump, vault)
	if m.out.Levels != nil {
		if m.out.Motion = m.move(sys, pump); m.out.Motion != nil {
			m.judgeMotion()
			m.motionFigures()
		}
	}
}

// settle finds the vault's level at which the flow drawn from it leaves it
// there; where no levels can be worked out, the level it began with. A higher
// vault gives more flow, and more flow a lower vault, so the level wanted lies
// between any level and what follows from it; once it is shut in between two,
// it is looked for by false position (the Illinois method).
func (m *model) settle(pump int, sys *system, vault unit.Length) (unit.Length, bool) {
	defer func(quiet bool) { m.quiet = quiet }(m.quiet)
	m.quiet = true
	var again level.Again
	type bound struct {
		at, gap unit.Length
		last    bool
	}
	var low, high bound
	for range settleMax {
		d, ok := m.operate(sys, vault)
		if !ok {
			return vault, true // told when it is solved for good
		}
		in, ok := m.levelInputs(pump, d)
		if m.blind || !ok {
			return vault, true
		}
		next, err := again.Running(in)
		gap := next - vault
		if err != nil || math.Abs(float64(gap)) < float64(settle) {
			return vault, true
		}
		near, far := &low, &high
		if gap < 0 {
			near, far = far, near
		}
		if near.last {
			far.gap /= 2 // twice on the same side: let the other weigh less
		}
		*near, far.last = bound{vault, gap, true}, false
		if low.gap > 0 && high.gap < 0 {
			if high.at-low.at < settle {
				return vault, true // the vault leaps about here, as where a level kept is just what the skimmer needs
			}
			next = low.at + (high.at-low.at)*low.gap/(low.gap-high.gap)
		}
		vault = next
	}
	return vault, false
}

// running gives the vault's level of everyday running.
func running(l *level.Levels) (unit.Length, bool) {
	s, ok := l.Find(l.Everyday(), level.MomentRun)
	return s.Vault, ok
}
