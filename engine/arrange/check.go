package arrange

import (
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Faults of the search's own. Those of the vault's and the pump's sizes are
// package layout's.
const (
	// FaultNoStanding: no pump, or none in an attitude. No args.
	FaultNoStanding = "arrange.standing.none"
	// FaultNoElbow: no elbow is at hand, and no standing has the port look out through the hole. No args.
	// FaultNoPipe, FaultNoCheck, FaultNoUnion: nothing of the kind is at hand. No args.
	FaultNoElbow = "arrange.elbow.none"
	FaultNoPipe  = "arrange.pipe.none"
	FaultNoCheck = "arrange.check.none"
	FaultNoUnion = "arrange.union.none"
	// FaultNoStart: nothing at hand leads from the pump's outlet to the pipe. Args: outlet, size.
	FaultNoStart = "arrange.start.none"
	// FaultOverlap: two obstacles stand in each other. Args: name, other.
	FaultOverlap = "arrange.obstacle.overlap"
	// FaultGluedPump: parts are glued to the pump in an attitude that is not looked at. No args.
	FaultGluedPump = "arrange.glued.pump"
	// FaultGluedInto: which way the glued parts at the wall run is not told. No args.
	FaultGluedInto = "arrange.glued.into"
	// FaultGluedWall: the glued parts at the wall do not end square to it. No args.
	FaultGluedWall = "arrange.glued.wall"
	// FaultGluedClosing: the length of a glued piece is still to be worked out. No args.
	FaultGluedClosing = "arrange.glued.closing"
)

// check tells what makes a search meaningless.
func (s *search) check() []trace.Fault {
	var out []trace.Fault
	fault := func(path, code string, args ...trace.Arg) {
		out = append(out, trace.Fault{Path: path, Message: trace.Message{Code: code, Args: args}})
	}
	in := &s.in
	if _, ok := in.Vault.Hole(); !ok {
		o := in.Vault.Outlet
		fault(in.Vault.Path+"/outlet", layout.FaultHole, trace.Str("wall", string(o.Wall)),
			trace.Num("along", o.Along, unit.KindTape), trace.Num("height", o.Height, unit.KindTape))
	}
	for i, a := range in.Vault.Obstacles {
		for _, b := range in.Vault.Obstacles[:i] {
			if min(a.Box.Max.X, b.Box.Max.X)-max(a.Box.Min.X, b.Box.Min.X) > 1e-6 &&
				min(a.Box.Max.Y, b.Box.Max.Y)-max(a.Box.Min.Y, b.Box.Min.Y) > 1e-6 &&
				min(a.Box.Max.Z, b.Box.Max.Z)-max(a.Box.Min.Z, b.Box.Min.Z) > 1e-6 {
				fault(in.Vault.Path+"/obstacles", FaultOverlap, trace.Str("name", a.Name), trace.Str("other", b.Name))
			}
		}
	}
	if len(in.Standings) == 0 {
		fault(in.Path, FaultNoStanding)
	}
	if len(in.Pipes) == 0 {
		fault(in.Path, FaultNoPipe)
	}
	has := func(is func(layout.Part) bool) bool {
		for _, f := range in.Fittings {
			if f.AtHand != 0 && is(f.Part) {
				return true
			}
		}
		for _, l := range slices.Concat(in.Glued.FromPort, in.Glued.FromWall) {
			if is(l.Part) {
				return true
			}
		}
		return false
	}
	if !has(func(p layout.Part) bool { t, _ := p.Turn(); return t != 0 }) && in.Hose == nil && !s.straight() {
		fault(in.Path, FaultNoElbow)
	}
	if in.Rules.Check && !has(func(p layout.Part) bool { return p.Kind.IsCheck() }) {
		fault(in.Path, FaultNoCheck)
	}
	if in.Rules.Union && !has(func(p layout.Part) bool { return opens(&p) }) {
		fault(in.Path, FaultNoUnion)
	}
	if len(in.Standings) > 0 && len(in.Pipes) > 0 {
		some := false
		for i := range in.Standings {
			for _, k := range in.kits(in.outlet(i)) {
				some = some || len(k.starts) > 0
			}
		}
		if o := in.outlet(0); !some {
			fault(in.Path, FaultNoStart, trace.Str("outlet", o.Kind.String()), trace.Str("size", o.Size))
		}
	}
	return out
}

// straight tells that in some standing the port looks the way the pipe leaves, so
// that no elbow is needed.
func (s *search) straight() bool {
	hole, ok := s.in.Vault.Hole()
	return !ok || slices.ContainsFunc(s.in.Standings, func(st Standing) bool {
		return slices.ContainsFunc(st.turnsOf(), func(turned unit.Angle) bool {
			return alike(st.Pump.Points.RotateAbout(geom.Vec3{Z: 1}, turned).Unit(), hole.Axis)
		})
	})
}
