package cut

import (
	"math"
	"math/bits"
	"slices"
)

// combinations walks the numbers of sticks of each kind that no bound rules
// out.
type combinations struct {
	stock   *stock
	decider *decider
	tried   [][]int // found impossible, or undecided, by search
	full    []int   // bars with all offcuts and no stick
	y       []int
	needs   []need
}

// need is a price seen from the sticks: their worths must add up to left.
type need struct {
	left  int64
	worth []int64 // by kind of stick
}

// maxCombinations of one cost are looked at.
const maxCombinations = 2000

// cheapest gives the cheapest combination that costs less than below, that no
// bound rules out with all offcuts at hand and that is no worse than one tried.
// finished is false when the effort ran out first.
func (x *combinations) cheapest(below int64) (y []int, finished bool) {
	x.begin()
	finished = x.walk(0, 0, func(cost int64) int64 {
		if y == nil || cost < x.stock.cost(y) {
			y = slices.Clone(x.y)
		}
		return cost
	}, below)
	return y, finished
}

// costing gives every combination of exactly this cost that no bound rules out
// with all offcuts at hand; finished is false when there are too many.
func (x *combinations) costing(cost int64) (all [][]int, finished bool) {
	x.begin()
	finished = x.walk(0, 0, func(c int64) int64 {
		if c == cost && len(all) <= maxCombinations {
			all = append(all, slices.Clone(x.y))
		}
		return cost + 1
	}, cost+1)
	return all, finished && len(all) <= maxCombinations
}

func (x *combinations) begin() {
	x.y = make([]int, len(x.stock.sticks))
	x.full = x.stock.bars(x.y, len(x.stock.offcuts))
	x.needs = x.needs[:0]
	p := packing{x.stock.w, x.stock.d, x.stock.c, x.full}
	for _, pr := range x.decider.prices {
		n := need{left: -pr.spare(p)}
		for _, s := range x.stock.sticks {
			n.worth = append(n.worth, pr.best[x.stock.c[s.bar]])
		}
		x.needs = append(x.needs, n)
	}
}

// walk sets the number of sticks of kind j and on. It calls found for each
// combination below the cost limit; found gives the new limit.
func (x *combinations) walk(j int, cost int64, found func(int64) int64, below int64) bool {
	_, ok := x.walkBelow(j, cost, found, below)
	return ok
}

func (x *combinations) walkBelow(j int, cost int64, found func(int64) int64, below int64) (int64, bool) {
	if !x.decider.effort.spend(1) {
		return below, false
	}
	if j == len(x.y) {
		if x.open() {
			below = found(cost)
		}
		return below, true
	}
	s := x.stock.sticks[j]
	ok := true
	for k := 0; k <= s.limit && ok; k++ {
		spent := cost + s.cost*int64(k)
		if spent >= below {
			break
		}
		x.use(j, k)
		if rest := x.least(j + 1); rest < below-spent {
			below, ok = x.walkBelow(j+1, spent, found, below)
		}
		x.use(j, -k)
	}
	return below, ok
}

// use takes k more sticks of kind j.
func (x *combinations) use(j, k int) {
	x.y[j] += k
	for i := range x.needs {
		x.needs[i].left -= x.needs[i].worth[j] * int64(k)
	}
}

// least gives a cost that sticks of kind j and on do not go below when they
// make up for what each price still needs.
func (x *combinations) least(j int) int64 {
	var least int64
	for _, n := range x.needs {
		if n.left <= 0 {
			continue
		}
		cheapest := int64(math.MaxInt64)
		for t := j; t < len(x.y); t++ {
			cheapest = min(cheapest, perWorth(n.left, x.stock.sticks[t].cost, n.worth[t]))
		}
		least = max(least, cheapest)
	}
	return least
}

// perWorth gives need × cost / worth rounded up, exactly.
func perWorth(need, cost, worth int64) int64 {
	if worth <= 0 {
		return math.MaxInt64
	}
	hi, lo := bits.Mul64(uint64(need), uint64(cost))
	lo, carry := bits.Add64(lo, uint64(worth-1), 0)
	hi += carry
	if hi >= uint64(worth) {
		return math.MaxInt64
	}
	q, _ := bits.Div64(hi, lo, uint64(worth))
	return int64(min(q, math.MaxInt64))
}

// open tells whether the combination is worth a try: every price is met, no
// other is at least as good in everything, and none that was tried holds as
// much.
func (x *combinations) open() bool {
	for _, n := range x.needs {
		if n.left > 0 {
			return false
		}
	}
	for t, s := range x.stock.sticks {
		for o, better := range x.stock.sticks {
			if x.y[t] > 0 && better.bar <= s.bar && better.cost <= s.cost && x.y[o] < better.limit &&
				(better.bar < s.bar || better.cost < s.cost || o < t) {
				return false
			}
		}
	}
	for _, y := range x.tried {
		if x.holds(y, x.y) {
			return false
		}
	}
	return true
}

// holds tells whether each stick of b has a stick in a that is as long.
func (x *combinations) holds(a, b []int) bool {
	ahead := 0
	for t, s := range x.stock.sticks {
		ahead += a[t] - b[t]
		last := t+1 == len(x.stock.sticks) || x.stock.sticks[t+1].bar != s.bar
		if last && ahead < 0 {
			return false
		}
	}
	return true
}
