package cut

import (
	"math"
	"slices"
)

// levels takes the three aims in turn and holds the best layout so far.
type levels struct {
	stock   *stock
	decider *decider
	combos  combinations

	y       []int  // sticks of each kind
	fills   []fill // the layout; nil while there is none
	cost    int64
	opened  int // offcuts
	remnant int // longest, in steps; zero when none is worth keeping

	costBound    int64
	openedBound  int
	remnantBound int
	alike        [][]int // stick combinations of this cost not ruled out
	complete     bool    // alike holds all of them
}

func newLevels(s *stock, e *effort) *levels {
	d := newDecider(s.w, s.d, s.c, e)
	return &levels{stock: s, decider: d, combos: combinations{stock: s, decider: d}}
}

// portion is the effort for one question: a share of what is left, so that one
// hard question does not starve the others.
func (l *levels) portion() int { return l.decider.effort.left/3 + 1 }

// cheapest finds the lowest cost of new sticks, with all offcuts at hand.
func (l *levels) cheapest() {
	below := int64(math.MaxInt64)
	if y, fills := l.stock.greedy(); fills != nil {
		l.adopt(y, fills)
		below = l.cost
	}
	open := int64(math.MaxInt64) // the least cost that stayed undecided
	for {
		y, finished := l.combos.cheapest(below)
		if !finished {
			open = min(open, l.floor())
			break
		}
		if y == nil {
			break
		}
		cost := l.stock.cost(y)
		a, fills := l.decider.decide(l.stock.bars(y, len(l.stock.offcuts)), 0, l.portion())
		if a == fits {
			l.adopt(y, fills)
			below = l.cost
			break
		}
		if a == unknown {
			open = min(open, cost)
		}
		l.combos.tried = append(l.combos.tried, y)
	}
	l.cost = below
	l.costBound = min(below, open)
}

// adopt takes a layout as the best so far. A bar that holds nothing is not cut;
// where a question of an earlier level stayed undecided, the layout may so be
// better at that level than was known.
func (l *levels) adopt(y []int, fills []fill) {
	s := l.stock
	l.fills = slices.DeleteFunc(fills, func(f fill) bool { return len(f.pieces) == 0 })
	l.y = slices.Clone(y)
	cut := make([]int, len(s.c))
	for _, f := range l.fills {
		cut[f.bar]++
	}
	for k, st := range s.sticks { // the cheapest of a length stay
		l.y[k] = min(l.y[k], cut[st.bar])
		cut[st.bar] -= l.y[k]
	}
	l.cost = s.cost(l.y)
	l.opened = total(cut)
}

// floor gives a cost that no combination goes below.
func (l *levels) floor() int64 {
	l.combos.begin()
	return l.combos.least(0)
}

// fewestOffcuts finds how few offcuts do at the lowest cost. Of any number of
// offcuts the longest are at least as good as others.
func (l *levels) fewestOffcuts() {
	cost := l.cost
	l.openedBound = l.opened
	l.combos.tried = nil
	l.alike, l.complete = l.combos.costing(l.cost)
	if !l.complete {
		l.openedBound = 0
	}
	for k := range l.opened {
		for _, y := range l.alike {
			a, fills := l.decider.decide(l.stock.bars(y, k), 0, l.portion())
			if a == unknown {
				l.openedBound = min(l.openedBound, k)
			}
			if a == fits {
				l.adopt(y, fills)
				if l.cost < cost {
					l.fewestOffcuts()
				}
				l.openedBound = min(l.openedBound, l.opened)
				return
			}
		}
	}
}

// aim is what level 3 knows of one stick combination.
type aim struct {
	bars []int
	hi   int // no longer remnant is possible, or none was found with the effort given
	less int // how far below hi to try next
}

// longestRemnant finds the longest remnant at the lowest cost with the fewest
// offcuts. The remnant is asked for as one more piece. It is false when a layout
// turned up on the way that is better at an earlier level, which then has to be
// taken up again.
func (l *levels) longestRemnant() bool {
	cost, opened := l.cost, l.opened
	lo := max(l.stock.keep-1, l.stock.longestRemnant(l.fills))
	top := l.stock.c[0] - l.stock.kerf
	aims := make([]aim, 0, len(l.alike))
	for _, y := range l.alike {
		aims = append(aims, aim{bars: l.stock.bars(y, l.opened), hi: top})
	}
	open := 0
	if !l.complete {
		open = top
	}
	for {
		i := l.highest(aims, lo)
		if i < 0 {
			break
		}
		x := &aims[i]
		want := max(lo+1, x.hi-x.less)
		a, fills := l.decider.decide(x.bars, want+l.stock.kerf, l.portion())
		switch a {
		case fits:
			l.adopt(l.alike[i], fills)
			if l.cost < cost || l.opened < opened {
				return false
			}
			lo = l.stock.longestRemnant(fills)
			x.less = (x.hi - lo) / 2
		case never:
			if !l.decider.refuted(l.asking(x.bars, want)) {
				x.less++ // found by search: the bound is no guide here
			}
			x.hi = min(x.hi, want-1)
		case unknown:
			open = max(open, x.hi)
			x.less = 2*x.less + 1
			x.hi = want - 1
		}
	}
	l.remnant = l.stock.longestRemnant(l.fills)
	l.remnantBound = l.remnant
	if open > lo {
		l.remnantBound = open
	}
	return true
}

// asking is the question for all pieces in these bars and a remnant.
func (l *levels) asking(bars []int, remnant int) question {
	return question{l.stock.d, bars, remnant + l.stock.kerf}
}

// highest lowers each aim to what the bounds allow and gives the one that
// allows the longest remnant above lo, or -1.
func (l *levels) highest(aims []aim, lo int) int {
	best := -1
	for i := range aims {
		x := &aims[i]
		at := lo // not refuted, or not of interest
		for above := x.hi + 1; above-at > 1; {
			mid := (at + above) / 2
			if l.decider.refuted(l.asking(x.bars, mid)) {
				above = mid
			} else {
				at = mid
			}
		}
		x.hi = min(x.hi, at)
		if x.hi > lo && (best < 0 || x.hi > aims[best].hi) {
			best = i
		}
	}
	return best
}
