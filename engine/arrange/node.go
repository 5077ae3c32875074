package arrange

import (
	"math"
	"slices"

	"plashet/engine/geom"
)

// node looks at one branch and all below it; false where it has nothing in it
// whatever it would be worth.
func (b *branch) node(depth int) bool {
	if b.nodes++; b.nodes > b.cap || b.halt != nil && b.halt() {
		b.capped = true
		return true
	}
	p := &b.programs[depth]
	for {
		b.programsN++
		if !p.solve() {
			return false
		}
		if p.value() >= b.best-1e-7 {
			return true
		}
		p.read(b.x)
		b.settle()
		b.needed()
		if depth == 0 {
			b.first = p.value()
		}
		if passed, tight := b.passed(p), b.roomy(p); !passed && !tight {
			break
		}
	}
	b.keep()
	worst, short := -1, 0.0
	for i := range b.keeps {
		if d := b.lacks(&b.keeps[i]); d > short {
			worst, short = i, d
		}
	}
	if worst < 0 {
		if b.leaf(b.x) {
			b.best = p.value()
		} else {
			b.refused++
			b.least = min(b.least, p.value())
		}
		return true
	}
	b.split(depth, worst)
	return true
}

// keep lists what is to be kept apart, once a solution keeps the walls: most chains
// end before.
func (b *branch) keep() {
	if b.kept || b.walled {
		return
	}
	b.kept = true
	b.keeps = b.s.keeps(b.keeps[:0], b.c, b.out, b.play[playX].asked && b.play[playY].asked && b.c.whole(), b.outer)
	for i := range b.keeps {
		k := &b.keeps[i]
		if at := k.place(); at < len(b.lasts) && int(b.lasts[at]) < len(b.c.normals) {
			k.last = int(b.lasts[at])
		}
	}
}

// recall keeps in mind which planes did, for the next chain: one after the other they
// are much the same.
func (b *branch) recall() {
	for i := range b.keeps {
		k := &b.keeps[i]
		at := k.place()
		for len(b.lasts) <= at {
			b.lasts = append(b.lasts, 0)
		}
		b.lasts[at] = int32(k.last)
	}
}

// place numbers the distances of a chain.
func (k *keep) place() int {
	hi, lo := max(k.p, k.q), min(k.p, k.q)
	return 4*(hi*(hi-1)/2+lo) + int(k.manner)
}

// settle works out where the bodies' ends are.
func (b *branch) settle() {
	c := b.c
	b.ends = b.ends[:0]
	for i := range c.bodies {
		o := &c.bodies[i]
		from := c.at(&o.a, b.x)
		to := from
		if o.a != o.b {
			to = c.at(&o.b, b.x)
		}
		b.ends = append(b.ends, [2]geom.Vec3{from, to})
	}
}

// lacks gives by how much two bodies are too near; 0 where they are not.
func (b *branch) lacks(k *keep) float64 {
	const dust = 1e-7
	c := b.c
	if b.gap(k, k.last) >= k.room-dust {
		return 0
	}
	if b.outer {
		return b.lost(k)
	}
	best := math.Inf(-1)
	for i := range c.normals {
		g := b.gap(k, i)
		if g >= k.room-dust {
			k.last = i
			return 0
		}
		best = max(best, g)
	}
	if k.manner == still {
		p, q := c.envelope(&c.bodies[k.p], b.x), c.envelope(&c.bodies[k.q], b.x)
		if d := p.Apart(&q, k.room); d >= k.room-pad/2 && d > 0 {
			return 0
		}
	}
	return k.room - best
}

// lost gives by how much two bodies are too near once losses are let off; 0 where
// they pass every net. The coarsest that they do not pass is the one to branch by.
func (b *branch) lost(k *keep) float64 {
	const dust = 1e-7
	c := b.c
	for k.net = range c.lost.nets() {
		if k.losses[k.net] == nil {
			k.losses[k.net] = c.lost.net(k.net).of(&c.bodies[k.p], &c.bodies[k.q], k.room)
		}
		best, apart := math.Inf(-1), false
		for i, loss := range k.losses[k.net] {
			g := b.gap(k, i)
			if g >= k.room-loss-dust {
				k.last, apart = i, true
				break
			}
			best = max(best, g)
		}
		if !apart {
			return k.room - best
		}
	}
	return 0
}

// split makes one branch for each plane.
func (b *branch) split(depth, worst int) {
	k := b.keeps[worst]
	list := b.gaps[depth][:0]
	normals := b.c.normals
	if b.outer {
		normals = normals[:len(k.losses[k.net])]
	}
	for i := range normals {
		if g := b.gap(&k, i); !math.IsInf(g, -1) {
			list = append(list, gapAt{i, g})
		}
	}
	slices.SortStableFunc(list, func(a, o gapAt) int {
		switch {
		case a.gap > o.gap:
			return -1
		case a.gap < o.gap:
			return 1
		}
		return a.n - o.n
	})
	b.gaps[depth] = list
	b.grow(depth + 1)
	for i := range list {
		n, p := b.gaps[depth][i].n, &b.programs[depth]
		p.express(b.row, b.apart(&k, n, false))
		if p.value()+p.rise() >= b.best-1e-7 {
			continue
		}
		next := &b.programs[depth+1]
		next.from(p)
		next.take(p.work)
		some := b.node(depth + 1)
		if b.capped {
			return
		}
		if !some || k.manner == nudge {
			continue // nothing is left out; or how far it is pushed is not linear
		}
		// The branches that follow look where this plane does not do.
		b.programs[depth].row(b.row, b.apart(&k, n, true))
	}
}

// passed adds the walls that bodies stand through; false where there is none.
func (b *branch) passed(p *program) bool {
	const dust = 1e-7
	any := false
	c := b.c
	for i := range b.walls {
		w := &b.walls[i]
		for k := range c.bodies {
			o := &c.bodies[k]
			room, holds := b.s.room(o, w)
			if !holds {
				continue
			}
			d := w.B + b.given(w) - max(w.N.Dot(b.ends[k][0]), w.N.Dot(b.ends[k][1]))
			if w.slid {
				d -= w.N.Dot(b.out.u) * b.x[c.vars-1]
			}
			if !o.block && d-o.r >= room {
				continue // it reaches no farther than its radius beyond its ends
			}
			if d-o.beyond(w.N) < room-dust {
				b.inside(p, o, w, room)
				any = true
			}
		}
	}
	return b.round(p) || any
}

// lengthOfGiven is what a metre of pipe counts for beside a metre that a measure
// grows by: so little that it turns nothing by a hundredth of an inch.
const lengthOfGiven = 1e-5

// given tells by how much a wall has given way.
func (b *branch) given(w *wall) float64 {
	if b.give == nil {
		return 0
	}
	return b.give.part(w) * b.x[b.c.vars]
}
