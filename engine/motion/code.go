package motion

import (
	"fmt"
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of the errors of this package, with the arguments that each carries.
const (
	// CodeNotFinite: a value is not a number or without bound. Args: name.
	CodeNotFinite = "motion.value.finite"
	// CodeRange: a value lies outside what is possible. Args: name, found,
	// limit (the bound it breaks).
	CodeRange = "motion.value.range"
	// CodeMissing: something that nothing can move without is not given. Args: name.
	CodeMissing = "motion.missing"
	// CodeSupply: pump and pipe have no steady flow between the levels that the
	// water comes to. No args.
	CodeSupply = "motion.supply"
	// CodeSteps: the integration did not come to its end within its bound of
	// steps. No args.
	CodeSteps = "motion.steps"
)

// Error is an error of this package as data.
type Error struct {
	Path string // of the part in the job, "" when the input as a whole is meant
	trace.Message
}

func (e *Error) Error() string { return fmt.Sprintf("motion %s: %s", e.Path, e.Code) }

func fail(path, code string, args ...trace.Arg) error {
	return &Error{path, trace.Message{Code: code, Args: args}}
}

// within gives an error unless low <= v <= high.
func within[Q unit.Quantity](path, name string, v, low, high Q, k unit.Kind) error {
	if m, out := trace.Outside(CodeNotFinite, CodeRange, name, v, low, high, k); out {
		return &Error{path, m}
	}
	return nil
}

func notNegative[Q unit.Quantity](path, name string, v Q, k unit.Kind) error {
	return within(path, name, v, 0, Q(math.MaxFloat64), k)
}
