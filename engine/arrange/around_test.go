package arrange_test

import (
	"fmt"
	"math"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// walled lays a chain of the pump in the first attitude and builds the vault's walls
// round it; false where it cannot be built so.
func (r *drawer) walled(i *arrange.Input, parts []layout.Laid, turn unit.Angle) (layout.Input, layout.Assembly, bool) {
	chain := layout.Input{
		Path: i.Path, Pump: i.Standings[0].Pump, Parts: parts,
		Pose:  layout.Pose{At: geom.Vec3{X: 5, Y: 5}, Turn: turn},
		Vault: layout.Vault{Length: 10, Width: 10, Depth: 10, Path: "/vault", Outlet: layout.Outlet{Wall: layout.Right, Along: 5, Height: 5}},
	}
	for _, p := range i.Pipes {
		chain.Pipes = append(chain.Pipes, p.Pipe)
	}
	a, _, faults := layout.Lay(chain)
	if !a.Laid || len(faults) > 0 || !r.wrap(&chain, &a) {
		return chain, a, false
	}
	laid, ok := sound(chain, i.Rules)
	return chain, laid, ok
}

// around builds a vault round a chain as walled does, and puts blocks into it.
func (r *drawer) around(i arrange.Input, parts []layout.Laid, turn unit.Angle) (*known, bool) {
	chain, _, ok := r.walled(&i, parts, turn)
	if !ok {
		return nil, false
	}
	r.clutter(&chain, i.Rules)
	laid, ok := sound(chain, i.Rules)
	if !ok {
		r.t.Fatalf("seed %d: not sound any more", r.seed)
	}
	i.Vault = chain.Vault
	r.tagged("obstacle", len(i.Vault.Obstacles) > 0)
	return &known{i, chain, laid, r.tags}, true
}

// wrap puts walls round a chain, as tight as a draw says. false where it does
// not end square to a wall.
func (r *drawer) wrap(chain *layout.Input, a *layout.Assembly) bool {
	last := a.Places[len(a.Places)-1]
	end, d := last.Centre, last.OutDir
	if math.Max(math.Abs(d.X), math.Abs(d.Y)) < 0.99999 {
		return false
	}
	box := geom.Box{Min: a.Port, Max: a.Port}
	for _, b := range a.Body {
		h := geom.Vec3{X: math.Abs(b.U.X) + math.Abs(b.V.X), Y: math.Abs(b.U.Y) + math.Abs(b.V.Y), Z: b.W.Z}
		box = box.Join(geom.BoxOf(b.Centre.Sub(h), b.Centre.Add(h)))
	}
	clear := 0.26 * in
	for _, p := range a.Places[:len(a.Places)-1] {
		for _, s := range p.Solids {
			c := s.Cylinder
			n := c.To.Sub(c.From).Unit()
			e := func(x float64) float64 { return float64(c.Radius)*math.Sqrt(math.Max(0, 1-x*x)) + clear }
			h := geom.Vec3{X: e(n.X), Y: e(n.Y), Z: e(n.Z)}
			box = box.Join(geom.BoxOf(c.From.Sub(h), c.From.Add(h))).Join(geom.BoxOf(c.To.Sub(h), c.To.Add(h)))
		}
	}
	tight := r.IntN(3) // of three vaults one is snug
	spare := func() float64 { return r.between(0, [...]float64{0.5, 2, 5}[tight]) * in }
	if r.snug {
		spare = func() float64 { return 0.02 * in * r.Float64() }
	}
	box.Min = box.Min.Sub(geom.Vec3{X: spare(), Y: spare()})
	box.Max = box.Max.Add(geom.Vec3{X: spare(), Y: spare(), Z: spare() + 1*in})
	v := &chain.Vault
	switch {
	case d.X > 0.9:
		v.Outlet.Wall, box.Max.X = layout.Right, end.X
	case d.X < -0.9:
		v.Outlet.Wall, box.Min.X = layout.Left, end.X
	case d.Y > 0.9:
		v.Outlet.Wall, box.Max.Y = layout.Back, end.Y
	default:
		v.Outlet.Wall, box.Min.Y = layout.Front, end.Y
	}
	if r.IntN(4) == 0 {
		r.round(chain, box, end, d)
		return true
	}
	if box.Min.Z < -1e-9 { // a leg under the floor
		return false
	}
	shift := geom.Vec3{X: box.Min.X, Y: box.Min.Y}
	chain.Pose.At, end = chain.Pose.At.Sub(shift), end.Sub(shift)
	v.Length, v.Width, v.Depth = unit.Length(box.Size().X), unit.Length(box.Size().Y), unit.Length(box.Max.Z)
	v.Outlet.Height, v.Outlet.Along = unit.Length(end.Z), unit.Length(end.Y)
	if v.Outlet.Wall == layout.Front || v.Outlet.Wall == layout.Back {
		v.Outlet.Along = unit.Length(end.X)
	}
	if r.IntN(3) == 0 {
		// Wider at the rim, or at the floor: the wall of the hole stays where it is.
		k := pick(r, -1.0, 1) * r.between(0.5, 1.5)
		below := 1 - float64(v.Outlet.Height/v.Depth)
		v.FloorLength, v.FloorWidth = v.Length, v.Width
		switch v.Outlet.Wall {
		case layout.Left, layout.Right:
			v.FloorLength -= inches(2 * k)
			r.grow(chain, geom.Vec3{X: k * below * in})
		default:
			v.FloorWidth -= inches(2 * k)
			r.grow(chain, geom.Vec3{Y: k * below * in})
		}
	}
	return true
}

// grow moves two walls out (in, below zero) and all that stands between with
// them, so that the hole's wall meets the chain again at the hole's height.
func (r *drawer) grow(chain *layout.Input, by geom.Vec3) {
	v := &chain.Vault
	v.Length += unit.Length(2 * by.X)
	v.Width += unit.Length(2 * by.Y)
	if by.X != 0 {
		v.FloorLength += unit.Length(2 * by.X)
	} else {
		v.FloorWidth += unit.Length(2 * by.Y)
	}
	chain.Pose.At = chain.Pose.At.Add(by)
}

// round makes a round vault whose hole is where the chain ends, its axis in line
// with the last leg, wide enough for the box.
func (r *drawer) round(chain *layout.Input, box geom.Box, end, d geom.Vec3) {
	wide := 0.0
	for _, p := range []geom.Vec3{box.Min, {X: box.Min.X, Y: box.Max.Y}, {X: box.Max.X, Y: box.Min.Y}, box.Max} {
		// The circle through the end whose centre lies back along d by R and that
		// holds p: |p - end + R d| <= R.
		q := geom.Vec3{X: p.X - end.X, Y: p.Y - end.Y}
		if along := -q.Dot(d); along > 1*in {
			wide = math.Max(wide, q.Dot(q)/(2*along))
		}
	}
	wide += r.between(0, 1) * in
	centre := end.Sub(d.Scale(wide))
	shift := geom.Vec3{X: centre.X - wide, Y: centre.Y - wide}
	chain.Pose.At = chain.Pose.At.Sub(shift)
	v := &chain.Vault
	v.Round, v.Length, v.Width, v.Depth = true, unit.Length(2*wide), 0, unit.Length(box.Max.Z)
	v.Outlet.Along, v.Outlet.Height = unit.Length(wide), unit.Length(end.Z)
}

// clutter puts blocks in where the known assembly leaves room for them.
func (r *drawer) clutter(chain *layout.Input, rules arrange.Rules) {
	v := &chain.Vault
	wanted := r.IntN(3)
	for try := 0; try < 12 && wanted > 0; try++ {
		l, d := float64(v.Length), float64(v.Depth)
		p := geom.Vec3{X: r.Float64() * l, Y: r.Float64() * l, Z: r.Float64() * d}
		q := p.Add(point([3]float64{r.between(2, 10), r.between(2, 10), r.between(1, 5)}))
		had := v.Obstacles
		v.Obstacles = append(slices.Clone(had), layout.Obstacle{Name: fmt.Sprintf("block %d", len(had)+1), Box: geom.BoxOf(p, q)})
		stands := slices.ContainsFunc(had, func(o layout.Obstacle) bool {
			return o.Box.Grow(1e-6).Overlaps(geom.BoxOf(p, q))
		})
		if _, ok := sound(*chain, rules); ok && !stands {
			wanted--
		} else {
			v.Obstacles = had
		}
	}
}
