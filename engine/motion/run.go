package motion

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

func seconds(t float64) unit.Duration { return unit.Duration(t) }

// course is the integration of one program.
type course struct {
	*run
	x, mid  []float64
	g0, g1  []float64
	gm      []float64
	t       float64
	out     Course
	stops   []float64 // times at which something from outside changes
	tol     float64
	longest float64 // step, in s
	kept    Sample  // last of the series
	waiting Sample  // the one after it, not yet needed
	waits   bool
	total   float64
	over    []int   // lips that water comes over in the last step
	passed  float64 // between pond and vault at the end of the last step
}

// Run follows a program from its moment on. Errors: an *Error for values out of
// range, and CodeSupply or CodeSteps where it cannot be followed to its end.
func (s *System) Run(p Program) (Course, error) {
	if err := p.check(); err != nil {
		return Course{}, err
	}
	if p.From.x == nil {
		p.From = s.AtRest(Dry)
	}
	c := s.begin(p)
	err := c.follow()
	if err != nil {
		return Course{}, err
	}
	return c.finish(), nil
}

func (s *System) begin(p Program) *course {
	r := &s.run
	*r = run{s: s, p: p, supply: s.in.Supply, pumping: p.Pump, rampEnd: float64(p.RunUp), pipes: r.pipes, gains: r.gains, gives: r.gives, takes: r.takes, full: r.full, lipTold: r.lipTold[:0], events: r.events[:0]}
	if p.Supply != nil {
		r.supply = p.Supply
	}
	r.still = p.Still
	if r.still <= 0 {
		r.still = StillRate
	}
	r.close, r.vaultWeight = roughly, 1
	if s.in.Vault != nil {
		r.vaultWeight = max(1, float64(s.in.Pond.Water(s.in.Line))/(vaultStill*float64(s.in.Vault.Body.Water(s.in.Vault.Body.Top()))))
	}
	r.still *= float64(s.in.Pond.Water(s.in.Line))
	s.warm = hint{}
	c := &course{run: r, x: slices.Clone(p.From.x), mid: make([]float64, s.size), tol: accuracy}
	c.g0, c.g1 = make([]float64, r.eventCount()), make([]float64, r.eventCount())
	if p.Accuracy > 0 {
		c.tol = float64(p.Accuracy)
	}
	// A step's error must not look like a movement.
	c.tol = min(c.tol, r.still*stillFor)
	c.longest = max(longest, float64(p.Until)/2000)
	c.x[stOver], c.x[stAdded], c.x[stBack], c.x[stReturn], c.x[stPumped] = 0, 0, 0, 0, 0
	for i := range r.full {
		r.full[i] = false
	}
	for i := range s.feeds {
		w := &s.feeds[i]
		r.pipes[i] = pipeState{full: c.x[w.pipe] >= w.cap*(1-restSlack)}
		r.lipTold = append(r.lipTold, c.x[w.parts[0].at] >= w.parts[0].full)
	}
	r.joined = s.sill == nil
	s.pond.z, s.vault.z = float64(p.From.Pond), float64(p.From.Vault)
	if s.sill == nil {
		c.x[stPond] += c.x[stVault]
		c.x[stVault] = 0
	}
	if !r.pumping {
		r.stop()
		c.loosen()
		c.besides()
	}
	r.sillTold = s.sill != nil && float64(p.From.Pond) <= s.sill.crest
	c.schedule()
	c.total = c.water(float64(p.From.Pond), float64(p.From.Vault))
	return c
}

// schedule lists the times at which something changes from outside.
func (c *course) schedule() {
	p := &c.p
	until := float64(p.Until)
	for _, v := range []unit.Duration{p.RunUp, p.CutAt, p.Rain.From, p.Rain.From + p.Rain.Over} {
		if t := float64(v); t > 0 && t < until {
			c.stops = append(c.stops, t)
		}
	}
	slices.Sort(c.stops)
	c.stops = append(slices.Compact(c.stops), until)
}

// stop is the pump without power: what no valve holds runs back.
func (r *run) stop() {
	r.pumping = false
	r.gasp = false
}

// loosen starts the way back of every feed that nothing holds.
func (c *course) loosen() {
	for i := range c.s.feeds {
		w, st := &c.s.feeds[i], &c.pipes[i]
		if w.Valve && c.p.Valve.holds() {
			continue
		}
		box := &w.parts[0]
		switch {
		case st.full && c.x[box.at] > box.openKeep && (w.end < w.crest || w.depth <= 0):
			st.siphon = true
		case c.x[w.pipe] > w.open:
			st.full, st.drains = false, true
		}
	}
}

// water sums all there is, pond and vault by their levels.
func (c *course) water(pond, vault float64) float64 {
	total := c.s.pond.volume(pond) + c.x[stOver]
	if c.s.in.Vault != nil {
		total += c.s.vault.volume(vault)
	}
	return total + c.stored()
}

func (c *course) stored() (sum float64) {
	for _, v := range c.x[stFeeds:] {
		sum += v
	}
	return sum
}

// skipped tells of states that are only counted.
func skipped(i int) bool { return i == stAdded || i == stBack || i == stReturn || i == stPumped }

// follow integrates to the end.
func (c *course) follow() error {
	st := &c.s.steps
	if err := c.anew(); err != nil {
		return err
	}
	c.out.Lowest, c.out.Highest = unit.Length(c.zVault), unit.Length(c.zPond)
	c.sample()
	p := pace{steep: firstStep, wide: firstStep, supply: c.longest}
	for !c.done() {
		if c.out.Steps++; c.out.Steps > stepBound {
			return fail("", CodeSteps)
		}
		end := c.stops[0]
		step, stages := c.pick(&p, end-c.t)
		last := step >= end-c.t-eventClose
		next, ok := c.take(&p, step, stages)
		if !ok {
			p.set(stages, next)
			continue
		}
		c.signs(st.next, st.k[6], c.g1)
		if e, part := c.first(step); e >= 0 {
			c.to(part, step)
			c.happen(e, c.t, c.x)
			after := max(leastAfter, min(next, step))
			p = pace{steep: after, wide: after, supply: c.longest}
			if err := c.anew(); err != nil {
				return err
			}
			c.sample()
			continue
		}
		c.turns(step)
		copy(c.x, st.next)
		p.grow(stages, step, next, last)
		if err := c.on(step, end, last); err != nil {
			return err
		}
		if last {
			p = pace{steep: firstStep, wide: firstStep, supply: c.longest}
		}
		c.sample()
	}
	return nil
}

// on goes to the end of a step.
func (c *course) on(step, end float64, last bool) error {
	st := &c.s.steps
	if last {
		c.t = end
		c.outsideChange()
		return c.anew()
	}
	c.t += step
	moved, err := c.near()
	if err != nil {
		return err
	}
	if moved {
		c.rates(c.t, c.x, st.k[0])
		c.signs(c.x, st.k[0], c.g0)
	} else {
		copy(st.k[0], st.k[6])
		copy(c.g0, c.g1)
	}
	return nil
}

// done tells that the end has come.
func (c *course) done() bool {
	return len(c.stops) == 0 || c.rested && !c.p.Whole && len(c.stops) == 1
}

// anew sets the rules right and finds the rates at the present time.
func (c *course) anew() error {
	k := c.s.steps.k[0]
	c.mayRest = len(c.stops) == 1 && !c.rested
	c.sky(c.t)
	if c.pumping {
		c.levels()
		if _, err := c.near(); err != nil {
			return err
		}
	}
	c.right(c.t, c.x, k)
	if c.mayRest && c.moving(k) <= c.still {
		c.happen(evStill, c.t, c.x)
		c.mayRest = false
	}
	c.signs(c.x, k, c.g0)
	return nil
}

// levels finds the levels as far as they are known without the flows.
func (c *course) levels() {
	s := c.s
	if !c.joined {
		c.zPond, c.zVault = s.pond.level(c.x[stPond]), s.vault.level(c.x[stVault])
		return
	}
	c.apart(s.pond.z, s.warm.weir)
	c.level(c.x[stPond])
}

// near lets the supply come near the present lifts.
func (c *course) near() (bool, error) {
	if !c.pumping || c.p.Valve == StuckShut {
		return false, nil
	}
	c.lifts(c.x)
	return c.supply.Near(c.s.lift)
}

// outsideChange takes the next change from outside.
func (c *course) outsideChange() {
	c.stops = c.stops[1:]
	if cut := float64(c.p.CutAt); c.pumping && cut > 0 && c.t >= cut-eventClose {
		c.gasps(false, c.t)
		if c.s.sill != nil {
			c.part(c.x) // what it drew stops at once
		}
		c.stop()
		c.loosen()
		c.besides()
		c.tell(EventCut, c.t, -1)
	}
}

// extremes keeps the lowest and the highest level; a later one must be so by
// more than the rounding of the search for levels, to move the time.
func (c *course) extremes(t float64) {
	if v := unit.Length(c.zVault); v < c.out.Lowest-levelClose {
		c.out.Lowest, c.out.LowestAt = v, seconds(t)
	}
	if v := unit.Length(c.zPond); v > c.out.Highest+levelClose {
		c.out.Highest, c.out.HighestAt = v, seconds(t)
	}
}

// flowLeap is the change of the flow in a step, as a part of the pump's, from
// which it is looked into.
const flowLeap = 0.02

// turns looks into the last step for a level that turns round in it.
func (c *course) turns(step float64) {
	st := &c.s.steps
	c.extremes(c.t + step)
	k0, k6 := st.k[0], st.k[6]
	// Where pond and vault share their water, the flow moves the levels too.
	leap := c.joined && math.Abs(c.drawn-c.back-c.passed) > flowLeap*c.s.flow
	c.passed = c.drawn - c.back
	if k0[stVault]*k6[stVault] >= 0 && k0[stPond]*k6[stPond] >= 0 && !leap {
		return
	}
	st.prepare(c.x, step)
	const looks = 5
	for i := 1; i < looks; i++ {
		part := float64(i) / looks
		st.at(part, c.mid)
		c.rates(c.t+part*step, c.mid, st.tmp)
		c.extremes(c.t + part*step)
	}
	c.rates(c.t+step, st.next, k6)
}
