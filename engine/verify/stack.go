package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// slip is the small angle by which the pump's side of the chain is turned to
// see where an error leads. Turned both ways, what is curved in it cancels but
// for a part of one in 10^9.
const slip = 1e-4

// about gives p turned about an axis (length 1) through c, by the right hand.
func about(p, c, axis vec, angle float64) vec {
	r := p.minus(c)
	s, k := math.Sincos(angle)
	return c.at(r, k).at(axis.square(r), s).at(axis, axis.along(r)*(1-k))
}

// fault is one source of error at its bound: how far it moves the port when the
// chain is built from the wall inwards, and by how much it turns it.
type fault struct{ move, tilt vec }

// faults lists all sources of error.
func (v *verifier) faults() (out []fault) {
	for i := range v.joints {
		dir := v.stands[i].in
		if v.joints[i].piece != nil {
			out = append(out, fault{move: dir.times(v.lim.saw)})
		}
		for range v.cemented(i) {
			out = append(out, fault{move: dir.times(v.lim.seat)})
		}
	}
	for i := range v.in.Parts {
		if turnOf(v.in.Parts[i].Kind) == 0 {
			continue
		}
		s := &v.stands[i]
		bend, _ := s.in.square(s.out).one()
		for _, x := range [2]struct {
			axis  vec
			bound float64
		}{{s.out, v.lim.roll}, {bend, v.lim.elbow}} {
			turned := func(p, c vec) vec {
				return about(p, c, x.axis, slip).minus(about(p, c, x.axis, -slip)).times(x.bound / (2 * slip))
			}
			out = append(out, fault{move: turned(v.port, s.centre), tilt: turned(v.points, vec{})})
		}
	}
	return out
}

// cemented gives the number of sockets with cement before part i.
func (v *verifier) cemented(i int) int {
	out := &v.in.Pump.Outlet
	if i > 0 {
		out = &v.in.Parts[i-1].Out
	}
	n := 0
	for _, e := range [2]*layout.End{out, &v.in.Parts[i].In} {
		if e.Kind == layout.Socket {
			n++
		}
	}
	return n
}

func (a vec) size() vec { return vec{math.Abs(a.x), math.Abs(a.y), math.Abs(a.z)} }

// sums of errors along the frame: all at their bounds and adding up, and the
// root of the sum of squares.
func total(all []vec) (worst, likely vec) {
	for _, e := range all {
		worst = worst.plus(e.size())
		likely = vec{math.Hypot(likely.x, e.x), math.Hypot(likely.y, e.y), math.Hypot(likely.z, e.z)}
	}
	return worst, likely
}

// errors holds what is told of the errors that add up.
func (v *verifier) errors() {
	var moves, tilts []vec
	for _, f := range v.faults() {
		moves, tilts = append(moves, f.move), append(tilts, f.tilt)
	}
	worst, likely := total(moves)
	turned, _ := total(tilts)
	st, path := &v.a.Stack, v.in.Path
	off := func(what string, found, want vec) {
		d := found.minus(want).size()
		v.atMost(CheckStack, path, max(d.x, d.y, d.z), 0, trace.Str("what", what))
	}
	off("worst", from(st.Worst), worst)
	off("likely", from(st.Likely), likely)
	v.equals(CheckStack, path, float64(st.Closing), v.lim.tape+v.lim.saw+2*v.lim.seat, 0, trace.Str("what", "closing"))
	v.angleAtMost(CheckTilt, path, math.Abs(float64(st.Tilt)-turned.length()), 0)
}
