package cut

import (
	"math"
	"slices"
)

// diver turns a layout in fractions into a whole one: it takes the patterns
// that the relaxation uses whole, else the one it uses most, and asks the
// relaxation again for the rest. It finds layouts; it proves nothing.
type diver struct {
	decider *decider
	asked   int
	fills   []fill
}

const (
	maxAsked     = 80  // questions to the relaxation in one dive
	alternatives = 3   // patterns tried at one place
	fewPieces    = 30  // so few pieces are covered or searched first
	fewFillings  = 500 // of one bar, for them
)

// dive lays what the question asks, or leaves it unknown; pg is its relaxation,
// solved.
func (x *decider) dive(q question, pg *program) (answer, []fill) {
	v := diver{decider: x}
	if v.dive(q, pg) {
		return fits, v.fills
	}
	return unknown, nil
}

func (v *diver) dive(q question, pg *program) bool {
	x := v.decider
	kept := len(v.fills)
	whole := false
	uses := x.relax.uses(pg)
	for _, u := range uses {
		for range int(math.Floor(u.times + wholePattern)) {
			whole = v.take(&q, u.pattern) || whole
		}
	}
	if whole {
		if v.below(q) {
			return true
		}
		v.fills = v.fills[:kept]
		return false
	}
	for i, u := range uses {
		if i == alternatives || v.asked >= maxAsked || !x.effort.spend(0) {
			break
		}
		next := q
		if v.take(&next, u.pattern) && v.below(next) {
			return true
		}
		v.fills = v.fills[:kept]
	}
	return false
}

// below lays what is left after patterns were taken.
func (v *diver) below(q question) bool {
	x := v.decider
	if total(q.d) == 0 && q.w == 0 {
		return true
	}
	if total(q.d) <= fewPieces {
		a, fills := unknown, []fill(nil)
		x.effort.portion(quickSteps, func() { a, fills = x.newCover(q, fewFillings).run(false) })
		if a == unknown {
			x.effort.portion(quickSteps, func() { a, fills = x.search(q) })
		}
		if a == fits {
			v.fills = append(v.fills, fills...)
		}
		if a != unknown {
			return a == fits
		}
	}
	v.asked++
	a, pg, _ := x.relax.solve(q, x.effort)
	return a == fits && v.dive(q, pg)
}

// take cuts one bar by the pattern, leaving out what is no longer wanted; false
// when there is no such bar or nothing to cut.
func (v *diver) take(q *question, pt pattern) bool {
	if q.n[pt.bar] == 0 {
		return false
	}
	f := fill{bar: pt.bar}
	d, w := slices.Clone(q.d), q.w
	for i, a := range pt.a {
		for range min(a, d[i]) {
			d[i]--
			f.pieces = append(f.pieces, i)
		}
	}
	if pt.remnant >= w {
		w = 0
	}
	if len(f.pieces) == 0 && w == q.w {
		return false
	}
	n := slices.Clone(q.n)
	n[pt.bar]--
	*q = question{d, n, w}
	v.fills = append(v.fills, f)
	return true
}
