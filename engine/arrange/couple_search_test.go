package arrange_test

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// smallCoupled draws a small case whose pieces of pipe are short, with a coupling to
// join two.
func smallCoupled(t testing.TB, book *catalog.Book, seed uint64) arrange.Input {
	i := smallVault(t, book, seed+12) // among the first are vaults that want a coupling
	_, c := stock(t, book, "1-1/2", 35, []string{"coupling"})
	c[0].Cost = prices["elbow 90"]
	i.Fittings = append(i.Fittings, c...)
	i.Pipes[0].AtHand = [...]unit.Length{3 * unit.Inch, 4.5 * unit.Inch, 6 * unit.Inch}[seed%3]
	return i
}

// The search against a lattice where no piece of pipe is long: with a coupling in
// every place, and with none, nothing laid and proved there is better.
func TestCoupledLattice(t *testing.T) {
	t.Parallel()
	againstLattice(t, ifFar(3, 120), smallCoupled, covered)
}

// Parts of a layout with a coupling, glued from either end: the rest is found again.
func TestCoupledGlued(t *testing.T) {
	book := newBook(t)
	held := 0
	for _, seed := range []uint64{1, 2, 4, 6} {
		in := smallCoupled(t, book, seed)
		found := searched(t, in)
		for k := range found.Layouts {
			l := &found.Layouts[k]
			at := slices.IndexFunc(l.Chain.Parts, func(p layout.Laid) bool { return p.Kind == layout.Coupling })
			if at < 0 {
				continue
			}
			last := len(l.Chain.Parts) - 1
			for _, c := range [][2]int{{1, 0}, {at, 0}, {at + 1, 0}, {0, 1}, {0, last - at}, {1, 1}} {
				if c[0]+c[1] >= last {
					continue
				}
				i := gluedOf(in, l, c[0], c[1])
				out := arrange.Search(t.Context(), i, nil)
				ok := false
				for n := range out.Layouts {
					ok = ok || len(out.Layouts[n].Chain.Parts) <= len(l.Chain.Parts)
				}
				if held++; !ok {
					t.Errorf("seed %d, layout %d, %d glued at the port and %d at the wall: %d layouts, %v", seed, k, c[0], c[1], len(out.Layouts), out.Faults)
				}
			}
			break
		}
	}
	if held < 8 {
		t.Errorf("only %d rows", held)
	}
}
