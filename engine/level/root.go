package level

import "math"

// root gives x in lo..hi where the growing function f is nought, by
// Chandrupatla's method (A new hybrid quadratic/bisection algorithm, Advances
// in Engineering Software 28, 1997): it halves where the curve is bent and steps
// by an inverse parabola where it is smooth, and never leaves the bracket. Where
// f does not change sign, the end nearer to nought is given.
func root(f func(float64) float64, lo, hi float64) float64 {
	flo, fhi := f(lo), f(hi)
	if flo >= 0 {
		return lo
	}
	if fhi <= 0 {
		return hi
	}
	a, fa, b, fb := hi, fhi, lo, flo // a is the newest point, b holds the other sign
	var c, fc float64
	t := 0.5
	for range 200 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, b, fc, fb = b, a, fb, fa
		}
		a, fa = x, fx
		best, fbest := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			best, fbest = b, fb
		}
		tol := 2*rootDigits*math.Abs(best) + rootSmall
		tl := tol / math.Abs(b-c)
		if tl > 0.5 || fbest == 0 {
			return best
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		t = 0.5
		if 1-math.Sqrt(1-xi) < phi && phi < math.Sqrt(xi) {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		t = min(1-tl, max(tl, t))
	}
	return a
}

// newtonRoot gives x in lo..hi where the growing function f is nought, by
// Newton's steps from hi; f tells its slope too. The bracket that the signs leave
// is kept, and halved where a step leads out of it. Where f does not change sign,
// the end nearer to nought is given.
//
// It ends with a step under newtonStep and some roundings of x; what is left goes
// with that step's square, or with the step itself where f has a corner there.
func newtonRoot(f func(float64) (y, slope float64), lo, hi float64) float64 {
	x := hi
	y, slope := f(x)
	if y <= 0 {
		return hi
	}
	tried := false // lo is known to lie below
	for range 200 {
		if y > 0 {
			hi = x
		} else {
			lo, tried = x, true
		}
		next := x - y/slope
		if math.Abs(next-x) <= newtonStep+4*rootDigits*math.Abs(x) && !math.IsInf(slope, 1) {
			return next
		}
		if !(next > lo && next < hi) {
			if !tried {
				if at, _ := f(lo); at >= 0 {
					return lo
				}
				tried = true
			}
			next = lo + (hi-lo)/2
			if hi-lo <= newtonStep {
				return next
			}
		}
		x = next
		y, slope = f(x)
	}
	return x
}

// newtonStep, in metres, is a step after which no level is off by what could be
// told.
const newtonStep = 1e-12

// A root is found to rootDigits of itself and rootSmall metres: far below what
// water shows, near what the numbers hold.
const (
	rootDigits = 1e-16
	rootSmall  = 1e-15
)
