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
	n := 0
	for at, i := range order {
		last := len(order)
		if s.p.Pairs == PairsAlike {
			last = at + 1
		}
		for _, j := range order[at:last] {
			n++
			s.pair(min(i, j), max(i, j))
		}
	}
	s.result.Pairs = n
	s.result.Covered += float64(n) * s.covered()
}

// pair tries one pair.
func (s *search) pair(i, j int) {
	class := max(s.stands[i].class, s.stands[j].class)
	cheapest := s.pipe(class, 0).step
	if len(cheapest) == 0 {
		return
	}
	price := s.p.Pumps[i].Price + s.p.Pumps[j].Price
	energy := s.p.Energy.cost(s.stands[i].fewestWatts + s.stands[j].fewestWatts)
	top := len(s.factors) - 1
	if first := price + cheapest[0].cost; s.best[top].beats(first, first+energy) {
		return
	}
	var c candidate
	for k, y := range s.factors {
		pipe, ok := s.reaches(i, j, class, k, unit.Flow(y)*s.total)
		if !ok {
			return // more flow leaves less head and needs more
		}
		first := price + pipe.cost
		if s.best[top].beats(first, first+energy) {
			return // more reserve costs no less
		}
		if c.pipe == nil && !s.best[k].beats(first, first+energy) {
			s.result.Solved++
			if c, ok = s.share(i, j); !ok {
				return
			}
		}
		if c.power > 0 {
			c.pipe, c.first, c.step = pipe, first, k
			c.years = first + s.p.Energy.cost(c.power)
			s.keep(c)
		}
	}
}

// reaches finds the cheapest pipe through which two pumps give a flow, within
// both curves. At a head h they give q1(h) + q2(h), which falls as h rises, so
// their head at the flow is at least what the pipe needs exactly where they
// give at least the flow at that need.
func (s *search) reaches(i, j, class, k int, q unit.Flow) (*label, bool) {
	end := max(s.stands[i].low, s.stands[j].low)
	if s.together(i, j, end) < q {
		return nil, false // one of them would run beyond its curve
	}
	steps := s.pipe(class, k).step
	at, _ := slices.BinarySearchFunc(steps, q, func(l label, q unit.Flow) int {
		if s.together(i, j, unit.Head(l.need)) < q {
			return -1
		}
		return 1
	})
	if at == len(steps) {
		return nil, false
	}
	return &steps[at], true
}

// gives is the flow of a pump at a head, none above its shut-off.
func (s *search) gives(i int, h unit.Head) unit.Flow {
	q, _ := s.p.Pumps[i].Curve.MostFlow(h)
	return max(0, q)
}

func (s *search) together(i, j int, h unit.Head) unit.Flow {
	if i == j {
		return 2 * s.gives(i, h)
	}
	return s.gives(i, h) + s.gives(j, h)
}

// share finds the head at which two pumps give the sum of the wanted flows, by
// halving to the last digit, and how they share it; false where one of them
// would run at less than it may or outside its data.
func (s *search) share(i, j int) (candidate, bool) {
	c := candidate{pumps: [2]int{i, j}}
	a, b := &s.stands[i], &s.stands[j]
	if i == j {
		c.each = [2]unit.Flow{s.total / 2, s.total / 2}
		c.head, _, _ = s.p.Pumps[i].Curve.Head(s.total / 2)
	} else {
		_, _, top1, _ := s.p.Pumps[i].Curve.Range()
		_, _, top2, _ := s.p.Pumps[j].Curve.Range()
		low, high := float64(max(a.low, b.low)), float64(max(top1, top2))
		for range 200 {
			mid := low + (high-low)/2
			if mid <= low || mid >= high {
				break
			}
			if s.together(i, j, unit.Head(mid)) >= s.total {
				low = mid
			} else {
				high = mid
			}
		}
		c.head = unit.Head(low)
		// A level stretch of a curve gives a range of flows at one head, of which
		// gives is the greatest: the other pump's flow is then the sure one.
		c.each = [2]unit.Flow{s.gives(i, c.head), s.gives(j, c.head)}
		if more := s.total - c.each[0] - c.each[1]; math.Abs(float64(more)) > 1e-12 {
			c.each[s.level(i, j, c.head)] += more
		}
	}
	if c.each[0] < a.least || c.each[1] < b.least || c.each[0] > a.end || c.each[1] > b.end || c.each[0] <= 0 || c.each[1] <= 0 {
		return c, false
	}
	w1, _, _ := s.p.Pumps[i].Curve.Power(c.each[0])
	w2, _, _ := s.p.Pumps[j].Curve.Power(c.each[1])
	c.power = w1 + w2
	return c, c.power > 0
}

// level tells which of two pumps has the flatter curve at a head: 0 or 1.
func (s *search) level(i, j int, h unit.Head) int {
	_, d1, _ := s.p.Pumps[i].Curve.Head(s.gives(i, h))
	_, d2, _ := s.p.Pumps[j].Curve.Head(s.gives(j, h))
	if d1 > d2 {
		return 0
	}
	return 1
}
