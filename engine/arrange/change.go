package arrange

import (
	"math"
	"slices"

	"plashet/engine/layout"
)

// change is where a chain goes over from one size of pipe to another: once, by a
// reducer in one of its legs. All before it is of the kit's size, all after it of
// the other's.
type change struct {
	leg      int
	reducers []*piece
	to       *kit
}

// changing gives the kits of a standing whose size changes once, one for each leg
// in which the reducer may stand.
func (s *search) changing(st *Standing, kits []kit) (out []kit) {
	for i := range kits {
		for k := range kits {
			from, to := &kits[i], &kits[k]
			reducers := s.in.reducers(from.pipe.Size, to.pipe.Size)
			if len(from.starts) == 0 || len(reducers) == 0 || !s.leaves(to, kits) {
				continue
			}
			first := *from
			first.ends, first.tail = to.ends, to.tail
			out = append(out, s.inEachLeg(st, first, *to, reducers)...)
		}
	}
	return out
}

// inEachLeg gives a kit for each leg in which one of the pieces may stand that part
// what the first kit serves from what the second does. The least room between two
// parts is not counted on where some are glued already: they may stand closer.
func (s *search) inEachLeg(st *Standing, first, second kit, between []*piece) (out []kit) {
	second.starts = nil
	if !s.glued.any() {
		first.spaces, second.spaces = s.spaced(st, &first, nil, between), s.spaced(st, &second, between, nil)
	}
	for leg := range s.in.Rules.Elbows + 1 {
		one := first
		one.change = &change{leg, between, &second}
		out = append(out, one)
	}
	return out
}

// leaves tells that a chain may end in a kit's size: it has the fitting at the
// wall, or no kit has one.
func (s *search) leaves(k *kit, all []kit) bool {
	if len(s.glued.wall) > 0 {
		return size(s.glued.wall[0].part.In, s.glued.wall[0].part) == k.pipe.Size
	}
	return len(k.ends) > 0 || !slices.ContainsFunc(all, func(o kit) bool { return len(o.ends) > 0 })
}

// changes tells that a fitting leads from one size of pipe to another.
func (in *Input) changes(p layout.Part) bool {
	joins := func(e layout.End) bool {
		return (e.Kind == layout.Socket || e.Kind == layout.Spigot) && slices.ContainsFunc(in.Pipes, func(q Pipe) bool { return q.Size == size(e, p) })
	}
	return p.Kind == layout.Reducer && joins(p.In) && joins(p.Out)
}

// reducers gives the fittings that lead from one size of pipe to another.
func (in *Input) reducers(from, to string) (out []*piece) {
	for i, f := range in.Fittings {
		if p := f.Part; f.AtHand != 0 && in.changes(p) && size(p.In, p) == from && size(p.Out, p) == to {
			out = append(out, pieceOf(i, p))
		}
	}
	return out
}

// elbowsAt gives the elbows before a leg, counted from the first elbow.
func (k *kit) elbowsAt(i int) *[2][]*piece {
	if k.change != nil && i >= k.change.leg {
		return &k.change.to.elbows
	}
	return &k.elbows
}

// has tells which turns there are elbows for, in either size; ok is false where
// one size has none at all for its legs of a chain of n elbows.
func (k *kit) has(n int) (have [2]bool, ok bool) {
	none := func(k *kit) bool { return len(k.elbows[turn90])+len(k.elbows[turn45]) == 0 }
	if c := k.change; c != nil && (c.leg > n || c.leg > 0 && none(k) || c.leg < n && none(c.to)) {
		return have, false
	}
	for t := range have {
		have[t] = len(k.elbows[t]) > 0 || k.change != nil && len(k.change.to.elbows[t]) > 0
	}
	return have, true
}

// both gives what is at hand for a purpose, before the change and after it.
func (k *kit) both(of func(k *kit) []*piece) []*piece {
	if k.change == nil {
		return of(k)
	}
	return slices.Concat(of(k), of(k.change.to))
}

func checksOf(k *kit) []*piece { return k.checks }
func unionsOf(k *kit) []*piece { return k.unions }

// beyond tells that a piece is of the size after the change.
func (f *fill) beyond(p *piece) bool {
	if f.joined() {
		return p != nil && p.past
	}
	return f.reducer != nil && p != nil && size(p.part.In, p.part) == f.then.Size
}

// may tells that a valve or union may stand in a leg: not on the wrong side of
// the change.
func (f *fill) may(p *piece, leg int) bool {
	switch {
	case f.reducer == nil:
		return true
	case f.beyond(p):
		return leg >= f.leg
	}
	return leg <= f.leg
}

// divided tells that a leg of both has the change between them.
func (f *fill) divided(leg int) bool {
	return f.reducer != nil && leg == f.leg && f.beyond(f.check) != f.beyond(f.union)
}

// radius gives that of a leg's pipe; of the leg with the change, the lesser one.
func (k *kit) radius(leg int) float64 {
	switch c := k.change; {
	case c == nil || leg < c.leg:
		return float64(k.pipe.OD) / 2
	case leg > c.leg:
		return float64(c.to.pipe.OD) / 2
	}
	return math.Min(float64(k.pipe.OD), float64(k.change.to.pipe.OD)) / 2
}

// span gives how long a leg is at least between two sites, with valve or union
// or both in it, whichever side of the change they stand on.
func (k *kit) span(leg, before, after int, check, union bool) float64 {
	c := k.change
	switch {
	case c == nil || leg < c.leg:
		return k.spaces.leg(before, after, check, union)
	case leg > c.leg:
		return c.to.spaces.leg(before, after, check, union)
	}
	least := math.Inf(1)
	for side := range 4 { // whether the check valve, and the union, stand beyond
		beyond := [2]bool{side&1 != 0, side&2 != 0}
		if beyond[0] && !check || beyond[1] && !union {
			continue
		}
		least = math.Min(least, k.spaces.leg(before, atChange, check && !beyond[0], union && !beyond[1])+
			c.to.spaces.leg(atChange, after, check && beyond[0], union && beyond[1]))
	}
	return least
}

// changed gives a filling of a kit as it is, or with each reducer of its change:
// once for the least head, and once for the least cost where that is another matter.
// With a hose, lengths of it are weighed against those of pipe in the same way.
func (k *kit) changed(hose *piece, fresh func() *fill) (out []*fill) {
	c := k.change
	if hose != nil {
		for _, m := range measures(&k.pipe, hose.hose.pipe) {
			one := fresh()
			one.by = m
			out = append(out, one)
		}
		return out
	}
	if c == nil {
		return []*fill{fresh()}
	}
	a, b := &k.pipe, &c.to.pipe
	for _, r := range c.reducers {
		for _, m := range measures(a, b) {
			one := fresh()
			one.reducer, one.leg, one.then, one.by = r, c.leg, b, m
			out = append(out, one)
		}
	}
	return out
}
