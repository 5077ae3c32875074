package network

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// A pump whose head rises with the flow over part of its range (a drooping
// curve) may run in one network at more than one flow. Several finds them all.
//
// The rest of the network asks of the pump the head S(Q) at which Q passes it.
// Where no other law falls, Q has one steady state of the rest, and S never
// falls as Q grows (else a throttle on the pump's way could raise its flow). So
// the steady states are the crossings of the pump's head H with a curve that
// only rises:
//
//   - where H falls there is at most one crossing, and the signs of H - S at
//     both ends tell whether there is one;
//   - where H rises from H(a) to H(b) there is none if S(a) > H(b) or
//     S(b) < H(a); else the range is halved, down to severalWidth.
//
// So nothing is passed over, and what cannot be ruled out is told as a bound.
// A crossing with H above S before it and below after it is stable: a little
// more flow finds too little head and slows down again. At no flow the pump can
// stand where H(0) is not more than S(0).

// Turning is a Law that knows where its loss turns: between two neighbours of
// Turns, and before the first and after the last, it only rises or only falls.
// With known false nothing is known of it.
type Turning interface {
	Law
	Turns() (at []unit.Flow, known bool)
}

// SteadyState is one way in which a pump can run.
type SteadyState struct {
	Flow   unit.Flow
	Head   unit.Head
	Stable bool // a small push dies away; else the pump leaves this state by itself
}

// FlowRange is where another state could not be ruled out: H and S touch or run
// together within rounding.
type FlowRange struct{ Low, High unit.Flow }

// SteadyStates is what Several finds, by rising flow.
type SteadyStates struct {
	Link   int
	States []SteadyState
	Open   []FlowRange
	All    bool // nothing is missing outside Open; false where the law is not Turning and was sampled, or another law falls too
}

const (
	severalWidth   = 1e-8       // m³/s: how narrow a range is looked at
	severalSamples = 256        // ranges in which a law that is not Turning is looked at
	severalLeast   = 1e-9       // m³/s: next to no flow
	severalMost    = 1.0        // m³/s: no pond pump gives more
	pumpHeadsApart = openMargin // m: equal heads
)

// Several finds the steady states of the pump that is the given part of a link,
// all else being as it is. It is for a pump whose head rises somewhere (remark
// ReasonSeveral); where no law falls the one state of Solve is all. A law that
// gives no number where it is asked ends in FaultLaw.
func (s *Solver) Several(link, part int) (SteadyStates, []trace.Fault) {
	p := &s.net.Links[link].Parts[part]
	out := SteadyStates{Link: link}
	if s.linkNote[link] != LinkRuns || p.Law == nil || p.Role != Pump {
		out.All = true // it carries nothing, or cannot fall
		return out, nil
	}
	k := s.without(link, part)
	k.out = &out
	turns, known := k.turns()
	out.All = known && !s.othersFall(link, part)
	k.search(turns)
	if k.bad {
		return SteadyStates{}, []trace.Fault{s.net.linkFault(FaultLaw, link, trace.Str("part", p.Name))}
	}
	return out, nil
}

// without makes the network without the pump: what it takes is drawn from a
// node before it and put in at a node after it.
func (s *Solver) without(link, part int) *crossings {
	l := s.net.Links[link]
	n := Network{Nodes: slices.Clone(s.net.Nodes), Links: slices.Clone(s.net.Links)}
	a, b := n.AddNode(Node{Name: l.Name, Demand: severalLeast}), n.AddNode(Node{Name: l.Name, Demand: -severalLeast})
	from, to := a, b
	if l.Parts[part].Reverse {
		from, to = b, a
		n.Nodes[a].Demand, n.Nodes[b].Demand = -severalLeast, severalLeast
	}
	n.Links[link] = Link{Name: l.Name, From: l.From, To: a, Parts: l.Parts[:part]}
	n.AddLink(Link{Name: l.Name, From: b, To: l.To, Parts: l.Parts[part+1:]})
	rest, _ := NewSolver(n) // its faults are those of s
	return &crossings{rest: rest, st: rest.NewState(), from: from, to: to, pump: l.Parts[part].Law}
}

// othersFall tells that a law besides that of one part falls somewhere.
func (s *Solver) othersFall(link, part int) bool {
	for i := range s.net.Links {
		for j, p := range s.net.Links[i].Parts {
			if (i != link || j != part) && s.linkNote[i] == LinkRuns && p.Law != nil && everFalls(p.Law) {
				return true
			}
		}
	}
	return false
}

// crossings is one search.
type crossings struct {
	rest     *Solver // the network without the pump
	st       *State
	from, to int // nodes before and after the pump
	pump     Law
	out      *SteadyStates
	bad      bool // a law gave no number, or the rest could not be solved
}

// place is a flow with the pump's head and what the network asks there.
type place struct{ q, head, need float64 }

func (p place) spare() float64 { return p.head - p.need }

// turns gives the flows between which the pump's head only rises or only falls.
func (k *crossings) turns() (at []float64, known bool) {
	if t, ok := k.pump.(Turning); ok {
		if flows, known := t.Turns(); known {
			for _, q := range flows {
				at = append(at, float64(q))
			}
			slices.Sort(at)
			return at, true
		}
	}
	high := 4 * usualFlow
	if b, ok := k.pump.(Bounded); ok {
		if _, h := b.Bounds(); finite(h) && h > 0 {
			high = float64(h)
		}
	}
	for i := 1; i <= severalSamples; i++ {
		at = append(at, high*float64(i)/severalSamples)
	}
	return at, false
}

// at solves the rest with q passing the pump. Where it cannot pass, no head
// will do.
func (k *crossings) at(q float64) place {
	k.rest.setDemand(k.from, unit.Flow(q))
	k.rest.setDemand(k.to, unit.Flow(-q))
	k.st.Reset() // the flows of the state before do not meet this demand
	k.rest.Solve(k.st)
	h, _ := k.pump.Loss(unit.Flow(q))
	p := place{q, -float64(h), float64(k.st.Nodes[k.to].Head - k.st.Nodes[k.from].Head)}
	if k.st.Nodes[k.from].Status == NodeUnsolved || k.st.Nodes[k.to].Status == NodeUnsolved {
		p.need = math.Inf(1)
		k.bad = k.bad || k.st.Stop != StopNoSteadyState
	}
	k.bad = k.bad || !finite(h) || math.IsNaN(p.need)
	return p
}

// search goes through the ranges between the turns and on to where the pump
// gives too little for certain.
func (k *crossings) search(turns []float64) {
	from := k.at(severalLeast)
	if h, _ := k.pump.Loss(0); -float64(h) <= from.need+pumpHeadsApart {
		k.out.States = append(k.out.States, SteadyState{Head: -h, Stable: -float64(h) < from.need})
	}
	for _, t := range turns {
		if t <= from.q || k.bad {
			continue
		}
		to := k.at(t)
		k.between(from, to)
		from = to
	}
	for step := usualFlow; from.spare() > 0 && from.q < severalMost && !k.bad; step *= 2 { // it falls from here on
		to := k.at(from.q + step)
		k.between(from, to)
		from = to
	}
	k.join()
}

// between looks at a range in which the pump's head only rises or only falls.
func (k *crossings) between(a, b place) {
	switch {
	case k.bad || a.head >= b.head && (a.spare() <= 0 || b.spare() > 0), // falls, and does not cross
		a.head < b.head && (a.need > b.head || b.need < a.head): // rises, and keeps clear
	case a.head >= b.head:
		k.found(k.cross(a, b), true)
	case b.q-a.q < severalWidth:
		k.out.Open = append(k.out.Open, FlowRange{unit.Flow(a.q), unit.Flow(b.q)})
	default:
		mid := k.at((a.q + b.q) / 2)
		k.between(a, mid)
		k.between(mid, b)
	}
}

// cross halves a range with one crossing in it.
func (k *crossings) cross(a, b place) place {
	for b.q-a.q > severalLeast/10 {
		mid := k.at((a.q + b.q) / 2)
		if mid.q <= a.q || mid.q >= b.q {
			break
		}
		if mid.spare() > 0 {
			a = mid
		} else {
			b = mid
		}
	}
	return a
}

func (k *crossings) found(p place, stable bool) {
	k.out.States = append(k.out.States, SteadyState{unit.Flow(p.q), unit.Head(p.head), stable})
}

// join makes one range of neighbours, and a state of each range on whose two
// sides the pump gives too much and too little.
func (k *crossings) join() {
	var open []FlowRange
	for i := 0; i < len(k.out.Open); {
		r := k.out.Open[i]
		for i++; i < len(k.out.Open) && k.out.Open[i].Low-r.High < severalLeast; i++ {
			r.High = k.out.Open[i].High
		}
		a, b := k.at(float64(r.Low)), k.at(float64(r.High))
		switch {
		case a.spare() > 0 && b.spare() < 0:
			k.found(k.cross(a, b), true)
		case a.spare() < 0 && b.spare() > 0:
			k.found(a, false)
		default:
			open = append(open, r)
		}
	}
	k.out.Open = open
	slices.SortFunc(k.out.States, func(a, b SteadyState) int {
		switch {
		case a.Flow < b.Flow:
			return -1
		case a.Flow > b.Flow:
			return 1
		}
		return 0
	})
}

// Told gives what Several found as messages with the link's name, by rising
// flow; none where there is one steady state and no doubt.
func (s *Solver) Told(x SteadyStates) (all []trace.Message) {
	link := trace.Str("link", s.net.Links[x.Link].Name)
	say := func(c Code, args ...trace.Arg) {
		all = append(all, trace.Message{Code: string(c), Args: append([]trace.Arg{link}, args...)})
	}
	if len(x.States)+len(x.Open) > 1 {
		for _, st := range x.States {
			found, head := trace.Num("found", st.Flow, unit.KindFlow), trace.Num("head", st.Head, unit.KindHead)
			switch {
			case st.Flow == 0:
				say(ReasonStands, head)
			case st.Stable:
				say(ReasonStates, found, head)
			default:
				say(ReasonTips, found, head)
			}
		}
	}
	for _, r := range x.Open {
		say(ReasonOpen, trace.Num("low", r.Low, unit.KindFlow), trace.Num("high", r.High, unit.KindFlow))
	}
	if !x.All {
		say(ReasonSample)
	}
	return all
}
