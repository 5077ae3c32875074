package design

import (
	"math"
	"slices"

	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// goesIn tells whether the pump in an attitude goes into the vault, its plumbing
// aside: through the rim and onto the floor, turned by an angle or, where it may
// be turned freely, either way; where it is fixed above the floor, from there. A
// round vault takes the diagonal.
func (m *model) goesIn(pump *job.Pump, t *job.Attitude, pose layout.Pose, turn unit.Angle, free bool) (trace.Finding, bool) {
	v := &m.job.Vault
	long, wide := min(v.Length.SI, v.FloorLength.Or(v.Length.SI)), min(v.Width.SI, v.FloorWidth.Or(v.Width.SI))
	s, c := math.Sincos(float64(turn))
	s, c = math.Abs(s), math.Abs(c)
	l, w := float64(t.Length.SI), float64(t.Width.SI)
	sizes := [][2]float64{{l*c + w*s, l*s + w*c}}
	if free {
		sizes = [][2]float64{{l, w}, {w, l}}
	}
	type over struct {
		axis         string
		found, limit unit.Length
	}
	worst := func(list ...over) over { // that fails by the most
		return slices.MaxFunc(list, func(a, b over) int {
			switch d := (a.found - a.limit) - (b.found - b.limit); {
			case d < 0:
				return -1
			case d > 0:
				return 1
			}
			return 0
		})
	}
	high := over{"height", t.Height.SI, v.Depth.SI}
	if up := unit.Length(pose.At.Z); up > 0 { // fixed above the floor
		high = over{"top above the floor", t.Height.SI + up, v.Depth.SI}
	}
	var least *over
	for _, size := range sizes {
		o := worst(high, over{"length", unit.Length(size[0]), long}, over{"width", unit.Length(size[1]), wide})
		if v.Shape == "round" {
			o = worst(high, over{"diagonal", unit.Length(math.Hypot(l, w)), long})
		}
		if least == nil || o.found-o.limit < least.found-least.limit {
			least = &o
		}
	}
	if least.found-least.limit <= 1e-7 {
		return trace.Finding{}, true
	}
	path := at("/pumps", m.pumpNamed(pump.Name))
	f := trace.Finding{
		Message: trace.Message{Code: FindPumpLarge, Args: []trace.Arg{
			trace.Str("name", pump.Name), trace.Str("attitude", t.Name), trace.Str("axis", least.axis),
			trace.Num("found", least.found, unit.KindTape), trace.Num("limit", least.limit, unit.KindTape),
		}},
		Path: path, Severity: trace.Caution, Found: unit.Of(least.found, unit.KindTape), Limit: unit.Of(least.limit, unit.KindTape), LimitSource: typed(v.Length.Source),
	}
	return f, false
}

// vaultSound tells what contradicts itself in the vault: a hole off its wall, an
// obstacle over a hole that is drilled.
func (m *model) vaultSound(v layout.Vault) bool {
	h, ok := v.Hole()
	if !ok {
		m.fault("/vault/outlet", layout.FaultHole, trace.Str("wall", string(v.Outlet.Wall)),
			trace.Num("along", v.Outlet.Along, unit.KindTape), trace.Num("height", v.Outlet.Height, unit.KindTape))
		return false
	}
	sound := true
	for i, o := range v.Obstacles {
		if o.Box.Contains(geom.BoxOf(h.At, h.At)) && m.job.Vault.Outlet.Undrilled == (job.Undrilled{}) {
			m.fault(at("/vault/obstacles", i), CodeObstacleHole, trace.Str("name", o.Name))
			sound = false
		}
	}
	return sound
}

// portSound tells what contradicts itself in an attitude: a port that looks into
// the pump, or lies far off it.
func (m *model) portSound(pump *job.Pump, t *job.Attitude, path string) bool {
	const (
		most = 0.9            // of the body, that a port may have before it: a handle stands higher than many an outlet
		far  = 12 * unit.Inch // no outlet sticks out so far
	)
	size := geom.Vec3{X: float64(t.Length.SI), Y: float64(t.Width.SI), Z: float64(t.Height.SI)}
	box, port := geom.BoxOf(geom.Vec3{}, size), vec(t.Port)
	args := []trace.Arg{trace.Str("name", pump.Name), trace.Str("attitude", t.Name)}
	d := way(t.Points)
	if through := math.Abs(d.Dot(size)); strictly(box, port.Add(d.Scale(most*through))) {
		m.fault(path, CodePortInto, args...)
		return false
	}
	off := geom.Vec3{
		X: math.Max(0, math.Max(-port.X, port.X-size.X)), Y: math.Max(0, math.Max(-port.Y, port.Y-size.Y)), Z: math.Max(0, math.Max(-port.Z, port.Z-size.Z)),
	}
	if d := unit.Length(off.Norm()); d > far {
		m.fault(path, CodePortOff, append(args, trace.Num("found", d, unit.KindTape))...)
		return false
	}
	return true
}

// strictly tells that a point lies inside a box, and not on its face.
func strictly(b geom.Box, p geom.Vec3) bool {
	return p.X > b.Min.X && p.Y > b.Min.Y && p.Z > b.Min.Z && p.X < b.Max.X && p.Y < b.Max.Y && p.Z < b.Max.Z
}

// socketsSound refuses own measures that cannot be of one fitting: a hub no
// wider than the pipe in it, an elbow whose turn begins inside the pipe.
func (m *model) socketsSound(pipe catalog.Pipe) bool {
	sound := true
	for i, o := range m.job.Measured {
		f, err := m.book.Fitting(o.Fitting, o.Size, m.measured)
		if err != nil {
			m.refuse(at("/measured", i), err)
			sound = false
			continue
		}
		p, err := m.pipe(job.PipeName{Kind: pipe.Kind, Size: f.Size})
		if err != nil || f.Form == catalog.FormReducer {
			continue // not of the layout's pipe
		}
		tell := func(measure string, found, limit unit.Length) {
			m.fault(at("/measured", i), CodeSocket, trace.Str("fitting", f.Name), trace.Str("size", f.Size), trace.Str("measure", measure),
				trace.Num("found", found, unit.KindTape), trace.Num("limit", limit, unit.KindTape))
			sound = false
		}
		if hub := o.Hub.SI; hub > 0 && hub <= p.OD {
			tell("hub", hub, p.OD)
		}
		// The waterway of one leg of a bend ends before that of the other begins.
		if least := p.Bore / 2 * unit.Length(math.Tan(float64(f.Turn)/2)); f.Form == catalog.FormBend && !o.ToStop.IsZero() && o.ToStop.SI < least {
			tell("toStop", o.ToStop.SI, least)
		}
	}
	return sound
}
