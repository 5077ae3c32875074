package layout

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Settings are the fitter's habits and the distances to keep. Each may be left
// open.
type Settings struct {
	Units         unit.System      // lengths are rounded to 1/16 in or to 1 mm
	MakeUp        Set[unit.Length] // gap left at each pipe end; 0 is pushed home to the stop
	ClosingMakeUp Set[unit.Length] // the same for the closing piece
	Stub          Set[unit.Length] // length of a dry-fit stub beyond the gap it bridges

	WallClear     Set[unit.Length] // parts to walls, floor and lid
	PumpClear     Set[unit.Length] // parts to the pump
	ObstacleClear Set[unit.Length] // parts and pump to obstacles
	PartClear     Set[unit.Length] // parts that do not meet each other
	Hand          Set[unit.Length] // round a union's nut
	LiftClear     Set[unit.Length] // the pump on its way out

	Saw   Set[unit.Length] // error of one cut, either way
	Tape  Set[unit.Length] // error of one measurement in place
	Seat  Set[unit.Length] // error of how deep one socket takes its pipe
	Roll  Set[unit.Angle]  // error of one elbow's roll
	Elbow Set[unit.Angle]  // error of one elbow's own angle
}

// limits are the settings in force.
type limits struct {
	step                                           unit.Length
	makeUp, closingMakeUp, stub                    unit.Length
	wall, pump, obstacle, part, hand, lift         unit.Length
	saw, tape, seat                                unit.Length
	roll, elbow                                    unit.Angle
	makeUpSource, clearSource, handSource, liftSrc trace.Source
}

// Step gives the step to which lengths are rounded: 1/16 in or 1 mm (common
// practice, no source).
func Step(s unit.System) unit.Length {
	if s.Is(unit.Metric) {
		return unit.Millimetre
	}
	return unit.Inch / 16
}

// Enough rounds a length up to a whole step, whichever way it points: what is short
// by less than a step is mended by a whole one.
func Enough(by unit.Length, s unit.System) unit.Length {
	step := Step(s)
	const dust = 1e-6 // of a step, from the arithmetic
	return unit.Length(math.Ceil(math.Abs(float64(by/step))-dust)) * step
}

var (
	practice = trace.Source{Title: "common practice, no source", Basis: trace.BasisPractice}
	byHabit  = trace.Source{Title: "starting value, to be set by the crew", Basis: trace.BasisMemory}
	chosen   = trace.Source{Title: "set for this job", Basis: trace.BasisGuess, Note: "the user's own setting"}

	makeUpSource = trace.Source{
		Title: "common practice, no source", Basis: trace.BasisPractice,
		Note: "ASTM D2855 has the pipe pushed home to the stop (make-up 0); the maker's sheet decides",
	}
	closingSource = trace.Source{
		Title: "common practice, no source", Basis: trace.BasisPractice,
		Note: "the play of the pump takes up what the closing piece needs to go in",
	}
)

// resolve gives the settings in force and lists the defaults among them.
func (s Settings) resolve(path string) (limits, []trace.Assumption) {
	var open []trace.Assumption
	l := limits{step: Step(s.Units), makeUpSource: chosen, clearSource: chosen, handSource: chosen, liftSrc: chosen}
	length := func(code, at string, v Set[unit.Length], fallback unit.Length, src trace.Source) unit.Length {
		if v.Given {
			return v.Value
		}
		open = append(open, trace.Assumption{
			Message: trace.Message{Code: code}, Path: path + at,
			Value: unit.Of(fallback, unit.KindTape), Source: src,
		})
		return fallback
	}
	angle := func(code string, v Set[unit.Angle], fallback unit.Angle) unit.Angle {
		if v.Given {
			return v.Value
		}
		open = append(open, trace.Assumption{
			Message: trace.Message{Code: code}, Path: path,
			Value: unit.Of(fallback, unit.KindAngle), Source: byHabit,
		})
		return fallback
	}
	if !s.MakeUp.Given {
		l.makeUpSource = makeUpSource
	}
	if !s.WallClear.Given || !s.PumpClear.Given || !s.ObstacleClear.Given || !s.PartClear.Given {
		l.clearSource = byHabit
	}
	if !s.Hand.Given {
		l.handSource = byHabit
	}
	if !s.LiftClear.Given {
		l.liftSrc = byHabit
	}
	const in = unit.Inch
	l.makeUp = length(AssumeMakeUp, "/makeUp", s.MakeUp, in/8, makeUpSource)
	l.closingMakeUp = length(AssumeClosingMakeUp, "/closing/makeUp", s.ClosingMakeUp, 0, closingSource)
	l.stub = length(AssumeStub, "", s.Stub, in, practice)
	l.wall = length(AssumeWallClear, "", s.WallClear, in/4, byHabit)
	l.pump = length(AssumePumpClear, "", s.PumpClear, in/4, byHabit)
	l.obstacle = length(AssumeObstacleClear, "", s.ObstacleClear, in/4, byHabit)
	l.part = length(AssumePartClear, "", s.PartClear, 0, byHabit)
	l.hand = length(AssumeHand, "", s.Hand, 0.75*in, byHabit)
	l.lift = length(AssumeLiftClear, "", s.LiftClear, in/8, byHabit)
	l.saw = length(AssumeSaw, "", s.Saw, in/16, practice)
	l.tape = length(AssumeTape, "", s.Tape, in/16, byHabit)
	l.seat = length(AssumeSeat, "", s.Seat, in/32, byHabit)
	l.roll = angle(AssumeRoll, s.Roll, unit.Degree)
	l.elbow = angle(AssumeElbow, s.Elbow, 0.5*unit.Degree)
	return l, open
}
