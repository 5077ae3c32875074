package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// askew tells how to set out by tape a pump that is turned by no whole number of
// quarters: where two corners of the box round it stand, the one nearest the front
// wall and the one nearest the left wall. They are the ends of one side.
//
//	corner = port + R(turn) (corner of the box - port, as the pump is measured)
func (l *laying) askew() {
	turn := math.Remainder(float64(l.in.Pose.Turn), 2*math.Pi)
	if math.Abs(math.Remainder(turn, math.Pi/2)) < float64(square) {
		return
	}
	box := l.in.Pump.box()
	var front, left geom.Vec3
	for i, c := range [4]geom.Vec3{box.Min, {X: box.Max.X, Y: box.Min.Y}, {X: box.Max.X, Y: box.Max.Y}, {X: box.Min.X, Y: box.Max.Y}} {
		at := l.a.Port.Add(geom.Vec3{X: c.X, Y: c.Y}.Sub(l.in.Pump.Port).RotateAbout(geom.Vec3{Z: 1}, l.in.Pose.Turn))
		if i == 0 || at.Y < front.Y {
			front = at
		}
		if i == 0 || at.X < left.X {
			left = at
		}
	}
	way := "left"
	if turn < 0 {
		way = "right"
	}
	side := math.Hypot(front.X-left.X, front.Y-left.Y)
	l.note(trace.Info, l.in.Path, FindAskew, trace.Num("turn", unit.Angle(math.Abs(turn)), unit.KindAngle), trace.Str("way", way), tapeArg("side", side),
		tapeArg("frontleft", front.X), tapeArg("frontfront", front.Y), tapeArg("leftleft", left.X), tapeArg("leftfront", left.Y))
}

// square is by how much a turn may be off a quarter and still be set out as one.
const square = 0.05 * unit.Degree

func tapeArg(name string, v float64) trace.Arg { return tape(name, unit.Length(v)) }

// box gives the box round a pump as it is measured.
func (p *Pump) box() (out geom.Box) {
	for i, b := range p.Blocks {
		if i == 0 {
			out = b
		}
		out = out.Join(b)
	}
	for i, c := range p.Cylinders {
		s := solidOf(c)
		b := s.bounds()
		if i == 0 && len(p.Blocks) == 0 {
			out = b
		}
		out = out.Join(b)
	}
	return out
}
