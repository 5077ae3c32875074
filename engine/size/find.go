package size

import (
	"context"
	"math"
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Find gives the front: of all designs of a problem that serve every wanted
// flow and keep the limits, those that no other one beats on first cost, cost
// over the years and steps of reserve together. Designs that are alike in all
// three stand for each other: one pump goes before two, and of single ones the
// one earlier on the shelf.
//
// A design serves where its pumps' head at the sum of the wanted flows is at
// least what the pipe needs there, with each pump within its published curve
// and at no less than its least flow. Two pumps in parallel add up their flows
// at one head; one that would stand behind its shut valve serves nothing.
//
// With any fault of the problem the result is empty.
//
// Find goes on until it is done or the context is; what it has then is the front
// of the designs looked at so far, and Stopped says so. Progress is told while it
// runs, where tell is not nil.
func Find(ctx context.Context, p *Problem, tell func(Progress)) (*Result, []trace.Fault) {
	s, faults := newSearch(p)
	if len(faults) > 0 {
		return &Result{}, faults
	}
	s.ctx, s.tell = ctx, tell
	s.progress.Of = len(p.Pumps)
	done := 0
	for i := range p.Pumps {
		if s.stopped() {
			break
		}
		s.single(i)
		done++
		s.progress.Pumps = done
	}
	s.result.Covered = float64(done) * s.covered()
	if p.Pairs != PairsNone {
		s.pairs()
	}
	s.result.Progress = s.progress
	s.conclude()
	return &s.result, nil
}

// stopped tells how far the search is, and whether it is to end.
func (s *search) stopped() bool {
	if !s.result.Stopped && s.ctx.Err() != nil {
		s.result.Stopped = true
	}
	if s.tell != nil && !s.result.Stopped {
		s.tell(s.progress)
	}
	return s.result.Stopped
}

// search is the state of Find.
type search struct {
	*tree
	factors []unit.Ratio // 1 and the reserves
	most    []float64    // of each factor: head that no pump or pair exceeds
	bores   []unit.Length
	steps   map[[2]int]*stairs // by class of bore and factor
	least   map[int]unit.Head  // by class of bore: what its best pipe needs, without end where none will do
	stands  []stand
	found   []candidate
	best    []plain // of each factor: what is found with at least that reserve
	result  Result

	ctx      context.Context
	tell     func(Progress)
	progress Progress
}

// stand is a pump of the shelf made ready.
type stand struct {
	usable      bool
	class       int       // of the bores it may be joined to
	least, end  unit.Flow // it may run at
	fewestWatts unit.Power
	serves      []int // its own designs among found, best of them first
}

// candidate is a design with what the front asks of it.
type candidate struct {
	pumps  [2]int // the second is -1 for one alone
	pipe   *label
	first  Cost
	years  Cost
	step   int
	each   [2]unit.Flow
	head   unit.Head // of the pump, or at the join of two
	power  unit.Power
	single bool
	leg    int // of a pair; -1: none
}

func newSearch(p *Problem) (*search, []trace.Fault) {
	t, faults := plant(p)
	if len(faults) > 0 {
		return nil, faults
	}
	s := &search{tree: t, factors: append([]unit.Ratio{1}, p.Reserves...), steps: map[[2]int]*stairs{}, least: map[int]unit.Head{}}
	s.best = make([]plain, len(s.factors))
	s.most = make([]float64, len(s.factors))
	for i := range p.Segments {
		for k := range p.Segments[i].Choices {
			s.bores = append(s.bores, p.Segments[i].Choices[k].Bore)
		}
	}
	s.bores = append(s.bores, 0)
	slices.Sort(s.bores)
	s.bores = slices.Compact(s.bores)
	s.stands = make([]stand, len(p.Pumps))
	for i := range p.Pumps {
		s.ready(i)
	}
	return s, nil
}

// ready fills a stand and raises the bound on the head.
func (s *search) ready(i int) {
	p, st := &s.p.Pumps[i], &s.stands[i]
	st.class, _ = slices.BinarySearch(s.bores, p.LeastBore)
	if p.Curve == nil {
		return
	}
	least, end, _, _ := p.Curve.Range()
	st.least, st.end = max(least, p.Least), end
	if p.Barred != nil {
		return
	}
	if _, basis, _ := p.Curve.Power(end); basis == hydro.PowerUnknown || st.least > st.end {
		return
	}
	st.usable = true
	st.fewestWatts, _ = p.Curve.PowerRange(st.least, max(st.least, min(st.end, s.total)))
	for k, y := range s.factors {
		q := unit.Flow(y) * s.total
		if s.p.Pairs != PairsNone {
			q /= 2 // of two pumps one gives at least half, so their head is at most what it has there
		}
		h, _, _ := p.Curve.Head(q)
		s.most[k] = max(s.most[k], float64(h))
	}
}

// pipe gives the staircase of a class of bores and a factor.
func (s *search) pipe(class, k int) *stairs {
	key := [2]int{class, k}
	if have, ok := s.steps[key]; ok {
		return have
	}
	made := s.stairs(s.factors[k], s.bore(class), s.most[k])
	s.steps[key] = made
	return made
}

// bore is the narrowest bore of a class.
func (s *search) bore(class int) unit.Length {
	if class < len(s.bores) {
		return s.bores[class]
	}
	return unit.Length(math.Inf(1))
}

// years is what a design counts by over the years.
func (s *search) years(first, energy Cost) Cost {
	if s.p.Unpriced {
		return energy
	}
	return first + energy
}

// single tries a pump alone.
func (s *search) single(i int) {
	p, st := &s.p.Pumps[i], &s.stands[i]
	if m, ok := s.cannot(i); !ok {
		s.result.Out = append(s.result.Out, Out{i, m})
		return
	}
	watts, _, _ := p.Curve.Power(s.total)
	energy := s.p.Energy.cost(watts)
	head, _, _ := p.Curve.Head(s.total)
	for k, y := range s.factors {
		q := unit.Flow(y) * s.total
		h, _, _ := p.Curve.Head(q)
		pipe, ok := s.pipe(st.class, k).cheapest(h)
		if q > st.end || !ok {
			break // more flow leaves less head and needs more
		}
		c := candidate{pumps: [2]int{i, -1}, pipe: pipe, first: p.Price + pipe.cost, step: k, each: [2]unit.Flow{s.total}, head: head, power: watts, single: true}
		c.years = s.years(c.first, energy)
		st.serves = append(st.serves, s.keep(c))
	}
}

// cannot tells why a pump does not serve alone.
func (s *search) cannot(i int) (trace.Message, bool) {
	p, st := &s.p.Pumps[i], &s.stands[i]
	name := trace.Str("name", p.Name)
	because := func(code string, args ...trace.Arg) (trace.Message, bool) {
		return trace.Message{Code: code, Args: append([]trace.Arg{name}, args...)}, false
	}
	switch {
	case p.Barred != nil:
		return *p.Barred, false
	case p.Curve == nil:
		return because(ReasonCurve)
	}
	if m, ok := s.within(i); !ok {
		return m, false
	}
	if !st.usable {
		return because(ReasonWatts)
	}
	for k := range s.p.Segments {
		if !slices.ContainsFunc(s.allowed[k], func(c int) bool { return s.p.Segments[k].Choices[c].Bore >= p.LeastBore }) {
			return because(ReasonBore, trace.Num("found", p.LeastBore, unit.KindBore), trace.Str("segment", s.p.Segments[k].Name))
		}
	}
	h, _, _ := p.Curve.Head(s.total)
	if _, ok := s.pipe(st.class, 0).cheapest(h); !ok {
		need, ok := s.leastNeed(st.class)
		if !ok { // one size throughout, and none is wide and slow enough everywhere
			return because(ReasonBore, trace.Num("found", p.LeastBore, unit.KindBore), trace.Str("segment", s.p.Segments[0].Name))
		}
		return because(ReasonHead, trace.Num("found", h, unit.KindHead), trace.Num("limit", need, unit.KindHead))
	}
	return trace.Message{}, true
}

// leastNeed is the head that the pipe with the least loss needs at the wanted
// flows, however high.
func (s *search) leastNeed(class int) (unit.Head, bool) {
	if _, ok := s.least[class]; !ok {
		steps := s.stairs(1, s.bores[class], math.Inf(1)).step
		s.least[class] = unit.Head(math.Inf(1))
		if len(steps) > 0 {
			s.least[class] = unit.Head(steps[len(steps)-1].need)
		}
	}
	need := s.least[class]
	return need, !math.IsInf(float64(need), 1)
}

// within tells whether a pump alone may run at the sum of the wanted flows.
func (s *search) within(i int) (trace.Message, bool) {
	st := &s.stands[i]
	code, limit := ReasonEnd, st.end
	switch {
	case s.total > st.end:
	case s.total < st.least:
		code, limit = ReasonLeast, st.least
	default:
		return trace.Message{}, true
	}
	return trace.Message{Code: code, Args: []trace.Arg{trace.Str("name", s.p.Pumps[i].Name), trace.Num("found", s.total, unit.KindFlow), trace.Num("limit", limit, unit.KindFlow)}}, false
}

// keep notes a candidate and gives its place.
func (s *search) keep(c candidate) int {
	s.found = append(s.found, c)
	for k := 0; k <= c.step; k++ {
		s.best[k].add(c.first, c.years)
	}
	return len(s.found) - 1
}
