package arrange

import (
	"math"
	"slices"

	"plashet/engine/layout"
)

// fill is which fittings are used in which order; where check valve and union
// stand among the legs is left open, and which way the legs run.
type fill struct {
	pipe   *Pipe
	start  []*piece
	elbows []*piece
	check  *piece
	union  *piece
	end    *piece
	tail   []*piece // glued on the wall's side
	opens  *piece   // the union, glued or not
	hose   *piece   // one of the elbows
	lines  lines

	reducer *piece  // where the size changes, or a coupling; nil: neither
	leg     int     // that it stands in
	then    *Pipe   // after it
	by      measure // of which an assembly is to take the least

	facing int     // legs in which two spigots face each other until valve or union stands between them
	head   float64 // of the fittings, m
	joints int
	cost   float64
	priced bool
	slide  float64 // that the pump needs in any case, off the union's lip
	lean   float64 // without end where only laying it tells
}

// parts gives the chain with the check valve in one leg and the union in
// another; in one leg the union comes first or last. A leg of -1 leaves it out.
func (f *fill) parts(check, union int, unionFirst bool) []*piece {
	out := append(make([]*piece, 0, len(f.start)+len(f.elbows)+len(f.tail)+4), f.start...)
	for leg := range len(f.elbows) + 1 {
		if leg > 0 {
			out = append(out, f.elbows[leg-1])
		}
		side := func(beyond bool) {
			own := leg == union && f.beyond(f.union) == beyond
			if own && unionFirst {
				out = append(out, f.union)
			}
			if leg == check && f.beyond(f.check) == beyond {
				out = append(out, f.check)
			}
			if own && !unionFirst {
				out = append(out, f.union)
			}
		}
		side(false)
		if f.reducer != nil && leg == f.leg {
			out = append(out, f.reducer)
		}
		side(true)
	}
	if f.end != nil {
		out = append(out, f.end)
	}
	return append(out, f.tail...)
}

// least is what an assembly of the fill costs at least.
func (f *fill) least() worth {
	return worth{head: f.head, cost: f.cost, joints: f.joints, slide: f.slide, lean: f.lean, hosed: f.hosed()}
}

// hosed tells that there is a hose in it, glued or not.
func (f *fill) hosed() bool {
	hose := func(p *piece) bool { return p.part.Kind == layout.Hose }
	return f.hose != nil || slices.ContainsFunc(f.start, hose) || slices.ContainsFunc(f.tail, hose)
}

// tally adds up what the fittings cost in every respect; the pipe is left out.
// It is false where two ends do not go together or there are not enough of one.
func (s *search) tally(f *fill, outlet layout.End) bool {
	bare := f.parts(-1, -1, false)
	chain, between := bare, 0
	for _, p := range [...]*piece{f.check, f.union} {
		if p != nil {
			chain = append(chain[:len(chain):len(chain)], p)
			f.joints += 2 // each of its sockets is one more, whatever stands before and after it
			between++
		}
	}
	if !s.in.enough(chain) {
		return false
	}
	f.priced = true
	if f.opens != nil && s.in.Rules.Out {
		f.slide = float64(f.opens.part.Splits[0].Lip)
	}
	if s.in.Rules.Tilt { // how far it must be slid and leaned is seen when it is laid
		f.slide, f.lean = math.Inf(1), math.Inf(1)
	}
	for _, p := range chain {
		f.head += s.headOf(p)
		if p.hose != nil {
			f.cost += p.hose.cost
			f.priced = f.priced && s.in.Hose.Priced
		}
		if p.fitting < 0 {
			continue
		}
		g := &s.in.Fittings[p.fitting]
		f.cost += g.Cost
		f.priced = f.priced && g.Priced
	}
	end := &outlet
	for _, p := range bare {
		switch {
		case p.made():
		case end.Kind == layout.Spigot && p.part.In.Kind == layout.Spigot:
			if f.facing++; f.facing > between {
				return false
			}
		case end.Kind == layout.Socket && p.part.In.Kind == layout.Socket:
			f.joints += 2
		default:
			f.joints++
		}
		end = &p.part.Out
	}
	if bare[len(bare)-1].part.Kind != layout.Bulkhead {
		f.joints++ // the pipe that goes through
		return end.Kind == layout.Socket || bare[len(bare)-1] != f.reducer
	}
	return true
}

// fills gives each choice of fittings for a way's pattern of turns.
func (s *search) fills(v *way, turns uint64, n int, outlet layout.End, front []Layout) []*fill {
	var out []*fill
	k, hose := v.kit, v.hoseOf()
	needCheck, needUnion := s.needs()
	option := func(list []*piece, wanted bool) []*piece {
		if !wanted {
			return []*piece{nil}
		}
		return list
	}
	var elbows func(chosen []*piece)
	elbows = func(chosen []*piece) {
		if i := len(chosen); i < n {
			if i == v.hose-1 {
				elbows(append(chosen[:i:i], hose))
				return
			}
			for _, e := range k.elbowsAt(i)[turns>>(n-1-i)&1] {
				elbows(append(chosen[:i:i], e))
			}
			return
		}
		for _, start := range k.starts {
			for _, check := range option(k.both(checksOf), needCheck) {
				opens := check != nil && check.opens
				if opens && s.glued.union != nil {
					continue // the chain is opened at that one
				}
				for _, union := range option(k.both(unionsOf), needUnion && !opens) {
					for _, end := range option(k.ends, len(k.ends) > 0) {
						for _, f := range k.changed(hose, func() *fill {
							return &fill{pipe: &k.pipe, start: start, elbows: chosen, check: check, union: union, end: end, tail: k.tail, opens: s.opening(check, union), hose: hose}
						}) {
							if s.tally(f, outlet) && !beaten(front, f.least()) {
								out = append(out, f)
							}
						}
					}
				}
			}
		}
	}
	elbows(nil)
	return out
}

// opening gives where a filling is opened: at its union, at its check valve where
// that has union ends, or at what is glued already; nil where it is not.
func (s *search) opening(check, union *piece) *piece {
	switch {
	case union != nil:
		return union
	case check != nil && check.opens:
		return check
	}
	return s.glued.union
}
