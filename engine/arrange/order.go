package arrange

import (
	"cmp"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// order is which fittings are used and which way the legs run; where check
// valve and union stand among the legs is left open.
type order struct {
	standing int
	turned   unit.Angle
	dirs     []geom.Vec3 // of the legs
	compass  *compass
	pipe     Pipe
	start    []piece
	elbows   []piece
	check    *piece
	union    *piece
	end      *piece

	head   float64 // of the fittings, m
	joints int
	cost   float64
	priced bool
}

// parts gives the chain with the check valve in one leg and the union in
// another; in one leg the union comes first or last. A leg of -1 leaves it out.
func (o *order) parts(check, union int, unionFirst bool) []piece {
	out := append([]piece(nil), o.start...)
	for leg := range o.dirs {
		if leg > 0 {
			out = append(out, o.elbows[leg-1])
		}
		if leg == union && unionFirst {
			out = append(out, *o.union)
		}
		if leg == check {
			out = append(out, *o.check)
		}
		if leg == union && !unionFirst {
			out = append(out, *o.union)
		}
	}
	if o.end != nil {
		out = append(out, *o.end)
	}
	return out
}

// tally adds up what the fittings cost in every respect; the pipe is left out.
// ok is false where two ends do not go together or there are not enough of one.
func (s *search) tally(o *order, outlet layout.End) bool {
	chain := o.parts(-1, -1, false)
	if o.check != nil {
		chain = append(chain, *o.check)
	}
	if o.union != nil {
		chain = append(chain, *o.union)
	}
	if !s.in.enough(chain) {
		return false
	}
	o.priced = true
	for _, p := range chain {
		f := &s.in.Fittings[p.fitting]
		o.head += float64(f.Head)
		o.cost += f.Cost
		o.priced = o.priced && f.Priced
	}
	// The joints without what stands in the legs; each of those adds a joint with
	// a pipe, however it is placed: at its least it is as if it stood in a joint
	// that has one already.
	end := outlet
	for _, p := range o.parts(-1, -1, false) {
		switch {
		case end.Kind == layout.Spigot && p.part.In.Kind == layout.Spigot:
			return false
		case end.Kind == layout.Socket && p.part.In.Kind == layout.Socket:
			o.joints += 2
		default:
			o.joints++
		}
		end = p.part.Out
	}
	if o.end == nil {
		o.joints++ // the pipe that goes through
	}
	for _, p := range [...]*piece{o.check, o.union} {
		if p != nil {
			o.joints += 2
		}
	}
	return true
}

// orders gives all orders with n elbows, the most promising first.
func (s *search) orders(n int) []*order {
	var out []*order
	for i := range s.in.Standings {
		st := &s.in.Standings[i]
		for _, k := range s.kits[i] {
			if s.in.Rules.Check && len(k.checks) == 0 || s.in.Rules.Union && len(k.unions) == 0 {
				continue
			}
			for _, turned := range st.turnsOf() {
				way := s.compassOf(i, turned)
				have := [2]bool{len(k.elbows[turn90]) > 0, len(k.elbows[turn45]) > 0}
				for _, seq := range way.sequences(n, have) {
					dirs := make([]geom.Vec3, len(seq))
					for l, d := range seq {
						dirs[l] = way.dirs[d]
					}
					o := order{standing: i, turned: turned, dirs: dirs, compass: way, pipe: k.pipe}
					out = s.filled(out, o, &k)
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *order) int {
		return cmp.Or(cmp.Compare(a.joints, b.joints), cmp.Compare(a.head, b.head), cmp.Compare(a.cost, b.cost))
	})
	return out
}

// filled adds an order for each choice of fittings.
func (s *search) filled(out []*order, o order, k *kit) []*order {
	option := func(list []piece, wanted bool) []*piece {
		if !wanted {
			return []*piece{nil}
		}
		p := make([]*piece, len(list))
		for i := range list {
			p[i] = &list[i]
		}
		return p
	}
	ends := option(k.ends, len(k.ends) > 0)
	n := len(o.dirs) - 1
	var elbows func(chosen []piece)
	elbows = func(chosen []piece) {
		if i := len(chosen); i < n {
			for _, e := range k.elbows[turnOf(o.dirs[i], o.dirs[i+1])] {
				elbows(append(chosen[:i:i], e))
			}
			return
		}
		for _, start := range k.starts {
			for _, check := range option(k.checks, s.in.Rules.Check) {
				for _, union := range option(k.unions, s.in.Rules.Union) {
					for _, end := range ends {
						one := o
						one.start, one.elbows, one.check, one.union, one.end = start, chosen, check, union, end
						if s.tally(&one, s.in.Standings[o.standing].Pump.Outlet) {
							out = append(out, &one)
						}
					}
				}
			}
		}
	}
	elbows(nil)
	return out
}
