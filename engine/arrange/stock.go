package arrange

import (
	"context"
	"math"
	"slices"

	"plashet/engine/cut"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Stock is all that there is of a pipe.
type Stock struct {
	Lengths []unit.Length // sticks and offcuts, each once
	Besides []unit.Length // pieces that are to be cut from them too
	Kerf    unit.Length   // that the saw takes
	Grid    unit.Length   // step to which pieces are rounded up, lengths down
}

// stockEffort is how far package cut is let look whether pieces can be cut: far
// more than the few pieces of an assembly ever took.
const stockEffort = 300_000

// cuts tells that pieces can be cut from the stock, with what is to be cut
// besides. What package cut leaves undecided counts as no.
func (k *Stock) cuts(pieces []unit.Length) bool {
	p := cut.Problem{Kerf: k.Kerf, Grid: k.Grid, Round: true, Basis: cut.ByCount, Effort: stockEffort}
	for _, list := range [2][]unit.Length{pieces, k.Besides} {
		for _, l := range list {
			p.Pieces = append(p.Pieces, cut.Piece{Length: l, Count: 1})
		}
	}
	if len(p.Pieces) == 0 {
		return true
	}
	for _, l := range k.Lengths {
		p.Offcuts = append(p.Offcuts, cut.Offcut{Length: l, Count: 1})
		p.Keep = max(p.Keep, l) // which remnant is left is no matter here
	}
	_, err := cut.Solve(context.Background(), p)
	return len(p.Offcuts) > 0 && err == nil
}

// room gives how long the pieces may be in all, each with a kerf behind it: the
// last of a length needs none, so each length counts as longer by one.
func (k *Stock) room() (sum float64) {
	for _, l := range k.Lengths {
		sum += float64(l + k.Kerf)
	}
	for _, l := range k.Besides {
		sum -= float64(l + k.Kerf)
	}
	return sum
}

// stocked adds what the stock lets a chain be: no piece longer than the longest
// there is, and all of a pipe together no longer than all there is. This holds
// for every assembly that can be cut; whether one can is asked where it is laid.
func (b *branch) stocked(p *program) {
	c, s := b.c, b.s
	if c.parted {
		return // its pieces are still to be parted
	}
	// A cut is the gap and both sockets less what is left open at both ends, and
	// shorter by less than a step once it is rounded.
	less := 2*math.Max(float64(s.lim.MakeUp), float64(s.lim.ClosingMakeUp)) + float64(s.lim.Step)
	for i := range s.in.Pipes {
		q := &s.in.Pipes[i]
		sum, of := 0.0, false
		all := make([]float64, len(b.row))
		for j, k := range c.slot {
			if l := &c.frame.Links[j]; k >= 0 && c.made[j] == nil && l.Pipe.Size == q.Size {
				if q.AtHand >= 0 {
					clear(b.row)
					b.row[k] = 1
					p.row(b.row, float64(q.AtHand)-float64(l.Sockets)+less)
				}
				all[k], of = 1, true
				sum += float64(l.Sockets) - less
				if q.Stock != nil {
					sum += float64(q.Stock.Kerf)
				}
			}
		}
		if of && q.Stock != nil && c.whole() {
			p.row(all, q.Stock.room()-sum)
		}
	}
}

// cuttable tells that an assembly's pieces can be cut from what there is.
func (s *search) cuttable(a *layout.Assembly) bool {
	for i := range s.in.Pipes {
		q := &s.in.Pipes[i]
		var pieces []unit.Length
		for k := range a.Pieces {
			if c := &a.Pieces[k]; !c.Made && c.Pipe.Size == q.Size && c.Cut > 0 {
				pieces = append(pieces, c.Cut)
			}
		}
		if len(pieces) > 0 && !q.gives(pieces) {
			return false
		}
	}
	return s.hoseCuttable(a)
}

// hoseCuttable tells the same of its hoses that are not there already.
func (s *search) hoseCuttable(a *layout.Assembly) bool {
	if s.in.Hose == nil || s.in.Hose.Stock == nil {
		return true
	}
	from, to := len(s.in.Glued.FromPort), len(a.Places)-len(s.in.Glued.FromWall)
	var pieces []unit.Length
	for i := range a.Hoses {
		if h := &a.Hoses[i]; h.Part >= from && h.Part < to {
			pieces = append(pieces, h.Cut)
		}
	}
	return len(pieces) == 0 || s.in.Hose.Stock.cuts(pieces)
}

// dustLength is what arithmetic may add to a length.
const dustLength = 1e-9 * unit.Metre

// uncut gives a layout that lacks nothing but pipe, the one found that takes
// least of it, at angles of the compass where there is any; nil where there is none.
func (s *search) uncut(ctx context.Context) *Layout {
	if !slices.ContainsFunc(s.in.Pipes, func(p Pipe) bool { return p.limited() }) && (s.in.Hose == nil || s.in.Hose.Stock == nil) {
		return nil
	}
	var out *Layout
	least, odd := unit.Length(math.Inf(1)), true
	found := Search(ctx, *s.in.free(), nil).front
	for i := range found {
		sum := unit.Length(0)
		for _, c := range found[i].Laid.Pieces {
			if !c.Made {
				sum += c.Cut
			}
		}
		if odd && !found[i].Odd || odd == found[i].Odd && sum < least {
			out, least, odd = &found[i], sum, found[i].Odd
		}
	}
	return out
}
