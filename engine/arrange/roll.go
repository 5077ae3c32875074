package arrange

import (
	"math"

	"plashet/engine/geom"
)

// A rolled pair is two elbows in a row whose outer legs lie along one line: the
// leg between them may be rolled about that line by any angle. Where no roll of
// the compass closes a way, the rolls that do are sought, whatever else was found.

// rolledFrom is from how many elbows rolls are sought only while nothing is found, and
// briefly.
const rolledFrom = 4

// rollKey names a way but for the roll of one of its legs.
type rollKey struct {
	kit    *kit
	turned wayKey
	leg    int
	legs   string
}

// paired tells that the elbows before and after a leg are a rolled pair.
func (v *way) paired(leg int) bool {
	before, after := v.compass.dirs[v.seq[leg-1]], v.compass.dirs[v.seq[leg+1]]
	return math.Abs(before.Dot(after)) > 1-1e-9
}

// rolls tells that a leg of a way is one of a rolled pair.
func (v *way) rolls() bool {
	for leg := 1; leg+1 < len(v.seq); leg++ {
		if v.paired(leg) {
			return true
		}
	}
	return false
}

// firm tells that planes of the list keep a sketch apart with nothing let off.
func (w *worker) firm(t *trial, c *chain) bool {
	w.set(c, leaving{without: true}, true)
	w.b.outer = false
	ok, capped := w.any(t, w.s.in.Rules.Nodes)
	return ok || capped
}

// rolled lists the ways with one rolled pair that close at no roll of the compass,
// with that roll left open.
func rolled(ways []way) []*limber {
	var list []*limber
	known, open := map[rollKey]*limber{}, map[*limber]bool{}
	for i := range ways {
		v := &ways[i]
		if v.hose > 0 {
			continue // a hose bends by the angles of the compass
		}
		for leg := 1; leg+1 < len(v.seq); leg++ {
			if !v.paired(leg) {
				continue
			}
			name := make([]byte, 0, 16)
			for l, d := range v.seq {
				if l == leg {
					// Out and back by 90 or by 45 are two templates.
					d = 250 + int(turnOf(v.compass.dirs[v.seq[leg-1]], v.compass.dirs[d]))
				}
				name = append(name, byte(d))
			}
			key := rollKey{v.kit, wayKey{v.standing, v.turned}, leg, string(name)}
			l, ok := known[key]
			if !ok {
				l = &limber{standing: v.standing, kit: v.kit, base: v.compass, fills: v.fills, step: math.Pi / 8, brief: len(v.seq) > rolledFrom}
				l.free = make([]bool, len(v.seq))
				l.free[leg] = true
				l.turns = v.compass.turns(v.seq)
				known[key], list = l, append(list, l)
			}
			open[l] = open[l] || v.closes
			l.seeds = append(l.seeds, bearing{dirs: v.legs(), turned: v.turned})
		}
	}
	shut := list[:0]
	for _, l := range list {
		if !open[l] {
			shut = append(shut, l)
		}
	}
	return shut
}

// legs gives the directions of the legs that are not glued.
func (v *way) legs() []geom.Vec3 {
	dirs := make([]geom.Vec3, 0, len(v.seq))
	for _, d := range v.seq {
		dirs = append(dirs, v.compass.dirs[d])
	}
	return dirs
}

// turns gives the elbows of a sequence.
func (c *compass) turns(seq []int) []turn {
	var out []turn
	for i := range seq[1:] {
		out = append(out, turnOf(c.dirs[seq[i]], c.dirs[seq[i+1]]))
	}
	return out
}

// along gives a compass for a way that was found between the directions of another:
// its own legs, the first first, and the planes along them and along the pump.
func (s *search) along(l *limber, b *bearing) *compass {
	c := &compass{dirs: b.dirs, pre: l.base.pre, post: l.base.post, pump: l.base.pump}
	c.apart = append(c.apart, l.base.apart...)
	add := func(d geom.Vec3) {
		if d.Norm() < 1e-6 {
			return
		}
		for _, n := range [2]geom.Vec3{square(d.Unit()), square(d.Scale(-1).Unit())} {
			known := false
			for _, a := range c.apart {
				known = known || alike(a, n)
			}
			if !known {
				c.apart = append(c.apart, n)
			}
		}
	}
	along := append([]geom.Vec3(nil), b.dirs...)
	if l.yaw {
		c.pump = s.bareOf(&s.in.Standings[l.standing], b.turned)
		for _, o := range c.pump.Body {
			add(o.U)
			add(o.V)
			along = append(along, o.U.Unit(), o.V.Unit())
		}
	}
	for _, d := range along {
		if b.odd(l.base, d) {
			add(d)
			for _, o := range along {
				add(d.Cross(o))
				add(d.Cross(o).Cross(d))
			}
			add(d.Cross(geom.Vec3{Z: 1}))
		}
	}
	c.cells = append(c.cells, l.base.cells...)
	for _, d := range along {
		c.cut(d)
	}
	c.mirror()
	c.around = s.surroundings(c.pump, c.apart)
	return c
}

// odd tells that a direction is none of a compass.
func (b *bearing) odd(c *compass, d geom.Vec3) bool {
	for _, o := range c.dirs {
		if alike(o, d) {
			return false
		}
	}
	return true
}
