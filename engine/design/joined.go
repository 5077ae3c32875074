package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of boxes that pipe joins beyond the check valve.
const (
	// FindJoined says that with the check valve holding a box runs down into a lower one at every stop. Args: name, to (the lower box), back (volume), fall (of its level).
	FindJoined = "design.box.joined"
	// AssumePipeFull says that pipe which joins boxes is taken to stay full after a stop. Args: value (water in the runs up to the boxes that run down, which could come on top).
	AssumePipeFull = "assume.run.full"
)

// joined makes the boxes and the pipe between them as they stand after a stop:
// a check valve in a run lets water on, not back; a pump at rest lets it pass.
// The ways are the runs in the job's order, then the further pumps that draw
// from a place of the pipe. False where there is nothing to join.
func (m *model) joined() (level.Joined, bool) {
	n := len(m.job.Watercourses)
	j := level.Joined{Vessels: make([]level.Vessel, n)}
	if n < 2 {
		return j, false
	}
	places := make(map[string]int, n+len(m.job.Runs)+1)
	for i := range m.job.Watercourses {
		w := &m.job.Watercourses[i]
		crest, known := m.firstCrest(i)
		if !known {
			return j, false // its flow has no answer either
		}
		places[w.Name] = i
		j.Vessels[i] = level.Vessel{Crest: crest, Depth: w.Box.Depth.SI, Inlet: w.Box.Inlet.SI}
	}
	place := func(name string) int {
		i, met := places[name]
		if !met {
			i = len(places)
			places[name] = i
		}
		return i
	}
	for i := range m.job.Runs {
		r := &m.job.Runs[i]
		j.Ways = append(j.Ways, level.Way{From: place(r.From), To: place(r.To), OneWay: hasCheck(r)})
	}
	for i := range m.job.FurtherPumps {
		if f := &m.job.FurtherPumps[i]; f.From != "" {
			j.Ways = append(j.Ways, level.Way{From: place(f.From), To: place(f.Name)})
		}
	}
	j.Places = len(places)
	return j, true
}

// firstCrest gives the level of a watercourse's first lip.
func (m *model) firstCrest(i int) (unit.Length, bool) {
	for k := range m.job.Watercourses[i].Parts {
		if l := m.job.Watercourses[i].Parts[k].Lip; l != nil {
			return m.survey.Level(l.Crest)
		}
	}
	return 0, false
}

// falls tells how far each watercourse's box falls at a stop with the check
// valve holding; nil where none does.
func (m *model) falls() []level.Below {
	j, ok := m.joined()
	if !ok {
		return nil
	}
	out := make([]level.Below, len(j.Vessels))
	j.Settle(out)
	return out
}

// boxes joins the stores of boxes that a check valve holds; nil where nothing
// joins any.
func (m *model) boxes(stores []level.Store) *level.Boxes {
	j, ok := m.joined()
	if !ok {
		return nil
	}
	closed := m.closed()
	out := &level.Boxes{Joined: &j}
	for i := range m.job.Watercourses {
		path := at("/watercourses", i) + "/box"
		k := slices.IndexFunc(stores, func(s level.Store) bool { return s.Path == path })
		if closed.places[m.job.Watercourses[i].Name] {
			k = -1
		}
		out.Store = append(out.Store, k)
	}
	return out
}

// judgeJoined tells of boxes that run down at every stop.
func (m *model) judgeJoined() {
	in := m.out.Levels.Inputs()
	var pipe unit.Volume
	falls := m.falls()
	for i := range in.Stores {
		s := &in.Stores[i]
		if !s.Joined || s.Running-s.Held < drop {
			continue
		}
		for k := range m.job.Watercourses {
			w, path := &m.job.Watercourses[k], at("/watercourses", k)+"/box"
			if path != s.Path {
				continue
			}
			fall := falls[k].Fall
			if d := w.Box.Depth.SI; d > 0 {
				fall = min(fall, d-w.Box.Inlet.SI)
			}
			m.find(trace.Finding{
				Path: path, Severity: trace.Info, Found: unit.Of(s.Running-s.Held, unit.KindWater),
				Message: trace.Message{Code: FindJoined, Args: []trace.Arg{
					trace.Str("name", w.Name), trace.Str("to", m.job.Watercourses[falls[k].To].Name),
					trace.Num("back", s.Running-s.Held, unit.KindWater), trace.Num("fall", fall, unit.KindDepth),
				}},
			})
			for r := range m.out.Delivery.Runs {
				if run := &m.out.Delivery.Runs[r]; m.job.Runs[run.Index].To == w.Name {
					pipe += run.Volume
				}
			}
		}
	}
	if pipe > 0 {
		m.assume("/runs", AssumePipeFull, unit.Of(pipe, unit.KindWater), practice)
	}
}

// resistance reads the loss of a run at the speed of water that runs back: R of
// h = R Q².
func resistance(sys *system, k int) (r float64) {
	q := unit.Flow(float64(hydro.BoreArea(sys.pipes[k].bore)) * backSpeed)
	for _, p := range sys.net.Links[sys.runs[k]].Parts {
		if p.Law != nil {
			h, _ := p.Law.Loss(q)
			r += float64(h) / float64(q) / float64(q)
		}
	}
	return r
}
