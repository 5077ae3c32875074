package arrange_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// known is a vault built round an assembly that was laid and proved first: a
// search must find one that is at least as good.
type known struct {
	seed  uint64
	input arrange.Input
	chain layout.Input
	laid  layout.Assembly
	tags  map[string]bool
}

// drawer draws vaults from a seed.
type drawer struct {
	*rand.Rand
	t    testing.TB
	book *catalog.Book
	tags map[string]bool
	snug bool // hardly any room is left to the walls
}

func pick[T any](r *drawer, of ...T) T { return of[r.IntN(len(of))] }

// between draws inches in eighths.
func (r *drawer) between(lo, hi float64) float64 { return lo + float64(r.IntN(int((hi-lo)*8)+1))/8 }

func (r *drawer) tagged(name string, yes bool) bool {
	if yes {
		r.tags[name] = true
	}
	return yes
}

func draw(t testing.TB, book *catalog.Book, seed uint64) *drawer {
	return &drawer{Rand: rand.New(rand.NewPCG(seed, 12)), t: t, book: book, tags: map[string]bool{}}
}

// pumps draws a pump in one or two attitudes.
func (r *drawer) pump(size string) arrange.Standing {
	l, w, h := r.between(7, 13), r.between(5.5, 7.5), r.between(5.5, 9)
	p := layout.Pump{
		Name: "lying", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point([3]float64{l, w, h}))},
		Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: size},
	}
	if r.IntN(2) == 0 {
		p.Port, p.Points = point([3]float64{l, w / 2, r.between(2, h-2)}), geom.Vec3{X: 1}
	} else {
		p.Port, p.Points = point([3]float64{l - r.between(2, 4), w / 2, h}), geom.Vec3{Z: 1}
	}
	return arrange.Standing{Pump: p}
}

// parts draws a chain of n elbows with what the rules ask for.
func (r *drawer) parts(i *arrange.Input, n int) []layout.Laid {
	of := map[layout.Kind]layout.Part{}
	for _, f := range i.Fittings {
		of[f.Part.Kind] = f.Part
	}
	gap := func() layout.Join {
		if r.IntN(3) == 0 {
			return layout.Join{}
		}
		return layout.Join{By: layout.Faces, Distance: inches(r.between(0, 4))}
	}
	var middle []layout.Laid
	for range n {
		k := pick(r, layout.Elbow90, layout.Elbow90, layout.Elbow90, layout.Elbow45, layout.Street90)
		middle = append(middle, layout.Laid{Part: of[k], Roll: unit.Angle(r.IntN(8)*45) * unit.Degree, Next: gap()})
		if k == layout.Elbow90 && r.IntN(2) == 0 {
			middle[len(middle)-1].Roll = unit.Angle(r.IntN(4)*90) * unit.Degree
		}
	}
	put := func(p layout.Part) {
		k := r.IntN(len(middle) + 1)
		middle = append(middle[:k:k], append([]layout.Laid{{Part: p, Next: gap()}}, middle[k:]...)...)
	}
	if i.Rules.Union {
		put(of[layout.Union])
	}
	for _, k := range []layout.Kind{layout.CheckSpring, layout.CheckSwing} {
		if p, ok := of[k]; ok {
			put(p)
		}
	}
	all := append([]layout.Laid{{Part: of[layout.MaleAdapter], Next: gap()}}, middle...)
	all = append(all, layout.Laid{Part: of[layout.Bulkhead]})
	for k := range all {
		all[k].Mark = fmt.Sprintf("F%d", k+1)
	}
	return all
}

// sound tells that a chain is laid without a fault and proved, but for the play
// of pump and pieces, which the rules do not ask for here.
func sound(i layout.Input, rules arrange.Rules) (layout.Assembly, bool) {
	a, _, faults := layout.Lay(i)
	if !a.Laid || len(faults) > 0 {
		return a, false
	}
	report := verify.Prove(i, a)
	return a, len(refused(&report, rules)) == 0
}

// refused gives the failed checks that count under some rules.
func refused(report *verify.Report, rules arrange.Rules) (out []verify.Check) {
	for _, c := range report.Failed() {
		switch c.Code {
		case verify.CheckPlay, verify.CheckSpare:
			if !rules.Play {
				continue
			}
		case verify.CheckUnion:
			if !rules.Union {
				continue
			}
		case verify.CheckWay, verify.CheckMove, verify.CheckRim, verify.CheckOut, verify.CheckSlide, verify.CheckMoveWall:
			if !rules.Out {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// backwards draws a known assembly of n elbows and builds the vault round it;
// false where the seed gives none that can be built.
func backwards(t testing.TB, book *catalog.Book, seed uint64, n int) (*known, bool) {
	r := draw(t, book, seed)
	size := pick(r, "1-1/2", "1-1/2", "2")
	union := r.IntN(8) != 0
	i := arrange.Input{Path: "/assembly", Rules: arrange.Rules{Union: union, Out: union, Check: true, Best: 1000}}
	names := []string{
		"male adapter", "elbow 90", "elbow 45", "street elbow 90", "bulkhead fitting",
		pick(r, "check valve spring", "check valve spring", "check valve swing"),
	}
	if union {
		names = append(names, "union")
	}
	i.Pipes, i.Fittings = stock(t, book, size, 30, names)
	if lip := r.tagged("lip", union && r.IntN(3) == 0); lip {
		for k := range i.Fittings {
			if i.Fittings[k].Part.Kind == layout.Union {
				i.Fittings[k].Part.Splits = []layout.Split{{Lip: inches(0.125)}}
			}
		}
	}
	stand := r.pump(size)
	i.Standings = []arrange.Standing{stand}
	chain := layout.Input{
		Path: i.Path, Pump: stand.Pump, Pipes: []layout.Pipe{i.Pipes[0].Pipe}, Parts: r.parts(&i, n),
		Pose:  layout.Pose{At: geom.Vec3{X: 5, Y: 5}, Turn: unit.Angle(r.IntN(4)*90) * unit.Degree},
		Vault: layout.Vault{Length: 10, Width: 10, Depth: 10, Path: "/vault", Outlet: layout.Outlet{Wall: layout.Right, Along: 5, Height: 5}},
	}
	a, _, faults := layout.Lay(chain)
	if !a.Laid || len(faults) > 0 || !r.wrap(&chain, &a) {
		return nil, false
	}
	if _, ok := sound(chain, i.Rules); !ok {
		return nil, false
	}
	r.clutter(&chain, i.Rules)
	laid, ok := sound(chain, i.Rules)
	if !ok {
		t.Fatalf("seed %d: not sound any more", seed)
	}
	i.Vault = chain.Vault
	r.tagged("taper", i.Vault.FloorLength > 0 && !i.Vault.Round)
	r.tagged("round", i.Vault.Round)
	r.tagged("obstacle", len(i.Vault.Obstacles) > 0)
	return &known{seed, i, chain, laid, r.tags}, true
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
