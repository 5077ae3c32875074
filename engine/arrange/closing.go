package arrange

import (
	"math"

	"plashet/engine/layout"
)

// bones are the legs of all fillings of a way at once, as bare pipe, wherever they
// point: a sketch whose angles are still sought. At a bearing a linear program
// makes the gap least by which they miss the hole or stand through a wall.
type bones struct {
	s        *search
	w        *worker
	joints   *joints
	standing int
	kit      *kit
	least    []float64 // of each leg
	fixed    []bool    // it is no longer either
	pump     *layout.Frame
	around   []body // the pump, where it is not turned
	wall     []body // at the end of the last leg

	p        program
	x        []float64 // of the last solution: as a chain's, then the gap, then the angles
	keeps    keeping
	chains   []*chain // made before, to be used again
	programs int
}

const (
	dear   = 1e4  // what a metre of gap counts for beside a metre of pipe
	tiny   = 1e-6 // rad: a step to tell slopes by
	closed = 1e-9 // m: a gap that is none
)

// bonesOf readies the bones of a way; nil where its joints cannot be made.
func (w *worker) bonesOf(standing int, k *kit, base *compass, j *joints) *bones {
	o := &bones{s: w.s, w: w, joints: j, standing: standing, kit: k, pump: base.pump}
	if o.pump == nil {
		return nil
	}
	n := len(j.turns)
	for leg := range n + 1 {
		before, after := atEnd, atEnd
		if leg > 0 {
			before = int(j.turns[leg-1])
		}
		if leg < n {
			after = int(j.turns[leg])
		}
		least := k.span(leg, before, after, false, false)
		if math.IsInf(least, 1) {
			return nil
		}
		o.least = append(o.least, least)
	}
	o.fixed = make([]bool, n+1)
	for _, b := range base.around {
		if b.pump() {
			o.around = append(o.around, b)
		}
	}
	o.wall = w.atWall(w.stampsOf(base), k, w.s.hole.Axis, spot{upto: n + 1, with: true}, n)
	return o
}

// at makes the bones' chain at a bearing, in the place of the one made before under
// the same number; nil where the pump cannot be placed.
func (o *bones) at(number int, b *bearing) *chain {
	n := len(o.joints.turns)
	f, around := o.pump, o.around
	if o.joints.yaw {
		if f = o.s.bareOf(&o.s.in.Standings[o.standing], b.turned); f == nil {
			return nil
		}
		around = nil
		for _, p := range o.s.surroundings(f, nil) {
			if p.pump() {
				around = append(around, p)
			}
		}
	}
	for len(o.chains) <= number {
		o.chains = append(o.chains, &chain{})
	}
	c := o.chains[number]
	*c = chain{
		union: -1, hose: -1, sketch: true, through: len(o.kit.ends) == 0, standing: o.standing,
		bodies: c.bodies[:0], dirs: c.dirs[:0], slot: c.slot[:0],
	}
	to := f.Port
	for leg, dir := range b.dirs {
		slot := varJoints + leg
		if o.fixed[leg] {
			slot = -1
		}
		c.slot, c.dirs = append(c.slot, slot), append(c.dirs, dir)
		from := to
		to = from.Add(dir.Scale(o.least[leg]))
		c.bodies = append(c.bodies, body{
			a: spot{from, leg, true}, b: spot{to, leg + 1, true}, axis: dir, r: o.kit.radius(leg),
			item: 8 * leg, leg: leg, first: leg == 0, exit: leg == n,
		})
	}
	c.vars = varJoints + n + 1
	c.end = spot{to, n + 1, true}
	for _, b := range o.wall {
		b.a.c, b.b.c = b.a.c.Add(to), b.b.c.Add(to)
		c.bodies = append(c.bodies, b)
	}
	c.bodies = append(c.bodies, around...)
	return c
}

// gap makes the gap least, and with it the pipe, at a bearing; with angles, as far
// as they go to the first order and each by no more than most either way: it is
// then told where they go. Without end where the pump cannot be placed. The
// solution is left in o.x.
func (o *bones) gap(b *bearing, angles []move, most float64) (gap, length float64, turned []float64) {
	c := o.at(0, b)
	if c == nil || len(angles) > mostWays {
		return math.Inf(1), math.Inf(1), nil
	}
	var on []*chain
	for i := range angles {
		part := make([]float64, len(angles))
		part[i] = tiny
		d := c
		if next, ok := o.joints.by(b, angles, part); ok {
			if one := o.at(1+i, &next); one != nil {
				d = one
			}
		}
		on = append(on, d)
	}
	n, k := c.vars, o.keep(c, on)
	if len(on) > 0 {
		k.round(true)
	}
	k.solve(most)
	for range 12 {
		if len(on) > 0 || !k.round(false) {
			break
		}
		k.solve(most)
	}
	for leg, x := range o.x[varJoints:n] {
		length += o.least[leg] + x
	}
	return o.x[n], length, append(turned, o.x[n+1:]...)
}
