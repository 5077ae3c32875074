package arrange

import (
	"context"
	"math"
	"slices"

	"plashet/engine/geom"
)

// What no angle mends is seen without seeking any: where layouts fit but the pump
// does not come out, where it is taller than the vault, where the fitting at the wall
// has no room there, and where no pipe of any shape gets from the port to the hole.

// goesOn tells that angles between those of the compass are to be sought, once all along
// it was looked at and came so far: nothing along it was found, and they may help. It
// says what failed.
func (s *search) goesOn(ctx context.Context, out *Outcome, passed stage, seen [][]order) bool {
	if s.in.coupled {
		return false // all else was looked at before
	}
	if s.in.Rules.Tilt || slices.ContainsFunc(out.Layouts, func(l Layout) bool { return !l.Odd && len(l.Laid.Hoses) == 0 }) {
		return false
	}
	if len(out.Layouts) == 0 {
		// Where only odd angles fit with all the pipe one wants, the stock is no reason
		// yet to look at none: that is settled once these were looked at (see settle).
		if out.Uncut = s.uncut(ctx); out.Uncut != nil && !out.Uncut.Odd {
			out.Stage = StageStock
			return false
		}
		if passed < stageClear && s.clear(seen) {
			passed = stageClear
		}
		out.Stage = s.failed(ctx, passed)
	}
	if s.in.Rules.First || s.glued.any() || out.Stage == StageOut {
		return false
	}
	any := false
	for i := range s.in.Standings {
		p := &s.in.Standings[i]
		c := s.compassOf(i, p.turnsOf()[0])
		s.idle = append(s.idle, c.pump == nil || s.tooTall(c) || !s.threads(c.pump.Port.Z))
		any = any || !s.idle[i]
	}
	return any
}

// settle says what failed once all was looked at: where nothing was found but fits
// with more pipe, that is the stock.
func (o *Outcome) settle() {
	switch {
	case len(o.Layouts) > 0:
		o.Stage, o.Uncut = "", nil
	case o.Uncut != nil:
		o.Stage = StageStock
	}
}

// tooTall tells that a pump reaches over the lid.
func (s *search) tooTall(c *compass) bool {
	for i := range c.around {
		if b := &c.around[i]; b.pump() && math.Max(b.a.c.Z, b.b.c.Z)+b.beyond(geom.Vec3{Z: 1}) > float64(s.in.Vault.Depth)+pad {
			return true
		}
	}
	return false
}

// seated tells that what goes into the hole has room there between the walls, whichever
// way the legs run.
func (o *bones) seated() bool {
	s := o.s
	if s.in.Reach != (Reach{}) {
		return true // the hole may be drilled elsewhere
	}
	last := body{axis: s.hole.Axis, r: o.kit.radius(len(o.joints.turns)), exit: true, item: 1}
	for _, b := range append([]body{last}, o.wall...) {
		for i := range s.walls {
			w := &s.walls[i]
			room, holds := s.room(&b, w)
			if !holds || w.slid {
				continue
			}
			if w.N.Dot(s.hole.At.Add(b.far(w.N).c))+b.beyond(w.N) > w.B-room+pad {
				return false
			}
		}
	}
	return true
}

// strand is how finely the room in the vault is looked at for a pipe of any shape.
const strand = 0.015 // m

// threads tells that a pipe of some shape may get from the height of a port to the hole,
// past what stands in the vault: step by step from one cell of a lattice to the next,
// through those in which the middle of the thinnest pipe may lie somewhere.
func (s *search) threads(height float64) bool {
	if len(s.in.Vault.Obstacles) == 0 {
		return true
	}
	thin := math.Inf(1)
	for i := range s.in.Pipes {
		thin = math.Min(thin, float64(s.in.Pipes[i].OD)/2)
	}
	keep := thin + float64(s.lim.ObstacleClear) - strand // half a cell's diagonal, and its rounding, less
	v := &s.in.Vault
	size := [3]int{}
	for i, l := range [3]float64{float64(max(v.Length, v.FloorLength)), float64(max(v.Width, v.FloorWidth, v.Length)), float64(v.Depth)} {
		size[i] = int(l/strand) + 3
	}
	middle := func(c [3]int) geom.Vec3 {
		return geom.Vec3{X: float64(c[0]-1) * strand, Y: float64(c[1]-1) * strand, Z: float64(c[2]-1) * strand}
	}
	open := func(c [3]int) bool {
		p := middle(c)
		for i := range v.Obstacles {
			if b := v.Obstacles[i].Box; b.Grow(keep).Contains(geom.Box{Min: p, Max: p}) {
				return false
			}
		}
		for i := range s.walls {
			w := &s.walls[i]
			room := thin + float64(s.lim.WallClear)
			if w.Wall == s.exit {
				room = 0
			}
			if !w.slid && w.N.Dot(p) > w.B-room+strand {
				return false
			}
		}
		return true
	}
	seen := make([]bool, size[0]*size[1]*size[2])
	var next [][3]int
	visit := func(c [3]int) {
		for i := range c {
			if c[i] < 0 || c[i] >= size[i] {
				return
			}
		}
		at := (c[0]*size[1]+c[1])*size[2] + c[2]
		if !seen[at] && open(c) {
			next = append(next, c)
		}
		seen[at] = true
	}
	from := s.hole.At
	visit([3]int{int(math.Round(from.X/strand)) + 1, int(math.Round(from.Y/strand)) + 1, int(math.Round(from.Z/strand)) + 1})
	if len(next) == 0 {
		return true // something stands before the hole: not for this to judge
	}
	for len(next) > 0 {
		c := next[len(next)-1]
		next = next[:len(next)-1]
		if math.Abs(middle(c).Z-height) <= strand {
			return true
		}
		for i := range c {
			for _, by := range [2]int{-1, 1} {
				d := c
				d[i] += by
				visit(d)
			}
		}
	}
	return false
}
