package cut

import (
	"math"
	"slices"
)

// relaxation lays pieces when patterns may be used in fractions: it minimises
// the weight of pieces left without a place, making patterns as they are
// needed. Patterns are kept from question to question.
type relaxation struct {
	w, d     []int // the pieces of the job, without any remnant
	c        []int // all kinds of bars
	patterns []pattern
	k        knapsack
}

// pattern is a way to cut a bar; with remnant > 0 it holds that much besides.
type pattern struct {
	bar     int
	a       []int
	remnant int
}

// question is what to lay: so many of each piece and, with w > 0, a remnant of
// that weight, into so many of each bar.
type question struct {
	d, n []int
	w    int
}

// program is the linear program of a question. Its rows are the pieces, the
// remnant if any, and the bars.
type program struct {
	*simplex
	weights, counts []int // of the pieces and the remnant
	pattern         []int // by column: into relaxation.patterns, -1 for the others
}

const (
	worthScale   = 1 << 16 // whole worths per unit of weight
	nothingLeft  = 1e-7    // weight without a place that counts as none
	worthMore    = 1e-4    // a pattern is new when it is worth this much more than its bar
	maxRounds    = 1000    // rounds of new patterns in one question
	wholePattern = 1e-6    // how far below a whole number a use of a pattern counts as whole
)

// solve gives fits when the pieces can be laid in fractions, never with the
// worths of pieces and remnant that prove that they cannot.
func (x *relaxation) solve(q question, e *effort) (answer, *program, []int64) {
	pg := x.start(q)
	u := make([]int64, len(pg.weights))
	for range maxRounds {
		before := pg.pivots
		left := pg.run()
		cost := (pg.pivots-before+1)*pg.rows*pg.rows + len(pg.weights)*x.c[0]
		if !e.spend(cost / costPerStep) {
			return unknown, pg, nil
		}
		if left < nothingLeft {
			return fits, pg, nil
		}
		for i := range u {
			u[i] = int64(math.Round(max(0, min(pg.y[i], float64(pg.weights[i]))) * worthScale))
		}
		x.k.solve(pg.weights, pg.counts, u, x.c[0])
		if x.lost(u, pg.counts, q.n) {
			return never, pg, u
		}
		if !x.grow(pg, q) {
			break
		}
	}
	return unknown, pg, nil
}

// price turns worths into a bound that holds for any bars.
func (x *relaxation) price(u []int64) price { return x.k.priced(x.w, x.d, u[:len(x.w)], x.c[0]) }

// start gives the program with each piece without a place, each bar idle, and
// the patterns known.
func (x *relaxation) start(q question) *program {
	weights, counts := slices.Clone(x.w), slices.Clone(q.d)
	if q.w > 0 {
		weights, counts = append(weights, q.w), append(counts, 1)
	}
	pieces := len(weights)
	rhs, cost := make([]float64, pieces+len(q.n)), make([]float64, pieces+len(q.n))
	for i := range weights {
		rhs[i], cost[i] = float64(counts[i]), float64(weights[i])
	}
	for t := range q.n {
		rhs[pieces+t] = float64(q.n[t])
	}
	pg := &program{simplex: newSimplex(rhs, cost), weights: weights, counts: counts}
	for i := range weights {
		pg.add(column{0, []entry{{i, -1}}}) // a pattern may hold more than is wanted
	}
	pg.pattern = make([]int, len(pg.cols))
	for k := range pg.pattern {
		pg.pattern[k] = -1
	}
	for k, pt := range x.patterns {
		if q.n[pt.bar] > 0 && (pt.remnant == 0 || (q.w > 0 && pt.remnant >= q.w)) && within(pt.a, q.d) {
			x.use(pg, k)
		}
	}
	return pg
}

func within(a, d []int) bool {
	for i := range a {
		if a[i] > d[i] {
			return false
		}
	}
	return true
}

// use adds pattern k as a column.
func (x *relaxation) use(pg *program, k int) {
	pt := x.patterns[k]
	c := column{entries: []entry{{len(pg.weights) + pt.bar, 1}}}
	for i, a := range pt.a {
		if a > 0 {
			c.entries = append(c.entries, entry{i, float64(a)})
		}
	}
	if pt.remnant > 0 {
		c.entries = append(c.entries, entry{len(x.w), 1})
	}
	pg.add(c)
	pg.pattern = append(pg.pattern, k)
}

// lost tells whether the pieces are worth more than the bars.
func (x *relaxation) lost(u []int64, counts, n []int) bool {
	var sum int64
	for i := range u {
		sum += u[i] * int64(counts[i])
	}
	for t, c := range x.c {
		sum -= x.k.best[c] * int64(n[t])
	}
	return sum > 0
}

// grow adds the dearest pattern of each bar that is worth more than the bar;
// false when there is none.
func (x *relaxation) grow(pg *program, q question) bool {
	grown := false
	for t, c := range x.c {
		worth := float64(x.k.best[c]) / worthScale
		if q.n[t] == 0 || worth <= worthMore-pg.y[len(pg.weights)+t] {
			continue
		}
		a := x.k.pattern(pg.weights, c)
		pt := pattern{bar: t, a: a[:len(x.w)]}
		if q.w > 0 && a[len(x.w)] > 0 {
			pt.remnant = q.w
		}
		x.patterns = append(x.patterns, pt)
		x.use(pg, len(x.patterns)-1)
		grown = true
	}
	return grown
}

// used is a pattern and how often the relaxation uses it.
type used struct {
	pattern
	times float64
}

// uses gives the patterns in use, the most used first.
func (x *relaxation) uses(pg *program) []used {
	var all []used
	for r, b := range pg.basis {
		if k := pg.pattern[b]; k >= 0 && pg.x[r] > wholePattern {
			all = append(all, used{x.patterns[k], pg.x[r]})
		}
	}
	slices.SortStableFunc(all, func(a, b used) int {
		switch {
		case a.times > b.times:
			return -1
		case a.times < b.times:
			return 1
		}
		return 0
	})
	return all
}
