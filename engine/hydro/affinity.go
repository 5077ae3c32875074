package hydro

import (
	"cmp"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceAffinity names the affinity laws.
var SourceAffinity = trace.Source{
	Title: "affinity laws of centrifugal pumps: Q ~ n, H ~ n^2, P ~ n^3",
	Basis: trace.BasisPublished,
	Note:  "trade journal, summer 2015, p. 59; they count on an unchanged efficiency",
}

// AtSpeed is the curve of the same pump at another speed, ratio = new speed /
// speed of the curve, above 0: flow by the ratio, head by its square, power by
// its cube. Good for moderate changes; the laws count on an unchanged
// efficiency.
func (c *Curve) AtSpeed(ratio unit.Ratio) (*Curve, error) {
	return c.Scaled(ratio, ratio*ratio, ratio*ratio*ratio)
}

// Scaled is the curve with every flow, head and power taken in proportion, for
// a pump that was measured weaker than its sheet: with the shut-off head
// measured, head = measured/sheet. The ratios must be above 0.
func (c *Curve) Scaled(flow, head, watts unit.Ratio) (*Curve, error) {
	err := cmp.Or(
		positive("flow", flow, unit.KindRatio),
		positive("head", head, unit.KindRatio),
		positive("watts", watts, unit.KindRatio),
	)
	if err != nil {
		return nil, err
	}
	return c.scaled(float64(flow), float64(head), float64(watts)), nil
}

func (c *Curve) scaled(fq, fh, fw float64) *Curve {
	out := &Curve{basis: c.basis, notes: slices.Clone(c.notes)}
	out.setHead(c.head.scaled(fq, fh))
	out.power = power{basis: c.power.basis, watts: c.power.watts * fw}
	if c.power.basis == PowerCurve {
		out.power.curve = c.power.curve.scaled(fq, fw)
	}
	if c.low != nil {
		out.low, out.high = c.low.scaled(fq, fh, fw), c.high.scaled(fq, fh, fw)
	}
	return out
}

// scaled stretches both axes.
func (h hermite) scaled(fx, fy float64) hermite {
	out := hermite{spans: slices.Clone(h.spans)}
	for i := range out.spans {
		s := &out.spans[i]
		s.x0, s.x1 = s.x0*fx, s.x1*fx
		s.y0, s.y1 = s.y0*fy, s.y1*fy
		s.d0, s.d1 = s.d0*fy/fx, s.d1*fy/fx
		s.c2 *= fy / (fx * fx)
		s.c3 *= fy / (fx * fx * fx)
	}
	return out
}
