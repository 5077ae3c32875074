package verify

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Check is one thing proved or refuted. What was found is held against the
// limit: a clearance or a room must reach it, an error must not pass it, a mark
// must equal it. Margin is how far it is on the good side; below zero it fails
// by that much. Checks without a measure (an arrow), and those whose measure is
// not a number, carry none of the three; the latter fail.
type Check struct {
	trace.Message
	Path   string
	Found  unit.Value
	Limit  unit.Value
	Margin unit.Value
	Passed bool
}

// Report is all checks, in the order in which they were made.
type Report struct{ Checks []Check }

// Passed counts the checks that passed.
func (r *Report) Passed() int { return len(r.Checks) - len(r.Failed()) }

// Failed gives the checks that did not pass.
func (r *Report) Failed() []Check {
	var out []Check
	for _, c := range r.Checks {
		if !c.Passed {
			out = append(out, c)
		}
	}
	return out
}

func (v *verifier) add(code, path string, found, limit, margin float64, kind unit.Kind, args []trace.Arg) {
	c := Check{Message: trace.Message{Code: code, Args: args}, Path: path}
	if finite(found) && finite(limit) && finite(margin) {
		c.Found, c.Limit, c.Margin = unit.Value{SI: found, Kind: kind}, unit.Value{SI: limit, Kind: kind}, unit.Value{SI: margin, Kind: kind}
		c.Passed = margin >= -grain
	}
	v.report.Checks = append(v.report.Checks, c)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// atLeast: the length found must reach the limit.
func (v *verifier) atLeast(code, path string, found, limit float64, args ...trace.Arg) {
	v.add(code, path, found, limit, found-limit, unit.KindTape, args)
}

// atMost: the length found must not pass the limit.
func (v *verifier) atMost(code, path string, found, limit float64, args ...trace.Arg) {
	v.add(code, path, found, limit, limit-found, unit.KindTape, args)
}

// equals: the length found must be the limit, give or take `by`.
func (v *verifier) equals(code, path string, found, limit, by float64, args ...trace.Arg) {
	v.add(code, path, found, limit, by-math.Abs(found-limit), unit.KindTape, args)
}

// angleAtMost: the angle found must not pass the limit.
func (v *verifier) angleAtMost(code, path string, found, limit float64, args ...trace.Arg) {
	v.add(code, path, found, limit, limit-found, unit.KindAngle, args)
}

// holds: a thing that is so or not, without a measure.
func (v *verifier) holds(code, path string, ok bool, args ...trace.Arg) bool {
	v.report.Checks = append(v.report.Checks, Check{Message: trace.Message{Code: code, Args: args}, Path: path, Passed: ok})
	return ok
}
