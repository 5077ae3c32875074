package layout

import (
	"math"
	"strconv"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// dust is the length below which two positions are the same: far under what a
// saw can do, far over the rounding of the arithmetic.
const dust = 1e-7 // m

// Lay works out one chain. What it needs is in the input; what it finds comes
// back as the assembly, as findings (checks against a limit) and as faults (the
// input is wrong or contradicts itself). Faults in one place leave the rest
// computed as far as it does not depend on them: without Assembly.Laid there
// are no positions. It never panics, whatever the input.
func Lay(in Input) (Assembly, []trace.Finding, []trace.Fault) {
	l := &laying{in: in}
	l.judge()
	return l.a, l.findings, l.faults
}

func (l *laying) judge() {
	l.lim, l.a.Assumptions = l.in.Settings.resolve(l.in.Path)
	l.checkSettings()
	vaultOK := l.checkVault()
	pumpOK := l.checkPump()
	partsOK := l.checkParts()
	if vaultOK {
		l.inside = l.in.Vault.interior()
		l.placeHole()
	}
	if pumpOK {
		l.placePump()
	}
	if !pumpOK || !partsOK || l.badSettings {
		return
	}
	l.join()
	if l.broken {
		return
	}
	l.walk()
	l.close()
	l.a.Laid = true
	l.cut()
	l.closure()
	l.rolls()
	l.hoses()
	l.sureness()
	l.reductions()
	l.valves()
	l.opens()
	l.askew()
	if !vaultOK || len(l.splits) == 0 {
		l.water(0)
	}
	if !vaultOK {
		return
	}
	l.stack()
	l.clearances()
	l.room()
	l.handRoom()
	l.liftOut()
}

// laying is the work on one chain.
type laying struct {
	in       Input
	lim      limits
	inside   interior
	a        Assembly
	findings []trace.Finding
	faults   []trace.Fault

	holeOK      bool
	badSettings bool
	broken      bool // two ends that cannot go together: no positions
	hubsOK      []bool
	joints      []joint // joints[i] is before part i
	items       []item
	splits      []split
	pump        []solid
}

func (l *laying) fault(path, code string, args ...trace.Arg) {
	l.faults = append(l.faults, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

func (l *laying) find(sev trace.Severity, path, code string, found, limit unit.Value, src trace.Source, args ...trace.Arg) {
	l.findings = append(l.findings, trace.Finding{
		Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev,
		Found: found, Limit: limit, LimitSource: src,
	})
}

// note adds a finding that has no limit.
func (l *laying) note(sev trace.Severity, path, code string, args ...trace.Arg) {
	l.find(sev, path, code, unit.Value{}, unit.Value{}, trace.Source{}, args...)
}

func (l *laying) partPath(i int) string { return l.in.Path + "/parts/" + strconv.Itoa(i) }

// joinPath is the path of the joint before part i.
func (l *laying) joinPath(i int) string {
	if i == 0 {
		return l.in.Path
	}
	return l.partPath(i - 1)
}

// mark gives a part's mark; its place in the chain where it has none.
func (l *laying) mark(i int) string {
	switch {
	case i < 0:
		return "pump"
	case i >= len(l.in.Parts):
		return "wall"
	case l.in.Parts[i].Mark != "":
		return l.in.Parts[i].Mark
	}
	return strconv.Itoa(i + 1)
}

func (l *laying) placeHole() {
	h, ok := l.in.Vault.Hole()
	if l.holeOK = ok; ok {
		l.a.Hole, l.a.Hatch = h, l.in.Vault.Opening
		if math.Abs(float64(h.Lean)) > float64(unit.Degree)/10 {
			l.find(trace.Info, l.in.Vault.Path+"/outlet", FindLean, unit.Of(h.Lean, unit.KindAngle), unit.Value{}, trace.Source{},
				trace.Num("angle", h.Lean, unit.KindAngle))
		}
		return
	}
	o := l.in.Vault.Outlet
	l.fault(l.in.Vault.Path+"/outlet", FaultHole, trace.Str("wall", string(o.Wall)), tape("along", o.Along), tape("height", o.Height))
}

func tape(name string, v unit.Length) trace.Arg { return trace.Num(name, v, unit.KindTape) }

func tapeOf(v float64) unit.Value { return unit.Of(unit.Length(v), unit.KindTape) }

// placePump turns and places the pump's body and its port.
func (l *laying) placePump() {
	p, turn, up := l.in.Pump, l.in.Pose.Turn, geom.Vec3{Z: 1}
	rot := func(v geom.Vec3) geom.Vec3 { return v.RotateAbout(up, turn) }
	for _, b := range p.Blocks {
		h := b.Size().Scale(0.5)
		l.a.Body = append(l.a.Body, Block{
			Centre: rot(b.Centre()),
			U:      rot(geom.Vec3{X: h.X}), V: rot(geom.Vec3{Y: h.Y}), W: geom.Vec3{Z: h.Z},
		})
	}
	for _, c := range p.Cylinders {
		l.a.Rounds = append(l.a.Rounds, Cylinder{From: rot(c.From), To: rot(c.To), Radius: c.Radius})
	}
	l.pump = l.pumpSolids()
	low := l.pump[0].bounds()
	for i := range l.pump[1:] {
		low = low.Join(l.pump[i+1].bounds())
	}
	by := l.in.Pose.At.Sub(low.Min)
	for i := range l.a.Body {
		l.a.Body[i].Centre = l.a.Body[i].Centre.Add(by)
	}
	for i := range l.a.Rounds {
		l.a.Rounds[i].From = l.a.Rounds[i].From.Add(by)
		l.a.Rounds[i].To = l.a.Rounds[i].To.Add(by)
	}
	l.pump = l.pumpSolids()
	l.a.Port = rot(p.Port).Add(by)
	l.a.Points = rot(p.Points).Unit()
	l.pumpFits(low)
}

func (l *laying) pumpSolids() []solid {
	out := make([]solid, 0, len(l.a.Body)+len(l.a.Rounds))
	for _, b := range l.a.Body {
		out = append(out, blockOf(b))
	}
	for _, c := range l.a.Rounds {
		out = append(out, solidOf(c))
	}
	return out
}

// pumpFits refuses a pump that no floor position would take.
func (l *laying) pumpFits(box geom.Box) {
	if l.inside.depth == 0 {
		return
	}
	size, v := box.Size(), l.in.Vault
	for _, c := range [...]struct {
		axis  string
		found float64
		limit unit.Length
	}{{"length", size.X, v.Length}, {"width", size.Y, v.width()}, {"height", size.Z, v.Depth}} {
		if c.found > float64(c.limit)+dust {
			l.fault(l.in.Pump.Path, FaultPumpLarger, trace.Str("axis", c.axis),
				tape("found", unit.Length(c.found)), tape("limit", c.limit))
		}
	}
}
