package cut

import "slices"

// decider answers packing questions about one job and learns from each.
type decider struct {
	w, d   []int // the pieces
	c      []int // all kinds of bars
	relax  relaxation
	prices []price // bounds found so far; they hold for any bars
	effort *effort
}

const (
	quickSteps   = 4000 // a first search, before the relaxation is worth its cost
	shortList    = 5000
	longList     = 20_000
	searchPrices = 4 // bounds that the search uses as budgets: the latest
)

func newDecider(w, d, c []int, e *effort) *decider {
	x := &decider{w: w, d: d, c: c, effort: e, relax: relaxation{w: w, d: d, c: c}}
	// the plainest bound: a piece is worth its weight, a bar what it can be filled to
	u := make([]int64, len(w))
	for i := range w {
		u[i] = int64(w[i])
	}
	x.prices = append(x.prices, x.relax.price(u))
	return x
}

func (x *decider) packing(q question) packing { return packing{x.w, q.d, x.c, q.n} }

// refuted tells whether a bound already found proves that there is no answer.
func (x *decider) refuted(q question) bool {
	for _, pr := range x.prices {
		if pr.refutes(x.packing(q), q.w) {
			return true
		}
	}
	return false
}

// decide tells whether the pieces and, with w > 0, a remnant of that weight fit
// into the bars n, and how. It spends at most limit steps. The layout leaves
// the remnant out.
func (x *decider) decide(n []int, w, limit int) (answer, []fill) {
	q := question{x.d, n, w}
	if x.refuted(q) {
		return never, nil
	}
	p, at := x.stated(q)
	if fills, out := p.bestFit(); total(out) == 0 {
		return fits, withoutRemnant(fills, at)
	}
	var a answer
	var fills []fill
	x.effort.portion(min(quickSteps, limit), func() { a, fills = x.search(q) })
	if a == unknown && !x.effort.stopped {
		x.effort.portion(limit, func() { a, fills = x.atLength(q) })
	}
	return a, fills
}

// relaxed asks the relaxation alone; what proves that there is no answer is kept.
func (x *decider) relaxed(q question) (answer, *program) {
	a, pg, u := x.relax.solve(q, x.effort)
	if a != never {
		return a, pg
	}
	pr := x.relax.price(u)
	if !pr.refutes(x.packing(q), q.w) {
		return unknown, pg
	}
	x.prices = append(x.prices, pr)
	return never, pg
}

// stages are the ways to answer a question at length, in turn, until one does:
// each kind of question has one that is quick, and none is known beforehand.
var stages = [...]struct {
	list     int // fillings of one bar in the listing to cover from; zero: dive
	steps    int
	restarts bool
}{
	{shortList, 60_000, false},
	{0, 60_000, false},
	{shortList, 60_000, true},
	{longList, 100_000, false},
	{0, 100_000, false},
	{longList, 200_000, true},
	{0, 200_000, false},
	{longList, 400_000, false},
	{longList, 400_000, true},
	{0, 400_000, false},
	{longList, 1_500_000, false},
}

// atLength asks the relaxation, then goes through the stages, and at last
// searches through everything.
func (x *decider) atLength(q question) (answer, []fill) {
	laid, pg := x.relaxed(q)
	if laid == never {
		return never, nil
	}
	var v *cover
	for _, st := range stages {
		var a answer
		var fills []fill
		x.effort.portion(st.steps, func() {
			if st.list == 0 {
				if laid == fits {
					a, fills = x.dive(q, pg)
				}
				return
			}
			if v == nil || (!v.all && v.limit != st.list) {
				v = x.newCover(q, st.list)
			}
			a, fills = v.run(st.restarts)
		})
		if a != unknown {
			return a, fills
		}
		if !x.effort.spend(0) {
			return unknown, nil
		}
	}
	return x.search(q)
}

// stated gives the question as a packing, with the remnant as one more piece
// in its place among the others.
func (x *decider) stated(q question) (packing, int) {
	p := x.packing(q)
	if q.w == 0 {
		return p, len(x.w)
	}
	return p.withRemnant(q.w)
}

// search runs the exhaustive search with the latest bounds as budgets.
func (x *decider) search(q question) (answer, []fill) {
	p, at := x.stated(q)
	base := x.packing(q)
	var bounds []budget
	for _, pr := range x.prices[max(0, len(x.prices)-searchPrices):] {
		b := budget{u: pr.u, spare: pr.spare(base)}
		if q.w > 0 {
			worth, ok := pr.remnant(base, q.w)
			if !ok {
				return never, nil
			}
			b.spare -= worth
			b.u = slices.Insert(slices.Clone(pr.u), at, worth)
		}
		if b.spare < 0 {
			return never, nil
		}
		for _, c := range x.c {
			b.v = append(b.v, pr.best[c])
		}
		bounds = append(bounds, b)
	}
	s := newSearch(p, bounds, x.effort)
	a := s.run()
	if a != fits {
		return a, nil
	}
	return fits, withoutRemnant(s.done, at)
}
