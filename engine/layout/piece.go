package layout

import (
	"math"
	"strconv"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Cut gives the length of a piece of pipe between two sockets:
//
//	exact = stop to stop - 2 x makeUp
//	cut   = exact rounded to the step, halves up
//
// but never longer than stop to stop, so that with no make-up gap the rounding
// goes down. All in metres, finite; a negative exact length comes back as it
// is. Common practice, no source (ASTM D2855 has make-up 0: the pipe is pushed
// home to the stop).
func Cut(stopToStop, makeUp, step unit.Length) (exact, cut unit.Length) {
	exact = stopToStop - 2*makeUp
	if !(step > 0) {
		return exact, exact
	}
	cut = round(exact, step)
	if cut > stopToStop+dust {
		cut -= step
	}
	return exact, cut
}

// round rounds to the step, halves up; a nanometre of dust below a half counts
// as the half.
func round(v, step unit.Length) unit.Length {
	return unit.Length(math.Floor(float64(v/step)+0.5+1e-7)) * step
}

// Closing gives the length of the closing piece from the gap between the hub
// faces measured in place: gap + socket A + socket B - 2 x makeUp. Common
// practice, no source.
func Closing(gap, socketA, socketB, makeUp unit.Length) unit.Length {
	return gap + socketA + socketB - 2*makeUp
}

// Least gives the shortest piece that keeps two hubs apart: both sockets less
// both make-up gaps. Common practice, no source.
func Least(socketA, socketB, makeUp unit.Length) unit.Length {
	return Closing(0, socketA, socketB, makeUp)
}

// cut makes the pieces, stubs and the tail from the joints.
func (l *laying) cut() {
	for i := range l.joints {
		if l.joints[i].piped {
			l.onePiece(i)
		}
	}
	if _, dir, through := l.end(); through {
		l.tail(dir)
	}
}

func (l *laying) onePiece(i int) {
	j, pl := &l.joints[i], l.a.Places[i]
	s := unit.Length(j.stops())
	makeUp := unit.Length(j.makeUp)
	exact, cut := Cut(s, makeUp, l.lim.step)
	p := Piece{
		Mark: "P" + strconv.Itoa(len(l.a.Pieces)+1), Pipe: j.pipe, After: i - 1,
		From: l.mark(i - 1), To: l.mark(i),
		StopToStop: s, FaceGap: unit.Length(j.faceGap()), Exact: exact, Cut: cut, Residual: cut - exact,
		Least:   Least(unit.Length(j.outDepth), unit.Length(j.inDepth), makeUp),
		Closing: j.closing || j.inPlace, InPlace: j.inPlace, Made: j.ready, Dir: pl.InDir,
	}
	for k, d := range [2]float64{j.outDepth, j.inDepth} {
		p.Ends[k] = PipeEnd{Socket: unit.Length(d), Gap: makeUp, Mark: unit.Length(d) - makeUp, Sure: j.sockets[k].Sure(), By: j.sockets[k].By(), Source: j.sockets[k].Source}
	}
	stop := pl.Inlet // the stop towards the wall
	p.End = stop.Sub(pl.InDir.Scale(j.makeUp))
	p.Start = stop.Sub(pl.InDir.Scale(j.stops() - j.makeUp))
	l.a.Pieces = append(l.a.Pieces, p)

	args := []trace.Arg{trace.Str("piece", p.Mark), trace.Str("from", p.From), trace.Str("to", p.To)}
	path := l.joinPath(i)
	switch {
	case j.noRoom:
		short := unit.Length(0)
		for _, w := range l.a.Closure.Worked {
			if w.After == i-1 {
				short = -w.FaceGap
			}
		}
		l.fault(path, FaultClosingShort, append(args, tape("short", short))...)
	case p.FaceGap < -dust:
		l.fault(path, FaultShort, append(args, tape("cut", p.Cut), tape("least", p.Least), tape("short", -p.FaceGap))...)
	case j.worked:
		l.note(trace.Info, path, FindWorked, append(args, tape("cut", p.Cut), tape("faceGap", p.FaceGap))...)
	}
	if j.typedSpan {
		l.note(trace.Info, path, FindTyped, append(args, tape("distance", l.typed(i)))...)
	}
	l.stub(&p)
}

func (l *laying) typed(i int) unit.Length {
	if i == 0 {
		return l.in.Start.Distance
	}
	return l.in.Parts[i-1].Next.Distance
}

// stub cuts a dry-fit stub for a short joint: the setting's length goes into
// the sockets, half at each end, and bridges the gap between the faces. Over a
// gap longer than that the piece itself is used for the trial.
func (l *laying) stub(p *Piece) {
	if p.FaceGap > l.lim.stub || l.lim.stub <= 0 || p.Made {
		return
	}
	gap := max(0, p.FaceGap)
	l.a.Stubs = append(l.a.Stubs, Stub{Piece: p.Mark, Pipe: p.Pipe, Length: round(l.lim.stub+gap, l.lim.step)})
}

// rolls marks how each elbow is turned.
func (l *laying) rolls() {
	before := -1
	for i := range l.in.Parts {
		if turn, _ := l.in.Parts[i].Turn(); turn == 0 {
			continue
		}
		pl := l.a.Places[i]
		m := RollMark{
			Part: i, Mark: l.mark(i), Upright: upright(pl.InDir), Made: l.joints[i].ready, Hose: l.in.Parts[i].Kind == Hose,
			Angle: clockwise(pl.InDir, clockZero(pl.InDir), pl.Side),
		}
		var od unit.Length
		for _, p := range l.a.Pieces {
			if p.After == i-1 {
				m.Piece, od = p.Mark, p.Pipe.OD
			}
		}
		if od == 0 {
			pipe, _ := l.in.pipeOf(l.in.Parts[i].inSize())
			od = pipe.OD
		}
		m.Arc = Arc(od, m.Angle, l.lim.step)
		m.ArcShort, m.Other = m.Arc, Arc(od, 360*unit.Degree-m.Angle, l.lim.step)
		if m.Angle > 180*unit.Degree+1e-9 {
			m.ArcShort = -m.Other
		}
		if before >= 0 {
			b := l.a.Places[before]
			back := b.InDir.Scale(-1) // from that elbow's centre, its inlet leg lies back along the flow into it
			back = back.Sub(pl.InDir.Scale(back.Dot(pl.InDir))).Unit()
			m.HasTwist, m.From = true, l.mark(before)
			m.Twist = clockwise(pl.InDir, back, pl.Side)
			m.TwistArc = Arc(od, m.Twist, l.lim.step)
		}
		before = i
		l.a.Rolls = append(l.a.Rolls, m)
	}
}

// Arc gives the length along a pipe's outside that belongs to an angle, rounded
// to the step: OD x pi x angle / 360 degrees. Plane geometry.
func Arc(od unit.Length, angle unit.Angle, step unit.Length) unit.Length {
	arc := od / 2 * unit.Length(angle)
	if !(step > 0) {
		return arc
	}
	return round(arc, step)
}

// tail makes the pipe that leaves through the wall, as far as it lies in the
// vault. Its length is the run's business.
func (l *laying) tail(dir geom.Vec3) {
	last := len(l.in.Parts) - 1
	part := &l.in.Parts[last]
	if !l.holeOK || part.Out.Kind != Socket {
		return
	}
	pipe, ok := l.in.pipeOf(part.outSize())
	path := l.partPath(last)
	if !ok {
		l.fault(path, FaultPipe, trace.Str("from", l.mark(last)), trace.Str("to", "wall"), trace.Str("size", part.outSize()))
		return
	}
	stop := l.a.Places[last].Outlet
	inside := l.a.Hole.At.Sub(stop).Dot(l.a.Hole.Axis)
	makeUp := l.lim.makeUp
	depth := part.Out.Depth
	t := Piece{
		Mark: "T", Pipe: pipe, After: last, From: l.mark(last), To: "wall",
		StopToStop: unit.Length(inside), FaceGap: unit.Length(inside) - depth.Length,
		Start: stop.Add(dir.Scale(float64(makeUp))), End: stop.Add(dir.Scale(inside)), Dir: dir,
	}
	t.Ends[0] = PipeEnd{Socket: depth.Length, Gap: makeUp, Mark: depth.Length - makeUp, Sure: depth.Sure(), By: depth.By(), Source: depth.Source}
	l.a.Tail = &t
	l.note(trace.Info, path, FindTail, trace.Str("from", t.From), tape("inside", t.StopToStop))
}

// sureness lists the fittings whose sizes must be measured before pipe is cut,
// alike ones together.
func (l *laying) sureness() {
	type fitting struct {
		kind Kind
		size string
	}
	var order []fitting
	marks := map[fitting]string{}
	first := map[fitting]int{}
	for i := range l.in.Parts {
		p := &l.in.Parts[i]
		sure := p.In.sure()
		if p.Kind != Bulkhead {
			sure = sure && p.Out.sure()
		}
		if sure {
			continue
		}
		f := fitting{p.Kind, p.Size}
		if marks[f] == "" {
			order = append(order, f)
			marks[f], first[f] = l.mark(i), i
			continue
		}
		marks[f] += ", " + l.mark(i)
	}
	for _, f := range order {
		l.note(trace.Caution, l.partPath(first[f]), FindMeasureFirst,
			trace.Str("kind", string(f.kind)), trace.Str("size", f.size), trace.Str("parts", marks[f]))
	}
}

// reductions tells where the way for the water gets narrower along the flow.
func (l *laying) reductions() {
	for i := range l.in.Parts {
		p := &l.in.Parts[i]
		from, okFrom := l.in.pipeOf(p.inSize())
		to, okTo := l.in.pipeOf(p.outSize())
		if p.Kind != Bulkhead && okFrom && okTo && to.OD < from.OD {
			l.note(trace.Caution, l.partPath(i), FindReduces, trace.Str("part", l.mark(i)),
				trace.Str("fromSize", from.Size), trace.Str("toSize", to.Size))
		}
	}
}

// sure tells that the sizes of an end that pipe is cut by are the fitting's own.
func (e End) sure() bool {
	switch e.Kind {
	case Socket:
		return e.TakeOff.Sure() && e.Depth.Sure()
	case MaleThread:
		return e.TakeOff.Sure() && (e.Engage.Length == 0 || e.Engage.Sure())
	}
	return e.TakeOff.Sure()
}
