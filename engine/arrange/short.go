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
	capped bool
}

// stretch finds the least of one measure.
func (s *search) stretch(ctx context.Context, g *stretch, tell func(Progress)) (Change, bool) {
	var list []attempt
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		for _, w := range s.waysOf(n, nil) {
			list = append(list, attempt{way: w, least: math.Inf(1)})
		}
	}
	s.share(len(list), func(w *worker, i int) {
		a := &list[i]
		if s.glued.any() {
			a.least = 0 // glued parts are no bare pipe
			return
		}
		if c := w.legsOf(a.standing, a.kit, a.turned, a.compass, a.seq, -1, -1); c != nil {
			a.least, a.capped = w.stretched(c, leaving{without: true}, g, mostShort)
		}
	})
	slices.SortStableFunc(list, func(a, b attempt) int { return cmp.Compare(a.least, b.least) })
	best, capped := mostShort, false
	for from := 0; from < len(list) && list[from].least < best-pad; from += chunk {
		if ctx.Err() != nil {
			return Change{}, false
		}
		if tell != nil {
			tell(Progress{Elbows: s.in.Rules.Elbows, Done: from, Of: len(list), Short: g.code})
		}
		some := list[from:min(from+chunk, len(list))]
		s.share(len(some), func(w *worker, i int) { w.attempt(&some[i], g, best) })
		for i := range some {
			best = math.Min(best, some[i].best)
			capped = capped || some[i].capped
		}
	}
	if best >= mostShort {
		return Change{}, false
	}
	return s.proved(ctx, g, best, capped)
}

// attempt looks at every filling of a way.
func (w *worker) attempt(a *attempt, g *stretch, best float64) {
	a.best = best
	if a.least >= best-pad {
		return
	}
	for _, f := range a.fills {
		dirs := a.dirs()
		o := order{fill: f, standing: a.standing, turned: a.turned, dirs: dirs, compass: a.compass}
		bare := w.bareChain(&o)
		if bare == nil {
			continue
		}
		if least, capped := w.stretched(bare, leaving{without: true}, g, a.best); least >= a.best-pad {
			a.capped = a.capped || capped
			continue
		}
		for _, pl := range w.s.placements(&o) {
			c := w.chain(&o, o.parts(pl.check, pl.union, pl.unionFirst))
			if c == nil {
				continue
			}
			for _, out := range w.s.leavings(c.back, c.lip) {
				least, capped := w.stretched(c, out, g, a.best)
				a.best = math.Min(a.best, least)
				a.capped = a.capped || capped
			}
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
		in.Rules.Brief, in.Rules.Best = true, 1
		return Search(ctx, in, nil)
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
