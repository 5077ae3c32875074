package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The largest sizes taken for real: a vault, pump or pipe of more than 20 m is
// a slip of the pen. The job document draws the same line.
const (
	largest     unit.Length = 20
	largestPart unit.Length = 2
)

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// ranged reports a length outside low..high.
func (l *laying) ranged(path, name string, v, low, high unit.Length) bool {
	if !finite(float64(v)) {
		l.fault(path, FaultFinite, trace.Str("name", name))
		return false
	}
	limit := low
	if v > high {
		limit = high
	}
	if v < low || v > high {
		l.fault(path, FaultRange, trace.Str("name", name), tape("found", v), tape("limit", limit))
		return false
	}
	return true
}

func (l *laying) checkSettings() {
	s, lim := l.in.Settings, l.lim
	ok := true
	for _, c := range [...]struct {
		name    string
		v, high unit.Length
	}{
		{"makeUp", lim.makeUp, 0.01},
		{"closingMakeUp", lim.closingMakeUp, 0.01},
		{"stub", lim.stub, 1},
		{"wallClear", lim.wall, 1},
		{"pumpClear", lim.pump, 1},
		{"obstacleClear", lim.obstacle, 1},
		{"partClear", lim.part, 1},
		{"hand", lim.hand, 1},
		{"liftClear", lim.lift, 1},
		{"saw", lim.saw, 0.05},
		{"tape", lim.tape, 0.05},
		{"seat", lim.seat, 0.05},
	} {
		ok = l.ranged(l.in.Path, c.name, c.v, 0, c.high) && ok
	}
	for _, c := range [...]struct {
		name string
		v    unit.Angle
	}{{"roll", lim.roll}, {"elbow", lim.elbow}} {
		if !finite(float64(c.v)) {
			l.fault(l.in.Path, FaultFinite, trace.Str("name", c.name))
			ok = false
		} else if c.v < 0 || c.v > 45*unit.Degree {
			l.fault(l.in.Path, FaultRange, trace.Str("name", c.name),
				trace.Num("found", c.v, unit.KindAngle), trace.Num("limit", 45*unit.Degree, unit.KindAngle))
			ok = false
		}
	}
	if !s.Units.Valid() {
		l.fault(l.in.Path, FaultFinite, trace.Str("name", "units"))
		ok = false
	}
	if b := &l.in.Beyond; !finite(float64(b.Volume.Value), float64(b.First.Volume), float64(b.First.Length), float64(b.Boxes)) ||
		b.Volume.Value < 0 || b.First.Volume < 0 || b.First.Length < 0 || b.Boxes < 0 {
		l.fault(l.in.Path, FaultFinite, trace.Str("name", "volume beyond the wall"))
		*b = Beyond{Frost: b.Frost}
	}
	l.badSettings = !ok
}

func (l *laying) checkVault() bool {
	v, ok := l.in.Vault, true
	for _, c := range [...]struct {
		name string
		v    unit.Length
		must bool
	}{
		{"length", v.Length, true},
		{"width", v.width(), true},
		{"depth", v.Depth, true},
		{"floorLength", v.FloorLength, false},
		{"floorWidth", v.FloorWidth, false},
	} {
		switch {
		case c.v == 0 && c.must:
			l.fault(v.Path, FaultNoVault, trace.Str("measure", c.name))
			ok = false
		case c.v != 0:
			ok = l.ranged(v.Path, c.name, c.v, 0.01, largest) && ok
		}
	}
	for _, o := range v.Obstacles {
		s := o.Box.Size()
		if !o.Box.Min.IsFinite() || !o.Box.Max.IsFinite() {
			l.fault(v.Path, FaultFinite, trace.Str("name", o.Name))
			ok = false
		} else if s.X < 0 || s.Y < 0 || s.Z < 0 {
			l.fault(v.Path, FaultRange, trace.Str("name", o.Name),
				tape("found", unit.Length(min(s.X, s.Y, s.Z))), tape("limit", 0))
			ok = false
		}
	}
	o := v.Opening
	if !finite(float64(o.FromX), float64(o.ToX), float64(o.FromY), float64(o.ToY)) {
		l.fault(v.Path, FaultFinite, trace.Str("name", "opening"))
		ok = false
	} else if o != (Opening{}) && (o.ToX <= o.FromX || o.ToY <= o.FromY) {
		l.fault(v.Path, FaultRange, trace.Str("name", "opening"),
			tape("found", min(o.ToX-o.FromX, o.ToY-o.FromY)), tape("limit", 0))
		ok = false
	}
	return ok
}

func (l *laying) checkPump() bool {
	p, ok := l.in.Pump, true
	if len(p.Blocks)+len(p.Cylinders) == 0 {
		l.fault(p.Path, FaultNoPump, trace.Str("measure", "body"))
		ok = false
	}
	for _, b := range p.Blocks {
		if !b.Min.IsFinite() || !b.Max.IsFinite() {
			l.fault(p.Path, FaultFinite, trace.Str("name", "body"))
			ok = false
			continue
		}
		s := b.Size()
		for _, c := range [...]struct {
			name string
			v    float64
		}{{"length", s.X}, {"width", s.Y}, {"height", s.Z}} {
			ok = l.ranged(p.Path, c.name, unit.Length(c.v), 0.001, largest) && ok
		}
	}
	for _, c := range p.Cylinders {
		if !c.From.IsFinite() || !c.To.IsFinite() {
			l.fault(p.Path, FaultFinite, trace.Str("name", "body"))
			ok = false
			continue
		}
		ok = l.ranged(p.Path, "radius", c.Radius, 0.001, largest) && ok
	}
	switch n := p.Points.Norm(); {
	case !p.Port.IsFinite() || !p.Points.IsFinite():
		l.fault(p.Path, FaultFinite, trace.Str("name", "port"))
		ok = false
	case math.Abs(n-1) > 1e-6:
		l.fault(p.Path, FaultNoPump, trace.Str("measure", "port direction"))
		ok = false
	}
	if !l.in.Pose.At.IsFinite() || !finite(float64(l.in.Pose.Turn)) {
		l.fault(l.in.Path, FaultFinite, trace.Str("name", "place of the pump"))
		ok = false
	}
	if !p.Outlet.TakeOff.Missing() {
		ok = l.ranged(p.Path, "port take-off", p.Outlet.TakeOff.Length, -largestPart, largestPart) && ok
	}
	if p.Outlet.Kind == Socket {
		ok = l.ranged(p.Path, "port socket", p.Outlet.Depth.Length, 0.001, largestPart) && ok
	}
	return ok
}

func (l *laying) checkParts() bool {
	ok := true
	if len(l.in.Parts) == 0 {
		l.fault(l.in.Path, FaultNoParts)
		return false
	}
	l.hubsOK = make([]bool, len(l.in.Parts))
	for i := range l.in.Parts {
		ok = l.checkPart(i) && ok
	}
	for _, p := range l.in.Pipes {
		ok = l.ranged(l.in.Path, "pipe outside diameter", p.OD, 0.001, largestPart) && ok
		ok = l.ranged(l.in.Path, "pipe bore", p.Bore, 0, max(0, p.OD)) && ok
	}
	return l.checkJoin(l.in.Path, l.in.Start) && ok
}

func (l *laying) checkPart(i int) bool {
	p, path, ok := l.in.Parts[i], l.partPath(i), true
	if _, known := p.Turn(); !known {
		l.fault(path, FaultKind, trace.Str("part", l.mark(i)), trace.Str("kind", string(p.Kind)))
		ok = false
	}
	if !finite(float64(p.Roll)) {
		l.fault(path, FaultFinite, trace.Str("name", "roll"))
		ok = false
	}
	if p.Kind == Bulkhead && i != len(l.in.Parts)-1 {
		l.fault(path, FaultBulkhead, trace.Str("part", l.mark(i)))
		ok = false
	}
	l.hubsOK[i] = true
	ok = l.checkHose(i) && ok
	ok = l.checkEnd(i, "in", p.In) && ok
	if p.Kind != Bulkhead {
		ok = l.checkEnd(i, "out", p.Out) && ok
	}
	for _, m := range [...]struct {
		name string
		m    Measure
	}{{"body", p.Body.Diameter}, {"body length", p.Body.Length}, {"cover", p.Body.Reach}, {"cover width", p.Body.Width}} {
		ok = l.ranged(path, m.name, m.m.Length, 0, largestPart) && ok
	}
	ok = l.ranged(path, "body offset", p.Body.Offset, -largestPart, largestPart) && ok
	for _, s := range p.Splits {
		ok = l.ranged(path, "union face", s.Offset, -largestPart, largestPart) && ok
		ok = l.ranged(path, "union lip", s.Lip, 0, largestPart) && ok
	}
	return l.checkJoin(path, p.Next) && ok
}

// checkEnd reports missing and absurd sizes of an end. A missing hub voids the
// part's clearances only; a missing take-off or socket voids all positions.
func (l *laying) checkEnd(i int, side string, e End) bool {
	path, ok := l.partPath(i), true
	missing := func(what string) {
		l.fault(path, FaultMissing, trace.Str("part", l.mark(i)), trace.Str("measure", what+" "+side))
	}
	if e.TakeOff.Missing() {
		missing("take-off")
		ok = false
	}
	ok = l.ranged(path, "take-off "+side, e.TakeOff.Length, -largestPart, largestPart) && ok
	if e.Kind == Socket && e.Depth.Length == 0 {
		missing("socket")
		ok = false
	}
	ok = l.ranged(path, "socket "+side, e.Depth.Length, 0, largestPart) && ok
	ok = l.ranged(path, "make-up "+side, e.Engage.Length, 0, largestPart) && ok
	if e.Hub.Length == 0 {
		missing("hub")
		l.hubsOK[i] = false
	}
	return l.ranged(path, "hub "+side, e.Hub.Length, 0, largestPart) && ok
}

func (l *laying) checkJoin(path string, j Join) bool {
	ok := l.ranged(path, "next", j.Distance, -largest, largest)
	if j.Measured.Given {
		ok = l.ranged(path, "gap", j.Measured.Value, -largestPart, largest) && ok
	}
	if j.By > PipeLength {
		l.fault(path, FaultFinite, trace.Str("name", "nextBy"))
		ok = false
	}
	return ok
}

// upright tells that a direction stands upright within a hundredth of a
// degree, nearer than any fitting holds its angle: its clock then starts from
// the back wall.
func upright(d geom.Vec3) bool { return math.Hypot(d.X, d.Y) < 2e-4 }
