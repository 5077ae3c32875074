package level

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Course is a course of events: how the pond was filled and what has happened
// since. Within a course no water is won or lost.
type Course string

// The courses.
const (
	// CourseFirst: the pond is filled to the water line once, all else is dry;
	// nobody tops up.
	CourseFirst Course = "first"
	// CourseKept: the pond is topped up to the water line at rest, with all that
	// the check valve holds full: every start but the first. Only with a valve.
	CourseKept Course = "kept"
	// CourseOpen: the same with nothing to hold the pipe: every start but the
	// first where no valve is fitted or it leaks overnight.
	CourseOpen Course = "open"
	// CourseTopped: the pond is topped up to the running line while running.
	CourseTopped Course = "topped"
)

// Moment is a state of rest or of steady running within a course.
type Moment string

// The moments.
const (
	MomentRest   Moment = "rest"      // before the course's first start
	MomentRun    Moment = "run"       // running, after the course's first start
	MomentHeld   Moment = "stop"      // stopped, the check valve holding; only with a valve
	MomentRerun  Moment = "rerun"     // running again after that
	MomentOpen   Moment = "stop-open" // stopped, the valve stuck open or absent
	MomentReopen Moment = "rerun-open"
)

// Running tells that the pump runs.
func (m Moment) Running() bool { return m == MomentRun || m == MomentRerun || m == MomentReopen }

// State is where the water stands at one moment.
type State struct {
	Course Course
	Moment Moment

	Pond, Vault             unit.Length // levels; without a vault both are the pond's
	PondVolume, VaultVolume unit.Volume
	Stores                  []unit.Volume // what each store holds, in the order of the inputs
	InStores                unit.Volume   // their sum
	// Starved: the pump runs, but the water does not suffice for its flow, so the
	// flow does not last. The state is what it comes to: see Solve.
	Starved bool
	// Flow is what the pump gives at this level of the vault; 0 at rest.
	Flow unit.Flow
	// Passes is the flow that lasts: the pump's, or when starved the part of it
	// that comes over the sill in the end.
	Passes unit.Flow
	// Missing is the water to be added before all of the flow lasts; 0 unless
	// starved. Spare is what may be lost before it starves; 0 when starved.
	Missing, Spare unit.Volume
	// Total is pond + vault + stores: the same in every state of a course.
	Total unit.Volume
	// Change is the pond's level less that of the course's reference: the state
	// of rest (a draw-down is negative), or for CourseTopped the running line (a
	// rise is positive).
	Change unit.Length

	Sill Margin // pond over the sill; running with a sill only
	Pump Margin // water over the floor the pump stands on; running with a known minimum only
	Edge Edge
}

// Margin is a depth of water against what is needed.
type Margin struct {
	Applies      bool
	Present      unit.Length
	Needed       unit.Length
	Over         unit.Length // present - needed
	AfterReserve unit.Length // the same once the evaporation reserve is gone
}

// Edge is the room under the rim. Levels above the rim are told as if the wall
// went on; the spill is what runs over instead.
type Edge struct {
	Known     bool        // the rim is known; otherwise all is 0
	Freeboard unit.Length // rim less level
	Spill     unit.Volume // water above the rim
	RainRoom  unit.Length // freeboard after the design rain
	RainSpill unit.Volume
}

// Lines is the range of running lines that serve: the pond's level while
// running, from the least that keeps vault and pump supplied (with the reserve)
// to the greatest from which a stop, with the design rain on top, stays under
// the rim: with the valve holding and without. Neither greatest is above the
// rim; both are 0 where the rim is not known.
type Lines struct {
	Least        unit.Length
	GreatestHeld unit.Length
	GreatestOpen unit.Length
}

// Levels is the answer.
type Levels struct {
	States []State
	// HeadNeeded is the head over the sill that the flow needs; 0 without sill.
	HeadNeeded unit.Head
	// Transit is what the stores hold running, Draw what a restart fills again
	// with the valve holding, DrawOpen without.
	Transit, Draw, DrawOpen unit.Volume
	Lines                   Lines
	Findings                []trace.Finding
	Assumptions             []trace.Assumption

	in Inputs
}

// Inputs gives what the levels were worked out from.
func (l *Levels) Inputs() *Inputs { return &l.in }

// Everyday gives the course of every start but the first: topped up while
// running where that is the habit, else kept full by the check valve, or open
// where none is fitted.
func (l *Levels) Everyday() Course {
	switch {
	case l.in.TopsUp:
		return CourseTopped
	case l.in.Valve:
		return CourseKept
	}
	return CourseOpen
}

// Lasting tells that at a moment of a course the pump runs and has water enough
// to go on; false for a moment of rest, and where there is no such state.
func (l *Levels) Lasting(c Course, m Moment) bool {
	s, ok := l.Find(c, m)
	return ok && m.Running() && !s.Starved
}

// Find gives the state of a course at a moment.
func (l *Levels) Find(c Course, m Moment) (State, bool) {
	for _, s := range l.States {
		if s.Course == c && s.Moment == m {
			return s, true
		}
	}
	return State{}, false
}
