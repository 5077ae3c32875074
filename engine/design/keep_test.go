package design

import (
	"context"
	"math"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/unit"
	"plashet/job"
)

// asFound is what a search would give that had found the job's own assembly.
func asFound(t *testing.T, book *catalog.Book, j *job.Job) *Arranging {
	t.Helper()
	_, a, ok := filled(t, book, j, ArrangeWant{})
	if !ok {
		t.Fatal("the input of a search cannot be filled")
	}
	m := modelFor(book, j)
	laid := m.relaid()
	if laid == nil {
		t.Fatal(m.out.Faults)
	}
	a.Outcome = &arrange.Outcome{
		Layouts: []arrange.Layout{{Chain: *m.laidFrom, Laid: *laid, Way: laid.LiftOut.Moves}},
		Proof:   arrange.Proof{Claim: arrange.Family, Elbows: 4},
	}
	return a
}

// TestKeep: a layout written into the job comes out with the cut lengths it was
// found with, names its fittings as the catalogue does, meets the hole, and its
// record holds while nothing is changed.
func TestKeep(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	a := asFound(t, book, j)
	bare := j.Clone()
	bare.Assembly.Parts = nil // nothing of it may come from what was drawn
	next, faults := a.Keep(book, bare, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	data, err := job.Encode(next)
	if err != nil {
		t.Fatal(err)
	}
	again, faults := job.Read(data)
	if len(faults) > 0 {
		t.Fatalf("%v\n%s", faults, data)
	}
	r := Solve(book, again)
	if codes := keptCodes(r); len(codes) > 0 || r.NotToCut {
		t.Errorf("%v, not to cut: %v", codes, r.NotToCut)
	}
	// The one upright piece is cut to 1/16 in, so half of that may be left.
	if off := r.Assembly.Closure.Off.Norm(); off > float64(unit.Inch)/32 {
		t.Errorf("misses the hole by %v m", off)
	}
	found := a.Outcome.Layouts[0].Laid.Pieces
	for i, p := range r.Assembly.Pieces {
		if math.Abs(float64(p.Cut-found[i].Cut)) > alikeCut && !p.Closing {
			t.Errorf("%s is cut %v, found %v", p.Mark, p.Cut, found[i].Cut)
		}
	}
	for i, l := range again.Assembly.Parts {
		if want := j.Assembly.Parts[i]; l.Fitting != want.Fitting || l.Mark != want.Mark || l.Closes != want.Closes {
			t.Errorf("part %d is %+v, drawn as %+v", i, l, want)
		}
	}
	if k := again.Assembly.Kept; k.Claim != "family" || len(k.Pieces) != len(found) || again.Assembly.Pipe.Size != "2" {
		t.Errorf("%+v", k)
	}
	for _, n := range []int{-1, 1} {
		if _, faults := a.Keep(book, j, n); len(faults) != 1 || faults[0].Code != CodeKeepNone {
			t.Errorf("layout %d: %v", n, faults)
		}
	}
	// A layout that does not come out as it was found is not written.
	a.Outcome.Layouts[0].Laid.Pieces = slices.Clone(found)
	a.Outcome.Layouts[0].Laid.Pieces[0].Cut += unit.Inch
	if _, faults := a.Keep(book, bare, 0); len(faults) != 1 || faults[0].Code != CodeKeepDiffers {
		t.Errorf("%v", faults)
	}
}

// TestKeepGlued: what is glued stays in the job as it was written, with its
// distances.
func TestKeepGlued(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	a := asFound(t, book, j)
	p := j.Assembly.Parts
	p[0].Glued, p[1].Glued, p[4].Glued = "pump", "pump", "wall"
	next, faults := a.Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	q := next.Assembly.Parts
	if q[0] != p[0] || q[4] != p[4] || q[1].Glued != "pump" || q[1].Mark != "U1" || q[2].Glued != "" {
		t.Errorf("%+v", q)
	}
}

// TestKeepUndrilled: the hole is written where the layout has it, and is then no
// longer free to move.
func TestKeepUndrilled(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	a := asFound(t, book, j)
	moved := j.Clone()
	moved.Vault.Outlet.Undrilled.Up = entry("2 in", 2*unit.Inch)
	moved.Vault.Outlet.Height = entry("17 in", 17*unit.Inch)
	a.Input.Vault.Outlet.Height = 17 * unit.Inch
	next, faults := a.Keep(book, moved, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if o := next.Vault.Outlet; math.Abs(float64(o.Height.SI-18*unit.Inch)) > 1e-9 || o.Undrilled != (job.Undrilled{}) {
		t.Errorf("%+v", o)
	}
}

// TestKeepStart: a port that takes a pipe has a piece before the first fitting;
// it is kept with its length, or as the closing piece that it is.
func TestKeepStart(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	j.Pumps[0].Port.Thread = "socket"
	j.Assembly.Parts = nil
	a := Arrange(context.Background(), book, j, ArrangeWant{Elbows: 1}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) == 0 {
		t.Fatal(a.Faults)
	}
	for i := range a.Outcome.Layouts {
		l := &a.Outcome.Layouts[i]
		next, faults := a.Keep(book, j, i)
		if len(faults) > 0 {
			t.Fatalf("layout %d: %v", i+1, faults)
		}
		first := l.Laid.Pieces[0]
		if as := next.Assembly; first.After != -1 || as.StartCloses != first.Closing || as.Start.IsZero() != first.Closing {
			t.Errorf("layout %d: %+v, start %q by %q closes %v", i+1, first, as.Start.Source, as.StartBy, as.StartCloses)
		}
		if r := Solve(book, next); r.Assembly == nil || r.NotToCut || r.Assembly.Pieces[0].From != "pump" || r.Assembly.Pieces[0].Closing != first.Closing {
			t.Errorf("layout %d: not built", i+1)
		}
	}
}
