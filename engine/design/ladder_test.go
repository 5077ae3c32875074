package design

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// remedies gives the finding of a feed that gets too little.
func remedies(t *testing.T, r *Result) trace.Finding {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == FindShort {
			return f
		}
	}
	t.Fatal("no feed falls short")
	return trace.Finding{}
}

// The old pond's answer is the new pump on 2 in pipe: about 2,000 gph, 305
// dollars of electricity a year in place of 685. By hand with Hazen-Williams
// and equivalent lengths 1,993 gph; that reckoning is good to a few percent.
func TestBestRemedyFirst(t *testing.T) {
	const byHand = 1993 * unit.USGallonPerHour
	book, j := read(t, "old-pond")
	f := remedies(t, Solve(book, j))
	best := f.Remedies[0]
	if text(best.Message, "pump") != "N" || text(best.Message, "pipe") != "PVC Sch 40 2" {
		t.Errorf("first is pump %s on %s", text(best.Message, "pump"), text(best.Message, "pipe"))
	}
	if got := best.Effect[0].After.SI; math.Abs(got/float64(byHand)-1) > 0.05 {
		t.Errorf("it gives %g m³/s, by hand %g", got, float64(byHand))
	}
	if len(f.Remedies) > mostRemedies || f.MoreRemedies == 0 {
		t.Errorf("%d told, %d counted", len(f.Remedies), f.MoreRemedies)
	}
}

// On every demo: what serves stands in front of what does not, and a dearer
// remedy never in front of a cheaper one that serves.
func TestRemediesInOrder(t *testing.T) {
	checked := 0
	for _, name := range demo.Names() {
		book, j := read(t, name)
		r := Solve(book, j)
		for _, f := range r.Findings {
			served := true
			for _, m := range f.Remedies {
				if len(m.Effect) == 0 || f.Code != FindShort {
					continue
				}
				serves := m.Effect[0].After.SI >= f.Limit.SI*float64(enough)
				if serves && !served {
					t.Errorf("%s: a remedy that serves stands behind one that does not", name)
				}
				served = serves
				checked++
			}
		}
	}
	if checked == 0 {
		t.Error("no remedy on any demo")
	}
}

// A wish that nothing meets ends the ladder all the same: where larger pipe
// gives no more.
func TestLadderEnds(t *testing.T) {
	book, j := read(t, "old-pond")
	j.Watercourses[0].Parts[0].Lip.Wanted = job.Flow{}
	j.Watercourses[0].Wanted.SI = 1 // m³/s
	r := Solve(book, j)
	if r.Delivery == nil || r.Delivery.Feeds[0].Wanted != 1 {
		t.Fatal("the wish is not read")
	}
	n := len(r.Options)
	if n < 8 || n > 2*len(book.PipeSizes("PVC Sch 40")) {
		t.Errorf("%d options", n)
	}
	last, before := r.Options[n-2], r.Options[n-4]
	if last.Flow > before.Flow*(1+leastGain) {
		t.Errorf("the ladder ended while the pump still gained: %v after %v", last.Flow, before.Flow)
	}
}
