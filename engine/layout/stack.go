package layout

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// stack adds up what saw, seats, rolls and elbows may do to the place of the
// port, with the chain built from the hole inwards and nothing measured in
// place. One pipe moves what lies on the pump's side of it along itself by the
// saw's error, one socket by the seat's; a piece that is glued already is out by
// what the tape over it may be, and by no more: cut and seats are done. An elbow turned by an error e about
// its leg towards the wall moves the port by e (axis x lever), its own angle
// being out does the same about the normal of its plane.
//
// Worst adds absolute values, Likely takes the root of the sum of squares
// (independent errors, none of them systematic: not checked).
func (l *laying) stack() {
	causes, tilts := l.errors()
	errs := make([]geom.Vec3, 0, len(causes))
	st := &l.a.Stack
	var sum geom.Vec3
	for _, c := range causes {
		e := c.move
		errs = append(errs, e)
		st.Worst = st.Worst.Add(geom.Vec3{X: math.Abs(e.X), Y: math.Abs(e.Y), Z: math.Abs(e.Z)})
		sum = sum.Add(geom.Vec3{X: e.X * e.X, Y: e.Y * e.Y, Z: e.Z * e.Z})
	}
	st.Likely = geom.Vec3{X: math.Sqrt(sum.X), Y: math.Sqrt(sum.Y), Z: math.Sqrt(sum.Z)}
	var tilt geom.Vec3
	for _, t := range tilts {
		tilt = tilt.Add(geom.Vec3{X: math.Abs(t.X), Y: math.Abs(t.Y), Z: math.Abs(t.Z)})
	}
	st.Tilt = unit.Angle(tilt.Norm())
	st.Closing = l.lim.tape + l.lim.saw + 2*l.lim.seat
	st.Shares = l.shares(causes)

	for i := range l.joints {
		j := &l.joints[i]
		if !j.closing {
			continue
		}
		spare := unit.Length(math.Max(0, j.faceGap()))
		l.a.Room.Shorter = append(l.a.Room.Shorter, Shorter{After: i - 1, Spare: spare})
		need := 0.0
		for _, e := range errs {
			d := e.Dot(l.a.Places[i].InDir)
			need += d * d
		}
		need = math.Sqrt(need)
		if !j.noRoom && float64(spare) < need-dust {
			name := l.pieceAfter(i - 1)
			l.find(trace.Caution, l.joinPath(i), FindClosingSpare, unit.Of(spare, unit.KindTape), tapeOf(need), byHabit,
				trace.Str("piece", name), tape("found", spare), tape("limit", unit.Length(need)))
		}
	}
}

// cause is one source of error with the move of the port at its bound.
type cause struct {
	kind Cause
	mark string
	move geom.Vec3
}

// errors lists the moves of the port and the turns of its direction, one for
// each source of error at its bound.
func (l *laying) errors() (moves []cause, tilts []geom.Vec3) {
	for i := range l.joints {
		j, dir := &l.joints[i], l.a.Places[i].InDir
		if j.piped && j.ready { // its cut and its seats are in what was measured
			moves = append(moves, cause{ByTape, l.pieceAfter(i - 1), dir.Scale(float64(l.lim.tape))})
			continue
		}
		if j.piped {
			moves = append(moves, cause{BySaw, l.pieceAfter(i - 1), dir.Scale(float64(l.lim.saw))})
		}
		for k := range j.glued {
			mark := l.mark(i)
			if k == 0 && j.glued > 1 {
				mark = l.mark(i - 1)
			}
			moves = append(moves, cause{BySeat, mark, dir.Scale(float64(l.lim.seat))})
		}
	}
	for i := range l.in.Parts {
		pl := l.a.Places[i]
		if pl.InDir == pl.OutDir {
			continue
		}
		lever := l.a.Port.Sub(pl.Centre)
		for _, e := range [2]struct {
			kind  Cause
			axis  geom.Vec3
			angle unit.Angle
		}{{ByRoll, pl.OutDir, l.lim.roll}, {ByElbow, pl.InDir.Cross(pl.OutDir).Unit(), l.lim.elbow}} {
			moves = append(moves, cause{e.kind, l.mark(i), e.axis.Cross(lever).Scale(float64(e.angle))})
			tilts = append(tilts, e.axis.Cross(l.a.Points).Scale(float64(e.angle)))
		}
	}
	return moves, tilts
}

// shares gives what each source makes of the likely error, the largest first:
// its part of the sum of squares, what lies along a closing piece left out,
// because that is measured in place. Sources of one kind at one mark count
// together. None where nothing is left.
//
//	share = sum |m - its part along the closing pieces|² of one source / that of all
func (l *laying) shares(causes []cause) []Share {
	var basis orthogonal
	for i := range l.joints {
		if j := &l.joints[i]; (j.closing || j.inPlace) && !j.noRoom {
			basis.add(l.a.Places[i].InDir)
		}
	}
	var out []Share
	sum := 0.0
	for _, c := range causes {
		e := c.move
		for _, q := range basis.q {
			e = e.Sub(q.Scale(e.Dot(q)))
		}
		square := e.Dot(e)
		sum += square
		i := slices.IndexFunc(out, func(s Share) bool { return s.Cause == c.kind && s.Mark == c.mark })
		if i < 0 {
			i, out = len(out), append(out, Share{Cause: c.kind, Mark: c.mark})
		}
		out[i].Of += unit.Ratio(square)
	}
	if !(sum > dust*dust) {
		return nil
	}
	for i := range out {
		out[i].Of /= unit.Ratio(sum)
	}
	slices.SortStableFunc(out, func(a, b Share) int { return cmp.Compare(b.Of, a.Of) })
	return out
}

// room works out how far the pump can be moved on the floor, and holds that
// against the stack. A closing piece measured in place takes up what lies
// along it; what is left along it is its own error.
func (l *laying) room() {
	m := l.pumpMover()
	if m.prepare(0); m.stuck {
		l.a.Room.Stands = true
		return // it stands in something already: told with the clearances
	}
	r := &l.a.Room
	for _, c := range [...]struct {
		u  geom.Vec3
		by *unit.Length
	}{{geom.Vec3{X: -1}, &r.Left}, {geom.Vec3{X: 1}, &r.Right}, {geom.Vec3{Y: -1}, &r.Front}, {geom.Vec3{Y: 1}, &r.Back}} {
		by, _ := m.stop(c.u, faraway)
		*c.by = unit.Length(by)
	}
	along := func(axis geom.Vec3) bool {
		for i := range l.joints {
			if j := &l.joints[i]; (j.closing || j.inPlace) && !j.noRoom && math.Abs(l.a.Places[i].InDir.Dot(axis)) > 0.7 {
				return true
			}
		}
		return false
	}
	st := &l.a.Stack
	for _, c := range [...]struct {
		axis          string
		u             geom.Vec3
		room          unit.Length
		likely, worst float64
	}{
		{"length", geom.Vec3{X: 1}, min(r.Left, r.Right), st.Likely.X, st.Worst.X},
		{"width", geom.Vec3{Y: 1}, min(r.Front, r.Back), st.Likely.Y, st.Worst.Y},
	} {
		need := c.likely
		if along(c.u) {
			need = math.Min(need, float64(st.Closing))
		}
		r.Plays = append(r.Plays, Play{Axis: c.axis, Needed: unit.Length(need), Worst: unit.Length(c.worst), Available: c.room})
		if float64(c.room) < need-dust {
			l.find(trace.Caution, l.in.Path, FindPlay, unit.Of(c.room, unit.KindTape), tapeOf(need), byHabit,
				trace.Str("axis", c.axis), tape("found", c.room), tape("limit", unit.Length(need)), tape("worst", unit.Length(c.worst)))
		}
	}
	if up := (geom.Vec3{Z: 1}); st.Likely.Z > float64(l.lim.step)+dust && !along(up) {
		l.find(trace.Info, l.in.Path, FindUpright, tapeOf(st.Likely.Z), unit.Of(l.lim.step, unit.KindTape), byHabit,
			tape("found", unit.Length(st.Likely.Z)), tape("worst", unit.Length(st.Worst.Z)))
	}
}
