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
type fault struct {
	cause      layout.Cause
	mark       string // of the piece or the part
	move, tilt vec
}

// faults lists all sources of error.
func (v *verifier) faults() (out []fault) {
	for i := range v.joints {
		dir := v.stands[i].in
		if p := v.joints[i].piece; p != nil && v.next(i).Made {
			out = append(out, fault{cause: layout.ByTape, mark: p.Mark, move: dir.times(v.lim.tape)})
			continue // it was measured as it stands
		}
		if p := v.joints[i].piece; p != nil {
			out = append(out, fault{cause: layout.BySaw, mark: p.Mark, move: dir.times(v.lim.saw)})
		}
		n := v.cemented(i)
		for k := range n {
			out = append(out, fault{cause: layout.BySeat, mark: v.mark(i + 1 + k - n), move: dir.times(v.lim.seat)})
		}
	}
	for i := range v.in.Parts {
		if turnOf(&v.in.Parts[i].Part) == 0 {
			continue
		}
		s := &v.stands[i]
		bend, _ := s.in.square(s.out).one()
		for _, x := range [2]struct {
			cause layout.Cause
			axis  vec
			bound float64
		}{{layout.ByRoll, s.out, v.lim.roll}, {layout.ByElbow, bend, v.lim.elbow}} {
			turned := func(p, c vec) vec {
				return about(p, c, x.axis, slip).minus(about(p, c, x.axis, -slip)).times(x.bound / (2 * slip))
			}
			out = append(out, fault{x.cause, v.mark(i), turned(v.port, s.centre), turned(v.points, vec{})})
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
	all := v.faults()
	for _, f := range all {
		moves, tilts = append(moves, f.move), append(tilts, f.tilt)
	}
	v.shares(all)
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

// beside gives the square of what of a move no closing piece takes up: what lies
// square to all of their directions. One direction leaves the length of a
// product with it, two leave what lies along the product of both.
func (v *verifier) beside() func(m vec) float64 {
	var ways []vec
	for i := range v.joints {
		d := v.stands[i].in
		if v.joints[i].piece == nil || !v.next(i).Closing || v.noRoom(i) {
			continue
		}
		switch len(ways) {
		case 0:
			ways = append(ways, d)
		case 1:
			if n := ways[0].square(d); n.length() > 1e-3 {
				ways = append(ways, d)
			}
		case 2:
			if n, _ := ways[0].square(ways[1]).one(); math.Abs(n.along(d)) > 1e-3 {
				ways = append(ways, d)
			}
		}
	}
	return func(m vec) float64 {
		switch len(ways) {
		case 0:
			return m.along(m)
		case 1:
			c := m.square(ways[0])
			return c.along(c)
		case 2:
			n, _ := ways[0].square(ways[1]).one()
			return m.along(n) * m.along(n)
		}
		return 0
	}
}

// shares holds what each source is told to make of the likely error.
func (v *verifier) shares(all []fault) {
	type source struct {
		cause layout.Cause
		mark  string
	}
	own, sum, left := map[source]float64{}, 0.0, v.beside()
	for _, f := range all {
		q := left(f.move)
		own[source{f.cause, f.mark}] += q
		sum += q
	}
	told, path := v.a.Stack.Shares, v.in.Path
	if !(sum > 1e-14) {
		v.holds(CheckShare, path, len(told) == 0)
		return
	}
	off, last := 0.0, math.Inf(1)
	for _, s := range told {
		q, known := own[source{s.Cause, s.Mark}]
		if !known {
			off = math.Inf(1)
		}
		off = max(off, math.Abs(q/sum-float64(s.Of)), float64(s.Of)-last)
		last = float64(s.Of)
		delete(own, source{s.Cause, s.Mark})
	}
	v.holds(CheckShare, path, off <= shareTo && len(own) == 0)
}

// shareTo is how far a share may be off: a millionth of the whole.
const shareTo = 1e-6
