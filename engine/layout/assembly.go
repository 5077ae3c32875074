package layout

import (
	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Assembly is the chain as it stands: what the drawing shows, the verifier
// checks and the cut card prints.
type Assembly struct {
	Port   geom.Vec3  // centre of the pump's port, in the vault
	Points geom.Vec3  // the way it looks
	Body   []Block    // the pump, turned and placed
	Rounds []Cylinder // its round parts
	Hole   Hole
	Hatch  Opening // zero: the whole rim

	Laid bool // every part has a place; without it only the faults count

	Places []Place   // one for each part, in order
	Pieces []Piece   // the pieces of pipe, in order: the cut list
	Hoses  []HoseCut // the hoses, in order
	Tail   *Piece    // the pipe that leaves through the wall, when no bulkhead fitting ends the chain; it belongs to the run outside
	Stubs  []Stub
	Rolls  []RollMark

	Closure Closure
	Stack   Stack
	Room    Room
	Water   Water
	LiftOut LiftOut

	Assumptions []trace.Assumption
}

// Place is where a part stands.
type Place struct {
	Part            int // index in Input.Parts
	Mark            string
	CoverUp         bool // a valve that falls shut only with its cover on top
	Inlet, Outlet   geom.Vec3
	Centre          geom.Vec3
	InDir, OutDir   geom.Vec3 // of the flow, length 1
	Side            geom.Vec3 // where the roll points: an elbow's outlet, a valve's cover
	InFace, OutFace geom.Vec3 // hub faces, the mating plane of a thread, the end of a spigot
	Solids          []Solid
	Spacing         unit.Length // centre to centre from the part before (from the port's face for the first)
}

// Solid is a part of an envelope.
type Solid struct {
	Cylinder
	Leg     int // straight stretch of the chain it runs along, counted from the port; -1 for a cover that stands out
	Opening int // which of the part's pieces it is when its nuts are open, counted from the pump
}

// Piece is a piece of pipe to cut.
type Piece struct {
	Mark     string // "P1"
	Pipe     Pipe
	After    int    // index of the part before it, -1 for the port
	From, To string // marks of the parts at its ends

	StopToStop unit.Length
	FaceGap    unit.Length // between the hub faces when it is in place
	Exact      unit.Length // stop to stop less both make-up gaps
	Cut        unit.Length // Exact rounded to the step; never longer than stop to stop
	Residual   unit.Length // Cut - Exact, taken up in the gaps
	Least      unit.Length // shortest piece that keeps the hubs apart: both sockets less both gaps
	Closing    bool
	InPlace    bool       // its gap was measured in place
	Made       bool       // it is there already: nothing is to be cut
	Ends       [2]PipeEnd // towards the pump, towards the wall
	Start, End geom.Vec3  // of its axis, as cut exactly
	Dir        geom.Vec3  // of the flow
}

// TwoPipes tells that there are pieces of more than one pipe.
func (a *Assembly) TwoPipes() bool {
	for i := range a.Pieces {
		if a.Pieces[i].Pipe != a.Pieces[0].Pipe {
			return true
		}
	}
	return false
}

// PipeEnd is what to mark on one end of a piece.
type PipeEnd struct {
	Socket unit.Length // depth of the socket it goes into
	Gap    unit.Length // left between pipe and stop
	Mark   unit.Length // from the pipe's end to the insertion mark: socket less gap
	Sure   bool        // the socket was measured or stands on the maker's sheet
	By     KnownBy     // how its depth is known
	Source trace.Source
}

// Stub is an offcut that holds two fittings together for the dry fit and comes
// out again.
type Stub struct {
	Piece  string // mark of the piece it stands for
	Pipe   Pipe
	Length unit.Length
}

// RollMark tells how an elbow is turned on the pipe that enters it. The
// reference line runs along that pipe at clock 0: on top, or towards the back
// wall where the pipe is upright. Looking along the flow, the line on the
// elbow's hub that lies towards its outlet is set off by Angle from there.
// Mark pipe and hub together.
type RollMark struct {
	Part     int
	Mark     string      // of the elbow or hose
	Piece    string      // mark of the piece that enters it, "" for a spigot or a thread
	Upright  bool        // the pipe is upright: 0 is towards the back wall
	Hose     bool        // it is a hose's: marked on the hose itself
	Made     bool        // the elbow is on that pipe already: nothing is to be marked
	Angle    unit.Angle  // 0 up to a full turn, clockwise
	Arc      unit.Length // along the pipe's outside, clockwise: OD x pi x angle / 360, rounded to the step
	ArcShort unit.Length // the shorter way round, negative when that is anticlockwise
	Other    unit.Length // anticlockwise: OD x pi x (360 - angle) / 360

	// Twist is the same from the elbow before: clockwise from the side on which
	// that one's inlet leg lies to the side on which this one's outlet leg
	// lies. 0 turns back over the first leg, half a turn goes on away from it.
	HasTwist bool
	From     string // mark of the elbow before
	Twist    unit.Angle
	TwistArc unit.Length // clockwise along the pipe's outside
}

// Closure is how the chain's end meets the hole.
type Closure struct {
	Off    geom.Vec3   // end of the chain less the hole's centre, m; along the hole's axis 0 when a pipe passes through
	Along  unit.Length // of that, along the hole's axis
	Across unit.Length // of that, square to it
	Turned unit.Angle  // between the chain's last leg and the hole's axis
	Worked []Worked    // closing pieces whose length was worked out
}

// Worked is a closing piece whose length follows from the others.
type Worked struct {
	After   int         // index of the part before the piece
	FaceGap unit.Length // between the hub faces; below zero there is no room for it
}

// Stack is the error of the chain's end at the port, built up from the hole
// inwards, if no piece were measured in place.
type Stack struct {
	Worst  geom.Vec3  // all errors at their bounds and adding up, m
	Likely geom.Vec3  // root of the sum of squares, m
	Tilt   unit.Angle // of the last socket against the port, worst

	// Closing is what the closing piece itself still may be off by, once its
	// gap is measured in place: tape, saw and two seats.
	Closing unit.Length

	// Shares tells what each source makes of the likely error, the largest
	// first; together 1. What a closing piece takes up is not counted.
	Shares []Share
}

// Cause is what an error comes from.
type Cause string

// The causes.
const (
	BySaw   Cause = "saw"   // a piece's length
	ByTape  Cause = "tape"  // the measure of a piece that is glued already
	BySeat  Cause = "seat"  // how deep a part takes its pipe
	ByRoll  Cause = "roll"  // how an elbow is turned
	ByElbow Cause = "elbow" // an elbow's own angle
)

// Share is what one source makes of an error.
type Share struct {
	Cause Cause
	Mark  string // of the piece or the part
	Of    unit.Ratio
}

// Play is how far the pump must be free to move each way along an axis for the
// chain to go together, and how far it is.
type Play struct {
	Axis      string      // "length" or "width"
	Needed    unit.Length // likely; along a closing piece no more than that may be off by
	Worst     unit.Length // all errors at their bounds, nothing measured in place
	Available unit.Length // to the side with less room
}

// Room is how far the pump can be moved on the floor, or a closing piece be
// cut shorter: the play that takes up the stack.
type Room struct {
	Stands bool // the pump stands in something already: there is no room to tell

	Left, Right, Front, Back unit.Length // of the pump to the next wall or obstacle that way
	Plays                    []Play      // along length and width
	Shorter                  []Shorter
}

// Shorter is how much a closing piece can be cut shorter before the hubs meet.
type Shorter struct {
	After int
	Spare unit.Length
}

// Order is how valve and union follow each other along the flow.
type Order uint8

// The orders.
const (
	NoValve    Order = iota // no check valve: nothing stands when the pump stops
	ValveFirst              // valve on the pump's side: the column drains when the union is opened
	UnionFirst              // valve beyond the union: the column stands
	NoUnion                 // a valve, but nothing to open
	Reversed                // a valve against the flow: no water gets up
)

// Water is what stands in the pipe with the pump off, and what comes down. The
// volumes are what comes at most: each run is taken to drain to its end.
type Water struct {
	Order    Order
	Known    bool        // the bores in the vault are known
	RunKnown bool        // the runs beyond the wall and the boxes at the top are counted in
	Standing unit.Volume // held up by the valve in the pipe: it can freeze
	Released unit.Volume // comes down into the vault when the union is opened
	Returns  unit.Volume // comes down through the pump at every stop, with no valve to hold it
	Boxes    unit.Volume // of what is released or returns, out of the boxes at the top
	Between  unit.Volume // in the pipe between valve and union
}

// LiftOut is the pump's way out after its union is opened.
type LiftOut struct {
	Union    string // mark of the part that opens
	Checked  bool
	Possible bool
	Moves    []Move // in order
	Tries    []Try  // the sideways shifts looked at, when a straight lift fails
	Blocker  string // what stands over the pump: a part's mark or an obstacle's name
}

// Move is one move of the pump with what hangs on it: along a line, or a tilt.
// It is tilted towards Along, which is level, over the level line through About
// square to it: what was up then leans that way by Turn.
type Move struct {
	Along    geom.Vec3 // length 1
	Distance unit.Length
	Turn     unit.Angle // of a tilt, above zero; Distance is 0 then
	About    geom.Vec3  // of a tilt
}

// Axis is the line's direction of a tilt, by the right hand.
func (m Move) Axis() geom.Vec3 { return geom.Vec3{Z: 1}.Cross(m.Along) }

// Try is one direction in which the pump may be shifted before it is lifted.
type Try struct {
	Along     geom.Vec3
	Needed    unit.Length // shift from which the way up is free; 0 with NeedKnown false when none is
	NeedKnown bool
	Available unit.Length // shift until the pump or its plumbing meets something
	Blocker   string      // what it meets
}
