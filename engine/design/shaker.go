package design

import (
	"math"

	"plashet/engine/band"
	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/network"
	"plashet/engine/unit"
	"plashet/job"
)

// knob is what one input of a draw does to a value: it adds by times the
// input's deviation, or multiplies by e to that.
type knob struct {
	input  int
	by     float64
	factor bool
}

// value is a number of the design that inputs move.
type value struct {
	base  float64
	knobs []knob
}

func (v *value) at(e []float64) float64 {
	x := v.base
	for _, k := range v.knobs {
		if k.factor {
			x *= math.Exp(k.by * e[k.input])
		} else {
			x += k.by * e[k.input]
		}
	}
	return x
}

// size is at for what must stay above nothing: not less than a tenth of the
// base, however wide the job says that the tolerance is.
func (v *value) size(e []float64) float64 { return max(v.at(e), v.base/10) }

// shaker is a job made ready to be solved again and again with its inputs drawn
// round their readings. It holds a network of its own, whose laws it changes in
// their places.
type shaker struct {
	*doubtful
	pump   int
	sys    *system
	doubts []Doubt
	shapes []band.Shape
	of     []int          // doubt of each input
	shared map[string]int // inputs that several values have in common

	temperature value
	pumps       []shakenPump
	runs        []shakenRun
	feeds       []shakenFeed
	heights     []value // see heightsOf
	raised      float64 // of the present draw: how far the water line lies above where it was read

	line    unit.Length
	start   unit.Length // of the vault, as the answer has it
	slope   float64     // how the level that follows moves with the level assumed
	levels  *level.Inputs
	draw    level.Inputs // of the present draw
	stores  []shakenStore
	joined  level.Joined // the boxes and the pipe between them; no vessels: nothing is joined
	falls   []level.Below
	pond    level.AreaElevation
	body    level.AreaElevation
	vault   level.Vault
	sill    level.Sill
	again   level.Again
	out     *level.Levels // of the present draw; nil where there are none
	pondBy  value
	bodyBy  value
	sillBy  [2]value // width and coefficient
	drawn   unit.Flow
	past    unit.Bound  // in the present draw a pump runs past this end of its data
	row     []float64   // the present draw
	surface unit.Length // of the water the pump draws from, in the present round
}

// shakenPump is a pump in the network.
type shakenPump struct {
	link                    int
	vault                   bool // it draws from the vault
	redraw                  *hydro.Redraw
	flow, head, bend, power value
	by                      []value // of each point, how far its head was read off
	heads                   []unit.Head
	drawnPower              float64
	law                     pumpLaw // as it stands in the network
}

// shakenRun is a run: its own laws in the network.
type shakenRun struct {
	pipe                   *hydro.Pipe
	byC                    *hydro.HazenWilliams
	minor                  *hydro.Minor // nil without fittings
	bore, length, rough, c value
	losses                 []value // of each loss, the factor on its K
	rest, perRe            []float64
	drawnBore, drawnLength float64
}

// shakenFeed is a watercourse.
type shakenFeed struct {
	node  int
	lips  []shakenLip
	flow  unit.Flow
	crest int // among the heights
}

// shakenLip is a lip.
type shakenLip struct {
	law            *hydro.Lip
	width, c, tilt value
	head           unit.Head // of the present draw
}

// shakenStore is a store of the levels.
type shakenStore struct {
	size     value // factor on its sizes as taped
	run      int   // -1: none
	feed     int   // whose flow runs through it
	box      bool  // a box that the check valve holds
	lip      int   // -1: none
	head     unit.Head
	channel  *hydro.Channel // of a reach whose depth follows from its flow
	slope, n value
	depth    unit.Length
}

// input takes on an input.
func (s *shaker) input(shape band.Shape, doubt int) int {
	s.shapes, s.of = append(s.shapes, shape), append(s.of, doubt)
	return len(s.shapes) - 1
}

// move lets a new input move a value; one that moves nothing is not taken on.
func (s *shaker) move(v *value, shape band.Shape, by float64, doubt func() int) {
	if by > 0 {
		v.knobs = append(v.knobs, knob{s.input(shape, doubt()), by, false})
	}
}

// together lets an input move a value that others of a name move too.
func (s *shaker) together(name string, v *value, shape band.Shape, by float64, factor bool, doubt func() int) {
	if by <= 0 {
		return
	}
	i, met := s.shared[name]
	if !met {
		i = s.input(shape, doubt())
		s.shared[name] = i
	}
	v.knobs = append(v.knobs, knob{i, by, factor})
}

// depthOf and percent name a tolerance.
func depthOf(v float64) unit.Value { return unit.Of(unit.Length(v), unit.KindDepth) }
func percent(v float64) unit.Value { return unit.Of(unit.Ratio(v), unit.KindPercent) }

// taped lets the tolerance of an entry of the job move a value that starts at
// the entry.
func taped[Q unit.Quantity](s *shaker, v *value, e job.Entry[Q], rule, doubt, name, path string) {
	tolerance, own := off(s.doubtful, e, rule, path)
	s.move(v, band.Normal, tolerance, func() int {
		show := depthOf(tolerance)
		if rules[rule].kind == unit.KindPercent && e.SI != 0 {
			show = percent(tolerance / math.Abs(float64(e.SI)))
		}
		return s.doubt(doubt, name, path, show, own)
	})
}

// shake makes a job ready; false where it has no answer to shake.
func (m *model) shake(pump int) (*shaker, bool) {
	r := m.out
	if r.Delivery == nil {
		return nil, false
	}
	t := m.trial()
	sys, ok := t.connect(pump, r.Vault)
	if !ok || sys.solver == nil {
		return nil, false
	}
	line, ok := m.survey.Level(m.job.Pond.Water)
	if !ok {
		return nil, false
	}
	s := &shaker{doubtful: &doubtful{m: m, read: map[string]float64{}}, pump: pump, sys: sys, shared: map[string]int{}, line: line, start: r.Vault}
	s.surveyed()
	s.pumped()
	for i := range m.job.Watercourses {
		s.feed(i)
	}
	s.water()
	for i := range m.job.Runs {
		s.run(i)
	}
	if r.Levels != nil {
		if in, ok := t.levelInputs(pump, r.Delivery); ok {
			in.FlowSlope, in.FlowAt = r.Levels.Inputs().FlowSlope, r.Levels.Inputs().FlowAt
			s.levels = &in
			s.basin()
		}
	}
	return s, true
}

// Places of the heights in shaker.heights; a feed's crest stands behind them.
const (
	heightRim = iota
	heightRunning
	heightFloor
	heightSill
	heightLine // the water line itself, above the datum
	heightCrests
)

// heightsOf gives the heights that count, above the pond's water line, and that
// line above the datum; one that is not known is not a number.
func heightsOf(j *job.Job, r *job.Reduced, out []float64) {
	line, _ := r.Level(j.Pond.Water)
	set := func(i int, l job.Level) {
		z, known := r.Level(l)
		out[i] = float64(z - line)
		if !known {
			out[i] = math.NaN()
		}
	}
	out[heightLine] = float64(line)
	set(heightRim, j.Pond.Rim)
	set(heightRunning, j.Pond.RunningLine)
	set(heightFloor, j.Vault.Floor)
	set(heightSill, j.Vault.Sill)
	for i := range j.Watercourses {
		out[heightCrests+i] = math.NaN()
		for k := range j.Watercourses[i].Parts {
			if l := j.Watercourses[i].Parts[k].Lip; l != nil {
				set(heightCrests+i, l.Crest)
				break
			}
		}
	}
}

// heightEntry is an entry of the job that heights follow from.
type heightEntry struct {
	e          *job.Length
	name, path string
}

// heightEntries lists the entries whose errors move heights: rod readings, given
// elevations, and what a level is typed as or beyond its point. A benchmark is
// agreed: its elevation is in no doubt unless the job gives it a tolerance.
func heightEntries(j *job.Job) (out []heightEntry) {
	bench := map[string]bool{}
	for i := range j.Survey.Setups {
		st := &j.Survey.Setups[i]
		bench[st.Benchmark] = true
		out = append(out, heightEntry{&st.Reading, st.Benchmark, at("/survey/setups", i) + "/reading"})
	}
	for i := range j.Survey.Points {
		p, path := &j.Survey.Points[i], at("/survey/points", i)
		switch {
		case p.Elevation.IsZero():
			out = append(out, heightEntry{&p.Reading, p.Name, path + "/reading"})
		case !bench[p.Name] || p.Elevation.Tolerance != "":
			out = append(out, heightEntry{&p.Elevation, p.Name, path + "/elevation"})
		}
	}
	level := func(l *job.Level, name, path string) {
		if l.Point == "" || l.SI != 0 || l.Tolerance != "" {
			out = append(out, heightEntry{&l.Entry, name, path})
		}
	}
	level(&j.Pond.Water, "water", "/pond/water")
	level(&j.Pond.Rim, "rim", "/pond/rim")
	level(&j.Pond.RunningLine, "running line", "/pond/runningLine")
	level(&j.Vault.Floor, "vault floor", "/vault/floor")
	level(&j.Vault.Sill, "sill", "/vault/sill")
	for i := range j.Watercourses {
		for k := range j.Watercourses[i].Parts {
			if l := j.Watercourses[i].Parts[k].Lip; l != nil {
				level(&l.Crest, l.Name, at(at("/watercourses", i)+"/parts", k)+"/lip/crest")
				break
			}
		}
	}
	return out
}

// surveyed finds how each entry moves each height, by moving it a metre: the
// reduction is linear, so that is exact. What moves the water line too (the
// reading on the benchmark) moves no height above it, only the elevations told.
func (s *shaker) surveyed() {
	n := heightCrests + len(s.m.job.Watercourses)
	was, now := make([]float64, n), make([]float64, n)
	heightsOf(s.m.job, &s.m.survey, was)
	s.heights = make([]value, n)
	for k := range s.heights {
		s.heights[k].base = was[k]
	}
	j := s.m.job.Clone()
	for _, e := range heightEntries(j) {
		if e.e.IsZero() {
			continue
		}
		e.e.SI++
		reduced, _ := j.Elevations() // the faults are told
		heightsOf(j, &reduced, now)
		e.e.SI--
		input := -1
		for k := range s.heights {
			by := now[k] - was[k]
			if math.IsNaN(by) || math.Abs(by) < 1e-6 {
				continue
			}
			tolerance, own := off(s.doubtful, *e.e, AssumeDoubtLevel, e.path)
			if tolerance <= 0 {
				break
			}
			if input < 0 {
				input = s.input(band.Normal, s.doubt(DoubtLevel, e.name, e.path, depthOf(tolerance), own))
			}
			s.heights[k].knobs = append(s.heights[k].knobs, knob{input, by * tolerance, false})
		}
	}
}

// lawOf finds the law of a part of a link by its type.
func lawOf[L network.Law](n *network.Network, link int) (law L) {
	for _, p := range n.Links[link].Parts {
		if l, ok := p.Law.(L); ok {
			return l
		}
	}
	return law
}
