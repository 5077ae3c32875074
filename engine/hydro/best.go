package hydro

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Sources of the ranges that a pump may run in.
var (
	// SourcePreferred names the preferred operating region.
	SourcePreferred = trace.Source{
		Title: "ANSI/HI 9.6.3, preferred operating region 70 to 120 percent of the best-efficiency flow",
		Basis: trace.BasisMemory,
		Note:  "for centrifugal pumps of low specific speed; the maker's sheet goes first",
	}
	// SourceWear names the correction for wear.
	SourceWear = trace.Source{
		Title: "head x (1 - wear) at every flow; wear = 1 - head measured against a shut valve / the sheet's",
		Basis: trace.BasisPractice,
		Note:  "common practice, no source; the watts are left as they are",
	}
)

// The preferred operating region, as parts of the best-efficiency flow.
const (
	PreferredLow  unit.Ratio = 0.70
	PreferredHigh unit.Ratio = 1.20
)

// Worn is the curve of the same pump with a part of its head lost to wear at
// every flow: head x (1 - wear), wear from 0 to less than 1; see SourceWear.
// Flow and watts are left as they are. Wear of another kind (a wide gap passes
// water back, worn vanes) bends a curve otherwise: a curve measured anew goes
// first.
func (c *Curve) Worn(wear unit.Ratio) (*Curve, error) {
	if err := within("wear", wear, 0, 1, unit.KindPercent); err != nil {
		return nil, err
	}
	return c.Scaled(1, 1-wear, 1)
}

// BestPoint is the flow at which the pump turns most of what it draws into
// power of the water, and that efficiency (wire to water: density g Q H / P):
//
//	greatest of density g Q H(Q) / P(Q) within the data
//
// found on each stretch between two points of head or power by golden section
// after a scan of it, to 1e-6 of the stretch. ok is false where the watts are
// known at fewer than three points, where the efficiency still rises at the end
// of the data (the best flow then lies beyond), or comes out above 1 (wrong
// figures).
func (c *Curve) BestPoint(w Water) (q unit.Flow, efficiency unit.Ratio, ok bool) {
	const scan, narrow, leastSpans = 16, 40, 2
	if c.power.basis != PowerCurve || len(c.power.curve.spans) < leastSpans {
		return 0, 0, false
	}
	first := max(c.head.first().x0, c.power.curve.first().x0)
	last := min(c.head.last().x1, c.power.curve.last().x1)
	at := func(x float64) float64 {
		h, _, _ := c.Head(unit.Flow(x))
		p, _, _ := c.Power(unit.Flow(x))
		return float64(WaterPower(unit.Flow(x), h, w) / p)
	}
	n := scan * (len(c.head.spans) + len(c.power.curve.spans))
	best := 0
	step := (last - first) / float64(n)
	for i := range n + 1 {
		if at(first+step*float64(i)) > at(first+step*float64(best)) {
			best = i
		}
	}
	if best == 0 || best == n {
		return 0, 0, false
	}
	low, high := first+step*float64(best-1), first+step*float64(best+1)
	const golden = 0.6180339887498949
	for range narrow {
		a, b := high-golden*(high-low), low+golden*(high-low)
		if at(a) >= at(b) {
			high = b
		} else {
			low = a
		}
	}
	x := low + (high-low)/2
	efficiency = unit.Ratio(at(x))
	return unit.Flow(x), efficiency, efficiency <= 1
}
