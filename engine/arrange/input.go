package arrange

import (
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Input is what the search may choose from and what it must keep.
type Input struct {
	Vault     layout.Vault
	Reach     Reach // where the hole may still be drilled; zero: it is where Vault.Outlet says
	Standings []Standing
	Fittings  []Fitting
	Pipes     []Pipe
	Hose      *Hose // that a chain may have; nil: none
	Glued     Glued
	Beyond    layout.Beyond
	Settings  layout.Settings
	Rules     Rules
	Instead   []Instead // what to look at where nothing fits, the soonest done first
	Path      string    // of the assembly in the job: "/assembly"

	straight bool // no odd angles are looked at, in rolled pairs neither

	coupled bool // only what has a coupling between two pieces of pipe is looked at; see coupling
}

// Reach is how far the hole's centre may lie from Vault.Outlet, all four zero
// or more. A hole that is drilled has none.
type Reach struct{ Back, Forth, Down, Up unit.Length }

// Standing is the pump in one of the attitudes it may take.
type Standing struct {
	Pump  layout.Pump
	Turns []unit.Angle // by which it may be turned about the upright; empty: quarter turns, or as Pose where it is fixed
	Fixed bool         // the corner of its box stands at Pose and stays there
	Pose  layout.Pose
}

// Fitting is a fitting that may be used: its kind says as what.
type Fitting struct {
	Part   layout.Part // its mark is left open
	Head   unit.Length // head that it takes at the operating flow
	Cost   float64     // of one, in the job's currency; see HasCost
	Priced bool
	AtHand int // how many there are; below zero: as many as wanted
}

// Pipe is a pipe that may be used.
type Pipe struct {
	layout.Pipe
	Slope  float64 // head that a metre of it takes at the operating flow, m/m
	Cost   float64 // of a metre, in the job's currency
	Priced bool
	AtHand unit.Length // in the longest piece there is; below zero: as long as wanted
	Stock  *Stock      // all there is of it; nil: as many of the longest as wanted
}

// Glued is what is made already and cannot be changed: laid parts with their
// rolls and distances, counted from the port and from the wall.
type Glued struct {
	FromPort []layout.Laid
	FromWall []layout.Laid // in the order of the flow; the last one is at the wall

	Start    layout.Join // before the first of FromPort
	Standing int         // in which attitude, and turned by how much, the rolls of FromPort were read
	Turn     unit.Angle
	Into     geom.Vec3 // direction of the flow into the first of FromWall; needed where one of them turns
}

// Rules are what an assembly must have, and where the search ends.
type Rules struct {
	Union  bool // one that can be opened with the pump in place
	Check  bool // a check valve
	Out    bool // the pump comes out once the union is open
	Tilt   bool // it may be leaned over on its way; then no way out is asked of the program, and few are looked at
	Play   bool // the last piece can be measured in place, with room both ways
	Elbows int  // at most; 0: four
	Best   int  // layouts wanted; 0: five
	Brief  bool // where nothing fits, do not look for what would
	First  bool // end with the first layout found, and claim nothing
	Cores  int  // to share the work among; the outcome is the same
	Nodes  int  // of branch and bound for one order of fittings, at most; 0: the usual
}
