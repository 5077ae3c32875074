package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// room holds how far the pump can be moved on the floor and what can be taken
// off the closing pieces, and both against the errors that they must take up.
func (v *verifier) room() {
	moves := make([]vec, 0, 8)
	for _, f := range v.faults() {
		moves = append(moves, f.move)
	}
	v.shorter(moves)
	stands := v.standsIn()
	r := &v.a.Room
	if stands != r.Stands {
		v.holds(CheckRoom, v.in.Path, false)
		return
	}
	if stands {
		v.holds(CheckNeeded, v.in.Path, len(r.Plays) == 0)
		return
	}
	for _, w := range [...]struct {
		way string
		u   vec
		by  float64
	}{
		{"left", vec{x: -1}, float64(r.Left)},
		{"right", vec{x: 1}, float64(r.Right)},
		{"front", vec{y: -1}, float64(r.Front)},
		{"back", vec{y: 1}, float64(r.Back)},
	} {
		way := trace.Str("way", w.way)
		v.atLeast(CheckRoom, v.in.Path, min(w.by, v.reached(w.u, w.by)), -touch, way)
		v.atMost(CheckRoom, v.in.Path, v.reached(w.u, w.by+further), -touch, way)
	}
	worst, likely := total(moves)
	if !v.holds(CheckWhole, v.in.Path, len(r.Plays) == 2, trace.Str("what", "plays")) {
		return
	}
	for k, x := range [...]struct {
		axis          string
		u             vec
		room          float64
		likely, worst float64
	}{
		{"length", vec{x: 1}, float64(min(r.Left, r.Right)), likely.x, worst.x},
		{"width", vec{y: 1}, float64(min(r.Front, r.Back)), likely.y, worst.y},
	} {
		need := x.likely
		if v.closesAlong(x.u) {
			// The closing piece takes up all but its own error.
			need = min(need, v.lim.tape+v.lim.saw+2*v.lim.seat)
		}
		v.atLeast(CheckPlay, v.in.Path, x.room, need, trace.Str("axis", x.axis))
		p := &r.Plays[k]
		off := max(math.Abs(float64(p.Needed)-need), math.Abs(float64(p.Worst)-x.worst), math.Abs(float64(p.Available)-x.room))
		v.holds(CheckNeeded, v.in.Path, p.Axis == x.axis && off <= grain)
	}
}

// standsIn tells that the pump stands in something, or out of the vault.
func (v *verifier) standsIn() bool {
	for i := range v.pump {
		if d, _ := v.inside.least(&v.pump[i].body); d < -grain {
			return true
		}
		for k := range v.obstacles {
			if distance(&v.pump[i].body, &v.obstacles[k].body, touch) < grain/2 {
				return true
			}
		}
	}
	return false
}

// further is how much beyond its room the pump is moved to see that it is
// stopped, in metres.
const further = 1e-4

// reached gives the room left, when the pump has been moved along u, to what
// can stop it: the walls ahead, and the obstacles all along the way.
func (v *verifier) reached(u vec, by float64) float64 {
	least := math.Inf(1)
	for i := range v.pump {
		moved := v.pump[i].moved(u.times(by))
		for k := range v.inside.walls {
			if w := &v.inside.walls[k]; w.n.along(u) > 1e-9 {
				least = min(least, w.b-moved.most(w.n))
			}
		}
		if v.inside.barrel != nil {
			least = min(least, v.inside.barrel.room(&moved))
		}
		swept := v.pump[i].swept(u.times(by))
		box := swept.span()
		for k := range v.obstacles {
			if o := &v.obstacles[k]; box.apart(o.box) < max(least, touch) {
				least = min(least, distance(&swept, &o.body, touch))
			}
		}
	}
	return least
}

// closesAlong tells that a closing piece runs nearer to an axis than 45
// degrees.
func (v *verifier) closesAlong(u vec) bool {
	for i := range v.joints {
		if v.joints[i].piece != nil && v.next(i).Closing && math.Abs(v.stands[i].in.along(u)) > 0.7 && !v.noRoom(i) {
			return true
		}
	}
	return false
}

// next is what is typed for the joint before part i.
func (v *verifier) next(i int) *layout.Join {
	if i == 0 {
		return &v.in.Start
	}
	return &v.in.Parts[i-1].Next
}

// noRoom tells that the closing piece before part i is told to have no room.
func (v *verifier) noRoom(i int) bool {
	for _, w := range v.a.Closure.Worked {
		if w.After == i-1 && w.FaceGap < -grain {
			return true
		}
	}
	return false
}

// shorter holds what can be taken off each closing piece that is not measured in
// place: the gap between the hubs.
func (v *verifier) shorter(moves []vec) {
	told := 0
	for i := range v.joints {
		j, n := &v.joints[i], v.next(i)
		if j.piece == nil || !n.Closing || n.Measured.Given {
			continue
		}
		path, piece := v.joinPath(i), trace.Str("piece", j.piece.Mark)
		if told >= len(v.a.Room.Shorter) || v.a.Room.Shorter[told].After != i-1 {
			v.holds(CheckShorter, path, false, piece)
			return
		}
		spare := max(0, j.gap)
		v.equals(CheckShorter, path, float64(v.a.Room.Shorter[told].Spare), spare, 0, piece)
		told++
		need := 0.0
		for _, m := range moves {
			need = math.Hypot(need, m.along(v.stands[i].in))
		}
		v.atLeast(CheckSpare, path, spare, need, piece)
	}
	if told != len(v.a.Room.Shorter) {
		v.holds(CheckShorter, v.in.Path, false, trace.Str("piece", ""))
	}
}
