package network

import (
	"math"
	"slices"

	"plashet/engine/unit"
)

// A block is a part of the network that touches the rest at given heads only,
// so that it is solved by itself: the nodes whose head is looked for, and the
// chains at them. A chain between two given heads is a block without nodes.
type block struct {
	chains  []chain // a window of Solver.chains
	first   int     // of the window
	nodes   []int32 // node of each row of the matrix
	matrix  ldl
	at      [][]int32 // chains at each row
	wanted  []float64 // demand of each row
	feeding int32     // a node whose demand nothing can meet, -1 when there is none

	imbalance []float64 // of each row; then the change of head
	head      []float64 // of each row

	// Rows that open chains tie to no given head are a group; its heads are
	// known among one another only. Group 0 is the rows that are tied.
	groups    int
	group     []int32
	pins      []int32 // one row of each group but 0
	low, high []float64
	by        []int32 // the chain that gives a group its bound
	stale     bool    // chains have closed or opened since the groups were found
	queue     []int32

	rootError  float64
	stop       Stop
	iterations int
	culprit    int32 // chain that gave no number or ran away, -1 when there is none
}

// sort gathers the chains into blocks.
func (s *Solver) sort() {
	n := len(s.net.Nodes)
	parent := make([]int32, n+1)
	for v := range parent {
		parent[v] = int32(v)
	}
	find := func(v int32) int32 {
		for parent[v] != v {
			parent[v] = parent[parent[v]]
			v = parent[v]
		}
		return v
	}
	used := make([]bool, n+1)
	for _, c := range s.chains {
		used[c.from], used[c.to] = true, true
	}
	for v := range n {
		used[v] = used[v] || s.terminal(int32(v)) // a demand at the end of nothing is one that nothing meets
	}
	free := func(v int32) bool { return v != s.ground && used[v] && !s.net.Nodes[v].fixed() }
	for _, c := range s.chains {
		if free(c.from) && free(c.to) {
			parent[find(c.from)] = find(c.to)
		}
	}
	blockAt := make([]int32, n) // of the root of each set
	var members [][]int32       // chains of each block
	for v := range int32(n) {
		if free(v) && find(v) == v {
			blockAt[v] = int32(len(s.blocks))
			s.blocks = append(s.blocks, block{})
			members = append(members, nil)
		}
	}
	row := make([]int32, n+1)
	for v := range row {
		row[v] = -1
	}
	for v := range int32(n) {
		if free(v) {
			b := &s.blocks[blockAt[find(v)]]
			row[v] = int32(len(b.nodes))
			b.nodes = append(b.nodes, v)
		}
	}
	for i, c := range s.chains {
		switch {
		case c.from == c.to: // its flow does not depend on any head
			s.blocks, members = append(s.blocks, block{}), append(members, []int32{int32(i)})
		case free(c.from):
			b := blockAt[find(c.from)]
			members[b] = append(members[b], int32(i))
		case free(c.to):
			b := blockAt[find(c.to)]
			members[b] = append(members[b], int32(i))
		default:
			s.blocks, members = append(s.blocks, block{}), append(members, []int32{int32(i)})
		}
	}
	sorted := make([]chain, 0, len(s.chains))
	for k := range s.blocks {
		b := &s.blocks[k]
		b.first = len(sorted)
		for _, i := range members[k] {
			for _, g := range s.chains[i].segments {
				s.chainOf[g.edge] = int32(len(sorted))
			}
			sorted = append(sorted, s.chains[i])
		}
	}
	s.chains = sorted
	for k := range s.blocks {
		b := &s.blocks[k]
		b.chains = sorted[b.first : b.first+len(members[k])]
		b.prepare(s, row)
	}
}

// prepare makes the block's matrix and room, and routes its demands.
func (b *block) prepare(s *Solver, row []int32) {
	var links [][2]int32
	for i := range b.chains {
		c := &b.chains[i]
		c.i, c.j = row[c.from], row[c.to]
		if c.from == c.to {
			c.i, c.j = -1, -1
		}
		if c.i >= 0 && c.j >= 0 {
			links = append(links, [2]int32{c.i, c.j})
		}
	}
	var place []int32
	b.matrix, place = newLDL(len(b.nodes), links)
	nodes := make([]int32, len(b.nodes))
	for i, v := range b.nodes {
		nodes[place[i]] = v
	}
	n := len(nodes)
	b.nodes, b.at = nodes, make([][]int32, n)
	b.wanted, b.imbalance, b.head = make([]float64, n), make([]float64, n), make([]float64, n)
	b.group, b.pins, b.queue = make([]int32, n), make([]int32, 0, n), make([]int32, 0, n)
	b.low, b.high, b.by = make([]float64, n+1), make([]float64, n+1), make([]int32, n+1)
	for k, v := range nodes {
		if s.net.Nodes[v].Kind == Junction {
			b.wanted[k] = float64(s.net.Nodes[v].Demand)
		}
	}
	for i := range b.chains {
		c := &b.chains[i]
		if c.i >= 0 {
			c.i = place[c.i]
			b.at[c.i] = append(b.at[c.i], int32(i))
		}
		if c.j >= 0 {
			c.j = place[c.j]
			b.at[c.j] = append(b.at[c.j], int32(i))
		}
		if c.i >= 0 && c.j >= 0 {
			c.slot = b.matrix.slot(c.i, c.j)
		}
	}
	b.routeAll()
}

// routeAll finds flows that meet all demands, for the search to start from.
func (b *block) routeAll() {
	b.feeding = -1
	for i := range b.chains {
		b.chains[i].base = 0
	}
	left := slices.Clone(b.wanted)
	for k, v := range left {
		if v != 0 && !b.route(int32(k), left) {
			b.feeding = b.nodes[k]
		}
	}
}

// route sends the demand of a row along a way that the one-way parts allow,
// from (or, when water is put in, to) a given head, or a row where just as much
// is put in (or drawn) and left. It tells whether there is one.
func (b *block) route(k int32, left []float64) bool {
	came := make([]int32, len(b.nodes)) // chain by which the search came to a row, plus one
	queue := []int32{k}
	want := left[k]
	push := func(i int32, row int32) { // the flow on the chain that brings water to the row
		c := &b.chains[i]
		if c.j == row {
			c.base += want
		} else {
			c.base -= want
		}
	}
	for len(queue) > 0 {
		v := queue[0]
		queue = queue[1:]
		for _, i := range b.at[v] {
			c := &b.chains[i]
			other, inward := c.i, c.j == v
			if !inward {
				other = c.j
			}
			if c.oneWay && inward != (want > 0) || other >= 0 && (came[other] != 0 || other == k) {
				continue
			}
			if other < 0 || left[other] == -want {
				if other >= 0 {
					left[other] = 0
				}
				left[k] = 0
				for push(i, v); v != k; {
					i = came[v] - 1
					c := &b.chains[i]
					v = c.i + c.j - v
					push(i, v)
				}
				return true
			}
			came[other] = i + 1
			queue = append(queue, other)
		}
	}
	return false
}

// solve finds the block's steady state, from the flows of the last one when
// the state is warm.
func (b *block) solve(s *Solver, st *State) {
	b.stop, b.iterations, b.culprit = StopConverged, 0, -1
	if b.feeding >= 0 {
		b.stop = StopNoSteadyState
		return
	}
	if len(b.nodes) == 0 && len(b.chains) == 1 {
		b.solveLine(s, st)
		return
	}
	b.start(s.head, st)
	b.newton(s.head)
	for k, v := range b.nodes {
		s.head[v] = b.head[k]
	}
	for i := range b.chains {
		c := &b.chains[i]
		st.flow[b.first+i], st.closed[b.first+i] = c.q, c.closed
	}
	if b.stop == StopConverged {
		worst, _ := b.errors(s.head)
		st.Energy = max(st.Energy, unit.Head(worst))
		st.Mass = max(st.Mass, unit.Flow(b.balance()))
	}
}

// balance gives the worst imbalance of flow at the nodes of the block.
func (b *block) balance() (worst float64) {
	for k, v := range b.wanted {
		b.imbalance[k] = -v
	}
	for i := range b.chains {
		c := &b.chains[i]
		if c.i >= 0 {
			b.imbalance[c.i] -= c.q
		}
		if c.j >= 0 {
			b.imbalance[c.j] += c.q
		}
	}
	for _, v := range b.imbalance {
		worst = max(worst, math.Abs(v))
	}
	return worst
}
