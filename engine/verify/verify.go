package verify

import (
	"plashet/engine/layout"
	"plashet/engine/trace"
)

// verifier is the work on one assembly.
type verifier struct {
	in     *layout.Input
	a      *layout.Assembly
	report Report
	lim    limits

	inside    inside
	body      []body // the pump's
	pump      []shape
	obstacles []shape
	port      vec
	points    vec
	hole      vec
	axis      vec
	open      bool   // there is a hole
	joints    []link // joints[i] is before part i
	stands    []stand
	last      int // leg on which the chain ends
	items     []item
}

// Prove proves or refutes an assembly as laid: every check that can be made,
// passed or not. An assembly without places (layout.Assembly.Laid) or whose
// counts do not match fails as a whole and nothing else of it is checked.
func Prove(in layout.Input, a layout.Assembly) Report {
	v := &verifier{in: &in, a: &a}
	if !v.holds(CheckWhole, in.Path, a.Laid && len(in.Parts) > 0 && len(a.Places) == len(in.Parts), trace.Str("what", "parts")) {
		return v.report
	}
	v.resolve()
	v.placePump()
	v.placeHole()
	if !v.join() {
		return v.report
	}
	v.walk()
	v.closure()
	v.pieces()
	v.sums()
	v.rolls()
	v.hoses()
	v.solids()
	v.clearances()
	v.valves()
	v.unions()
	v.stubs()
	v.water()
	v.errors()
	v.room()
	return v.report
}

// solids gathers what takes up room.
func (v *verifier) solids() {
	v.inside = within(&v.in.Vault)
	for _, b := range v.body {
		v.pump = append(v.pump, shapeOf(b, -1, 0))
	}
	for _, o := range v.in.Vault.Obstacles {
		v.obstacles = append(v.obstacles, shapeOf(block(from(o.Box.Min), from(o.Box.Max)), -1, 0))
	}
	v.gather()
}
