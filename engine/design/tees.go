package design

import (
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of tees.
const (
	// FindTees: what a feed gets hangs on how its tees share the water. Args: name, found, low, high.
	FindTees = "design.tee.split"
)

// The loss of a tee hangs on how the water splits in it, so that a network with
// tees could have several steady states; published tables give one coefficient
// for each way. Here it counts on the speed in the leg, so that there is one.
// How far the true flows can lie from it is told by bounds: the tees of a
// feed's own legs lose nothing and all others twice what is counted, and the
// other way round. From nothing to twice is common practice, no source; in a
// leg that gets a small part of the water a tee may take more than twice, which
// the sentence says.
const (
	teeLeast unit.Ratio = 0
	teeMost  unit.Ratio = 2
	// teeTold is the part of a feed's flow from which its bounds are told.
	teeTold = 0.02
)

func isTee(fitting string) bool { return strings.HasPrefix(fitting, "tee ") }

// judgeTees tells between which flows a feed lies, whatever its tees do.
func (m *model) judgeTees(pump int, vault unit.Length) {
	d := m.out.Delivery
	if d.Bound() != unit.Exact || d.Several || !m.hasTees() {
		return
	}
	for i := range d.Feeds {
		f := &d.Feeds[i]
		if f.Dry {
			continue
		}
		own := m.ownRuns(f.Name)
		low, ok := m.withTees(pump, vault, i, own, teeMost, teeLeast)
		high, sound := m.withTees(pump, vault, i, own, teeLeast, teeMost)
		if !ok || !sound || float64(high-low) < teeTold*float64(f.Flow) {
			continue
		}
		m.find(trace.Finding{
			Path: f.Path, Severity: trace.Info, Found: unit.Of(f.Flow, unit.KindFlow),
			Message: trace.Message{Code: FindTees, Args: []trace.Arg{
				trace.Str("name", f.Name), trace.Num("low", low, unit.KindFlow), trace.Num("high", high, unit.KindFlow), trace.Num("found", f.Flow, unit.KindFlow),
			}},
		})
	}
}

func (m *model) hasTees() bool {
	for i := range m.job.Runs {
		for _, f := range m.job.Runs[i].Fittings {
			if isTee(f.Fitting) {
				return true
			}
		}
	}
	return false
}

// ownRuns are the runs whose water all goes to one place: the last one to it,
// and those before it as long as nothing else leaves or joins.
func (m *model) ownRuns(place string) map[int]bool {
	own := map[int]bool{}
	for range m.job.Runs {
		into, out := -1, 0
		for i := range m.job.Runs {
			r := &m.job.Runs[i]
			if r.To == place && into >= 0 {
				return own // several lead here: each is shared in its own way
			}
			if r.To == place {
				into = i
			}
		}
		if into < 0 {
			return own
		}
		own[into] = true
		place = m.job.Runs[into].From
		for i := range m.job.Runs {
			if m.job.Runs[i].From == place {
				out++
			}
		}
		if out > 1 || place == "pump" {
			return own
		}
	}
	return own
}

// withTees is what a feed gets with the losses of the tees in its own runs, and
// of all others, in proportion.
func (m *model) withTees(pump int, vault unit.Length, feed int, own map[int]bool, mine, others unit.Ratio) (unit.Flow, bool) {
	t := m.trial()
	t.tees = func(path string) unit.Ratio {
		for i := range own {
			if begins(path, at("/runs", i)) {
				return mine
			}
		}
		return others
	}
	d, ok := t.deliver(pump, vault)
	if !ok || d.Bound() != unit.Exact {
		return 0, false
	}
	return d.Feeds[feed].Flow, true
}
