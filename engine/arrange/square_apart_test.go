package arrange_test

import (
	"fmt"
	"math"
)

// within keeps a leg off the walls. An elbow reaches R from its centre every
// way; the ends at port and hole reach R across their leg and nothing along it.
func (c *squareCase) within(p *program, l *leg) {
	for k := range l.ends {
		e := &l.ends[k]
		for a := range 3 {
			r := c.radius + c.clear
			if e.beyond == 0 && l.dir[a].c != 0 {
				continue
			}
			p.atLeast0(e.at[a].plus(1, lin(-r)))
			p.atLeast0(lin(c.size[a]-r).plus(-1, e.at[a]))
		}
	}
}

// reach gives the most of n.x over the points of a leg near one of its ends;
// the least with sign -1. Along the axes it is the cylinder's own, else the
// diamond prism's.
func (c *squareCase) reach(e *end, l *leg, n [3]float64, sign float64) sum {
	out := lin(0)
	across := 0
	for a := range 3 {
		if n[a] == 0 {
			continue
		}
		across++
		out = out.plus(n[a], e.at[a]).plus(n[a]*e.beyond, l.dir[a])
	}
	if across > 1 {
		return out.plus(sign*c.radius, lin(1))
	}
	// Along an axis: beyond + R across, which is R either way at an elbow.
	out = lin(0)
	for a := range 3 {
		if n[a] == 0 {
			continue
		}
		out = out.plus(n[a], e.at[a])
		if e.beyond != 0 || l.dir[a].c == 0 {
			out = out.plus(sign*c.radius, lin(1))
		}
	}
	return out
}

// normals lists the directions along which two things may be parted.
func (c *squareCase) normals() (out [][3]float64) {
	for i := range 27 {
		n := [3]float64{float64(i%3 - 1), float64(i/3%3 - 1), float64(i/9 - 1)}
		along := math.Abs(n[0]) + math.Abs(n[1]) + math.Abs(n[2])
		if along == 1 || c.inner && along > 1 {
			out = append(out, n)
		}
	}
	return out
}

// part keeps a leg off another, or off a box, along one direction of the list.
func (c *squareCase) part(p *program, name string, l, other *leg, low, high [3]sum) {
	choose := lin(-1)
	for i, n := range c.normals() {
		b := fmt.Sprintf("%s_n%d", name, i)
		p.whole(b)
		choose = choose.plus(1, variable(b))
		slack := lin(bigM).plus(-bigM, variable(b))
		for k := range l.ends {
			near := c.reach(&l.ends[k], l, n, 1)
			if other == nil {
				// The box's least along n.
				least := lin(0)
				for a := range 3 {
					if n[a] > 0 {
						least = least.plus(n[a], low[a])
					} else if n[a] < 0 {
						least = least.plus(n[a], high[a])
					}
				}
				p.atLeast0(least.plus(-1, near).plus(1, slack))
				continue
			}
			for m := range other.ends {
				p.atLeast0(c.reach(&other.ends[m], other, n, -1).plus(-1, near).plus(1, slack))
			}
		}
	}
	p.atLeast0(choose)
}

// partBoxes keeps two boxes apart, along an axis.
func (c *squareCase) partBoxes(p *program, name string, low, high, lo, hi [3]sum) {
	choose := lin(-1)
	for a := range 3 {
		for s := range 2 {
			b := fmt.Sprintf("%s_%d%d", name, a, s)
			p.whole(b)
			choose = choose.plus(1, variable(b))
			gap := lo[a].plus(-1, high[a])
			if s == 1 {
				gap = low[a].plus(-1, hi[a])
			}
			p.atLeast0(gap.plus(bigM, lin(1)).plus(-bigM, variable(b)))
		}
	}
	p.atLeast0(choose)
}
