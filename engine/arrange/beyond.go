package arrange

import (
	"math"
	"slices"
)

// beyond tells that no chain of n elbows or more can be better than what was
// found: with each elbow a chain has more joints, takes more head and costs
// more, and what it costs at least is beaten already.
func (s *search) beyond(front []Layout, n int) bool {
	if len(front) == 0 {
		return false
	}
	for _, v := range s.leastOf(n) {
		if !beaten(front, v) {
			return false
		}
	}
	return true
}

// leastOf gives what a chain of n elbows takes at least of any kit, without a
// hose and with one; only those that there can be.
func (s *search) leastOf(n int) (out []worth) {
	for _, hose := range [2]bool{false, true} {
		v := worth{head: math.Inf(1), cost: math.Inf(1), joints: math.MaxInt, slide: s.lip(), lean: s.leanest(), class: stands, hosed: hose}
		some := false
		for _, kits := range s.kits {
			for i := range kits {
				if h, c, j, has := s.least(&kits[i], n, hose); has {
					some = true
					v.head, v.cost, v.joints = math.Min(v.head, h), math.Min(v.cost, c), min(v.joints, j)
				}
			}
		}
		if some {
			out = append(out, v)
		}
	}
	return out
}

// leanest bounds how far a pump is leaned over, as fill.least does.
func (s *search) leanest() float64 {
	if s.in.Rules.Tilt {
		return math.Inf(1)
	}
	return 0
}

// lip is the least that any pump must be slid: off the least lip of the unions
// at hand.
func (s *search) lip() float64 {
	if !s.in.Rules.Out {
		return 0 // it need not come out, so nothing is slid
	}
	least := math.Inf(1)
	if s.in.Rules.Tilt {
		return least // only laying it tells
	}
	if u := s.glued.union; u != nil {
		return float64(u.part.Splits[0].Lip)
	}
	for _, f := range s.in.Fittings {
		if opens(&f.Part) && f.AtHand != 0 {
			least = math.Min(least, float64(f.Part.Splits[0].Lip))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// least gives what a chain of n elbows takes of a kit at least: every elbow
// without a pipe before it, and one of them a hose, which stands in place of a
// pipe and adds no joint. ok is false where there can be none.
func (s *search) least(k *kit, n int, hose bool) (head, cost float64, joints int, ok bool) {
	if hose {
		if n == 0 || k.hoses == nil {
			return 0, 0, 0, false
		}
		n--
		head, cost = math.Inf(1), math.Inf(1)
		for _, p := range k.hoses {
			head, cost = math.Min(head, p.hose.head), math.Min(cost, p.hose.cost)
		}
	}
	among := func(lists ...[]*piece) (h, c float64) {
		h, c = math.Inf(1), math.Inf(1)
		for _, l := range lists {
			for _, p := range l {
				f := &s.in.Fittings[p.fitting]
				h, c = math.Min(h, float64(f.Head)), math.Min(c, f.Cost)
			}
		}
		return h, c
	}
	cheapest := func(lists ...[]*piece) {
		h, c := among(lists...)
		head, cost = head+h, cost+c
	}
	street := false
	elbows := k.elbows[:]
	if c := k.change; c != nil {
		elbows = slices.Concat(elbows, c.to.elbows[:])
		cheapest(c.reducers)
		joints++ // where a spigot goes in; two with sockets
	}
	for _, l := range elbows {
		for _, p := range l {
			street = street || p.part.In.Kind != p.part.Out.Kind
		}
	}
	for range n {
		cheapest(elbows...)
		joints += 2
		if street {
			joints--
		}
	}
	checks, unions := k.both(checksOf), k.both(unionsOf)
	both := slices.DeleteFunc(slices.Clone(checks), func(p *piece) bool { return !p.opens }) // valve and union in one
	switch needCheck, needUnion := s.needs(); {
	case needCheck && needUnion:
		h, c := among(checks)
		hu, cu := among(unions)
		hb, cb := among(both)
		head, cost = head+math.Min(h+hu, hb), cost+math.Min(c+cu, cb)
		if joints += 2; len(both) == 0 {
			joints += 2
		}
	case needCheck:
		cheapest(checks)
		joints += 2
	case needUnion:
		cheapest(unions)
		joints += 2
	}
	if len(k.ends) > 0 {
		cheapest(k.ends)
	}
	joints += 2 // at the port and at the wall, at least one each
	return head, cost, joints, len(k.starts) > 0 && !math.IsInf(head, 1)
}
