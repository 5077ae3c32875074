package arrange

import (
	"context"
	"slices"
	"testing"

	"plashet/engine/cut"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// tall is plain with its hole so high that the upright leg needs a piece of about
// 18 in, and with a coupling at hand; sizes invented.
func tall() Input {
	i := plain()
	i.Vault.Depth, i.Vault.Outlet.Height = 36*unit.Inch, 27.75*unit.Inch
	m := func(l unit.Length) layout.Measure {
		return layout.Measure{Length: l, Source: trace.Source{Title: "invented", Basis: trace.BasisMeasured}}
	}
	c := layout.Inline(layout.Coupling, "1-1/2", m(0.1*unit.Inch), m(0.7*unit.Inch), m(2.3*unit.Inch))
	i.Fittings = append(i.Fittings, Fitting{Part: c, Head: 0.01, Cost: 1, Priced: true, AtHand: -1})
	return i
}

// offcuts limits the pipe to these lengths.
func (in *Input) offcuts(lengths ...unit.Length) {
	in.Pipes[0].AtHand = slices.Max(append(lengths, 0))
	in.Pipes[0].Stock = &Stock{Lengths: lengths, Kerf: unit.Inch / 16, Grid: unit.Inch / 64}
}

func couplingsIn(l *Layout) (n int) {
	for i := range l.Chain.Parts {
		if l.Chain.Parts[i].Kind == layout.Coupling {
			n++
		}
	}
	return n
}

// A leg longer than any offcut is made of two with a coupling, and what is found can
// be cut; without a coupling nothing can, and the stock is named as what fails.
func TestCouplingJoinsOffcuts(t *testing.T) {
	free := Search(t.Context(), tall(), nil)
	if len(free.Layouts) == 0 || slices.ContainsFunc(free.Layouts, func(l Layout) bool { return couplingsIn(&l) > 0 }) {
		t.Fatalf("%d layouts with pipe as long as wanted, or one has a coupling", len(free.Layouts))
	}
	pieces, _ := piecesOf(&free.Layouts[0])
	if l := slices.Max(pieces); l < 17*unit.Inch || l > 19*unit.Inch {
		t.Fatalf("the long piece is %.2f in", float64(l/unit.Inch))
	}
	const in = unit.Inch
	for _, c := range []struct {
		name    string
		lengths []unit.Length
		play    bool
		fits    bool
	}{
		{"two of 11 in", []unit.Length{11 * in, 11 * in}, false, true},
		{"two of 11 in, with play", []unit.Length{11 * in, 11 * in, 6 * in}, true, true},
		{"one of 11, one of 8", []unit.Length{11 * in, 8 * in, 6 * in}, false, true},
		{"one of 14, one of 5", []unit.Length{14 * in, 5 * in, 6 * in}, false, true},
		{"one of 10, two of 4", []unit.Length{10 * in, 4 * in, 4 * in, 6 * in}, false, false},
	} {
		i := tall()
		i.Rules.Play = c.play
		i.offcuts(c.lengths...)
		out := Search(t.Context(), i, nil)
		if (len(out.Layouts) > 0) != c.fits {
			t.Errorf("%s: %d layouts, stage %q", c.name, len(out.Layouts), out.Stage)
			continue
		}
		if want := map[bool]Claim{true: Family, false: Capped}[c.fits]; out.Proof.Claim != want { // what is refused is no proof
			t.Errorf("%s: claim %d", c.name, out.Proof.Claim)
		}
		if !c.fits && (out.Stage != StageStock || out.Uncut == nil) {
			t.Errorf("%s: stage %q", c.name, out.Stage)
		}
		for k := range out.Layouts {
			l := &out.Layouts[k]
			p, _ := piecesOf(l)
			if couplingsIn(l) != 1 {
				t.Errorf("%s: %d couplings", c.name, couplingsIn(l))
			}
			if !packs(p, c.lengths, i.Pipes[0].Stock.Kerf) {
				t.Errorf("%s: %v in cannot be cut", c.name, inches(p))
			}
			plan := cut.Problem{Kerf: i.Pipes[0].Stock.Kerf, Grid: i.Pipes[0].Stock.Grid, Round: true, Basis: cut.ByCount, Effort: stockEffort}
			for _, one := range p {
				plan.Pieces = append(plan.Pieces, cut.Piece{Length: one, Count: 1})
			}
			for _, one := range c.lengths {
				plan.Offcuts = append(plan.Offcuts, cut.Offcut{Length: one, Count: 1})
			}
			if _, err := cut.Solve(context.Background(), plan); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
		}
		i.Fittings[len(i.Fittings)-1].AtHand = 0
		if none := Search(t.Context(), i, nil); len(none.Layouts) > 0 || none.Stage != StageStock || none.Uncut == nil {
			t.Errorf("%s, no coupling: %d layouts, stage %q", c.name, len(none.Layouts), none.Stage)
		}
	}
}

func inches(l []unit.Length) (out []float64) {
	for _, x := range l {
		out = append(out, float64(x/unit.Inch))
	}
	return out
}
