package design

import (
	"math"
	"slices"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// TestOffcutsJoined: with only offcuts too short for the long leg, a coupling in the
// stock joins two; kept, the coupling is in the material list, the card's cuts are
// those found, and the plan takes every one from the offcuts. Without the coupling
// it is the stock that fails.
func TestOffcutsJoined(t *testing.T) {
	book, j := read(t, "terrace-spout")
	j.Assembly, j.Stock.Fittings = job.Assembly{Pipe: j.Assembly.Pipe}, nil
	bare := []string{"elbow 90:3", "union:1", "check valve spring:1"}
	offcuts := map[string]string{}
	for i, l := range []string{"8.5 in", "7 in", "6 in", "8.5 in"} { // the longest piece wants 13-3/4 in or 8-15/16 in
		p := at("/stock/offcuts", i)
		offcuts[p+"/pipe/kind"], offcuts[p+"/pipe/size"], offcuts[p+"/length"] = "PVC Sch 40", "1-1/2", l
	}
	without := j.Clone()
	setAll(t, without, with(with(stood("lying", "180 deg"), stocked(bare...)), offcuts))
	want := ArrangeWant{Elbows: 2}
	if a := Arrange(t.Context(), book, without, want, nil); a.Outcome == nil || len(a.Outcome.Layouts) > 0 || a.Outcome.Stage != arrange.StageStock || a.Outcome.Uncut == nil {
		t.Fatalf("without a coupling: %+v %v", a.Outcome, a.Faults)
	}
	setAll(t, j, with(with(stood("lying", "180 deg"), stocked(append(bare, "coupling:1")...)), offcuts))
	a := Arrange(t.Context(), book, j, want, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) == 0 {
		t.Fatalf("with a coupling: %+v %v", a.Outcome, a.Faults)
	}
	for n := range a.Outcome.Layouts {
		found := &a.Outcome.Layouts[n]
		if !slices.ContainsFunc(found.Chain.Parts, func(p layout.Laid) bool { return p.Kind == layout.Coupling }) {
			t.Errorf("layout %d has no coupling", n)
		}
		next, faults := a.Keep(book, j, n)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		r := Solve(book, next)
		if kept := keptCodes(r); len(kept) > 0 || r.NotToCut {
			t.Errorf("layout %d: %v, not to cut: %v", n, kept, r.NotToCut)
		}
		own := 0.0 // the runs' sticks are joined by couplings too
		for _, n := range items(r, takeoff.CodeFitting)["coupling, 1-1/2"].Terms {
			if strings.HasPrefix(n.From, "/assembly/parts/") {
				own += n.Value.SI
			}
		}
		if own != 1 {
			t.Errorf("layout %d: %v couplings of the assembly in the list", n, own)
		}
		if len(r.Assembly.Pieces) != len(found.Laid.Pieces) {
			t.Fatalf("layout %d: %d pieces, found %d", n, len(r.Assembly.Pieces), len(found.Laid.Pieces))
		}
		for i, p := range r.Assembly.Pieces {
			if d := p.Cut - found.Laid.Pieces[i].Cut; !p.Closing && math.Abs(float64(d)) > alikeCut {
				t.Errorf("layout %d: %s is cut %.3f in, found %.3f in", n, p.Mark, float64(p.Cut/unit.Inch), float64(found.Laid.Pieces[i].Cut/unit.Inch))
			}
		}
		if len(r.Cutting) != 1 || r.Cutting[0].Plan.NewSticks != 0 || len(r.Cutting[0].Plan.Bars) == 0 {
			t.Fatalf("layout %d: %+v", n, r.Cutting)
		}
		cut := 0
		for _, b := range r.Cutting[0].Plan.Bars {
			sum := unit.Length(0)
			for _, p := range b.Cuts {
				sum, cut = sum+p.Length, cut+1
			}
			if sum > b.Length+alikeCut || b.Length > 8.5*unit.Inch+alikeCut {
				t.Errorf("layout %d: %+v", n, b)
			}
		}
		if cut != len(r.Assembly.Pieces) {
			t.Errorf("layout %d: %d cut of %d pieces", n, cut, len(r.Assembly.Pieces))
		}
	}
}
