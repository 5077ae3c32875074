package level

import (
	"cmp"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Kind says what a store is.
type Kind string

// The kinds of store, in the order in which the pump fills them.
const (
	KindRun   Kind = "run"   // a pipe run
	KindBox   Kind = "box"   // the box at the top of a feed, up to its lip
	KindLip   Kind = "lip"   // the head of water over a lip, on what is ponded behind it
	KindReach Kind = "reach" // running water in a stream or rill
	KindPool  Kind = "pool"  // a pool up to the lip below it
)

// Store is a place in the watercourse that holds water. The three volumes hold
// HeldOpen <= Held <= Running; a dry one holds nothing.
type Store struct {
	Kind Kind
	Name string
	Path string // of the part in the job
	// Running is what it holds while the pump runs; Held what stays after a stop
	// with the check valve holding; HeldOpen what stays with the valve stuck open
	// or absent.
	Running, Held, HeldOpen unit.Volume
	// Joined: what it loses with the check valve holding runs through pipe into a
	// lower box, and from there over its lip to the pond.
	Joined bool
	// Terms are the values that the volumes come from, for the trace.
	Formula string
	Terms   []trace.Term
}

// Exponents of the depth that a part of the flow makes: over a lip H grows with
// Q^(2/3) by the weir formula, in a wide reach with Q^(3/5) by Manning's.
const (
	lipDepth   = 2.0 / 3
	reachDepth = 3.0 / 5
)

// depths are the parts of their full depth that a part of the flow makes.
type depths struct{ lip, reach float64 }

func depthsAt(part float64) depths {
	return depths{math.Pow(part, lipDepth), math.Pow(part, reachDepth)}
}

// at is what the store holds in steady running when only a part (0 to 1) of
// the pump's flow comes through: less stands over a lip and in a reach; pipe,
// box and pool are full however little comes.
func (s *Store) at(d depths) float64 {
	full := float64(s.Running)
	switch s.Kind {
	case KindLip:
		return full * d.lip
	case KindReach:
		return max(full*d.reach, float64(s.Held))
	case KindRun, KindBox, KindPool:
	}
	return full
}

// backThroughPump tells that what the store loses after a stop comes back
// through pipe and pump, into the vault; the rest runs down to the pond.
func (s *Store) backThroughPump() bool { return s.Kind == KindRun || s.Kind == KindBox }

// check gives an error unless the three volumes are in order.
func (s *Store) check() error {
	if 0 <= s.HeldOpen && s.HeldOpen <= s.Held && s.Held <= s.Running && s.Running <= math.MaxFloat64 {
		return nil // as nearly always, and quickly told
	}
	return cmp.Or(
		notNegative(s.Path, "running", s.Running, unit.KindWater),
		within(s.Path, "held", s.Held, 0, s.Running, unit.KindWater),
		within(s.Path, "held open", s.HeldOpen, 0, s.Held, unit.KindWater),
	)
}

func term[Q unit.Quantity](symbol string, v Q, k unit.Kind, path string) trace.Term {
	return trace.Term{Symbol: symbol, Value: unit.Of(v, k), From: path}
}

// Run is a pipe run: full while running and, with a valve holding, after a
// stop. One that drains is empty once nothing holds it; one with a sag, or that
// lies under water, stays full. Volume from 0 up.
func Run(name, path string, volume unit.Volume, drains bool) (Store, error) {
	s := Store{
		Kind: KindRun, Name: name, Path: path, Running: volume, Held: volume, HeldOpen: volume,
		Formula: "V", Terms: []trace.Term{term("V", volume, unit.KindWater, path)},
	}
	if drains {
		s.HeldOpen = 0
	}
	return s, s.check()
}

// BoxSize is a box up to its lip.
type BoxSize struct {
	Volume unit.Volume // water up to the lip
	Depth  unit.Length // floor to lip
	Inlet  unit.Length // inlet above the floor; at the lip or above when it pours in from over the water
	// Fall is how far under its lip the water falls into a lower box that pipe
	// joins it with, while the check valve holds: see Communicate. 0: none.
	Fall unit.Length
}

// Box is the box at the top of a feed. With nothing to hold the pipe, water
// runs back through its inlet as through a siphon, until the inlet is
// uncovered: V inlet/depth stays (walls taken as upright). An inlet at the lip
// or above breaks the siphon and all stays. With the check valve holding it
// falls into a lower box that pipe joins it with, no further than to the inlet.
// A box of unknown depth (0) is taken to empty. All from 0 up.
func Box(name, path string, b BoxSize) (Store, error) {
	if err := cmp.Or(
		notNegative(path, "depth", b.Depth, unit.KindTape),
		notNegative(path, "inlet", b.Inlet, unit.KindTape),
		notNegative(path, "volume", b.Volume, unit.KindWater),
		notNegative(path, "fall", b.Fall, unit.KindTape),
	); err != nil {
		return Store{}, err
	}
	held, open := b.Keeps()
	s := Store{
		Kind: KindBox, Name: name, Path: path, Running: b.Volume, Joined: held < 1,
		Held: b.Volume * unit.Volume(held), HeldOpen: b.Volume * unit.Volume(open),
		Formula: "V; stays with the pipe open: V min(1, inlet / depth)",
		Terms: []trace.Term{
			term("V", b.Volume, unit.KindWater, path), term("depth", b.Depth, unit.KindTape, path+"/depth"), term("inlet", b.Inlet, unit.KindTape, path+"/inlet"),
		},
	}
	if s.Joined {
		s.Formula += "; with the valve holding, down to a lower box that pipe joins it with: V max(inlet, depth - fall) / depth"
		s.Terms = append(s.Terms, term("fall", b.Fall, unit.KindTape, path))
	}
	return s, s.check()
}

// Lip is the water that stands above a lip's crest while it runs, on the area
// ponded behind it (the box or pool before it): V = head * area * void. It runs
// off after every stop. Head and area from 0 up, void above 0 to 1.
func Lip(name, path string, head unit.Head, behind unit.Area, void unit.Ratio) (Store, error) {
	if err := cmp.Or(
		notNegative(path, "head", head, unit.KindDepth),
		notNegative(path, "area", behind, unit.KindArea),
		within(path, "void", void, 0, 1, unit.KindPercent),
		positive(path, "void", void, unit.KindPercent),
	); err != nil {
		return Store{}, err
	}
	s := Store{
		Kind: KindLip, Name: name, Path: path, Running: unit.Volume(float64(head) * float64(behind) * float64(void)),
		Formula: "H A void",
		Terms: []trace.Term{
			term("H", head, unit.KindDepth, path), term("A", behind, unit.KindArea, ""), term("void", void, unit.KindPercent, ""),
		},
	}
	return s, s.check()
}

// ReachSize is a reach as it runs.
type ReachSize struct {
	Depth  unit.Length // running depth: by Manning's formula or measured
	Wetted unit.Length // width that carries water
	Length unit.Length
	Holds  unit.Length // mean depth that stays when the pump is off
}

// Reach is the running water of a stream or rill: V = depth * wetted width *
// length; holds * wetted width * length stays when it stops, at most what ran.
// All from 0 up.
func Reach(name, path string, r ReachSize) (Store, error) {
	if err := cmp.Or(
		notNegative(path, "depth", r.Depth, unit.KindDepth),
		notNegative(path, "wetted width", r.Wetted, unit.KindPlan),
		notNegative(path, "length", r.Length, unit.KindPlan),
		notNegative(path, "holds", r.Holds, unit.KindDepth),
	); err != nil {
		return Store{}, err
	}
	plan := float64(r.Wetted) * float64(r.Length)
	s := Store{
		Kind: KindReach, Name: name, Path: path,
		Running: unit.Volume(float64(r.Depth) * plan), Held: unit.Volume(float64(min(r.Holds, r.Depth)) * plan),
		Formula: "depth wetted length; stays: min(holds, depth) wetted length",
		Terms: []trace.Term{
			term("depth", r.Depth, unit.KindDepth, path), term("wetted", r.Wetted, unit.KindPlan, path),
			term("length", r.Length, unit.KindPlan, path+"/length"), term("holds", r.Holds, unit.KindDepth, path+"/holds"),
		},
	}
	s.HeldOpen = s.Held
	return s, s.check()
}

// Pool is a pool up to the lip below it: V = area * depth, filled once at first
// start and kept; one that leaks (back into the pond) is empty at every start.
// Area and mean depth from 0 up.
func Pool(name, path string, area unit.Area, depth unit.Length, leaks bool) (Store, error) {
	if err := cmp.Or(
		notNegative(path, "area", area, unit.KindArea),
		notNegative(path, "depth", depth, unit.KindDepth),
	); err != nil {
		return Store{}, err
	}
	s := Store{
		Kind: KindPool, Name: name, Path: path, Running: unit.Volume(float64(area) * float64(depth)),
		Formula: "A depth; stays: all, nothing when it leaks",
		Terms:   []trace.Term{term("A", area, unit.KindArea, path), term("depth", depth, unit.KindDepth, path+"/depth")},
	}
	if !leaks {
		s.Held, s.HeldOpen = s.Running, s.Running
	}
	return s, s.check()
}
