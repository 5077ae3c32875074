package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// limits are the settings in force: as typed, or as the assembly says that it
// assumed them. This package has no defaults of its own.
type limits struct {
	step, makeUp, closing, wall, pump, obstacle, part, hand, lift float64
	stub, saw, tape, seat, roll, elbow                            float64
}

// Lines of engine/layout, to the fitter's eye (common practice or from memory,
// as told there).
const (
	squareTo = 1 * float64(unit.Degree) // last leg against the hole's axis
	plumbTo  = 2 * float64(unit.Degree) // out of level or upright and still counting as it
	playIn   = 4                        // steps that the pump's play may take up
)

func (v *verifier) resolve() {
	s, l := &v.in.Settings, &v.lim
	l.step = float64(unit.Inch) / 16
	if s.Units.Is(unit.Metric) {
		l.step = float64(unit.Millimetre)
	}
	for _, x := range [...]struct {
		to   *float64
		set  layout.Set[unit.Length]
		code string
	}{
		{&l.makeUp, s.MakeUp, layout.AssumeMakeUp},
		{&l.closing, s.ClosingMakeUp, layout.AssumeClosingMakeUp},
		{&l.wall, s.WallClear, layout.AssumeWallClear},
		{&l.pump, s.PumpClear, layout.AssumePumpClear},
		{&l.obstacle, s.ObstacleClear, layout.AssumeObstacleClear},
		{&l.part, s.PartClear, layout.AssumePartClear},
		{&l.hand, s.Hand, layout.AssumeHand},
		{&l.lift, s.LiftClear, layout.AssumeLiftClear},
		{&l.stub, s.Stub, layout.AssumeStub},
		{&l.saw, s.Saw, layout.AssumeSaw},
		{&l.tape, s.Tape, layout.AssumeTape},
		{&l.seat, s.Seat, layout.AssumeSeat},
	} {
		*x.to = v.setting(x.set.Given, float64(x.set.Value), x.code)
	}
	l.roll = v.setting(s.Roll.Given, float64(s.Roll.Value), layout.AssumeRoll)
	l.elbow = v.setting(s.Elbow.Given, float64(s.Elbow.Value), layout.AssumeElbow)
}

// setting gives one setting; one that is neither typed nor assumed is not a
// number, which fails whatever is held against it.
func (v *verifier) setting(given bool, typed float64, code string) float64 {
	if given {
		return typed
	}
	d, ok := assumed(v.a.Assumptions, code)
	if !ok {
		v.holds(CheckLimit, v.in.Path, false, trace.Str("name", code))
		return math.NaN()
	}
	return d
}

func assumed(all []trace.Assumption, code string) (float64, bool) {
	for i := range all {
		if all[i].Code == code {
			return all[i].Value.SI, true
		}
	}
	return 0, false
}
