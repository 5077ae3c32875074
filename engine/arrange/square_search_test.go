package arrange_test

import (
	"math"
	"testing"

	"plashet/engine/layout"
)

// agreed is how far, in inches, a length of the search may be from what the
// programs prove.
const agreed = 1e-3

// pipeIn gives the pipe of a laid chain from stop to stop, in inches.
func pipeIn(a *layout.Assembly) float64 {
	sum := 0.0
	for _, p := range a.Pieces {
		sum += float64(p.StopToStop)
	}
	return sum / in
}

// aslant tells that a leg runs along no axis.
func aslant(a *layout.Assembly) bool {
	for _, p := range a.Places {
		if max(math.Abs(p.InDir.X), math.Abs(p.InDir.Y), math.Abs(p.InDir.Z)) < 1-1e-9 {
			return true
		}
	}
	return false
}

// fixed is what n elbows and their neighbours take of the centre line besides
// the pipe from stop to stop.
func (c *squareCase) fixed(n int) float64 { return c.adapter + 2*float64(n)*c.elbow + c.bulkhead }

// The search against two integer programs (see square_test.go), which know the
// cases, and of the search nothing but its input's types. For each case and each
// n up to 3: no layout of the search with n elbows is shorter than what the
// inner program proves to be the least, and where the outer program has a layout
// with n elbows, the search has one with no more elbows and no more pipe. Where
// the two programs agree, and no layout with fewer elbows has less pipe, the
// search's least is theirs.
func TestAgainstPrograms(t *testing.T) {
	t.Parallel()
	needGLPK(t)
	cases, first := ifFar(20, 200), uint64(100)
	compared, equal, fits, loose := 0, 0, 0, 0
	for seed := first; seed < first+uint64(cases); seed++ {
		c := anySquare(seed)
		out := searched(t, c.input(3))
		if undecided(&out) {
			t.Logf("seed %d: claim %d, %d orders at a limit", seed, out.Proof.Claim, out.Proof.Caps)
			continue
		}
		best := [4]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
		slant := best // the search may also run legs aslant, which the programs do not
		for _, l := range out.Layouts {
			to := &best
			if aslant(&l.Laid) {
				to = &slant
			}
			to[l.Worth.Elbows] = min(to[l.Worth.Elbows], pipeIn(&l.Laid))
		}
		fewer := math.Inf(1) // least pipe with fewer elbows
		for n := range 4 {
			compared++
			outer, has := c.least(t, n, false)
			inner, may := c.least(t, n, true)
			outer, inner = outer-c.fixed(n), inner-c.fixed(n)
			if !math.IsInf(best[n], 1) && (!may || best[n] < inner-agreed) {
				t.Errorf("seed %d, %d elbows: the search has %.4f in of pipe, %.4f is proved to be the least (%v)", seed, n, best[n], inner, may)
			}
			least := min(fewer, best[n], slant[n])
			if has && least > outer+agreed {
				t.Errorf("seed %d, %d elbows: the search has %.4f in of pipe at the least, there is a layout with %.4f", seed, n, least, outer)
			}
			switch {
			case has:
				fits++
				if math.Abs(outer-inner) > agreed {
					loose++
				} else if outer < fewer-agreed && math.Abs(best[n]-outer) <= agreed {
					equal++
				}
			case may:
				loose++
			}
			fewer = least
		}
	}
	t.Logf("%d comparisons: %d have a layout, %d lengths proved equal, %d between the two programs", compared, fits, equal, loose)
	if equal < cases/4 {
		t.Errorf("only %d lengths were proved equal: the test proves little", equal)
	}
}
