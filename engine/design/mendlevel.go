package design

import (
	"math"
	"slices"

	"plashet/engine/level"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of what mends a level.
const (
	// RemedyTopUp: the pond is topped up while it runs. Args: below (the line under the rim, left out where there is none), over (over the sill, left out where there is none).
	RemedyTopUp = "design.remedy.topup"
	// RemedySill: the skimmer's sill is set lower. Args: amount.
	RemedySill = "design.remedy.sill"
	// RemedyRim: the lowest point of the edge, or the overflow, is set higher. Args: amount.
	RemedyRim = "design.remedy.rim"
	// RemedyFill: the pond is filled higher at rest. Args: amount.
	RemedyFill = "design.remedy.fill"
	// RemedyDrain: the pond is filled less high at rest. Args: amount.
	RemedyDrain = "design.remedy.drain"
)

// change is one way to mend a level: put does it by an amount.
type change struct {
	code string
	most unit.Length // the amount beyond which nobody does it
	put  func(in *level.Inputs, by unit.Length) bool
}

// mostMove is how far a sill, a rim or a water line is moved at most: beyond,
// the pond is another one. Common practice, no source.
const mostMove = unit.Foot

var (
	topUp = change{RemedyTopUp, mostMove, func(in *level.Inputs, by unit.Length) bool {
		if in.TopsUp {
			in.RunningLine += by
			return true
		}
		from := in.Lowest()
		if v := in.Vault; v != nil && v.Sill != nil {
			from = v.Sill.Crest
		}
		in.TopsUp, in.RunningLine = true, from+by
		return true
	}}
	lowerSill = change{RemedySill, mostMove, func(in *level.Inputs, by unit.Length) bool {
		if in.Vault == nil || in.Vault.Sill == nil || in.Vault.Sill.Crest-by < in.Lowest() {
			return false
		}
		vault, sill := *in.Vault, *in.Vault.Sill
		sill.Crest -= by
		vault.Sill = &sill
		in.Vault = &vault
		return true
	}}
	raiseRim = change{RemedyRim, mostMove, func(in *level.Inputs, by unit.Length) bool {
		in.Rim += by
		return !in.NoRim
	}}
	fillHigher = change{RemedyFill, mostMove, func(in *level.Inputs, by unit.Length) bool {
		in.Line += by
		return in.NoRim || in.Line < in.Rim
	}}
	fillLower = change{RemedyDrain, mostMove, func(in *level.Inputs, by unit.Length) bool {
		in.Line -= by
		return true
	}}
)

// ailment is what a family of findings has in common: it is mended when none of
// them is left.
type ailment struct {
	codes   []string
	changes []change
}

var ailments = []ailment{
	{[]string{level.FindingRestartStarves, level.FindingRestartEmpty, level.FindingRestartBare, level.FindingReserve}, []change{topUp, lowerSill, fillHigher}},
	{[]string{level.FindingStartStarves, level.FindingStartEmpty, level.FindingStartBare, level.FindingStartReserve}, []change{lowerSill, fillHigher}},
	{[]string{level.FindingPumpLow, level.FindingPumpReserve}, []change{topUp, fillHigher}},
	{[]string{level.FindingStopSpills, level.FindingStopRain}, []change{raiseRim, fillLower}},
	{[]string{level.FindingValveSpills, level.FindingValveRain}, []change{raiseRim, fillLower}},
	{[]string{level.FindingSillDry}, []change{lowerSill, fillHigher}},
	{[]string{level.FindingLineOver}, []change{raiseRim, fillLower}},
	{[]string{level.FindingLineNone}, []change{raiseRim, lowerSill}},
}

// mendLevels puts under each finding about levels what would mend it: the least
// of each change, in steps that can be built, after which the levels worked out
// again have none of its kind left and nothing new amiss.
func (m *model) mendLevels(l *level.Levels) {
	for i := range m.out.Findings {
		f := &m.out.Findings[i]
		k := slices.IndexFunc(ailments, func(a ailment) bool { return slices.Contains(a.codes, f.Code) })
		if k < 0 {
			continue
		}
		for _, c := range ailments[k].changes {
			if by, mended := m.least(l, f, &ailments[k], c); mended != nil {
				f.Remedies = append(f.Remedies, levelRemedy(f, l, mended, c, by))
			}
		}
	}
}

// Steps in which a sill or a rim is set. A fifth of a step must be to spare:
// the flow moves a little with the level, and nobody sets a sill truer.
const (
	stepUS     = unit.Inch / 4
	stepMetric = 5 * unit.Millimetre
	stepSpare  = 0.2
)

// least looks for a small amount of a change that cures: what is short by the
// finding, and where that does not do, by doubling and halving.
func (m *model) least(l *level.Levels, f *trace.Finding, a *ailment, c change) (unit.Length, *level.Levels) {
	step := stepUS
	if m.out.Units.Is(unit.Metric) {
		step = stepMetric
	}
	try := func(n int) *level.Levels {
		in := *l.Inputs()
		if !c.put(&in, unit.Length(n)*step) {
			return nil
		}
		out, err := level.Solve(in)
		if err != nil || !cured(l, &out, a) {
			return nil
		}
		return &out
	}
	short := unit.Length(math.Abs(f.Limit.SI - f.Found.SI))
	if c.code == RemedyTopUp {
		if in := *l.Inputs(); c.put(&in, 0) {
			short = l.Lines.Least - in.RunningLine
		}
	}
	most := int(math.Floor(float64(c.most / step)))
	first := max(1, int(math.Ceil(min(float64(short/step), float64(most))+stepSpare)))
	low, high := 0, first
	best := try(high)
	for best == nil {
		if low, high = high, 2*high; low >= most {
			return 0, nil
		}
		best = try(high)
	}
	for high > first && high-low > 1 {
		mid := (low + high) / 2
		if t := try(mid); t != nil {
			high, best = mid, t
		} else {
			low = mid
		}
	}
	return unit.Length(high) * step, best
}

// cured tells that none of an ailment's findings is left, and that nothing else
// is amiss that was not before.
func cured(before, after *level.Levels, a *ailment) bool {
	for i := range after.Findings {
		f := &after.Findings[i]
		was := slices.ContainsFunc(before.Findings, func(b trace.Finding) bool { return b.Code == f.Code && b.Severity >= f.Severity })
		if slices.Contains(a.codes, f.Code) || !was && f.Severity > trace.Info {
			return false
		}
	}
	return true
}

// levelRemedy words a change, with the margin that it moves.
func levelRemedy(f *trace.Finding, before, after *level.Levels, c change, by unit.Length) trace.Remedy {
	r := trace.Remedy{Message: trace.Message{Code: c.code}}
	if in := after.Inputs(); c.code == RemedyTopUp {
		if !in.NoRim {
			r.Args = append(r.Args, trace.Num("below", in.Rim-in.RunningLine, unit.KindDepth))
		}
		if in.Vault != nil && in.Vault.Sill != nil {
			r.Args = append(r.Args, trace.Num("over", in.RunningLine-in.Vault.Sill.Crest, unit.KindDepth))
		}
	} else {
		r.Args = append(r.Args, trace.Num("amount", by, unit.KindDepth))
	}
	course, moment := text(f.Message, "course"), text(f.Message, "moment")
	if moment == "" {
		moment = string(level.MomentRun)
	}
	was, ok := before.Find(level.Course(course), level.Moment(moment))
	if !ok {
		return r
	}
	now, ok := after.Find(level.Course(course), level.Moment(moment))
	if c.code == RemedyTopUp {
		now, ok = after.Find(level.CourseTopped, level.MomentRun)
	}
	if !ok {
		return r
	}
	id := "level." + course + "." + moment
	part, from, to := ".freeboard", was.Edge.Freeboard, now.Edge.Freeboard
	switch {
	case was.Pump.Applies && now.Pump.Applies && (f.Code == level.FindingPumpLow || f.Code == level.FindingPumpReserve):
		part, from, to = ".pump", was.Pump.Over, now.Pump.Over
	case was.Sill.Applies && now.Sill.Applies:
		part, from, to = ".sill", was.Sill.Over, now.Sill.Over
	case was.Moment.Running():
		return r
	}
	r.Effect = []trace.Effect{{Figure: id + part, Before: unit.Of(from, unit.KindDepth), After: unit.Of(to, unit.KindDepth)}}
	return r
}

// text gives a text argument of a message.
func text(m trace.Message, name string) string {
	for _, a := range m.Args {
		if a.Name == name {
			return a.Text
		}
	}
	return ""
}
