package network

import (
	"cmp"
	"slices"
)

// ldl factors the symmetric matrix of a block, node by node in an order of
// least fill, and solves with it. The pattern is fixed once; factor and solve
// allocate nothing and search nothing: every target of the elimination is
// written down beforehand (updates).
//
// Order: minimum degree (A. George, J. Liu, "The evolution of the minimum
// degree ordering algorithm", SIAM Review 31, 1989), in its plain form on the
// elimination graph, which is quick up to some ten thousand nodes of a pipe
// network. Nodes are renamed by their place in the order, so that there is no
// permutation in the loops.
type ldl struct {
	n       int
	start   []int32   // of each column in rows and off; n+1
	rows    []int32   // row of each entry below the diagonal, ascending in its column
	off     []float64 // its value: of the matrix, after factor of L
	diag    []float64 // of the matrix, after factor of D
	updates []int32   // places in off that each pair of entries of a column changes, in order
}

// newLDL makes the pattern for n nodes and the links between them; place[i]
// is the new name of node i.
func newLDL(n int, links [][2]int32) (m ldl, place []int32) {
	adj := make([][]int32, n)
	for _, l := range links {
		if l[0] != l[1] {
			adj[l[0]] = append(adj[l[0]], l[1])
			adj[l[1]] = append(adj[l[1]], l[0])
		}
	}
	for i := range adj {
		slices.Sort(adj[i])
		adj[i] = slices.Compact(adj[i])
	}
	order := eliminate(adj)
	place = make([]int32, n)
	for k, v := range order {
		place[v] = int32(k)
	}
	m = ldl{n: n, start: make([]int32, n+1), diag: make([]float64, n)}
	for k, v := range order {
		for _, u := range adj[v] {
			m.rows = append(m.rows, place[u])
		}
		slices.Sort(m.rows[m.start[k]:])
		m.start[k+1] = int32(len(m.rows))
	}
	m.off = make([]float64, len(m.rows))
	for k := range n {
		col := m.rows[m.start[k]:m.start[k+1]]
		for a, ra := range col {
			for _, rb := range col[a+1:] {
				m.updates = append(m.updates, m.slot(ra, rb))
			}
		}
	}
	return m, place
}

// eliminate removes the nodes one by one, fewest neighbours first, joining the
// neighbours of each to one another. It gives the order and leaves in adj each
// node's neighbours at its turn: the pattern of its column.
func eliminate(adj [][]int32) (order []int32) {
	n := len(adj)
	byDegree := make([][]int32, n+1)
	done := make([]bool, n)
	for v := range adj {
		byDegree[len(adj[v])] = append(byDegree[len(adj[v])], int32(v))
	}
	var merged []int32
	for least := 0; len(order) < n; {
		if len(byDegree[least]) == 0 {
			least++
			continue
		}
		v := byDegree[least][0] // the one that has waited longest: less fill than the newest
		byDegree[least] = byDegree[least][1:]
		if done[v] || len(adj[v]) != least {
			continue // an old entry: the node has gone, or stands elsewhere by now
		}
		done[v] = true
		order = append(order, v)
		for _, u := range adj[v] {
			merged = union(merged[:0], adj[u], adj[v], u, v)
			adj[u] = append(adj[u][:0], merged...)
			byDegree[len(adj[u])] = append(byDegree[len(adj[u])], u)
			least = min(least, len(adj[u]))
		}
	}
	return order
}

// union appends the sorted union of a and b without x and y.
func union(dst, a, b []int32, x, y int32) []int32 {
	for len(a) > 0 || len(b) > 0 {
		var v int32
		switch {
		case len(b) == 0 || len(a) > 0 && a[0] < b[0]:
			v, a = a[0], a[1:]
		case len(a) == 0 || b[0] < a[0]:
			v, b = b[0], b[1:]
		default:
			v, a, b = a[0], a[1:], b[1:]
		}
		if v != x && v != y {
			dst = append(dst, v)
		}
	}
	return dst
}

// slot gives the place in off of the entry between two nodes (new names).
func (m *ldl) slot(i, j int32) int32 {
	col, row := min(i, j), max(i, j)
	first, last := m.start[col], m.start[col+1]
	at, _ := slices.BinarySearchFunc(m.rows[first:last], row, cmp.Compare[int32])
	return first + int32(at)
}

// clear makes the matrix zero.
func (m *ldl) clear() {
	clear(m.diag)
	clear(m.off)
}

// factor turns the matrix into L D L^T in place. Every pivot must be positive,
// which holds for a network whose every node is tied to a level or pinned.
func (m *ldl) factor() {
	u := 0
	for k := range m.n {
		first, last := m.start[k], m.start[k+1]
		rows, col := m.rows[first:last], m.off[first:last]
		inverse := 1 / m.diag[k]
		for a, v := range col {
			l := v * inverse
			m.diag[rows[a]] -= l * v
			for _, w := range col[a+1:] {
				m.off[m.updates[u]] -= l * w
				u++
			}
			col[a] = l
		}
		m.diag[k] = inverse
	}
}

// solve overwrites the right-hand side x with the solution.
func (m *ldl) solve(x []float64) {
	for k := range m.n {
		v := x[k]
		for a := m.start[k]; a < m.start[k+1]; a++ {
			x[m.rows[a]] -= m.off[a] * v
		}
	}
	for k := m.n - 1; k >= 0; k-- {
		v := x[k] * m.diag[k]
		for a := m.start[k]; a < m.start[k+1]; a++ {
			v -= m.off[a] * x[m.rows[a]]
		}
		x[k] = v
	}
}
