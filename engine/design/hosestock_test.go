package design

import (
	"slices"
	"strings"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/trace"
)

// Only the stock counts, all fittings in it and an offcut of rigid pipe.
func onlyStock(hose string) []Entry {
	out := []Entry{{"/stock/only", "true"}, {"/stock/kerf", "1/16 in"}}
	for i, f := range []string{"male adapter", "union", "bulkhead fitting", "elbow 45"} {
		out = append(out, Entry{at("/stock/fittings", i) + "/fitting", f}, Entry{at("/stock/fittings", i) + "/size", "1-1/2"})
	}
	out = append(out, Entry{"/stock/offcuts/0/pipe/kind", "PVC Sch 40"}, Entry{"/stock/offcuts/0/pipe/size", "1-1/2"}, Entry{"/stock/offcuts/0/length", "2 ft"})
	if hose != "" {
		out = append(out, Entry{"/stock/offcuts/1/pipe/kind", "flexible PVC"}, Entry{"/stock/offcuts/1/pipe/size", "1-1/2"}, Entry{"/stock/offcuts/1/length", hose})
	}
	return out
}

// own gives the faults of the vault: that the job has no stream is none.
func own(r *Result) []trace.Fault {
	return slices.DeleteFunc(slices.Clone(r.Faults), func(f trace.Fault) bool { return f.Path == "/watercourses" })
}

// Where only the stock counts a hose is cut from the flexible pipe that it lists, no
// other: with enough of it there is a layout, which opens no new pipe; with too little
// that is what fails; with none a piece is told as what would mend it.
func TestHoseOnlyStock(t *testing.T) {
	book, j := skewWith(t, onlyStock("14 in")...)
	a := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) != 1 || a.Outcome.Layouts[0].Worth.Hoses != 1 {
		t.Fatalf("one layout with a hose was to fit: %v", a.Faults)
	}
	next, faults := a.Keep(book, j, 0)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	r := Solve(book, next)
	planned := false
	for _, c := range r.Cutting {
		for _, p := range c.Pieces {
			planned = planned || strings.HasPrefix(c.Pipe, "flexible PVC") && p.Mark == r.Assembly.Hoses[0].Mark
		}
	}
	if !planned || len(own(r)) > 0 {
		t.Errorf("the hose is not in the cutting plan: %v", r.Faults)
	}
	for _, x := range r.Materials {
		if strings.HasPrefix(x.Name, "flexible PVC") && x.Buy.High > 0 {
			t.Errorf("hose is bought though there is an offcut: %+v", x)
		}
	}

	book, j = skewWith(t, onlyStock("9 in")...)
	if a = Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil); a.Outcome == nil || a.Outcome.Stage != arrange.StageStock || a.Outcome.Uncut == nil {
		t.Errorf("too little hose: %+v %v", a.Outcome, a.Faults)
	}

	book, j = skewWith(t, onlyStock("")...)
	a = Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil)
	if a.Outcome == nil || len(a.Outcome.Layouts) > 0 || finding(t, a.Findings, FindHoseNoStock) == nil {
		t.Fatalf("hose there is none of: %v", a.Faults)
	}
	n := slices.IndexFunc(a.Outcome.Short, func(c arrange.Change) bool { return c.What.Code == ChangeHoseGet })
	if n < 0 {
		t.Fatalf("a piece of hose is not told as a mend: %+v", a.Outcome.Short)
	}
	mended(t, book, j, a, n)
}

// Where anything can be bought a hose is cut from an offcut that is long enough, and
// bought by its length where there is none.
func TestHoseFromOffcut(t *testing.T) {
	for length, planned := range map[string]bool{"14 in": true, "6 in": false} {
		book, j := skewWith(t, Entry{"/stock/sticks/0/pipe/kind", "PVC Sch 40"}, Entry{"/stock/sticks/0/pipe/size", "1-1/2"}, Entry{"/stock/sticks/0/length", "10 ft"},
			Entry{"/stock/offcuts/0/pipe/kind", "flexible PVC"}, Entry{"/stock/offcuts/0/pipe/size", "1-1/2"}, Entry{"/stock/offcuts/0/length", length})
		next, faults := Arrange(t.Context(), book, j, ArrangeWant{Elbows: 1}, nil).Keep(book, j, 0)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		r := Solve(book, next)
		found := slices.ContainsFunc(r.Cutting, func(c Cutting) bool { return strings.HasPrefix(c.Pipe, "flexible PVC") })
		bought := false
		for _, x := range r.Materials {
			bought = bought || strings.HasPrefix(x.Name, "flexible PVC") && x.Buy.High > 0
		}
		if len(own(r)) > 0 || found != planned || bought == planned || !slices.ContainsFunc(r.Assembly.CutList(), func(p layout.Piece) bool { return p.After == layout.NoPart }) {
			t.Errorf("%s: planned %v, bought %v: %v", length, found, bought, r.Faults)
		}
	}
}
