package verify

import (
	"math"
	"slices"
	"strings"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// rule says which of layout's codes tell what a failed check tells, and which
// arguments of the check the finding must name too.
type rule struct {
	codes []string
	names []string
	same  bool // the finding must have found the same
	depth bool // where things stand in each other the finding must be a danger
}

var rules = map[string]rule{
	CheckEnvelope:     {codes: []string{layout.FaultMissing}, names: []string{"part"}},
	CheckHole:         {codes: []string{layout.FaultHole}},
	CheckJoint:        {codes: []string{layout.FaultSize, layout.FaultEnds, layout.FaultThread, layout.FindParallel}, names: []string{"from", "to"}},
	CheckLeast:        {codes: []string{layout.FaultShort, layout.FaultClosingShort}, names: []string{"piece"}},
	CheckClosure:      {codes: []string{layout.FindClosure}, same: true},
	CheckAsCut:        {codes: []string{layout.FindClosure}},
	CheckAxis:         {codes: []string{layout.FindTurned}, same: true},
	CheckWall:         {codes: []string{layout.FindWall}, names: []string{"part", "wall"}, depth: true},
	CheckPumpClear:    {codes: []string{layout.FindPump}, names: []string{"part"}, depth: true},
	CheckObstacle:     {codes: []string{layout.FindObstacle}, names: []string{"part", "obstacle"}, depth: true},
	CheckParts:        {codes: []string{layout.FindParts}, names: []string{"part", "other"}, depth: true},
	CheckPumpWall:     {codes: []string{layout.FindPumpWall, layout.FaultPumpLarger}, depth: true},
	CheckPumpObstacle: {codes: []string{layout.FindPumpObstacle}, names: []string{"obstacle"}, depth: true},
	CheckArrow:        {codes: []string{layout.FindReversed}, names: []string{"part"}},
	CheckAttitude:     {codes: []string{layout.FindAttitude}, names: []string{"part"}, same: true},
	CheckCover:        {codes: []string{layout.FindHinge, layout.FindAttitude}, names: []string{"part"}},
	CheckUnion:        {codes: []string{layout.FindNoUnion}},
	// A nut that stands in something, and a pump that does before it moves, is
	// told with the clearances.
	CheckHand: {codes: []string{layout.FindHand, layout.FindWall, layout.FindPump, layout.FindObstacle, layout.FindParts}, names: []string{"part"}},
	CheckWay: {codes: []string{
		layout.FindBlocked, layout.FindLip, layout.FindWall, layout.FindPump, layout.FindObstacle, layout.FindParts,
		layout.FindPumpWall, layout.FindPumpObstacle,
	}},
	CheckShorter:      {codes: []string{layout.FaultClosingIdle}},
	CheckShare:        {codes: []string{layout.FaultClosingIdle}},
	CheckNeeded:       {codes: []string{layout.FaultClosingIdle}},
	CheckPlay:         {codes: []string{layout.FindPlay}, names: []string{"axis"}},
	CheckHoseRadius:   {codes: []string{layout.FindHoseTight}, names: []string{"part"}, same: true},
	CheckHoseStraight: {codes: []string{layout.FindHoseStraight}, names: []string{"part"}},
	CheckHoseLong:     {codes: []string{layout.FindHoseLong}, names: []string{"part"}, same: true},
	CheckHoseWall:     {codes: []string{layout.FindHoseWall}, names: []string{"part"}},
	CheckSpare:        {codes: []string{layout.FindClosingSpare, layout.FaultClosingShort}, names: []string{"piece"}},
}

// Untold gives the failed checks that layout's findings and faults do not tell:
// in these the two disagree, and the assembly is not proved.
func (r *Report) Untold(findings []trace.Finding, faults []trace.Fault) []Check {
	var out []Check
	for _, c := range r.Failed() {
		told := slices.ContainsFunc(findings, func(f trace.Finding) bool { return tells(&f, &c) }) ||
			slices.ContainsFunc(faults, func(f trace.Fault) bool {
				rule := rules[c.Code]
				return slices.Contains(rule.codes, f.Code) && namesAll(f.Message, &c, rule.names)
			})
		if !told {
			out = append(out, c)
		}
	}
	return out
}

// Unproved gives the dangers among layout's findings that no failed check
// confirms: there this package may be the one that errs.
func (r *Report) Unproved(findings []trace.Finding) []trace.Finding {
	failed := r.Failed()
	var out []trace.Finding
	for _, f := range findings {
		known := func(x rule) bool { return slices.Contains(x.codes, f.Code) }
		judged := false
		for _, x := range rules {
			judged = judged || known(x)
		}
		met := slices.ContainsFunc(failed, func(c Check) bool {
			return known(rules[c.Code]) && namesAll(f.Message, &c, rules[c.Code].names)
		})
		if judged && !met && f.Severity == trace.Danger {
			out = append(out, f)
		}
	}
	return out
}

// tells tells that a finding is about what a check refutes, and as grave.
func tells(f *trace.Finding, c *Check) bool {
	rule := rules[c.Code]
	switch {
	case !slices.Contains(rule.codes, f.Code) || f.Severity == trace.Info:
		return false
	case rule.depth && c.Found.SI < -touch && f.Severity != trace.Danger:
		return false
	case rule.same && !(math.Abs(f.Found.SI-c.Found.SI) <= touch):
		return false
	}
	return namesAll(f.Message, c, rule.names)
}

// namesAll tells that a message names, in any of its arguments, every argument
// of the check that is asked for.
func namesAll(m trace.Message, c *Check, names []string) bool {
	for _, a := range c.Args {
		if !slices.Contains(names, a.Name) {
			continue
		}
		if !slices.ContainsFunc(m.Args, func(b trace.Arg) bool { return slices.Contains(strings.Split(b.Text, ", "), a.Text) }) {
			return false
		}
	}
	return true
}
