package band

import "math"

// regression is the least squares of outputs on the inputs of a sample, by the
// normal equations: the draws are so nearly uncorrelated that these lose no
// digits that count.
type regression struct {
	s      *Sample
	mean   []float64
	sd     []float64
	factor []float64 // Cholesky's lower triangle of the correlations, row by row
}

func newRegression(s *Sample) *regression {
	d := len(s.columns)
	g := &regression{s: s, mean: make([]float64, d), sd: make([]float64, d), factor: make([]float64, d*d)}
	n := float64(s.n)
	for j, c := range s.columns {
		for _, v := range c {
			g.mean[j] += v
		}
		g.mean[j] /= n
		g.sd[j] = math.Sqrt(dot(c, c)/n - g.mean[j]*g.mean[j])
	}
	for j := range d {
		for k := range j {
			g.factor[j*d+k] = (dot(s.columns[j], s.columns[k])/n - g.mean[j]*g.mean[k]) / (g.sd[j] * g.sd[k])
		}
		g.factor[j*d+j] = 1
	}
	g.cholesky(d)
	return g
}

// leastPivot keeps a column that the ones before it make up (more inputs than
// draws) from dividing by nothing; its coefficient then means nothing.
const leastPivot = 1e-9

func (g *regression) cholesky(d int) {
	for j := range d {
		row := g.factor[j*d : j*d+j]
		for k := range j {
			row[k] = (row[k] - dot(row[:k], g.factor[k*d:k*d+k])) / g.factor[k*d+k]
		}
		g.factor[j*d+j] = math.Sqrt(max(leastPivot, g.factor[j*d+j]-dot(row, row)))
	}
}

// shares gives the part of the variance of y, whose mean is 0 and whose
// variance is 1, that each input makes, and the rest.
func (g *regression) shares(y []float64) (shares []float64, together float64) {
	d, n := len(g.s.columns), float64(g.s.n)
	b, with := make([]float64, d), make([]float64, d)
	for j, c := range g.s.columns {
		with[j] = dot(c, y) / n / g.sd[j]
		b[j] = (with[j] - dot(b[:j], g.factor[j*d:j*d+j])) / g.factor[j*d+j]
	}
	for j := d - 1; j >= 0; j-- {
		for k := j + 1; k < d; k++ {
			b[j] -= b[k] * g.factor[k*d+j]
		}
		b[j] /= g.factor[j*d+j]
	}
	explained, sum := dot(b, with), 0.0
	if free := n - float64(d) - 1; free > 0 {
		explained = 1 - (1-explained)*(n-1)/free
	}
	explained = min(max(explained, 0), 1)
	for j := range b {
		b[j] *= b[j]
		sum += b[j]
	}
	if sum > 0 {
		for j := range b {
			b[j] *= explained / sum
		}
	}
	return b, 1 - explained
}

// dot sums in four lanes, which does not wait on each addition.
func dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	i := 0
	for ; i+3 < len(a); i += 4 {
		s0 += a[i] * b[i]
		s1 += a[i+1] * b[i+1]
		s2 += a[i+2] * b[i+2]
		s3 += a[i+3] * b[i+3]
	}
	for ; i < len(a); i++ {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + s2 + s3
}
