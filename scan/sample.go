package scan

import "math"

// read finds a code in the picture and gives its text.
func (b *field) read() (string, bool) {
	const most = 12 // triples of patterns that are tried
	list := squares(b.finders())
	for _, c := range list[:min(len(list), most)] {
		module := (c.tl.module + c.tr.module + c.bl.module) / 3
		side := (c.tl.to(c.tr)+c.tl.to(c.bl))/2/module + 7
		near := int(math.Round((side - 17) / 4)) // the version
		for _, d := range []int{0, -1, 1, -2, 2} {
			v := near + d
			if v < 1 || v > mostVersion {
				continue
			}
			if text, ok := b.at(c, v); ok {
				return text, true
			}
		}
	}
	return "", false
}

// at reads the code of a version that lies between three patterns.
func (b *field) at(c corners, version int) (string, bool) {
	n := float64(4*version + 17)
	// The fourth corner of the parallelogram, and where the alignment pattern
	// near it lies: by that the slant is known.
	fx, fy := c.tr.x+c.bl.x-c.tl.x, c.tr.y+c.bl.y-c.tl.y
	grids := []*grid{}
	if version > 1 {
		k := (n - 10) / (n - 7)
		ax, ay := c.tl.x+(fx-c.tl.x)*k, c.tl.y+(fy-c.tl.y)*k
		for _, p := range b.alignments(ax, ay, (c.tl.module+c.tr.module+c.bl.module)/3) {
			if g, ok := newGrid([4][2]float64{{3.5, 3.5}, {n - 3.5, 3.5}, {n - 6.5, n - 6.5}, {3.5, n - 3.5}}, [4][2]float64{{c.tl.x, c.tl.y}, {c.tr.x, c.tr.y}, {p.x, p.y}, {c.bl.x, c.bl.y}}); ok {
				grids = append(grids, g)
			}
		}
	}
	if g, ok := newGrid([4][2]float64{{3.5, 3.5}, {n - 3.5, 3.5}, {n - 3.5, n - 3.5}, {3.5, n - 3.5}}, [4][2]float64{{c.tl.x, c.tl.y}, {c.tr.x, c.tr.y}, {fx, fy}, {c.bl.x, c.bl.y}}); ok {
		grids = append(grids, g)
	}
	for _, g := range grids {
		m, ok := b.modules(g, version)
		if !ok {
			continue
		}
		if text, ok := m.text(); ok {
			return text, true
		}
	}
	return "", false
}

// alignments lists what may be the alignment pattern near a point, the nearest
// first: a dark dot of one module in a light ring in a dark one.
func (b *field) alignments(x, y, module float64) []spot {
	const around = 8.0 // modules, by which perspective may move it
	var list []spot
	for dy := -around; dy <= around; dy += 0.5 {
		for dx := -around; dx <= around; dx += 0.5 {
			u, v := int(x+dx*module), int(y+dy*module)
			if !b.is(u, v) {
				continue
			}
			across, ox, _ := b.through(u, v, 1, 0, int(3*module)+2)
			down, oy, _ := b.through(u, v, 0, 1, int(3*module)+2)
			if !one(across, module) || !one(down, module) {
				continue
			}
			s := spot{float64(u) + ox, float64(v) + oy, module, 1}
			again := false
			for _, p := range list {
				again = again || p.to(s) < module
			}
			if !again {
				list = append(list, s)
			}
		}
	}
	for i := range list { // few: the nearest to the front
		for k := i; k > 0 && list[k].to(spot{x: x, y: y}) < list[k-1].to(spot{x: x, y: y}); k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
	return list[:min(len(list), 6)]
}

// one tells that the three inner runs are about a module each, and the outer ones
// no less than half.
func one(runs [5]int, module float64) bool {
	for i, r := range runs {
		if float64(r) < 0.45*module-0.5 || i > 0 && i < 4 && float64(r) > 1.7*module+0.5 {
			return false
		}
	}
	return true
}

// grid carries places in modules over to places in dots: a projective map.
type grid struct{ m [8]float64 }

// newGrid solves the eight equations that four points give (P. Heckbert,
// Fundamentals of texture mapping and image warping, 1989: the general
// quadrilateral).
func newGrid(from, to [4][2]float64) (*grid, bool) {
	var a [8][9]float64
	for i := range 4 {
		x, y, u, v := from[i][0], from[i][1], to[i][0], to[i][1]
		a[2*i] = [9]float64{x, y, 1, 0, 0, 0, -x * u, -y * u, u}
		a[2*i+1] = [9]float64{0, 0, 0, x, y, 1, -x * v, -y * v, v}
	}
	for c := range 8 {
		p := c
		for r := c; r < 8; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		if math.Abs(a[p][c]) < 1e-12 {
			return nil, false
		}
		a[c], a[p] = a[p], a[c]
		for r := range 8 {
			if r == c {
				continue
			}
			k := a[r][c] / a[c][c]
			for i := c; i < 9; i++ {
				a[r][i] -= k * a[c][i]
			}
		}
	}
	g := &grid{}
	for i := range 8 {
		g.m[i] = a[i][8] / a[i][i]
	}
	return g, true
}

func (g *grid) at(x, y float64) (u, v float64) {
	w := g.m[6]*x + g.m[7]*y + 1
	return (g.m[0]*x + g.m[1]*y + g.m[2]) / w, (g.m[3]*x + g.m[4]*y + g.m[5]) / w
}

// modules reads the modules of a code, each by most of five dots about its
// middle; false where one lies off the picture.
func (b *field) modules(g *grid, version int) (*code, bool) {
	n := 4*version + 17
	if !b.timed(g, n) {
		return nil, false
	}
	c := &code{version: version, n: n, dark: make([]bool, n*n)}
	for y := range n {
		for x := range n {
			dark, ok := b.module(g, x, y)
			if !ok {
				return nil, false
			}
			c.dark[y*n+x] = dark
		}
	}
	return c, true
}

func (b *field) module(g *grid, x, y int) (is, ok bool) {
	dark := 0
	for _, d := range [5][2]float64{{0, 0}, {0.2, 0}, {-0.2, 0}, {0, 0.2}, {0, -0.2}} {
		u, v := g.at(float64(x)+0.5+d[0], float64(y)+0.5+d[1])
		if u < 0 || v < 0 || u >= float64(b.w) || v >= float64(b.h) || u != u || v != v {
			return false, false
		}
		if b.is(int(u), int(v)) {
			dark++
		}
	}
	return dark > 2, true
}

// timed tells that the two rows between the finder patterns are dark and light by
// turns, as they are in every code: what is none is told by that at little cost.
func (b *field) timed(g *grid, n int) bool {
	const most = 0.2 // of them may be misread
	wrong := 0
	for k := 8; k < n-8; k++ {
		for _, p := range [2][2]int{{k, 6}, {6, k}} {
			dark, ok := b.module(g, p[0], p[1])
			if !ok {
				return false
			}
			if dark != (k%2 == 0) {
				wrong++
			}
		}
	}
	return float64(wrong) <= most*float64(2*(n-16))
}
