package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// holding tells what a check valve holds after a stop.
type holding struct {
	runs   []bool          // of each run: its water stays
	places map[string]bool // from there water runs back to the vault
}

// closed tells for each run whether a check valve holds it after a stop. Water
// runs back from a place when a way leads from there to a pump in the vault on
// which no valve stands against it: the one in the assembly at the pump in use,
// one in a run against the water that comes back through it. A pump at rest is
// no valve.
func (m *model) closed() holding {
	h := holding{runs: make([]bool, len(m.job.Runs)), places: map[string]bool{}}
	for i := range h.runs {
		h.runs[i] = true
	}
	h.places["pump"] = !m.assemblyHolds()
	pumps := map[string]bool{"pump": true}
	for i := range m.job.FurtherPumps {
		f := &m.job.FurtherPumps[i]
		h.places[f.Name], pumps[f.Name] = f.From == "", true
	}
	open := func(place string) bool {
		was := h.places[place]
		h.places[place] = true
		return !was
	}
	for more := true; more; {
		more = false
		for i := range m.job.Runs {
			r := &m.job.Runs[i]
			if h.places[r.From] && !hasCheck(r) {
				h.runs[i], more = false, open(r.To) || more
			}
			// Its water may also leave onward, to where another way leads down.
			if h.places[r.To] && !pumps[r.From] {
				h.runs[i], more = false, open(r.From) || more
			}
		}
		for i := range m.job.FurtherPumps {
			switch f := &m.job.FurtherPumps[i]; {
			case f.From == "":
			case h.places[f.From]:
				more = open(f.Name) || more
			case h.places[f.Name]:
				more = open(f.From) || more
			}
		}
	}
	return h
}

// assemblyHolds tells that a check valve of the assembly stands against the
// water that comes back to the pump in use.
func (m *model) assemblyHolds() bool {
	return slices.ContainsFunc(m.job.Assembly.Parts, func(p job.Laid) bool { return isCheck(p.Fitting) && !p.Reverse })
}

func hasCheck(r *job.Run) bool {
	for _, f := range r.Fittings {
		if isCheck(f.Fitting) {
			return true
		}
	}
	return false
}

// stores lists what holds water on its way, in the order it fills.
func (m *model) stores(d *Delivery) []level.Store {
	s, closed := storing{m: m, falls: m.falls()}, m.closed()
	for _, r := range d.Runs {
		s.run(&r, closed.runs[r.Index])
	}
	for i := range m.job.Watercourses {
		if d.Feeds[i].Dry {
			continue // nothing ever fills it
		}
		s.watercourse(i, &d.Feeds[i], !closed.places[m.job.Watercourses[i].Name])
	}
	return s.out
}

// storing gathers stores.
type storing struct {
	m     *model
	out   []level.Store
	falls []level.Below // of each watercourse's box; nil: none does
	// The water behind the next lip: its area and the part of it that is water.
	behind unit.Area
	void   unit.Ratio
}

// add takes a store on; one that no valve holds keeps after a stop only what
// runs back from nowhere.
func (s *storing) add(path string, closed bool, store level.Store, err error) {
	if err != nil {
		s.m.refuse(path, err)
		return
	}
	if !closed {
		store.Held, store.Joined = store.HeldOpen, false
	}
	s.out = append(s.out, store)
}

func (s *storing) run(r *Run, closed bool) {
	run := &s.m.job.Runs[r.Index]
	// Where the job does not say, the worse is taken.
	drains := run.Drains || !run.HoldsWater
	if !run.Drains && !run.HoldsWater {
		s.m.assume(r.Path+"/drains", AssumeDrains, unit.Value{}, practice, trace.Str("name", run.Name))
	}
	store, err := level.Run(r.Name, r.Path, r.Volume, drains)
	s.add(r.Path, closed, store, err)
}

func (s *storing) watercourse(i int, f *Feed, closed bool) {
	w := &s.m.job.Watercourses[i]
	path := at("/watercourses", i)
	size := level.BoxSize{Depth: w.Box.Depth.SI, Inlet: w.Box.Inlet.SI}
	if s.falls != nil {
		size.Fall = s.falls[i].Fall
	}
	s.box(path+"/box", w, size, closed)
	for k := range w.Parts {
		p, at := &w.Parts[k], at(path+"/parts", k)
		switch {
		case p.Lip != nil:
			s.lip(at+"/lip", f)
		case p.Pool != nil:
			s.pool(at+"/pool", p.Pool)
		case p.Reach != nil:
			if size, ok := s.m.reach(at+"/reach", p.Reach, f.Flow); ok {
				store, err := level.Reach(p.Reach.Name, at+"/reach", size)
				s.add(at+"/reach", true, store, err)
			}
		}
	}
}

func (s *storing) box(path string, w *job.Watercourse, size level.BoxSize, closed bool) {
	b := &w.Box
	s.behind, s.void = unit.Area(b.Length.SI*b.Width.SI), b.Void.Or(1)
	size.Volume = b.Volume.Or(unit.Volume(float64(s.behind) * float64(b.Depth.SI) * float64(s.void)))
	if size.Volume <= 0 {
		return
	}
	if b.Void.IsZero() {
		s.m.assumeOnce(path+"/void", AssumeBoxVoid, unit.Of(unit.Ratio(1), unit.KindPercent))
	}
	if b.Inlet.IsZero() {
		s.m.assumeOnce(path+"/inlet", AssumeBoxInlet, unit.Of(unit.Length(0), unit.KindTape))
	}
	store, err := level.Box(w.Name, path, size)
	s.add(path, closed, store, err)
}

// lip takes the head over a lip, which a lip at fault has not.
func (s *storing) lip(path string, f *Feed) {
	for k := range f.Lips {
		if l := &f.Lips[k]; l.Path == path && s.behind > 0 && f.Flow > 0 {
			store, err := level.Lip(l.Name, path, l.Sheet.Head, s.behind, s.void)
			s.add(path, true, store, err)
		}
	}
	s.behind, s.void = 0, 1 // water behind the next lip is the next pool's
}

func (s *storing) pool(path string, p *job.Pool) {
	s.behind, s.void = p.Area.Or(unit.Area(p.Length.SI*p.Width.SI)), 1
	if p.Depth.IsZero() {
		s.m.assume(path+"/depth", AssumePoolDepth, unit.Of(unit.Length(0), unit.KindDepth), practice, trace.Str("name", p.Name))
	}
	store, err := level.Pool(p.Name, path, s.behind, p.Depth.SI, p.Leaks)
	s.add(path, true, store, err)
}

// reach gives a reach as it runs: the depth measured, or by Manning's formula.
func (m *model) reach(path string, r *job.Reach, q unit.Flow) (level.ReachSize, bool) {
	if r.Wetted.IsZero() {
		m.assumeOnce(path+"/wetted", AssumeWetted, unit.Of(unit.Ratio(1), unit.KindPercent))
	}
	if r.Holds.IsZero() {
		m.assumeOnce(path+"/holds", AssumeHolds, unit.Of(unit.Length(0), unit.KindDepth))
	}
	size := level.ReachSize{Depth: r.Depth.SI, Wetted: r.Width.SI * unit.Length(r.Wetted.Or(1)), Length: r.Length.SI, Holds: r.Holds.SI}
	if q <= 0 {
		size.Depth = size.Holds
		return size, true
	}
	if !r.Depth.IsZero() {
		return size, true
	}
	if r.Slope.IsZero() {
		m.fault(path+"/slope", CodeNoLevel, trace.Str("name", r.Name))
		return size, false
	}
	if r.N.IsZero() {
		m.assume(path+"/n", AssumeReachN, unit.Of(defaultReachN, unit.KindRatio), memoryChow, trace.Str("name", r.Name))
	}
	flow, err := hydro.Channel{Width: size.Wetted, Slope: r.Slope.SI, N: r.N.Or(defaultReachN)}.Normal(q)
	if err != nil {
		m.refuse(path, err)
		return size, false
	}
	size.Depth = max(flow.Depth, size.Holds)
	return size, true
}
