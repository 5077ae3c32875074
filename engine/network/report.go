package network

import (
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// report writes what the blocks have found into the state: flows and losses of
// links, heads of all nodes, what stands and why.
func (s *Solver) report(st *State) {
	s.reportNodes(st)
	for i := range s.net.Links {
		st.Links[i] = LinkState{Status: s.linkNote[i]}
	}
	for k := range s.blocks {
		b := &s.blocks[k]
		for i := range b.chains {
			if b.stop != StopConverged {
				s.giveUp(&b.chains[i], st)
			} else {
				s.walk(&b.chains[i], st)
			}
		}
	}
	s.reportDead(st)
	for i := range st.Links {
		s.remarkLink(i, st)
	}
	for i := range st.Nodes {
		s.remarkNode(i, st)
	}
	for k := range s.blocks {
		s.remarkBlock(&s.blocks[k], st)
	}
}

// reportNodes sets the heads that are given and those that the blocks found.
func (s *Solver) reportNodes(st *State) {
	for i := range st.Nodes {
		n := &s.net.Nodes[i]
		st.Nodes[i] = NodeState{Head: unit.Head(math.NaN()), Status: NodeCut}
		if n.fixed() && !s.nodeBad[i] {
			st.Nodes[i] = NodeState{Head: n.Level, Status: NodeSet}
		}
	}
	for k := range s.blocks {
		b := &s.blocks[k]
		for r, v := range b.nodes {
			if b.stop != StopConverged {
				st.Nodes[v].Status = NodeUnsolved
				continue
			}
			status := NodeSet
			if g := b.group[r]; g > 0 {
				status = NodeLoose
				if !finite(b.low[g]) && !finite(b.high[g]) {
					status = NodeRelative
				}
			}
			st.Nodes[v] = NodeState{Head: unit.Head(b.head[r]), Status: status}
		}
	}
	for k := range s.blocks { // rings that touch nothing: their first node is the measure of the rest
		for i := range s.blocks[k].chains {
			if c := &s.blocks[k].chains[i]; c.from == c.to && st.Nodes[c.from].Status == NodeCut {
				st.Nodes[c.from] = NodeState{Status: NodeRelative}
			}
		}
	}
}

// loss gives the loss of an edge at a flow, both in the edge's own direction.
func (s *Solver) loss(e int32, q unit.Flow) (h unit.Head) {
	if l := len(s.net.Links); int(e) >= l {
		h, _ = outflow{&s.net.Nodes[int(e)-l]}.Loss(q)
		return h
	}
	parts := s.net.Links[e].Parts
	for i := range parts {
		h += parts[i].loss(q)
	}
	return h
}

// loss gives the part's loss at a flow in the link's direction.
func (p *Part) loss(q unit.Flow) unit.Head {
	switch {
	case p.Law == nil:
		return 0
	case p.Reverse:
		h, _ := p.Law.Loss(-q)
		return -h
	}
	h, _ := p.Law.Loss(q)
	return h
}

// walk gives every link of a chain its flow and every node inside it its head.
// A chain that stands takes the jump of head in its last one-way element that
// is no pump (a check valve, a dry outlet), or else in its last pump: what
// lies before it is under the head that the pumps before it hold up. Between
// two one-way elements that is only the least head.
func (s *Solver) walk(c *chain, st *State) {
	jump := len(c.segments)
	if c.closed {
		jump = s.jump(c)
	}
	at, status := s.headOf(c.from, st)
	for k, g := range c.segments {
		if k > 0 && k <= jump {
			s.inside(c.segments[k-1], at, status, st)
		}
		at -= s.settleLink(c, g, st)
		if c.closed && s.checks(g.edge) {
			status = max(status, NodeLoose) // at least what comes through the valve
		}
	}
	if jump == len(c.segments) {
		return
	}
	at, status = s.headOf(c.to, st)
	for k := len(c.segments) - 1; k > jump; k-- {
		at += s.settleLink(c, c.segments[k], st)
		if s.standing(c.segments[k].edge) != LinkIdle {
			status = max(status, NodeLoose)
		}
		s.inside(c.segments[k-1], at, status, st)
	}
}

// headOf gives head and status of the end of a chain.
func (s *Solver) headOf(v int32, st *State) (unit.Head, NodeStatus) {
	if v == s.ground {
		return 0, NodeSet
	}
	return st.Nodes[v].Head, st.Nodes[v].Status
}

// inside sets the node at the far end of a segment.
func (s *Solver) inside(g segment, head unit.Head, status NodeStatus, st *State) {
	a, b := s.ends(g.edge)
	if !g.rev {
		a = b
	}
	st.Nodes[a] = NodeState{Head: head, Status: status}
}

// settleLink sets the state of a link of a chain and gives its loss in the
// chain's direction.
func (s *Solver) settleLink(c *chain, g segment, st *State) unit.Head {
	q := unit.Flow(c.q)
	if g.rev {
		q = -q
	}
	h := s.segmentLoss(c, g, q)
	if l := len(s.net.Links); int(g.edge) < l {
		status := LinkRuns
		if c.closed {
			status = s.standing(g.edge)
		}
		st.Links[g.edge] = LinkState{Flow: q, Loss: h, Status: status}
	} else {
		st.Nodes[int(g.edge)-l].Out = q // its head may be set later, see remarkNode
	}
	if g.rev {
		return -h
	}
	return h
}

// segmentLoss gives the loss of a segment of a chain at its flow, both in the
// edge's own direction. Where the link is the whole chain, or all but the way
// out, the search has found it.
func (s *Solver) segmentLoss(c *chain, g segment, q unit.Flow) unit.Head {
	last := c.segments[len(c.segments)-1]
	isLink := int(g.edge) < len(s.net.Links)
	if !isLink || len(c.segments) > 2 || len(c.segments) == 2 && int(last.edge) < len(s.net.Links) {
		return s.loss(g.edge, q)
	}
	h := unit.Head(c.h)
	if c.closed {
		h = unit.Head(c.atZero)
	}
	if last != g {
		h -= s.loss(last.edge, unit.Flow(c.q))
	}
	if g.rev {
		h = -h
	}
	return h
}

// standing says why a link of a chain that stands has no flow.
func (s *Solver) standing(e int32) LinkStatus {
	status := LinkIdle
	if int(e) >= len(s.net.Links) {
		return status
	}
	for _, p := range s.net.Links[e].Parts {
		switch p.Role {
		case Pump:
			return LinkStalled
		case CheckValve:
			status = LinkHeld
		}
	}
	return status
}

// checks tells that there is a check valve in an edge.
func (s *Solver) checks(e int32) bool {
	return int(e) < len(s.net.Links) && slices.ContainsFunc(s.net.Links[e].Parts, func(p Part) bool { return p.Role == CheckValve })
}

// jump gives the segment in which a chain that stands takes the jump of head.
func (s *Solver) jump(c *chain) int {
	pump := -1
	for k := len(c.segments) - 1; k >= 0; k-- {
		e := c.segments[k].edge
		if int(e) >= len(s.net.Links) {
			return k
		}
		if s.checks(e) {
			return k
		}
		if pump < 0 && s.standing(e) == LinkStalled {
			pump = k
		}
	}
	return max(pump, 0)
}

// giveUp marks a chain of a block without an answer.
func (s *Solver) giveUp(c *chain, st *State) {
	none := math.NaN()
	for k, g := range c.segments {
		if int(g.edge) < len(s.net.Links) {
			st.Links[g.edge] = LinkState{Flow: unit.Flow(none), Loss: unit.Head(none), Status: LinkUnsolved}
		}
		if k > 0 {
			s.inside(c.segments[k-1], unit.Head(none), NodeUnsolved, st)
		}
	}
}

// reportDead carries the heads into the links that lead nowhere, and through
// them into the parts that touch no level otherwise: no flow, so the head
// changes only where a pump stands pushing.
func (s *Solver) reportDead(st *State) {
	s.queue = s.queue[:0]
	all := true
	for v := range st.Nodes {
		status := st.Nodes[v].Status
		s.met[v] = status == NodeSet || status == NodeLoose
		all = all && s.met[v]
		if s.met[v] {
			s.queue = append(s.queue, int32(v))
		}
	}
	if all {
		return
	}
	s.spreadDead(0, st)
	for v := range st.Nodes { // what is left is known relative to one of its nodes
		if st.Nodes[v].Status == NodeRelative && !s.met[v] {
			done := len(s.queue)
			s.adopt(int32(v), st.Nodes[v].Head, NodeRelative, st)
			s.spreadDead(done, st)
		}
	}
}

// spreadDead goes on from the nodes in the queue.
func (s *Solver) spreadDead(from int, st *State) {
	for k := from; k < len(s.queue); k++ { // first what hangs together without a one-way element
		s.spreadHead(s.queue[k], false, st)
	}
	for k := from; k < len(s.queue); k++ {
		v := s.queue[k]
		s.spreadHead(v, false, st)
		s.spreadHead(v, true, st)
	}
}

// spreadHead carries the head of a node on to its neighbours, through one-way
// elements or through the rest.
func (s *Solver) spreadHead(v int32, oneWay bool, st *State) {
	for _, e := range s.at[v] {
		a, b := s.ends(e)
		other := a + b - v
		if int(e) >= len(s.net.Links) || s.met[other] || st.Nodes[other].Status == NodeUnsolved {
			continue
		}
		if s.linkNote[e] == LinkRuns {
			forth, back := s.ways(e)
			stands := st.Links[e].Status != LinkRuns && (!forth || !back)
			if st.Nodes[other].Status == NodeRelative && stands == oneWay { // they move together
				status := st.Nodes[v].Status
				if stands {
					status = max(status, NodeLoose)
				}
				s.adopt(other, st.Nodes[other].Head+s.shift[v], status, st)
			}
			continue
		}
		forth, back := s.ways(e)
		if s.linkNote[e] != LinkDead && s.linkNote[e] != LinkOpposed || !forth && !back || oneWay == (forth && back) {
			continue
		}
		at, status := st.Nodes[v].Head, st.Nodes[v].Status
		if a == v {
			at -= s.loss(e, 0)
		} else {
			at += s.loss(e, 0)
		}
		if oneWay {
			if (a == v) != forth {
				continue // behind a valve that holds the other way the head may be anything
			}
			status = max(status, NodeLoose)
			if s.standing(e) == LinkStalled {
				s.remark(st, Reason{Code: ReasonDeadHead, Node: -1, Link: int(e), Head: at - st.Nodes[v].Head})
			}
		}
		s.adopt(other, at, status, st)
		for k := len(s.queue) - 1; k < len(s.queue); k++ {
			s.spreadHead(s.queue[k], false, st)
		}
	}
}

// adopt sets the head of a node and queues it.
func (s *Solver) adopt(v int32, at unit.Head, status NodeStatus, st *State) {
	s.shift[v] = 0
	if st.Nodes[v].Status == NodeRelative {
		s.shift[v] = at - st.Nodes[v].Head
	}
	st.Nodes[v] = NodeState{Head: at, Status: status}
	s.met[v] = true
	s.queue = append(s.queue, v)
}

// PartLosses appends the loss of each part of a link, in the order of its
// parts, at the flow of the state: positive where head is lost in the link's
// direction. They sum to LinkState.Loss.
func (s *Solver) PartLosses(st *State, link int, dst []unit.Head) []unit.Head {
	parts := s.net.Links[link].Parts
	for i := range parts {
		dst = append(dst, parts[i].loss(st.Links[link].Flow))
	}
	return dst
}

// Messages gives the reasons of a state as messages with the elements' names.
func (s *Solver) Messages(st *State) []trace.Message {
	var all []trace.Message
	for _, r := range st.Reasons {
		m := trace.Message{Code: string(r.Code)}
		if r.Node >= 0 {
			m.Args = append(m.Args, trace.Str("node", s.net.Nodes[r.Node].Name))
		}
		if r.Link >= 0 {
			m.Args = append(m.Args, trace.Str("link", s.net.Links[r.Link].Name))
		}
		if r.Head != 0 {
			m.Args = append(m.Args, trace.Num("head", r.Head, unit.KindHead))
		}
		all = append(all, m)
	}
	return all
}
