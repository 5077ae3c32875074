package design

import (
	"testing"

	"plashet/engine/unit"
)

// TestBandPastTheCurve: where more draws than lie beyond the band run past the
// end of the published curve, that end is told as a bound, at the end of the
// curve as drawn and not beyond it; a curve with room has plain ends.
func TestBandPastTheCurve(t *testing.T) {
	book, j := read(t, "old-pond")
	full := SolveBands(book, j, 256, 1)
	use := 0
	for i := range j.Pumps {
		if j.Pumps[i].Name == full.Delivery.Pump {
			use = i
		}
	}
	curve := CurvesOf(book, j, full, 2).Pumps[use].Curve
	end := full.Delivery.Flow * 1.02
	short := j.Clone()
	kept := short.Pumps[use].Curve[:0]
	for _, c := range j.Pumps[use].Curve {
		if c.Flow.SI < end {
			kept = append(kept, c)
		}
	}
	h, _, _ := curve.Head(end)
	last := j.Pumps[use].Curve[0]
	last.Flow, last.Head = entry("x", end), entry("x", h)
	kept = append(kept, last)
	short.Pumps[use].Curve = kept
	r := SolveBands(book, short, 256, 1)
	if r.Bands == nil || r.Delivery.Bound() != unit.Exact {
		t.Fatalf("bands %v, %v", r.Bands, r.Delivery.Bound())
	}
	if _, told := severity(r.Findings, FindBandPast); !told {
		t.Error("not told")
	}
	if _, told := severity(full.Findings, FindBandPast); told {
		t.Error("told of a curve with room")
	}
	seen := 0
	for i := range r.Bands.Outputs {
		a, b := r.Bands.Outputs[i], full.Bands.Outputs[i]
		if a.Figure != "pump.flow" && a.Figure != FeedID(0)+".flow" {
			continue
		}
		seen++
		if a.High.Bound != unit.MoreThan || a.Low.Bound != unit.Exact || b.High.Bound != unit.Exact {
			t.Errorf("%s: %+v, with room %+v", a.Figure, a, b)
		}
		if top := float64(end) * 1.15; a.High.SI > top {
			t.Errorf("%s: up to %v, past the curve's end as drawn, %v", a.Figure, a.High.SI, top)
		}
	}
	if seen != 2 {
		t.Errorf("%d figures", seen)
	}
}
