package cut

import (
	"context"
	"errors"
	"testing"

	"plashet/engine/cut/testdata/orlib"
	"plashet/engine/unit"
)

// bins states a bin packing problem: no kerf, one kind of bar, the fewest
// wanted. With keep as long as a bar no remnant is worth keeping and the
// problem is bin packing alone; with a short one the longest remnant counts too.
func bins(in orlib.Instance, keep int) Problem {
	p := Problem{
		Grid: unit.Millimetre, Keep: unit.Length(keep) * unit.Millimetre, Basis: ByCount,
		Sticks: []Stick{{Length: unit.Length(in.Capacity) * unit.Millimetre}},
	}
	for _, l := range in.Pieces {
		p.Pieces = append(p.Pieces, Piece{Length: unit.Length(l) * unit.Millimetre, Count: 1})
	}
	return p
}

// TestORLibrary: all 40 problems are proven, with the least number of
// bins known; also when the longest remnant is wanted after that.
func TestORLibrary(t *testing.T) {
	for _, set := range []func() ([]orlib.Instance, error){orlib.U120, orlib.T60} {
		all, err := set()
		if err != nil || len(all) != 20 {
			t.Fatalf("%d problems, %v", len(all), err)
		}
		for _, in := range all {
			least, source := in.Least()
			for _, keep := range []int{in.Capacity, 1} {
				p := bins(in, keep)
				plan, err := Solve(context.Background(), p)
				if err != nil {
					t.Fatal(err)
				}
				verify(t, p, plan)
				if !plan.Proof.Proven() || plan.NewSticks != least {
					t.Errorf("%s keep %d: %d bins, best known %d (%s), proof %+v", in.Name, keep, plan.NewSticks, least, source, plan.Proof)
				}
				t.Logf("%s keep %d: %d bins (best known %d), remnant %.1f, %d steps", in.Name, keep, plan.NewSticks, least,
					float64(plan.LongestRemnant/unit.Millimetre)/10, plan.Steps)
			}
		}
	}
}

func benchmarkBins(b *testing.B, set func() ([]orlib.Instance, error), keep func(orlib.Instance) int) {
	all, err := set()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		proven := 0
		for _, in := range all {
			plan, err := Solve(context.Background(), bins(in, keep(in)))
			if err != nil {
				b.Fatal(err)
			}
			if plan.Proof.Proven() {
				proven++
			}
		}
		if proven != len(all) {
			b.Fatalf("%d of %d proven", proven, len(all))
		}
	}
}

func binsAlone(in orlib.Instance) int { return in.Capacity }
func withRemnant(orlib.Instance) int  { return 1 }

// BenchmarkORLibrary is all 40 problems in one turn.
func BenchmarkORLibrary(b *testing.B) {
	benchmarkBins(b, func() ([]orlib.Instance, error) {
		u, err := orlib.U120()
		t, err2 := orlib.T60()
		return append(u, t...), errors.Join(err, err2)
	}, binsAlone)
}

// One turn of each is all 20 problems of the set.
func BenchmarkU120(b *testing.B)        { benchmarkBins(b, orlib.U120, binsAlone) }
func BenchmarkT60(b *testing.B)         { benchmarkBins(b, orlib.T60, binsAlone) }
func BenchmarkU120Remnant(b *testing.B) { benchmarkBins(b, orlib.U120, withRemnant) }
func BenchmarkT60Remnant(b *testing.B)  { benchmarkBins(b, orlib.T60, withRemnant) }
