package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
)

// manner is how two bodies are kept apart.
type manner uint8

const (
	still manner = iota // where they stand
	rise                // while the first is lifted from where it was slid to
	slide               // while the first is slid
	nudge               // while the pump is pushed over the floor by its play
)

// keep is one distance to keep: somewhere a plane must lie between the two
// bodies with so much room.
type keep struct {
	p, q   int // bodies; the first moves
	room   float64
	manner manner
	last   int  // the plane that did last time
	way    int  // of a nudge: axis and sign
	loose  bool // the bodies meet: on the way only what they start with is kept

	losses [nets][]float64 // what each net lets off the room across its normals, once it is known
	net    int             // the coarsest one that the solution does not pass
}

// pad is added to what is kept, so that rounding loses nothing, in metres.
const pad = 2e-6

// leaving is how the pump gets out.
type leaving struct {
	slides  bool
	u       geom.Vec3 // along which it slides first
	least   float64   // off a union's lip
	without bool      // it need not come out
}

// keeps adds to a list all that is to be kept apart, as package layout judges it.
// Outer, it adds no more than package layout asks on the way out, which is what
// two bodies have at rest where that is less.
func (s *search) keeps(ks []keep, c *chain, out leaving, play, outer bool) []keep {
	lim := &s.lim
	direct := func(item int) bool { return item%2 == 0 && item >= 0 && !c.frame.Links[item/2].Piped }
	for i := range c.bodies {
		for k := range i {
			p, q := &c.bodies[k], &c.bodies[i] // chain before pump before obstacles
			room := 0.0
			apply := true
			var meets bool
			switch {
			case p.part() && q.part():
				lo, hi := min(p.item, q.item), max(p.item, q.item)
				meets = hi-lo <= 1 || hi-lo == 2 && hi%2 == 0 && direct(hi)
				room = float64(lim.PartClear)
				apply = !meets && (p.leg != q.leg || p.leg < 0)
				if c.sketch { // how near its elbows bring them is not known yet
					apply = p.leg-q.leg >= 3 || q.leg-p.leg >= 3
				}
				if (p.nut || q.nut) && p.item != q.item && p.leg != q.leg {
					apply, room = true, max(room, float64(lim.Hand))
				}
			case p.part() && q.pump():
				room = float64(lim.PumpClear)
				apply = !p.first || p.leg != 0
				if p.nut {
					apply, room = true, max(room, float64(lim.Hand))
				}
			case p.part() && q.obstacle():
				room = float64(lim.ObstacleClear)
				if p.nut {
					room = max(room, float64(lim.Hand))
				}
			case p.pump() && q.obstacle():
				room = float64(lim.ObstacleClear)
			default:
				apply = false
			}
			crosses := !out.without && p.moves != q.moves && !p.either && !q.either
			if crosses && c.sketch && !apply {
				crosses = false // nor is it known what meets
			}
			a, b := k, i
			if crosses && q.moves {
				a, b = i, k
			}
			if apply && !together(p, q) {
				ks = append(ks, keep{p: a, q: b, room: room + pad})
			}
			if play && p.pump() && q.obstacle() {
				for way := range 2 * playPiece {
					ks = append(ks, keep{p: a, q: b, room: pad, manner: nudge, way: way})
				}
			}
			if !crosses {
				continue
			}
			// On its way out it keeps the room of the way, or touches what it
			// touched at the start: the two faces of the opened nut.
			way, loose := float64(lim.LiftClear)+pad, false
			if !apply {
				way, loose = -grain, true
			}
			if outer {
				way = min(way, room+pad)
			}
			if out.slides {
				ks = append(ks, keep{p: a, q: b, room: way, manner: slide, loose: loose})
			}
			ks = append(ks, keep{p: a, q: b, room: way, manner: rise, loose: loose})
		}
	}
	return ks
}

// pushed gives the play by which a nudge pushes the pump, and which way.
func (b *branch) pushed(k *keep) (*play, geom.Vec3) {
	q := &b.play[k.way/2]
	return q, q.u.Scale(float64(1 - 2*(k.way%2)))
}

// gap gives how far the plane across normal n keeps the two apart where they
// are; below zero it does not. A plane over which the first would have to rise
// does not count on the way up.
func (b *branch) gap(k *keep, n int) float64 {
	c := b.c
	nv, p, q := &c.normals[n], &c.bodies[k.p], &c.bodies[k.q]
	if k.manner == rise && nv.Z > 1e-9 {
		return math.Inf(-1)
	}
	d := min(nv.Dot(b.ends[k.q][0]), nv.Dot(b.ends[k.q][1])) - q.over[n] -
		max(nv.Dot(b.ends[k.p][0]), nv.Dot(b.ends[k.p][1])) - p.over[n]
	if k.manner == nudge {
		q, u := b.pushed(k)
		return d - q.now*max(0, nv.Dot(u))
	}
	if k.manner == still || !b.out.slides {
		return d
	}
	if f := nv.Dot(b.out.u); k.manner == rise || f > 0 {
		d -= f * b.x[c.vars-1]
	}
	return d
}

// apart makes the row of a plane across n that keeps the two apart, or with not
// that of one that does not, and gives what it may come to.
func (b *branch) apart(k *keep, ni int, not bool) (most float64) {
	c, row, out := b.c, b.row, &b.out
	n := c.normals[ni]
	first, other := &c.bodies[k.p], &c.bodies[k.q]
	clear(row)
	// n.(q's nearest) - n.(p's farthest) >= room
	fixed := c.along(row, other.far(n.Scale(-1)), n, -1) + other.beyond(n)
	fixed += c.along(row, first.far(n), n, 1) + first.beyond(n)
	if k.manner == nudge {
		if q, u := b.pushed(k); n.Dot(u) > 0 {
			fixed += q.tangent(row, n.Dot(u))
		}
	}
	room := k.room - b.loss(k, ni)
	f := n.Dot(out.u)
	if not {
		if k.manner == rise && out.slides || k.manner == slide && f > 0 {
			row[c.vars-1] += f
		}
		for i := range row {
			row[i] = -row[i]
		}
		return room + fixed
	}
	if k.manner == rise && out.slides {
		row[c.vars-1] += f
	}
	if k.manner == slide && f > 0 {
		row[c.vars-1] += f // the far end of the slide is the nearer one
	}
	return -room - fixed
}

// loss gives what is let off the room that two bodies keep across a normal.
func (b *branch) loss(k *keep, n int) float64 {
	if !b.outer {
		return 0
	}
	return k.losses[k.net][n]
}

// wall is a plane that bodies must stay on one side of.
type wall struct {
	layout.Plane
	slid bool // at the end of the slide
	rim  bool // of the way out
}

// room gives the room that a body keeps to a wall; false where it need keep
// none.
func (s *search) room(b *body, w *wall) (float64, bool) {
	switch {
	case b.obstacle():
		return 0, false
	case w.slid:
		return 0, b.moves
	case b.pump():
		return 0, true
	case b.glued == atWall:
		return 0, false
	case b.exit && w.Wall == s.exit:
		return 0, false
	case b.nut:
		return max(float64(s.lim.WallClear), float64(s.lim.Hand)) + pad, true
	}
	return float64(s.lim.WallClear) + pad, true
}

// inside adds the row that keeps a body on its side of a wall.
func (b *branch) inside(p *program, o *body, w *wall, room float64) {
	c, row := b.c, b.row
	clear(row)
	fixed := c.along(row, o.far(w.N), w.N, 1) + o.beyond(w.N)
	if w.slid {
		row[c.vars-1] += w.N.Dot(b.out.u)
	}
	if b.give != nil {
		row[c.vars] = -b.give.part(w)
	}
	p.row(row, w.B-room-fixed)
}
