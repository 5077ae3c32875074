package layout

import (
	"plashet/engine/geom"
	"plashet/engine/unit"
)

// By says how the distance between two parts is taken.
type By uint8

// The ways. Touching is the zero value: the hub faces meet.
const (
	Touching   By = iota
	Centres       // centre to centre
	Faces         // gap between the hub faces
	Stops         // stop to stop
	PipeLength    // length of the piece as cut
)

// Join is what comes after a part: the distance to the next one. Where a
// spigot or a thread goes straight into the next part there is no pipe and
// nothing to choose: Distance is then left at zero.
type Join struct {
	By       By
	Distance unit.Length

	// Closing marks the piece whose length is worked out: from the gap between
	// the hub faces measured in place when there is one, else from what the
	// other pieces leave to the hole.
	Closing  bool
	Measured Set[unit.Length]

	Made bool // the joints at its ends are made already: nothing of it is to be cut or joined
}

// Laid is a part in its place in the chain.
type Laid struct {
	Part
	Roll    unit.Angle // of an elbow's outlet, or of a valve's cover; see the package comment
	Reverse bool       // its arrow points against the flow
	Next    Join
}

// Pipe is the pipe of one nominal size in the assembly.
type Pipe struct {
	Kind, Size string
	OD         unit.Length
	Bore       unit.Length // 0 when not known: volumes are then not told
}

// Pump is the pump in one of its attitudes, in its own frame.
type Pump struct {
	Name      string
	Blocks    []geom.Box // its body; corner of the whole at the origin
	Cylinders []Cylinder
	Port      geom.Vec3 // centre of the port's face
	Points    geom.Vec3 // direction in which the port looks, length 1
	Outlet    End       // how the port connects; TakeOff is 0 at the face of a thread, negative to the stop of a socket
	Path      string    // in the job: "/pumps/0"
}

// Pose is where the pump stands.
type Pose struct {
	At   geom.Vec3  // corner nearest the origin of the box round the pump, after turning
	Turn unit.Angle // about the upright, anticlockwise seen from above
}

// Beyond tells of the water outside the vault. The run that starts at the pump
// begins at its port, so that its first stretch is the chain itself: what of it
// lies beyond the wall is worked out here.
type Beyond struct {
	First  Stretch          // the run that starts at the pump
	Volume Set[unit.Volume] // water in the other runs
	Boxes  unit.Volume      // water in the boxes at the top, above their inlets: it siphons back once nothing holds the pipe
	Frost  bool             // pipe and valve can freeze on this site
}

// Stretch is a run by its length and the water in it.
type Stretch struct {
	Length unit.Length
	Volume unit.Volume
}

// Input is one chain to judge.
type Input struct {
	Vault    Vault
	Pump     Pump
	Pose     Pose
	Start    Join // between the port and the first part, when the port is a socket
	Parts    []Laid
	Pipes    []Pipe
	Beyond   Beyond
	Settings Settings
	Straight bool   // only a lift, or a shift and a lift, counts as a way out: nothing else is looked for
	Path     string // of the assembly in the job: "/assembly"
}

// Set is a value that may be left open; the zero Set is open. A setting left
// open takes its default, and the answer lists that as an assumption.
type Set[Q unit.Quantity] struct {
	Value Q
	Given bool
}

// Is makes a Set that is given.
func Is[Q unit.Quantity](v Q) Set[Q] { return Set[Q]{Value: v, Given: true} }

// pipeOf finds the pipe of a nominal size.
func (in *Input) pipeOf(size string) (Pipe, bool) {
	for _, p := range in.Pipes {
		if p.Size == size {
			return p, true
		}
	}
	return Pipe{}, false
}
