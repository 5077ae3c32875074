package arrange

import (
	"math"
	"sync"

	"plashet/engine/geom"
)

// fates are what sketches of one way tell of all its fillings at once: where
// check valve and union may stand at all, which way the pump may leave, and how
// long the centre line then is at least. They are worked out when they are first
// asked for, whoever asks, so that they hang on nothing but the way.
type fates struct {
	lock sync.Mutex
	of   map[fateKey][]fate
}

// fateKey names a valve and a union; none where there is none to be put in.
type fateKey struct{ check, union *piece }

// fate is a place for valve and union, with the ways out that are left open.
type fate struct {
	placement
	outs []outlook
}

// outlook is a way out, with how long the centre line is at least, the slide
// counted along by its weight; or with the least of a measure that may grow.
type outlook struct {
	leaving
	line float64
}

// least gives the least of the ways out.
func (f *fate) least() float64 {
	least := math.Inf(1)
	for i := range f.outs {
		least = min(least, f.outs[i].line)
	}
	return least
}

// sketchNodes is how many nodes of branch and bound a sketch with valve and union
// is given: what it leaves undecided is open.
const sketchNodes = 400

// fates gives the places for an order's valve and union that its way leaves open.
func (w *worker) fates(t *trial, o *order) []fate {
	f, k := o.way.fates, fateKey{o.check, o.opens}
	f.lock.Lock()
	defer f.lock.Unlock()
	out, known := f.of[k]
	if !known {
		out = w.foresee(o, func(c *chain, out leaving) float64 { return w.length(t, c, out) })
		f.of[k] = out
	}
	return out
}

// foresee lists the places for valve and union, each with the ways out, for which
// a sketch is worth something, that is not without end. The union alone has no
// less room than with the valve.
func (w *worker) foresee(o *order, worth func(c *chain, out leaving) float64) (list []fate) {
	type key struct{ check, union, opens, out int }
	had, v := map[key]float64{}, o.way
	var c *chain
	if !w.s.glued.any() && !w.s.unsketched { // glued parts are no bare pipe
		if c = w.legsOf(v); c == nil {
			return nil
		}
	}
	look := func(k key, out leaving) float64 {
		got, known := had[k]
		if known {
			return got
		}
		got = math.Inf(1)
		if v.longer(c, k.check, k.union) {
			c.parts(k.opens, !out.without)
			got = worth(c, out)
		}
		had[k] = got
		return got
	}
	for _, pl := range w.s.placements(o) {
		f := fate{placement: pl}
		back, lip := o.opening(&pl)
		for i, out := range w.s.leavings(back, lip) {
			got := math.Inf(-1)
			if c != nil {
				opens := pl.union
				if o.check != nil && o.check.opens {
					opens = pl.check // valve and union in one
				} else {
					got = look(key{-1, pl.union, opens, i}, out)
				}
				if !math.IsInf(got, 1) {
					got = look(key{pl.check, pl.union, opens, i}, out)
				}
			}
			if !math.IsInf(got, 1) {
				f.outs = append(f.outs, outlook{out, got})
			}
		}
		if len(f.outs) > 0 {
			list = append(list, f)
		}
	}
	return list
}

// opening gives which way the union's first half comes off, nothing where there is
// no union, and by how much its faces reach into each other.
func (o *order) opening(pl *placement) (back geom.Vec3, lip float64) {
	leg := 0
	for _, p := range o.parts(pl.check, pl.union, pl.unionFirst) {
		if p.opens {
			return o.dirs[leg].Scale(-1), float64(p.part.Splits[0].Lip)
		}
		if p.turns {
			leg++
		}
	}
	return geom.Vec3{}, 0
}

// length gives how long the centre line of a sketch is at least; without end where
// there is no room for it.
func (w *worker) length(t *trial, c *chain, out leaving) float64 {
	w.common(t, c)
	ok, capped := w.possible(t, c, out, sketchNodes)
	switch {
	case !ok && !capped:
		return math.Inf(1)
	case c.through: // the line ends at another point than a sketch does
		return math.Inf(-1)
	}
	return c.line(nil).least + w.b.first
}

// parts tells what of a sketch comes out with the pump, where anything does: the
// legs before that of the union. Of its own leg one part does and another does not.
func (c *chain) parts(union int, comes bool) {
	c.union = union
	for i := range c.bodies {
		b := &c.bodies[i]
		b.moves = comes && (b.pump() || b.leg >= 0 && b.leg < union)
		b.either = comes && b.leg == union
	}
}
