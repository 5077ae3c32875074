package design

import (
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// otherEnd tells, for an assumption, how the job reads with the value at the
// other end of its usual range; false where nothing here depends on it.
// Ranges: common practice unless a source stands beside them.
func otherEnd(j *job.Job, a *trace.Assumption) bool {
	switch a.Code {
	case AssumeTemperature:
		j.Site.WaterTemperature = job.Temperature{Text: "4 C", SI: 4} // cold spring water against a summer pond
	case AssumeCrest:
		for i := range j.Watercourses {
			for k := range j.Watercourses[i].Parts {
				if l := j.Watercourses[i].Parts[k].Lip; l != nil && l.Kind == "" {
					l.Kind = "thin" // the sharpest edge against the flat sill assumed
				}
			}
		}
	case AssumeExit:
		for i := range j.Watercourses {
			if j.Watercourses[i].Box.InletLoss.IsZero() {
				j.Watercourses[i].Box.InletLoss = job.Ratio{Text: "0.5", SI: 0.5} // a widened outlet keeps half
			}
		}
	case AssumeReachN:
		for i := range j.Watercourses {
			for k := range j.Watercourses[i].Parts {
				if r := j.Watercourses[i].Parts[k].Reach; r != nil && r.N.IsZero() {
					r.N = job.Ratio{Text: "0.07", SI: 0.07} // cobbled, by Chow
				}
			}
		}
	default:
		return false
	}
	return true
}

// weigh tells for each assumption of the flow and the levels what moves when
// its value is taken to the other end of its usual range, and whether that
// turns a verdict.
func (m *model) weigh(pump int, vault unit.Length) {
	now, levels, asDrawn := m.out.Delivery, m.out.Levels, m.job
	defer func() { m.job, m.water, m.quiet = asDrawn, m.out.Water, false }()
	m.quiet = true
	for i := range m.out.Assumptions {
		a := &m.out.Assumptions[i]
		m.job = asDrawn.Clone()
		if !otherEnd(m.job, a) || !m.start() {
			continue
		}
		d, _, ok := m.deliver(pump, vault)
		if !ok {
			continue
		}
		a.Weight = append(a.Weight, trace.Effect{Figure: "pump.flow", Before: unit.Of(now.Flow, unit.KindFlow), After: unit.Of(d.Flow, unit.KindFlow)})
		a.Turns = turnsFlow(now, d)
		if levels == nil {
			continue
		}
		if l := m.levels(pump, d); l != nil {
			a.Weight = append(a.Weight, trace.Effect{Figure: "level.draw", Before: unit.Of(levels.Draw, unit.KindWater), After: unit.Of(l.Draw, unit.KindWater)})
			a.Turns = a.Turns || turnsLevel(levels, l)
		}
	}
}

// turnsFlow tells that a feed is served in one and short in the other.
func turnsFlow(a, b *Delivery) bool {
	for i := range a.Feeds {
		want := a.Feeds[i].Wanted * unit.Flow(enough)
		if want > 0 && (a.Feeds[i].Flow < want) != (b.Feeds[i].Flow < want) {
			return true
		}
	}
	return false
}

// turnsLevel tells that the levels raise other findings.
func turnsLevel(a, b *level.Levels) bool {
	if len(a.Findings) != len(b.Findings) {
		return true
	}
	for i := range a.Findings {
		if a.Findings[i].Code != b.Findings[i].Code || a.Findings[i].Severity != b.Findings[i].Severity {
			return true
		}
	}
	return false
}
