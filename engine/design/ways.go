package design

import (
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// ways makes the feeds: their parts from the stores of the levels, so that both
// tell of the same water.
func (m *model) ways(sys *system, in *level.Inputs) ([]motion.Feed, bool) {
	closed := m.closed()
	stores := map[string]*level.Store{}
	for i := range in.Stores {
		stores[in.Stores[i].Path] = &in.Stores[i]
	}
	out := make([]motion.Feed, 0, len(m.job.Watercourses))
	ends := m.ends()
	for i := range m.job.Watercourses {
		w, path := &m.job.Watercourses[i], at("/watercourses", i)
		if len(sys.lips[i]) == 0 || len(m.out.Delivery.Feeds) <= i {
			return nil, false
		}
		f := motion.Feed{
			Name: w.Name, Path: path, Crest: sys.lips[i][0].crest, Depth: w.Box.Depth.SI, Inlet: w.Box.Inlet.SI,
			Valve: !closed.places[w.Name], Parts: m.waterParts(i, sys.lips[i], stores),
		}
		for k := range m.job.Runs {
			if r, n := stores[at("/runs", k)], len(ends[k]); r != nil && slices.Contains(ends[k], w.Name) {
				share := unit.Volume(n)
				f.Pipe, f.PipeHeld, f.PipeOpen = f.Pipe+r.Running/share, f.PipeHeld+r.Held/share, f.PipeOpen+r.HeldOpen/share
			}
		}
		f.PipeHeld, f.PipeOpen = min(f.PipeHeld, f.Pipe), min(f.PipeOpen, f.PipeHeld, f.Pipe)
		m.wayBack(sys, w.Name, &f)
		out = append(out, f)
	}
	m.assume("/pumps", AssumeStopped, unit.Of(defaultStopped, unit.KindRatio), memoryPump)
	return out, true
}

// joinedWays makes the pipe that joins the boxes beyond the check valves, each run
// with its loss at one speed; a pump at rest takes little beside its pipe.
func (m *model) joinedWays(sys *system) (ways []motion.Way, places int) {
	j, ok := m.joined()
	if !ok {
		return nil, 0
	}
	for i, w := range j.Ways {
		way := motion.Way{Way: w}
		if i < len(sys.runs) {
			way.Back = resistance(sys, i)
		}
		ways = append(ways, way)
	}
	return ways, j.Places
}

// ends gives for each run the watercourses that its water goes on to, the way it
// runs, which in a loop may be against the way that the job names it; one that the
// pump does not reach takes none of it.
func (m *model) ends() [][]string {
	out := make([][]string, len(m.job.Runs))
	from, to := make([]string, len(out)), make([]string, len(out))
	for k := range out {
		from[k], to[k] = m.job.Runs[k].From, m.job.Runs[k].To
	}
	for i := range m.out.Delivery.Runs {
		if r := &m.out.Delivery.Runs[i]; r.Flow < 0 {
			from[r.Index], to[r.Index] = to[r.Index], from[r.Index]
		}
	}
	for i := range m.job.Watercourses {
		name := m.job.Watercourses[i].Name
		if m.out.Delivery.Feeds[i].Dry {
			continue
		}
		reached := map[string]bool{name: true}
		for more := true; more; {
			more = false
			for k := range out {
				if reached[to[k]] && !slices.Contains(out[k], name) {
					out[k], reached[from[k]], more = append(out[k], name), true, true
				}
			}
		}
	}
	return out
}

// backSpeed is the speed at which the loss of a run is read for the way back, in
// m/s: the water runs back about that fast.
const backSpeed = 1.0

// wayBack sums the resistance from a box back to the pump: the runs on one way
// (of a loop the one that the job names first), each by its loss at one speed,
// and the stopped pump.
func (m *model) wayBack(sys *system, place string, f *motion.Feed) {
	last := -1
	for steps := 0; steps <= len(m.job.Runs); steps++ {
		k := slices.IndexFunc(m.job.Runs, func(r job.Run) bool { return r.To == place })
		if k < 0 || k >= len(sys.runs) {
			break
		}
		f.Back += resistance(sys, k)
		last, place = k, m.job.Runs[k].From
	}
	if last < 0 {
		return
	}
	f.Bore = hydro.BoreArea(sys.pipes[last].bore)
	f.Back += float64(defaultStopped) / (2 * unit.StandardGravity * float64(f.Bore) * float64(f.Bore))
}

// The plans on which rain falls: of a box, a pool, a reach from edge to edge.
func boxPlan(b *job.Box) unit.Area { return unit.Area(b.Length.SI * b.Width.SI) }

func poolPlan(p *job.Pool) unit.Area { return p.Area.Or(unit.Area(p.Length.SI * p.Width.SI)) }

func reachPlan(r *job.Reach) unit.Area { return unit.Area(r.Length.SI * r.Width.SI) }

// rainOn adds them up for all watercourses.
func (m *model) rainOn() (a unit.Area) {
	for i := range m.job.Watercourses {
		w := &m.job.Watercourses[i]
		a += boxPlan(&w.Box)
		for k := range w.Parts {
			switch p := &w.Parts[k]; {
			case p.Pool != nil:
				a += poolPlan(p.Pool)
			case p.Reach != nil:
				a += reachPlan(p.Reach)
			}
		}
	}
	return a
}

// waterParts lists box, pools and reaches of a watercourse.
func (m *model) waterParts(i int, lips []feedLip, stores map[string]*level.Store) []motion.Part {
	w, f, path := &m.job.Watercourses[i], &m.out.Delivery.Feeds[i], at("/watercourses", i)
	part := func(name, path string, plan unit.Area) motion.Part {
		p := motion.Part{Name: name, Path: path, Plan: plan}
		if s := stores[path]; s != nil {
			p.Full, p.Held, p.HeldOpen = s.Running, s.Held, s.HeldOpen
		}
		return p
	}
	out := []motion.Part{part(w.Name, path+"/box", boxPlan(&w.Box))}
	open := true // the last part waits for its lip
	for k := range w.Parts {
		p, at := &w.Parts[k], at(path+"/parts", k)
		switch {
		case p.Lip != nil:
			l := slices.IndexFunc(lips, func(l feedLip) bool { return l.index == k })
			if s := stores[at+"/lip"]; open && s != nil && l >= 0 {
				if h, _ := lips[l].law.Head(f.Flow); h > 0 {
					last := &out[len(out)-1]
					last.Lip, last.Area = lips[l].law, unit.Area(float64(s.Running)/float64(h))
				}
			}
			open = false
		case p.Pool != nil:
			r := part(p.Pool.Name, at+"/pool", poolPlan(p.Pool))
			if p.Pool.Leaks {
				r.Empties = defaultPoolLeak
				m.assume(at+"/pool/leaks", AssumePoolLeak, unit.Of(defaultPoolLeak, unit.KindDuration), practice, trace.Str("name", p.Pool.Name))
			}
			out, open = append(out, r), true
		case p.Reach != nil:
			r := part(p.Reach.Name, at+"/reach", reachPlan(p.Reach))
			r.Reach, r.Flow = true, f.Flow
			out, open = append(out, r), false
		}
	}
	return out
}
