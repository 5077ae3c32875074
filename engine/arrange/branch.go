package arrange

import (
	"plashet/engine/geom"
)

// branch seeks the shortest assembly of one chain and one way out: a linear
// program for lengths and places, with walls added where they are passed, and
// for two bodies that come too near one branch for each plane that could lie
// between them. A branch also says that the planes before it do not do, so that
// no two of them look at the same.
type branch struct {
	s      *search
	c      *chain
	out    leaving
	keeps  []keep
	lasts  []int32        // the planes that did in the chain before, by the place of what they keep apart
	ends   [][2]geom.Vec3 // of each body, where the solution has them
	walls  []wall
	play   [playWays]play // that the pump is to have on the floor, and the closing piece
	lax    bool           // no play is asked
	outer  bool           // planes ask for less room by what their list may lose: what exact distances let pass is in it
	walled bool           // nothing is kept apart: only walls count
	kept   bool           // what is to be kept apart is listed
	halt   func() bool    // asked often: true ends the search where it stands
	give   *stretch       // a measure that may grow, and is to as little as can be; nil: none does
	of     *fill          // that tells what a metre of each size counts for; nil: all alike

	common   common // of the sketch that is looked at
	programs []program
	row      []float64
	x        []float64
	gaps     [][]gapAt

	nodes, cap int
	programsN  int
	capped     bool
	refused    int
	least      float64 // of what was refused
	first      float64 // the least at the root, walls kept
	best       float64
	leaf       func(x []float64) bool
}

// slideWeight is what a metre of slide counts for beside a metre of pipe: it is
// to be short before the pipe is (a choice of ours).
const slideWeight = 3

type gapAt struct {
	n   int
	gap float64
}

// run searches from the root. The leaf function takes a solution or refuses it;
// best is the value to beat.
func (b *branch) run(best float64) {
	b.best = best
	b.start()
	b.node(0)
	b.recall()
}

// start makes the program at the root.
func (b *branch) start() {
	c := b.c
	n := c.vars
	if b.give != nil {
		n++
	}
	if cap(b.row) < n {
		b.row, b.x = make([]float64, n), make([]float64, n)
	}
	b.row, b.x = b.row[:n], b.x[:n]
	b.grow(0)
	p := &b.programs[0]
	if b.common.of == c && b.give == nil && !b.common.making {
		p.from(&b.common.program)
		b.leave(p)
		return
	}
	costs := b.row
	for i := range costs {
		costs[i] = 1
	}
	b.weigh(costs)
	costs[varX], costs[varY] = 0, 0
	costs[c.vars-1] = slideWeight
	if b.give != nil {
		for i := range costs {
			costs[i] *= lengthOfGiven
		}
		costs[c.vars] = 1
	}
	p.reset(costs)
	b.root(p)
}

func (b *branch) grow(depth int) {
	for len(b.programs) <= depth {
		b.programs = append(b.programs, program{})
		b.gaps = append(b.gaps, nil)
	}
}

// leave adds what hangs on the way out, and on where valve and union stand.
func (b *branch) leave(p *program) {
	c := b.c
	clear(b.row)
	if b.out.slides { // at least off the lip
		b.row[c.vars-1] = -1
		p.row(b.row, -b.out.least)
	} else {
		b.row[c.vars-1] = 1
		p.row(b.row, 0)
	}
	for _, l := range c.longer {
		clear(b.row)
		b.row[l.slot] = -1
		p.row(b.row, -l.by)
	}
}

// common is what all looks at one sketch start from, solved: the walls and the play
// that it keeps wherever valve and union stand and whichever way the pump leaves.
type common struct {
	program
	of     *chain
	making bool
}

// common solves what all looks at a sketch have in common.
func (w *worker) common(t *trial, c *chain) {
	b := &w.b
	if b.common.of == c {
		return
	}
	longer := c.longer
	c.longer, b.common.making = nil, true
	w.set(c, leaving{without: true}, false)
	b.start()
	for p := &b.programs[0]; ; {
		b.programsN++
		if !p.solve() {
			break
		}
		p.read(b.x)
		b.settle()
		b.needed()
		if passed, tight := b.passed(p), b.roomy(p); !passed && !tight {
			break
		}
	}
	b.common.from(&b.programs[0])
	c.longer, b.common.making, b.common.of = longer, false, c
	t.tally.Programs += b.programsN
}

// root adds what holds throughout: the chain ends at the hole, the pump stands
// where it must.
func (b *branch) root(p *program) {
	c, s := b.c, b.s
	equal := func(n geom.Vec3, at, below, above float64) {
		clear(b.row)
		fixed := c.along(b.row, &c.end, n, 1)
		if b.give != nil {
			b.row[c.vars] = -n.Dot(b.give.hole)
		}
		p.row(b.row, at+above-fixed)
		for i := range b.row {
			b.row[i] = -b.row[i]
		}
		p.row(b.row, fixed-at+below)
	}
	hole := s.hole.At
	across, up := s.across, geom.Vec3{Z: 1}
	reach := &s.in.Reach
	equal(across, across.Dot(hole), float64(reach.Back), float64(reach.Forth))
	equal(up, hole.Z, float64(reach.Down), float64(reach.Up))
	if c.through {
		clear(b.row)
		fixed := c.along(b.row, &c.end, s.hole.Axis, 1)
		p.row(b.row, s.hole.Axis.Dot(hole)-c.tail-fixed)
	} else {
		n := s.seat
		equal(n, n.Dot(hole), 0, 0)
	}
	if st := b.s.standing(c); st.Fixed {
		for k, at := range [2]float64{st.Pose.At.X, st.Pose.At.Y} {
			for _, f := range [2]float64{1, -1} {
				clear(b.row)
				b.row[varX+k] = f
				p.row(b.row, f*(at+c.below))
			}
		}
	}
	if !b.common.making {
		b.leave(p)
	}
	for i, k := range c.slot {
		if k < 0 {
			continue
		}
		if m := c.made[i]; m != nil {
			for _, f := range [2]float64{1, -1} {
				clear(b.row)
				b.row[k] = f
				p.row(b.row, f*m.gap)
			}
		}
	}
	b.stocked(p)
	b.longest(p)
}
