package arrange

import "math"

// program is a small linear program, least c.x with x >= 0, c >= 0 and rows
// a.x <= b that are added as they are needed. It is kept solved as a dictionary
// (G. B. Dantzig, Linear Programming and Extensions, 1963): each basic variable
// as its value less a sum over the nonbasic ones. With c >= 0 the start is dual
// feasible and stays so, so that the dual method (C. E. Lemke, 1954) carries on
// after every new row without starting anew; a copy is a branch.
type program struct {
	n     int       // variables; columns of the dictionary
	m     int       // rows
	a     []float64 // m x (n+1), row major; the last column is the value
	z     []float64 // n+1: reduced costs, and the objective's value
	basis []int32   // variable of each row: below n its own, else a slack
	free  []int32   // variable of each column
	where []int32   // of each own variable: its row, or below zero the complement of its column
	slack int32     // the next slack's number
	work  []float64
}

const (
	grain = 1e-9  // m: below which a row counts as kept
	small = 1e-11 // below which a coefficient counts as nothing
)

// reset makes it an empty program with costs c.
func (p *program) reset(c []float64) {
	n := len(c)
	p.n, p.m, p.slack = n, 0, int32(n)
	p.a, p.basis = p.a[:0], p.basis[:0]
	p.z = append(append(p.z[:0], c...), 0)
	p.free, p.where = p.free[:0], p.where[:0]
	for j := range int32(n) {
		p.free = append(p.free, j)
		p.where = append(p.where, ^j)
	}
	if cap(p.work) < n+1 {
		p.work = make([]float64, n+1)
	}
	p.work = p.work[:n+1]
}

// from makes it a copy of another one.
func (p *program) from(o *program) {
	p.n, p.m, p.slack = o.n, o.m, o.slack
	p.a = append(p.a[:0], o.a...)
	p.z = append(p.z[:0], o.z...)
	p.basis = append(p.basis[:0], o.basis...)
	p.free = append(p.free[:0], o.free...)
	p.where = append(p.where[:0], o.where...)
	if cap(p.work) < p.n+1 {
		p.work = make([]float64, p.n+1)
	}
	p.work = p.work[:p.n+1]
}

// row adds a.x <= b.
func (p *program) row(a []float64, b float64) {
	p.express(a, b)
	p.take(p.work)
}

// take adds a row as it is expressed by the columns.
func (p *program) take(w []float64) {
	p.a = append(p.a, w...)
	p.basis = append(p.basis, p.slack)
	p.slack++
	p.m++
}

// rise gives by how much the objective grows at least once a row is kept too that
// was expressed last, if the program is solved; without end where it cannot be.
func (p *program) rise() float64 {
	w := p.work
	short := w[p.n]
	if short >= -grain {
		return 0
	}
	least := math.Inf(1)
	for j, c := range w[:p.n] {
		if c < -small {
			least = min(least, p.z[j]/-c)
		}
	}
	return least * -short
}

// express works out what a.x <= b is in terms of the columns.
func (p *program) express(a []float64, b float64) {
	w := p.work
	clear(w)
	w[p.n] = b
	for k, c := range a {
		if c == 0 {
			continue
		}
		at := p.where[k]
		if at < 0 {
			w[^at] += c
			continue
		}
		r := p.a[int(at)*(p.n+1):][:p.n+1]
		for j, v := range r {
			w[j] -= c * v // x_k = value - sum: both change sides
		}
	}
}

// solve makes every row kept at least cost; false where that cannot be.
func (p *program) solve() bool {
	n1 := p.n + 1
	for turn := 0; ; turn++ {
		// The worst row leaves; after many turns the lowest variable, which cannot
		// go in circles (R. G. Bland, 1977).
		r, worst := -1, -grain
		for i := range p.m {
			v := p.a[i*n1+p.n]
			switch {
			case v >= -grain:
			case turn > 200:
				if r < 0 || p.basis[i] < p.basis[r] {
					r = i
				}
			case v < worst:
				r, worst = i, v
			}
		}
		if r < 0 {
			return true
		}
		row := p.a[r*n1:][:n1]
		e, best := -1, 0.0
		for j := range p.n {
			c := row[j]
			if c >= -small {
				continue
			}
			ratio := p.z[j] / -c
			if e < 0 || ratio < best-1e-13 || ratio <= best+1e-13 && p.better(j, e, row, turn) {
				e, best = j, ratio
			}
		}
		if e < 0 || turn > 2000 {
			return false
		}
		p.pivot(r, e)
	}
}

// better breaks ties of the ratio: by the larger pivot, later by the lowest
// variable.
func (p *program) better(j, e int, row []float64, turn int) bool {
	if turn > 200 {
		return p.free[j] < p.free[e]
	}
	return row[j] < row[e]
}

// pivot brings column e into row r.
func (p *program) pivot(r, e int) {
	n1 := p.n + 1
	row := p.a[r*n1:][:n1]
	inv := 1 / row[e]
	for j := range row {
		row[j] *= inv
	}
	row[e] = inv
	for i := range p.m {
		if i == r {
			continue
		}
		o := p.a[i*n1:][:n1]
		f := o[e]
		if f == 0 {
			continue
		}
		o[e] = 0
		for j, v := range row {
			o[j] -= f * v
		}
	}
	if f := p.z[e]; f != 0 {
		p.z[e] = 0
		for j := range p.n {
			p.z[j] -= f * row[j]
		}
		p.z[p.n] += f * row[p.n]
	}
	in, out := p.free[e], p.basis[r]
	p.basis[r], p.free[e] = in, out
	if int(in) < p.n {
		p.where[in] = int32(r)
	}
	if int(out) < p.n {
		p.where[out] = ^int32(e)
	}
}

// value gives the objective, read the variables.
func (p *program) value() float64 { return p.z[p.n] }

func (p *program) read(x []float64) {
	for k := range p.n {
		x[k] = 0
		if at := p.where[k]; at >= 0 {
			x[k] = p.a[int(at)*(p.n+1)+p.n]
		}
	}
}
