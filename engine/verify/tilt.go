package verify

import (
	"math"
	"slices"
	"strconv"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// A tilt is proved by pieces of its angle. Over a small angle 2h about its middle
// a point p of a body with centre c goes along an arc; the straight part of that,
// the same for the whole body, is h n x (c - o) for a line through o along n, and
// drawn along it the body is as exact as on a straight move. What that leaves out
// is that the body turns, h times its own radius r at most, and that the arc is
// curved, R h^2/2 at most for its farthest point from the line. So a distance is
// no less than that of the drawn body less h r + R h^2/2; where that does not do,
// the piece is halved.

// hair is the piece of an angle that is not halved any more: what then comes out
// is told as found.
const hair = 1e-4

// about gives v turned by an angle about a direction n of length 1, by the right
// hand (O. Rodrigues, 1840).
func (a vec) about(n vec, angle float64) vec {
	s, c := math.Sincos(angle)
	return a.times(c).plus(n.square(a).times(s)).at(n, n.along(a)*(1-c))
}

// tilt is a turn about a line.
type tilt struct {
	o, n  vec
	angle float64
}

func tiltOf(mv *layout.Move) tilt {
	return tilt{from(mv.About), vec{z: 1}.square(from(mv.Along)), float64(mv.Turn)}
}

// level tells that it is about a level line and no more than upside down.
func (t *tilt) level() bool {
	return math.Abs(t.n.length()-1) <= 1e-9 && t.angle > 0 && t.angle <= math.Pi && finite(t.o.length())
}

func (t *tilt) of(b body, angle float64) body {
	b.c = b.c.minus(t.o).about(t.n, angle).plus(t.o)
	b.axis = b.axis.about(t.n, angle)
	for i := range b.s[:b.n] {
		b.s[i] = b.s[i].about(t.n, angle)
	}
	return b
}

// tilted gives what goes once it is tilted.
func tilted(goes []named, mv *layout.Move) []named {
	t := tiltOf(mv)
	out := slices.Clone(goes)
	for i := range out {
		out[i].body = t.of(out[i].body, t.angle)
	}
	return out
}

// radius bounds how far a point of the body lies from its centre.
func (b *body) radius() float64 {
	sum := b.r
	for _, s := range b.s[:b.n] {
		sum += s.length()
	}
	return sum
}

// over gives the least of a bound over a piece of the angle: so is the body drawn
// along its way there, with what that may be out by. It ends as soon as the whole
// piece has what is wanted.
func (t *tilt) over(b *body, low, high, want float64, bound func(b *body, out float64) float64) float64 {
	h, mid := (high-low)/2, (low+high)/2
	at := t.of(*b, mid)
	arm := at.c.minus(t.o).flat(t.n)
	out := h*b.radius() + (arm.length()+b.radius())*h*h/2
	drawn := at.swept(t.n.square(arm).times(2 * h))
	d := bound(&drawn, out)
	if d >= want || h <= hair {
		return d
	}
	if bound(&at, 0) < want { // it is too near in the middle itself
		return d
	}
	return min(t.over(b, low, mid, want, bound), t.over(b, mid, high, want, bound))
}

// oneTilt holds the room that all takes which goes with the pump against all that
// stays, and against the vault, while it is tilted.
func (v *verifier) oneTilt(path string, m int, goes, stays []named, keep []float64) {
	t := tiltOf(&v.a.LiftOut.Moves[m])
	margin, d, limit, what, other := enough, enough, v.lim.lift, "pump", ""
	if !t.level() {
		margin, d = math.Inf(-1), math.Inf(-1)
	}
	walls := far()
	for i := range goes {
		if !t.level() {
			break
		}
		for k := range stays {
			want := keep[i*len(stays)+k] - touch + grain
			found := t.over(&goes[i].body, 0, t.angle, want, func(b *body, out float64) float64 {
				return distance(b, &stays[k].body, want+out) - out
			})
			if !(found-want >= margin) {
				margin, d, limit, what, other = found-want, found, keep[i*len(stays)+k], goes[i].name, stays[k].name
			}
		}
		var by layout.Wall
		room := t.over(&goes[i].body, 0, t.angle, -touch+grain, func(b *body, out float64) float64 {
			d, w := v.passes(b, out)
			by = w
			return d
		})
		walls.hold(room, string(by))
	}
	args := []trace.Arg{trace.Str("move", strconv.Itoa(m+1)), trace.Str("part", what)}
	if other != "" {
		args = append(args, trace.Str("other", other))
	}
	v.atLeast(CheckMove, path, d, limit-touch+grain, args...)
	v.atLeast(CheckMoveWall, path, walls.d, -touch+grain, trace.Str("move", strconv.Itoa(m+1)), trace.Str("wall", walls.what))
}

func through(b *body, top float64) bool { return b.most(vec{z: 1}) > top+touch }

// passes gives the room of a body, which may be out by so much, where it may be on
// its way: below the lid within the vault; through it within the walls drawn on
// upwards and within rim and hatch, as if all of it had to pass there.
func (v *verifier) passes(b *body, out float64) (least float64, name layout.Wall) {
	least = math.Inf(1)
	hold := func(d float64, w layout.Wall) {
		if !(d >= least) {
			least, name = d, w
		}
	}
	if b.most(vec{z: 1})+out <= v.inside.top+touch {
		v.inside.room(b, "", hold)
	} else {
		v.inside.room(b, layout.Lid, hold)
		r := rim(&v.in.Vault)
		r.room(b, "", hold)
	}
	return least - out, name
}
