package arrange

import (
	"cmp"
	"context"
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// mostShort is how far a measure is let grow, and hundredth what decides that
// less does not do.
const (
	mostShort = 0.4 // m
	hundredth = 0.01 * unit.Inch
)

// short looks for the least change of each measure with which an assembly fits:
// branch and bound as before, with the measure as one more variable to be kept
// small. What is found is laid and proved at that size, and searched again a
// hundredth of an inch short of it, but for a search that took too many programs.
func (s *search) short(ctx context.Context, programs int, tell func(Progress)) []Change {
	s.programs = programs
	out := append(s.instead(ctx, tell), s.cleared(ctx, tell)...)
	for _, g := range s.stretches() {
		if ctx.Err() != nil {
			break
		}
		if c, ok := s.stretch(ctx, &g, tell); ok {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Change) int { return cmp.Compare(a.By, b.By) })
	return out
}

// attempt is a way with the least that its sketch asks for.
type attempt struct {
	way
	least  float64
	best   float64
	open   map[fateKey][]fate // nil: not sketched yet with valve and union
	filled bool
	capped bool
	work   int // linear programs since it was last asked
}

// How many linear programs one measure is given, some two seconds of one core, and all
// together: what that leaves undecided is told as not proven.
const (
	mostWork   = 400_000
	workInAll  = 2_000_000
	leastWork  = 40_000    // once these are used up
	searchable = 1_000_000 // of a search that is made once more a hundredth of an inch short
)

// few is how many elbows a chain has at most that is looked at first: with the
// longer ones what is found is only to be bettered.
const few = 2

// stretch finds the least of one measure: of chains of few elbows first, for these
// are soon decided.
func (s *search) stretch(ctx context.Context, g *stretch, tell func(Progress)) (Change, bool) {
	l := lessening{best: g.upTo(), most: max(leastWork, min(mostWork, workInAll-s.spent))}
	list := s.attempts(g)
	near := slices.DeleteFunc(slices.Clone(list), func(a *attempt) bool { return len(a.seq)-1 > few })
	far := slices.DeleteFunc(list, func(a *attempt) bool { return len(a.seq)-1 <= few })
	for _, some := range [2][]*attempt{near, far} {
		if !s.lessen(ctx, g, &l, some, tell) {
			return Change{}, false
		}
	}
	s.spent += l.work
	if l.best >= g.upTo() {
		s.unfinished = s.unfinished || l.capped
		return Change{}, false
	}
	return s.proved(ctx, g, l.best, l.capped || s.programs > searchable)
}

// lessening is the least of a measure that was found, and what it took to find.
type lessening struct {
	best   float64
	work   int // linear programs
	most   int // of these
	capped bool
}

// lessen looks at ways for less of a measure: the one that may do with least is
// looked at next, first by sketches with valve and union in it, then filled; few ways
// at a time while nothing is found yet that bounds the others. False where it was
// stopped.
func (s *search) lessen(ctx context.Context, g *stretch, l *lessening, list []*attempt, tell func(Progress)) bool {
	done := 0
	byLeast := func(a, b *attempt) int { return cmp.Compare(a.least, b.least) }
	for some := 1; len(list) > 0 && list[0].least < l.best-pad; some = min(2*some, chunk) {
		if ctx.Err() != nil {
			return false
		}
		if l.work >= l.most {
			l.capped = true
			return true
		}
		if tell != nil {
			tell(Progress{Elbows: s.in.Rules.Elbows, Done: done, Of: done + len(list), Short: g.code, Args: g.args})
		}
		now := list[:min(some, len(list))]
		s.share(len(now), func(w *worker, i int) { w.attempt(now[i], g, l.best) })
		again := now[:0:0]
		for i := range now {
			l.best = min(l.best, now[i].best)
			l.capped = l.capped || now[i].capped
			l.work, now[i].work = l.work+now[i].work, 0
			if !now[i].filled {
				again = append(again, now[i])
			}
		}
		done += len(now) - len(again)
		slices.SortStableFunc(again, byLeast)
		list = merge(again, list[len(now):])
	}
	return true
}

// merge puts two lists in order together.
func merge(a, b []*attempt) []*attempt {
	for _, one := range a {
		at, _ := slices.BinarySearchFunc(b, one, func(x, y *attempt) int { return cmp.Compare(x.least, y.least) })
		b = slices.Insert(b, at, one)
	}
	return b
}

// attempts sketches all ways for a measure and lists them by what they ask for.
func (s *search) attempts(g *stretch) (list []*attempt) {
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		for _, w := range s.waysOf(n, nil) {
			list = append(list, &attempt{way: w, least: math.Inf(1)})
		}
	}
	s.share(len(list), func(w *worker, i int) {
		a := list[i]
		if s.glued.any() {
			a.least = 0 // glued parts are no bare pipe
			return
		}
		if c := w.legsOf(&a.way); c != nil {
			a.least, a.capped = w.stretched(c, leaving{without: true}, g, g.upTo())
		}
	})
	slices.SortStableFunc(list, func(a, b *attempt) int { return cmp.Compare(a.least, b.least) })
	return list
}

// attempt takes a way one step on: by sketches with valve and union in it, then
// filled in every way that these leave open.
func (w *worker) attempt(a *attempt, g *stretch, best float64) {
	a.best, w.work = best, 0
	defer func() { a.work = w.work }()
	switch {
	case a.least >= best-pad:
		a.filled = true
	case a.open == nil:
		w.outlined(a, g)
	default:
		for _, f := range a.fills {
			w.filled(a, f, g)
		}
		a.filled = true
	}
}

// outlined works out what a way asks for with valve and union in it.
func (w *worker) outlined(a *attempt, g *stretch) {
	a.open = map[fateKey][]fate{}
	least := math.Inf(1)
	for _, f := range a.fills {
		o := a.order(f)
		key := fateKey{o.check, o.opens}
		list, known := a.open[key]
		if !known {
			list = w.foresee(&o, func(c *chain, out leaving) float64 {
				least, capped := w.stretched(c, out, g, a.best)
				if a.capped = a.capped || capped; least >= a.best-pad {
					return math.Inf(1)
				}
				return least
			})
			a.open[key] = list
		}
		for i := range list {
			least = min(least, list[i].least())
		}
	}
	a.least = max(a.least, least)
}

// order is a filling of a way.
func (v *way) order(f *fill) order {
	return order{fill: f, way: v, standing: v.standing, turned: v.turned, dirs: v.dirs(), compass: v.compass}
}

// filled looks at one filling of a way.
func (w *worker) filled(a *attempt, f *fill, g *stretch) {
	o := a.order(f)
	list := a.open[fateKey{o.check, o.opens}]
	if !slices.ContainsFunc(list, func(f fate) bool { return f.least() < a.best-pad }) {
		return
	}
	if o.facing == 0 {
		bare := w.bareChain(&o)
		if bare == nil {
			return
		}
		if least, capped := w.stretched(bare, leaving{without: true}, g, a.best); least >= a.best-pad {
			a.capped = a.capped || capped
			return
		}
	}
	for k := range list {
		pl := &list[k]
		c := w.placed(&o, &pl.placement)
		if c == nil {
			continue
		}
		for _, out := range pl.outs {
			if out.line >= a.best-pad {
				continue
			}
			least, capped := w.stretched(c, out.leaving, g, a.best)
			a.best = min(a.best, least)
			a.capped = a.capped || capped
		}
	}
}

// stretched gives the least of a measure for one chain; most where it is no
// less.
func (w *worker) stretched(c *chain, out leaving, g *stretch, most float64) (least float64, capped bool) {
	w.set(c, out, false)
	b := &w.b
	b.give, c.below = g, mostShort
	c.goes(g)
	least = most
	b.leaf = func(x []float64) bool {
		least = x[c.vars]
		return true
	}
	b.run(most)
	w.work += b.programsN
	return least, b.capped
}

// proved searches at the size that was found, and a hundredth of an inch short of
// it. What rounding may have lost on the way is given in whole thousandths; what the
// list of planes lost, by going down as long as a layout fits, in steps that double,
// then halve. Odd angles are not looked at: what takes less at one is not the least
// that is sought.
func (s *search) proved(ctx context.Context, g *stretch, by float64, capped bool) (Change, bool) {
	const thousandth = 0.001 * float64(unit.Inch)
	run := func(by float64) Outcome {
		in := g.made(s.in, unit.Length(by))
		in.straight = true
		return one(ctx, in)
	}
	for step := range 5 {
		at := (math.Ceil(by/thousandth-1e-6) + float64(step)) * thousandth
		out := run(at)
		if len(out.Layouts) == 0 {
			continue
		}
		c := Change{What: trace.Message{Code: g.code, Args: g.args}, Obstacle: g.obstacle, By: unit.Length(at), Layout: out.Layouts[0]}
		for d, grows := float64(hundredth), true; !capped && at > float64(hundredth) && ctx.Err() == nil; {
			d = math.Min(d, at)
			before := run(at - d)
			fits := len(before.Layouts) > 0
			if fits {
				at -= d
				c.By, c.Layout = unit.Length(at), before.Layouts[0]
			} else if d <= float64(hundredth) {
				c.Sure = before.Proof.Claim == Family
				break
			}
			if grows = grows && fits; grows {
				d *= 2
			} else {
				d = math.Max(d/2, float64(hundredth))
			}
		}
		return c, true
	}
	return Change{}, false
}
