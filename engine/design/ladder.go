package design

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"plashet/engine/hydro"
	"plashet/engine/unit"
	"plashet/job"
)

// years is how long the options are compared over. Common practice, no source.
const years = 5

// Where a ladder of sizes ends, besides at what is wanted and at the largest
// size that has fittings.
const (
	// leastGain is the part more that a larger size must give at least one pump:
	// from there on the pipe hardly takes anything.
	leastGain unit.Flow = 0.01
	// leastSteps is how far it goes at least, and where nothing says what is
	// enough at most: three sizes side by side.
	leastSteps = 2
)

// ladder tries the pumps in hand on larger and larger pipe.
type ladder struct {
	m      *model
	pump   int // as drawn
	vault  unit.Length
	curves []*hydro.Curve // of each pump; nil where it has none
	out    []Option
}

// options tries every pump in hand on the pipe as drawn; then on pipe a size
// larger in every run, two sizes, and so on; then the same with the run alone
// that loses most head. Each ladder ends where every pump gives what is wanted
// (the first not before leastSteps), where none gains any more, or where no
// larger size has fittings.
func (m *model) options(pump int, vault unit.Length) []Option {
	l := &ladder{m: m, pump: pump, vault: vault}
	for i := range m.job.Pumps {
		c, _ := m.trial().curve(i)
		l.curves = append(l.curves, c)
	}
	drawn := l.try(m.job)
	l.climb(drawn, leastSteps, -1)
	if len(m.job.Runs) > 1 {
		l.climb(drawn, 0, m.worstRun())
	}
	if slices.ContainsFunc(l.out, func(o Option) bool { return o.First.Currency != "" }) {
		m.sayCouplings(m.priced)
	}
	return l.out
}

// climb tries larger sizes in one run, or in all where only is below 0.
func (l *ladder) climb(last []Option, least, only int) {
	j := l.m.job
	for step := 0; step < least || l.further(step, last); step++ {
		larger := *j
		larger.Runs = slices.Clone(j.Runs) // all that upsize touches
		j = &larger
		changed := false
		for i := range j.Runs {
			if only < 0 || i == only {
				changed = l.m.upsize(&j.Runs[i]) || changed
			}
		}
		if !changed {
			return
		}
		next := l.try(j)
		if step >= leastSteps && !gains(last, next) {
			return
		}
		last = next
	}
}

// further tells that a larger size is worth a try.
func (l *ladder) further(step int, last []Option) bool {
	if slices.ContainsFunc(l.m.out.Delivery.Feeds, func(f Feed) bool { return f.Wanted <= 0 }) {
		return step < leastSteps
	}
	return slices.ContainsFunc(last, func(o Option) bool { return !l.m.serves(&o) })
}

// serves tells that an option gives every feed what it wants, with the valves
// set where there are several.
func (m *model) serves(o *Option) bool {
	if o.Beyond == unit.LessThan || o.Several {
		return false // it is not known to
	}
	for i, f := range m.out.Delivery.Feeds {
		if m.gives(o, i) < f.Wanted*unit.Flow(enough) {
			return false
		}
	}
	return true
}

// gives is what an option gives a feed, with the valves set to share where
// there are several and the sharing can be told.
func (m *model) gives(o *Option, feed int) unit.Flow {
	if o.Reach > 0 && len(o.Feeds) > 1 {
		return unit.Flow(min(o.Reach, 1)) * m.out.Delivery.Feeds[feed].Wanted
	}
	return o.Feeds[feed]
}

// gains tells that a pump gives clearly more on the larger pipe.
func gains(last, next []Option) bool {
	for _, b := range next {
		for _, a := range last {
			if a.Pump == b.Pump && b.Flow > a.Flow*(1+leastGain) {
				return true
			}
		}
	}
	return false
}

// try works out all pumps on the pipe of a job, and keeps the options.
func (l *ladder) try(j *job.Job) []Option {
	t := l.m.trial()
	t.job = j
	sizes := make([]string, 0, len(j.Runs))
	for i, r := range j.Runs {
		size := r.Pipe.Size
		if r.Pipe.Kind != l.m.job.Runs[i].Pipe.Kind {
			size = r.Pipe.Kind + " " + size
		}
		sizes = append(sizes, size)
	}
	sys, ok := t.connect(l.pump, l.vault)
	if !ok {
		return nil
	}
	drawn := j == l.m.job
	pipe, runs, from := strings.Join(sizes, ", "), t.runCost(l.m.priced), len(l.out)
	for i := range j.Pumps {
		if l.curves[i] == nil || !sys.swap(i, l.curves[i]) {
			continue
		}
		d, ok := t.operate(sys, l.vault)
		if !ok {
			continue
		}
		t.several(sys, d)
		t.share(sys.plumbing, d)
		o := Option{Pump: d.Pump, Pipe: pipe, Flow: d.Flow, Beyond: d.Bound(), Power: d.Power, Cost: d.Cost, First: t.firstCost(runs, i), Drawn: drawn, AsIs: drawn && i == l.pump, Several: d.Several}
		for _, f := range d.Feeds {
			o.Feeds = append(o.Feeds, f.Flow)
		}
		if d.Share != nil {
			o.Reach = d.Share.Reach
		}
		if o.First.Currency != "" && o.First.Currency == o.Cost.Currency {
			o.Years = unit.Money{Amount: o.First.Amount.Add(o.Cost.Amount.Mul(decimal.NewFromInt(years))), Currency: o.First.Currency}
		}
		l.out = append(l.out, o)
	}
	return l.out[from:len(l.out):len(l.out)]
}
