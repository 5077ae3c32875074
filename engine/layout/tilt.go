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

// tiltHair is the angle below which a turn that is not proved free counts as
// blocked.
const tiltHair = 0.02 * float64(unit.Degree)

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

// tilted gives a mover whose moving shapes are turned.
func (m *mover) tilted(about, axis geom.Vec3, by unit.Angle) *mover {
	p := *m
	p.moving = make([]shape, len(m.moving))
	for i, s := range m.moving {
		s.solid = s.turned(about, axis, by)
		s.box = s.bounds()
		p.moving[i] = s
	}
	return &p
}

// turned gives the solid turned by the right hand about a line.
func (s solid) turned(about, axis geom.Vec3, by unit.Angle) solid {
	turn := func(v geom.Vec3) geom.Vec3 { return v.RotateAbout(axis, by) }
	s.c = turn(s.c.Sub(about)).Add(about)
	s.w, s.u, s.v, s.axis = turn(s.w), turn(s.u), turn(s.v), turn(s.axis)
	return s
}

// arm bounds how far any point of the solid lies from a line.
func (s *solid) arm(about, axis geom.Vec3) float64 {
	off := func(v geom.Vec3) geom.Vec3 { return v.Sub(axis.Scale(v.Dot(axis))) }
	c := off(s.c.Sub(about))
	if !s.isBlock {
		return math.Max(c.Add(off(s.w)).Norm(), c.Sub(off(s.w)).Norm()) + s.r
	}
	most := 0.0
	for i := range 8 {
		p := c
		for k, h := range [3]geom.Vec3{s.u, s.v, s.w} {
			p = p.Add(off(h).Scale(float64(i>>k&1*2 - 1)))
		}
		most = math.Max(most, p.Norm())
	}
	return most
}

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
	free := t.step1(from, to)
	t.edges[key], t.edges[[2]state{to, from}] = free, free
	return free
}

func (t *tilter) step1(from, to state) bool {
	most := int(math.Round(float64(tiltMost / tiltStep)))
	if to.tilt > most || to.tilt < -most || float64(to.up)*t.step > t.m.up.Z {
		return false
	}
	if to.tilt != from.tilt {
		low := unit.Angle(min(from.tilt, to.tilt)) * tiltStep
		return t.turns(t.off(from), low, low+tiltStep)
	}
	p := t.pose(from.tilt)
	by, way := t.off(from), t.off(to).Sub(t.off(from))
	for i := range p.moving {
		s := p.moving[i].shift(p.base.Add(by).Add(way))
		if p.inVault(&s, 0) < -dust {
			return false
		}
	}
	for i := range p.moving {
		for k := range p.static {
			if t.tries++; !p.clear(i, k, by, way) {
				return false
			}
		}
	}
	return true
}

// inVault gives the room that a solid has where it stands once it is grown by
// `more`: below the lid to walls and floor; as soon as it stands through the lid,
// to the walls drawn on upwards and to the way through rim and hatch, as if all of
// it had to pass there.
func (m *mover) inVault(s *solid, more float64) float64 {
	through := s.reach(geom.Vec3{Z: 1})+more > m.l.inside.depth+dust
	least := math.Inf(1)
	for _, p := range m.l.inside.planes {
		if through && p.wall == Lid {
			continue
		}
		least = math.Min(least, p.b-s.reach(p.n))
	}
	if c := m.l.inside.round; c != nil {
		least = math.Min(least, c.room(*s))
	}
	if through {
		r, _ := m.rim.room(*s)
		least = math.Min(least, r)
	}
	return least - more
}

// turns tells that the set, set off by `by`, can be tilted from one angle to
// another. A point that lies r from the line goes no farther than r a while it is
// turned by a: what is clear by so much in the middle is clear all the way; where
// that does not do, both halves are looked at.
func (t *tilter) turns(by geom.Vec3, low, high unit.Angle) bool {
	off := t.m.base.Add(by)
	for i := range t.m.moving {
		s := &t.m.moving[i].solid
		arm := s.arm(t.pivot, t.axis)
		if !t.swings(s, off, i, -1, arm, low, high) {
			return false
		}
		for k := range t.m.static {
			if !t.swings(s, off, i, k, arm, low, high) {
				return false
			}
		}
	}
	return true
}

// swings is turns for one moving solid and one static one; -1 is the vault.
func (t *tilter) swings(s *solid, off geom.Vec3, i, k int, arm float64, low, high unit.Angle) bool {
	mid, half := (low+high)/2, float64(high-low)/2
	at := s.turned(t.pivot, t.axis, mid).shift(off)
	grown := arm * half
	if k < 0 {
		switch room := t.m.inVault(&at, grown); {
		case room >= -dust:
			return true
		case t.m.inVault(&at, 0) < -dust || half < tiltHair:
			return false
		}
	} else {
		t.tries++
		limit := t.m.limits[i][k] - dust
		if apart(at.bounds(), t.m.static[k].box) > math.Max(limit, 0)+grown {
			return true
		}
		switch d := distance(&at, &t.m.static[k].solid, math.Max(limit, sharp)+grown); {
		case d >= limit+grown:
			return true
		case d < limit || half < tiltHair:
			return false
		}
	}
	return t.swings(s, off, i, k, arm, low, mid) && t.swings(s, off, i, k, arm, mid, high)
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
