package design

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/hydro"
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
	if m.out.Units == unit.Metric {
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
		r.Pipe = next
	}
	return ok
}

// choices gives the jobs to try: as drawn, every run one and two sizes larger,
// and the run that loses most head alone one and two sizes larger.
func (m *model) choices() []*job.Job {
	out := []*job.Job{m.job}
	worst := m.worstRun()
	for _, only := range []int{-1, worst} {
		j := m.job
		for range 2 {
			larger := *j
			larger.Runs = slices.Clone(j.Runs) // all that upsize touches
			j = &larger
			changed := false
			for i := range j.Runs {
				if only < 0 || i == only {
					changed = m.upsize(&j.Runs[i]) || changed
				}
			}
			if changed {
				out = append(out, j)
			}
		}
		if len(m.job.Runs) == 1 {
			break
		}
	}
	return out
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

// years is how long the options are compared over. Common practice, no source.
const years = 5

// options tries every pump in hand on every choice of pipe.
func (m *model) options(pump int, vault unit.Length) []Option {
	var out []Option
	var curves []*hydro.Curve // of each pump; nil where it has none
	for i := range m.job.Pumps {
		c, _ := m.trial().curve(i)
		curves = append(curves, c)
	}
	for n, j := range m.choices() {
		t := m.trial()
		t.job = j
		sizes := make([]string, 0, len(j.Runs))
		for i, r := range j.Runs {
			size := r.Pipe.Size
			if r.Pipe.Kind != m.job.Runs[i].Pipe.Kind {
				size = r.Pipe.Kind + " " + size
			}
			sizes = append(sizes, size)
		}
		sys, ok := t.connect(pump, vault)
		if !ok {
			continue
		}
		runs := t.runCost(m.priced)
		for i := range j.Pumps {
			if curves[i] == nil || !sys.swap(i, curves[i]) {
				continue
			}
			d, ok := t.operate(sys, vault)
			if !ok {
				continue
			}
			t.share(sys.plumbing, d)
			o := Option{Pump: d.Pump, Pipe: strings.Join(sizes, ", "), Flow: d.Flow, Power: d.Power, Cost: d.Cost, First: t.firstCost(runs, i), Drawn: n == 0, AsIs: n == 0 && i == pump}
			for _, f := range d.Feeds {
				o.Feeds = append(o.Feeds, f.Flow)
			}
			if d.Share != nil {
				o.Reach = d.Share.Reach
			}
			if o.First.Currency != "" && o.First.Currency == o.Cost.Currency {
				o.Years = unit.Money{Amount: o.First.Amount.Add(o.Cost.Amount.Mul(decimal.NewFromInt(years))), Currency: o.First.Currency}
			}
			out = append(out, o)
		}
	}
	return out
}
