package verify

import (
	"math"

	"plashet/engine/layout"
)

// wall is one flat bound: the inside is n.x <= b, n of length 1.
type wall struct {
	name layout.Wall
	n    vec
	b    float64
}

// barrel is the wall of a round vault: radius r on the floor, wider by k for
// each metre of height.
type barrel struct{ x, y, r, k float64 }

// inside is the room in the vault, or the way out of it.
type inside struct {
	walls  []wall
	barrel *barrel
	top    float64
}

// lean gives how far walls stand in on the floor, for each metre of depth.
func lean(rim, floor, depth float64) float64 {
	if floor <= 0 {
		return 0
	}
	return (rim - floor) / 2 / depth
}

// within gives the bounds of the inside from the corners of floor and rim: a
// wall is the plane through its edges on both.
func within(v *layout.Vault) inside {
	l, w, d := float64(v.Length), float64(v.Width), float64(v.Depth)
	in := inside{top: d, walls: []wall{{layout.Floor, vec{z: -1}, 0}, {layout.Lid, vec{z: 1}, d}}}
	kx, ky := lean(l, float64(v.FloorLength), d), lean(w, float64(v.FloorWidth), d)
	if v.Round {
		in.barrel = &barrel{x: l / 2, y: l / 2, r: l/2 - kx*d, k: kx}
		return in
	}
	side := func(name layout.Wall, top, foot, edge vec) {
		n, _ := edge.square(top.minus(foot)).one()
		in.walls = append(in.walls, wall{name, n, n.along(top)})
	}
	fx, fy := kx*d, ky*d
	side(layout.Left, vec{z: d}, vec{x: fx}, vec{y: -1})
	side(layout.Right, vec{x: l, z: d}, vec{x: l - fx}, vec{y: 1})
	side(layout.Front, vec{z: d}, vec{y: fy}, vec{x: 1})
	side(layout.Back, vec{y: w, z: d}, vec{y: w - fy}, vec{x: -1})
	return in
}

// rim gives the bounds in plan that the pump must pass through: the vault's rim,
// and its hatch where it has one.
func rim(v *layout.Vault) inside {
	l, w := float64(v.Length), float64(v.Width)
	out := inside{}
	if v.Round {
		out.barrel = &barrel{x: l / 2, y: l / 2, r: l / 2}
	} else {
		out.walls = edges(0, l, 0, w)
	}
	if o := v.Opening; o != (layout.Opening{}) {
		out.walls = append(out.walls, edges(float64(o.FromX), float64(o.ToX), float64(o.FromY), float64(o.ToY))...)
	}
	return out
}

func edges(x0, x1, y0, y1 float64) []wall {
	return []wall{
		{layout.Left, vec{x: -1}, -x0},
		{layout.Right, vec{x: 1}, x1},
		{layout.Front, vec{y: -1}, -y0},
		{layout.Back, vec{y: 1}, y1},
	}
}

// room gives the distance of a body to each bound but those of one name, below
// zero where it stands through.
func (in *inside) room(b *body, except layout.Wall, hold func(d float64, name layout.Wall)) {
	for i := range in.walls {
		if w := &in.walls[i]; w.name != except {
			hold(w.b-b.most(w.n), w.name)
		}
	}
	if in.barrel != nil && except != layout.Round {
		hold(in.barrel.room(b), layout.Round)
	}
}

// least gives the least of the room and what leaves it.
func (in *inside) least(b *body) (least float64, name layout.Wall) {
	least = math.Inf(1)
	in.room(b, "", func(d float64, w layout.Wall) {
		if !(d >= least) {
			least, name = d, w
		}
	})
	return least, name
}

// rimSides is the number of corners of the polygon drawn round a cylinder's
// rim where it stands in a round vault: it reaches past the circle by r/25000.
const rimSides = 512

// room gives the distance of a body to the round wall, never more than the true
// one. How far a point stands out, its distance from the vault's axis less the
// wall's widening, is convex, so that a polyhedron stands out the most in one of
// its corners. A cylinder's ends are drawn round by polygons, but where they lie
// level the circle itself is as simple.
func (w *barrel) room(b *body) float64 {
	out := math.Inf(-1)
	see := func(p vec, level float64) {
		if d := math.Hypot(p.x-w.x, p.y-w.y) + level - w.k*p.z; !(d <= out) {
			out = d
		}
	}
	for i := range 1 << b.n {
		p := b.c
		for k := range b.n {
			p = p.at(b.s[k], float64(i>>k&1*2-1))
		}
		switch {
		case b.r == 0:
			see(p, 0)
		case b.axis.x == 0 && b.axis.y == 0:
			see(p, b.r)
		default:
			u := noon(b.axis)
			v := b.axis.square(u)
			r := b.r / math.Cos(math.Pi/rimSides)
			for _, t := range corners {
				see(p.at(u, r*t[0]).at(v, r*t[1]), 0)
			}
		}
	}
	return (w.r - out) / math.Sqrt(1+w.k*w.k)
}

// corners of the polygon, on the circle of radius 1.
var corners = func() (c [rimSides][2]float64) {
	for i := range c {
		c[i][1], c[i][0] = math.Sincos(2 * math.Pi * float64(i) / rimSides)
	}
	return c
}()
