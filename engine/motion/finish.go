package motion

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/unit"
)

// sample adds to the series, and leaves out a sample that lies on the line
// between its neighbours.
func (c *course) sample() {
	now := Sample{
		At: seconds(c.t), Pond: unit.Length(c.zPond), Vault: unit.Length(c.zVault), Drawn: unit.Flow(c.drawn), Back: unit.Flow(c.back),
		Returns: unit.Flow(c.returns), Stored: unit.Volume(c.stored()), Over: unit.Volume(c.x[stOver]),
	}
	if c.waits && !c.between(&now) {
		c.out.Series = append(c.out.Series, c.waiting)
		c.kept = c.waiting
	}
	if len(c.out.Series) == 0 {
		c.out.Series = append(make([]Sample, 0, 64), now)
		c.kept = now
		return
	}
	c.waiting, c.waits = now, true
}

// between tells that the sample that waits lies on the line from the last one
// kept to this one.
func (c *course) between(now *Sample) bool {
	whole := float64(now.At - c.kept.At)
	if whole <= 0 {
		return false
	}
	part := float64(c.waiting.At-c.kept.At) / whole
	off := func(a, b, v float64) float64 { return math.Abs(a + part*(b-a) - v) }
	k, w := &c.kept, &c.waiting
	return off(float64(k.Pond), float64(now.Pond), float64(w.Pond)) < thin && off(float64(k.Vault), float64(now.Vault), float64(w.Vault)) < thin &&
		off(float64(k.Drawn+k.Back), float64(now.Drawn+now.Back), float64(w.Drawn+w.Back)) < thinFlow*c.s.flow &&
		off(float64(k.Returns), float64(now.Returns), float64(w.Returns)) < thinFlow*c.s.flow
}

// finish gathers the answer.
func (c *course) finish() Course {
	o, s := &c.out, c.s
	if c.gasp {
		c.gasped += c.t - c.gaspFrom
	}
	o.Took, o.DryFor, o.Gasping, o.Passes = seconds(c.t), seconds(c.gasped), c.gasp, unit.Flow(c.drawn)
	o.Over, o.Added, o.Back, o.Down, o.Pumped = unit.Volume(c.x[stOver]), unit.Volume(c.x[stAdded]), unit.Volume(c.x[stBack]), unit.Volume(c.x[stReturn]), unit.Volume(c.x[stPumped])
	o.Stored, o.Evals = unit.Volume(c.stored()), c.evals // but the last, for the levels
	if c.waits {
		o.Series = append(o.Series, c.waiting)
	}
	o.Events = slices.Clone(c.events)
	slices.SortStableFunc(o.Events, func(a, b Event) int { return cmp.Compare(a.At, b.At) })
	for _, e := range o.Events {
		switch e.Code {
		case EventDry:
			if !o.Dry {
				o.Dry, o.DryAt = true, e.At
			}
		case EventSill:
			if !o.Cut {
				o.Cut, o.CutAt = true, e.At
			}
		case EventRim:
			if !o.Spills {
				o.Spills, o.RimAt = true, e.At
			}
		case EventStill:
			o.Still, o.StillAt = true, e.At
		case EventPipeFull, EventLip, EventRecovers, EventRimEnds, EventSiphonEnds, EventPipeEmpty, EventCut:
		}
	}
	c.close = exactly
	c.rates(c.t, c.x, s.steps.tmp)
	off := c.water(c.zPond, c.zVault) - c.x[stAdded] - c.total
	o.Mass = unit.Ratio(off / max(s.transit, 1e-3))
	if c.joined && s.in.Vault != nil {
		v := s.vault.volume(c.zVault)
		c.x[stPond], c.x[stVault] = c.x[stPond]-v, v
	}
	o.End = Moment{Pond: unit.Length(c.zPond), Vault: unit.Length(c.zVault), x: c.x}
	return *o
}
