package arrange_test

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// What lies between elbows alone says nothing of what lies between them with
// valve and union: a spigot that would go straight into the adapter's socket,
// at one height only, goes into the valve's; and a leg that is longer than any
// piece of pipe at hand is made of two. Both have an assembly in this vault.
func TestLongerWithValve(t *testing.T) {
	book := newBook(t)
	v := family(t)[slices.IndexFunc(family(t), func(v testVault) bool { return v.Name == "easy" })]
	for name, change := range map[string]func(in *arrange.Input){
		"street elbows only": func(in *arrange.Input) {
			in.Fittings = slices.DeleteFunc(in.Fittings, func(f arrange.Fitting) bool {
				turn, _ := f.Part.Turn()
				return turn != 0 && f.Part.In.Kind == f.Part.Out.Kind
			})
			in.Rules.Elbows = 1
		},
		"short pieces only": func(in *arrange.Input) {
			in.Pipes[0].AtHand = 7 * unit.Inch
			in.Rules.Elbows = 1
		},
	} {
		in := v.input(t, book)
		in.Standings = slices.DeleteFunc(in.Standings, func(s arrange.Standing) bool { return s.Pump.Points.Z < 0.5 })
		in.Rules.Play, in.Rules.Best, in.Rules.Brief = true, 1000, true
		change(&in)
		out := searched(t, in)
		if len(out.Layouts) == 0 {
			t.Errorf("%s: none found, claim %d", name, out.Proof.Claim)
		}
		for _, l := range out.Layouts {
			for _, p := range l.Laid.Pieces {
				if most := in.Pipes[0].AtHand; most >= 0 && p.Cut > most {
					t.Errorf("%s: a piece of %.3f m", name, float64(p.Cut))
				}
			}
			if !slices.ContainsFunc(l.Chain.Parts, func(p layout.Laid) bool { return p.Kind == layout.Union }) {
				t.Errorf("%s: no union", name)
			}
		}
	}
}
