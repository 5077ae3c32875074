package network

import (
	"slices"
	"strconv"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

func (n *Network) nodeFault(c Code, node int) trace.Fault {
	args := []trace.Arg{trace.Str("node", n.Nodes[node].Name)}
	return trace.Fault{Message: trace.Message{Code: string(c), Args: args}, Path: "/nodes/" + strconv.Itoa(node)}
}

func (n *Network) linkFault(c Code, link int, args ...trace.Arg) trace.Fault {
	args = append([]trace.Arg{trace.Str("link", n.Links[link].Name)}, args...)
	return trace.Fault{Message: trace.Message{Code: string(c), Args: args}, Path: "/links/" + strconv.Itoa(link)}
}

// check finds what cannot be solved as it is given and leaves it out.
func (s *Solver) check() (faults []trace.Fault) {
	n := &s.net
	if len(n.Nodes) == 0 || len(n.Links) == 0 {
		faults = append(faults, trace.Fault{Message: trace.Message{Code: string(FaultNothing)}})
	}
	s.nodeBad, s.cutOut = make([]bool, len(n.Nodes)), make([]bool, len(n.Nodes))
	for i := range n.Nodes {
		if c := n.Nodes[i].fault(); c != "" {
			s.nodeBad[i] = true
			faults = append(faults, n.nodeFault(c, i))
		}
	}
	s.linkNote = make([]LinkStatus, len(n.Links))
	for i := range n.Links {
		l := &n.Links[i]
		if l.From < 0 || l.To < 0 || l.From >= len(n.Nodes) || l.To >= len(n.Nodes) {
			s.linkNote[i] = LinkFaulty
			faults = append(faults, n.linkFault(FaultEnds, i))
			continue
		}
		for j := range l.Parts {
			p := &l.Parts[j]
			if !p.gives() {
				s.linkNote[i] = LinkFaulty
				faults = append(faults, n.linkFault(FaultLaw, i, trace.Str("part", p.Name)))
			}
			if p.Shut && s.linkNote[i] == LinkRuns {
				s.linkNote[i] = LinkShut
			}
		}
		if s.nodeBad[l.From] || s.nodeBad[l.To] {
			s.linkNote[i] = LinkFaulty
		}
	}
	return faults
}

// fault gives what is wrong with a node, "" when nothing is.
func (n *Node) fault() Code {
	switch {
	case n.Kind > OpenEnd:
		return FaultKind
	case n.Kind != Junction && !finite(n.Level),
		n.Kind == Junction && !finite(n.Demand),
		n.Pours && !finite(n.Inlet):
		return FaultLevel
	case n.Kind == FreeLip && n.Law == nil:
		return FaultNoWeir
	case n.spills() && n.Law != nil && !givesNumbers(n.Law, false):
		return FaultLaw
	}
	return ""
}

// gives tells that the part's law gives numbers where it is tried. It is tried
// at a few flows only; a law that fails elsewhere ends a solve with StopLaw.
func (p *Part) gives() bool { return p.Law == nil || givesNumbers(p.Law, p.Role == Passive) }

// fallsSomewhere tells that the loss of a part of the link falls somewhere as
// the flow grows.
func (l *Link) fallsSomewhere() bool {
	return slices.ContainsFunc(l.Parts, func(p Part) bool { return p.Law != nil && everFalls(p.Law) })
}

// triedFlows are from a drip to more than any garden pump gives, m³/s.
var triedFlows = [...]float64{0, 1e-6, 1e-4, 1e-3, 1e-2, 1e-1}

func givesNumbers(law Law, bothWays bool) bool {
	for _, q := range triedFlows {
		h, slope := law.Loss(unit.Flow(q))
		if !finite(h) || slope != slope || q > 0 && !finite(slope) {
			return false
		}
		if bothWays {
			h, slope = law.Loss(unit.Flow(-q))
			if !finite(h) || slope != slope || q > 0 && !finite(slope) {
				return false
			}
		}
	}
	return true
}

// everFalls tells that a law's loss falls somewhere as the flow grows, as far
// as a grid over its data, or up to four times the usual flow, can show.
func everFalls(law Law) bool {
	switch law.(type) {
	case *hydro.Pipe, *hydro.HazenWilliams, *hydro.Minor, *hydro.Lip:
		return false // by their formulas, whatever their sizes (see hydro.Law)
	}
	low, high := 0.0, 4*usualFlow
	if b, ok := law.(Bounded); ok {
		l, h := b.Bounds()
		low, high = max(float64(l), 0), float64(h)
	}
	if !finite(high) {
		high = 4 * usualFlow
	}
	const steps = 64
	before, _ := law.Loss(unit.Flow(low))
	for i := 1; i <= steps; i++ {
		h, _ := law.Loss(unit.Flow(low + (high-low)*float64(i)/steps))
		if h < before-1e-9 {
			return true
		}
		before = h
	}
	return false
}
