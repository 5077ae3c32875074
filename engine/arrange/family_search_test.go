package arrange_test

import (
	"context"
	"testing"

	"plashet/engine/arrange"
)

// Every vault of the family that fits gets layouts, every one that does not
// gets none and is told at which stage it fails and what is short.
func TestFamilySearched(t *testing.T) {
	book := newBook(t)
	yes, no := 0, 0
	for _, v := range family(t) {
		if v.Fits == "unknown" {
			continue
		}
		out := searched(t, v.input(t, book))
		if undecided(&out) {
			t.Logf("%s: claim %d, %d orders at a limit", v.Name, out.Proof.Claim, out.Proof.Caps)
		}
		switch v.Fits {
		case "yes":
			if yes++; len(out.Layouts) == 0 {
				t.Errorf("%s: no layout, stage %q", v.Name, out.Stage)
			}
		default:
			if no++; len(out.Layouts) > 0 || out.Stage == "" {
				t.Errorf("%s: %d layouts where none can be, stage %q", v.Name, len(out.Layouts), out.Stage)
			}
		}
	}
	if yes < 5 || no == 0 {
		t.Errorf("%d that fit, %d that do not: too few", yes, no)
	}
}

// The same input gives the same outcome, on one core as on several.
func TestSameOnOneCore(t *testing.T) {
	book := newBook(t)
	compared := 0
	for _, v := range family(t) {
		if v.Name != "easy" && v.Name != "taper" && v.Name != "round" {
			continue
		}
		i := v.input(t, book)
		i.Rules.Cores = 1
		one := arrange.Search(context.Background(), i, nil)
		i.Rules.Cores = 4
		many := arrange.Search(context.Background(), i, nil)
		if len(one.Layouts) != len(many.Layouts) || one.Proof != many.Proof {
			t.Errorf("%s: %d layouts %+v on one core, %d %+v on four", v.Name, len(one.Layouts), one.Proof, len(many.Layouts), many.Proof)
			continue
		}
		for k := range one.Layouts {
			if compared++; one.Layouts[k].Worth != many.Layouts[k].Worth {
				t.Errorf("%s: layout %d differs: %+v, %+v", v.Name, k+1, one.Layouts[k].Worth, many.Layouts[k].Worth)
			}
		}
	}
	if compared == 0 {
		t.Error("nothing was compared")
	}
}
