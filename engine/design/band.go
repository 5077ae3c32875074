package design

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/band"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Bands tell how sure the answer is: the job solved many times, each time with
// its inputs drawn round what was read, by their tolerances.
type Bands struct {
	Draws   int
	Failed  int // of these, draws that came to no answer; they count in no band
	Seed    uint64
	Doubts  []Doubt
	Outputs []Banded
	// Motion are the bands of start and stop, of Moved draws only, and not
	// calibrated: levels from the water line, and times. They have no shares.
	Motion  []Banded
	Moved   int
	Chances []Chance
}

// Banded is the band of one figure: 90 of 100 draws lie from Low to High, as
// many below as above.
type Banded struct {
	Figure            string // ID of the figure
	Name              string // of the feed, run or pump; empty where the figure says all
	Value             unit.Value
	Low, Middle, High unit.Value
	Shares            []Doubtful // what makes the spread, most first
	Together          unit.Ratio
}

// Doubtful is the part of a doubt in the spread of a figure.
type Doubtful struct {
	Doubt int // among the doubts
	Part  unit.Ratio
}

// Chance is how often the draws come to a verdict.
type Chance struct {
	Code string // of the finding that tells the verdict
	Path string
	Name string
	Part unit.Ratio // of the draws
	Now  bool       // the design as it stands comes to it
}

// Codes of what could turn.
const (
	// FindMayShort: a feed that is served may be short. Args: name, percent (of the draws), limit.
	FindMayShort = "design.band.short"
	// FindMayDry: a feed that runs may get no water. Args: name, percent.
	FindMayDry = "design.band.dry"
	// FindMaySpill: the pond may run over at a stop. Args: percent.
	FindMaySpill = "design.band.spills"
	// FindMayStart: the water may not suffice at first start. Args: percent.
	FindMayStart = "design.band.start"
	// FindMayStarve: the water may not suffice for the pump, every time. Args: percent.
	FindMayStarve = "design.band.starves"
	// FindMayBare: the pump may stand in less water than its sheet asks for. Args: percent, limit.
	FindMayBare = "design.band.low"
)

// Parts of the draws from which it is told that a verdict could turn.
const seldom unit.Ratio = 0.05

// unmoved, in the unit of the figure (m, m³/s and so on), is a spread that comes
// from rounding and from ends of searches only.
const unmoved = 1e-8

// output is a figure to be drawn.
type output struct {
	id, name string
	now      unit.Value
	read     func() float64
}

// verdict is a finding to be counted.
type verdict struct {
	code, told, path, name string
	severity               trace.Severity
	now                    bool
	holds                  func() bool
	limit                  unit.Value
	limitBy                trace.Source
}

// bands draws the job and reads the bands.
func (m *model) bands(pump, draws int, seed uint64) {
	if d := m.out.Delivery; d == nil || d.Bound() != unit.Exact || d.Several {
		return // what is no figure, or one of several, or was not found, has no band
	}
	s, ok := m.shake(pump)
	if !ok || len(s.shapes) == 0 {
		return
	}
	outputs, verdicts := s.outputs(), s.verdicts()
	sample := band.Draw(s.shapes, draws, seed)
	n := sample.Len()
	values, held := make([][]float64, len(outputs)), make([]int, len(verdicts))
	all := make([]float64, n*len(outputs))
	for k := range values {
		values[k] = all[k*n : (k+1)*n]
	}
	b := &Bands{Draws: n, Seed: seed, Doubts: s.doubts}
	row := make([]float64, len(s.shapes))
	past := pastEnds{}
	for i := range n {
		sample.Row(i, row)
		solved := s.solve(row)
		past.count(s.past, solved)
		for k := range outputs {
			values[k][i] = math.NaN()
			if solved {
				values[k][i] = outputs[k].read()
			}
		}
		if !solved {
			b.Failed++
			continue
		}
		for k := range verdicts {
			if verdicts[k].holds() {
				held[k]++
			}
		}
	}
	for k, x := range sample.Study(values) {
		if math.IsNaN(x.Low) {
			continue
		}
		o := &outputs[k]
		of := func(v float64) unit.Value { return unit.Value{SI: v, Kind: o.now.Kind} }
		out := Banded{Figure: o.id, Name: o.name, Value: o.now, Low: of(x.Low), Middle: of(x.Middle), High: of(x.High)}
		past.bound(&out)
		if x.Deviation > unmoved {
			out.Shares, out.Together = s.shares(x.Shares), unit.Ratio(x.Together)
		}
		b.Outputs = append(b.Outputs, out)
	}
	for k := range verdicts {
		m.turn(b, &verdicts[k], held[k])
	}
	past.find(m, pump)
	m.drawMoved(s, b, draws)
	m.out.Bands = b
}

// turn notes how often a verdict was met, and finds it where it could come to
// pass though the design as it stands does not come to it.
func (m *model) turn(b *Bands, v *verdict, held int) {
	part := unit.Ratio(held) / unit.Ratio(max(1, b.Draws-b.Failed))
	b.Chances = append(b.Chances, Chance{Code: v.told, Path: v.path, Name: v.name, Part: part, Now: v.now})
	if v.now || part < seldom {
		return
	}
	m.find(trace.Finding{
		Message: trace.Message{Code: v.code, Args: []trace.Arg{trace.Str("name", v.name), trace.Num("percent", part, unit.KindPercent)}},
		Path:    v.path, Severity: v.severity, Limit: v.limit, LimitSource: v.limitBy,
	})
}

// shares gathers the shares of the inputs by what is in doubt, most first.
func (s *shaker) shares(of []float64) []Doubtful {
	sum := make([]float64, len(s.doubts))
	for i, v := range of {
		sum[s.of[i]] += v
	}
	var out []Doubtful
	for d, v := range sum {
		if v > 0 {
			out = append(out, Doubtful{d, unit.Ratio(v)})
		}
	}
	slices.SortStableFunc(out, func(a, b Doubtful) int { return cmp.Compare(b.Part, a.Part) })
	return out
}

// outputs lists the figures that are drawn, each with how to read it after a
// draw.
func (s *shaker) outputs() (out []output) {
	d, state := s.m.out.Delivery, s.sys.state
	add := func(id, name string, now unit.Value, read func() float64) {
		out = append(out, output{id, name, now, read})
	}
	flow := func(link int) func() float64 {
		return func() float64 { return max(0, float64(state.Links[link].Flow)) }
	}
	p := &s.pumps[0]
	add("pump.flow", d.Pump, unit.Of(d.Flow, unit.KindFlow), flow(p.link))
	add("pump.head", d.Pump, unit.Of(d.Head, unit.KindHead), func() float64 { return -float64(state.Links[p.link].Loss) })
	if d.Power > 0 && d.Flow > 0 {
		add("pump.power", d.Pump, unit.Of(d.Power, unit.KindPower), func() float64 { return s.power(p) })
	}
	if d.Energy > 0 && d.Flow > 0 {
		now := d.Power
		for i := range d.Others {
			now += d.Others[i].Power
		}
		seconds := float64(d.Energy) / float64(now)
		add("pump.energy", "", unit.Of(d.Energy, unit.KindEnergy), func() float64 {
			sum := 0.0
			for i := range s.pumps {
				sum += s.power(&s.pumps[i])
			}
			return sum * seconds
		})
	}
	for i := range d.Others {
		add(OtherID(i)+".flow", d.Others[i].Name, unit.Of(d.Others[i].Flow, unit.KindFlow), flow(s.pumps[i+1].link))
	}
	for i := range d.Runs {
		r, link := &d.Runs[i], s.sys.runs[i]
		add(runID(i)+".speed", r.Name, unit.Of(r.Speed, unit.KindSpeed), func() float64 {
			return float64(state.Links[link].Flow) / (math.Pi / 4 * s.runs[i].drawnBore * s.runs[i].drawnBore)
		})
	}
	for i := range d.Feeds {
		f, x := &d.Feeds[i], &s.feeds[i]
		add(FeedID(i)+".flow", f.Name, unit.Of(f.Flow, unit.KindFlow), func() float64 { return max(0, float64(x.flow)) })
		for k := range f.Lips {
			if k < len(x.lips) {
				add(LipID(i, k)+".head", f.Lips[k].Name, unit.Of(f.Lips[k].Sheet.Head, unit.KindDepth), func() float64 { return float64(x.lips[k].head) })
			}
		}
	}
	if s.levels != nil {
		out = append(out, s.levelOutputs()...)
	}
	return out
}

// power is what a pump draws in the present draw.
func (s *shaker) power(p *shakenPump) float64 {
	w, _, _ := p.redraw.Curve.Power(max(0, s.sys.state.Links[p.link].Flow))
	return float64(w) * p.drawnPower
}

// levelOutputs lists the levels of the first start and of everyday.
func (s *shaker) levelOutputs() (out []output) {
	l := s.m.out.Levels
	at := func(c level.Course, m level.Moment, read func(*level.State) unit.Length) func() float64 {
		return func() float64 {
			for i := range s.out.States {
				if st := &s.out.States[i]; st.Course == c && st.Moment == m {
					return float64(read(st))
				}
			}
			return math.NaN()
		}
	}
	reads := []struct {
		suffix string
		kind   unit.Kind
		when   func(st *level.State) bool
		read   func(st *level.State) unit.Length
	}{
		{".change", unit.KindDepth, func(*level.State) bool { return true }, func(st *level.State) unit.Length { return st.Change }},
		{".sill", unit.KindDepth, func(st *level.State) bool { return st.Sill.Applies }, func(st *level.State) unit.Length { return st.Sill.Over }},
		{".pump", unit.KindDepth, func(st *level.State) bool { return st.Pump.Applies }, func(st *level.State) unit.Length { return st.Pump.Over }},
		{".vault", unit.KindElevation, func(st *level.State) bool { return st.Moment.Running() && s.levels.Vault != nil }, func(st *level.State) unit.Length { return st.Vault + unit.Length(s.raised) }},
		{".freeboard", unit.KindDepth, func(st *level.State) bool { return !st.Moment.Running() && st.Edge.Known }, func(st *level.State) unit.Length { return st.Edge.Freeboard }},
	}
	for _, c := range []level.Course{level.CourseFirst, l.Everyday()} {
		for _, m := range []level.Moment{level.MomentRun, level.MomentHeld, level.MomentOpen} {
			st, there := l.Find(c, m)
			for _, r := range reads {
				if there && r.when(&st) {
					id := "level." + string(c) + "." + string(m) + r.suffix
					out = append(out, output{id, "", unit.Value{SI: float64(r.read(&st)), Kind: r.kind}, at(c, m, r.read)})
				}
			}
		}
	}
	return out
}
