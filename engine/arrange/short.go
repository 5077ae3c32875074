package arrange

import (
	"cmp"
	"context"
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// What may be changed. No args.
const (
	ChangeLength = "arrange.change.length" // the vault longer
	ChangeWidth  = "arrange.change.width"  // the vault wider
	ChangeDepth  = "arrange.change.depth"  // the lid higher
	ChangeUp     = "arrange.change.hole.up"
	ChangeDown   = "arrange.change.hole.down"
	ChangeLeft   = "arrange.change.hole.less" // the hole nearer to where its place along the wall is counted from
	ChangeRight  = "arrange.change.hole.more" // farther from there
)

// stretch is a measure that may grow.
type stretch struct {
	code string
	wall layout.Wall // that gives way; empty: the hole moves
	out  geom.Vec3   // the way the wall goes
	rim  bool        // the way out grows with it
	hole geom.Vec3   // the way the hole goes
	made func(in Input, by unit.Length) Input
}

// part tells how far a plane moves for a metre of the measure.
func (g *stretch) part(w *wall) float64 {
	if w.Wall != g.wall || g.wall == "" || w.rim && !g.rim {
		return 0
	}
	return w.N.Dot(g.out)
}

// mostShort is how far a measure is let grow, and hundredth what decides that
// less does not do.
const (
	mostShort = 0.4 // m
	hundredth = 0.01 * unit.Inch
)

// short looks for the least change of each measure with which an assembly fits:
// branch and bound as before, with the measure as one more variable to be kept
// small. What is found is laid and proved at that size, and searched again a
// hundredth of an inch short of it.
func (s *search) short(ctx context.Context, tell func(Progress)) []Change {
	out := s.instead(ctx, tell)
	for _, g := range s.stretches() {
		if ctx.Err() != nil {
			break
		}
		if c, ok := s.stretch(ctx, &g, tell); ok {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Change) int { return cmp.Compare(a.By, b.By) })
	return out
}

// stretches lists the measures, what is done soonest on site first, so that a
// search that is stopped has told it: the hole elsewhere, another lid, and last
// another vault.
func (s *search) stretches() []stretch { return append(s.holes(), s.sides()...) }

// sides lists those of the vault. It gives way on the side away from its hole; a
// round one and one with a slope only in height.
func (s *search) sides() (out []stretch) {
	v := &s.in.Vault
	upright := !v.Round && v.FloorLength <= 0 && v.FloorWidth <= 0
	whole := v.Opening == (layout.Opening{})
	if upright || v.Round && v.FloorLength <= 0 {
		out = append(out, stretch{code: ChangeDepth, wall: layout.Lid, out: geom.Vec3{Z: 1}, made: func(in Input, by unit.Length) Input {
			in.Vault.Depth += by
			return in
		}})
	}
	if upright {
		side := func(code string, low, high layout.Wall, axis geom.Vec3) {
			w, way := high, axis
			if v.Outlet.Wall == high {
				w, way = low, axis.Scale(-1)
			}
			out = append(out, stretch{code: code, wall: w, out: way, rim: whole, made: func(in Input, by unit.Length) Input {
				return grown(in, axis, by, w == low)
			}})
		}
		side(ChangeWidth, layout.Front, layout.Back, geom.Vec3{Y: 1})
		side(ChangeLength, layout.Left, layout.Right, geom.Vec3{X: 1})
	}
	return out
}

// holes lists those of the hole; none where it may move already, or where parts
// are glued to the fitting in it.
func (s *search) holes() (out []stretch) {
	v := &s.in.Vault
	if s.in.Reach != (Reach{}) || len(s.in.Glued.FromWall) > 0 {
		return nil
	}
	hole := func(code string, way geom.Vec3, along, up unit.Length) {
		out = append(out, stretch{code: code, hole: way, made: func(in Input, by unit.Length) Input {
			in.Vault.Outlet.Along += along * by
			in.Vault.Outlet.Height += up * by
			return in
		}})
	}
	lean := geom.Vec3{} // a wall that leans takes the hole with it
	if n := s.seat; n.Z != 0 {
		lean = s.hole.Axis.Scale(-n.Z / n.Dot(s.hole.Axis))
	}
	if !v.Round || lean == (geom.Vec3{}) {
		hole(ChangeUp, geom.Vec3{Z: 1}.Add(lean), 0, 1)
		hole(ChangeDown, geom.Vec3{Z: -1}.Sub(lean), 0, -1)
	}
	if !v.Round {
		axis := geom.Vec3{X: 1}
		if v.Outlet.Wall == layout.Left || v.Outlet.Wall == layout.Right {
			axis = geom.Vec3{Y: 1}
		}
		hole(ChangeLeft, axis.Scale(-1), -1, 0)
		hole(ChangeRight, axis, 1, 0)
	}
	return out
}

// grown makes the vault longer along an axis; on its low side by moving all that
// is in it.
func grown(in Input, axis geom.Vec3, by unit.Length, low bool) Input {
	v := &in.Vault
	along := v.Outlet.Wall == layout.Front || v.Outlet.Wall == layout.Back
	if axis.X != 0 {
		v.Length += by
	} else {
		v.Width += by
		along = !along
	}
	if !low {
		return in
	}
	if along {
		v.Outlet.Along += by
	}
	move := axis.Scale(float64(by))
	v.Obstacles = slices.Clone(v.Obstacles)
	for i := range v.Obstacles {
		v.Obstacles[i].Box = v.Obstacles[i].Box.Shift(move)
	}
	if o := &v.Opening; *o != (layout.Opening{}) {
		o.FromX, o.ToX = o.FromX+unit.Length(move.X), o.ToX+unit.Length(move.X)
		o.FromY, o.ToY = o.FromY+unit.Length(move.Y), o.ToY+unit.Length(move.Y)
	}
	return in
}

// attempt is a way with the least that its sketch asks for.
type attempt struct {
	way
	least  float64
	best   float64
	open   map[fateKey][]fate // nil: not sketched yet with valve and union
	filled bool
	capped bool
}

// stretch finds the least of one measure: the way that may do with least is looked
// at next, first by sketches with valve and union in it, then filled; few ways at
// a time while nothing is found yet that bounds the others.
func (s *search) stretch(ctx context.Context, g *stretch, tell func(Progress)) (Change, bool) {
	list := s.attempts(g)
	best, capped, done := mostShort, false, 0
	byLeast := func(a, b *attempt) int { return cmp.Compare(a.least, b.least) }
	for some := 1; len(list) > 0 && list[0].least < best-pad; some = min(2*some, chunk) {
		if ctx.Err() != nil {
			return Change{}, false
		}
		if tell != nil {
			tell(Progress{Elbows: s.in.Rules.Elbows, Done: done, Of: done + len(list), Short: g.code})
		}
		now := list[:min(some, len(list))]
		s.share(len(now), func(w *worker, i int) { w.attempt(now[i], g, best) })
		again := now[:0:0]
		for i := range now {
			best = min(best, now[i].best)
			capped = capped || now[i].capped
			if !now[i].filled {
				again = append(again, now[i])
			}
		}
		done += len(now) - len(again)
		slices.SortStableFunc(again, byLeast)
		list = merge(again, list[len(now):])
	}
	if best >= mostShort {
		return Change{}, false
	}
	return s.proved(ctx, g, best, capped)
}

// merge puts two lists in order together.
func merge(a, b []*attempt) []*attempt {
	for _, one := range a {
		at, _ := slices.BinarySearchFunc(b, one, func(x, y *attempt) int { return cmp.Compare(x.least, y.least) })
		b = slices.Insert(b, at, one)
	}
	return b
}

// attempts sketches all ways for a measure and lists them by what they ask for.
func (s *search) attempts(g *stretch) (list []*attempt) {
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		for _, w := range s.waysOf(n, nil) {
			list = append(list, &attempt{way: w, least: math.Inf(1)})
		}
	}
	s.share(len(list), func(w *worker, i int) {
		a := list[i]
		if s.glued.any() {
			a.least = 0 // glued parts are no bare pipe
			return
		}
		if c := w.legsOf(a.standing, a.kit, a.turned, a.compass, a.seq); c != nil {
			a.least, a.capped = w.stretched(c, leaving{without: true}, g, mostShort)
		}
	})
	slices.SortStableFunc(list, func(a, b *attempt) int { return cmp.Compare(a.least, b.least) })
	return list
}

// attempt takes a way one step on: by sketches with valve and union in it, then
// filled in every way that these leave open.
func (w *worker) attempt(a *attempt, g *stretch, best float64) {
	a.best = best
	switch {
	case a.least >= best-pad:
		a.filled = true
	case a.open == nil:
		w.outlined(a, g)
	default:
		for _, f := range a.fills {
			w.filled(a, f, g)
		}
		a.filled = true
	}
}

// outlined works out what a way asks for with valve and union in it.
func (w *worker) outlined(a *attempt, g *stretch) {
	a.open = map[fateKey][]fate{}
	least := math.Inf(1)
	for _, f := range a.fills {
		o := a.order(f)
		key := fateKey{o.check, o.opens}
		list, known := a.open[key]
		if !known {
			list = w.foresee(&o, func(c *chain, out leaving) float64 {
				least, capped := w.stretched(c, out, g, a.best)
				if a.capped = a.capped || capped; least >= a.best-pad {
					return math.Inf(1)
				}
				return least
			})
			a.open[key] = list
		}
		for i := range list {
			least = min(least, list[i].least())
		}
	}
	a.least = max(a.least, least)
}

// order is a filling of a way.
func (v *way) order(f *fill) order {
	return order{fill: f, way: v, standing: v.standing, turned: v.turned, dirs: v.dirs(), compass: v.compass}
}

// filled looks at one filling of a way.
func (w *worker) filled(a *attempt, f *fill, g *stretch) {
	o := a.order(f)
	list := a.open[fateKey{o.check, o.opens}]
	if !slices.ContainsFunc(list, func(f fate) bool { return f.least() < a.best-pad }) {
		return
	}
	bare := w.bareChain(&o)
	if bare == nil {
		return
	}
	if least, capped := w.stretched(bare, leaving{without: true}, g, a.best); least >= a.best-pad {
		a.capped = a.capped || capped
		return
	}
	for k := range list {
		pl := &list[k]
		c := w.chain(&o, o.parts(pl.check, pl.union, pl.unionFirst))
		if c == nil {
			continue
		}
		for _, out := range pl.outs {
			if out.line >= a.best-pad {
				continue
			}
			least, capped := w.stretched(c, out.leaving, g, a.best)
			a.best = min(a.best, least)
			a.capped = a.capped || capped
		}
	}
}

// stretched gives the least of a measure for one chain; most where it is no
// less.
func (w *worker) stretched(c *chain, out leaving, g *stretch, most float64) (least float64, capped bool) {
	w.set(c, out, false)
	b := &w.b
	b.give, c.below = g, mostShort
	least = most
	b.leaf = func(x []float64) bool {
		least = x[c.vars]
		return true
	}
	b.run(most)
	return least, b.capped
}

// proved searches at the size that was found, and a hundredth of an inch short
// of it. What rounding may have lost on the way is given in whole thousandths.
func (s *search) proved(ctx context.Context, g *stretch, by float64, capped bool) (Change, bool) {
	const thousandth = 0.001 * float64(unit.Inch)
	run := func(by float64) Outcome {
		in := g.made(s.in, unit.Length(by))
		return one(ctx, in)
	}
	for step := range 5 {
		at := (math.Ceil(by/thousandth-1e-6) + float64(step)) * thousandth
		if out := run(at); len(out.Layouts) > 0 {
			c := Change{What: trace.Message{Code: g.code}, By: unit.Length(at), Layout: out.Layouts[0]}
			if less := at - float64(hundredth); !capped && less > 0 {
				before := run(less)
				c.Sure = len(before.Layouts) == 0 && before.Proof.Claim == Family
			}
			return c, true
		}
	}
	return Change{}, false
}
