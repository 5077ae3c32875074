package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/unit"
)

// Where all that there is of hose counts, no layout takes more of it than that, what
// else is cut from it counted in; and what can be cut from it is found.
func TestHoseFromStock(t *testing.T) {
	i := withHose(askew(t, newBook(t)), 6)
	i.Rules.Brief = true
	free := arrange.Search(t.Context(), i, nil)
	if len(free.Layouts) == 0 {
		t.Fatal("no layout with a hose")
	}
	const kerf = unit.Inch / 16
	// Both have their straight ends at their least: none of these chains does with less
	// hose, and no other turn leads square to the wall.
	cut, most := free.Layouts[0].Laid.Hoses[0].Cut, unit.Length(0)
	for _, l := range free.Layouts {
		h := &l.Laid.Hoses[0]
		if max(h.Straights[0], h.Straights[1]) > unit.Inch+0.1*unit.Millimetre {
			t.Fatalf("straight ends of %v m", h.Straights)
		}
		cut, most = min(cut, h.Cut), max(most, h.Cut)
	}
	if most-unit.Inch/8 < cut {
		t.Fatalf("hoses of %v and %v m: nothing to tell apart", cut, most)
	}
	least := i.ShortestHose(30 * unit.Degree)
	for _, c := range []struct {
		name             string
		lengths, besides []unit.Length
		fits             bool
	}{
		{"just it", []unit.Length{cut}, nil, true},
		{"less than one of them takes", []unit.Length{most - unit.Inch/8}, nil, true},
		{"an eighth short", []unit.Length{cut - unit.Inch/8}, nil, false},
		{"less than the turn takes", []unit.Length{least - unit.Inch/8}, nil, false},
		{"two that are too short", []unit.Length{least - unit.Inch/8, least - unit.Inch/8}, nil, false},
		{"taken by another piece", []unit.Length{least + unit.Inch}, []unit.Length{2 * unit.Inch}, false},
		{"beside another piece", []unit.Length{cut + kerf + 2*unit.Inch}, []unit.Length{2 * unit.Inch}, true},
		{"shorter than any bend", []unit.Length{unit.Inch}, nil, false},
		{"none", nil, nil, false},
	} {
		h := *i.Hose
		h.Stock = &arrange.Stock{Lengths: c.lengths, Besides: c.besides, Kerf: kerf, Grid: unit.Inch / 64}
		in := i
		in.Hose = &h
		out := arrange.Search(t.Context(), in, nil)
		if (len(out.Layouts) > 0) != c.fits {
			t.Errorf("%s: %d layouts, stage %q", c.name, len(out.Layouts), out.Stage)
		}
		if !c.fits && (out.Stage != arrange.StageStock || out.Uncut == nil || len(out.Uncut.Laid.Hoses) != 1) {
			t.Errorf("%s: stage %q, a layout to cut %v", c.name, out.Stage, out.Uncut != nil)
		}
		for k := range out.Layouts {
			if got := out.Layouts[k].Laid.Hoses[0].Cut; len(c.lengths) == 0 || got > c.lengths[0]+1e-9 {
				t.Errorf("%s: a hose of %v m", c.name, got)
			}
		}
	}
}
