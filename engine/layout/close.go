package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// close works out the closing pieces whose gap was not measured: the gaps
// t >= 0 along the pieces' directions a that bring the chain's end nearest to
// the hole, least |e - sum t a| with e the error while their hubs touch. Where
// a gap comes out below zero there is no room for the piece; its hubs then stay
// touching and the others are worked out anew.
func (l *laying) close() {
	if !l.holeOK {
		return
	}
	target := l.a.Hole.At
	at, dir, through := l.end()
	e := target.Sub(at)
	basis := orthogonal{}
	if through {
		// The last pipe may be as long as it likes.
		basis.add(dir)
	}
	var free []int
	for i := range l.joints {
		j := &l.joints[i]
		if !j.closing {
			continue
		}
		if !basis.add(l.a.Places[i].InDir) {
			l.fault(l.joinPath(i), FaultClosingIdle, trace.Str("from", l.mark(i-1)), trace.Str("to", l.mark(i)))
			j.closing = false
			continue
		}
		free = append(free, i)
	}
	if len(free) == 0 {
		return
	}
	for {
		cols := make([]geom.Vec3, 0, 4)
		if through {
			cols = append(cols, dir)
		}
		for _, i := range free {
			cols = append(cols, l.a.Places[i].InDir)
		}
		t := leastSquares(cols, e)[len(cols)-len(free):]
		worst := -1
		for k := range free {
			if t[k] < -dust && (worst < 0 || t[k] < t[worst]) {
				worst = k
			}
		}
		if worst >= 0 {
			i := free[worst]
			j := &l.joints[i]
			j.noRoom = true
			l.a.Closure.Worked = append(l.a.Closure.Worked, Worked{After: i - 1, FaceGap: unit.Length(t[worst])})
			free = append(free[:worst:worst], free[worst+1:]...)
			if len(free) == 0 {
				return
			}
			continue
		}
		for k, i := range free {
			j := &l.joints[i]
			gap := math.Max(0, t[k])
			j.span, j.worked = j.least+gap, true
			l.a.Closure.Worked = append(l.a.Closure.Worked, Worked{After: i - 1, FaceGap: unit.Length(gap)})
		}
		l.walk()
		return
	}
}

// orthogonal holds up to three directions square to each other that span what
// was added.
type orthogonal struct{ q []geom.Vec3 }

// add takes a direction in and tells whether it points somewhere new (by more
// than a thousandth of a radian, below which closing pieces would be absurdly
// long).
func (o *orthogonal) add(a geom.Vec3) bool {
	for _, q := range o.q {
		a = a.Sub(q.Scale(a.Dot(q)))
	}
	if a.Norm() < 1e-3 {
		return false
	}
	o.q = append(o.q, a.Unit())
	return true
}

// leastSquares gives t with the least |e - sum t_k cols_k| for up to three
// independent columns, by Gram-Schmidt and back substitution.
func leastSquares(cols []geom.Vec3, e geom.Vec3) []float64 {
	n := len(cols)
	q := make([]geom.Vec3, n)
	r := make([][]float64, n)
	t := make([]float64, n)
	for k, a := range cols {
		r[k] = make([]float64, n)
		v := a
		for m := range k {
			r[m][k] = q[m].Dot(v)
			v = v.Sub(q[m].Scale(r[m][k]))
		}
		r[k][k] = v.Norm()
		q[k] = v.Unit()
	}
	for k := n - 1; k >= 0; k-- {
		t[k] = q[k].Dot(e)
		for m := k + 1; m < n; m++ {
			t[k] -= r[k][m] * t[m]
		}
		t[k] /= r[k][k]
	}
	return t
}
