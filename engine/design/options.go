package design

import (
	"plashet/engine/unit"
	"plashet/job"
)

// larger names the next size up of a kind of pipe in which fittings are to be
// had too.
func (m *model) larger(p job.PipeName) (job.PipeName, bool) {
	here, err := m.pipe(p)
	if err != nil {
		return p, false
	}
	return m.sizeFrom(p.Kind, here.Bore*clearlyLarger)
}

// clearlyLarger keeps two names of nearly the same bore from counting as two sizes.
const clearlyLarger = 1.05

// sizeFrom gives the smallest size of a kind with at least a bore.
func (m *model) sizeFrom(kind string, least unit.Length) (job.PipeName, bool) {
	best, bore := job.PipeName{}, unit.Length(0)
	for _, s := range m.book.PipeSizes(kind) {
		name := job.PipeName{Kind: kind, Size: s}
		q, err := m.pipe(name)
		if err != nil || q.Bore < least || (bore > 0 && q.Bore >= bore) {
			continue
		}
		if _, err := m.loss("elbow 90", s); err == nil {
			best, bore = name, q.Bore
		}
	}
	return best, bore > 0
}

// rigid is the kind of rigid pipe that hose is tried against.
func (m *model) rigid() string {
	if m.out.Units.Is(unit.Metric) {
		return "PVC PN10"
	}
	return "PVC Sch 40"
}

// upsize puts the next larger pipe in a run; rigid pipe of at least the same
// bore in place of hose.
func (m *model) upsize(r *job.Run) bool {
	if !r.Bore.IsZero() {
		return false // measured pipe in the ground
	}
	here, err := m.pipe(r.Pipe)
	if err != nil {
		return false
	}
	next, ok := m.larger(r.Pipe)
	if !here.Rigid {
		next, ok = m.sizeFrom(m.rigid(), here.Bore)
		r.C, r.Roughness = job.Ratio{}, job.Length{}
	}
	if ok {
		r.Pipe, r.Existing = next, false // another pipe is a new one
	}
	return ok
}

// worstRun is the run that loses most head, its valve's setting aside.
func (m *model) worstRun() int {
	worst, most := -1, unit.Head(0)
	for _, r := range m.out.Delivery.Runs {
		if h := max(r.Friction, -r.Friction); worst < 0 || h > most {
			worst, most = r.Index, h
		}
	}
	return worst
}
