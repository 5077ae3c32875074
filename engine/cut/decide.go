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
	searchPrices = 4    // bounds that the search uses as budgets: the latest
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

func (x *decider) packing(n []int) packing { return packing{x.w, x.d, x.c, n} }

// refuted tells whether a bound already found proves that the pieces, and with
// w > 0 a remnant of that weight, have no place in the bars n.
func (x *decider) refuted(n []int, w int) bool {
	for _, pr := range x.prices {
		if pr.refutes(x.packing(n), w) {
			return true
		}
	}
	return false
}

// decide tells whether the pieces and, with w > 0, a remnant of that weight fit
// into the bars n, and how. It spends at most limit steps. The layout leaves
// the remnant out.
func (x *decider) decide(n []int, w, limit int) (answer, []fill) {
	if x.refuted(n, w) {
		return never, nil
	}
	q := question{x.d, n, w}
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

// atLength asks the relaxation, dives from its answer, and at last searches
// through everything.
func (x *decider) atLength(q question) (answer, []fill) {
	a, pg, u := x.relax.solve(q, x.effort)
	switch a {
	case never:
		if pr := x.relax.price(u); pr.refutes(x.packing(q.n), q.w) {
			x.prices = append(x.prices, pr)
			return never, nil
		}
	case fits:
		v := diver{decider: x}
		if v.dive(q, pg) {
			return fits, v.fills
		}
	}
	if !x.effort.spend(0) {
		return unknown, nil
	}
	return x.search(q)
}

// stated gives the question as a packing, with the remnant as one more piece
// in its place among the others.
func (x *decider) stated(q question) (packing, int) {
	p := packing{x.w, q.d, x.c, q.n}
	if q.w == 0 {
		return p, len(x.w)
	}
	return p.withRemnant(q.w)
}

// search runs the exhaustive search with the latest bounds as budgets.
func (x *decider) search(q question) (answer, []fill) {
	p, at := x.stated(q)
	base := packing{x.w, q.d, x.c, q.n}
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
