package design

import (
	"math"
	"strings"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

func severity(fs []trace.Finding, code string) (trace.Finding, bool) {
	for _, f := range fs {
		if f.Code == code {
			return f, true
		}
	}
	return trace.Finding{}, false
}

// With the first points of its curve missing, the old pond's pump is known only
// from 38 gpm on; it gives less (14.4 gpm by the full curve). With the last ones
// missing, a pump that gives more than its last point does is known to give
// more. Each bound holds for the true flow, and is told as a bound wherever it is
// told.
func TestPumpOutsideItsCurve(t *testing.T) {
	book, full := read(t, "old-pond")
	truth := Solve(book, full).Delivery
	for _, c := range []struct {
		name     string
		from, to int // points kept
		side     unit.Bound
		end      unit.Flow // of the data that are left
		unsure   bool
	}{
		{"first four missing", 4, 9, unit.LessThan, 38 * unit.USGallonPerMinute, true}, // 30 gpm are wanted
		{"first two missing", 2, 9, unit.LessThan, 18 * unit.USGallonPerMinute, false}, // 18 gpm are too little anyhow
		{"last seven missing", 0, 2, unit.MoreThan, 9 * unit.USGallonPerMinute, true},
		{"whole", 0, 9, unit.Exact, truth.Flow, false},
	} {
		j := full.Clone()
		j.Pumps[0].Curve = j.Pumps[0].Curve[c.from:c.to]
		r := Solve(book, j)
		d := r.Delivery
		if d == nil || d.Beyond != c.side || math.Abs(float64(d.Flow/c.end)-1) > 1e-3 {
			t.Errorf("%s: %+v, want %v of %v", c.name, d, c.side, float64(c.end))
			continue
		}
		if c.side == unit.LessThan && truth.Flow > d.Flow || c.side == unit.MoreThan && truth.Flow < d.Flow {
			t.Errorf("%s: the bound %v does not hold for %v", c.name, d.Flow, truth.Flow)
		}
		if f, told := severity(r.Findings, FindBeyond); told != (c.side != unit.Exact) || f.Found.Bound != c.side {
			t.Errorf("%s: told %v as %+v", c.name, told, f.Found)
		}
		unsure, told := severity(r.Findings, FindUnsure)
		if told != c.unsure || told && unsure.Found.Bound != c.side {
			t.Errorf("%s: unsure told %v as %+v", c.name, told, unsure.Found)
		}
		if short, told := severity(r.Findings, FindShort); told == c.unsure || told && short.Found.Bound != c.side {
			t.Errorf("%s: short told %v as %+v", c.name, told, short.Found)
		}
		asIs := 0
		for _, o := range r.Options {
			if o.AsIs {
				asIs++
				if o.Beyond != c.side {
					t.Errorf("%s: option %+v", c.name, o)
				}
			}
		}
		if asIs != 1 {
			t.Errorf("%s: %d options as drawn", c.name, asIs)
		}
		for _, f := range r.Findings {
			for _, m := range f.Remedies {
				for _, e := range m.Effect {
					if strings.HasSuffix(e.Figure, ".flow") && (e.Before.Bound != c.side || e.After.Bound == unit.LessThan) {
						t.Errorf("%s: remedy from %+v to %+v", c.name, e.Before, e.After)
					}
				}
			}
		}
	}
}
