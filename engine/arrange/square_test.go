package arrange_test

import (
	"fmt"
	"math"
	"testing"

	"plashet/engine/layout"
)

// This file writes small layouts as mixed integer programs: 90-degree elbows
// only, all legs along the axes, pipe and hubs of one radius R, no room asked
// for but to the walls. Every leg is then one cylinder, from R before its first
// elbow's centre to R beyond its last one's. Two programs stand on either side
// of the truth:
//
//   - outer: every cylinder in its square prism, parted along an axis. What
//     fits so fits in truth: its least length is never below the true one.
//   - inner: every cylinder round a prism with a diamond for its section, whose
//     corners lie on the axes. What fits in truth fits so: its least length is
//     never above the true one. Two such prisms are parted, if at all, along an
//     axis, a face diagonal or a cube diagonal: these are the directions of
//     their faces and of the products of their edges.
//
// Along the axes both reach as far as the cylinder, so that contacts of flat and
// round things face to face are exact in both. Where the two programs agree, the
// least length is proved by them alone.

// squareCase is a small case, in inches.
type squareCase struct {
	seed              uint64
	size              [3]float64 // of the vault
	wall              layout.Wall
	along, up         float64
	obstacles         [][2][3]float64
	pump              [3]float64 // its box
	port              [3]float64 // on a face of it
	looks             [3]float64
	radius, clear     float64
	adapter           float64 // port to stop
	socket            float64
	elbow             float64 // centre to stop
	bulkhead          float64 // wall to stop
	leastFirst        float64 // least centre distances
	leastBetween      float64
	leastLast         float64
	leastAlone        float64
	hole              [3]float64
	leaves            [3]float64
	quarter           int // turns of the pump by 90 degrees, anticlockwise
	elbows            int
	body, turnedPort  [3]float64
	turnedLooks       [3]float64
	inner, impossible bool
}

// turned sets the pump as it stands after its quarter turns, its corner at the
// origin.
func (c *squareCase) turned() {
	c.body, c.turnedPort, c.turnedLooks = c.pump, c.port, c.looks
	for range c.quarter {
		b, p, l := c.body, c.turnedPort, c.turnedLooks
		c.body = [3]float64{b[1], b[0], b[2]}
		c.turnedPort = [3]float64{b[1] - p[1], p[0], p[2]}
		c.turnedLooks = [3]float64{-l[1], l[0], l[2]}
	}
	face := c.elbow + c.socket
	c.leastFirst = c.adapter + c.socket + face
	c.leastBetween = 2 * face
	c.leastLast = face + c.bulkhead + c.socket
	c.leastAlone = c.adapter + 2*c.socket + c.bulkhead
	switch c.wall {
	case layout.Left:
		c.hole, c.leaves = [3]float64{0, c.along, c.up}, [3]float64{-1, 0, 0}
	case layout.Right:
		c.hole, c.leaves = [3]float64{c.size[0], c.along, c.up}, [3]float64{1, 0, 0}
	case layout.Front:
		c.hole, c.leaves = [3]float64{c.along, 0, c.up}, [3]float64{0, -1, 0}
	default:
		c.hole, c.leaves = [3]float64{c.along, c.size[1], c.up}, [3]float64{0, 1, 0}
	}
}

const bigM = 400.0 // inches: beyond any difference in a vault of up to 60

// end is an end of a leg: its centre, and how far the leg goes on beyond it in
// its own direction (times the direction's components).
type end struct {
	at     [3]sum // the elbow's centre, the port or the hole
	beyond float64
}

// leg is a straight stretch.
type leg struct {
	dir  [3]sum // its direction, by the binaries that choose it
	ends [2]end
}

// model writes the program for one attitude and number of elbows.
func (c *squareCase) model() *program {
	c.turned()
	p := &program{}
	x, y := variable("x"), variable("y") // of the pump's corner
	p.bounds = append(p.bounds,
		fmt.Sprintf(" 0 <= x <= %.12g", c.size[0]-c.body[0]), fmt.Sprintf(" 0 <= y <= %.12g", c.size[1]-c.body[1]))
	if c.size[0] < c.body[0] || c.size[1] < c.body[1] || c.size[2] < c.body[2] {
		c.impossible = true
		return p
	}
	port := [3]sum{x.plus(1, lin(c.turnedPort[0])), y.plus(1, lin(c.turnedPort[1])), lin(c.turnedPort[2])}
	hole := [3]sum{lin(c.hole[0]), lin(c.hole[1]), lin(c.hole[2])}
	legs := c.chain(p, port, hole)
	for i := range legs {
		c.within(p, &legs[i])
	}
	low, high := [3]sum{x, y, lin(0)}, [3]sum{x.plus(1, lin(c.body[0])), y.plus(1, lin(c.body[1])), lin(c.body[2])}
	for i := 2; i < len(legs); i++ {
		c.part(p, fmt.Sprintf("p%d", i), &legs[i], nil, low, high)
	}
	for k, o := range c.obstacles {
		var lo, hi [3]sum
		for a := range 3 {
			lo[a], hi[a] = lin(o[0][a]), lin(o[1][a])
		}
		for i := range legs {
			c.part(p, fmt.Sprintf("o%d_%d", k, i), &legs[i], nil, lo, hi)
		}
		c.partBoxes(p, fmt.Sprintf("q%d", k), low, high, lo, hi)
	}
	for i := range legs {
		for k := i + 3; k < len(legs); k++ {
			c.part(p, fmt.Sprintf("l%d_%d", i, k), &legs[i], &legs[k], [3]sum{}, [3]sum{})
		}
	}
	return p
}

// chain makes the legs: lengths, directions, and that they meet port and hole.
func (c *squareCase) chain(p *program, port, hole [3]sum) []leg {
	legs := make([]leg, c.elbows+1)
	at := port
	for j := range legs {
		l := &legs[j]
		first, last := j == 0, j == c.elbows
		least := c.leastBetween
		switch {
		case first && last:
			least = c.leastAlone
		case first:
			least = c.leastFirst
		case last:
			least = c.leastLast
		}
		var way [3]sum // the leg as a vector
		length := lin(0)
		switch {
		case first, last:
			d := c.turnedLooks
			if !first {
				d = c.leaves
			}
			if first && last && d != c.leaves {
				c.impossible = true
			}
			name := fmt.Sprintf("D%d", j)
			length = variable(name)
			for a := range 3 {
				l.dir[a], way[a] = lin(d[a]), lin(0).plus(d[a], variable(name))
			}
		default:
			one := lin(-1)
			for a := range 3 {
				l.dir[a], way[a] = lin(0), lin(0)
				for s, sign := range [2]float64{1, -1} {
					b, v := fmt.Sprintf("d%d_%d%d", j, a, s), fmt.Sprintf("v%d_%d%d", j, a, s)
					p.whole(b)
					one = one.plus(1, variable(b))
					length = length.plus(1, variable(v))
					l.dir[a] = l.dir[a].plus(sign, variable(b))
					way[a] = way[a].plus(sign, variable(v))
					p.atLeast0(lin(0).plus(bigM, variable(b)).plus(-1, variable(v)))
				}
			}
			p.equal0(one)
		}
		p.atLeast0(length.plus(1, lin(-least)))
		for n, v := range length.terms {
			p.objective = append(p.objective, fmt.Sprintf(" %+g %s", v, n))
		}
		l.ends[0].at = at
		if !first {
			l.ends[0].beyond = -c.radius
			c.square(p, &legs[j-1], l, j)
		}
		next := hole
		if !last {
			l.ends[1].beyond = c.radius
			for a := range 3 {
				name := fmt.Sprintf("c%d_%d", j+1, a)
				p.free(name)
				next[a] = variable(name)
			}
		}
		for a := range 3 {
			p.equal0(at[a].plus(1, way[a]).plus(-1, next[a]))
		}
		l.ends[1].at = next
		at = next
	}
	return legs
}

// square asks that two legs stand square to each other: no axis is used by
// both. Directions along an axis are read from the binaries' sum.
func (c *squareCase) square(p *program, before, l *leg, j int) {
	for a := range 3 {
		p.atLeast0(lin(1).plus(-1, c.used(before, j-1, a)).plus(-1, c.used(l, j, a)))
	}
}

// used gives 1 where a leg runs along axis a, either way.
func (c *squareCase) used(l *leg, j, a int) sum {
	if j == 0 || j == c.elbows {
		return lin(math.Abs(l.dir[a].c))
	}
	return variable(fmt.Sprintf("d%d_%d0", j, a)).plus(1, variable(fmt.Sprintf("d%d_%d1", j, a)))
}

// least gives the least length of the centre line with n elbows over all
// quarter turns of the pump.
func (c *squareCase) least(t testing.TB, n int, inner bool) (float64, bool) {
	t.Helper()
	best, found := math.Inf(1), false
	for q := range 4 {
		m := *c
		m.elbows, m.inner, m.quarter = n, inner, q
		p := m.model()
		if m.impossible {
			continue
		}
		if v, ok := p.solve(t); ok {
			best, found = min(best, v), true
		}
	}
	return best, found
}
