package arrange

import (
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// What may be changed. Args, of length and width: low (flag: the wall that things are
// counted from gives way).
const (
	ChangeLength = "arrange.change.length" // the vault longer
	ChangeWidth  = "arrange.change.width"  // the vault wider
	ChangeDepth  = "arrange.change.depth"  // the lid higher
	ChangeUp     = "arrange.change.hole.up"
	ChangeDown   = "arrange.change.hole.down"
	ChangeLeft   = "arrange.change.hole.less" // the hole nearer to where its place along the wall is counted from
	ChangeRight  = "arrange.change.hole.more" // farther from there

	// The hatch larger, toward a wall.
	ChangeHatchLeft  = "arrange.change.hatch.left"
	ChangeHatchRight = "arrange.change.hatch.right"
	ChangeHatchFront = "arrange.change.hatch.front"
	ChangeHatchBack  = "arrange.change.hatch.back"
)

// stretch is a measure that may grow.
type stretch struct {
	code string
	args []trace.Arg
	wall layout.Wall // that gives way; empty: the hole moves
	out  geom.Vec3   // the way the wall goes
	rim  bool        // the way out grows with it
	only bool        // nothing but the way out does
	most float64     // how far; 0: mostShort
	hole geom.Vec3   // the way the hole goes

	obstacle int       // number of the one that goes, from 1; 0: none does
	shift    geom.Vec3 // the way it goes

	made func(in Input, by unit.Length) Input
}

// part tells how far a plane moves for a metre of the measure.
func (g *stretch) part(w *wall) float64 {
	if w.Wall != g.wall || g.wall == "" || w.rim && !g.rim || !w.rim && g.only {
		return 0
	}
	return w.N.Dot(g.out)
}

// stretches lists the measures, what is done soonest on site first, so that a
// search that is stopped has told it: the hole elsewhere, a larger hatch, another
// lid, and last another vault.
func (s *search) stretches() []stretch {
	return slices.Concat(s.holes(), s.hatches(), s.sides())
}

// upTo gives how far a measure is let grow.
func (g *stretch) upTo() float64 {
	if g.most > 0 {
		return g.most
	}
	return mostShort
}

// hatches lists the sides of a hatch, each up to the wall behind it; over a round
// vault up to where its corners meet the rim.
func (s *search) hatches() (out []stretch) {
	v := &s.in.Vault
	o := v.Opening
	if o == (layout.Opening{}) {
		return nil
	}
	across := v.Width
	if v.Round {
		across = v.Length
	}
	side := func(code string, wall layout.Wall, way geom.Vec3, room unit.Length, cut func(o *layout.Opening, by unit.Length)) {
		if room > hundredth {
			out = append(out, stretch{code: code, wall: wall, out: way, rim: true, only: true, most: math.Min(mostShort, float64(room)), made: func(in Input, by unit.Length) Input {
				cut(&in.Vault.Opening, by)
				return in
			}})
		}
	}
	left, right, front, back := o.FromX, v.Length-o.ToX, o.FromY, across-o.ToY
	if v.Round { // its corners stay within the rim, also once the growth is rounded up
		r := v.Length / 2
		reach := func(a, b unit.Length) unit.Length { // from the middle, with a side from a to b
			half := max(r-a, b-r)
			return unit.Length(math.Sqrt(math.Max(0, float64(r*r-half*half)))) - s.lim.Step
		}
		x, y := reach(o.FromY, o.ToY), reach(o.FromX, o.ToX)
		left, right, front, back = o.FromX-(r-x), r+x-o.ToX, o.FromY-(r-y), r+y-o.ToY
	}
	side(ChangeHatchLeft, layout.Left, geom.Vec3{X: -1}, left, func(o *layout.Opening, by unit.Length) { o.FromX -= by })
	side(ChangeHatchRight, layout.Right, geom.Vec3{X: 1}, right, func(o *layout.Opening, by unit.Length) { o.ToX += by })
	side(ChangeHatchFront, layout.Front, geom.Vec3{Y: -1}, front, func(o *layout.Opening, by unit.Length) { o.FromY -= by })
	side(ChangeHatchBack, layout.Back, geom.Vec3{Y: 1}, back, func(o *layout.Opening, by unit.Length) { o.ToY += by })
	return out
}

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
			var args []trace.Arg
			if w == low {
				args = []trace.Arg{trace.Flag("low")}
			}
			out = append(out, stretch{code: code, args: args, wall: w, out: way, rim: whole, made: func(in Input, by unit.Length) Input {
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
