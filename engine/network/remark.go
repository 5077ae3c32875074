package network

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

// remark adds a reason. The room for them is set aside by NewState.
func (s *Solver) remark(st *State, r Reason) { st.Reasons = append(st.Reasons, r) }

// remarkLink says what is to be known of a link.
func (s *Solver) remarkLink(i int, st *State) {
	l := &st.Links[i]
	code := Code("")
	switch l.Status {
	case LinkRuns:
		l.Beyond = s.beyond(i, l.Flow)
		if l.Beyond {
			s.remark(st, Reason{Code: ReasonBeyond, Node: -1, Link: i})
		}
		if s.falls[i] {
			s.remark(st, Reason{Code: ReasonSeveral, Node: -1, Link: i})
		}
	case LinkHeld:
		code = ReasonHeld
	case LinkStalled:
		code = ReasonStalled
	case LinkDead:
		code = ReasonDead
	case LinkShut:
		if slices.ContainsFunc(s.net.Links[i].Parts, func(p Part) bool { return p.Role == Pump }) {
			code = ReasonDeadHead
		}
	case LinkOpposed:
		code = ReasonOpposed
	}
	if code != "" {
		s.remark(st, Reason{Code: code, Node: -1, Link: i})
	}
}

// beyond tells that a part of the link runs outside the data of its law.
func (s *Solver) beyond(link int, q unit.Flow) bool {
	for i := range s.net.Links[link].Parts {
		p := &s.net.Links[link].Parts[i]
		b, ok := p.Law.(Bounded)
		if !ok {
			continue
		}
		if p.Reverse {
			q = -q
		}
		low, high := b.Bounds()
		if q < low || q > high {
			return true
		}
		if p.Reverse {
			q = -q
		}
	}
	return false
}

// remarkNode books what leaves the network at a node and says what is to be
// known of it.
func (s *Solver) remarkNode(i int, st *State) {
	n, x := &s.net.Nodes[i], &st.Nodes[i]
	switch {
	case n.fixed():
		for _, e := range s.at[i] {
			if int(e) >= len(s.net.Links) || s.net.Links[e].From == s.net.Links[e].To {
				continue
			}
			if s.net.Links[e].To == i {
				x.Out += st.Links[e].Flow
			} else {
				x.Out -= st.Links[e].Flow
			}
		}
	case n.Kind == Junction && x.Status != NodeUnsolved:
		x.Out = n.Demand
	case n.spills():
		x.Out = 0
		if c := s.chainOf[len(s.net.Links)+i]; c >= 0 {
			x.Out = unit.Flow(s.chains[c].q)
		}
		if x.Status == NodeUnsolved {
			x.Out = unit.Flow(math.NaN())
		}
		if (x.Status == NodeSet || x.Status == NodeLoose) && x.Out <= 0 {
			level, _ := outflow{n}.Loss(0)
			x.Status, x.Short = NodeDry, max(unit.Head(level)-x.Head, 0)
			s.remark(st, Reason{Code: ReasonDry, Node: i, Link: -1, Head: x.Short})
		}
	}
	code := Code("")
	switch x.Status {
	case NodeCut:
		code = ReasonCut
	case NodeLoose:
		code = ReasonLoose
	case NodeRelative:
		code = ReasonRelative
	}
	if code != "" {
		s.remark(st, Reason{Code: code, Node: i, Link: -1})
	}
}

// remarkBlock says why a block has no answer.
func (s *Solver) remarkBlock(b *block, st *State) {
	r := Reason{Node: -1, Link: -1}
	if b.culprit >= 0 {
		for _, g := range b.chains[b.culprit].segments {
			if int(g.edge) < len(s.net.Links) {
				r.Link = int(g.edge)
				break
			}
		}
	}
	switch {
	case b.stop == StopConverged:
		return
	case b.feeding >= 0:
		r.Code, r.Node = ReasonNoSupply, int(b.feeding)
	case b.stop == StopNoSteadyState:
		r.Code = ReasonUnlimited
	case b.stop == StopLaw:
		r.Code = ReasonLaw
	default:
		r.Code, r.Head = ReasonIterations, unit.Head(b.rootError*b.rootError)
	}
	s.remark(st, r)
}
