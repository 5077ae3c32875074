package arrange_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
)

// The search against a lattice where the size of the pipe changes once: with the
// reducer in every place, nothing laid and proved there is better.
func TestReducedLattice(t *testing.T) {
	t.Parallel()
	againstLattice(t, ifFar(8, 120), smallReduced, coveredBetween)
}

// coveredBetween is covered for pipe of two sizes, one of which takes less head and
// costs more: of one choice of fittings the search gives the least head and the
// least cost, and none of what lies between. Shifting the change along the run
// trades head for cost at one rate, so that nothing lies below the line from one
// of these ends to the other.
func coveredBetween(front []arrange.Layout, v priceOf) bool {
	if covered(front, v) {
		return true
	}
	for a := range front {
		for b := range front {
			slow, dear := toldPrice(&front[a]), toldPrice(&front[b])
			if slow.head <= v.head || dear.head >= v.head || slow.cost >= v.cost || dear.cost <= v.cost {
				continue
			}
			share := (v.head - dear.head) / (slow.head - dear.head)
			line := v
			line.cost = dear.cost + share*(slow.cost-dear.cost)
			slow.head, slow.cost, dear.head, dear.cost = line.head, line.cost, line.head, line.cost
			if line.asGood(v) && slow.asGood(v) && dear.asGood(v) {
				return true
			}
		}
	}
	return false
}

// reducedSet are the vaults built round an assembly with a reducer: seed and
// number of elbows a line.
const reducedSet = "testdata/reduced.txt"

// allReduced reads the set.
func allReduced(t testing.TB) []drawn {
	return rowsOf(t, reducedSet, func(d *drawn) []any { return []any{&d.seed, &d.elbows} })
}

// A vault built round an assembly whose size changes in some leg is always found
// one for that is as good.
func TestReducedSet(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	if *redraw {
		drawReduced(t, book)
	}
	every, count := ifFar(5, 1), 0
	tags := map[string]int{}
	for _, d := range allReduced(t) {
		v, ok := reduced(t, book, d.seed, d.elbows)
		if !ok {
			t.Errorf("%d %d gives no vault any more: go test ./engine/arrange -run ReducedSet -redraw", d.seed, d.elbows)
			continue
		}
		for tag := range v.tags {
			tags[tag]++
		}
		if count++; count%every != 0 {
			continue
		}
		out := searched(t, v.input)
		if own := price(&v.input, &v.chain, &v.laid); !covered(out.Layouts, own) && !undecided(&out) {
			t.Errorf("seed %d, %d elbows: %+v is known, nothing as good in the search's %d (claim %d)\n%s", d.seed, d.elbows, own, len(out.Layouts), out.Proof.Claim, described(&v.chain))
		}
	}
	t.Logf("%d vaults, %v", count, tags)
	for _, tag := range []string{"bushing", "wider", "at the wall", "obstacle"} {
		if tags[tag] < 5 {
			t.Errorf("only %d vaults with %s", tags[tag], tag)
		}
	}
}

// drawReduced draws the set anew: so many of each number of elbows.
func drawReduced(t *testing.T, book *catalog.Book) {
	t.Helper()
	var b strings.Builder
	b.WriteString("# vaults built round an assembly with a reducer: seed, elbows. Written by go test ./engine/arrange -run ReducedSet -redraw\n")
	for n := 1; n <= 3; n++ {
		found := 0
		for seed := uint64(1); seed < 5000 && found < 20; seed++ {
			if v, ok := reduced(t, book, seed, n); ok && within18(&v.laid) {
				found++
				fmt.Fprintf(&b, "%d %d\n", seed, n)
			}
		}
	}
	if err := os.WriteFile(reducedSet, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
}
