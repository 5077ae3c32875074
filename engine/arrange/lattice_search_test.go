package arrange_test

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
)

// within18 tells that every leg of a chain runs along an axis or half way
// between two: the directions that the search looks at.
func within18(a *layout.Assembly) bool {
	for _, p := range a.Places {
		n := 0
		for _, x := range [3]float64{math.Abs(p.InDir.X), math.Abs(p.InDir.Y), math.Abs(p.InDir.Z)} {
			switch {
			case x < 1e-9:
			case math.Abs(x-1) < 1e-9, math.Abs(x-math.Sqrt2/2) < 1e-9:
				n++
			default:
				return false
			}
		}
	}
	return true
}

// covered tells that the front has what the search promises beside a layout: one
// as good in every respect. The search slides the pump only where the same
// fittings give nothing that lifts straight out, and takes the least pipe and
// slide together: beside a layout that slides it promises one of no more joints,
// no worse order of valve and union.
func covered(front []arrange.Layout, v priceOf) bool {
	for k := range front {
		w := toldPrice(&front[k])
		if w.asGood(v) || (v.slide > sameSlide || v.leans) && w.joints <= v.joints && (!w.drains || v.drains) {
			return true
		}
	}
	return false
}

// atHand tells that no piece is longer than the longest of its pipe there is.
func atHand(i *arrange.Input, a *layout.Assembly) bool {
	for _, p := range a.Pieces {
		for _, q := range i.Pipes {
			if q.Size == p.Pipe.Size && q.AtHand >= 0 && p.Cut > q.AtHand {
				return false
			}
		}
	}
	return true
}

// tally is what came of holding the search against the lattice.
type tally struct {
	vaults, fits, undecided int // vaults, those with a layout on the lattice, those where the search makes no claim
	beaten, open            int // layouts better than the search's, and where it makes no claim
	hosed, hoses            int // chains with a hose on the lattice, vaults where the search has one
}

// The search against a lattice: nothing that is laid and proved there is better
// than the search's front, and where the lattice has a layout, so has the
// search. Only layouts in the search's family of directions count.
func TestAgainstLattice(t *testing.T) {
	t.Parallel()
	againstLattice(t, ifFar(25, 500), smallVault, covered)
}

// againstLattice holds the search against the lattice in small cases.
func againstLattice(t *testing.T, cases int, small func(t testing.TB, book *catalog.Book, seed uint64) arrange.Input, covered func([]arrange.Layout, priceOf) bool) tally {
	t.Helper()
	book := newBook(t)
	var n tally
	last := uint64(0) // of one vault the first is told
	for seed := uint64(1); seed <= uint64(cases); seed++ {
		i := small(t, book, seed)
		out := searched(t, i)
		if undecided(&out) {
			n.undecided++
		}
		if slices.ContainsFunc(out.Layouts, func(l arrange.Layout) bool { return len(l.Laid.Hoses) > 0 }) {
			n.hoses++
		}
		any := false
		overLattice(t, &i, func(c layout.Input, a layout.Assembly) {
			if !within18(&a) || !atHand(&i, &a) {
				return
			}
			v := price(&i, &c, &a)
			if v.hosed {
				n.hosed++
			}
			if covered(out.Layouts, v) {
				any = true
				return // no need to prove it
			}
			if _, ok := sound(c, i.Rules); !ok {
				return
			}
			any = true
			if undecided(&out) {
				n.open++
				return
			}
			if n.beaten++; seed != last {
				last = seed
				t.Errorf("seed %d: %+v on the lattice, nothing as good in the search's %d (claim %d)\n%s", seed, v, len(out.Layouts), out.Proof.Claim, described(&c))
			}
		})
		n.vaults++
		if any {
			n.fits++
		}
	}
	t.Logf("%+v", n)
	if n.fits < n.vaults/5 || n.vaults == 0 {
		t.Error("too few vaults have a layout: nothing is proved")
	}
	return n
}
