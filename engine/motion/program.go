package motion

import (
	"cmp"
	"math"

	"plashet/engine/unit"
)

// Valve is what the check valve does.
type Valve string

// The states of a check valve. Feeds that have none run back in any case.
const (
	Works     Valve = "works"
	Leaking   Valve = "leaks"
	StuckOpen Valve = "open"
	StuckShut Valve = "shut" // the pump pushes against it and gives nothing
	Absent    Valve = "none" // as if none were fitted
)

// holds tells that nothing runs back through the valve.
func (v Valve) holds() bool { return v == Works || v == StuckShut || v == "" }

// Leak is a check valve that does not close: an opening with a part of the
// bore's area and a coefficient of discharge.
type Leak struct {
	Part unit.Ratio // of the bore's area, above 0 to 1
	Cd   unit.Ratio // above 0 to 1; 0.61 for a sharp edge
}

// resistance is R of h = R Q² through the opening: 1 / (2 g (Cd a)²).
func (l Leak) resistance(bore unit.Area) float64 {
	a := float64(l.Cd) * float64(l.Part) * float64(bore)
	if a <= 0 {
		return math.Inf(1)
	}
	return 1 / (2 * unit.StandardGravity * a * a)
}

// Rain is a depth that falls evenly over a time, from a moment on.
type Rain struct {
	Depth unit.Length
	Over  unit.Duration
	From  unit.Duration
}

// TopUp is a float valve: it gives Flow when the pond has fallen Band below
// Level, nothing at Level and above, and in between in proportion.
type TopUp struct {
	Level unit.Length
	Band  unit.Length // above 0; 0: DefaultBand
	Flow  unit.Flow   // 0: there is none
}

// DefaultBand is how far the water falls from where a float valve shuts to
// where it is all open. From memory of float valves' sheets.
const DefaultBand = 20 * unit.Millimetre

func (t *TopUp) flow(pond float64) float64 {
	if t.Flow <= 0 {
		return 0
	}
	band := float64(t.Band)
	if band <= 0 {
		band = float64(DefaultBand)
	}
	return float64(t.Flow) * max(0, min(1, (float64(t.Level)-pond)/band))
}

// Program is one course of events, from a moment on.
type Program struct {
	From Moment
	// Pump: it has power from the beginning, for good or until CutAt (0: for good).
	Pump  bool
	CutAt unit.Duration
	// RunUp is the time in which a pump's flow grows evenly from nothing.
	RunUp unit.Duration
	Valve Valve
	Leak  Leak // of a valve that leaks
	Rain  Rain
	TopUp TopUp
	// Supply takes the place of the system's, as where one of its pumps stands
	// still; nil: the system's own.
	Supply Supply
	// Until bounds the course; it ends sooner when all is still or steady, unless
	// Whole is set.
	Until unit.Duration
	Whole bool
	// Still is the rate of the pond's level, in metres a second, that counts as
	// still; the vault's may be ten times that, and every other flow is held
	// against it over the pond's area. 0: StillRate.
	Still float64
	// Accuracy is the error of a volume that one step may make; 0: 1e-5 m³.
	Accuracy unit.Volume
}

// StillRate is a millimetre in ten minutes.
const StillRate = 0.001 / 600

const (
	accuracy        = 1e-5         // m³
	stillFor        = 1.0          // s: the same bound as a time of the rate that counts as still
	vaultStill      = 10.0         // how much faster than the pond a vault's level may move and count as still
	longest         = 60.0         // s, a step of a course of an hour: so that nothing is stepped over
	stepBound       = 20000        // steps
	runningLong     = 86400.0 * 30 // s
	leastStep       = 1e-7         // s
	eventClose      = 1e-7         // s
	joinAt, splitAt = 0.7, 1.2     // s, in which the drowned weir levels pond and vault out
	pipeRest        = 1e-3         // part of a pipe's water that is left to the end of its emptying
	thin            = 5e-4         // m, what a sample of the series may lie off the line between its neighbours
	thinFlow        = 0.01         // likewise of the flow, as a part of the pump's
	restSlack       = 1e-9
)

func (p *Program) check() error {
	return cmp.Or(
		within("", "until", p.Until, 0, runningLong, unit.KindDuration),
		notNegative("", "cut", p.CutAt, unit.KindDuration), notNegative("", "run-up", p.RunUp, unit.KindDuration),
		notNegative("/site/designRain", "rain", p.Rain.Depth, unit.KindDepth), notNegative("/site/rainOver", "rain's time", p.Rain.Over, unit.KindDuration),
		notNegative("/site/rainOver", "rain's beginning", p.Rain.From, unit.KindDuration),
		notNegative("/pond/topUp", "top-up", p.TopUp.Flow, unit.KindFlow), notNegative("/pond/topUp", "band", p.TopUp.Band, unit.KindDepth),
		within("", "leak", p.Leak.Part, 0, 1, unit.KindPercent), within("", "leak", p.Leak.Cd, 0, 1, unit.KindRatio),
		notNegative("", "accuracy", p.Accuracy, unit.KindWater), notNegative("", "still", unit.Ratio(p.Still), unit.KindRatio),
	)
}
