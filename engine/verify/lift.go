package verify

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// touch is how far surfaces that touch before the first move, above all the two
// faces of an opened nut, may seem to stand in each other on their way: the
// layout's own allowance and the rounding of the lengths told.
const touch = 5e-6 // m

// unions holds the room round each nut and the way out.
func (v *verifier) unions() {
	any := false
	for i := range v.in.Parts {
		if len(v.in.Parts[i].Splits) > 0 {
			any = true
			v.hand(i)
		}
	}
	v.holds(CheckUnion, v.in.Path, any)
	if any {
		v.wayOut()
	}
}

// hand holds the room round a nut against a hand's: to all that does not run
// along the same straight stretch.
func (v *verifier) hand(part int) {
	own := slices.IndexFunc(v.items, func(it item) bool { return it.at == 2*part })
	n, limit := far(), v.lim.hand
	for i := range v.items[own].shapes {
		s := &v.items[own].shapes[i]
		if s.leg < 0 {
			continue
		}
		v.inside.room(&s.body, "", func(d float64, w layout.Wall) { n.hold(d, string(w)) })
		for k := range v.pump {
			n.to(s, &v.pump[k], limit, "pump")
		}
		for k := range v.obstacles {
			n.to(s, &v.obstacles[k], limit, v.in.Vault.Obstacles[k].Name)
		}
		for k := range v.items {
			for m := range v.items[k].shapes {
				if o := &v.items[k].shapes[m]; k != own && o.leg != s.leg {
					n.to(s, o, limit, v.items[k].name)
				}
			}
		}
	}
	v.atLeast(CheckHand, v.partPath(part), n.d, limit, trace.Str("part", v.mark(part)), trace.Str("other", n.what))
}

// named is a shape with the name of what it belongs to.
type named struct {
	shape
	name string
}

// opening is a place where the chain parts.
type opening struct {
	part, piece int // pieces of the part up to this one go with the pump
	lip         float64
}

// wayOut follows the moves told. A part that opens at two nuts may open at
// either: the way that proves most counts.
func (v *verifier) wayOut() {
	o := &v.a.LiftOut
	if !o.Possible || len(o.Moves) == 0 {
		v.holds(CheckWay, v.in.Path, false, trace.Str("blocker", o.Blocker))
		return
	}
	before := len(v.report.Checks)
	var most []Check
	failed := math.MaxInt
	for i := range v.in.Parts {
		p := &v.in.Parts[i]
		if v.mark(i) != o.Union {
			continue
		}
		splits := slices.SortedFunc(slices.Values(p.Splits), func(a, b layout.Split) int { return cmp.Compare(a.Offset, b.Offset) })
		for q, s := range splits {
			v.follow(opening{i, q, float64(s.Lip)})
			got := slices.Clone(v.report.Checks[before:])
			v.report.Checks = v.report.Checks[:before]
			if n := len((&Report{got}).Failed()); n < failed {
				most, failed = got, n
			}
		}
	}
	v.holds(CheckWay, v.in.Path, failed < math.MaxInt, trace.Str("blocker", o.Blocker))
	v.report.Checks = append(v.report.Checks, most...)
}

// part sorts what goes with the pump from what stays.
func (v *verifier) part(o opening) (goes, stays []named) {
	for _, p := range v.pump {
		goes = append(goes, named{p, "pump"})
	}
	for k := range v.obstacles {
		stays = append(stays, named{v.obstacles[k], v.in.Vault.Obstacles[k].Name})
	}
	for i := range v.items {
		it := &v.items[i]
		for _, s := range it.shapes {
			if it.at < 2*o.part || it.at == 2*o.part && s.opening <= o.piece {
				goes = append(goes, named{s, it.name})
			} else {
				stays = append(stays, named{s, it.name})
			}
		}
	}
	return goes, stays
}

// follow proves the moves for one opening.
func (v *verifier) follow(o opening) {
	goes, stays := v.part(o)
	path, moves := v.partPath(o.part), v.a.LiftOut.Moves
	// Nearer than at the start nothing may come that starts nearer than the
	// distance to keep.
	keep := make([]float64, len(goes)*len(stays))
	for i := range goes {
		for k := range stays {
			d := v.lim.lift
			if goes[i].box.apart(stays[k].box) < d {
				d = min(d, max(0, distance(&goes[i].body, &stays[k].body, d)))
			}
			keep[i*len(stays)+k] = d
		}
	}
	if o.lip > 0 {
		back := v.stands[o.part].in.times(-1)
		slid := 0.0
		if from(moves[0].Along).minus(back).length() <= 1e-6 {
			slid = float64(moves[0].Distance)
		}
		v.atLeast(CheckSlide, path, slid, o.lip, trace.Str("part", v.mark(o.part)))
	}
	for m := range moves {
		mv := &moves[m]
		if mv.Turn != 0 {
			v.oneTilt(path, m, goes, stays, keep)
			goes = tilted(goes, mv)
		} else {
			way := from(mv.Along).times(float64(mv.Distance))
			v.oneMove(path, m, goes, stays, keep, way)
			goes = shifted(goes, way)
		}
		if m < len(moves)-1 {
			v.stillIn(path, m, goes)
		}
	}
	v.leaves(path, goes, &moves[len(moves)-1])
}

// shifted gives what goes somewhere else.
func shifted(goes []named, way vec) []named {
	out := slices.Clone(goes)
	for i := range out {
		out[i].body = out[i].moved(way)
	}
	return out
}

// enough is a distance at which nothing is in the way, in metres: more is not told.
const enough = 1.0

// oneMove holds the room that all takes which goes with the pump against all
// that stays.
func (v *verifier) oneMove(path string, m int, goes, stays []named, keep []float64, way vec) {
	margin, d, limit, what, other := math.Inf(1), enough, v.lim.lift, "pump", ""
	for i := range goes {
		b := goes[i].swept(way)
		box := b.span()
		for k := range stays {
			want := keep[i*len(stays)+k]
			if box.apart(stays[k].box)-want >= min(margin, enough) {
				continue
			}
			found := distance(&b, &stays[k].body, want+min(margin, enough))
			if !(found-want >= margin) {
				margin, d, limit, what, other = found-want, found, want, goes[i].name, stays[k].name
			}
		}
	}
	args := []trace.Arg{trace.Str("move", strconv.Itoa(m+1)), trace.Str("part", what)}
	if other != "" {
		args = append(args, trace.Str("other", other))
	}
	v.atLeast(CheckMove, path, d, limit-touch+grain, args...)
}

// stillIn holds all that goes against the walls after a move. It was in before,
// and the vault is convex, so that it is in all the way: of what stands through
// the lid then, because a move that is neither level nor upright is refused.
func (v *verifier) stillIn(path string, m int, goes []named) {
	n, way := far(), from(v.a.LiftOut.Moves[m].Along)
	for i := range goes {
		d, w := v.passes(&goes[i].body, 0)
		if through(&goes[i].body, v.inside.top) && math.Abs(way.z) > 1e-9 && math.Abs(way.z) < 1-1e-9 {
			d, w = math.Inf(-1), layout.Lid
		}
		n.hold(d, string(w))
	}
	v.atLeast(CheckMoveWall, path, n.d, -touch+grain, trace.Str("move", strconv.Itoa(m+1)), trace.Str("wall", n.what))
}

// leaves holds the last move, which must go straight up, against rim and lid.
// Between the walls below, where it stands, and the rim above it stays inside,
// because the vault is convex.
func (v *verifier) leaves(path string, goes []named, last *layout.Move) {
	n, out := far(), rim(&v.in.Vault)
	low := math.Inf(1)
	for i := range goes {
		b := &goes[i].body
		d, w := out.least(b)
		n.hold(d, string(w))
		low = min(low, b.span().lo.z)
	}
	v.atLeast(CheckRim, path, n.d, -touch+grain, trace.Str("wall", n.what))
	if last.Turn != 0 || !(from(last.Along).minus(vec{z: 1}).length() <= 1e-6) {
		low = math.Inf(-1)
	}
	v.atLeast(CheckOut, path, low, v.inside.top-touch+grain)
}
