package size

import (
	"context"
	"slices"
	"testing"
)

// A search that is stopped gives the front of what it looked at, and says that
// the rest was not: stopped after so many pumps it is the front of a shelf of so
// many.
func TestFindStopped(t *testing.T) {
	for _, pairs := range []Pairs{PairsNone, PairsAny} {
		whole := threeFalls(t, 40, false, pairs)
		for _, after := range []int{0, 1, 7, 25, 38} {
			ctx, stop := context.WithCancel(t.Context())
			got, faults := Find(ctx, whole, func(g Progress) {
				if g.Pumps >= after {
					stop()
				}
			})
			stop()
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			done := got.Progress.Pumps
			if !got.Stopped || done <= after-1 || done > after+1 || got.Progress.Of != 40 || got.Progress.Pairs != 0 {
				t.Fatalf("stopped after %d: %+v, stopped %v", after, got.Progress, got.Stopped)
			}
			part := *whole
			part.Pumps, part.Pairs = whole.Pumps[:done], PairsNone
			if done == 0 {
				if len(got.Front) > 0 || got.Covered != 0 {
					t.Error("a front out of nothing")
				}
				continue
			}
			want, faults := toEnd(&part)
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			if !slices.Equal(vectors(got), vectors(want)) || got.Covered != want.Covered {
				t.Errorf("stopped after %d: %v, and the front of so many is %v", after, vectors(got), vectors(want))
			}
		}
	}
}

// Progress rises to its end, and a search that runs to it was not stopped.
func TestFindProgress(t *testing.T) {
	p := threeFalls(t, 30, false, PairsAny)
	var last Progress
	told := 0
	r, faults := Find(t.Context(), p, func(g Progress) {
		told++
		if g.Pumps < last.Pumps || g.Pairs < last.Pairs || g.Of != 30 || g.Pumps > g.Of || g.Pairs > max(g.PairsOf, 0) {
			t.Fatalf("%+v after %+v", g, last)
		}
		last = g
	})
	if len(faults) > 0 || told < 30 || r.Stopped || r.Progress.Pumps != 30 || r.Progress.Pairs != r.Progress.PairsOf || r.Progress.Pairs != r.Pairs {
		t.Fatalf("%v, told %d times, %+v of %d pairs", faults, told, r.Progress, r.Pairs)
	}
	// Stopped amid the pairs, all single designs are there still.
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	half, _ := Find(ctx, p, func(g Progress) {
		if g.Pairs > 100 {
			stop()
		}
	})
	if !half.Stopped || half.Progress.Pumps != 30 || half.Pairs <= 100 || half.Pairs >= r.Pairs {
		t.Errorf("%+v, %d of %d pairs", half.Progress, half.Pairs, r.Pairs)
	}
	alone := *p
	alone.Pairs = PairsNone
	single, _ := toEnd(&alone)
	for _, v := range vectors(single) {
		if !noWorse(vectors(half), []vector{v}) {
			t.Errorf("the single design %v is neither on the front nor beaten there", v)
		}
	}
}
