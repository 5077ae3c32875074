package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// The pump's way out where neither a lift nor a shift and a lift will do: moves
// in an upright plane along the vault's length or its width, each up, sideways or
// a tilt over a level line, and at the end straight up. What is looked at are the
// states on a grid of heights, shifts and tilts, by the number of moves to them,
// so that the way with the fewest moves is found, and of these the one with the
// least tilt. It is a search for a way and no proof that there is none: between
// the steps of the grid, or with a turn about the upright, there may be one.
//
// No move is judged too well: along a line the room taken is exact, over an angle
// it is bounded from above (turns).

// Steps of the grid, and its bounds.
const (
	tiltStep  = 5 * unit.Degree
	tiltMost  = 90 * unit.Degree
	mostMoves = 4       // before the last lift
	mostTries = 150_000 // distances of two solids
)

// state is where the set is, in steps from its start.
type state struct{ shift, up, tilt int }

// reached is how a state was come to.
type reached struct {
	from  state
	moves int
}

// tilter seeks a way in one plane.
type tilter struct {
	m     *mover
	u     geom.Vec3 // the shift; up tilts towards it
	axis  geom.Vec3 // of a tilt above zero
	pivot geom.Vec3 // moves with the set
	step  float64
	poses map[int]*mover // by tilt
	edges map[[2]state]bool
	seen  map[state]reached
	tries int
}

// tilts seeks a way out in either plane; false where none was found.
func (m *mover) tilts() ([]Move, bool) {
	var best []Move
	tries := 0
	for _, u := range [2]geom.Vec3{{X: 1}, {Y: 1}} {
		t := m.tilter(u)
		t.tries = tries
		if way, ok := t.seek(); ok && (best == nil || lighter(way, best)) {
			best = way
		}
		tries = t.tries
	}
	return best, best != nil
}

// lighter tells that a way has fewer moves, or as many and less tilt, or less shift.
func lighter(a, b []Move) bool {
	if len(a) != len(b) {
		return len(a) < len(b)
	}
	sum := func(way []Move) (tilt, shift float64) {
		for _, mv := range way {
			if tilt += math.Abs(float64(mv.Turn)); mv.Turn == 0 && mv.Along.Z == 0 {
				shift += float64(mv.Distance)
			}
		}
		return tilt, shift
	}
	at, as := sum(a)
	bt, bs := sum(b)
	if at != bt {
		return at < bt
	}
	return as < bs
}

func (m *mover) tilter(u geom.Vec3) *tilter {
	t := &tilter{
		m: m, u: u, axis: geom.Vec3{Z: 1}.Cross(u), step: 0.5 * float64(unit.Inch),
		poses: map[int]*mover{0: m}, edges: map[[2]state]bool{}, seen: map[state]reached{},
	}
	if m.l.lim.step == unit.Millimetre {
		t.step = 0.010
	}
	box := m.moving[0].box
	for i := range m.moving[1:] {
		box = box.Join(m.moving[i+1].box)
	}
	t.pivot = box.Centre()
	return t
}

// pose gives the set tilted about its pivot, with the same static shapes and limits.
func (t *tilter) pose(tilt int) *mover {
	p := t.poses[tilt]
	if p == nil {
		p = t.m.tilted(t.pivot, t.axis, unit.Angle(tilt)*tiltStep)
		t.poses[tilt] = p
	}
	return p
}

// off gives how far a state is shifted and raised from the start, its tilt aside.
func (t *tilter) off(s state) geom.Vec3 {
	return t.u.Scale(float64(s.shift) * t.step).Add(geom.Vec3{Z: float64(s.up) * t.step})
}

// seek goes through the states by the number of moves to them.
func (t *tilter) seek() ([]Move, bool) {
	start := state{}
	t.seen[start] = reached{start, 0}
	front := []state{start}
	for moves := 1; moves <= mostMoves && len(front) > 0; moves++ {
		var next []state
		for _, s := range front {
			for _, d := range [...]state{{up: 1}, {tilt: 1}, {tilt: -1}, {shift: 1}, {shift: -1}} {
				for at := s; ; {
					to := state{at.shift + d.shift, at.up + d.up, at.tilt + d.tilt}
					if t.tries > mostTries || !t.free(at, to) {
						break
					}
					if at = to; t.seen[at] == (reached{}) {
						t.seen[at] = reached{s, moves}
						next = append(next, at)
					}
				}
			}
		}
		var best []Move
		for _, s := range next {
			if t.exits(s) {
				if way := t.way(s); best == nil || lighter(way, best) {
					best = way
				}
			}
		}
		if best != nil {
			return best, true
		}
		front = next
	}
	return nil, false
}

// free tells that the step between two states that are next to each other is free.
func (t *tilter) free(from, to state) bool {
	key := [2]state{from, to}
	if free, known := t.edges[key]; known {
		return free
	}
	free := t.passes(from, to)
	t.edges[key], t.edges[[2]state{to, from}] = free, free
	return free
}

// exits tells that the set can be lifted straight out from a state.
func (t *tilter) exits(s state) bool {
	p, by := t.pose(s.tilt), t.off(s)
	for i := range p.moving {
		at := p.moving[i].shift(p.base.Add(by))
		if r, _ := p.rim.room(at); r < -dust {
			return false
		}
	}
	up := geom.Vec3{Z: t.last(s)}
	for i := range p.moving {
		for k := range p.static {
			if t.tries++; !p.clear(i, k, by, up) {
				return false
			}
		}
	}
	return true
}

// last is how far the set is still to be lifted.
func (t *tilter) last(s state) float64 {
	p, by := t.pose(s.tilt), t.off(s)
	low := math.Inf(1)
	for i := range p.moving {
		low = math.Min(low, p.moving[i].box.Min.Z)
	}
	return math.Max(0, p.l.inside.depth-low-p.base.Z-by.Z)
}

// way gives the moves to a state and out from there.
func (t *tilter) way(s state) []Move {
	out := []Move{{Along: geom.Vec3{Z: 1}, Distance: unit.Length(t.last(s))}}
	for s != (state{}) {
		from := t.seen[s].from
		mv := Move{Along: t.u}
		switch {
		case s.tilt != from.tilt:
			mv.Turn = unit.Angle(s.tilt-from.tilt) * tiltStep
			mv.About = t.pivot.Add(t.m.base).Add(t.off(from))
			if mv.Turn < 0 {
				mv.Along, mv.Turn = t.u.Scale(-1), -mv.Turn
			}
		case s.up != from.up:
			mv.Along, mv.Distance = geom.Vec3{Z: 1}, unit.Length(float64(s.up-from.up)*t.step)
		default:
			by := float64(s.shift-from.shift) * t.step
			if mv.Distance = unit.Length(by); by < 0 {
				mv.Along, mv.Distance = t.u.Scale(-1), unit.Length(-by)
			}
		}
		out = append([]Move{mv}, out...)
		s = from
	}
	return out
}
