package motion

import "math"

// stepper takes steps of Dormand and Prince's pair and interpolates them.
type stepper struct {
	k    [7][]float64
	next []float64
	tmp  []float64
	cont [5][]float64 // of the interpolant
	low  bool         // the last step was one of relax
}

func newStepper(n int) stepper {
	all := make([]float64, 14*n)
	cut := func() []float64 {
		v := all[:n:n]
		all = all[n:]
		return v
	}
	var s stepper
	for i := range s.k {
		s.k[i] = cut()
	}
	for i := range s.cont {
		s.cont[i] = cut()
	}
	s.next, s.tmp = cut(), cut()
	return s
}

// Dormand and Prince 1980, table 2 (RK5(4)7M): nodes, stages, error weights,
// and Shampine's weights of the interpolant as Hairer, Norsett and Wanner print
// them.
const (
	c2, c3, c4, c5 = 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9

	a21                     = 1.0 / 5
	a31, a32                = 3.0 / 40, 9.0 / 40
	a41, a42, a43           = 44.0 / 45, -56.0 / 15, 32.0 / 9
	a51, a52, a53, a54      = 19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729
	a61, a62, a63, a64, a65 = 9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656
	a71, a73, a74, a75, a76 = 35.0 / 384, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84

	e1, e3, e4, e5, e6, e7 = 71.0 / 57600, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40

	d1, d3, d4 = -12715105075.0 / 11282082432, 87487479700.0 / 32700410799, -10690763975.0 / 1880347072
	d5, d6, d7 = 701980252875.0 / 199316789632, -1453857185.0 / 822651844, 69997945.0 / 29380423
)

// rateOf gives the rates of change dx of the states x at a time.
type rateOf func(t float64, x, dx []float64)

// try takes a step h from x at t, whose rates stand in k[0]. The end stands in
// next, its rates in k[6], which are evaluated last; it gives the largest error
// over tol of the first judged states.
func (s *stepper) try(f rateOf, t float64, x []float64, h, tol float64, skip func(i int) bool) (worst float64) {
	k, y := &s.k, s.tmp
	s.low = false
	for i, v := range x {
		y[i] = v + h*a21*k[0][i]
	}
	f(t+c2*h, y, k[1])
	for i, v := range x {
		y[i] = v + h*(a31*k[0][i]+a32*k[1][i])
	}
	f(t+c3*h, y, k[2])
	for i, v := range x {
		y[i] = v + h*(a41*k[0][i]+a42*k[1][i]+a43*k[2][i])
	}
	f(t+c4*h, y, k[3])
	for i, v := range x {
		y[i] = v + h*(a51*k[0][i]+a52*k[1][i]+a53*k[2][i]+a54*k[3][i])
	}
	f(t+c5*h, y, k[4])
	for i, v := range x {
		y[i] = v + h*(a61*k[0][i]+a62*k[1][i]+a63*k[2][i]+a64*k[3][i]+a65*k[4][i])
	}
	f(t+h, y, k[5])
	for i, v := range x {
		s.next[i] = v + h*(a71*k[0][i]+a73*k[2][i]+a74*k[3][i]+a75*k[4][i]+a76*k[5][i])
	}
	f(t+h, s.next, k[6])
	for i := range x {
		if skip(i) {
			continue
		}
		e := h * (e1*k[0][i] + e3*k[2][i] + e4*k[3][i] + e5*k[4][i] + e6*k[5][i] + e7*k[6][i])
		worst = max(worst, math.Abs(e)/tol)
	}
	return worst
}

// prepare makes the interpolant of the last step ready.
func (s *stepper) prepare(x []float64, h float64) {
	k := &s.k
	if s.low {
		s.cubic(x, h)
		return
	}
	for i, v := range x {
		d := s.next[i] - v
		b := h*k[0][i] - d
		s.cont[0][i], s.cont[1][i], s.cont[2][i], s.cont[3][i] = v, d, b, d-h*k[6][i]-b
		s.cont[4][i] = h * (d1*k[0][i] + d3*k[2][i] + d4*k[3][i] + d5*k[4][i] + d6*k[5][i] + d7*k[6][i])
	}
}

// one gives one state at a part (0 to 1) of the last step.
func (s *stepper) one(i int, part float64) float64 {
	rest := 1 - part
	return s.cont[0][i] + part*(s.cont[1][i]+rest*(s.cont[2][i]+part*(s.cont[3][i]+rest*s.cont[4][i])))
}

// at gives the states at a part (0 to 1) of the last step.
func (s *stepper) at(part float64, out []float64) {
	for i := range out {
		out[i] = s.one(i, part)
	}
}
