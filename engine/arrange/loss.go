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
	m := c.middles()
	return c.pair(m, c.share(m, p), c.share(m, q), room)
}

// corners are figures for the corners of each triangle of a net.
type corners [][3]float64

// middle is that of a triangle, with what the room alone loses at the corners: of a
// metre of it, what they lie farther out than the plane across the middle.
type middle struct {
	at   geom.Vec3
	lost [3]float64
}

func (c *compass) middles() []middle {
	out := make([]middle, len(c.cells))
	for i, k := range c.cells {
		m := &out[i]
		m.at = c.apart[k[0]].Add(c.apart[k[1]]).Add(c.apart[k[2]]).Unit()
		for j, n := range k {
			m.lost[j] = 1 - c.apart[n].Dot(m.at)
		}
	}
	return out
}

// share gives what a body has of the losses: what it reaches beyond its ends across a
// corner less how far the point goes that is touched across the middle; without end
// where a triangle lies on both sides of an axis or an edge of it.
func (c *compass) share(middles []middle, b *body) corners {
	reach, sides := make([]float64, len(c.apart)), make([]uint8, len(c.apart))
	ways := b.edges()
	for i, n := range c.apart {
		reach[i] = b.round(n)
		for k, w := range ways {
			switch s := n.Dot(w); {
			case s > astray:
				sides[i] |= 1 << (2 * k)
			case s < -astray:
				sides[i] |= 2 << (2 * k)
			}
		}
	}
	out := make(corners, len(c.cells))
	for i, k := range c.cells {
		if on := sides[k[0]] | sides[k[1]] | sides[k[2]]; on&(on>>1)&0x15 != 0 {
			out[i] = [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
			continue
		}
		g := b.touch(middles[i].at)
		for j, n := range k {
			out[i][j] = reach[n] - c.apart[n].Dot(g)
		}
	}
	return out
}

// pair adds up what two bodies and the room between them lose.
func (c *compass) pair(middles []middle, p, q corners, room float64) []float64 {
	out := make([]float64, len(c.apart))
	room = max(0, room)
	for i, k := range c.cells {
		m, p, q := &middles[i], &p[i], &q[i]
		for j, n := range k {
			out[n] = max(out[n], room*m.lost[j]+p[j]+q[j])
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
	l := math.Sqrt(off.Dot(off))
	if l < onCircle {
		return geom.Vec3{}
	}
	return off.Scale(b.r / l)
}

// losses are those of pairs of bodies, kept because the same few come again.
type losses struct {
	compass *compass
	coarser *losses
	middles []middle
	shares  map[*float64]corners
	had     map[lossKey][]float64
}

// lossKey names two bodies by where their reach is kept, which is one place for all
// of a shape along one axis (see stamps), and the room by its digits.
type lossKey struct {
	p, q *float64
	room uint64
}

func newLosses(c *compass, coarser *losses) *losses {
	return &losses{compass: c, coarser: coarser, middles: c.middles(), shares: map[*float64]corners{}, had: map[lossKey][]float64{}}
}

func (l *losses) of(p, q *body, room float64) []float64 {
	k := lossKey{&p.over[0], &q.over[0], math.Float64bits(room)}
	got, ok := l.had[k]
	if !ok {
		got = l.compass.pair(l.middles, l.share(p), l.share(q), room)
		l.had[k] = got
	}
	return got
}

func (l *losses) share(b *body) corners {
	got, ok := l.shares[&b.over[0]]
	if !ok {
		got = l.compass.share(l.middles, b)
		l.shares[&b.over[0]] = got
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
