package network

import "slices"

// The network becomes a graph of edges: its links, and from each node that
// spills one more to the ground. An edge that is out carries nothing.

// ends gives the two nodes of an edge.
func (s *Solver) ends(e int32) (a, b int32) {
	if l := len(s.net.Links); int(e) >= l {
		return e - int32(l), s.ground
	}
	l := &s.net.Links[e]
	return int32(l.From), int32(l.To)
}

// out tells that an edge carries nothing.
func (s *Solver) out(e int32) bool {
	if l := len(s.net.Links); int(e) >= l {
		n := int(e) - l
		return s.nodeBad[n] || s.cutOut[n] || !s.net.Nodes[n].spills()
	}
	return s.linkNote[e] != LinkRuns
}

// ways tells which ways an edge lets water through.
func (s *Solver) ways(e int32) (forth, back bool) {
	if int(e) >= len(s.net.Links) {
		return true, false
	}
	forth, back = true, true
	for _, p := range s.net.Links[e].Parts {
		if p.Role != Passive {
			forth = forth && !p.Reverse
			back = back && p.Reverse
		}
	}
	return forth, back
}

// terminal tells that water can enter or leave the network at a node.
func (s *Solver) terminal(v int32) bool {
	if v == s.ground {
		return true
	}
	n := &s.net.Nodes[v]
	return n.fixed() || n.Kind == Junction && n.Demand != 0
}

// incidence lists, for each node and the ground, the edges at it that pass
// the filter; an edge from a node to itself stands twice.
func (s *Solver) incidence(keep func(e int32) bool) [][]int32 {
	at := make([][]int32, len(s.net.Nodes)+1)
	for e := range int32(len(s.net.Links) + len(s.net.Nodes)) {
		if int(e) < len(s.net.Links) && s.linkNote[e] == LinkFaulty {
			continue
		}
		if int(e) >= len(s.net.Links) && s.out(e) || !keep(e) {
			continue
		}
		a, b := s.ends(e)
		at[a] = append(at[a], e)
		at[b] = append(at[b], e)
	}
	return at
}

// dropDead takes out every link that leads nowhere: the bridges of the graph
// in which all terminals are one node. Water that went through such a link
// could not come back nor leave, so its flow is zero. (R. Tarjan, "A note on
// finding the bridges of a graph", Information Processing Letters 2, 1974, by
// depth-first search without recursion.)
func (s *Solver) dropDead() {
	running := func(e int32) bool { return !s.out(e) }
	at := s.incidence(running)
	n := len(at)
	root := s.ground
	alias := func(v int32) int32 {
		if s.terminal(v) {
			return root
		}
		return v
	}
	for v := range int32(n - 1) {
		if alias(v) == root {
			at[root] = append(at[root], at[v]...)
		}
	}
	entered, low := make([]int32, n), make([]int32, n)
	clock := int32(0)
	type frame struct{ node, by, next int32 }
	var stack []frame
	enter := func(v, by int32) {
		clock++
		entered[v], low[v] = clock, clock
		stack = append(stack, frame{v, by, 0})
	}
	for start := range n {
		if v := alias(int32(n - 1 - start)); entered[v] == 0 {
			enter(v, -1)
		}
		for len(stack) > 0 {
			f := &stack[len(stack)-1]
			if int(f.next) == len(at[f.node]) {
				done := *f
				stack = stack[:len(stack)-1]
				if len(stack) > 0 {
					up := stack[len(stack)-1].node
					low[up] = min(low[up], low[done.node])
					if low[done.node] > entered[up] {
						s.kill(done.by)
					}
				}
				continue
			}
			e := at[f.node][f.next]
			f.next++
			a, b := s.ends(e)
			a, b = alias(a), alias(b)
			other := a + b - f.node
			if e == f.by || a == b {
				continue // each edge is one, parallel edges have names of their own
			}
			if entered[other] == 0 {
				enter(other, e)
			} else {
				low[f.node] = min(low[f.node], entered[other])
			}
		}
	}
}

// kill marks an edge as leading nowhere.
func (s *Solver) kill(e int32) {
	if l := len(s.net.Links); int(e) >= l {
		s.cutOut[int(e)-l] = true
		return
	}
	s.linkNote[e] = LinkDead
}

// join makes the chains: edges in a row, from one node where water can divide
// or whose head is given to the next.
func (s *Solver) join() {
	at := s.incidence(func(e int32) bool { return !s.out(e) })
	s.kept = make([]bool, len(at))
	for v := range int32(len(at)) {
		s.kept[v] = s.terminal(v) || len(at[v]) != 2 || at[v][0] == at[v][1]
	}
	s.chains = s.chains[:0]
	s.chainOf = make([]int32, len(s.net.Links)+len(s.net.Nodes))
	for e := range s.chainOf {
		s.chainOf[e] = -1
	}
	for v := range int32(len(at)) {
		if s.kept[v] {
			s.follow(at, v)
		}
	}
	for v := range int32(len(at)) { // rings: none of their nodes divides the water
		if !s.kept[v] && s.chainOf[at[v][0]] < 0 {
			s.kept[v] = true
			s.follow(at, v)
		}
	}
}

// follow makes the chains that start at node v.
func (s *Solver) follow(at [][]int32, v int32) {
	for _, first := range at[v] {
		if s.chainOf[first] >= 0 {
			continue
		}
		c := chain{from: v, slot: -1}
		forth, back := true, true
		for here, e := v, first; ; {
			a, b := s.ends(e)
			rev := a != here
			s.chainOf[e] = int32(len(s.chains))
			c.segments = append(c.segments, segment{e, rev})
			f, r := s.ways(e)
			if rev {
				f, r = r, f
			}
			forth, back = forth && f, back && r
			here = a + b - here
			if s.kept[here] {
				c.to = here
				break
			}
			if at[here][0] == e {
				e = at[here][1]
			} else {
				e = at[here][0]
			}
		}
		if back && !forth {
			c.turn()
			forth, back = true, false
		}
		c.oneWay = !back
		if !forth {
			c.size = -1 // opposed: dropIdle takes it out
		} else {
			s.fill(&c)
		}
		s.chains = append(s.chains, c)
	}
}

// turn reverses a chain, so that it runs the way its one-way parts let it.
func (c *chain) turn() {
	c.from, c.to = c.to, c.from
	slices.Reverse(c.segments)
	for i := range c.segments {
		c.segments[i].rev = !c.segments[i].rev
	}
}

// fill sums the laws of a chain.
func (s *Solver) fill(c *chain) {
	c.square, c.laws = 0, c.laws[:0]
	for _, g := range c.segments {
		if l := len(s.net.Links); int(g.edge) >= l {
			c.laws = append(c.laws, turned{outflow{&s.net.Nodes[int(g.edge)-l]}, g.rev})
			continue
		}
		for _, p := range s.net.Links[g.edge].Parts {
			if p.Law != nil {
				c.add(p.Law, g.rev != p.Reverse, !s.loose)
			}
		}
	}
	c.measure()
}
