package network

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// ties are places that ways without any resistance join: they have one head.
type ties struct {
	parent []int32
	level  []int32 // of each root: a node among its places whose head is given, -1 when there is none
}

func (s *Solver) newTies() ties {
	t := ties{make([]int32, len(s.net.Nodes)+1), make([]int32, len(s.net.Nodes)+1)}
	for v := range t.parent {
		t.parent[v], t.level[v] = int32(v), -1
		if v < len(s.net.Nodes) && s.net.Nodes[v].fixed() {
			t.level[v] = int32(v)
		}
	}
	return t
}

func (t *ties) find(v int32) int32 {
	for t.parent[v] != v {
		v = t.parent[v]
	}
	return v
}

// join makes two places one. It gives the two levels that come together by it,
// or the same root twice where they were one already.
func (t *ties) join(v, w int32) (a, b int32, ok bool) {
	v, w = t.find(v), t.find(w)
	a, b = t.level[v], t.level[w]
	if v == w || a >= 0 && b >= 0 {
		return a, b, false
	}
	t.parent[v] = w
	t.level[w] = max(a, b)
	return a, b, true
}

// dropIdle takes out the chains that can carry nothing because one-way parts
// face each other, and those without any resistance that close a loop or join
// two given levels, in which no flow is determined. It tells whether it took
// any, for then others may lead nowhere now.
func (s *Solver) dropIdle() (faults []trace.Fault, again bool) {
	t := s.newTies()
	for i := range s.chains { // an end in the air without loss has a given level too
		if c := &s.chains[i]; s.linkless(c) && c.lossless() {
			t.level[c.from] = c.from
		}
	}
	for i := range s.chains {
		c := &s.chains[i]
		if s.linkless(c) {
			continue
		}
		note := LinkRuns
		var a, b int32
		switch {
		case c.size < 0:
			note = LinkOpposed
		case c.lossless():
			end := c.to
			if end == s.ground { // its last segment is the way out of a node
				end = c.segments[len(c.segments)-1].edge - int32(len(s.net.Links))
				t.level[end] = end
			}
			var ok bool
			if a, b, ok = t.join(c.from, end); !ok {
				note = LinkFaulty
			}
		}
		if note == LinkRuns {
			continue
		}
		again = true
		for _, g := range c.segments {
			if int(g.edge) >= len(s.net.Links) {
				continue // the way out stays; without the links nothing reaches it
			}
			s.linkNote[g.edge] = note
			if note == LinkFaulty {
				faults = append(faults, s.lossFault(int(g.edge), a, b))
			}
		}
	}
	return faults, again
}

// lossFault says what a link without resistance does: it joins the levels of
// the nodes a and b, or closes a loop.
func (s *Solver) lossFault(link int, a, b int32) trace.Fault {
	if a < 0 || b < 0 || a == b {
		return s.net.linkFault(FaultNoLoss, link)
	}
	n, m := &s.net.Nodes[a], &s.net.Nodes[b]
	args := []trace.Arg{trace.Str("node", n.Name), trace.Str("other", m.Name)}
	if n.Level == m.Level {
		return s.net.linkFault(FaultNoPipe, link, args...)
	}
	return s.net.linkFault(FaultLevels, link, append(args,
		trace.Num("level", n.Level, unit.KindElevation), trace.Num("found", m.Level, unit.KindElevation))...)
}

// linkless tells that the chain is only the way out of a node.
func (s *Solver) linkless(c *chain) bool {
	return len(c.segments) == 1 && int(c.segments[0].edge) >= len(s.net.Links)
}

// lossless tells that nothing in the chain resists, as far as two flows show.
func (c *chain) lossless() bool {
	h0, _ := c.loss(0)
	h1, _ := c.loss(c.size)
	h2, _ := c.loss(math.Max(100*c.size, 1))
	return h1 <= h0 && h2 <= h0
}
