package drawing

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
)

// vaultBox is the inside of the vault by its floor and rim.
type vaultBox struct {
	round       bool
	floor, rim  [4]geom.Vec3 // corners: left front, right front, right back, left back
	length      unit.Length
	width, deep unit.Length
}

func vecOf(p job.XYZ) geom.Vec3 {
	return geom.Vec3{X: float64(p.X.SI), Y: float64(p.Y.SI), Z: float64(p.Z.SI)}
}

// box gives the vault's inside; the floor lies centred under the rim.
func (a *iso) box() vaultBox {
	v := &a.in.Job.Vault
	b := vaultBox{round: v.Shape == "round", length: v.Length.SI, width: v.Width.SI, deep: v.Depth.SI}
	if b.round {
		b.width = b.length
	}
	fl, fw := v.FloorLength.Or(b.length), v.FloorWidth.Or(b.width)
	if b.round {
		fw = fl
	}
	corner := func(l, w unit.Length, z unit.Length) [4]geom.Vec3 {
		x0, y0 := float64(b.length-l)/2, float64(b.width-w)/2
		x1, y1 := x0+float64(l), y0+float64(w)
		h := float64(z)
		return [4]geom.Vec3{{X: x0, Y: y0, Z: h}, {X: x1, Y: y0, Z: h}, {X: x1, Y: y1, Z: h}, {X: x0, Y: y1, Z: h}}
	}
	b.floor, b.rim = corner(fl, fw, 0), corner(b.length, b.width, b.deep)
	return b
}

// rings gives the outlines of floor and rim.
func (b vaultBox) rings() [2][]geom.Vec3 {
	var out [2][]geom.Vec3
	for i, c := range [2][4]geom.Vec3{b.floor, b.rim} {
		if !b.round {
			out[i] = c[:]
			continue
		}
		mid := c[0].Add(c[2]).Scale(0.5)
		r := (c[1].X - c[0].X) / 2
		for k := range 4 * halfRing {
			s, cos := math.Sincos(float64(k) * math.Pi / 2 / halfRing)
			out[i] = append(out[i], mid.Add(geom.Vec3{X: r * cos, Y: r * s}))
		}
	}
	return out
}

// nearCorner is the corner the viewer stands over, as an index.
func (a *iso) nearCorner() int {
	return map[Corner]int{FrontLeft: 0, FrontRight: 1, BackRight: 2, BackLeft: 3}[a.view.corner]
}

// vault draws the floor and the far walls, with the hole.
func (a *iso) vault() {
	b := a.box()
	rings := b.rings()
	a.add(Polygon{Points: a.flat(rings[0]), Pen: fine})
	if b.round {
		a.add(Polygon{Points: a.flat(rings[1]), Pen: line})
		for _, side := range [...]float64{-1, 1} {
			a.edge(widest(rings[0], a.view, side), widest(rings[1], a.view, side), line)
		}
	} else {
		n := a.nearCorner()
		for k := 1; k <= 3; k++ {
			a.edge(b.floor[(n+k)%4], b.rim[(n+k)%4], fine)
		}
		for k := 1; k <= 2; k++ {
			a.edge(b.rim[(n+k)%4], b.rim[(n+k+1)%4], line)
		}
		a.near(b, n)
	}
	a.hatch(b)
	a.hole()
}

// hatch draws the opening over the vault, where it is smaller than the rim.
func (a *iso) hatch(b vaultBox) {
	h := a.laid.Hatch
	if h == (layout.Opening{}) {
		return
	}
	var ring [4]geom.Vec3
	for i, p := range [4][2]unit.Length{{h.FromX, h.FromY}, {h.ToX, h.FromY}, {h.ToX, h.ToY}, {h.FromX, h.ToY}} {
		ring[i] = geom.Vec3{X: float64(p[0]), Y: float64(p[1]), Z: float64(b.deep)}
	}
	for i := range ring {
		a.edge(ring[i], ring[(i+1)%4], hidden)
	}
}

// widest gives the point of a ring farthest to one side on the sheet.
func widest(ring []geom.Vec3, v view, side float64) geom.Vec3 {
	best := ring[0]
	for _, p := range ring {
		if side*v.right.Dot(p) > side*v.right.Dot(best) {
			best = p
		}
	}
	return best
}

func (a *iso) flat(points []geom.Vec3) []Point {
	out := make([]Point, 0, len(points))
	for _, p := range points {
		out = append(out, a.view.at(p))
	}
	return out
}

// edge draws an edge of the vault; texts keep off it.
func (a *iso) edge(from, to geom.Vec3, pen Pen) {
	p, q := a.view.at(from), a.view.at(to)
	a.add(Line{p, q, pen})
	a.field.soft = append(a.field.soft, patchOf(p, q))
}

// near draws the edges between the viewer and the plumbing, broken and behind
// it, so that they do not run over what matters.
func (a *iso) near(b vaultBox, n int) {
	a.edge(b.floor[n], b.rim[n], hidden)
	a.edge(b.rim[n], b.rim[(n+1)%4], hidden)
	a.edge(b.rim[n], b.rim[(n+3)%4], hidden)
}

// hole draws the hole in the wall and the water's way out of it.
func (a *iso) hole() {
	h := a.laid.Hole
	from, to, ok := a.wayOut()
	if !ok {
		return
	}
	ring := tube{h.At, h.At.Add(h.Axis), a.outside() / 2}.ring(a.view, h.At)
	ring.Pen = line
	if h.Axis.Dot(a.view.toward) > 0 {
		ring.Pen = hidden // in a wall on the viewer's side
	}
	a.add(ring)
	a.drawArrow(from, to, Pen{Ink: Water, Wide: 0.9})
	a.field.lines = append(a.field.lines, patchOf(a.view.at(from), a.view.at(to)))
	if off := a.laid.Closure.Off; off.Norm() > missed {
		a.add(Line{a.view.at(h.At), a.view.at(h.At.Add(off)), Pen{Ink: Black, Wide: 0.5, Dash: Dashed}})
	}
}

// missed is by how much a chain may end beside the hole without a word, m: what
// a tape reads.
const missed = 0.0016

// wallNames names the walls in the order of the corners: the wall from each
// corner to the next.
var wallNames = [4]string{"front", "right", "back", "left"}

// sizes writes length, width and depth along the vault's edges on the
// viewer's side, with the walls' names.
func (a *iso) sizes() {
	b, n := a.box(), a.nearCorner()
	if h := a.laid.Hatch; h != (layout.Opening{}) {
		a.unsized = append(a.unsized, a.say("assembly.hatch", "length", a.tape(h.ToX-h.FromX), "width", a.tape(h.ToY-h.FromY), "left", a.tape(h.FromX), "front", a.tape(h.FromY)))
	}
	if b.round {
		p, q := widest(b.rings()[0], a.view, -1), widest(b.rings()[1], a.view, -1)
		a.dimension(p, q, a.view.right.Scale(-1), a.tape(b.deep))
		p, q = widest(b.rings()[0], a.view, -1), widest(b.rings()[0], a.view, 1)
		a.dimension(p, q, geom.Vec3{Z: -1}, a.tape(b.length))
		return
	}
	for _, k := range [...]int{n, (n + 3) % 4} {
		size := b.length
		if k%2 == 1 {
			size = b.width
		}
		out := [4]geom.Vec3{{Y: -1}, {X: 1}, {Y: 1}, {X: -1}}[k]
		a.dimension(b.floor[k], b.floor[(k+1)%4], out, a.say("wall."+wallNames[k])+" "+a.tape(size))
	}
	// The depth along the upright at the left of the sheet.
	left := (n + 3) % 4
	if a.view.at(b.floor[(n+1)%4]).X < a.view.at(b.floor[left]).X {
		left = (n + 1) % 4
	}
	a.dimension(b.floor[left], b.rim[left], a.view.right.Scale(-1), a.tape(b.deep))
}

// dimension draws a size beside an edge, moved out from it along out as far as
// nothing stands in its way, with its text along it, read from the left or from
// below. A size that finds no room is kept for the notes below the picture.
func (a *iso) dimension(p, q, out geom.Vec3, text string) {
	flat := a.view.along(out)
	if flat.Norm() == 0 || p == q {
		return
	}
	flat = flat.Scale(1 / flat.Norm())
	from, to := a.view.at(p), a.view.at(q)
	if from.X > to.X || from.X == to.X && from.Y < to.Y {
		from, to = to, from
	}
	var places []place
	for _, far := range [...]float64{5, 9, 13, 18, 24} {
		places = append(places, place{text: beside(from.Add(flat.Scale(far)), to.Add(flat.Scale(far)), flat, text), cost: far})
	}
	best, ok := a.field.best(places)
	if !ok {
		a.unsized = append(a.unsized, text)
		return
	}
	far := best.cost
	for _, e := range [...]Point{from, to} {
		a.add(Line{e.Add(flat), e.Add(flat.Scale(far + 1)), help})
	}
	from, to = from.Add(flat.Scale(far)), to.Add(flat.Scale(far))
	a.add(Line{from, to, fine})
	for _, e := range [...]Point{from, to} {
		a.add(Line{e.Add(Point{-0.8, 0.8}), e.Add(Point{0.8, -0.8}), line})
	}
	a.text(best.text)
	a.field.lines = append(a.field.lines, patchOf(from, to))
}

// beside puts a text along a line, on the side to which out points.
func beside(from, to, out Point, text string) Text {
	along := to.Sub(from)
	normal := Point{-along.Y / along.Norm(), along.X / along.Norm()} // downward of the text
	shift := small*ascent + 0.9
	if normal.X*out.X+normal.Y*out.Y < 0 {
		shift = -(small*descent + 0.6)
	}
	return Text{
		At: from.Add(to).Scale(0.5).Add(normal.Scale(shift)), Size: small, Turn: math.Atan2(along.Y, along.X) * 180 / math.Pi,
		Anchor: Middle, Ink: Black, Halo: true, Text: text,
	}
}
