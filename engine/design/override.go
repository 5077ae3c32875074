package design

import (
	"slices"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// settings gives the fitter's habits and the distances to keep: those with a
// field of their own from there, the others from the job's own list.
func (m *model) settings() layout.Settings {
	s := layout.Settings{Units: m.out.Units}
	a := &m.job.Assembly
	if !a.MakeUp.IsZero() {
		s.MakeUp = layout.Is(a.MakeUp.SI)
	}
	if !a.Closing.MakeUp.IsZero() {
		s.ClosingMakeUp = layout.Is(a.Closing.MakeUp.SI)
	}
	if len(m.job.Assumptions) == 0 {
		return s
	}
	set(m, layout.AssumeStub, unit.KindTape, &s.Stub)
	set(m, layout.AssumeWallClear, unit.KindTape, &s.WallClear)
	set(m, layout.AssumePumpClear, unit.KindTape, &s.PumpClear)
	set(m, layout.AssumeObstacleClear, unit.KindTape, &s.ObstacleClear)
	set(m, layout.AssumePartClear, unit.KindTape, &s.PartClear)
	set(m, layout.AssumeHand, unit.KindTape, &s.Hand)
	set(m, layout.AssumeLiftClear, unit.KindTape, &s.LiftClear)
	set(m, layout.AssumeSaw, unit.KindTape, &s.Saw)
	set(m, layout.AssumeTape, unit.KindTape, &s.Tape)
	set(m, layout.AssumeSeat, unit.KindTape, &s.Seat)
	set(m, layout.AssumeRoll, unit.KindAngle, &s.Roll)
	set(m, layout.AssumeElbow, unit.KindAngle, &s.Elbow)
	return s
}

// set takes a setting from the job's list; one that cannot be read is told and
// left open. No setting is below zero.
func set[Q unit.Quantity](m *model, code string, kind unit.Kind, to *layout.Set[Q]) {
	for i, a := range m.job.Assumptions {
		if a.Code != code {
			continue
		}
		m.heeded = append(m.heeded, i)
		q, _, err := unit.Read[Q](a.Value, kind, m.out.Units)
		if err != nil || q < 0 {
			m.fault(at("/assumptions", i)+"/value", CodeSetting, trace.Str("code", code), trace.Str("found", a.Value))
			continue
		}
		*to = layout.Is(q)
	}
}

// unheeded refuses settings that nothing counts on, and names the field for
// those that have one.
func (m *model) unheeded() {
	for i, a := range m.job.Assumptions {
		if slices.Contains(m.heeded, i) || isDoubt(a.Code) && m.out.Bands == nil {
			continue
		}
		code, args := CodeOverride, []trace.Arg{trace.Str("code", a.Code)}
		for _, x := range m.out.Assumptions {
			if x.Code == a.Code {
				code, args = CodeOwnField, append(args, trace.At("field", m.job.PlaceOf(x.Path)))
				break
			}
		}
		m.fault(at("/assumptions", i), code, args...)
	}
}
