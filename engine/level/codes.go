package level

import (
	"fmt"
	"math"
	"strings"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of the errors of this package, with the arguments that each carries.
const (
	// CodeNotFinite: a value is not a number or without bound. Args: name.
	CodeNotFinite = "level.value.finite"
	// CodeRange: a value lies outside what is possible. Args: name, found,
	// limit (the bound it breaks).
	CodeRange = "level.value.range"
	// CodeMissing: something that the levels cannot be worked out without is
	// not given. Args: name.
	CodeMissing = "level.missing"
	// CodeSection: the corners of the pond's side must go down and inward.
	// Args: name (depth or in), step (counted from 0), found, limit (the step
	// before).
	CodeSection = "level.section.order"
)

// Codes of the findings. Each carries course (which history: see Course),
// and the levels in play.
const (
	// FindingStartStarves: at first start the water does not suffice: the pond
	// falls to where the skimmer passes less than the pump takes, so the vault
	// falls and the pump gasps. Args: course, over (pond over the sill), needed,
	// flow (the pump's), missing (water to be added), and either passes (flow
	// that comes over the sill in the end) or, where that is none, unfilled
	// (what pipe, streams and pools lack). Package design adds at, the time from
	// the start, where it follows the start through time; likewise in the next.
	FindingStartStarves = "levels.start.starves"
	// FindingRestartStarves: the same at every start. Args as above.
	FindingRestartStarves = "levels.restart.starves"
	// FindingStartEmpty: without a sill, at first start pipe, streams and pools
	// take more than the pump can draw from the pond. Args: course, depth (water
	// over what the pump stands on), missing, at (the time, where it is followed).
	FindingStartEmpty = "levels.start.empty"
	// FindingRestartEmpty: the same at every start. Args as above.
	FindingRestartEmpty = "levels.restart.empty"
	// FindingStartBare: at first start the pond comes down to just what the
	// skimmer needs, and the vault is drawn down. Args: course, needed, fall
	// (the vault below the sill), spare (water that may be lost).
	FindingStartBare = "levels.start.bare"
	// FindingRestartBare: the same at every start. Args as above.
	FindingRestartBare = "levels.restart.bare"
	// FindingStartReserve: after the first start the vault is fed, but not once
	// the evaporation reserve is gone. Args: course, over, needed, short (with
	// the reserve taken off).
	FindingStartReserve = "levels.start.reserve"
	// FindingReserve: the same at every start. Args as above.
	FindingReserve = "levels.run.reserve"
	// FindingPumpLow: running, the water over the vault's floor is less than
	// the pump's sheet asks for. Args: course, depth, needed, short.
	FindingPumpLow = "levels.pump.low"
	// FindingPumpReserve: the same once the evaporation reserve is gone. Args
	// as above.
	FindingPumpReserve = "levels.pump.reserve"
	// FindingStopSpills: after a stop the water stands above the rim. Args:
	// course, moment, level, rim, over, spill (volume lost), at (time from the
	// stop, where it is followed).
	FindingStopSpills = "levels.stop.spills"
	// FindingStopRain: after a stop a design rain no longer fits under the rim.
	// Args: course, moment, room (under the rim, dry), rain (rise it makes),
	// spill, at (time from the rain's beginning, where it is followed).
	FindingStopRain = "levels.stop.rain"
	// FindingValveSpills, FindingValveRain: the same should the check valve
	// that is fitted stick open.
	FindingValveSpills = "levels.valve.spills"
	FindingValveRain   = "levels.valve.rain"
	// FindingSillDry: the sill lies at or above the water line: the pond never
	// feeds the vault. Args: sill, line.
	FindingSillDry = "levels.sill.dry"
	// FindingLineOver: the water line lies above the rim. Args: line, rim.
	FindingLineOver = "levels.line.over"
	// FindingLineNone: no running line both feeds the pump and keeps a stop
	// (with the design rain) under the rim. Args: low, high (both down from the rim).
	FindingLineNone = "levels.line.none"
	// FindingRimNone: the rim is not known, so nothing tells whether a stop or a
	// rain runs over. No args.
	FindingRimNone = "levels.rim.none"
	// FindingValveNone: no check valve is fitted. Args: back (what runs back
	// through the pump at every stop).
	FindingValveNone = "levels.valve.none"
)

// AssumePumpMinimum says that the pump's least water depth is not known; it is taken to
// run down to the floor it stands on, so nothing is said about its margin. No
// args.
const AssumePumpMinimum = "assume.levels.pump.minimum"

// Error tells why a value is refused. It is data: the sentence is made at the
// edge. Path is the part of the job it belongs to, where the caller told it.
type Error struct {
	trace.Message
	Path string
}

func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Code)
	for _, a := range e.Args {
		if a.Text != "" {
			fmt.Fprintf(&b, " %s=%s", a.Name, a.Text)
		} else {
			fmt.Fprintf(&b, " %s=%g", a.Name, a.Value.SI)
		}
	}
	return b.String()
}

func fail(path, code string, args ...trace.Arg) error {
	return &Error{trace.Message{Code: code, Args: args}, path}
}

func finite[Q ~float64](v Q) bool {
	return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0)
}

// within gives an error unless low <= v <= high.
func within[Q unit.Quantity](path, name string, v, low, high Q, k unit.Kind) error {
	if v >= low && v <= high && math.Abs(float64(v)) <= math.MaxFloat64 {
		return nil
	}
	if m, out := trace.Outside(CodeNotFinite, CodeRange, name, v, low, high, k); out {
		return &Error{m, path}
	}
	return nil
}

// notNegative gives an error unless v is finite and at least zero.
func notNegative[Q unit.Quantity](path, name string, v Q, k unit.Kind) error {
	return within(path, name, v, 0, Q(math.MaxFloat64), k)
}

// positive gives an error unless v is finite and above zero.
func positive[Q unit.Quantity](path, name string, v Q, k unit.Kind) error {
	if v == 0 {
		return fail(path, CodeRange, trace.Str("name", name), trace.Num("found", v, k), trace.Num("limit", v, k))
	}
	return notNegative(path, name, v, k)
}

// elevation gives an error unless v is a height on earth.
func elevation(path, name string, v unit.Length) error {
	return within(path, name, v, -maxElevation, maxElevation, unit.KindElevation)
}

// maxElevation bounds levels, in metres: the range in which the job document
// takes them, so that differences keep their digits.
const maxElevation = 1e4
