package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// liftOut looks for the pump's way out after a nut is opened: straight up, or
// a shift along the floor and then up. Each move is a line, and a convex solid
// drawn along a line is convex: the test of the whole move is one distance,
// without steps. Where neither will do, more moves and tilts are looked at (tilt.go).
func (l *laying) liftOut() {
	best := -1
	for k := range l.splits {
		out := l.tryLift(k)
		if best < 0 || out.Possible || lessShort(out, l.a.LiftOut) {
			best, l.a.LiftOut = k, out
		}
		if out.Possible {
			break
		}
	}
	if best < 0 {
		return
	}
	l.water(best)
	l.tellLift(l.splits[best])
	l.tellNut(l.splits[best])
}

// lessShort tells that a comes nearer to a way out than b.
func lessShort(a, b LiftOut) bool {
	return a.Checked && shortage(a) < shortage(b)
}

func shortage(o LiftOut) float64 {
	t, ok := o.nearest()
	if !ok {
		return math.Inf(1)
	}
	return float64(t.Needed - t.Available)
}

// nearest gives the shift that fails by the least.
func (o LiftOut) nearest() (best Try, ok bool) {
	for _, t := range o.Tries {
		if t.NeedKnown && (!ok || t.Needed-t.Available < best.Needed-best.Available) {
			best, ok = t, true
		}
	}
	return best, ok
}

// BlockedByRim is the LiftOut.Blocker where nothing stands over the pump, but rim or hatch
// are too small.
const BlockedByRim = "rim"

// compass lists the shifts that are tried: along the walls, then between.
var compass = [...]struct {
	toward string
	u      geom.Vec3
}{
	{"left", geom.Vec3{X: -1}},
	{"right", geom.Vec3{X: 1}},
	{"front", geom.Vec3{Y: -1}},
	{"back", geom.Vec3{Y: 1}},
	{"left front", geom.Vec3{X: -math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}},
	{"left back", geom.Vec3{X: -math.Sqrt2 / 2, Y: math.Sqrt2 / 2}},
	{"right front", geom.Vec3{X: math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}},
	{"right back", geom.Vec3{X: math.Sqrt2 / 2, Y: math.Sqrt2 / 2}},
}

// tryLift looks for a way out through one nut.
func (l *laying) tryLift(k int) LiftOut {
	s := l.splits[k]
	m := l.newMover(s)
	o := LiftOut{Union: l.mark(s.part)}
	if m.stuck {
		return o
	}
	o.Checked = true
	if s.lip > 0 {
		u := l.a.Places[s.part].InDir.Scale(-1)
		by, stop := m.stop(u, s.lip)
		if by < s.lip-2*contactInset {
			o.Blocker = stop
			o.Tries = []Try{{Along: u, Needed: unit.Length(s.lip), NeedKnown: true, Available: unit.Length(by), Blocker: stop}}
			return o
		}
		m.base = u.Scale(s.lip)
		o.Moves = append(o.Moves, Move{Along: u, Distance: unit.Length(s.lip)})
	}
	up := Move{Along: geom.Vec3{Z: 1}, Distance: unit.Length(m.up.Z)}
	_, over := m.rises(geom.Vec3{}, 0)
	if over == "" {
		if _, _, ok := m.rimSpan(geom.Vec3{}, 0); ok {
			o.Possible, o.Moves = true, append(o.Moves, up)
			return o
		}
		over = BlockedByRim
	}
	o.Blocker = over
	best := Try{}
	for i, c := range compass {
		if i == 4 && best.NeedKnown {
			break // along the walls will do
		}
		t := m.shift(c.u)
		if i < 4 {
			o.Tries = append(o.Tries, t)
		}
		if t.NeedKnown && t.Needed <= t.Available+dust && (!best.NeedKnown || t.Needed < best.Needed) {
			best = t
		}
	}
	if best.NeedKnown {
		o.Possible = true
		o.Moves = append(o.Moves, Move{Along: best.Along, Distance: best.Needed}, up)
		return o
	}
	if l.in.Straight {
		return o
	}
	if way, ok := m.tilts(); ok {
		o.Possible, o.Moves = true, append(o.Moves, way...)
	}
	return o
}

func (l *laying) tellLift(s split) {
	o := &l.a.LiftOut
	path, union := l.partPath(s.part), trace.Str("union", o.Union)
	switch {
	case !o.Checked:
		return // something stands in something else already: told with the clearances
	case o.manifold(s):
		args := []trace.Arg{union, trace.Num("count", unit.Ratio(len(o.Moves)), unit.KindCount)}
		if tilt, toward := o.leans(); tilt > 0 {
			args = append(args, trace.Num("tilt", tilt, unit.KindAngle), trace.Str("toward", heading(toward)))
		}
		l.note(trace.Caution, path, FindMoves, args...)
		return
	case o.Possible:
		args := []trace.Arg{union}
		for k, mv := range o.Moves[:len(o.Moves)-1] {
			if k == 0 && s.lip > 0 {
				args = append(args, tape("slide", mv.Distance))
				continue
			}
			args = append(args, tape("shift", mv.Distance), trace.Str("toward", heading(mv.Along)))
		}
		l.note(trace.Info, path, FindLifts, args...)
		return
	}
	if s.lip > 0 && len(o.Moves) == 0 {
		t := o.Tries[0]
		l.find(trace.Danger, path, FindLip, unit.Of(t.Available, unit.KindTape), unit.Of(t.Needed, unit.KindTape), l.lim.liftSrc,
			union, tape("needed", t.Needed), tape("available", t.Available))
		return
	}
	blocker := trace.Str("blocker", o.Blocker)
	if o.Blocker == BlockedByRim {
		blocker = trace.Flag("rim")
		if l.in.Vault.Opening != (Opening{}) {
			blocker = trace.Flag("opening")
		}
	}
	t, ok := o.nearest()
	if !ok {
		l.note(trace.Danger, path, FindBlocked, union, blocker)
		return
	}
	l.find(trace.Danger, path, FindBlocked, unit.Of(t.Available, unit.KindTape), unit.Of(t.Needed, unit.KindTape), l.lim.liftSrc,
		union, blocker, tape("needed", t.Needed), tape("available", t.Available), tape("short", t.Needed-t.Available),
		trace.Str("toward", heading(t.Along)), trace.Str("stop", t.Blocker), naming(t.Blocker))
}

// tellNut says which nut of a check valve with two is to be opened: behind the one
// towards the wall stands all that the valve holds.
func (l *laying) tellNut(s split) {
	p := &l.in.Parts[s.part]
	if !l.a.LiftOut.Possible || !p.Kind.IsCheck() || p.Reverse || len(p.Splits) < 2 {
		return
	}
	args := []trace.Arg{trace.Str("union", l.a.LiftOut.Union)}
	if s.offset > 0 {
		l.note(trace.Caution, l.partPath(s.part), FindNut, append(args, trace.Flag("far"))...)
		return
	}
	if args = append(args, trace.Flag("near")); l.a.Water.Standing > 0 {
		args = append(args, volume("standing", l.a.Water.Standing))
	}
	l.note(trace.Caution, l.partPath(s.part), FindNut, args...)
}

// manifold tells that the way out takes more than a slide off the lip, a shift and a lift.
func (o *LiftOut) manifold(s split) bool {
	n := len(o.Moves) - 1
	if n < 1 {
		return false
	}
	usual := 1
	if s.lip > 0 {
		usual = 2
	}
	for _, mv := range o.Moves[:n] {
		if mv.Turn != 0 || mv.Along.Z > 0.5 {
			return true
		}
	}
	return n > usual
}

// leans gives the most that the pump leans on its way out, and which way.
func (o *LiftOut) leans() (most unit.Angle, toward geom.Vec3) {
	sum := geom.Vec3{}
	for _, mv := range o.Moves {
		sum = sum.Add(mv.Along.Scale(float64(mv.Turn))) // all in one plane
		if a := unit.Angle(sum.Norm()); a > most+unit.Angle(dust) {
			most, toward = a, sum.Unit()
		}
	}
	return most, toward
}

// heading names a direction of the compass; "" for any other.
func heading(u geom.Vec3) string {
	for _, c := range compass {
		if c.u == u {
			return c.toward
		}
	}
	return ""
}
