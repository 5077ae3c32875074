package arrange

import (
	"context"
	"slices"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Where pipe is limited a straight run may be made of two pieces with a coupling
// between: a change as from one size to another (see change), but to the same one.
// What stands beyond it is told from what stands before it by its piece, because
// sizes do not. Where pipe is as long as wanted a coupling only adds joints, and is
// not looked at.

// limited tells that not every length of a pipe can be had.
func (p *Pipe) limited() bool { return p.AtHand >= 0 || p.Stock != nil }

// couples tells that a coupling may stand between two pieces of some pipe.
func (in *Input) couples() bool {
	return !in.Rules.Tilt && slices.ContainsFunc(in.Pipes, func(p Pipe) bool { return p.limited() && len(in.couplings(p.Size)) > 0 })
}

// coupling searches without couplings, and where that may leave something out, goes on
// from what was found with those kits alone that have one.
func (s *search) coupling(ctx context.Context, out Outcome, tell func(Progress)) Outcome {
	s.recalls = true
	out = s.run(ctx, out, tell)
	if ctx.Err() != nil || !s.couplingMatters(ctx, &out) {
		return out
	}
	in := s.in
	in.coupled = true
	c, more := newSearch(in)
	c.since = out.unleaned()
	more = c.run(ctx, more, tell)
	s.again(&more)
	if len(more.Layouts) > 0 {
		return more
	}
	out.Tally, out.Proof = more.Tally, more.Proof
	return out
}

// again looks once more at what was left undecided, now against what was found since.
func (s *search) again(out *Outcome) {
	var open []worth
	for from := 0; from < len(s.undone); from += chunk {
		some := s.undone[from:min(from+chunk, len(s.undone))]
		for i, t := range s.many(some, out.front) {
			out.Tally.add(t.tally)
			if open = append(open, t.open...); s.halted() {
				open = append(open, some[i].least())
			}
		}
	}
	if out.Proof.gather(open, out.front); out.Proof.Caps > 0 {
		out.Proof.Claim = max(out.Proof.Claim, Capped)
	}
}

// unleaned gives an outcome without what was looked for with the pump leaned over,
// which is no match for what lifts out.
func (o *Outcome) unleaned() *Outcome {
	since := *o
	if o.Leaned {
		since.front = nil
	}
	return &since
}

// couplingMatters tells whether a search that had no couplings may have left out
// something for that. A run with a coupling could be one piece where pipe is as long as
// wanted, with less joints, head and cost: where all that is found then can be cut from
// what there is, or where nothing fits even then, no coupling gives anything better.
// What was found can be had with such pipe too, so that it is enough to seek what it
// does not beat, and to end with the first that cannot be cut.
func (s *search) couplingMatters(ctx context.Context, out *Outcome) bool {
	if len(out.Layouts) == 0 {
		return out.Stage == StageStock
	}
	if s.in.Rules.First {
		return false
	}
	uncut := func(l *Layout) bool { return !s.cuttable(&l.Laid) }
	f, free := newSearch(*s.in.free())
	f.since = &Outcome{front: out.unleaned().front}
	f.until = uncut
	free = f.run(ctx, free, nil)
	return free.Proof.Claim >= Capped || slices.ContainsFunc(free.front, func(l Layout) bool { return uncut(&l) })
}

// free is the input with pipe as long as wanted.
func (in *Input) free() *Input {
	free := *in
	free.Pipes = slices.Clone(in.Pipes)
	for i := range free.Pipes {
		free.Pipes[i].AtHand, free.Pipes[i].Stock = -1, nil
	}
	if in.Hose != nil {
		h := *in.Hose
		h.Stock, free.Hose = nil, &h
	}
	free.Rules.Brief = true
	return &free
}

// coupled gives the kits of a standing with a coupling, one for each leg in which it
// may stand; none where all its pipe can be had.
func (s *search) coupled(st *Standing, kits []kit) (out []kit) {
	if !s.in.coupled {
		return nil
	}
	for i := range kits {
		k := &kits[i]
		couplings := s.in.couplings(k.pipe.Size)
		if !k.pipe.limited() || len(couplings) == 0 || len(k.starts) == 0 || !s.leaves(k, kits) {
			continue
		}
		beyond := *k
		beyond.checks, beyond.unions = past(k.checks), past(k.unions)
		out = append(out, s.inEachLeg(st, *k, beyond, couplings)...)
	}
	return out
}

// couplings gives the fittings at hand that join two pieces of pipe of a size.
func (in *Input) couplings(of string) (out []*piece) {
	for i, f := range in.Fittings {
		p := f.Part
		joins := func(e layout.End) bool { return e.Kind == layout.Socket && size(e, p) == of }
		if p.Kind == layout.Coupling && f.AtHand != 0 && joins(p.In) && joins(p.Out) {
			out = append(out, pieceOf(i, p))
		}
	}
	return out
}

// past gives the same pieces as they stand beyond a coupling.
func past(list []*piece) (out []*piece) {
	for _, p := range list {
		q := *p
		q.past = true
		out = append(out, &q)
	}
	return out
}

// joined tells that a kit has a coupling.
func (k *kit) joined() bool { return k.change != nil && k.change.to.pipe.Size == k.pipe.Size }

// joined tells that a filling has a coupling.
func (f *fill) joined() bool { return f.reducer != nil && f.then.Size == f.pipe.Size }

// resplit moves the coupling of a solution along its run until both pieces, with all
// others of the assembly, can be cut from what there is: one of the two is then all of
// a length at hand, or what another piece leaves of it. The program knows only how
// long each piece and all of them may be, and the shortest assembly is as short
// wherever the coupling stands. Nil where no such place is found; what else must hold
// is asked where it is laid again.
func (s *search) resplit(o *order, c *chain, parts []*piece, x []float64, a *layout.Assembly) []float64 {
	at := slices.Index(parts, o.reducer)
	if !o.joined() || at < 0 || at+1 >= len(c.slot) || c.slot[at] < 0 || c.slot[at+1] < 0 {
		return nil
	}
	var pair [2]unit.Length
	var rest []unit.Length
	for i := range a.Pieces {
		switch p := &a.Pieces[i]; {
		case p.After == at-1:
			pair[0] = p.Cut
		case p.After == at:
			pair[1] = p.Cut
		case !p.Made && p.Pipe.Size == o.pipe.Size && p.Cut > 0:
			rest = append(rest, p.Cut)
		}
	}
	for _, l := range o.pipe.whole(rest) {
		for _, by := range [2]unit.Length{l - pair[0], pair[1] - l} { // what the first piece grows by
			before, after := x[c.slot[at]]+float64(by), x[c.slot[at+1]]-float64(by)
			if before < 0 || after < 0 || !o.pipe.gives(append(slices.Clone(rest), pair[0]+by, pair[1]-by)) {
				continue
			}
			out := slices.Clone(x)
			out[c.slot[at]], out[c.slot[at+1]] = before, after
			return out
		}
	}
	return nil
}

// whole lists how long a piece may be that takes all of a length at hand, or what one
// of the other pieces leaves of it; a step less, because it is rounded up.
func (p *Pipe) whole(rest []unit.Length) (out []unit.Length) {
	if p.Stock == nil {
		return []unit.Length{p.AtHand - dustLength}
	}
	for _, l := range p.Stock.Lengths {
		out = append(out, l-p.Stock.Grid)
		for _, r := range slices.Concat(rest, p.Stock.Besides) {
			out = append(out, l-r-p.Stock.Kerf-p.Stock.Grid)
		}
	}
	return out
}

// gives tells that pieces can be cut from what there is of a pipe.
func (p *Pipe) gives(pieces []unit.Length) bool {
	if p.AtHand >= 0 && slices.Max(pieces) > p.AtHand+dustLength {
		return false
	}
	return p.Stock == nil || p.Stock.cuts(pieces)
}
