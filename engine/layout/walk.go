package layout

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// clockZero gives the direction of roll 0 about a flow: straight up as far as
// it lies square to the flow, or the back wall where the flow is upright.
func clockZero(flow geom.Vec3) geom.Vec3 {
	ref := geom.Vec3{Z: 1}
	if upright(flow) {
		ref = geom.Vec3{Y: 1}
	}
	return ref.Sub(flow.Scale(ref.Dot(flow))).Unit()
}

// clockwise gives the angle from a to b about the flow, both square to it,
// clockwise looking along the flow (the right-hand turn), 0 up to a full turn.
func clockwise(flow, a, b geom.Vec3) unit.Angle {
	t := math.Atan2(a.Cross(b).Dot(flow), a.Dot(b))
	if t < -1e-9 {
		t += 2 * math.Pi
	}
	return unit.Angle(math.Max(0, t))
}

// walk places the parts from the port outwards.
//
//	centre = centre before + flow x span
//	side   = clockZero turned clockwise by the roll
//	flow'  = flow cos t + side sin t for a turn t
func (l *laying) walk() {
	l.a.Places = l.a.Places[:0]
	at, flow, leg := l.a.Port, l.a.Points, 0
	for i := range l.in.Parts {
		p := &l.in.Parts[i]
		centre := at.Add(flow.Scale(l.joints[i].span))
		side := clockZero(flow).RotateAbout(flow, p.Roll)
		turn, _ := p.Turn()
		out := flow
		switch turn {
		case 0:
		case 90 * unit.Degree:
			out = side // exactly, so that square chains close without dust
		default:
			s, c := math.Sincos(float64(turn))
			out = flow.Scale(c).Add(side.Scale(s)).Unit()
		}
		pl := Place{
			Mark: l.mark(i), CoverUp: CoverUp(l.in.Parts[i].Kind, flow),
			Part: i, Centre: centre, InDir: flow, OutDir: out, Side: side,
			Spacing: unit.Length(l.joints[i].span),
			Inlet:   centre.Sub(flow.Scale(float64(p.In.TakeOff.Length))),
			Outlet:  centre.Add(out.Scale(float64(p.Out.TakeOff.Length))),
			InFace:  centre.Sub(flow.Scale(face(p.In))),
			OutFace: centre.Add(out.Scale(face(p.Out))),
		}
		pl.Solids = l.envelope(i, pl, leg)
		l.a.Places = append(l.a.Places, pl)
		if turn != 0 {
			leg++
		}
		at, flow = centre, out
	}
}

// face gives the distance from the centre to the face that the next part can
// touch.
func face(e End) float64 {
	switch e.Kind {
	case Socket:
		return float64(e.TakeOff.Length + e.Depth.Length)
	case MaleThread:
		return float64(e.TakeOff.Length - e.Engage.Length)
	}
	return float64(e.TakeOff.Length)
}

// envelope gives the solids that enclose part i. Without its hubs there are
// none, and its clearances are not checked (a fault says so).
func (l *laying) envelope(i int, pl Place, leg int) []Solid {
	if !l.hubsOK[i] {
		return nil
	}
	p := &l.in.Parts[i]
	hub := max(p.In.Hub.Length, p.Out.Hub.Length, p.Body.Diameter.Length) / 2
	if p.Kind == Hose {
		return hoseSolids(p, pl, leg)
	}
	if pl.InDir != pl.OutDir {
		return elbowSolids(p, pl, leg, hub)
	}
	var out []Solid
	opening := 0
	add := func(a, b float64, r unit.Length) {
		if b-a <= dust {
			return
		}
		out = append(out, Solid{
			Cylinder: Cylinder{From: pl.Centre.Add(pl.InDir.Scale(a)), To: pl.Centre.Add(pl.InDir.Scale(b)), Radius: r},
			Leg:      leg, Opening: opening,
		})
	}
	from, to := -face(p.In), face(p.Out)
	if p.Kind == Bulkhead {
		to = 0 // what lies in and behind the wall is not in the vault
	}
	at := from
	upTo := func(end float64) {
		if b := p.Body; b.Length.Length > 0 {
			lo := float64(b.Offset - b.Length.Length/2)
			hi := float64(b.Offset + b.Length.Length/2)
			add(at, math.Min(end, lo), p.In.Hub.Length/2)
			add(math.Max(at, lo), math.Min(end, hi), hub)
			add(math.Max(at, hi), end, p.Out.Hub.Length/2)
		} else {
			add(at, end, hub)
		}
		at = math.Max(at, end)
	}
	cover := 0
	for _, s := range sorted(p.Splits) {
		upTo(float64(s.Offset))
		opening++
		if s.Offset < 0 {
			cover = opening
		}
	}
	upTo(to)
	if p.Body.Reach.Length > 0 {
		out = append(out, Solid{
			Cylinder: Cylinder{
				From: pl.Centre, To: pl.Centre.Add(pl.Side.Scale(float64(p.Body.Reach.Length))),
				Radius: max(p.Body.Width.Length/2, hub/2),
			},
			Leg: -1, Opening: cover,
		})
	}
	return out
}

func sorted(s []Split) []Split {
	return slices.SortedFunc(slices.Values(s), func(a, b Split) int { return cmp.Compare(a.Offset, b.Offset) })
}

// elbowSolids draws both legs on past the centre to the mitre (r tan(turn/2)),
// which encloses every rounder corner.
func elbowSolids(p *Laid, pl Place, leg int, hub unit.Length) []Solid {
	turn, _ := p.Turn()
	past := float64(hub) * math.Tan(float64(turn)/2)
	var out []Solid
	add := func(dir geom.Vec3, a, b float64, r unit.Length, leg int) {
		if b-a > dust {
			out = append(out, Solid{Cylinder: Cylinder{From: pl.Centre.Add(dir.Scale(a)), To: pl.Centre.Add(dir.Scale(b)), Radius: r}, Leg: leg})
		}
	}
	from, to := -face(p.In), face(p.Out)
	if n := float64(p.In.Depth.Length); p.In.Kind == Spigot && n > 0 {
		add(pl.InDir, from, from+n, p.In.Hub.Length/2, leg)
		from += n
	}
	if n := float64(p.Out.Depth.Length); p.Out.Kind == Spigot && n > 0 {
		add(pl.OutDir, to-n, to, p.Out.Hub.Length/2, leg+1)
		to -= n
	}
	add(pl.InDir, math.Min(from, -past), past, hub, leg)
	add(pl.OutDir, -past, math.Max(to, past), hub, leg+1)
	return out
}

// end gives the chain's last point and direction: a bulkhead fitting's seat, or
// the last part's outlet, from where a pipe goes on through the wall.
func (l *laying) end() (at, dir geom.Vec3, through bool) {
	last := len(l.in.Parts) - 1
	pl := l.a.Places[last]
	if l.in.Parts[last].Kind == Bulkhead {
		return pl.Centre, pl.OutDir, false
	}
	return pl.Outlet, pl.OutDir, true
}

// closure compares the chain's end with the hole. A pipe that leaves through
// the wall may be as long as it likes: its end counts only across the axis.
func (l *laying) closure() {
	if !l.holeOK {
		return
	}
	at, dir, through := l.end()
	off := at.Sub(l.a.Hole.At)
	c := &l.a.Closure
	axis := l.a.Hole.Axis
	along := off.Dot(axis)
	across := off.Sub(axis.Scale(along))
	if through {
		off, along = across, 0
	}
	c.Off, c.Along, c.Across = off, unit.Length(along), unit.Length(across.Norm())
	c.Turned = unit.Angle(math.Atan2(dir.Cross(axis).Norm(), dir.Dot(axis)))
	path := l.in.Vault.Path + "/outlet"
	limit := float64(l.lim.step)
	if n := off.Norm(); n > limit+dust {
		sev := trace.Danger
		if n <= 4*limit { // a quarter inch: what a pump's play may take up
			sev = trace.Caution
		}
		l.find(sev, path, FindClosure, tapeOf(n), tapeOf(limit), practice,
			tape("dx", unit.Length(off.X)), tape("dy", unit.Length(off.Y)), tape("dz", unit.Length(off.Z)),
			tape("along", c.Along), tape("across", c.Across))
	}
	if limit := unit.Degree; c.Turned > limit {
		l.find(trace.Danger, path, FindTurned, unit.Of(c.Turned, unit.KindAngle), unit.Of(limit, unit.KindAngle), practice,
			trace.Num("angle", c.Turned, unit.KindAngle))
	}
}
