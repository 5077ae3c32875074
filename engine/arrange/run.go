package arrange

import (
	"context"
	"slices"
	"sync"

	"plashet/engine/unit"
)

// chunk is how many orders are looked at against one and the same front, so
// that the outcome does not hang on how many cores there are.
const chunk = 32

func (s *search) run(ctx context.Context, out Outcome, tell func(Progress)) Outcome {
	out.Proof.Claim, out.Proof.Elbows = Family, -1
	s.halt(ctx)
	passed, open, seen := stageNone, []worth(nil), [][]order(nil)
	if had := s.since; had != nil {
		out.Layouts, out.Tally = slices.Clone(had.front), had.Tally
	}
	for p, n := byCompass, 0; p <= byYaw; n++ {
		if n > s.in.Rules.Elbows || s.beyond(out.Layouts, n) {
			if n <= s.in.Rules.Elbows {
				out.Proof.Claim = Everything
			}
			if p == byCompass && (s.in.straight || !s.goesOn(ctx, &out, passed, seen)) {
				break
			}
			p, n = p+1, -1
			continue
		}
		orders, sketched := s.orders(p, n, out.Layouts, tell)
		if s.in.Rules.Tilt && len(orders) > mostLeaned {
			for i := range orders[mostLeaned:] {
				open = append(open, orders[mostLeaned+i].least())
			}
			orders = orders[:mostLeaned]
		}
		out.Tally.add(sketched.tally)
		passed = max(passed, sketched.passed)
		for from := 0; from < len(orders); from += chunk {
			if tell != nil {
				tell(Progress{Elbows: n, Done: from, Of: len(orders), Layouts: len(out.Layouts)})
			}
			for i, t := range s.many(orders[from:min(from+chunk, len(orders))], out.Layouts) {
				if len(t.open) > 0 && s.recalls {
					s.undone = append(s.undone, orders[from+i])
				}
				for _, l := range t.found {
					out.Layouts = join(out.Layouts, l)
				}
				out.Tally.add(t.tally)
				open = append(open, t.open...)
				passed = max(passed, t.passed)
			}
			if ctx.Err() != nil || s.ends(out.Layouts) {
				return s.stopped(out, open, orders[from:])
			}
		}
		if ctx.Err() != nil {
			return s.stopped(out, open, orders)
		}
		if len(out.Layouts) == 0 && passed < stageClear && p == byCompass {
			seen = append(seen, orders)
		}
		out.Tally.Orders += len(orders)
		out.Proof.Elbows = max(out.Proof.Elbows, n)
	}
	if out.Proof.Claim == Family && s.beyond(out.Layouts, s.in.Rules.Elbows+1) {
		out.Proof.Claim = Everything
	}
	if out.Proof.gather(open, out.Layouts); out.Proof.Caps > 0 {
		out.Proof.Claim = Capped
	}
	out.settle()
	switch {
	case len(out.Layouts) > 0:
	case out.Stage == "" || out.Stage == StageStock || s.in.Rules.Brief:
	default:
		if out.Stage == StageOut {
			if leaned := s.leaned(ctx, tell); leaned != nil {
				return *leaned
			}
		}
		out.Short = s.short(ctx, out.Tally.Programs, tell)
		out.Unfinished = s.unfinished
	}
	out.show(s.in.Rules.Best)
	return out
}

// ends tells that what was found ends the search.
func (s *search) ends(found []Layout) bool {
	return s.in.Rules.First && len(found) > 0 || s.until != nil && slices.ContainsFunc(found, func(l Layout) bool { return s.until(&l) })
}

// show keeps all that was found and gives the best of it.
func (o *Outcome) show(most int) {
	o.front = o.Layouts
	o.Layouts = best(o.front, most)
}

// halt has the work look at a context.
func (s *search) halt(ctx context.Context) {
	s.halted = s.watch
	if s.watch == nil {
		s.halted = func() bool { return ctx.Err() != nil }
	}
	for _, w := range s.workers {
		w.b.halt = s.halted
	}
}

// stopped ends a search that was cancelled: what it has is told, and what those
// orders take at least that were not decided.
func (s *search) stopped(out Outcome, open []worth, left []order) Outcome {
	for i := range left {
		open = append(open, left[i].least())
	}
	if len(left) == 0 {
		open = append(open, s.leastOf(out.Proof.Elbows+1)...)
	}
	out.Proof.gather(open, out.Layouts)
	if out.Proof.Claim = Stopped; out.Stage != StageStock {
		out.Uncut = nil // whether the stock is what fails was not settled
	}
	out.show(s.in.Rules.Best)
	return out
}

// gather counts what was left undecided and is not beaten by what was found since.
func (p *Proof) gather(open []worth, front []Layout) {
	for _, v := range open {
		if beaten(front, v) {
			continue
		}
		g := Gap{Head: unit.Length(v.head), Joints: v.joints, Cost: v.cost}
		if p.Caps++; p.Caps > 1 {
			g = Gap{Head: min(g.Head, p.Open.Head), Joints: min(g.Joints, p.Open.Joints), Cost: min(g.Cost, p.Open.Cost)}
		}
		p.Open = g
	}
}

// many looks at orders against one front.
func (s *search) many(orders []order, front []Layout) []trial {
	trials := make([]trial, len(orders))
	s.share(len(orders), func(w *worker, i int) { trials[i] = w.try(&orders[i], front) })
	return trials
}

// share has n pieces of work done on as many cores as there are.
func (s *search) share(n int, do func(w *worker, i int)) {
	cores := max(1, min(s.in.Rules.Cores, n))
	for len(s.workers) < cores {
		s.workers = append(s.workers, newWorker(s))
	}
	if cores == 1 {
		for i := range n {
			if s.halted() {
				return
			}
			do(s.workers[0], i)
		}
		return
	}
	var wait sync.WaitGroup
	next := make(chan int)
	for _, w := range s.workers[:cores] {
		wait.Go(func() {
			for i := range next {
				do(w, i)
			}
		})
	}
	for i := 0; i < n && !s.halted(); i++ {
		next <- i
	}
	close(next)
	wait.Wait()
}

func (t *Tally) add(o Tally) {
	t.Chains += o.Chains
	t.Programs += o.Programs
	t.Nodes += o.Nodes
	t.Refused += o.Refused
	t.Tight += o.Tight
}
