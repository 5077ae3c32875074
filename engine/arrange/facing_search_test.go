package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
)

// Two street elbows, or a street elbow and a bushing, whose spigots face each other
// with valve or union between them: vaults for which nothing else is as good are
// held against the lattice.
func TestFacingSpigots(t *testing.T) {
	t.Parallel()
	facing := 0
	held := func(covered func([]arrange.Layout, priceOf) bool, draw func(t testing.TB, book *catalog.Book, seed uint64) arrange.Input, seeds ...uint64) {
		for _, seed := range seeds {
			againstLattice(t, 1, func(t testing.TB, book *catalog.Book, _ uint64) arrange.Input {
				i := draw(t, book, seed)
				for _, l := range searched(t, i).Layouts {
					if faces(l.Chain.Parts) {
						facing++
					}
				}
				return i
			}, covered)
		}
	}
	held(covered, smallVault, 146)
	held(coveredBetween, smallReduced, 83, 109)
	if facing < 3 {
		t.Errorf("%d layouts have spigots that face each other", facing)
	}
}

// faces tells that the spigots before and after a part face each other.
func faces(parts []layout.Laid) bool {
	for k := 1; k+1 < len(parts); k++ {
		if parts[k-1].Out.Kind == layout.Spigot && parts[k+1].In.Kind == layout.Spigot {
			return true
		}
	}
	return false
}
