package layout

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Kind is the kind of a fitting, in the trade's words as the catalogue and the
// job document use them.
type Kind string

// The kinds.
const (
	Elbow90       Kind = "elbow 90"
	Elbow45       Kind = "elbow 45"
	Street90      Kind = "street elbow 90"
	Street45      Kind = "street elbow 45"
	Coupling      Kind = "coupling"
	Reducer       Kind = "reducer"
	MaleAdapter   Kind = "male adapter"
	FemaleAdapter Kind = "female adapter"
	Union         Kind = "union"
	CheckSwing    Kind = "check valve swing"
	CheckSpring   Kind = "check valve spring"
	BallValve     Kind = "ball valve"
	GateValve     Kind = "gate valve"
	Bulkhead      Kind = "bulkhead fitting"
	Straight      Kind = "straight" // any other piece without a turn: strainer, meter, nipple
	Hose          Kind = "hose"     // flexible pipe, bent as its Curve says
)

// Turn gives the angle by which a part turns the flow: its kind's, or a hose's
// own. ok is false where its kind is no kind.
func (p *Part) Turn() (turn unit.Angle, ok bool) {
	if p.Kind == Hose {
		return p.Curve.Turn, true
	}
	return p.Kind.Turn()
}

// Turn gives the angle by which the kind turns the flow, none for a hose, which
// has its own; ok is false for a word that is no kind.
func (k Kind) Turn() (turn unit.Angle, ok bool) {
	switch k {
	case Elbow90, Street90:
		return 90 * unit.Degree, true
	case Elbow45, Street45:
		return 45 * unit.Degree, true
	case Coupling, Reducer, MaleAdapter, FemaleAdapter, Union, CheckSwing, CheckSpring, BallValve, GateValve, Bulkhead, Straight, Hose:
		return 0, true
	}
	return 0, false
}

// IsCheck tells that the kind lets water pass one way.
func (k Kind) IsCheck() bool { return k == CheckSwing || k == CheckSpring }

// Measure is a size of a fitting with what is known of it.
type Measure struct {
	Length unit.Length
	Source trace.Source // BasisMeasured for the fitter's own
	Least  bool         // a standard's minimum: the fitting in hand may be larger
}

// Sure tells that pipe may be cut by this size: it was measured, stands on the
// maker's sheet, or follows from the choice of the centre, and is no minimum.
func (m Measure) Sure() bool {
	switch m.Source.Basis {
	case trace.BasisMeasured, trace.BasisSheet, trace.BasisLibrary:
		return !m.Least
	}
	return false
}

// KnownBy is how a size is known, in one word.
type KnownBy string

// The ways.
const (
	ByHand   KnownBy = "measured" // on the fitting in hand
	BySheet  KnownBy = "sheet"    // the maker's
	ByTable  KnownBy = "table"    // of a standard: that size
	ByLeast  KnownBy = "least"    // of a standard: the least it allows; the fitting in hand may be deeper
	ByMemory KnownBy = "memory"   // in no table that was read, or a guess
)

// By tells how the size is known.
func (m Measure) By() KnownBy {
	switch m.Source.Basis {
	case trace.BasisMeasured:
		return ByHand
	case trace.BasisSheet:
		return BySheet
	case trace.BasisMemory, trace.BasisGuess, trace.BasisPractice:
		return ByMemory
	}
	if m.Least {
		return ByLeast
	}
	return ByTable
}

// Missing tells that nothing is known, not even that the size is nothing.
func (m Measure) Missing() bool { return m == Measure{} }

// atCentre is the distance from the centre to itself: a take-off where the
// centre was chosen to lie on the stop.
var atCentre = Measure{Source: trace.Source{Title: "the centre is taken on the stop", Basis: trace.BasisLibrary}}

// EndKind is how an end of a part connects.
type EndKind uint8

// The ends. NoEnd is what a part has towards the outside of the vault.
const (
	NoEnd EndKind = iota
	Socket
	Spigot
	MaleThread
	FemaleThread
	HoseTail
)

func (k EndKind) String() string {
	return [...]string{"none", "socket", "spigot", "male thread", "female thread", "hose tail"}[min(k, HoseTail)]
}

// Thread is a family of pipe threads.
type Thread uint8

// The families: NPT (ASME B1.20.1), BSPT (taper, ISO 7-1), BSPP (parallel, ISO 228-1).
const (
	NoThread Thread = iota
	NPT
	BSPT
	BSPP
)

func (t Thread) String() string { return [...]string{"none", "NPT", "BSPT", "BSPP"}[min(t, BSPP)] }

// End is one end of a part.
type End struct {
	Kind   EndKind
	Size   string // nominal size; the part's when empty
	Thread Thread // for threads

	// TakeOff is the distance from the part's centre to the socket's stop, to
	// the spigot's end, to the tip of a male thread or to the face of a female
	// one. The centre is where an elbow's axes meet, a bulkhead fitting's seat
	// on the vault's inner wall, and any fixed point of another straight part.
	// It may be negative where the centre lies beyond (a bulkhead fitting whose
	// stop lies in or behind the wall).
	TakeOff Measure
	Depth   Measure // of the socket from face to stop; of a spigot the length that can enter
	Engage  Measure // of a male thread: what disappears in the port when made up
	Hub     Measure // outside diameter at this end
}

// Body is the thickest part of a fitting between its hubs: a union's nut, a
// valve's body. A zero Length means that the diameter holds from face to face.
type Body struct {
	Diameter Measure
	Length   Measure     // along the axis
	Offset   unit.Length // middle of the body from the centre, along the flow

	// A cover or handle that stands out to one side, at the part's roll.
	Reach Measure // from the axis to its top
	Width Measure // its diameter
}

// Split is a place where a part opens by its nut.
type Split struct {
	Offset unit.Length // face from the part's centre, along the flow
	Lip    unit.Length // how far one face reaches into the other: the part must slide back that far first
}

// Allowed is how a check valve may stand, by its data.
type Allowed uint8

// The attitudes. AllowedUnknown falls back on the kind: a swing valve takes
// flow level or upward, a spring valve any (common practice, no source).
const (
	AllowedUnknown Allowed = iota
	AllowedAny
	AllowedUp        // flow straight up only
	AllowedLevelOrUp // level or rising
)

// Part is a fitting or valve with all that places it.
type Part struct {
	Mark    string // "E1"
	Kind    Kind
	Size    string // nominal
	In, Out End
	Body    Body
	Splits  []Split // a union's one, a union-ended valve's two

	Allowed     Allowed      // check valves
	AllowedFrom trace.Source // where that comes from

	Curve Curve // of a hose
}

func (p Part) inSize() string  { return or(p.In.Size, p.Size) }
func (p Part) outSize() string { return or(p.Out.Size, p.Size) }

func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// half gives half of a measure with the same standing.
func half(m Measure) Measure {
	m.Length /= 2
	return m
}

// SocketElbow makes an elbow with a socket at each end from centre to stop,
// depth of socket and outside diameter of hub.
func SocketElbow(k Kind, size string, toStop, socket, hub Measure) Part {
	e := End{Kind: Socket, TakeOff: toStop, Depth: socket, Hub: hub}
	return Part{Kind: k, Size: size, In: e, Out: e}
}

// StreetElbow makes an elbow whose inlet is a spigot: toEnd is centre to the
// spigot's end, spigot its length that can enter a socket, od its outside
// diameter.
func StreetElbow(k Kind, size string, toEnd, spigot, od, toStop, socket, hub Measure) Part {
	return Part{
		Kind: k, Size: size,
		In:  End{Kind: Spigot, TakeOff: toEnd, Depth: spigot, Hub: od},
		Out: End{Kind: Socket, TakeOff: toStop, Depth: socket, Hub: hub},
	}
}

// Inline makes a straight part with a socket at each end from its laying
// length (stop to stop). The centre is its middle. A union opens there.
func Inline(k Kind, size string, stopToStop, socket, hub Measure) Part {
	e := End{Kind: Socket, TakeOff: half(stopToStop), Depth: socket, Hub: hub}
	p := Part{Kind: k, Size: size, In: e, Out: e}
	if k == Union {
		p.Splits = []Split{{}}
	}
	return p
}

// ThreadedInlet makes a male adapter: tipToStop is from the tip of the thread to the
// socket's stop, engage what disappears in the port. A measure taken with the
// adapter made up in the port (port face to stop) has engage 0.
func ThreadedInlet(size string, thread Thread, tipToStop, engage, socket, hub Measure) Part {
	return Part{
		Kind: MaleAdapter, Size: size,
		In:  End{Kind: MaleThread, Thread: thread, TakeOff: tipToStop, Engage: engage, Hub: hub},
		Out: End{Kind: Socket, TakeOff: atCentre, Depth: socket, Hub: hub},
	}
}

// WallFitting makes a bulkhead fitting: faceToStop is from the vault's inner
// wall to the socket's stop, counted into the vault (negative when the stop
// lies in or behind the wall).
func WallFitting(size string, faceToStop, socket, hub Measure) Part {
	return Part{
		Kind: Bulkhead, Size: size,
		In: End{Kind: Socket, TakeOff: faceToStop, Depth: socket, Hub: hub},
	}
}
