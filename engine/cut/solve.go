package cut

import (
	"context"
	"slices"

	"plashet/engine/trace"
)

// Solve finds the best plan in the order that the package comment gives, and
// proves it where the effort suffices: see Plan.Proof. The answer depends on
// the problem alone. ctx can stop the search early; the best plan so far then
// comes back with StopCancelled.
//
// The error is an *Error with every fault of the problem, or with what is short
// (CodeShort), or says that no plan was found (CodeUndecided, CodeCancelled).
func Solve(ctx context.Context, p Problem) (Plan, error) {
	r, err := read(p)
	if err != nil {
		return Plan{}, err
	}
	s := arrange(r)
	e := &effort{ctx: ctx, left: p.Effort}
	if p.Effort == 0 {
		e.left = DefaultEffort
	}
	l := newLevels(&s, e)
	l.cheapest()
	if l.fills == nil {
		return Plan{}, shortage(p, &s, l)
	}
	for l.fewestOffcuts(); !l.longestRemnant(); {
		l.fewestOffcuts()
	}
	return l.plan(r), nil
}

// shortage tells which pieces find no place.
func shortage(p Problem, s *stock, l *levels) error {
	var f faults
	code := CodeShort
	switch {
	case l.decider.effort.stopped:
		f.add(CodeCancelled, "")
		return f.err()
	case l.costBound < l.cost:
		code = CodeUndecided
	}
	left := make([]int, len(p.Pieces))
	for i, n := range s.unplaced() {
		for _, id := range s.ids[i][len(s.ids[i])-n:] {
			left[id]++
		}
	}
	for i, n := range left {
		if n > 0 {
			f.add(code, at("pieces", i, "length"), argLength("found", p.Pieces[i].Length), argCount("count", n), markOf(p, i))
		}
	}
	if f == nil {
		f.add(code, "/pieces")
	}
	return f.err()
}

func markOf(p Problem, i int) trace.Arg { return trace.Str("mark", p.Pieces[i].Mark) }

// plan writes the layout in the terms of the problem.
func (l *levels) plan(r reading) Plan {
	s := l.stock
	p := Plan{
		Cost: l.cost, Basis: r.basis, BasisAssumed: r.assumed, NewSticks: total(l.y), OffcutsOpened: l.opened,
		Rounded: r.rounded, Steps: l.decider.effort.spent,
	}
	g := grid{step: r.step}
	p.LongestRemnant = g.length(l.remnant)
	p.Proof = Proof{CostBound: l.costBound, OffcutBound: l.openedBound, RemnantBound: g.length(l.remnantBound)}
	switch {
	case l.costBound == l.cost && l.openedBound == l.opened && l.remnantBound == l.remnant:
		p.Proof.Stop = StopProven
	case l.decider.effort.stopped:
		p.Proof.Stop = StopCancelled
	default:
		p.Proof.Stop = StopEffort
	}
	for k, n := range l.y {
		p.NewLength += g.length(n * (s.c[s.sticks[k].bar] - s.kerf))
	}
	p.Bars = l.bars(g)
	return p
}

// bars gives each fill its stick or offcut and each piece its place in the
// problem.
func (l *levels) bars(g grid) []Bar {
	s := l.stock
	fills := slices.Clone(l.fills)
	for i := range fills {
		slices.Sort(fills[i].pieces)
	}
	slices.SortStableFunc(fills, func(a, b fill) int {
		if a.bar != b.bar {
			return a.bar - b.bar
		}
		return slices.Compare(a.pieces, b.pieces)
	})
	var fromOffcuts, fromSticks []Bar
	bought := slices.Clone(l.y)
	next := make([]int, len(s.w))
	offcuts := s.offcuts
	for _, f := range fills {
		bar := Bar{From: FromStick, Length: g.length(s.c[f.bar] - s.kerf)}
		k := slices.IndexFunc(indices(len(bought)), func(k int) bool { return s.sticks[k].bar == f.bar && bought[k] > 0 })
		if k >= 0 {
			bought[k]--
			bar.Index = s.sticks[k].index
		} else {
			o := slices.IndexFunc(offcuts, func(o offcut) bool { return o.bar == f.bar })
			bar.From, bar.Index = FromOffcut, offcuts[o].index
			offcuts = offcuts[o+1:]
		}
		for _, i := range f.pieces {
			bar.Cuts = append(bar.Cuts, Cut{Piece: s.ids[i][next[i]], Length: g.length(s.w[i] - s.kerf)})
			next[i]++
		}
		s.finish(&bar, s.room(f), g)
		if bar.From == FromStick {
			fromSticks = append(fromSticks, bar)
		} else {
			fromOffcuts = append(fromOffcuts, bar)
		}
	}
	return append(fromOffcuts, fromSticks...)
}

// finish says how the bar ends: room is what is left of it plus a kerf.
func (s *stock) finish(bar *Bar, room int, g grid) {
	left := room
	bar.Kerfs = len(bar.Cuts)
	switch {
	case left == 0:
		bar.End = EndFlush
		bar.Kerfs--
	case left <= s.kerf:
		bar.End = EndRunsOff
	default:
		bar.End = EndRemnant
		bar.Remnant = g.length(left - s.kerf)
		bar.Kept = left-s.kerf >= s.keep
	}
}
