package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// underHatch is a pump 12 in long under a hatch of 11-1/2 by 9 in, in the middle of
// a vault that has room for it.
func underHatch(t testing.TB, hatch ...float64) arrange.Input {
	v := vaultNamed(t, "easy")
	v.Length, v.Width, v.Depth, v.Opening = 30, 18, 27, hatch
	v.Hole.Along, v.Hole.Height, v.Standings = 9, 16, v.Standings[:1]
	i := v.input(t, newBook(t))
	i.Rules.Elbows = 2
	return i
}

// TestLeaned: where the hatch lets no pump out that lies flat, layouts are found
// with it leaned over; each is laid and proved with that way, and the claim is no
// proof. Under a hatch of its length it lifts out, and none leans.
func TestLeaned(t *testing.T) {
	i := underHatch(t, 9, 20.5, 4.5, 13.5)
	out := arrange.Search(t.Context(), i, nil)
	if !out.Leaned || len(out.Layouts) == 0 || out.Proof.Claim == arrange.Family || out.Proof.Claim == arrange.Everything {
		t.Fatalf("%d layouts, leaned %v, claim %v, %s", len(out.Layouts), out.Leaned, out.Proof.Claim, out.Stage)
	}
	for k := range out.Layouts {
		l := &out.Layouts[k]
		// 12 in and 6-1/2 in of body pass 11-1/2 in from 51 degrees on: 12 cos + 6.5 sin.
		if l.Worth.Lean < 50*unit.Degree {
			t.Errorf("layout %d leans by %v only", k+1, l.Worth.Lean/unit.Degree)
		}
		sum := unit.Length(0)
		for _, m := range l.Way[:len(l.Way)-1] {
			if m.Turn == 0 && m.Along.Z == 0 {
				sum += m.Distance
			}
		}
		if d := sum - l.Worth.Slide; d > 1e-9 || d < -1e-9 {
			t.Errorf("layout %d: slid by %v, %v is told", k+1, sum, l.Worth.Slide)
		}
		a, _, faults := layout.Lay(l.Chain)
		report := verify.Prove(l.Chain, a)
		if len(faults) > 0 || len(refused(&report, i.Rules)) > 0 {
			t.Errorf("layout %d: %v %v", k+1, faults, refused(&report, i.Rules))
		}
	}
	for n, more := range [2][]float64{{5, 28, 1, 17}, nil} {
		flat := arrange.Search(t.Context(), underHatch(t, more...), nil)
		if flat.Leaned || len(flat.Layouts) == 0 || flat.Layouts[0].Worth.Lean != 0 {
			t.Errorf("hatch %d: %d layouts, leaned %v", n, len(flat.Layouts), flat.Leaned)
		}
	}
}

// TestLeanedNone: through a hatch narrower than the pump every way it does not lean
// out either.
func TestLeanedNone(t *testing.T) {
	i := underHatch(t, 9, 15, 4.5, 10.5)
	if out := arrange.Search(t.Context(), i, nil); out.Leaned || len(out.Layouts) > 0 || out.Stage != arrange.StageOut {
		t.Errorf("%d layouts, %s", len(out.Layouts), out.Stage)
	}
}
