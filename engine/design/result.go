// Package design turns a job into its answer: it fills the engine's inputs from
// the document, runs the parts in order (water, pipe and pump, levels, the
// assembly, the cutting plan) and gathers figures, findings and assumptions. It
// is the only engine package that knows the job document. It holds no formula
// of its own.
package design

import (
	"cmp"

	"plashet/engine/cut"
	"plashet/engine/glue"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
	"plashet/job"
	"plashet/takeoff"
)

// Result is the answer to a job. It is always computed again from the job.
type Result struct {
	Name  string
	Note  string
	Units unit.System
	Style unit.Style // of amounts of money

	Water     hydro.Water
	Vault     unit.Length   // the running level that the pump draws from
	Delivery  *Delivery     // nil when it could not be worked out: see Faults
	Levels    *level.Levels // likewise
	Motion    *Motion       // likewise
	Assembly  *layout.Assembly
	Second    *verify.Report // the second check of it; nil where it has no places
	Glue      *glue.Plan
	NotToCut  bool // the assembly cannot be built as it is laid: its pieces are not to be cut
	Cutting   []Cutting
	Materials []takeoff.Item
	Joints    int      // to cement and to screw, of assembly and runs
	Upkeep    *Upkeep  // nil when no water runs
	Options   []Option // the pumps in hand on the pipe as drawn and on larger pipe

	Bands *Bands // nil unless they were asked for and could be worked out

	Findings    []trace.Finding
	Assumptions []trace.Assumption
	Faults      []trace.Fault
	Figures     []trace.Figure
}

// Worst gives the severity of the worst finding that is not accepted, and
// whether there is any.
func (r *Result) Worst() (trace.Severity, bool) {
	worst, any := trace.Info, false
	for _, f := range r.Findings {
		if f.Accepted == "" {
			worst, any = max(worst, f.Severity), true
		}
	}
	return worst, any
}

// Delivery is the steady state of pump and pipe.
type Delivery struct {
	Pump   string
	Flow   unit.Flow
	Head   unit.Head // the pump's: total dynamic head
	Static unit.Head // vault level running to the highest free water surface
	Rises  bool      // Static is known: water runs somewhere
	// Beyond tells that the pump runs outside its data: Flow is their end, and
	// what runs and feeds get for it; the true flows lie beyond.
	Beyond unit.Bound
	// Several tells that a pump could run at other flows too: these are one of
	// several steady states.
	Several bool
	Power   unit.Power
	// Drawn is all that the pumps take from the vault: Flow, and what further
	// pumps take from it.
	Drawn  unit.Flow
	Others []Other // further pumps, in the job's order
	// Yearly energy and cost of all pumps together; Energy is 0 where the watts of
	// one are not known, Cost is empty without a tariff.
	Energy unit.Energy
	Cost   unit.Money
	Runs   []Run
	Feeds  []Feed
	Share  *Share // nil where the sharing cannot be told: nothing wanted, or no tree
}

// Other is what a further pump does.
type Other struct {
	Name  string // of its place
	Pump  string
	Path  string
	Flow  unit.Flow
	Head  unit.Head
	Power unit.Power // 0: its watts are not known

	Beyond unit.Bound // likewise
}

// Bound tells what the flows of runs and feeds are: those of the pump in use, or
// where it keeps to its data, of the first further pump that does not.
func (d *Delivery) Bound() unit.Bound {
	b := d.Beyond
	for _, o := range d.Others {
		b = cmp.Or(b, o.Beyond)
	}
	return b
}

// Share is how well valves can share the water as wanted.
type Share struct {
	Reach   unit.Ratio // part of all wanted flows that the pump gives with the valves of the better-off feeds set
	At      unit.Ratio // the part of all wanted flows that Burn and K of the feeds are for: 1, or Reach where that is less
	Surplus unit.Head  // head left over at the wanted flows, to burn in the main; below zero the pump lacks it
	Beyond  bool       // a law runs outside its data at the wanted flows: bounds, not figures
}

// Run is one run of pipe as it flows.
type Run struct {
	Index    int // among the job's runs
	Name     string
	Path     string
	Flow     unit.Flow
	Speed    unit.Speed
	Reynolds unit.Ratio
	Bore     unit.Length
	Length   unit.Length
	Factor   unit.Ratio  // Darcy friction factor; 0 for a pipe known only by its C
	C        unit.Ratio  // Hazen-Williams C of such a pipe, else 0
	Rough    unit.Length // absolute roughness; 0 likewise
	RoughBy  trace.Source
	K        unit.Ratio // sum of the loss coefficients at this flow
	Losses   []Loss     // what it is made of
	Friction unit.Head  // along the pipe
	Fittings unit.Head  // fittings, valve setting and exit
	Volume   unit.Volume
}

// Loss is the resistance of one kind of fitting in a run: K = Rest + PerRe/Re,
// each, on the speed in the run's bore.
type Loss struct {
	Name, Size  string
	Path        string
	Count       int
	Rest, PerRe unit.Ratio
	Method      string     // "Darby 3-K", "Crane"; empty for a value of the job
	Opens       unit.Speed // speed in its own pipe below which a check valve does not open fully; 0: not known
	Source      trace.Source
}

// at is the head that the fittings take with the water at a speed in the run's
// pipe: K v²/2g.
func (l *Loss) at(v unit.Speed, r *Run) unit.Head {
	k := l.Rest
	if r.Reynolds != 0 {
		k += l.PerRe / r.Reynolds
	}
	return unit.Head(float64(l.Count) * float64(k) * float64(v*v) / (2 * unit.StandardGravity))
}

// Feed is what one watercourse gets.
type Feed struct {
	Name   string
	Path   string
	Flow   unit.Flow
	Wanted unit.Flow // 0: nothing is wanted
	Lips   []Lip
	Dry    bool // the pump does not reach it
	// Burn is the head that its valve must take, and K the coefficient on the
	// speed in its last run, so that all feeds get Share.At of what is wanted.
	Burn  unit.Head
	K     unit.Ratio
	Short unit.Head // head that the pump lacks at the wanted flows
}

// Lip is one fall as it runs.
type Lip struct {
	Name   string
	Path   string
	Width  unit.Length
	Tilt   unit.Length // of one end of the crest over the other
	C      unit.Ratio  // weir coefficient, m^0.5/s
	Sheet  hydro.Sheet
	Source trace.Source // of C
}

// Option is one pump on one choice of pipe.
type Option struct {
	Pump   string
	Pipe   string // sizes of the runs in the job's order, "2, 2, 1-1/4"
	Flow   unit.Flow
	Feeds  []unit.Flow // with the valves as they are
	Beyond unit.Bound  // of Flow and Feeds: see Delivery
	// Reach is Share.Reach: what the valves can bring each feed, as a part of
	// what is wanted; 0 where it cannot be told.
	Reach unit.Ratio
	Power unit.Power
	Cost  unit.Money // of the electricity in a year; no currency without a tariff
	// First is the price of pump, pipe and fittings of the runs; no currency
	// where one of them has no price.
	First unit.Money
	// Years is First and five years of electricity, not discounted.
	Years unit.Money
	// Several tells that it could run at other flows too: see Delivery.
	Several bool
	Drawn   bool // on the pipe as drawn
	AsIs    bool // the design as drawn
}

// Cutting is the plan for one kind and size of pipe.
type Cutting struct {
	Name   job.PipeName
	Pipe   string // the same as text
	Pieces []cut.Piece
	Plan   cut.Plan

	NotToCut bool // pieces of an assembly that cannot be built are among them
}

// Upkeep is what the feature asks for while it runs.
type Upkeep struct {
	Turnover    unit.Duration // in which the pumps move as much water as the pond holds
	Evaporation unit.Length   // depth in a summer day; 0 where the job tells no weather
	WaterArea   unit.Area     // pond, reaches and pools
	TopUp       unit.Volume   // what evaporates from all of it in that day
	Load        unit.Current  // of all pumps
	LoadKnown   bool
	Drop        unit.Voltage // on the cable, at that current
	DropShare   unit.Ratio   // of the supply's voltage; 0 where the job tells no cable
}
