package glue

import (
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Input is a laid chain and the conditions it is glued in.
type Input struct {
	Parts       []layout.Laid    // as they were given to layout.Lay; a Join that is Made is told in no step
	PortMade    bool             // so is the joint at the pump's port
	Assembly    layout.Assembly  // what came back
	Book        *catalog.Book    //
	Temperature unit.Temperature // of pipe and air
	Damp        bool             // relative humidity above 60 percent
	Pressure    unit.Pressure    // of the water when it runs; >= 0
	Frost       bool             // pipe can freeze on this site
	Unfit       bool             // the chain cannot be built as it is laid: its steps are held back
	Path        string           // of the assembly in the job: "/assembly"
}

// Kind is what makes a joint tight.
type Kind string

// The kinds.
const (
	Cement Kind = "cement" // a pipe or spigot in a socket
	Thread Kind = "thread"
	Face   Kind = "face" // of a union: ring, by hand, dry
	Seal   Kind = "seal" // a bulkhead fitting in its wall: gasket, dry
)

// Where is where a step is done.
type Where string

// The places.
const (
	Bench Where = "bench" // outside the vault, in the open air
	Vault Where = "vault"
)

// Tilt is how the work is held while a joint sets.
type Tilt string

// The tilts.
const (
	TiltNone Tilt = ""
	// TiltBelow: the joint below the valve, the valve's socket looking down, so
	// that nothing runs into the valve.
	TiltBelow Tilt = "joint below the valve"
)

// Pump and Wall stand for a part at the ends of the chain.
const (
	Pump = -1
	Wall = -2
)

// End is one end of one part.
type End struct {
	Part    int // index in Input.Parts, or Pump or Wall
	Mark    string
	Out     bool // the end towards the wall
	Opening int  // which of the part's pieces it belongs to when its nuts are open, from the pump
}

// Joint is one joint of the chain; a piece of pipe has one at each end.
type Joint struct {
	Number int // along the flow, from 1
	Kind   Kind
	Size   string // nominal
	Ends   []End  // one for a pipe in a socket, two where parts meet
	Piece  string // mark of the pipe, if there is one

	Insertion layout.PipeEnd // of the pipe, if there is one
	Closing   bool           // of a piece that is measured in place
	Made      bool           // it is made already: no step, no time and no cement is told for it
	Valve     bool           // cement can run into a valve here
	Check     bool           // and that valve is a check valve
	Thread    *Threading
	Times     Times // of cement

	sub [2]int // sub-assembly on the pump's side and on the wall's side
}

// Threading is how a thread is made up.
type Threading struct {
	Family    layout.Thread
	Inward    bool // the male thread is on the part towards the wall and goes in against the flow
	Tape      bool // no tape on a parallel thread, which seals on its ring
	Clockwise bool // tape goes on clockwise seen facing the end of the male thread

	Wraps     catalog.Span[float64] // three or four (common practice, no source)
	Published catalog.Span[float64] // wraps as published pages have them
	Turns     catalog.Span[float64] // past hand-tight; the part's sheet decides
}

// Timed is one manual's time for a joint.
type Timed = catalog.Timed

// Times are what one cemented joint asks for. The can decides.
type Times struct {
	Hold       unit.Duration // held together after it is pushed home; the longest that its source names for the size
	HoldSource trace.Source

	Twist       unit.Angle // by which it is turned while it is pushed home, ending line on line; 0: pushed straight
	TwistSource trace.Source

	Sets      []Timed       // each manual, in dry weather
	Set       unit.Duration // the slower of them, in this weather: before it is handled
	SetSource trace.Source

	Cures      []Timed
	Cure       unit.Duration // the slower, in this weather: before pressure
	CureSource trace.Source
}

// Step is one thing to do.
type Step struct {
	trace.Message
	Number   int
	Joints   []int    // numbers of the joints made in this step
	Parts    []string // marks of the parts and pieces in hand
	Where    Where
	Tilt     Tilt
	Hold     unit.Duration
	Set      unit.Duration // wait before this joint is moved
	Source   trace.Source  // of Set, or of the practice
	NoReturn bool          // it cannot be undone but with a saw
	Cautions []string      // codes
}

// Plan is the order and what it takes.
type Plan struct {
	Steps    []Step
	Withheld bool    // the chain cannot be built as it is laid: no steps are given
	Joints   []Joint // along the flow

	Cement, Primer unit.Volume   // what the joints use; nothing spilt
	Handle         unit.Duration // longest set time
	Ready          unit.Duration // from the last joint to pressure: longest cure
	Damp           bool          // set and cure are longer than the manuals' because of it
	Known          bool          // every time and quantity was found

	Figures     []trace.Figure
	Assumptions []trace.Assumption
}

var practice = trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice}
