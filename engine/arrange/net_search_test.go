package arrange_test

import (
	"context"
	"testing"

	"plashet/engine/arrange"
)

// TestFinerNets: where exact distances let pass what the planes of the list do not,
// it is found all the same. In two vaults of the standing set the list alone misses
// a layout, or finds it longer; none of its own is lost anywhere.
func TestFinerNets(t *testing.T) {
	t.Parallel()
	book, more, seen := newBook(t), 0, 0
	for k, d := range standing(t) {
		switch d.seed {
		case 2358, 15075:
		default:
			if !*far || k%3 != 0 {
				continue
			}
		}
		v, ok := d.vault(t, book)
		if !ok {
			continue
		}
		seen++
		i := v.input
		i.Rules.Brief, i.Rules.Best, i.Rules.Cores = true, 1000, 2
		fine, listed := arrange.Search(context.Background(), i, nil), arrange.Listed(context.Background(), i)
		for n := range listed.Layouts {
			if l := toldPrice(&listed.Layouts[n]); !covered(fine.Layouts, l) {
				t.Errorf("%s: layout %d of the list alone is lost: %+v", d, n+1, l)
			}
		}
		for n := range fine.Layouts {
			if l := toldPrice(&fine.Layouts[n]); !reached(listed.Layouts, l) {
				t.Logf("%s: the list alone misses %+v", d, l)
				more++
			}
		}
	}
	if seen < 2 || more < 2 {
		t.Errorf("%d vaults, %d layouts more than by the list: nothing is proved", seen, more)
	}
}

// reached tells that something on a front is as good to a hundredth of a millimetre
// of head and slide, and to a tenth of a cent.
func reached(front []arrange.Layout, v priceOf) bool {
	for k := range front {
		w := toldPrice(&front[k])
		if w.joints <= v.joints && w.head <= v.head+1e-5 && w.cost <= v.cost+1e-3 && w.slide <= v.slide+1e-5 && (!w.drains || v.drains) {
			return true
		}
	}
	return false
}
