package hydro

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SourceManning names the law of streams.
var SourceManning = trace.Source{
	Title: "Manning, Q = A R^(2/3) S^(1/2) / n (metres, seconds), uniform flow in a rectangular section",
	Basis: trace.BasisPublished,
	Note:  "San Diego State University, CIVE 530; the bed of a garden stream is rougher and less even than any table's n",
}

// SteepSlope is the slope from which Manning's formula is out of its use: the
// water runs in steps, faster and thinner, with air in it.
const SteepSlope = unit.Ratio(0.10)

// ChannelState says whether waves can run up the stream.
type ChannelState uint8

// The states, by the Froude number under, at (within 1e-9) or over 1.
const (
	Subcritical ChannelState = iota
	CriticalState
	Supercritical
)

func (s ChannelState) String() string {
	return [...]string{"subcritical", "critical", "supercritical"}[s]
}

// Channel is a stream of rectangular section.
type Channel struct {
	Width unit.Length // that carries water, above 0
	Slope unit.Ratio  // fall over length, above 0
	N     unit.Ratio  // Manning's roughness, above 0
}

// ChannelFlow is how a flow runs in a channel.
type ChannelFlow struct {
	Depth    unit.Length // normal depth
	Critical unit.Length // critical depth of the same flow
	Speed    unit.Speed  // mean
	Froude   unit.Ratio
	State    ChannelState
	Cautions []trace.Message // steep
}

func (c Channel) check() error {
	return cmp.Or(
		positive("width", c.Width, unit.KindPlan),
		positive("slope", c.Slope, unit.KindPercent),
		positive("n", c.N, unit.KindRatio),
	)
}

// Flow is Manning's flow at a uniform depth y:
//
//	Q = (1/n) A R^(2/3) S^(1/2),  A = b y,  R = A/(b + 2y)
//
// Sizes that are not above zero, or a negative depth, give CodeRange.
func (c Channel) Flow(depth unit.Length) (unit.Flow, error) {
	if err := cmp.Or(c.check(), notNegative("depth", depth, unit.KindDepth)); err != nil || depth == 0 {
		return 0, err
	}
	b, y := float64(c.Width), float64(depth)
	return unit.Flow(b * y / float64(c.N) * twoThirds(b*y/(b+2*y)) * math.Sqrt(float64(c.Slope))), nil
}

// Normal finds the depth at which the channel carries a flow, and what goes
// with it. It takes Newton's steps on ln Q over ln y, which bends down and has
// a slope between 1 and 5/3, from the depth of a wide channel,
// (n Q/(b sqrt S))^0.6, which is never too great: they close in from below on
// any sizes. With no flow all is zero.
func (c Channel) Normal(q unit.Flow) (ChannelFlow, error) {
	if err := cmp.Or(c.check(), notNegative("flow", q, unit.KindFlow)); err != nil || q == 0 {
		return ChannelFlow{}, err
	}
	b := float64(c.Width)
	conveyance := float64(q) * float64(c.N) / math.Sqrt(float64(c.Slope)) // A R^(2/3)
	target := math.Log(conveyance / b)
	u := 0.6 * target // ln y
	for range 100 {
		y := math.Exp(u)
		have := u*5/3 - 2.0/3*math.Log1p(2*y/b)
		slope := 5.0/3 - 2.0/3*2*y/(b+2*y)
		step := (target - have) / slope
		u += step
		if math.Abs(step) < 1e-14*max(1, math.Abs(u)) {
			break
		}
	}
	y := math.Exp(u)
	speed := float64(q) / (b * y)
	out := ChannelFlow{
		Depth:    unit.Length(y),
		Critical: CriticalDepth(unit.FlowPerWidth(float64(q) / b)),
		Speed:    unit.Speed(speed),
		Froude:   unit.Ratio(speed / math.Sqrt(unit.StandardGravity*y)),
	}
	switch f := float64(out.Froude); {
	case math.Abs(f-1) <= 1e-9:
		out.State = CriticalState
	case f > 1:
		out.State = Supercritical
	}
	if c.Slope > SteepSlope {
		out.Cautions = []trace.Message{{Code: CautionSteep, Args: []trace.Arg{
			trace.Num("found", c.Slope, unit.KindPercent), trace.Num("limit", SteepSlope, unit.KindPercent),
		}}}
	}
	return out, nil
}

// CriticalDepth is the depth at which a flow for each metre of width has the
// least energy, in a rectangular section: (q²/g)^(1/3). It takes the size of q
// without its sign.
func CriticalDepth(q unit.FlowPerWidth) unit.Length {
	return unit.Length(math.Cbrt(float64(q) * float64(q) / unit.StandardGravity))
}
