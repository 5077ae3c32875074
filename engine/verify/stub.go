package verify

import (
	"math"
	"slices"

	"plashet/engine/trace"
)

// stubs holds the stubs for the dry fit: one for each joint whose gap is no
// longer than the setting and that is not made yet, none for the others.
func (v *verifier) stubs() {
	told := 0
	for i := range v.joints {
		j := &v.joints[i]
		if j.piece == nil || v.next(i).Made || v.lim.stub == 0 || j.gap > v.lim.stub {
			continue
		}
		path, piece := v.joinPath(i), trace.Str("piece", j.piece.Mark)
		if told >= len(v.a.Stubs) || v.a.Stubs[told].Piece != j.piece.Mark || v.a.Stubs[told].Pipe != j.piece.Pipe {
			v.holds(CheckStub, path, false, piece)
			return
		}
		found := float64(v.a.Stubs[told].Length)
		told++
		v.equals(CheckStub, path, found, v.lim.stub+max(0, j.gap), v.lim.step/2, piece)
		v.equals(CheckStub, path, found, math.Round(found/v.lim.step)*v.lim.step, 0, piece)
	}
	for _, s := range v.a.Stubs[told:] {
		v.holds(CheckStub, v.in.Path, false, trace.Str("piece", s.Piece))
	}
	v.holds(CheckWhole, v.in.Path, !slices.ContainsFunc(v.joints, func(j link) bool { return j.piece != nil && math.IsNaN(j.gap) }) && told == len(v.a.Stubs), trace.Str("what", "stubs"))
}
