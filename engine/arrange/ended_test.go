package arrange_test

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
)

// smallEnded is a small case whose check valve has union ends and is the union too.
func smallEnded(t testing.TB, book *catalog.Book, seed uint64) arrange.Input {
	i := smallVault(t, book, seed)
	i.Rules.Check, i.Rules.Union, i.Rules.Out = true, true, true
	i.Fittings = slices.DeleteFunc(i.Fittings, func(f arrange.Fitting) bool { return f.Part.Kind == layout.Union || f.Part.Kind.IsCheck() })
	_, f := stock(t, book, "1-1/2", 35, []string{[2]string{"check valve spring", "check valve swing"}[seed%2]})
	p := &f[0].Part
	p.Splits = []layout.Split{{Offset: -p.In.TakeOff.Length * 4 / 5}, {Offset: p.Out.TakeOff.Length * 4 / 5}}
	i.Fittings = append(i.Fittings, f...)
	return i
}

// The search against a lattice with a check valve that is the union too.
func TestEndedLattice(t *testing.T) {
	againstLattice(t, ifFar(12, 200), smallEnded, covered)
}

// A check valve with union ends counts as the union, opens at the pump's side so
// that the water above stays up, and is taken where it costs less than both.
func TestEnded(t *testing.T) {
	book := newBook(t)
	for _, v := range family(t) {
		if v.Name != "easy" {
			continue
		}
		i := v.input(t, book)
		_, f := stock(t, book, v.Size, v.Flow, []string{"check valve spring union-ended"})
		i.Fittings = append(i.Fittings, f...)
		out := searched(t, i)
		ended := 0
		for k := range out.Layouts {
			l := &out.Layouts[k]
			unions, opens := 0, 0
			for _, p := range l.Chain.Parts {
				if p.Kind == layout.Union {
					unions++
				}
				if p.Kind.IsCheck() && len(p.Splits) == 2 {
					opens++
				}
			}
			if unions+opens != 1 {
				t.Errorf("layout %d has %d unions and %d valves that are one", k+1, unions, opens)
			}
			if opens == 0 {
				continue
			}
			if ended++; l.Laid.Water.Order != layout.UnionFirst || l.Laid.Water.Released > l.Laid.Water.Standing/2 {
				t.Errorf("layout %d: %+v", k+1, l.Laid.Water)
			}
		}
		if ended == 0 {
			t.Error("no layout with the valve that is the union too")
		}
	}
}
