package design

import (
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/job"
)

// TestInsteadEnded: where valve and union find no room in a row, a check valve with
// union ends is told, by the fitter's own measure of it; written into the job, it is
// taken, and its water is told by the nut that is opened. Where the stock says that
// there is none, it is not told.
func TestInsteadEnded(t *testing.T) {
	book, j := read(t, "terrace-spout")
	j.Assembly, j.Stock.Fittings = job.Assembly{Pipe: j.Assembly.Pipe}, nil
	setAll(t, j, with(stood("standing", "360 deg"), map[string]string{
		"/vault/length": "19-1/2 in", "/vault/width": "8 in", "/vault/depth": "16 in", "/vault/outlet/along": "4 in", "/vault/outlet/height": "8-1/2 in",
		"/measured/0/fitting": "check valve spring union-ended", "/measured/0/size": "1-1/2", "/measured/0/toStop": "3 in",
	}))
	j.Vault.Obstacles = nil
	want := ArrangeWant{Elbows: 2}
	a := Arrange(t.Context(), book, j, want, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) > 0 {
		t.Fatalf("was to have nothing that fits: %v", a.Faults)
	}
	n := slices.IndexFunc(a.Outcome.Short, func(s arrange.Change) bool { return s.What.Code == ChangeEnded })
	if n < 0 {
		t.Fatal("a check valve with union ends is not told")
	}
	next := j.Clone()
	for _, e := range a.Mend(j, n) {
		if f := next.Set(e.Path, e.Text); f != nil {
			t.Errorf("%s: %v", e.Path, f)
		}
	}
	b := Arrange(t.Context(), book, next, want, nil)
	if b.Outcome == nil || len(b.Outcome.Layouts) == 0 {
		t.Fatalf("with it nothing fits: %v", b.Faults)
	}
	for i := range b.Outcome.Layouts {
		l := &b.Outcome.Layouts[i]
		told := slices.ContainsFunc(b.Told[i].Findings, func(f trace.Finding) bool { return f.Code == layout.FindNut })
		released := slices.ContainsFunc(b.Told[i].Findings, func(f trace.Finding) bool { return f.Code == layout.FindReleased })
		if name := b.PartName(&l.Chain.Parts[slices.IndexFunc(l.Chain.Parts, func(p layout.Laid) bool { return p.Kind.IsCheck() })].Part); name != "check valve spring union-ended" || !told {
			t.Errorf("layout %d: %s, nuts told: %v", i+1, name, told)
		}
		if drains := l.Laid.Water.Order == layout.ValveFirst; drains != released {
			t.Errorf("layout %d: what comes down is told: %v, order %v", i+1, released, l.Laid.Water.Order)
		}
	}
	setAll(t, j, map[string]string{
		"/stock/fittings/0/fitting": "true union check valve", "/stock/fittings/0/size": "1-1/2", "/stock/fittings/0/none": "true",
		"/stock/fittings/1/fitting": "check valve swing union-ended", "/stock/fittings/1/size": "1-1/2", "/stock/fittings/1/none": "true",
	})
	a = Arrange(t.Context(), book, j, want, nil)
	if slices.ContainsFunc(a.Outcome.Short, func(s arrange.Change) bool { return s.What.Code == ChangeEnded }) {
		t.Error("told, though there is none")
	}
}
