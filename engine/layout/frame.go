package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// InForce are the settings that hold: those given, and the defaults for the
// others. Lengths in metres, angles in radians.
type InForce struct {
	Step, MakeUp, ClosingMakeUp                                     unit.Length
	WallClear, PumpClear, ObstacleClear, PartClear, Hand, LiftClear unit.Length
	Saw, Tape, Seat                                                 unit.Length
	Roll, Elbow                                                     unit.Angle
}

// InForce gives the settings that hold.
func (s Settings) InForce() InForce {
	l, _ := s.resolve("")
	return InForce{
		Step: l.step, MakeUp: l.makeUp, ClosingMakeUp: l.closingMakeUp,
		WallClear: l.wall, PumpClear: l.pump, ObstacleClear: l.obstacle, PartClear: l.part, Hand: l.hand, LiftClear: l.lift,
		Saw: l.saw, Tape: l.tape, Seat: l.seat, Roll: l.roll, Elbow: l.elbow,
	}
}

// Frame is a chain as its parts, ends and rolls make it, before any distance is
// judged: what a search needs to move it about.
type Frame struct {
	Port, Points geom.Vec3
	Body         []Block
	Rounds       []Cylinder
	Places       []Place
	Links        []Link // Links[i] is before part i
}

// Link is what lies between two parts.
type Link struct {
	Piped   bool
	Pipe    Pipe
	Least   unit.Length // centre to centre with the hub faces touching; of a joint without pipe its fixed length
	Span    unit.Length // as placed
	Sockets unit.Length // depth of both, of a joint with a pipe
	Joints  int         // to cement or to screw
	Seats   int         // to cement
}

// FrameOf places a chain by its parts and distances alone. Faults are those of
// ends that do not go together and of sizes that are missing; with a fault the
// frame is empty.
func FrameOf(in Input) (Frame, []trace.Fault) {
	l := &laying{in: in}
	l.lim, _ = in.Settings.resolve(in.Path)
	if !l.checkPump() || !l.checkParts() {
		return Frame{}, l.faults
	}
	l.placePump()
	l.join()
	if l.broken || len(l.faults) > 0 {
		return Frame{}, l.faults
	}
	l.walk()
	f := Frame{Port: l.a.Port, Points: l.a.Points, Body: l.a.Body, Rounds: l.a.Rounds, Places: l.a.Places}
	for _, j := range l.joints {
		f.Links = append(f.Links, Link{
			Piped: j.piped, Pipe: j.pipe, Least: unit.Length(j.least), Span: unit.Length(j.span),
			Sockets: unit.Length(j.outDepth + j.inDepth), Joints: max(j.glued, 1), Seats: j.glued,
		})
	}
	return f, nil
}

// RollOf gives the roll of an elbow whose inlet flow runs along in and whose
// outlet lies towards side, both of length 1 and square to each other.
func RollOf(in, side geom.Vec3) unit.Angle { return clockwise(in, clockZero(in), side) }

// Plane is a flat bound of the inside of a vault: n.x <= b, n of length 1.
type Plane struct {
	Wall Wall
	N    geom.Vec3
	B    float64
}

// Cone is the wall of a round vault: |x - centre| - k z <= r in plan.
type Cone struct{ X, Y, R, K float64 }

// Inside gives the bounds of a vault's inside; round is nil where it has flat
// walls.
func (v Vault) Inside() (planes []Plane, round *Cone) { return v.interior().bounds() }

// Way gives the bounds in plan of the way out at the rim.
func (v Vault) Way() (planes []Plane, round *Cone) { return v.rim().bounds() }

func (in interior) bounds() (planes []Plane, round *Cone) {
	for _, p := range in.planes {
		planes = append(planes, Plane{p.wall, p.n, p.b})
	}
	if c := in.round; c != nil {
		round = &Cone{c.cx, c.cy, c.r, c.k}
	}
	return planes, round
}

// Envelope is a solid as the clearances are judged by.
type Envelope struct{ shape shape }

// Envelope makes one of a cylinder.
func (c Cylinder) Envelope() Envelope { return Envelope{shapeOf(c, 0, 0)} }

// Envelope makes one of a block.
func (b Block) Envelope() Envelope {
	s := blockOf(b)
	return Envelope{shape{solid: s, box: s.bounds()}}
}

// Apart gives the distance of two solids as far as it is below want, at or
// above it some bound of at least want; never more than the true distance. What
// stands in each other is 0 apart.
func (e *Envelope) Apart(o *Envelope, want float64) float64 {
	if d := apart(e.shape.box, o.shape.box); d >= want && d > 0 {
		return d
	}
	return math.Max(0, distance(&e.shape.solid, &o.shape.solid, math.Max(want, 2*sharp)))
}

// Room gives how far the solid is inside a round wall, below zero how far it
// stands out; sharp to a micrometre, never too much.
func (c *Cone) Room(e *Envelope) float64 {
	w := cone{cx: c.X, cy: c.Y, r: c.R, k: c.K}
	return w.room(e.shape.solid)
}

// Spacing gives the least distance of the centres of two parts that meet in a
// chain: with the hub faces touching, or as a spigot or a thread fixes it. ok is
// false where their ends do not go together.
func Spacing(a, b Part) (least unit.Length, ok bool) {
	l := &laying{in: Input{Parts: []Laid{{Part: a}, {Part: b}}}}
	j := l.oneJoint(1, a.Out, a.outSize(), Join{})
	return unit.Length(j.least), !l.broken
}
