package size

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

// pairs tries two pumps in parallel. The cheapest pairs come first, and a pair
// whose bound (its exact first cost, with the fewest watts that both can draw)
// is beaten by what is found already is not solved.
func (s *search) pairs() {
	var order []int
	for i := range s.stands {
		if s.stands[i].usable {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(min(max(s.p.Pumps[a].Price-s.p.Pumps[b].Price, -1), 1)) })
	n, all := 0, len(order)*(len(order)+1)/2
	if s.p.Pairs == PairsAlike {
		all = len(order)
	}
	s.progress.PairsOf = all
	for at, i := range order {
		if s.progress.Pairs = n; s.stopped() {
			break
		}
		last := len(order)
		if s.p.Pairs == PairsAlike {
			last = at + 1
		}
		for _, j := range order[at:last] {
			n++
			s.pair(min(i, j), max(i, j))
		}
	}
	s.result.Pairs, s.progress.Pairs = n, n
	s.result.Covered += float64(n) * float64(len(s.legs())) * s.covered()
}

// pair tries one pair with each of the legs that can join it.
func (s *search) pair(i, j int) {
	for _, leg := range s.legs() {
		s.joined(&pairing{s, [2]int{i, j}, leg})
	}
}

func (s *search) joined(p *pairing) {
	i, j := p.pump[0], p.pump[1]
	class, leg := max(s.stands[i].class, s.stands[j].class), p.choice()
	if leg.Bore < max(s.p.Pumps[i].LeastBore, s.p.Pumps[j].LeastBore) {
		return // it does not pass what the pump passes
	}
	cheapest := s.pipe(class, 0).step
	if len(cheapest) == 0 {
		return
	}
	price := s.p.Pumps[i].Price + s.p.Pumps[j].Price + leg.Cost
	energy := s.p.Energy.cost(s.stands[i].fewestWatts + s.stands[j].fewestWatts)
	top := len(s.factors) - 1
	if first := price + cheapest[0].cost; s.best[top].beats(first, s.years(first, energy)) {
		return
	}
	var c candidate
	for k, y := range s.factors {
		pipe, ok := p.reaches(class, k, unit.Flow(y)*s.total)
		if !ok {
			return // more flow leaves less head and needs more
		}
		first := price + pipe.cost
		if s.best[top].beats(first, s.years(first, energy)) {
			return // more reserve costs no less
		}
		if c.pipe == nil && !s.best[k].beats(first, s.years(first, energy)) {
			s.result.Solved++
			if c, ok = p.share(); !ok {
				return
			}
		}
		if c.power > 0 {
			c.pipe, c.first, c.step = pipe, first, k
			c.years = s.years(first, s.p.Energy.cost(c.power))
			s.keep(c)
		}
	}
}

// reaches finds the cheapest pipe through which the two give a flow, within both
// curves. At a head h they give q1(h) + q2(h), which falls as h rises, so their
// head at the flow is at least what the pipe needs exactly where they give at
// least the flow at that need.
func (p *pairing) reaches(class, k int, q unit.Flow) (*label, bool) {
	if p.together(p.low()) < q {
		return nil, false // one of them would run beyond its curve
	}
	steps := p.s.pipe(class, k).step
	at, _ := slices.BinarySearchFunc(steps, q, func(l label, q unit.Flow) int {
		if p.together(unit.Head(l.need)) < q {
			return -1
		}
		return 1
	})
	if at == len(steps) {
		return nil, false
	}
	return &steps[at], true
}

// share finds the head at the join at which the two give the sum of the wanted
// flows, by halving to the last digit, and how they share it; false where one of
// them would run at less than it may, outside its data or too fast for its leg.
func (p *pairing) share() (candidate, bool) {
	s := p.s
	c := candidate{pumps: p.pump, leg: p.leg}
	a, b := &s.stands[p.pump[0]], &s.stands[p.pump[1]]
	if p.pump[0] == p.pump[1] {
		c.each = [2]unit.Flow{s.total / 2, s.total / 2}
		c.head = p.behind(0, s.total/2)
	} else {
		_, _, top1, _ := s.p.Pumps[p.pump[0]].Curve.Range()
		_, _, top2, _ := s.p.Pumps[p.pump[1]].Curve.Range()
		low, high := float64(p.low()), float64(max(top1, top2))
		for range 200 {
			mid := low + (high-low)/2
			if mid <= low || mid >= high {
				break
			}
			if p.together(unit.Head(mid)) >= s.total {
				low = mid
			} else {
				high = mid
			}
		}
		c.head = unit.Head(low)
		// A level stretch of a curve gives a range of flows at one head, of which
		// gives is the greatest: the other pump's flow is then the sure one.
		c.each = [2]unit.Flow{p.gives(0, c.head), p.gives(1, c.head)}
		if more := s.total - c.each[0] - c.each[1]; math.Abs(float64(more)) > 1e-12 {
			c.each[p.level(c.head)] += more
		}
	}
	if c.each[0] < a.least || c.each[1] < b.least || c.each[0] > a.end || c.each[1] > b.end || c.each[0] <= 0 || c.each[1] <= 0 || p.fast(max(c.each[0], c.each[1])) {
		return c, false
	}
	for n, i := range p.pump {
		w, _, _ := s.p.Pumps[i].Curve.Power(c.each[n])
		c.power += w
	}
	return c, c.power > 0
}

// level tells which of the two has the flatter curve at a head: 0 or 1.
func (p *pairing) level(h unit.Head) int {
	_, d1, _ := p.s.p.Pumps[p.pump[0]].Curve.Head(p.gives(0, h))
	_, d2, _ := p.s.p.Pumps[p.pump[1]].Curve.Head(p.gives(1, h))
	if d1 > d2 {
		return 0
	}
	return 1
}
