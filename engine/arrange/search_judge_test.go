package arrange_test

import (
	"context"
	"testing"
	"time"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/verify"
)

// patience is how long a search may take before it is stopped; what it claims
// is then told, and not held against it that it has found less.
const patience = 30 * time.Second

// undecided tells that a search makes no claim on what it did not find.
func undecided(out *arrange.Outcome) bool {
	return out.Proof.Claim == arrange.Capped || out.Proof.Claim == arrange.Stopped
}

// searched runs the search and holds every layout that it gives against laying
// and proof made anew, and against its own price.
func searched(t testing.TB, i arrange.Input) arrange.Outcome {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	i.Rules.Best = 1000 // the claim is about all of them
	out := arrange.Search(ctx, i, nil)
	for _, f := range out.Faults {
		if f.Code == arrange.FaultOverlap {
			continue // two of the drawn blocks stand in each other: told, and searched round
		}
		t.Errorf("fault %s at %s: %v", f.Code, f.Path, f.Args)
	}
	for k := range out.Layouts {
		l := &out.Layouts[k]
		a, _, faults := layout.Lay(l.Chain)
		if !a.Laid || len(faults) > 0 {
			t.Errorf("layout %d is not laid: %v", k+1, faults)
			continue
		}
		report := verify.Prove(l.Chain, a)
		for _, c := range refused(&report, i.Rules) {
			t.Errorf("layout %d is refuted: %s %v, found %g, limit %g", k+1, c.Code, c.Args, c.Found.SI, c.Limit.SI)
		}
		if elbows := turning(&l.Chain); elbows != l.Worth.Elbows || len(l.Laid.Hoses) != l.Worth.Hoses {
			t.Errorf("layout %d has %d elbows and %d hoses, not %d and %d", k+1, elbows, len(l.Laid.Hoses), l.Worth.Elbows, l.Worth.Hoses)
		}
		own, told := price(&i, &l.Chain, &a), toldPrice(l)
		if !own.asGood(told) || !told.asGood(own) {
			t.Errorf("layout %d costs %+v by its parts, %+v is told", k+1, own, told)
		}
		for m := range k {
			if o := toldPrice(&out.Layouts[m]); strictly(o, told) || strictly(told, o) {
				t.Errorf("layouts %d and %d: one beats the other", m+1, k+1)
			}
		}
	}
	return out
}

func turning(chain *layout.Input) (n int) {
	for _, p := range chain.Parts {
		if turn, _ := p.Turn(); turn != 0 && p.Kind != layout.Hose {
			n++
		}
	}
	return n
}
