package arrange

import (
	"math"

	"plashet/engine/geom"
)

// A rolled pair is two elbows in a row whose outer legs lie along one line: the
// leg between them may be rolled about that line by any angle. Where no roll of
// the compass closes a way, the rolls that do are sought here: the gap that the
// legs leave to the hole, made least by a linear program, is a function of the
// roll alone, and its roots are wanted.

const (
	rollSteps   = 24   // samples of the gap round the turn
	rolledFrom  = 4    // elbows from which rolls are sought only while nothing is found
	rollClosed  = 1e-9 // m: a gap that is none
	rollSection = 60   // halvings: far under a thousandth of a degree
)

// rollKey names a way but for the roll of one of its legs.
type rollKey struct {
	kit    *kit
	turned wayKey
	leg    int
	legs   string
}

// paired tells that the elbows before and after a leg are a rolled pair.
func (v *way) paired(leg int) bool {
	before, after := v.compass.dirs[v.seq[leg-1]], v.compass.dirs[v.seq[leg+1]]
	return math.Abs(before.Dot(after)) > 1-1e-9
}

// template is a way with the leg that is to be rolled.
type template struct {
	*way
	leg      int
	open     bool // a roll of the compass closes it
	out      []way
	programs int
}

// rolled gives the ways with one rolled pair that close at a roll between those
// of the compass, where none of these closes.
func (s *search) rolled(ways []way) (out []way, programs int) {
	var list []template
	known := map[rollKey]int{}
	for i := range ways {
		v := &ways[i]
		if v.hose > 0 {
			continue // a hose bends by the angles of the compass
		}
		for leg := 1; leg+1 < len(v.seq); leg++ {
			if !v.paired(leg) {
				continue
			}
			name := make([]byte, 0, 16)
			for l, d := range v.seq {
				if l == leg {
					// Out and back by 90 or by 45 are two templates.
					d = 250 + int(turnOf(v.compass.dirs[v.seq[leg-1]], v.compass.dirs[d]))
				}
				name = append(name, byte(d))
			}
			key := rollKey{v.kit, wayKey{v.standing, v.turned}, leg, string(name)}
			at, ok := known[key]
			if !ok {
				at = len(list)
				known[key] = at
				list = append(list, template{way: v, leg: leg})
			}
			list[at].open = list[at].open || v.open
		}
	}
	s.share(len(list), func(w *worker, i int) {
		if t := &list[i]; !t.open {
			w.roll(t)
		}
	})
	for i := range list {
		out, programs = append(out, list[i].out...), programs+list[i].programs
	}
	return out, programs
}

// roll finds the rolls at which a template closes.
func (w *worker) roll(t *template) {
	c := w.legsOf(t.way)
	if c == nil {
		return
	}
	line, leg := c.dirs[t.leg-1], c.dirs[t.leg]
	along := line.Scale(line.Dot(leg))
	u := leg.Sub(along)
	v := line.Cross(u)
	dir := func(phi float64) geom.Vec3 {
		sin, cos := math.Sincos(phi)
		return along.Add(u.Scale(cos)).Add(v.Scale(sin)).Unit()
	}
	gap := func(phi float64) float64 {
		c.swing(t.leg, dir(phi))
		return w.gap(&t.programs, c)
	}
	for _, phi := range roots(gap) {
		seq := append([]int(nil), t.seq...)
		way := way{standing: t.standing, kit: t.kit, turned: t.turned, seq: seq, fills: t.fills}
		way.compass = w.s.withRoll(t, dir(phi))
		seq[t.leg] = len(way.compass.dirs) - 1
		t.out = append(t.out, way)
	}
	for i := range t.out {
		w.sketch(&t.out[i])
	}
}

// swing turns one leg of a sketch; what comes after it moves along.
func (c *chain) swing(leg int, dir geom.Vec3) {
	b := &c.bodies[leg]
	by := b.a.c.Add(dir.Scale(b.b.c.Sub(b.a.c).Dot(b.axis))).Sub(b.b.c)
	c.dirs[leg], b.axis = dir, dir
	b.b.c = b.b.c.Add(by)
	for i := leg + 1; i < len(c.bodies) && c.bodies[i].part(); i++ {
		c.bodies[i].a.c, c.bodies[i].b.c = c.bodies[i].a.c.Add(by), c.bodies[i].b.c.Add(by)
	}
	c.end.c = c.end.c.Add(by)
}

// gap gives how far off the hole a sketch ends at least within the walls, in
// each of the three directions; without end where it fits no walls.
func (w *worker) gap(programs *int, c *chain) float64 {
	w.set(c, leaving{without: true}, true)
	b := &w.b
	b.gapped = true
	p := b.start()
	b.gapped = false
	for {
		*programs++
		if !p.solve() {
			return math.Inf(1)
		}
		p.read(b.x)
		b.settle()
		if !b.passed(p) {
			return p.value()
		}
	}
}

// roots gives the angles at which a gap closes: where it is none over a stretch,
// both ends of it and its middle, else each least of it that is none.
func roots(gap func(phi float64) float64) []float64 {
	const step = 2 * math.Pi / rollSteps
	var f [rollSteps]float64
	for k := range f {
		f[k] = gap(float64(k) * step)
	}
	at := func(k int) float64 { return f[(k+rollSteps)%rollSteps] }
	// edge closes in on where the gap ends being none, from inside.
	edge := func(in, out float64) float64 {
		for range rollSection {
			if mid := (in + out) / 2; gap(mid) <= rollClosed {
				in = mid
			} else {
				out = mid
			}
		}
		return in
	}
	var found []float64
	for k := range f {
		if at(k) <= rollClosed {
			if at(k-1) <= rollClosed {
				continue
			}
			last := k
			for last < k+rollSteps && at(last+1) <= rollClosed {
				last++
			}
			from, to := edge(float64(k)*step, float64(k-1)*step), edge(float64(last)*step, float64(last+1)*step)
			found = append(found, from, to, (from+to)/2)
			continue
		}
		if math.IsInf(at(k), 1) || at(k-1) <= at(k) || at(k+1) < at(k) {
			continue
		}
		phi, least := section(gap, float64(k-1)*step, float64(k+1)*step)
		if least > rollClosed {
			continue
		}
		from, to := edge(phi, float64(k-1)*step), edge(phi, float64(k+1)*step)
		if found = append(found, from); to-from > 1e-6 {
			found = append(found, to, (from+to)/2)
		}
	}
	return found
}

// section finds the least of a function between two points by the golden section
// (J. Kiefer, 1953); it stops where the function is none.
func section(f func(float64) float64, a, b float64) (x, least float64) {
	golden := (math.Sqrt(5) - 1) / 2
	x, y := b-golden*(b-a), a+golden*(b-a)
	fx, fy := f(x), f(y)
	for range rollSection {
		switch {
		case fx <= rollClosed:
			return x, fx
		case fy <= rollClosed:
			return y, fy
		case fx < fy:
			b, y, fy = y, x, fx
			x = b - golden*(b-a)
			fx = f(x)
		default:
			a, x, fx = x, y, fy
			y = a + golden*(b-a)
			fy = f(y)
		}
	}
	return x, fx
}

// withRoll gives a compass with one more direction, that of a rolled leg, and
// the planes along it.
func (s *search) withRoll(t *template, dir geom.Vec3) *compass {
	o := t.compass
	c := &compass{pre: o.pre, post: o.post}
	c.dirs = append(append(c.dirs, o.dirs...), dir)
	c.apart = append(c.apart, o.apart...)
	add := func(d geom.Vec3) {
		if d.Norm() < 1e-6 {
			return
		}
		for _, n := range [2]geom.Vec3{square(d.Unit()), square(d.Scale(-1).Unit())} {
			known := false
			for _, a := range c.apart {
				known = known || alike(a, n)
			}
			if !known {
				c.apart = append(c.apart, n)
			}
		}
	}
	add(dir)
	for l, d := range t.seq {
		if l == t.leg {
			continue
		}
		add(dir.Cross(o.dirs[d]))
		add(dir.Cross(o.dirs[d]).Cross(dir))
	}
	add(dir.Cross(geom.Vec3{Z: 1}))
	c.opposites()
	c.around = s.surroundings(s.bare(t.standing, t.turned), c.apart)
	return c
}
