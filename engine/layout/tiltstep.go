package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// tiltHair is the angle below which a turn that is not proved free counts as
// blocked.
const tiltHair = 0.02 * float64(unit.Degree)

// passes is free for a step that was not looked at yet: within the grid, within the
// vault and clear of all that stays.
func (t *tilter) passes(from, to state) bool {
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
