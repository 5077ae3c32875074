package arrange

import (
	"slices"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Where a part is glued at the wall the hole stays where it is: no other height
// or place of it is looked at.
func TestGluedHoleStays(t *testing.T) {
	s := &search{in: Input{Vault: layout.Vault{Length: 1, Width: 1, Depth: 1, Outlet: layout.Outlet{Wall: layout.Right, Along: 0.5, Height: 0.5}}}}
	s.hole, _ = s.in.Vault.Hole()
	s.seat = s.hole.Axis
	free := len(s.stretches())
	s.in.Glued.FromWall = []layout.Laid{{}}
	if glued := s.stretches(); len(glued) != free-4 || slices.ContainsFunc(glued, func(g stretch) bool { return g.hole.Norm() > 0 }) {
		t.Errorf("%d changes, %d with a part glued at the wall", free, len(glued))
	}
}

// All that the input leaves out together: what is there is there without end, and
// each fitting that is left out is there once.
func TestEveryFitting(t *testing.T) {
	fitting := func(k layout.Kind, n int) Fitting { return Fitting{Part: layout.Part{Kind: k}, AtHand: n} }
	base := []Fitting{fitting(layout.Elbow90, 1), fitting(layout.Union, -1), fitting(layout.Elbow45, 2)}
	more := slices.Clone(base)
	more[0].AtHand = -1
	s := &search{in: Input{Fittings: base, Instead: []Instead{
		{Standings: []Standing{{Turns: []unit.Angle{0}}}},
		{Fittings: append(slices.Clone(base), fitting(layout.Street90, -1))},
		{Fittings: more},
	}}}
	lacking := s.lacking()
	all := s.besides(lacking)
	want := []Fitting{fitting(layout.Elbow90, -1), fitting(layout.Union, -1), fitting(layout.Elbow45, 2), fitting(layout.Street90, -1)}
	if len(lacking) != 2 || !slices.EqualFunc(all.Fittings, want, func(a, b Fitting) bool { return a.Part.Kind == b.Part.Kind && a.AtHand == b.AtHand }) {
		t.Errorf("%+v", all.Fittings)
	}
}
