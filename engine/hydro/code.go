package hydro

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
	CodeNotFinite = "hydro.value.finite"
	// CodeRange: a value lies outside what the formula holds for. Args: name,
	// found, limit (the bound it breaks).
	CodeRange = "hydro.value.range"
	// CodeWord: a word that this package does not know. Args: name, found.
	CodeWord = "hydro.value.word"
	// CodeCurveNone: a pump without data: fewer than two points, and no box
	// flow with a greatest head. No args.
	CodeCurveNone = "hydro.curve.none"
	// CodeCurveDuplicate: two points of a curve at one flow. Args: flow.
	CodeCurveDuplicate = "hydro.curve.duplicate"
	// CodeCurveRise: the head of a curve rises with the flow by more than passes
	// as a drooping curve, or does not fall in the end. Args: flow (where it has
	// risen), rise, limit.
	CodeCurveRise = "hydro.curve.rise"
	// CodeNPSHNone: no point of the suction head required. No args.
	CodeNPSHNone = "hydro.npsh.none"
)

// Codes of the cautions that come with an answer, with their arguments.
const (
	// CautionCurveFew: two or three points make a curve, four or more are
	// normal. Args: count.
	CautionCurveFew = "hydro.curve.few"
	// CautionCurveLevelled: the curve rose by less than its reading error and
	// was made level there. Args: rise (the greatest), limit.
	CautionCurveLevelled = "hydro.curve.levelled"
	// CautionCurveDroop: the head of the curve rises with the flow over part of
	// its range, as that of a drooping curve. Args: flow (where it has risen), rise.
	CautionCurveDroop = "hydro.curve.droop"
	// CautionCurveNameplate: no curve, only the box's flow and greatest head:
	// an estimate with a wide band. Args: flow, head.
	CautionCurveNameplate = "hydro.curve.nameplate"
	// CautionPowerConstant: the watts are known at fewer than two points, so
	// one figure stands for the whole curve. Args: power.
	CautionPowerConstant = "hydro.power.constant"
	// CautionHazenLeast: a pipe known only by its Hazen-Williams C is used under
	// the least value that the formula was made for. Args: name ("bore",
	// "temperature", "Reynolds number"), found, limit.
	CautionHazenLeast = "hydro.hazen.least"
	// CautionHazenMost: likewise over the greatest value. Args: name ("speed",
	// "temperature"), found, limit.
	CautionHazenMost = "hydro.hazen.most"
	// CautionCling: the head over the middle of a lip is so small that the sheet
	// clings and the weir formulas are loose. Args: head, limit, band.
	CautionCling = "hydro.lip.cling"
	// CautionClingHigh: only towards the high end of a tilted lip the head is so
	// small that the sheet clings. Args: head (at the high end), limit.
	CautionClingHigh = "hydro.lip.cling.high"
	// CautionTilt: a lip's tilt is large against the head over it. Args: tilt,
	// limit.
	CautionTilt = "hydro.lip.tilt"
	// CautionDry: part of a tilted lip is dry. Args: width (the dry part).
	CautionDry = "hydro.lip.dry"
	// CautionSteep: a stream steeper than Manning's formula is used for. Args:
	// found, limit.
	CautionSteep = "hydro.channel.steep"
)

// Error tells why a value is refused. It is data: the sentence is made at the
// edge.
type Error struct{ trace.Message }

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

func fail(code string, args ...trace.Arg) error {
	return &Error{trace.Message{Code: code, Args: args}}
}

func finite[Q ~float64](v Q) bool {
	return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0)
}

// within gives an error unless low <= v <= high.
func within[Q unit.Quantity](name string, v, low, high Q, k unit.Kind) error {
	if m, out := trace.Outside(CodeNotFinite, CodeRange, name, v, low, high, k); out {
		return &Error{m}
	}
	return nil
}

// positive gives an error unless v is above zero.
func positive[Q unit.Quantity](name string, v Q, k unit.Kind) error {
	if finite(v) && v <= 0 {
		return fail(CodeRange, trace.Str("name", name), trace.Num("found", v, k), trace.Num("limit", Q(0), k))
	}
	return within(name, v, 0, Q(math.MaxFloat64), k)
}

// notNegative gives an error unless v is at least zero.
func notNegative[Q unit.Quantity](name string, v Q, k unit.Kind) error {
	return within(name, v, 0, Q(math.MaxFloat64), k)
}
