package design

import (
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// otherEnd gives, for an assumption, what makes the job read with the value at
// the other end of its usual range; nil where nothing here depends on it.
// Ranges: common practice unless a source stands beside them.
func otherEnd(a *trace.Assumption) func(*job.Job) {
	switch a.Code {
	case AssumeTemperature:
		return func(j *job.Job) { j.Site.WaterTemperature = job.Temperature{Text: "4 C", SI: 4} } // cold spring water
	case AssumeCrest:
		return eachPart(func(p *job.Part) {
			if p.Lip != nil && p.Lip.Kind == "" {
				p.Lip.Kind = "thin" // the sharpest edge against the flat sill assumed
			}
		})
	case AssumeReachN:
		return eachPart(func(p *job.Part) {
			if p.Reach != nil && p.Reach.N.IsZero() {
				p.Reach.N = job.Ratio{Text: "0.07", SI: 0.07} // cobbled, by Chow
			}
		})
	case AssumeLossRange:
		return func(j *job.Job) { eachLoss(j, a) }
	case AssumeExit:
		return func(j *job.Job) {
			for i := range j.Watercourses {
				if j.Watercourses[i].Box.InletLoss.IsZero() {
					j.Watercourses[i].Box.InletLoss = job.Ratio{Text: "0.5", SI: 0.5} // a widened outlet keeps half
				}
			}
		}
	}
	return nil
}

// eachLoss puts the high end of a fitting's range in its place.
func eachLoss(j *job.Job, a *trace.Assumption) {
	for _, arg := range a.Args {
		if arg.Name == "high" {
			for i := range j.Runs {
				for k := range j.Runs[i].Fittings {
					if at(at("/runs", i)+"/fittings", k)+"/k" == a.Path {
						j.Runs[i].Fittings[k].K = job.Ratio{Text: "high", SI: unit.Ratio(arg.Value.SI)}
					}
				}
			}
		}
	}
}

func eachPart(do func(*job.Part)) func(*job.Job) {
	return func(j *job.Job) {
		for i := range j.Watercourses {
			for k := range j.Watercourses[i].Parts {
				do(&j.Watercourses[i].Parts[k])
			}
		}
	}
}

// weigh tells for each assumption of the flow and the levels what moves when
// its value is taken to the other end of its usual range, and whether that
// turns a verdict.
func (m *model) weigh(pump int, vault unit.Length) {
	now, levels := m.out.Delivery, m.out.Levels
	done := map[string]*trace.Assumption{}
	for i := range m.out.Assumptions {
		a := &m.out.Assumptions[i]
		if same := done[a.Code]; same != nil && a.Code != AssumeLossRange {
			a.Weight, a.Turns = same.Weight, same.Turns // all of a kind are moved together
			continue
		}
		change := otherEnd(a)
		if change == nil && a.Code != AssumeTee {
			continue
		}
		done[a.Code] = a
		t := m.trial()
		t.job = m.job.Clone()
		if a.Code == AssumeTee {
			t.tees = func(string) unit.Ratio { return teeMost }
		} else {
			change(t.job)
		}
		if !t.start() {
			continue
		}
		d, ok := t.deliver(pump, vault)
		if !ok {
			continue
		}
		a.Weight = append(a.Weight, trace.Effect{Figure: "pump.flow", Before: unit.Of(now.Flow, unit.KindFlow), After: unit.Of(d.Flow, unit.KindFlow)})
		a.Turns = turnsFlow(now, d)
		if levels == nil {
			continue
		}
		in := levels.Inputs()
		leans := func(unit.Length) (unit.Length, float64) { return in.FlowAt, in.FlowSlope }
		if l := t.levels(pump, d, leans); l != nil {
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
