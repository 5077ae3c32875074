package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// half is the sine of 45 degrees, less what rounding may make of it.
const half = math.Sqrt2/2 - 1e-9

// valves holds each check valve against the way it may stand.
func (v *verifier) valves() {
	for i := range v.in.Parts {
		p := &v.in.Parts[i]
		if !isCheck(p.Kind) {
			continue
		}
		part, path, flow := trace.Str("part", v.mark(i)), v.partPath(i), v.stands[i].in
		v.holds(CheckArrow, path, !p.Reverse, part)
		rising := math.Atan2(flow.z, math.Hypot(flow.x, flow.y))
		least := -math.Pi / 2
		switch p.Allowed {
		case layout.AllowedUp:
			least = math.Pi / 2
		case layout.AllowedLevelOrUp:
			least = 0
		case layout.AllowedAny:
		case layout.AllowedUnknown:
			if p.Kind == layout.CheckSwing {
				least = 0
			}
		default:
			least = math.NaN()
		}
		v.add(CheckAttitude, path, rising, least, rising-least+plumbTo, unit.KindAngle, []trace.Arg{part})
		if p.Kind == layout.CheckSwing && flow.z < half {
			v.angleAtMost(CheckCover, path, between(noon(flow), v.stands[i].side), plumbTo, part)
		}
	}
}

// rolls holds the roll marks against the rolls of the chain.
func (v *verifier) rolls() {
	n := 0
	for i := range v.in.Parts {
		if turnOf(&v.in.Parts[i].Part) == 0 {
			continue
		}
		part, path := trace.Str("part", v.mark(i)), v.partPath(i)
		if n++; n > len(v.a.Rolls) || v.a.Rolls[n-1].Part != i {
			v.holds(CheckRoll, path, false, part)
			continue
		}
		m, s := &v.a.Rolls[n-1], &v.stands[i]
		turn := hour(s.in, noon(s.in), s.side)
		v.angleAtMost(CheckRoll, path, circle(turn-float64(m.Angle)), 0, part)
		v.holds(CheckRoll, path, m.Mark == v.mark(i) && m.Piece == v.pieceInto(i) && m.Upright == (math.Hypot(s.in.x, s.in.y) < nearUpright), part)
		od := v.enters(i)
		v.arc(path, m.Arc, turn, od, part)
		v.arc(path, m.Other, 2*math.Pi-turn, od, part)
		v.holds(CheckArc, path, (m.ArcShort == m.Arc || m.ArcShort == -m.Other) && math.Abs(float64(m.ArcShort)) <= math.Pi*od/2+v.lim.step/2+grain, part)
		if !v.twist(i, m, od, part) {
			v.holds(CheckRoll, path, false, part)
		}
	}
	v.holds(CheckWhole, v.in.Path, n == len(v.a.Rolls), trace.Str("what", "rolls"))
}

// circle gives how far an angle is from a whole turn.
func circle(t float64) float64 { return math.Abs(math.Remainder(t, 2*math.Pi)) }

// twist holds the roll told from the elbow before; ok is false where one is
// missing or too many.
func (v *verifier) twist(i int, m *layout.RollMark, od float64, part trace.Arg) (ok bool) {
	for k := i - 1; k >= 0; k-- {
		if turnOf(&v.in.Parts[k].Part) == 0 {
			continue
		}
		s := &v.stands[i]
		// That elbow's inlet leg lies back along the flow into it.
		back, _ := v.stands[k].in.times(-1).flat(s.in).one()
		turn := hour(s.in, back, s.side)
		v.angleAtMost(CheckRoll, v.partPath(i), circle(turn-float64(m.Twist)), 0, part)
		v.arc(v.partPath(i), m.TwistArc, turn, od, part)
		return m.HasTwist && m.From == v.mark(k)
	}
	return !m.HasTwist
}

// arc holds a length along the pipe's outside against its angle, to half a
// step; a whole turn may be told as none.
func (v *verifier) arc(path string, arc unit.Length, turn, od float64, part trace.Arg) {
	want := turn * od / 2
	if math.Abs(want-float64(arc)) > math.Pi*od/2 {
		want = math.Mod(want+math.Pi*od/2, math.Pi*od) - math.Pi*od/2
		if float64(arc) > math.Pi*od/2 {
			want += math.Pi * od
		}
	}
	v.equals(CheckArc, path, float64(arc), want, v.lim.step/2, part)
}

func (v *verifier) pieceInto(i int) string {
	if p := v.joints[i].piece; p != nil {
		return p.Mark
	}
	return ""
}

// enters gives the outside diameter of the pipe that enters a part, or of the
// pipe of its size.
func (v *verifier) enters(i int) float64 {
	if p := v.joints[i].piece; p != nil {
		return float64(p.Pipe.OD)
	}
	p := &v.in.Parts[i]
	for _, q := range v.in.Pipes {
		if q.Size == sizeOf(&p.In, p.Size) {
			return float64(q.OD)
		}
	}
	return 0
}
