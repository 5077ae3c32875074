package arrange

import (
	"plashet/engine/geom"
	"plashet/engine/layout"
)

// stamps are parts as they look about their centre, and what lies between two of
// them, kept because the same few come again in every chain. What is not there
// yet is taken off a chain that package layout placed.
type stamps struct {
	compass *compass
	parts   map[stampKey]*stamp
	links   map[linkKey]layout.Link
	overs   map[overKey][]float64
	spare   *chain
	lost    *losses
}

// overKey is what a round body's reach beyond its ends hangs on.
type overKey struct {
	axis geom.Vec3
	r    float64
}

// over gives the reach of a round body beyond its ends for every normal.
func (st *stamps) over(axis geom.Vec3, r float64) []float64 {
	key := overKey{axis, r}
	o, ok := st.overs[key]
	if !ok {
		b := body{axis: axis, r: r}
		o = b.beyonds(st.compass.apart)
		st.overs[key] = o
	}
	return o
}

type stampKey struct {
	p       *piece
	in, out geom.Vec3
}

type linkKey struct {
	standing int // where a is the pump
	a, b     *piece
}

type stamp struct {
	bodies []body    // their spots from the centre; legs from that of the inlet
	opened []int     // of each, which piece of an opened nut it is
	face   geom.Vec3 // of the inlet's hub
	outlet geom.Vec3
}

func newStamps(c *compass, coarser *losses) *stamps {
	return &stamps{compass: c, parts: map[stampKey]*stamp{}, links: map[linkKey]layout.Link{}, overs: map[overKey][]float64{}, spare: &chain{}, lost: newLosses(c, coarser)}
}

func linkOf(standing int, parts []*piece, i int) linkKey {
	if i == 0 {
		return linkKey{standing, nil, parts[0]}
	}
	return linkKey{-1, parts[i-1], parts[i]}
}

func (w *worker) stampsOf(c *compass) *stamps {
	st := w.stamps[c]
	if st == nil {
		var coarser *losses
		if c.coarser != nil {
			coarser = w.stampsOf(c.coarser).lost
		}
		st = newStamps(c, coarser)
		w.stamps[c] = st
	}
	return st
}

// legs calls with each part and the directions in and out of it.
func legs(parts []*piece, dirs []geom.Vec3, do func(i int, key stampKey)) {
	leg := 0
	for i, p := range parts {
		in := dirs[leg]
		if p.turns {
			leg++
		}
		do(i, stampKey{p, in, dirs[leg]})
	}
}

// chain makes the chain of an order; nil where the pieces do not go together. It
// stands until the next one is made.
func (w *worker) chain(o *order, parts []*piece) *chain {
	s, known, st := w.s, true, w.stampsOf(o.compass)
	legs(parts, o.dirs, func(i int, key stampKey) {
		_, link := st.links[linkOf(o.standing, parts, i)]
		known = known && link && st.parts[key] != nil
	})
	if !known {
		c, ok := s.newChain(o, parts)
		if !ok {
			return nil
		}
		st.learn(s, o, parts, c)
	}
	return st.press(s, o, parts)
}

// learn takes the stamps off a chain.
func (st *stamps) learn(s *search, o *order, parts []*piece, c *chain) {
	legs(parts, o.dirs, func(i int, key stampKey) {
		st.links[linkOf(o.standing, parts, i)] = c.frame.Links[i]
		if st.parts[key] != nil {
			return
		}
		pl, before := &c.frame.Places[i], 0
		if own := s.alone(key.in, c.in.Parts[i]); own != nil {
			pl = own
		} else {
			for _, p := range parts[:i] {
				if p.turns {
					before++
				}
			}
		}
		st.parts[key] = st.of(pl, before)
	})
}

// alone places a part by itself, nil where that cannot be. So it is the same to the
// last digit whichever chain it is seen in first, and so on one core as on many.
func (s *search) alone(in geom.Vec3, part layout.Laid) *layout.Place {
	pump := layout.Pump{Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, geom.Vec3{X: 1, Y: 1, Z: 1})}, Points: in, Outlet: counter(part)}
	f, faults := s.row(pump, 0, layout.Join{}, []layout.Laid{part})
	if len(faults) > 0 {
		return nil
	}
	return &f.Places[0]
}

// of takes the stamp off a part, with so many turns before it.
func (st *stamps) of(pl *layout.Place, before int) *stamp {
	one := &stamp{face: pl.InFace.Sub(pl.Centre), outlet: pl.Outlet.Sub(pl.Centre)}
	for _, sol := range pl.Solids {
		b := body{
			a: spot{c: sol.From.Sub(pl.Centre)}, b: spot{c: sol.To.Sub(pl.Centre)},
			axis: sol.To.Sub(sol.From).Unit(), r: float64(sol.Radius), leg: -1,
		}
		if sol.Leg >= 0 {
			b.leg = sol.Leg - before
		}
		b.over = st.over(b.axis, b.r)
		one.bodies, one.opened = append(one.bodies, b), append(one.opened, sol.Opening)
	}
	return one
}

// press makes a chain of stamps; nil where its last part is a hose.
func (st *stamps) press(s *search, o *order, parts []*piece) *chain {
	if parts[len(parts)-1].hose != nil {
		return nil // it does not go through the wall
	}
	c := st.spare
	bare := o.compass.pump
	*c = chain{
		union: -1, hose: -1, standing: o.standing, normals: o.compass.apart, lost: st.lost, vars: varJoints,
		bodies: c.bodies[:0], dirs: c.dirs[:0], slot: c.slot[:0], made: c.made[:0], bends: c.bends[:0], frame: layout.Frame{Links: c.frame.Links[:0]},
	}
	for i, p := range parts {
		if p.opens {
			c.union = i
			break
		}
	}
	at, leg, last := bare.Port, 0, len(parts)-1
	legs(parts, o.dirs, func(i int, key stampKey) {
		p, link, one := parts[i], st.links[linkOf(o.standing, parts, i)], st.parts[key]
		exit := p.part.Kind == layout.Bulkhead
		at = at.Add(key.in.Scale(float64(link.Least)))
		c.frame.Links, c.dirs = append(c.frame.Links, link), append(c.dirs, key.in)
		c.made = append(c.made, nil)
		if p.made() {
			c.made[i] = p.held
		}
		if i == c.union {
			c.back, c.lip = key.in.Scale(-1), float64(p.part.Splits[0].Lip)
		}
		if link.Piped || hosed(parts, i) {
			face := at.Add(one.face)
			b := body{
				a: spot{face, i, true}, b: spot{face, i + 1, true}, axis: key.in, r: float64(link.Pipe.OD) / 2,
				item: 2*i - 1, leg: leg, glued: rowOf(p, p.made()), first: i == 0, exit: i == last && exit, moves: i <= c.union,
			}
			if !link.Piped {
				s.straightEnd(c, parts, &b, i)
			}
			b.over = st.over(key.in, b.r)
			c.bodies = append(c.bodies, b)
			c.slot = append(c.slot, c.vars)
			c.vars++
		} else {
			c.slot = append(c.slot, -1)
		}
		for k, b := range one.bodies {
			b.a, b.b = spot{at.Add(b.a.c), i + 1, true}, spot{at.Add(b.b.c), i + 1, true}
			b.glued = rowOf(p, p.held != nil)
			b.item, b.first, b.exit = 2*i, i == 0 && !link.Piped, exit
			b.nut = p.opens && b.leg >= 0
			if b.leg >= 0 {
				b.leg += leg
			}
			b.opened = one.opened[k]
			b.moves = i < c.union || i == c.union && b.opened == 0
			c.bodies = append(c.bodies, b)
		}
		if p.turns {
			c.bends = append(c.bends, bend{at.Sub(bare.Port), i + 1, key.in, key.out})
			leg++
		}
		if i == last {
			c.end = spot{at, last + 1, true}
			if c.through = !exit; c.through {
				c.end.c, c.tail = at.Add(one.outlet), float64(p.part.Out.Depth.Length)
			}
			c.dirs = append(c.dirs, key.out)
		}
	})
	c.vars++ // the slide
	c.rest(o.compass.around)
	return c
}
