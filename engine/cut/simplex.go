package cut

import "math"

// simplex solves min cost·x, columns·x = rhs, x >= 0 by the revised primal
// method with a dense inverse; columns may be added between runs. It only
// steers the search, so its answers need not be exact. Products are rounded by
// float64() where a sum follows: a processor that fuses the two would else
// take another path to another plan of the same worth.
type simplex struct {
	rows   int
	inv    []float64 // inverse of the basis, by rows
	x      []float64 // values of the basic columns
	basis  []int
	cols   []column
	y      []float64 // dual values
	dir    []float64
	pivots int
}

type column struct {
	cost    float64
	entries []entry
}

type entry struct {
	row int
	n   float64
}

const (
	enterTolerance = 1e-7  // a column enters when it gains more than this per unit
	pivotTolerance = 1e-9  // a pivot is larger than this
	ratioTolerance = 1e-12 // ratios closer than this count as equal
	maxPivots      = 50000 // stops a run that cycles
)

// newSimplex starts from a basis of unit columns with the given costs.
func newSimplex(rhs, cost []float64) *simplex {
	n := len(rhs)
	s := &simplex{
		rows: n, inv: make([]float64, n*n), x: make([]float64, n),
		basis: make([]int, n), y: make([]float64, n), dir: make([]float64, n),
	}
	copy(s.x, rhs)
	for i := range n {
		s.inv[i*n+i] = 1
		s.basis[i] = i
		s.cols = append(s.cols, column{cost[i], []entry{{i, 1}}})
	}
	return s
}

func (s *simplex) add(c column) { s.cols = append(s.cols, c) }

// run pivots until no column gains and gives the objective.
func (s *simplex) run() float64 {
	for s.pivots < maxPivots {
		s.price()
		enter, least := -1, -enterTolerance
		for k := range s.cols {
			c := &s.cols[k]
			gain := c.cost
			for _, e := range c.entries {
				gain -= float64(e.n * s.y[e.row])
			}
			if gain < least {
				enter, least = k, gain
			}
		}
		if enter < 0 || !s.pivot(enter) {
			break
		}
	}
	sum := 0.0
	for r, b := range s.basis {
		sum += float64(s.cols[b].cost * s.x[r])
	}
	return sum
}

// price works out the dual values: costs of the basis times its inverse.
func (s *simplex) price() {
	clear(s.y)
	for r, b := range s.basis {
		q := s.cols[b].cost
		if q == 0 {
			continue
		}
		for j, v := range s.inv[r*s.rows : (r+1)*s.rows] {
			s.y[j] += float64(q * v)
		}
	}
}

// pivot brings a column into the basis; false when nothing limits it or the
// pivot would be too small to trust.
func (s *simplex) pivot(enter int) bool {
	s.pivots++
	clear(s.dir)
	for _, e := range s.cols[enter].entries {
		for r := range s.dir {
			s.dir[r] += float64(e.n * s.inv[r*s.rows+e.row])
		}
	}
	leave, ratio := -1, math.Inf(1)
	for r, d := range s.dir {
		if d <= pivotTolerance {
			continue
		}
		q := max(0, s.x[r]) / d
		if q < ratio-ratioTolerance || (q < ratio+ratioTolerance && d > s.dir[leave]) {
			leave, ratio = r, min(q, ratio)
		}
	}
	if leave < 0 {
		return false
	}
	row := s.inv[leave*s.rows : (leave+1)*s.rows]
	d := s.dir[leave]
	for j := range row {
		row[j] /= d
	}
	s.x[leave] /= d
	for r, f := range s.dir {
		if r == leave || f == 0 {
			continue
		}
		other := s.inv[r*s.rows : (r+1)*s.rows]
		for j, v := range row {
			other[j] -= float64(f * v)
		}
		s.x[r] -= float64(f * s.x[leave])
	}
	s.basis[leave] = enter
	return true
}
