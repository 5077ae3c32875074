package motion

import (
	"cmp"

	"plashet/engine/hydro"
	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Part is one place of a watercourse that holds water, in the order the water
// comes to it; the first of a feed is its box.
type Part struct {
	Name, Path string
	// Reach marks running water without a lip of its own; all else (box, pool)
	// fills up to a lip and runs over it.
	Reach bool
	// Full is the water up to the lip; of a reach what it holds at Flow.
	Full unit.Volume
	Flow unit.Flow // of a reach, above 0
	// Held is what stays when nothing runs; HeldOpen what stays in a box with its
	// pipe open. HeldOpen <= Held <= Full.
	Held, HeldOpen unit.Volume
	// Lip is the weir that the water leaves by, and Area the surface that is
	// ponded behind it (stones taken off). Without lip or area what comes runs
	// over at once when it is full.
	Lip  *hydro.Lip
	Area unit.Area
	// Empties is how long a pool that leaks takes to run empty from its lip; 0:
	// it is tight. It leaks into the pond.
	Empties unit.Duration
	// Plan is the surface that rain falls on.
	Plan unit.Area
}

// Way is pipe beyond the check valves, full of water, between two places: the
// boxes of the feeds come first, in their order, then tees and all else. While
// the pump stands and the valve holds, boxes run into one another through it.
type Way struct {
	level.Way
	Back float64 // how hard it is: h = Back Q², in s²/m⁵
}

// Feed is one way of the water: pipe, box and watercourse down to the pond.
type Feed struct {
	Name, Path string
	// Pipe is the water in its pipe (of pipe that feeds share, a share); PipeHeld
	// what stays with the valve working, PipeOpen what stays with the pipe open.
	Pipe, PipeHeld, PipeOpen unit.Volume
	// Crest is the elevation of the box's lip, Depth from there down to its floor
	// (0: not known), Inlet the pipe's end above the floor.
	Crest, Depth, Inlet unit.Length
	// Valve: a check valve stands in its way.
	Valve bool
	// Back tells how hard it is for water to run back from the box through the
	// pipe and the stopped pump into the vault: h = Back Q², in s²/m⁵. Feeds that
	// share a pipe are taken to run back each for itself.
	Back float64
	// Bore is the area of the pipe at the check valve, for a valve that leaks.
	Bore unit.Area
	// Parts are box, pools and reaches.
	Parts []Part
}

// Inputs is all that does not change from course to course.
type Inputs struct {
	Pond *level.AreaElevation
	Line unit.Length // water line at rest
	Rim  unit.Length // lowest point of the edge, or the overflow
	// NoRim: the rim is not known; the water then rises as if the wall went on.
	NoRim bool
	Vault *level.Vault // nil when the pump stands in the pond
	// Low is the level in the vault (without a vault in the pond) from which the
	// pump draws air.
	Low unit.Length
	// Flow is the pump's in steady running: the screen loses its drop at this
	// flow, and with the square of it at others.
	Flow   unit.Flow
	Feeds  []Feed
	Supply Supply
	// Ways is the pipe that joins the boxes beyond the check valves, and Places
	// how many places it joins; none where nothing does.
	Ways   []Way
	Places int
}

func (in *Inputs) check() error {
	switch {
	case in.Pond == nil:
		return fail("/pond", CodeMissing, trace.Str("name", "pond"))
	case in.Supply == nil:
		return fail("/pumps", CodeMissing, trace.Str("name", "pump"))
	case len(in.Feeds) == 0:
		return fail("/watercourses", CodeMissing, trace.Str("name", "watercourse"))
	case in.Vault != nil && in.Vault.Body == nil:
		return fail("/vault", CodeMissing, trace.Str("name", "vault"))
	}
	err := cmp.Or(
		elevation("/pond/water", "line", in.Line), elevation("/vault/floor", "pump minimum", in.Low),
		notNegative("/pumps", "flow", in.Flow, unit.KindFlow),
	)
	if err == nil && !in.NoRim {
		err = elevation("/pond/rim", "rim", in.Rim)
	}
	for i := range in.Feeds {
		err = cmp.Or(err, in.Feeds[i].check())
	}
	if len(in.Ways) > 0 {
		err = cmp.Or(err, within("/runs", "places", unit.Ratio(in.Places), unit.Ratio(len(in.Feeds)), 1e6, unit.KindCount))
	}
	last := unit.Ratio(in.Places - 1)
	for _, w := range in.Ways {
		err = cmp.Or(err,
			within("/runs", "place", unit.Ratio(w.From), 0, last, unit.KindCount), within("/runs", "place", unit.Ratio(w.To), 0, last, unit.KindCount),
			notNegative("/runs", "resistance", unit.Ratio(w.Back), unit.KindRatio),
		)
	}
	return err
}

func (f *Feed) check() error {
	if len(f.Parts) == 0 {
		return fail(f.Path, CodeMissing, trace.Str("name", "box"))
	}
	err := cmp.Or(
		elevation(f.Path, "crest", f.Crest),
		notNegative(f.Path, "depth", f.Depth, unit.KindTape), notNegative(f.Path, "inlet", f.Inlet, unit.KindTape),
		notNegative(f.Path, "pipe", f.Pipe, unit.KindWater),
		within(f.Path, "pipe held", f.PipeHeld, 0, f.Pipe, unit.KindWater), within(f.Path, "pipe open", f.PipeOpen, 0, f.PipeHeld, unit.KindWater),
		notNegative(f.Path, "resistance", unit.Ratio(f.Back), unit.KindRatio), notNegative(f.Path, "bore", f.Bore, unit.KindArea),
	)
	for i := range f.Parts {
		p := &f.Parts[i]
		err = cmp.Or(err,
			notNegative(p.Path, "volume", p.Full, unit.KindWater),
			within(p.Path, "held", p.Held, 0, p.Full, unit.KindWater), within(p.Path, "held open", p.HeldOpen, 0, p.Held, unit.KindWater),
			notNegative(p.Path, "flow", p.Flow, unit.KindFlow), notNegative(p.Path, "area", p.Area, unit.KindArea),
			notNegative(p.Path, "plan", p.Plan, unit.KindArea), notNegative(p.Path, "emptying time", p.Empties, unit.KindDuration),
		)
	}
	return err
}

// elevation gives an error unless v is a height on earth, in metres.
func elevation(path, name string, v unit.Length) error {
	const most = 1e4
	return within(path, name, v, -most, most, unit.KindElevation)
}
