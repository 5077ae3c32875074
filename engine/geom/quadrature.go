package geom

import "math"

// Gauss-Legendre abscissas and weights on -1..1, five points: exact for
// polynomials up to degree 9. Source: Abramowitz and Stegun, table 25.4.
var (
	gaussX = [5]float64{-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664}
	gaussW = [5]float64{0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189}
)

// integrate gives the integral of f from a to b by n equal panels of the
// five-point Gauss-Legendre rule.
func integrate(f func(float64) float64, a, b float64, n int) float64 {
	h := (b - a) / float64(n)
	sum := 0.0
	for i := range n {
		mid := a + (float64(i)+0.5)*h
		for j, x := range gaussX {
			sum += gaussW[j] * f(mid+x*h/2)
		}
	}
	return sum * h / 2
}

// completeE gives the complete elliptic integral of the second kind, from its
// complement kc = sqrt(1 - k^2) in (0, 1], by the arithmetic-geometric mean:
// E = pi/(2 M(1, kc)) (1 - sum 2^(n-1) c_n^2). It converges quadratically (six
// steps or so to the last digit). Source: Abramowitz and Stegun 17.6; the
// first term c_0^2 = k^2 enters with 2^-1.
func completeE(kc float64) float64 {
	a, b := 1.0, kc
	sum := (1 - kc) * (1 + kc) / 2
	for p := 1.0; ; p *= 2 {
		c := (a - b) / 2
		a, b = (a+b)/2, math.Sqrt(a*b)
		sum += p * c * c
		if c < 1e-17 || p > 1<<20 {
			return math.Pi / (2 * a) * (1 - sum)
		}
	}
}
