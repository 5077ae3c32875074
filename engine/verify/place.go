package verify

import (
	"math"
	"slices"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// stand is a part as this package places it.
type stand struct {
	centre, inlet, outlet, inFace, outFace vec
	in, out, side                          vec
	leg                                    int // its inlet lies on
}

// turnOf gives the angle by which a part turns the flow.
func turnOf(p *layout.Part) float64 {
	switch p.Kind {
	case layout.Hose:
		return float64(p.Curve.Turn)
	case layout.Elbow90, layout.Street90:
		return math.Pi / 2
	case layout.Elbow45, layout.Street45:
		return math.Pi / 4
	}
	return 0
}

func isCheck(k layout.Kind) bool { return k == layout.CheckSwing || k == layout.CheckSpring }

// tip is the distance from a part's centre to the face of one of its ends.
func tip(e *layout.End) float64 {
	f := float64(e.TakeOff.Length)
	if e.Kind == layout.Socket {
		f += float64(e.Depth.Length)
	}
	if e.Kind == layout.MaleThread {
		f -= float64(e.Engage.Length)
	}
	return f
}

// pump places the pump by its pose and holds what is stated against it.
func (v *verifier) placePump() {
	p, turn := &v.in.Pump, float64(v.in.Pose.Turn)
	for _, b := range p.Blocks {
		v.body = append(v.body, block(from(b.Min), from(b.Max)).spun(turn))
	}
	for _, c := range p.Cylinders {
		v.body = append(v.body, round(c).spun(turn))
	}
	low := vec{math.Inf(1), math.Inf(1), math.Inf(1)}
	for i := range v.body {
		s := v.body[i].span().lo
		low = vec{min(low.x, s.x), min(low.y, s.y), min(low.z, s.z)}
	}
	by := from(v.in.Pose.At).minus(low)
	for i := range v.body {
		v.body[i] = v.body[i].moved(by)
	}
	v.port, v.points = from(p.Port).spun(turn).plus(by), from(p.Points).spun(turn)
	off := max(v.port.toward(from(v.a.Port)), v.points.toward(from(v.a.Points)))
	if len(v.a.Body) != len(p.Blocks) || len(v.a.Rounds) != len(p.Cylinders) || len(v.body) == 0 {
		off = math.Inf(1)
	} else {
		for i := range v.body {
			off = max(off, v.stated(i).differs(&v.body[i]))
		}
	}
	v.atMost(CheckPump, v.in.Path, off, 0)
}

// stated gives the i-th body of the pump as the assembly has it.
func (v *verifier) stated(i int) *body {
	if i >= len(v.a.Body) {
		b := round(v.a.Rounds[i-len(v.a.Body)])
		return &b
	}
	s := &v.a.Body[i]
	b := body{c: from(s.Centre)}
	for _, h := range [3]vec{from(s.U), from(s.V), from(s.W)} {
		b.stretch(h)
	}
	return &b
}

// differs gives how far two bodies differ in reach, over 13 directions and their opposites.
func (b *body) differs(o *body) float64 {
	off := 0.0
	for _, n := range compass {
		off = max(off, math.Abs(b.most(n)-o.most(n)), math.Abs(b.most(n.times(-1))-o.most(n.times(-1))))
	}
	return off
}

var compass = func() (out []vec) {
	for i := 14; i < 27; i++ {
		n, _ := vec{float64(i/9 - 1), float64(i/3%3 - 1), float64(i%3 - 1)}.one()
		out = append(out, n)
	}
	return out
}()

// placeHole works out the hole's centre and axis.
func (v *verifier) placeHole() {
	o, w := v.in.Vault.Outlet, &v.in.Vault
	l, d := float64(w.Length), float64(w.Depth)
	wide := float64(w.Width)
	if w.Round {
		wide = l
	}
	along, up := float64(o.Along), float64(o.Height)
	ix := lean(l, float64(w.FloorLength), d) * (d - up)
	iy := lean(wide, float64(w.FloorWidth), d) * (d - up)
	if w.Round {
		iy = ix
	}
	h, axis := vec{z: up}, vec{}
	inX := along >= ix && along <= l-ix
	inY := along >= iy && along <= wide-iy
	on := up >= 0 && up <= d
	switch o.Wall {
	case layout.Left:
		h.x, h.y, axis.x, on = ix, along, -1, on && inY
	case layout.Right:
		h.x, h.y, axis.x, on = l-ix, along, 1, on && inY
	case layout.Front:
		h.x, h.y, axis.y, on = along, iy, -1, on && inX
	case layout.Back:
		h.x, h.y, axis.y, on = along, wide-iy, 1, on && inX
	default:
		on = false
	}
	if w.Round && on {
		c := vec{l / 2, l / 2, up}
		off := along - l/2
		out := math.Sqrt((l/2-ix)*(l/2-ix) - off*off) // NaN off the wall
		h = c.at(axis, out).at(vec{math.Abs(axis.y), math.Abs(axis.x), 0}, off)
		axis, on = h.minus(c).one()
	}
	v.hole, v.axis, v.open = h, axis, on
	off := max(h.toward(from(v.a.Hole.At)), axis.toward(from(v.a.Hole.Axis)))
	if !on {
		off = math.Inf(1)
	}
	v.atMost(CheckHole, w.Path+"/outlet", off, 0)
}

// walk places the parts one after the other, each by the piece before it as the
// cut list has it, and holds the places stated against that.
func (v *verifier) walk() {
	at, flow, leg := v.port, v.points, 0
	for i := range v.in.Parts {
		p := &v.in.Parts[i]
		s := stand{in: flow, leg: leg, side: clock(flow, float64(p.Roll)), out: flow}
		if t := turnOf(&p.Part); t != 0 {
			s.out = flow.times(math.Cos(t)).at(s.side, math.Sin(t))
			leg++
		}
		s.centre = at.at(flow, v.joints[i].length)
		s.inlet = s.centre.at(flow, -float64(p.In.TakeOff.Length))
		s.outlet = s.centre.at(s.out, float64(p.Out.TakeOff.Length))
		s.inFace = s.centre.at(flow, -tip(&p.In))
		s.outFace = s.centre.at(s.out, tip(&p.Out))
		v.stands = append(v.stands, s)
		at, flow = s.centre, s.out

		pl := &v.a.Places[i]
		part, path := trace.Str("part", v.mark(i)), v.partPath(i)
		v.atMost(CheckPlace, path, max(
			s.centre.toward(from(pl.Centre)), s.inlet.toward(from(pl.Inlet)), s.outlet.toward(from(pl.Outlet)),
			s.inFace.toward(from(pl.InFace)), s.outFace.toward(from(pl.OutFace)),
			math.Abs(v.joints[i].length-float64(pl.Spacing)),
		), 0, part)
		turned := max(between(s.in, from(pl.InDir)), between(s.out, from(pl.OutDir)), between(s.side, from(pl.Side)))
		if pl.Part != i || pl.Mark != v.mark(i) {
			turned = math.Inf(1)
		}
		v.angleAtMost(CheckTurned, path, turned, 0, part)
		if isCheck(p.Kind) || p.Kind == layout.BallValve || p.Kind == layout.GateValve {
			v.coverStated(i, pl, s)
		}
	}
	v.last = leg
}

// coverStated holds the word "cover on top" against the flow.
func (v *verifier) coverStated(i int, pl *layout.Place, s stand) {
	if pl.CoverUp != (v.in.Parts[i].Kind == layout.CheckSwing && s.in.z < half) {
		v.holds(CheckCover, v.partPath(i), false, trace.Str("part", v.mark(i)))
	}
}

// end gives the chain's last point and direction, and whether a pipe goes on
// from there through the wall.
func (v *verifier) end() (at, dir vec, through bool) {
	i := len(v.in.Parts) - 1
	s := &v.stands[i]
	if v.in.Parts[i].Kind == layout.Bulkhead {
		return s.centre, s.out, false
	}
	return s.outlet, s.out, true
}

// off gives how far a last point is from the hole.
func (v *verifier) off(at vec, through bool) float64 {
	d := at.minus(v.hole)
	if through {
		d = d.flat(v.axis)
	}
	return d.length()
}

// closure holds the chain's end against the hole: by the lengths worked out, and
// once more with every piece as cut and pushed in to its marks.
func (v *verifier) closure() {
	path := v.in.Vault.Path + "/outlet"
	at, dir, through := v.end()
	v.tail(at, dir, through)
	if !v.open {
		return // there is no hole to end in: told with the hole
	}
	v.atMost(CheckClosure, path, v.off(at, through), v.lim.step)
	v.angleAtMost(CheckAxis, path, between(dir, v.axis), squareTo)
	cut := at
	for i := range v.joints {
		if j := &v.joints[i]; j.piece != nil {
			cut = cut.at(v.stands[i].in, j.asCut-j.stops)
		}
	}
	v.atMost(CheckAsCut, path, v.off(cut, through), playIn*v.lim.step)
}

// tail holds the pipe that leaves through the wall against the chain's end.
func (v *verifier) tail(at, dir vec, through bool) {
	last := len(v.in.Parts) - 1
	p := &v.in.Parts[last]
	t := v.a.Tail
	want := v.open && through && p.Out.Kind == layout.Socket
	if want != (t != nil) {
		v.holds(CheckWhole, v.partPath(last), false, trace.Str("what", "pieces"))
		return
	}
	if !want {
		return
	}
	path, inside := v.partPath(last), v.hole.minus(at).along(v.axis)
	v.atMost(CheckPiece, path, max(
		math.Abs(inside-float64(t.StopToStop)), math.Abs(inside-float64(p.Out.Depth.Length)-float64(t.FaceGap)),
		from(t.Start).toward(at.at(dir, v.lim.makeUp)), from(t.End).toward(at.at(dir, inside)), dir.toward(from(t.Dir)),
	), 0, trace.Str("piece", t.Mark))
	v.equals(CheckMark, path, float64(t.Ends[0].Mark), float64(p.Out.Depth.Length)-v.lim.makeUp, 0, trace.Str("piece", t.Mark), trace.Str("to", v.mark(last)))
	if !slices.Contains(v.in.Pipes, t.Pipe) {
		v.holds(CheckPiece, path, false, trace.Str("piece", t.Mark))
	}
}
