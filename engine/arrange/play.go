package arrange

import (
	"math"

	"plashet/engine/geom"
)

// The play that an assembly needs hangs on its lengths, because an elbow that is
// turned a little moves the port by its lever. What engine/layout asks along an
// axis u is the root of a sum of squares
//
//	need(x) = sqrt( sum (saw or seat, along u)^2 + sum (error of an elbow x lever, along u)^2 )
//
// and each lever is linear in the lengths, so that need is convex in them and
// lies above each of its tangents. A wall, or the least length of the closing
// piece, is therefore kept by rows that touch need where the last solution lay:
// they cut off nothing that has the play.

// bend is an elbow, for the error that it makes at the port.
type bend struct {
	c       geom.Vec3 // from the port, with every hub touching
	upto    int
	in, out geom.Vec3
}

// The three ways along which play is needed.
const (
	playX     = iota
	playY     // on the floor
	playPiece // along the closing piece
	playWays
)

// play is what is needed one way.
type play struct {
	asked  bool
	u      geom.Vec3
	square float64        // of what saw and seats make of it
	w      [][2]geom.Vec3 // of each bend: what a lever is multiplied with
	most   float64        // what is needed at most where the closing piece lies along it
	now    float64        // at the last solution
	turn   []float64      // its slope over each variable there
	at     float64        // what the tangent there is where all variables are none
}

// plays works out what play a chain needs, from its joints and bends; of a
// chain that stands for several only what all of them need.
func (b *branch) plays() {
	c, s := b.c, b.s
	for k := range b.play {
		b.play[k].asked = false
	}
	if !s.in.Rules.Play || b.lax {
		return
	}
	whole, closing := c.whole(), -1
	if whole {
		closing = c.closing()
	}
	ways := [playWays]geom.Vec3{playX: {X: 1}, playY: {Y: 1}}
	if closing >= 0 {
		ways[playPiece] = c.dirs[closing]
	}
	lim := &s.lim
	for k := range b.play {
		p, u := &b.play[k], ways[k]
		if u == (geom.Vec3{}) {
			continue
		}
		p.asked, p.u, p.square, p.most, p.w = true, u, 0, math.Inf(1), p.w[:0]
		for i := range c.slot {
			d, l := c.dirs[i].Dot(u), &c.frame.Links[i]
			if c.made[i] != nil && l.Piped { // cut and seats are in what was measured
				p.square += d * d * float64(lim.Tape*lim.Tape)
			} else {
				if !c.sketch && l.Piped {
					p.square += d * d * float64(lim.Saw*lim.Saw)
				}
				p.square += d * d * float64(l.Seats) * float64(lim.Seat*lim.Seat)
			}
			measured := i == closing || c.made[i] != nil && c.made[i].before.Closing ||
				!whole && c.slot[i] >= 0 && math.Abs(c.dirs[i].Z) > uprightly
			if k != playPiece && measured && math.Abs(d) > uprightly {
				p.most = float64(lim.Tape + lim.Saw + 2*lim.Seat)
				p.asked = whole
			}
		}
		for _, e := range c.bends {
			p.w = append(p.w, [2]geom.Vec3{
				u.Cross(e.out).Scale(float64(lim.Roll)),
				u.Cross(e.in.Cross(e.out).Unit()).Scale(float64(lim.Elbow)),
			})
		}
	}
}

// whole tells that a chain is one assembly, and does not stand for several.
func (c *chain) whole() bool { return !c.sketch && !c.parted }

// uprightly is the share of a way along a piece from which a piece that is
// measured in place takes an error up, as package layout has it.
const uprightly = 0.7

// needed works out the play at the solution, with its tangents.
func (b *branch) needed() {
	c := b.c
	for k := range b.play {
		p := &b.play[k]
		if !p.asked {
			continue
		}
		if cap(p.turn) < len(b.x) {
			p.turn = make([]float64, len(b.x))
		}
		p.turn = p.turn[:len(b.x)]
		clear(p.turn)
		sum := p.square
		for i := range c.bends {
			e := &c.bends[i]
			lever := e.c
			for j, v := range c.slot[:e.upto] {
				if v >= 0 {
					lever = lever.Add(c.dirs[j].Scale(b.x[v]))
				}
			}
			for _, w := range p.w[i] {
				m := lever.Dot(w)
				sum += m * m
				for j, v := range c.slot[:e.upto] {
					if v >= 0 {
						p.turn[v] += m * c.dirs[j].Dot(w)
					}
				}
			}
		}
		p.now = math.Sqrt(sum)
		if p.now >= p.most || p.now == 0 {
			p.now, p.at = min(p.now, p.most), min(p.now, p.most)
			clear(p.turn)
			continue
		}
		p.at = p.now
		for v := range p.turn {
			p.turn[v] /= p.now
			p.at -= p.turn[v] * b.x[v]
		}
	}
}

// tangent adds f times the play needed to a row and gives the part of it that
// does not move.
func (p *play) tangent(row []float64, f float64) float64 {
	for v, t := range p.turn {
		row[v] += f * t
	}
	return f * p.at
}

// roomy adds the rows by which the pump has its play between the walls and the
// closing piece its spare; false where there is none.
func (b *branch) roomy(p *program) bool {
	const dust = 1e-7
	any, c := false, b.c
	if q := &b.play[playPiece]; q.asked {
		if k := c.slot[c.closing()]; b.x[k] < q.now+pad-dust {
			clear(b.row)
			b.row[k] = -1
			fixed := q.tangent(b.row, 1)
			p.row(b.row, -pad-fixed)
			any = true
		}
	}
	for k := range c.bodies {
		o := &c.bodies[k]
		if !o.pump() {
			continue
		}
		for way := range 2 * playPiece {
			q, sign := &b.play[way/2], float64(1-2*(way%2))
			if !q.asked {
				continue
			}
			u := q.u.Scale(sign)
			for i := range b.walls {
				w := &b.walls[i]
				f := w.N.Dot(u)
				if w.slid || f < 1e-9 {
					continue
				}
				d := w.B + b.given(w) - max(w.N.Dot(b.ends[k][0]), w.N.Dot(b.ends[k][1])) - o.beyond(w.N)
				if d < f*q.now+pad-dust {
					b.insidePlay(p, o, w, q, f)
					any = true
				}
			}
			for i := range b.s.rounds {
				r := &b.s.rounds[i]
				if r.slid {
					continue
				}
				if n, at, out := b.touch(r, k, u.Scale(q.now), pad); out > -pad+dust {
					w := wall{}
					w.Wall, w.N, w.B = r.wall, n, at
					b.insidePlay(p, o, &w, q, n.Dot(u))
					any = true
				}
			}
		}
	}
	return any
}

// insidePlay adds the row that keeps a body on its side of a wall, f times the
// play off it.
func (b *branch) insidePlay(p *program, o *body, w *wall, q *play, f float64) {
	c, row := b.c, b.row
	clear(row)
	fixed := c.along(row, o.far(w.N), w.N, 1) + o.beyond(w.N) + q.tangent(row, f)
	if b.give != nil {
		row[c.vars] -= b.give.part(w)
	}
	p.row(row, w.B-pad-fixed)
}
