package arrange

import (
	"math"

	"plashet/engine/geom"
)

// keeping is what bones must keep at a bearing: points of theirs that lie below planes
// or, where nothing closes, above them by as little as can be.
type keeping struct {
	o      *bones
	c      *chain
	on     []*chain // a step on over each of the angles
	points []point
	rows   []gapRow
	row    []float64
}

// point is a point of the bones.
type point struct {
	at    *spot
	is    geom.Vec3            // at the last solution
	goes  [mostWays]geom.Vec3  // over each of the angles, where the solution before lay
	place func(c *chain) *spot // finds it in another chain
}

// gapRow keeps a point below a plane. It is taken into the program once it is passed.
type gapRow struct {
	point int
	n     geom.Vec3
	below float64
	goes  [mostWays]float64 // how its reach grows over each of the angles
	added bool
}

// mostWays is how many angles a bearing can have: two for each leg between four elbows
// and one for the pump.
const mostWays = 7

// keep readies what a chain must keep.
func (o *bones) keep(c *chain, on []*chain) *keeping {
	k := &o.keeps
	k.o, k.c, k.on, k.points, k.rows = o, c, on, k.points[:0], k.rows[:0]
	k.add(&c.end, func(c *chain) *spot { return &c.end })
	for i := range c.bodies {
		k.add(&c.bodies[i].a, func(c *chain) *spot { return &c.bodies[i].a })
		k.add(&c.bodies[i].b, func(c *chain) *spot { return &c.bodies[i].b })
	}
	k.ends()
	k.walls()
	return k
}

// add takes in a point. Where it goes is told to the first order, at the solution before.
func (k *keeping) add(at *spot, place func(c *chain) *spot) {
	p := point{at: at, place: place}
	if len(k.on) > 0 {
		here := k.c.at(at, k.o.x)
		for i, d := range k.on {
			p.goes[i] = d.at(place(d), k.o.x).Sub(here).Scale(1 / tiny)
		}
	}
	k.points = append(k.points, p)
}

// The points: the end of the chain, then both ends of each body.
const endPoint = 0

func endsOf(body int) [2]int { return [2]int{1 + 2*body, 2 + 2*body} }

// ends keeps the chain's end at the hole.
func (k *keeping) ends() {
	s := k.o.s
	between := func(n geom.Vec3, at, less, more float64) {
		k.rows = append(k.rows, gapRow{point: endPoint, n: n, below: at + more}, gapRow{point: endPoint, n: n.Scale(-1), below: less - at})
	}
	hole, up, reach := s.hole.At, geom.Vec3{Z: 1}, &s.in.Reach
	between(s.across, s.across.Dot(hole), float64(reach.Back), float64(reach.Forth))
	between(up, hole.Z, float64(reach.Down), float64(reach.Up))
	if k.c.through {
		k.rows = append(k.rows, gapRow{point: endPoint, n: s.hole.Axis, below: s.hole.Axis.Dot(hole)})
	} else {
		between(s.seat, s.seat.Dot(hole), 0, 0)
	}
}

// walls keeps every body within the flat walls.
func (k *keeping) walls() {
	s := k.o.s
	for i := range k.c.bodies {
		for j := range s.walls {
			w := &s.walls[j]
			if room, holds := s.room(&k.c.bodies[i], w); holds && !w.slid {
				k.clear(i, w.N, w.B-room)
			}
		}
	}
}

// clear keeps a body below a plane, with each point of it that can come nearest.
func (k *keeping) clear(body int, n geom.Vec3, at float64) {
	b := &k.c.bodies[body]
	ends := endsOf(body)
	reaching := func(point int, reach func(c *chain) float64) {
		r := gapRow{point: point, n: n, below: at - reach(k.c)}
		for i, d := range k.on {
			r.goes[i] = (reach(d) + r.below - at) / tiny
		}
		k.rows = append(k.rows, r)
	}
	beyond := func(c *chain) float64 { return c.bodies[body].beyond(n) }
	switch {
	case !b.block:
		reaching(ends[0], beyond)
		reaching(ends[1], beyond)
	case !k.o.joints.yaw:
		reaching(ends[0], beyond)
	default: // which corner comes nearest changes as it is turned
		for _, f := range [4][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			reaching(ends[0], func(c *chain) float64 {
				b := &c.bodies[body]
				return f[0]*n.Dot(b.u) + f[1]*n.Dot(b.v) + math.Abs(n.Dot(b.w))
			})
		}
	}
}

// round keeps the bodies inside round walls by the planes that touch these where they
// come nearest at the last solution; those that stand out no more than the gap only
// where all are wanted. It tells whether there was any.
func (k *keeping) round(all bool) (any bool) {
	o := k.o
	b := &o.w.b
	for i := range o.s.rounds {
		wl := &o.s.rounds[i]
		if wl.slid {
			continue
		}
		b.c, b.x = k.c, append(b.x[:0], o.x[:k.c.vars]...)
		b.settle()
		for i := range k.c.bodies {
			w := wall{}
			w.Wall = wl.wall
			room, holds := o.s.room(&k.c.bodies[i], &w)
			if !holds {
				continue
			}
			near := room
			if all { // a step may bring nearer what keeps the room now
				near = math.Inf(1)
			}
			if wl.clears(&k.c.bodies[i], b.ends[i], room) {
				continue
			}
			n, at, out := b.touch(wl, i, geom.Vec3{}, near)
			if math.IsInf(out, -1) || !all && out+room-o.x[k.c.vars] < closed {
				continue
			}
			k.clear(i, n, at-room)
			any = true
		}
	}
	return any
}

// solve makes the gap least, rows taken in as they are passed; each angle goes no
// farther than most either way.
func (k *keeping) solve(most float64) {
	o, n := k.o, k.c.vars
	width := n + 1 + len(k.on)
	k.row = append(k.row[:0], make([]float64, width)...)
	costs := k.row
	for i := varJoints; i < n; i++ {
		costs[i] = 1
	}
	costs[n] = dear
	o.p.reset(costs)
	o.x = append(o.x[:0], costs...)
	clear(o.x)
	for i := range k.on { // angles count from -most
		clear(k.row)
		k.row[n+1+i] = 1
		o.p.row(k.row, 2*most)
		o.x[n+1+i] = most
	}
	k.stand()
	for i := range k.rows {
		k.rows[i].added = false
	}
	for k.take(most) {
		if o.programs++; !o.p.solve() {
			o.x[n] = math.Inf(1)
			return
		}
		o.p.read(o.x)
	}
	for i := range k.on {
		o.x[n+1+i] -= most
	}
}

// stand adds that the pump stands where it must.
func (k *keeping) stand() {
	st := k.o.s.standing(k.c)
	if !st.Fixed {
		return
	}
	for i, at := range [2]float64{st.Pose.At.X, st.Pose.At.Y} {
		for _, f := range [2]float64{1, -1} {
			clear(k.row)
			k.row[varX+i] = f
			k.o.p.row(k.row, f*at)
		}
	}
}

// take takes in the rows that the solution passes; false where there are none.
func (k *keeping) take(most float64) (any bool) {
	o, n := k.o, k.c.vars
	for i := range k.points {
		p := &k.points[i]
		p.is = k.c.at(p.at, o.x)
		for j := range k.on {
			p.is = p.is.Add(p.goes[j].Scale(o.x[n+1+j] - most))
		}
	}
	for i := range k.rows {
		r := &k.rows[i]
		p := &k.points[r.point]
		over := r.n.Dot(p.is) - r.below - o.x[n]
		for j := range k.on {
			over += r.goes[j] * (o.x[n+1+j] - most)
		}
		if r.added || over <= grain {
			continue
		}
		clear(k.row)
		b := r.below - k.c.along(k.row[:n], p.at, r.n, 1)
		k.row[n] = -1
		for j := range k.on {
			slope := r.n.Dot(p.goes[j]) + r.goes[j]
			k.row[n+1+j] = slope
			b += slope * most
		}
		o.p.row(k.row, b)
		r.added, any = true, true
	}
	return any
}
