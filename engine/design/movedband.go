package design

import (
	"math"

	"plashet/engine/band"
	"plashet/engine/level"
	"plashet/engine/motion"
	"plashet/engine/unit"
)

// movedDraws is how many draws are followed through time. Each takes a hundred
// times as long as one at rest; of 64 an end of a band is good to about a tenth
// of the band's width. These bands are not calibrated.
const movedDraws = 64

// movedBand is a figure of start and stop to be drawn.
type movedBand struct {
	id   string
	now  unit.Value
	read func(v *Motion) float64
}

// movedBands lists them: how low the vault and how high the pond come, from the
// water line, and when the pump draws air where it does.
func (m *model) movedBands() (out []movedBand) {
	line := m.out.Motion.Line
	add := func(c MovingCase, suffix string, kind unit.Kind, read func(x *Moving) float64) {
		x := m.out.Motion.Find(c)
		if x == nil || math.IsNaN(read(x)) {
			return
		}
		out = append(out, movedBand{"motion." + string(c) + suffix, unit.Value{SI: read(x), Kind: kind}, func(v *Motion) float64 {
			if x := v.Find(c); x != nil {
				return read(x)
			}
			return math.NaN()
		}})
	}
	for _, c := range [...]MovingCase{CaseFirst, CaseRestart} {
		add(c, ".lowest.line", unit.KindDepth, func(x *Moving) float64 { return float64(x.Lowest - line) })
		add(c, ".dry", unit.KindDuration, func(x *Moving) float64 {
			if !x.Dry {
				return math.NaN()
			}
			return float64(x.DryAt)
		})
	}
	for _, c := range [...]MovingCase{CaseStop, CaseOpen} {
		add(c, ".highest.line", unit.KindDepth, func(x *Moving) float64 { return float64(x.Highest - line) })
	}
	return out
}

// drawMoved follows draws through start and stop and reads their bands. Where
// less than nine in ten of them have a figure (as the time to draw air, where
// some never do) it gets none.
func (m *model) drawMoved(s *shaker, b *Bands, draws int) {
	if m.out.Motion == nil || s.levels == nil {
		return
	}
	outputs := m.movedBands()
	sample := band.Draw(s.shapes, min(draws, movedDraws), b.Seed)
	values, row := make([][]float64, len(outputs)), make([]float64, len(s.shapes))
	for i := range sample.Len() {
		sample.Row(i, row)
		if !s.solve(row) {
			continue
		}
		v := s.follow()
		if v == nil {
			continue
		}
		b.Moved++
		for k := range outputs {
			if x := outputs[k].read(v); !math.IsNaN(x) {
				values[k] = append(values[k], x)
			}
		}
	}
	for k := range outputs {
		o := &outputs[k]
		if n := len(values[k]); n < 2 || n*10 < b.Moved*9 {
			continue
		}
		low, middle, high := band.Ends(values[k])
		of := func(x float64) unit.Value { return unit.Value{SI: x, Kind: o.now.Kind} }
		b.Motion = append(b.Motion, Banded{Figure: o.id, Value: o.now, Low: of(low), Middle: of(middle), High: of(high)})
	}
}

// follow follows the present draw through first start, restart and stops; nil
// where it cannot be followed.
func (s *shaker) follow() *Motion {
	t := *s.m.trial()
	out := *s.m.out
	d := *out.Delivery
	d.Feeds = append([]Feed(nil), d.Feeds...)
	for i := range d.Feeds {
		d.Feeds[i].Flow = max(0, s.feeds[i].flow)
	}
	out.Delivery, out.Levels = &d, s.out
	t.out = &out
	in := &s.draw
	feeds, ok := t.ways(s.sys, in)
	if !ok {
		return nil
	}
	for i := range feeds {
		feeds[i].Crest = s.line + unit.Length(s.heights[s.feeds[i].crest].at(s.row))
	}
	supply, err := motion.NewPipes(s.sys.net, []int{s.sys.source}, s.sys.feeds)
	if err != nil {
		return nil
	}
	inputs := motion.Inputs{
		Pond: in.Pond, Line: in.Line, Rim: in.Rim, NoRim: in.NoRim, Vault: in.Vault, Low: in.Lowest(), Flow: in.Flow, Feeds: feeds, Supply: supply,
	}
	inputs.Ways, inputs.Places = t.joinedWays(s.sys)
	sys, err := motion.New(inputs)
	if err != nil {
		return nil
	}
	v := &mover{m: &t, s: sys, sys: s.sys, pump: s.pump, out: &Motion{Valve: in.Valve, Rim: in.Rim, NoRim: in.NoRim, Line: in.Line, Until: followed}}
	v.base()
	if v.few(in) != nil {
		return nil
	}
	return v.out
}

// few runs the cases that have bands.
func (v *mover) few(in *level.Inputs) error {
	p := v.set
	p.From, p.Pump = v.s.AtRest(motion.Dry), true
	if _, err := v.run(CaseFirst, p); err != nil {
		return err
	}
	p.From = v.everyday(in)
	restart, err := v.run(CaseRestart, p)
	if err != nil {
		return err
	}
	p = v.set
	p.From = restart.End
	if _, err = v.run(CaseStop, p); err != nil || !v.out.Valve || !v.s.Valved() {
		return err
	}
	p.Valve = motion.StuckOpen
	_, err = v.run(CaseOpen, p)
	return err
}
