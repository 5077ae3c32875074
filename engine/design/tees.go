package design

import (
	"math"
	"slices"
	"strings"

	"plashet/engine/network"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// Codes of tees.
const (
	// FindTees: what a feed gets hangs on how its tees share the water. Args: name, found, low, high.
	FindTees = "design.tee.split"
)

// The loss of a tee hangs on how the water splits in it, so that a network with
// tees could have several steady states; published tables give one coefficient
// for each way. Here it counts on the speed in the leg, so that there is one.
// How far the true flows can lie from it is told by bounds: the tees of
// each run lose nothing or twice what is counted, whichever serves the feed, and
// the other way round (teeBound). From nothing to twice is common practice, no source; in a
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
	if d.Bound() != unit.Exact || d.Several || len(m.teeRuns()) == 0 {
		return
	}
	for i := range d.Feeds {
		f := &d.Feeds[i]
		if f.Dry {
			continue
		}
		low, ok := m.teeBound(pump, vault, i, true)
		high, sound := m.teeBound(pump, vault, i, false)
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

// teeRuns are the runs that have tees.
func (m *model) teeRuns() (runs []int) {
	for i := range m.job.Runs {
		if slices.ContainsFunc(m.job.Runs[i].Fittings, func(f job.Fitted) bool { return isTee(f.Fitting) }) {
			runs = append(runs, i)
		}
	}
	return runs
}

// teeRounds is how often all runs are gone through at most.
const teeRounds = 4

// teeBound is the most (the least, with least set) that a feed gets, the tees of
// each run from nothing to twice what is counted: run after run takes what serves
// it better until none changes. On a tree that is the bound, for there a run that
// leads to the feed only takes from it and any other only gives; in a loop it is
// what no single run can better.
func (m *model) teeBound(pump int, vault unit.Length, feed int, least bool) (unit.Flow, bool) {
	runs := m.teeRuns()
	lose := make(map[int]unit.Ratio, len(runs))
	for _, i := range runs {
		lose[i] = 1
	}
	best, ok := m.withTees(pump, vault, feed, lose)
	for changed, round := true, 0; ok && changed && round < teeRounds; round++ {
		changed = false
		for _, i := range runs {
			for _, by := range [...]unit.Ratio{teeLeast, teeMost} {
				kept := lose[i]
				if by == kept {
					continue
				}
				lose[i] = by
				q, sound := m.withTees(pump, vault, feed, lose)
				if !sound {
					return 0, false
				}
				if better := float64(q - best); (better > 0) != least && math.Abs(better) > float64(network.MassTolerance) {
					best, changed = q, true
				} else {
					lose[i] = kept
				}
			}
		}
	}
	return best, ok
}

// withTees is what a feed gets with the losses of the tees of each run in
// proportion.
func (m *model) withTees(pump int, vault unit.Length, feed int, lose map[int]unit.Ratio) (unit.Flow, bool) {
	t := m.trial()
	t.tees = func(path string) unit.Ratio {
		for i, by := range lose {
			if begins(path, at("/runs", i)) {
				return by
			}
		}
		return 1
	}
	d, ok := t.deliver(pump, vault)
	if !ok || d.Bound() != unit.Exact {
		return 0, false
	}
	return d.Feeds[feed].Flow, true
}
