package design

import (
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/verify"
)

// Codes of the second check of the assembly. What it refutes and the first does
// not tell goes by its own codes (engine/verify).
const (
	// FindUnconfirmed: a danger told of the assembly that the second check does
	// not find: one of the two errs. The danger stands. Args: code (of the danger).
	FindUnconfirmed = "design.assembly.unconfirmed"
)

// twice is the source of the second check's limits.
var twice = trace.Source{Title: "the assembly worked out a second time, by another method (engine/verify)", Basis: trace.BasisLibrary}

// second proves the laid assembly by the second check and gives what the two do
// not agree in: each a danger. Under a fault the two need not agree: it is held
// back in any case, and only counted.
func (m *model) second(in layout.Input, a layout.Assembly, findings []trace.Finding, faults []trace.Fault) []trace.Finding {
	if !a.Laid {
		return nil
	}
	r := verify.Prove(in, a)
	m.out.Second = &r
	if len(faults) > 0 {
		return nil
	}
	var out []trace.Finding
	for _, c := range r.Untold(findings, faults) {
		out = append(out, trace.Finding{Message: c.Message, Path: c.Path, Severity: trace.Danger, Found: c.Found, Limit: c.Limit, LimitSource: twice})
	}
	m.out.Findings = append(m.out.Findings, out...)
	for _, f := range r.Unproved(findings) {
		m.remark(f.Path, trace.Caution, trace.Message{Code: FindUnconfirmed, Args: []trace.Arg{trace.Str("code", f.Code)}})
	}
	return out
}
