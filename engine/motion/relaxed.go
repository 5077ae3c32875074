package motion

import "math"

// Runge-Kutta-Chebyshev steps of order two, for stretches in which thin water
// over lips settles faster than anything else moves, which would hold an
// explicit step of higher order short: with s stages they are stable for
// rates of settling (negative real eigenvalues) up to about 0.65 s² over the
// step. B. Sommeijer, L. Shampine and J. Verwer, RKC: an explicit solver for
// parabolic PDEs, Journal of Computational and Applied Mathematics 88, 1998,
// 315-326, formulas (2.2) to (2.9).

// damping is epsilon of the paper.
const damping = 2.0 / 13

// mostStages bounds the stages of one step.
const mostStages = 16

// stagesFor gives the stages that a step needs over the fastest settling.
func stagesFor(z float64) int {
	return max(3, 1+int(math.Sqrt(1+1.54*z)))
}

// relax takes a step h from x at t, whose rates stand in k[0], with s stages.
// As try it leaves the end in next and its rates in k[6], and gives the largest
// error over tol.
func (st *stepper) relax(f rateOf, t float64, x []float64, h, tol float64, s int, skip func(i int) bool) (worst float64) {
	st.low = true
	w0 := 1 + damping/float64(s*s)
	// T_s, T'_s and T''_s at w0, in closed form.
	root := math.Sqrt(w0*w0 - 1)
	arg := float64(s) * math.Log(w0+root)
	sinh, cosh := math.Sinh(arg), math.Cosh(arg)
	first := sinh * float64(s) / root
	second := (cosh*float64(s*s)*root - w0*sinh*float64(s)) / (root * root * root)
	w1 := first / second

	// Y of the two stages before, and the Chebyshev polynomials there.
	old, now, next := st.k[1], st.k[2], st.k[3]
	f0, fj := st.k[0], st.k[4]
	t2, t1, d2, d1, e2, e1 := 1.0, w0, 0.0, 1.0, 0.0, 0.0
	b2 := 1 / (4 * w0 * w0) // b_0 = b_1 = b_2 = T''_2/(T'_2)²
	b1, a1 := b2, 1-b2*w0
	b0 := b2
	mu := w1 * b1
	for i, v := range x {
		old[i], now[i] = v, v+h*mu*f0[i]
	}
	c0, c1 := 0.0, mu
	for j := 2; j <= s; j++ {
		f(t+c1*h, now, fj)
		tj, dj := 2*w0*t1-t2, 2*w0*d1-d2+2*t1
		ej := 2*w0*e1 - e2 + 4*d1
		bj := ej / (dj * dj)
		m, n, mt := 2*bj*w0/b1, -bj/b0, 2*bj*w1/b1
		g := -a1 * mt
		for i, v := range x {
			next[i] = (1-m-n)*v + m*now[i] + n*old[i] + h*(mt*fj[i]+g*f0[i])
		}
		cj := m*c1 + n*c0 + mt + g
		old, now, next = now, next, old
		t2, t1, d2, d1, e2, e1 = t1, tj, d1, dj, e1, ej
		b0, b1, a1, c0, c1 = b1, bj, 1-bj*tj, c1, cj
	}
	copy(st.next, now)
	f(t+h, st.next, st.k[6])
	for i := range x {
		if skip(i) {
			continue
		}
		e := 0.8*(x[i]-st.next[i]) + 0.4*h*(f0[i]+st.k[6][i])
		worst = max(worst, math.Abs(e)/tol)
	}
	return worst
}

// cubic makes the interpolant of a step of relax ready: Hermite's, of order
// three.
func (st *stepper) cubic(x []float64, h float64) {
	for i, v := range x {
		d := st.next[i] - v
		b := h*st.k[0][i] - d
		st.cont[0][i], st.cont[1][i], st.cont[2][i], st.cont[3][i], st.cont[4][i] = v, d, b, d-h*st.k[6][i]-b, 0
	}
}

// settling bounds how fast anything settles now, in 1/s; false where a pipe
// fills, which the supply's reach holds short anyway.
func (r *run) settling(x []float64) (rate float64, ok bool) {
	s := r.s
	vault := 0.0 // 1 / area, where the vault moves by itself
	if !r.joined {
		vault = 1 / s.vault.area(r.zVault)
		rate = r.slope * vault
	}
	for i := range s.feeds {
		w, st := &s.feeds[i], &r.pipes[i]
		if r.pumping && !st.full {
			return 0, false
		}
		for k := range w.parts {
			rate = max(rate, w.parts[k].settling(x[w.parts[k].at]))
		}
		box := areaOf(w)
		if st.siphon || st.drains {
			slope := rootSlope(r.water(i, x)-r.zVault, r.wayBack(w), thinHead)
			if st.drains {
				rate = max(rate, slope*((w.end-min(r.zVault, w.end))/w.cap+vault))
			} else if box > 0 {
				rate = max(rate, slope*(1/box+vault))
			}
		}
		if st.aside {
			rate = max(rate, s.beyond.settles(s, i))
		}
	}
	return settlingCare * rate, true
}

// settling is how fast what stands over a lip, or runs in a reach, runs off.
func (p *part) settling(v float64) float64 {
	switch {
	case p.reach > 0:
		return 5.0 / 3 * p.reach / p.over * twoThirds((v-p.held)/p.over)
	case p.lip != nil && v > p.full:
		return 1.5 * p.spills(v) / (v - p.full)
	}
	return 0
}

// rootSlope is how a flow sqrt(h / back), joined straight to zero below thin,
// grows with its head.
func rootSlope(h, back, thin float64) float64 {
	if h < thin {
		return 1 / math.Sqrt(thin*back)
	}
	return 0.5 / math.Sqrt(h*back)
}

// areaOf is a box's surface, below its lip where its depth is known.
func areaOf(w *way) float64 {
	if w.depth > 0 {
		return w.parts[0].full / w.depth
	}
	return w.parts[0].area
}

// settlingCare covers what else leans on the levels: the pump's flow on the
// lift, the screen.
const settlingCare = 1.2
