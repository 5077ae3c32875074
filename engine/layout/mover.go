package layout

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// contactInset keeps what touches at the start, above all the two faces of an
// opened nut, from counting as stuck: the moving solids are taken smaller by
// this much all round. It is the only way in which the way out is judged too
// well.
const contactInset = 2e-6 // m

// faraway is a shift at which nothing in a vault is near any more, in metres.
const faraway = 4 * float64(largest)

// mover is the pump with what hangs on it, and what stays.
type mover struct {
	l      *laying
	moving []shape
	static []shape
	names  []string    // of the static shapes
	limits [][]float64 // distance to keep, by moving and static shape
	base   geom.Vec3   // where the moving shapes have got to
	up     geom.Vec3
	rim    interior
	stuck  bool // something moving stands in something else, or out of the vault, before it moves
}

// newMover gathers what goes with the pump when the chain opens at s.
func (l *laying) newMover(s split) *mover {
	m := l.pumpMover()
	for i := range l.items {
		it := &l.items[i]
		for _, sh := range it.shapes {
			if it.at < 2*s.part || it.at == 2*s.part && sh.opening <= s.opening {
				m.moving = append(m.moving, sh)
			} else {
				m.static, m.names = append(m.static, sh), append(m.names, it.name)
			}
		}
	}
	m.prepare(float64(l.lim.lift))
	return m
}

// pumpMover is the bare pump among the obstacles.
func (l *laying) pumpMover() *mover {
	m := &mover{l: l, rim: l.in.Vault.rim()}
	for _, p := range l.pump {
		m.moving = append(m.moving, shape{solid: p, box: p.bounds()})
	}
	for _, o := range l.in.Vault.Obstacles {
		m.static, m.names = append(m.static, shape{solid: boxOf(o.Box), box: o.Box}), append(m.names, o.Name)
	}
	return m
}

// prepare sets the way up and the distance to keep for each pair: want, or
// what they start with where they start nearer.
func (m *mover) prepare(want float64) {
	low := math.Inf(1)
	for i := range m.moving {
		low = math.Min(low, m.moving[i].box.Min.Z)
		if d, _ := m.l.inside.room(m.moving[i].solid); d < -dust {
			m.stuck = true
		}
		m.moving[i].solid = m.moving[i].shrunk(contactInset)
	}
	m.up = geom.Vec3{Z: math.Max(0, m.l.inside.depth-low)}
	want = math.Max(want, contactInset/2)
	m.limits = make([][]float64, len(m.moving))
	for i := range m.moving {
		m.limits[i] = make([]float64, len(m.static))
		for k := range m.static {
			start := near(&m.moving[i], &m.static[k], want)
			m.stuck = m.stuck || start < contactInset/2
			m.limits[i][k] = math.Min(want, start)
		}
	}
}

// clear tells that moving shape i, set off by the base and `by` and drawn along
// `way`, keeps its distance to static shape k.
func (m *mover) clear(i, k int, by, way geom.Vec3) bool {
	off := m.base.Add(by)
	box := m.moving[i].box.Shift(off)
	limit := m.limits[i][k] - dust
	if apart(box.Join(box.Shift(way)), m.static[k].box) > math.Max(limit, 0) {
		return true
	}
	s := m.moving[i].shift(off).drawn(way)
	return distance(&s, &m.static[k].solid, math.Max(limit, sharp)) >= limit
}

// stop gives how far the moving set can go along u (length 1) up to most, and
// what stops it.
func (m *mover) stop(u geom.Vec3, most float64) (float64, string) {
	by, what := m.wallStop(u, most)
	for i := range m.moving {
		for k := range m.static {
			if m.clear(i, k, geom.Vec3{}, u.Scale(by)) {
				continue
			}
			// The room taken only grows with the way: halve it.
			by = bisect(by, 0, func(s float64) bool { return m.clear(i, k, geom.Vec3{}, u.Scale(s)) })
			what = m.names[k]
		}
	}
	return by, what
}

// bisect gives the number nearest to bad from the good end at which ok holds,
// to a fifth of a micrometre, on the good side.
func bisect(bad, good float64, ok func(float64) bool) float64 {
	for math.Abs(bad-good) > 2e-7 {
		mid := (bad + good) / 2
		if ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}

// wallStop gives how far the set can go along u before a wall, which it may touch.
func (m *mover) wallStop(u geom.Vec3, most float64) (float64, string) {
	by, what := most, ""
	for i := range m.moving {
		s := m.moving[i].shift(m.base)
		for _, p := range m.l.inside.planes {
			if rate := p.n.Dot(u); rate > 1e-9 {
				if room := math.Max(0, p.b-s.reach(p.n)) / rate; room < by {
					by, what = room, string(p.wall)
				}
			}
		}
		if c := m.l.inside.round; c != nil && c.room(s.shift(u.Scale(by))) < 0 {
			by = bisect(by, 0, func(x float64) bool { return c.room(s.shift(u.Scale(x))) >= 0 })
			what = string(Round)
		}
	}
	return by, what
}

// rises gives the least shift along u, not below `from`, at which nothing stands
// over the set, and what stands over it without a shift. Over one obstacle the
// blocked shifts are an interval, because both solids are convex: its far end
// is found by halving, and each pair can push the shift on only once. What the
// set would stand in already before it rises is the shift's own limit (stop),
// which then lies below the shift given here, and is left out.
func (m *mover) rises(u geom.Vec3, from float64) (need float64, over string) {
	need = from
	for again := true; again; {
		again = false
		for i := range m.moving {
			for k := range m.static {
				free := func(s float64) bool { return m.clear(i, k, u.Scale(s), m.up) }
				if free(need) {
					continue
				}
				if over == "" {
					over = m.names[k]
				}
				if u == (geom.Vec3{}) {
					return 0, over
				}
				if !m.clear(i, k, u.Scale(need), geom.Vec3{}) {
					continue
				}
				need, again = bisect(need, faraway, free), true
			}
		}
	}
	return need, over
}

// rimSpan gives the shifts along u, 0 to most, at which the set's plan lies
// inside the opening; ok is false where none does.
func (m *mover) rimSpan(u geom.Vec3, most float64) (from, to float64, ok bool) {
	over := func(s float64) float64 {
		d := math.Inf(1)
		for i := range m.moving {
			r, _ := m.rim.room(m.moving[i].shift(m.base.Add(u.Scale(s))))
			d = math.Min(d, r)
		}
		return -d
	}
	fits := func(s float64) bool { return over(s) <= dust }
	in := 0.0
	if !fits(0) {
		// How far it stands over the rim is convex in the shift: three-way search
		// for the least.
		lo, hi := 0.0, most
		for hi-lo > 1e-6 {
			a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
			if over(a) <= over(b) {
				hi = b
			} else {
				lo = a
			}
		}
		if in = lo; !fits(in) {
			if in = hi; !fits(in) {
				return 0, 0, false
			}
		}
		from = bisect(0, in, fits)
	}
	if to = most; !fits(most) {
		to = bisect(most, in, fits)
	}
	return from, to, true
}

// shift works out one direction: the shift needed and the shift there is.
func (m *mover) shift(u geom.Vec3) Try {
	t := Try{Along: u}
	stop, what := m.stop(u, faraway)
	t.Available, t.Blocker = unit.Length(stop), what
	from, to, ok := m.rimSpan(u, stop)
	if !ok {
		t.Blocker = "rim"
		return t
	}
	// What stands over the set only after the shift that the rim asks for counts too.
	need, _ := m.rises(u, from)
	t.Needed, t.NeedKnown = unit.Length(need), true
	if to < stop-dust {
		t.Available, t.Blocker = unit.Length(to), "rim"
	}
	return t
}
