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
// with one.
func (s *search) instead(ctx context.Context, tell func(Progress)) (out []Change) {
	list := s.in.Instead
	fits := make([]bool, len(list))
	idle, known := false, false
	for i := range list {
		n := &list[i]
		if ctx.Err() != nil || n.Unless > 0 && fits[n.Unless-1] {
			continue
		}
		if tell != nil {
			tell(Progress{Elbows: s.in.Rules.Elbows, Done: i, Of: len(list), Short: n.What.Code, Args: n.What.Args})
		}
		if n.Fittings != nil && !known {
			all, several := s.everyFitting()
			known, idle = true, several && len(one(ctx, all.with(s.in)).Layouts) == 0
		}
		if n.Fittings != nil && idle {
			continue
		}
		if found := one(ctx, n.with(s.in)).Layouts; len(found) > 0 {
			fits[i] = true
			out = append(out, Change{What: n.What, Layout: found[0], Instead: i + 1})
		}
	}
	return out
}

// everyFitting gives all fittings that the input leaves out together; several
// tells that they are more than one of them.
func (s *search) everyFitting() (all Instead, several bool) {
	base, n := len(s.in.Fittings), 0
	all.Fittings = slices.Clone(s.in.Fittings)
	for i := range s.in.Instead {
		more := s.in.Instead[i].Fittings
		if more == nil {
			continue
		}
		n++
		for k := range all.Fittings[:base] {
			if more[k].AtHand < 0 {
				all.Fittings[k].AtHand = -1
			}
		}
		all.Fittings = append(all.Fittings, more[base:]...)
	}
	return all, n > 1
}
