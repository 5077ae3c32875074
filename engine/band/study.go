package band

import (
	"math"
	"slices"
)

// The ends of a band.
const (
	lowPart  = 0.05
	highPart = 0.95
)

// Band is what a sample tells of one output.
type Band struct {
	Low, Middle, High float64 // the points below which 5, 50 and 95 of 100 lie
	Mean, Deviation   float64
	// Shares are the parts of the variance that the inputs make each alone, in
	// the inputs' order, and Together the rest: what they make with one another
	// and by bends that no straight line tells. All are 0 where nothing varies.
	Shares   []float64
	Together float64
}

// Study reads the band of each output; outputs[k][i] is what output k came to
// in draw i. A draw that gave no number counts in no band: an output with fewer
// than two numbers has none, and all its fields are NaN.
//
// Quantiles: the sorted outputs stand at the parts (i - 1/2)/n, with straight
// lines between (R. Hyndman, Y. Fan, Sample quantiles in statistical packages,
// The American Statistician 50, 1996, definition 5).
//
// Shares: with b_j the coefficients of the regression y = b_0 + sum b_j x_j by
// least squares and V the variance, the share of input j is
// b_j² V(x_j)/V(y), the square of its standardised regression coefficient (J.
// Helton, F. Davis, Latin hypercube sampling and the propagation of uncertainty
// in analyses of complex systems, Reliability Engineering and System Safety 81,
// 2003; from memory), all scaled so that their sum is the adjusted R², 1 - (1 -
// R²)(n-1)/(n-d-1), and Together = 1 - that sum.
func (s *Sample) Study(outputs [][]float64) []Band {
	g := newRegression(s)
	out := make([]Band, len(outputs))
	sorted, work := make([]float64, 0, s.n), make([]float64, s.n)
	for k, y := range outputs {
		sorted = sorted[:0]
		for _, v := range y {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				sorted = append(sorted, v)
			}
		}
		out[k] = read(sorted)
		if b := &out[k]; b.Deviation > 0 {
			for i, v := range y {
				work[i] = 0
				if !math.IsNaN(v) && !math.IsInf(v, 0) {
					work[i] = (v - b.Mean) / b.Deviation
				}
			}
			b.Shares, b.Together = g.shares(work)
		} else if len(sorted) > 1 {
			b.Shares = make([]float64, len(s.columns))
		}
	}
	return out
}

// still is the spread, relative to the numbers themselves, below which they
// differ by rounding only.
const still = 1e-12

// read gives all but the shares; it sorts v.
func read(v []float64) Band {
	if len(v) < 2 {
		nan := math.NaN()
		return Band{Low: nan, Middle: nan, High: nan, Mean: nan, Deviation: nan, Together: nan}
	}
	slices.Sort(v)
	b := Band{Low: quantile(v, lowPart), Middle: quantile(v, 0.5), High: quantile(v, highPart)}
	for _, x := range v {
		b.Mean += x
	}
	b.Mean /= float64(len(v))
	for _, x := range v {
		b.Deviation += (x - b.Mean) * (x - b.Mean)
	}
	b.Deviation = math.Sqrt(b.Deviation / float64(len(v)))
	if b.Deviation <= still*max(math.Abs(v[0]), math.Abs(v[len(v)-1])) {
		b.Deviation = 0
	}
	return b
}

// Ends gives the points below which 5, 50 and 95 of 100 values lie; it sorts
// them. At least one value.
func Ends(values []float64) (low, middle, high float64) {
	slices.Sort(values)
	return quantile(values, 0.05), quantile(values, 0.5), quantile(values, 0.95)
}

func quantile(sorted []float64, p float64) float64 {
	at := p*float64(len(sorted)) - 0.5
	i := int(math.Floor(at))
	switch {
	case i < 0:
		return sorted[0]
	case i >= len(sorted)-1:
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
