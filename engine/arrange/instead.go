package arrange

import (
	"context"
	"slices"

	"plashet/engine/trace"
)

// Instead is what the input leaves out and a layout may fit with: another way for
// the pump to stand, fittings besides, or a hose.
type Instead struct {
	What      trace.Message
	Standings []Standing // in place of the input's; nil: as they are
	Fittings  []Fitting  // in place of the input's; nil: as they are. The input's come first, in their order
	Hose      *Hose      // in place of the input's, or where it has none; nil: as it is
	Unless    int        // number, from 1, of one that makes this one idle where it fits; 0: none does
}

// with gives the input with it.
func (n *Instead) with(in Input) Input {
	if n.Standings != nil {
		in.Standings = n.Standings
	}
	if n.Fittings != nil {
		in.Fittings = n.Fittings
	}
	if n.Hose != nil {
		in.Hose = n.Hose
	}
	in.Instead = nil
	return in
}

// instead looks for a layout with each of what the input leaves out. Fittings are
// first looked at all together: where nothing fits with all of them, nothing does
// with one. Where something does, but with none alone, several are looked at.
func (s *search) instead(ctx context.Context, tell func(Progress)) (out []Change) {
	list := s.in.Instead
	fits := make([]bool, len(list))
	lacking := s.lacking()
	proven, alone := true, false // that no fitting does alone; that one does
	var all *Outcome             // with all fittings; nil: not looked at
	for i := range list {
		n := &list[i]
		if ctx.Err() != nil || n.Unless > 0 && fits[n.Unless-1] {
			continue
		}
		s.lookingFor(i, tell)
		if n.Fittings != nil && all == nil && len(lacking) > 1 {
			all = new(one(ctx, s.besides(lacking)))
		}
		if n.Fittings != nil && all != nil && len(all.Layouts) == 0 {
			continue
		}
		found := one(ctx, n.with(s.in))
		if len(found.Layouts) > 0 {
			fits[i], alone = true, alone || n.Fittings != nil
			out = append(out, Change{What: n.What, Layout: found.Layouts[0], Instead: i + 1})
		} else if n.Fittings != nil {
			proven = proven && found.Proof.Claim < Capped
		}
	}
	if all != nil && len(all.Layouts) > 0 && !alone {
		out = append(out, s.several(ctx, lacking, all.Layouts[0], proven, tell)...)
	}
	return out
}

// lookingFor tells which of what the input leaves out is looked at.
func (s *search) lookingFor(i int, tell func(Progress)) {
	if n := &s.in.Instead[i]; tell != nil {
		tell(Progress{Elbows: s.in.Rules.Elbows, Done: i, Of: len(s.in.Instead), Short: n.What.Code, Args: n.What.Args})
	}
}

// lacking lists, counted from 0, which of what the input leaves out are fittings: more
// of what there is first, for that is got the soonest.
func (s *search) lacking() (out []int) {
	var other []int
	for i := range s.in.Instead {
		switch n := len(s.in.Instead[i].Fittings); {
		case n == 0:
		case n == len(s.in.Fittings):
			out = append(out, i)
		default:
			other = append(other, i)
		}
	}
	return append(out, other...)
}

// besides gives the input with several of the fittings that it leaves out: all
// that it has stays, of what one of them has more there is more.
func (s *search) besides(some []int) Input {
	base := len(s.in.Fittings)
	all := Instead{Fittings: slices.Clone(s.in.Fittings)}
	for _, i := range some {
		more := s.in.Instead[i].Fittings
		for k := range all.Fittings[:base] {
			if more[k].AtHand < 0 {
				all.Fittings[k].AtHand = -1
			}
		}
		all.Fittings = append(all.Fittings, more[base:]...)
	}
	return all.with(s.in)
}
