package arrange_test

import (
	"context"
	"testing"

	"plashet/engine/arrange"
)

// What sketches rule out is in no front: with and without them the same layouts
// are found, in vaults with play and without, with a lip, a rack, a taper and a
// round wall, and in some of the standing set.
func TestSketchesLoseNothing(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	var cases []arrange.Input
	var names []string
	for _, v := range family(t) {
		switch v.Name {
		case "lying", "rack", "taper", "lip", "round", "low":
			i := v.input(t, book)
			i.Rules.Play, i.Rules.Elbows = true, 3
			cases, names = append(cases, i), append(names, v.Name)
		}
	}
	every := ifFar(20, 2)
	for k, d := range standing(t) {
		if k%every != 4%every {
			continue
		}
		if v, ok := d.vault(t, book); ok {
			i := v.input
			i.Rules.Elbows, i.Rules.Play = 3, k%40 == 4
			cases, names = append(cases, i), append(names, d.String())
		}
	}
	layouts, fewer := 0, 0
	for k, i := range cases {
		i.Rules.Brief, i.Rules.Best, i.Rules.Cores = true, 1000, 2
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		with, without := arrange.Search(ctx, i, nil), arrange.Unsketched(ctx, i)
		cancel()
		if undecided(&with) || undecided(&without) {
			t.Logf("%s: claims %d and %d", names[k], with.Proof.Claim, without.Proof.Claim)
			continue
		}
		if with.Tally.Chains < without.Tally.Chains {
			fewer++
		}
		if len(with.Layouts) != len(without.Layouts) || with.Stage != without.Stage {
			t.Errorf("%s: %d layouts with sketches, %d without; %q, %q", names[k], len(with.Layouts), len(without.Layouts), with.Stage, without.Stage)
			continue
		}
		for n := range with.Layouts {
			a, b := toldPrice(&with.Layouts[n]), toldPrice(&without.Layouts[n])
			if layouts++; !a.asGood(b) || !b.asGood(a) {
				t.Errorf("%s: layout %d is %+v with sketches, %+v without", names[k], n+1, a, b)
			}
		}
	}
	if layouts < 20 || fewer < 5 {
		t.Errorf("%d layouts compared, fewer chains in %d of %d vaults: nothing is proved", layouts, fewer, len(cases))
	}
	t.Logf("%d vaults, %d layouts, fewer chains in %d", len(cases), layouts, fewer)
}
