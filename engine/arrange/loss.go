package arrange

import (
	"math"
	"sync"

	"plashet/engine/geom"
)

// losses gives for each direction what must be let off the room across it, so that
// no two bodies are lost that keep the room exactly; without end where the net
// does not fit the bodies' axes.
func (c *compass) losses(p, q *body, room float64) []float64 {
	out := make([]float64, len(c.apart))
	room = max(0, room)
	reach, sides := make([]float64, len(c.apart)), make([]uint16, len(c.apart))
	ways := append(p.edges(), q.edges()...)
	for i, n := range c.apart {
		reach[i] = room + p.round(n) + q.round(n)
		for k, w := range ways {
			switch s := n.Dot(w); {
			case s > astray:
				sides[i] |= 1 << (2 * k)
			case s < -astray:
				sides[i] |= 2 << (2 * k)
			}
		}
	}
	for _, k := range c.cells {
		on := sides[k[0]] | sides[k[1]] | sides[k[2]]
		if on&(on>>1)&0x555 != 0 { // on both sides of an axis or an edge
			for _, n := range k {
				out[n] = math.Inf(1)
			}
			continue
		}
		m := c.apart[k[0]].Add(c.apart[k[1]]).Add(c.apart[k[2]]).Unit()
		g := m.Scale(room).Add(p.touch(m)).Add(q.touch(m))
		for _, n := range k {
			out[n] = max(out[n], reach[n]-c.apart[n].Dot(g))
		}
	}
	for i := range out {
		if out[i] += 2 * pad; len(c.cells) == 0 {
			out[i] = math.Inf(1)
		}
	}
	return out
}

// edges gives the directions along which a body has an extent that is not round.
func (b *body) edges() []geom.Vec3 {
	if !b.block {
		return []geom.Vec3{b.axis}
	}
	var out []geom.Vec3
	for _, h := range [3]geom.Vec3{b.u, b.v, b.w} {
		if h.Norm() > grain {
			out = append(out, h.Unit())
		}
	}
	return out
}

// round gives how far a body's roundness reaches along n beyond its ends.
func (b *body) round(n geom.Vec3) float64 {
	if b.block {
		return 0
	}
	return b.beyond(n)
}

// touch gives the point that a body's roundness reaches farthest to along n, from
// its end.
func (b *body) touch(n geom.Vec3) geom.Vec3 {
	if b.block {
		return geom.Vec3{}
	}
	off := n.Sub(b.axis.Scale(n.Dot(b.axis)))
	l := off.Norm()
	if l < onCircle {
		return geom.Vec3{}
	}
	return off.Scale(b.r / l)
}

// losses are those of pairs of bodies, kept because the same few come again.
type losses struct {
	compass *compass
	coarser *losses
	had     map[lossKey][]float64
}

// lossKey is what the losses of two bodies hang on: their axes, or the half vectors
// of a block.
type lossKey struct {
	p, q shapeKey
	room float64
}

type shapeKey struct {
	u, v, w geom.Vec3
	r       float64
}

func (b *body) shape() shapeKey {
	if b.block {
		return shapeKey{u: b.u, v: b.v, w: b.w}
	}
	return shapeKey{u: b.axis, r: b.r}
}

func (l *losses) of(p, q *body, room float64) []float64 {
	k := lossKey{p.shape(), q.shape(), max(0, room)}
	got, ok := l.had[k]
	if !ok {
		got = l.compass.losses(p, q, room)
		l.had[k] = got
	}
	return got
}

// nets gives how many nets there are, and net one of them, the coarsest first. The
// normals of each are the first ones of the next.
func (l *losses) nets() (n int) {
	for ; l != nil; l = l.coarser {
		n++
	}
	return n
}

func (l *losses) net(n int) *losses {
	for range l.nets() - 1 - n {
		l = l.coarser
	}
	return l
}

// finer is a compass with a finer net, made when it is first asked for.
type finer struct {
	once sync.Once
	of   *compass
}

// finer gives the compass of an order with a finer net.
func (s *search) finer(o *order) *compass {
	f := &o.compass.finer
	f.once.Do(func() {
		f.of = o.compass.halved()
		f.of.around = s.surroundings(f.of.pump, f.of.apart)
	})
	return f.of
}

// patience gives by how much more work a branch and bound with its net may take
// than with the coarsest one: few chains come as far.
func (c *compass) patience() int {
	if c.coarser != nil {
		return 8
	}
	return 1
}
