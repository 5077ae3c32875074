package arrange_test

import (
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// TestFixedHeight: a pump that is fixed to a place stands there in every layout,
// as high as it is fixed, and the port with it. On a block of 1 in the pipe up to
// the hole, 21 in over the floor, is 1 in shorter than from the floor.
func TestFixedHeight(t *testing.T) {
	book := newBook(t)
	v := vaultNamed(t, "easy")
	upright := func(z float64) (sum unit.Length) {
		i := v.input(t, book)
		st := &i.Standings[1]
		st.Fixed, st.Pose = true, layout.Pose{At: point([3]float64{3, 6.75, z})}
		i.Standings, i.Rules.Elbows = i.Standings[1:2], 1
		out := searched(t, i)
		if len(out.Layouts) == 0 {
			t.Fatalf("%g in over the floor: nothing, %s", z, out.Stage)
		}
		for k := range out.Layouts {
			if at := out.Layouts[k].Chain.Pose.At; at != st.Pose.At {
				t.Errorf("%g in over the floor: layout %d stands at %v", z, k+1, at)
			}
		}
		for _, p := range out.Layouts[0].Laid.Pieces {
			if p.Dir.Z > 0.9 {
				sum += p.StopToStop
			}
		}
		return sum
	}
	low := upright(0)
	high := upright(1)
	if d := float64(low - high); d < in-1e-4 || d > in+1e-4 {
		t.Errorf("on a block of 1 in the upright pipe is %.3f in shorter", d/in)
	}
}

// TestFixedThroughLid: a pump fixed so high that it stands through the lid does
// not go in.
func TestFixedThroughLid(t *testing.T) {
	v := vaultNamed(t, "easy")
	i := v.input(t, newBook(t))
	st := &i.Standings[1]
	st.Fixed, st.Pose = true, layout.Pose{At: point([3]float64{3, 6.75, v.Depth - st.Pump.Blocks[0].Size().Z/in + 0.1})}
	i.Standings, i.Rules.Brief, i.Rules.Elbows = i.Standings[1:2], true, 2
	if out := arrange.Search(t.Context(), i, nil); len(out.Layouts) > 0 || out.Stage != arrange.StageBody {
		t.Errorf("%d layouts, %q", len(out.Layouts), out.Stage)
	}
}

// vaultNamed gives one of the family.
func vaultNamed(t testing.TB, name string) testVault {
	t.Helper()
	for _, v := range family(t) {
		if v.Name == name {
			return v
		}
	}
	t.Fatalf("no vault %q", name)
	return testVault{}
}
