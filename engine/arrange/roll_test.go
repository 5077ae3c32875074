package arrange_test

import (
	"math"
	"reflect"
	"testing"

	"plashet/engine/arrange"
)

// A rolling offset closes with two elbows at a roll between the steps. The
// travel between the centres of its elbows is the true offset times the cosecant
// of the elbow, the true offset the hypotenuse of rise and run (common practice,
// no source).
func TestRollingOffset(t *testing.T) {
	const same = 1e-6 // m
	book := newBook(t)
	seen := 0
	for _, v := range family(t) {
		if len(v.Name) < 6 || v.Name[:6] != "offset" {
			continue
		}
		seen++
		i := v.input(t, book)
		out := searched(t, i)
		if len(out.Layouts) == 0 || out.Layouts[0].Worth.Elbows != 2 {
			t.Errorf("%s: no layout of two elbows first", v.Name)
			continue
		}
		for k := range out.Layouts {
			l := &out.Layouts[k]
			var turns []int
			for m, p := range l.Chain.Parts {
				if turn, _ := p.Turn(); turn != 0 {
					turns = append(turns, m)
				}
			}
			if len(turns) != 2 {
				continue
			}
			a, b := l.Laid.Places[turns[0]], l.Laid.Places[turns[1]]
			off := l.Laid.Hole.At.Sub(l.Laid.Port)
			off = off.Sub(a.InDir.Scale(off.Dot(a.InDir)))
			turn, _ := l.Chain.Parts[turns[0]].Turn()
			if travel := b.Centre.Sub(a.Centre).Norm(); math.Abs(travel-off.Norm()/math.Sin(float64(turn))) > same {
				t.Errorf("%s: travel %.5f m, true offset %.5f m", v.Name, travel, off.Norm())
			}
		}
		i.Rules.Cores = 2
		if two := searched(t, i); !reflect.DeepEqual(worths(&two), worths(&out)) || two.Tally != out.Tally {
			t.Errorf("%s: two cores give another outcome", v.Name)
		}
	}
	if seen == 0 {
		t.Fatal("no rolling offset in the family")
	}
}

func worths(o *arrange.Outcome) (out []arrange.Worth) {
	for _, l := range o.Layouts {
		out = append(out, l.Worth)
	}
	return out
}
