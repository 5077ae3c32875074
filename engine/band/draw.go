package band

import "math"

// Shape is how the truth lies round a reading, in parts of its tolerance.
type Shape uint8

// The shapes.
const (
	// Normal: 95 of 100 truths lie within the tolerance, a bell round the
	// reading. For what is read or measured.
	Normal Shape = iota
	// Even: the truth lies anywhere within the tolerance and nowhere else. For
	// what is only known as a range.
	Even
)

// normal95 is the half width, in standard deviations, that holds 95 of 100.
const normal95 = 1.959963984540054

// Deviation is the standard deviation of a shape whose tolerance is 1.
func (s Shape) Deviation() float64 {
	if s == Even {
		return 1 / math.Sqrt(3)
	}
	return 1 / normal95
}

// at is the deviation, in tolerances, below which a part p of the truths lies.
func (s Shape) at(p float64) float64 {
	if s == Even {
		return 2*p - 1
	}
	return math.Sqrt2 * math.Erfinv(2*p-1) / normal95
}

// Usual is the usual number of draws.
const Usual = 1024

// Sample is the draws: for each input a column of deviations from its reading,
// in parts of its tolerance.
type Sample struct {
	n       int
	shapes  []Shape
	columns [][]float64
}

// Draw draws n truths of the inputs. The same seed gives the same draws. n is
// best a power of two: only such many Sobol points fill space evenly. The first
// 100 inputs have Sobol points, those after them shuffled strata, so the inputs
// that matter most are best told first. An n below 2 is taken as 2.
func Draw(shapes []Shape, n int, seed uint64) *Sample {
	n = max(n, 2)
	s := &Sample{n: n, shapes: shapes, columns: make([][]float64, len(shapes))}
	all, r := make([]float64, n*len(shapes)), &random{seed}
	for j, shape := range shapes {
		column := all[j*n : (j+1)*n]
		if j < sobolDimensions {
			sobol(column, j, uint32(r.next()>>32))
		} else {
			shuffled(column, r)
		}
		for i, p := range column {
			column[i] = shape.at(p)
		}
		s.columns[j] = column
	}
	return s
}

// Len is the number of draws.
func (s *Sample) Len() int { return s.n }

// Row writes the deviations of draw i into row, one for each input.
func (s *Sample) Row(i int, row []float64) {
	for j, c := range s.columns {
		row[j] = c[i]
	}
}
