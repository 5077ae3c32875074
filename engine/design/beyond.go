package design

import (
	"slices"

	"plashet/engine/layout"
	"plashet/engine/level"
	"plashet/job"
)

// beyond tells of the water in the runs and in the boxes at the top. Where one
// of the runs could not be worked out nothing of it is known.
func (m *model) beyond() layout.Beyond {
	b, d := layout.Beyond{Frost: m.job.Site.Frost}, m.out.Delivery
	if d == nil || len(d.Runs) < len(m.job.Runs) {
		return b
	}
	started := false
	for _, r := range d.Runs {
		i := slices.IndexFunc(m.job.Runs, func(run job.Run) bool { return run.Name == r.Name })
		if i >= 0 && m.job.Runs[i].From == "pump" && !started {
			started, b.First = true, layout.Stretch{Length: r.Length, Volume: r.Volume}
			continue
		}
		b.Volume.Value += r.Volume
	}
	b.Volume.Given = true
	quiet := m.quiet
	m.quiet = true // what is wrong with a store was told with the levels
	for _, s := range m.stores(d) {
		if s.Kind == level.KindBox {
			b.Boxes += s.Running - s.HeldOpen
		}
	}
	m.quiet = quiet
	return b
}
