package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// spot is a point that moves with the variables: c, plus where the pump stands,
// plus what the first `upto` joints are longer than at their least, each along
// its leg. A spot that is not with the chain stays at c, but for that of an obstacle
// which goes along with a measure that may grow: upto is then goesAlong.
type spot struct {
	c    geom.Vec3
	upto int
	with bool
}

const goesAlong = -1

// body is a solid of chain, pump or surroundings. Its axis and its half vectors
// never change: only its ends move.
type body struct {
	a, b    spot // ends of a cylinder; of a block both its centre
	axis    geom.Vec3
	r       float64
	u, v, w geom.Vec3 // half vectors of a block
	block   bool
	over    []float64 // how far it reaches beyond its ends, across each normal

	item   int // place along the chain: part k is 2k, the pipe before it 2k-1; pump -2, obstacles below
	leg    int
	first  bool // stands on the pump's port
	exit   bool // passes through the hole's wall
	nut    bool // a union, without a cover: it wants room for a hand
	moves  bool // comes out with the pump
	opened int  // which piece of the part it is once its nuts are open, counted from the pump
	either bool // one part of it does, another does not
	glued  row  // it cannot be moved among the others of the row
}

// chain is one order of fittings along one way, ready to be stretched and moved
// about.
type chain struct {
	in       layout.Input // with the pump's corner at the origin and every hub touching
	frame    layout.Frame
	dirs     []geom.Vec3 // of the joint before each part, and of the way out
	slot     []int       // the variable of the joint before each part, -1 where it has no pipe
	made     []*held     // the joint before each part, where it is glued already
	bodies   []body
	bends    []bend
	vars     int // x, y, one for each joint with a pipe, the slide
	end      spot
	through  bool      // no fitting at the wall: the pipe goes on
	tail     float64   // of that pipe, what goes into the last socket
	sketch   bool      // legs alone, in place of every filling
	longer   []atLeast // of its legs, what valve and union make them
	parted   bool      // valve or union are still to come between its parts
	union    int       // part that opens, -1
	standing int       // of the pump
	normals  []geom.Vec3
	lost     *losses
	back     geom.Vec3
	lip      float64
	hose     int       // part that is a hose of the search's, -1
	hoseIn   float64   // of its ends, what goes into the sockets before and after it
	hoseMost float64   // of what its ends may be longer than at their least
	shift    geom.Vec3 // the way that an obstacle goes where a measure may grow
	below    float64   // how far below the walls the pump's place is counted from: variables are not below zero
}

// atLeast is what a variable must come to.
type atLeast struct {
	slot int
	by   float64
}

// Variables: the pump's corner, then the joints in order, last the slide.
const (
	varX = iota
	varY
	varJoints
)

// newChain lays parts along the legs' directions with every hub touching. ok is
// false where ends do not go together.
func (s *search) newChain(o *order, parts []*piece) (c *chain, ok bool) {
	st, dirs, pipe := &s.in.Standings[o.standing], o.dirs, o.pipe.Pipe
	c = &chain{union: -1, hose: -1, standing: o.standing, normals: o.compass.apart}
	c.in = layout.Input{
		Vault: s.in.Vault, Pump: st.Pump, Pose: st.poseAt(o.turned, 0, 0), Pipes: []layout.Pipe{pipe},
		Beyond: s.in.Beyond, Settings: s.in.Settings, Straight: !s.in.Rules.Tilt, Path: s.in.Path,
	}
	for _, p := range s.in.Pipes {
		if p.Size != pipe.Size {
			c.in.Pipes = append(c.in.Pipes, p.Pipe)
		}
	}
	leg := 0
	for i, p := range parts {
		l := layout.Laid{Part: p.part}
		if p.held != nil {
			l.Reverse, l.Roll = p.held.laid.Reverse, s.roll(p, dirs[leg], o.turned)
		}
		c.made = append(c.made, nil)
		if p.made() {
			c.made[i] = p.held
		}
		if turned, _ := p.part.Turn(); turned != 0 {
			in, out := dirs[leg], dirs[leg+1]
			l.Roll = layout.RollOf(in, out.Sub(in.Scale(in.Dot(out))).Unit())
			leg++
		}
		if len(p.part.Splits) > 0 && c.union < 0 {
			c.union, c.back, c.lip = i, dirs[leg].Scale(-1), float64(p.part.Splits[0].Lip)
		}
		c.in.Parts = append(c.in.Parts, l)
	}
	seat(c.in.Parts, parts, st.Pump.Outlet)
	f, faults := layout.FrameOf(c.in)
	if len(faults) > 0 || parts[len(parts)-1].hose != nil {
		return nil, false
	}
	c.frame = f
	last := len(parts) - 1
	c.through = parts[last].part.Kind != layout.Bulkhead
	c.vars = varJoints
	for i, l := range f.Links {
		c.slot = append(c.slot, -1)
		if l.Piped || hosed(parts, i) {
			c.slot[i] = c.vars
			c.vars++
		}
		c.dirs = append(c.dirs, f.Places[i].InDir)
	}
	c.vars++ // the slide
	c.dirs = append(c.dirs, f.Places[last].OutDir)
	at := f.Places[last].Centre
	if c.through {
		at, c.tail = f.Places[last].Outlet, float64(parts[last].part.Out.Depth.Length)
	}
	c.end = spot{at, last + 1, true}
	return c, true
}

// surroundings are the bodies of a pump, as it stands and is turned, and of what
// stands in the vault.
func (s *search) surroundings(f *layout.Frame, normals []geom.Vec3) []body {
	var out []body
	for _, b := range f.Body {
		out = append(out, body{
			a: spot{b.Centre, 0, true}, b: spot{b.Centre, 0, true}, u: b.U, v: b.V, w: b.W, block: true,
			item: itemPump, leg: -1,
		})
	}
	for _, r := range f.Rounds {
		out = append(out, body{
			a: spot{r.From, 0, true}, b: spot{r.To, 0, true}, axis: r.To.Sub(r.From).Unit(), r: float64(r.Radius),
			item: itemPump, leg: -1,
		})
	}
	for i, o := range s.in.Vault.Obstacles {
		h := o.Box.Size().Scale(0.5)
		at := spot{c: o.Box.Centre()}
		out = append(out, body{
			a: at, b: at, u: geom.Vec3{X: h.X}, v: geom.Vec3{Y: h.Y}, w: geom.Vec3{Z: h.Z}, block: true,
			item: itemObstacle - i, leg: -1,
		})
	}
	for i := range out {
		out[i].over = out[i].beyonds(normals)
	}
	return out
}

// rest adds the bodies of the pump and of what stands in the vault.
func (c *chain) rest(bodies []body) {
	from := len(c.bodies)
	c.bodies = append(c.bodies, bodies...)
	for i := range c.bodies[from:] {
		b := &c.bodies[from+i]
		b.moves = b.pump() && c.union >= 0
	}
}

const (
	itemPump     = -2
	itemObstacle = -3 // the first; the others lie below
)

func (b *body) obstacle() bool { return b.item <= itemObstacle }
func (b *body) pump() bool     { return b.item == itemPump }
func (b *body) part() bool     { return b.item >= -1 }

// beyond gives how far the body reaches from its end along n, a unit vector:
// for a cylinder r sqrt(1 - (n.axis)^2), for a block the sum of |n.h|.
func (b *body) beyond(n geom.Vec3) float64 {
	if b.block {
		return math.Abs(n.Dot(b.u)) + math.Abs(n.Dot(b.v)) + math.Abs(n.Dot(b.w))
	}
	q := n.Dot(b.axis)
	return b.r * math.Sqrt(max(0, 1-q*q))
}

// beyonds gives that for every normal.
func (b *body) beyonds(normals []geom.Vec3) []float64 {
	out := make([]float64, len(normals))
	for i, n := range normals {
		out[i] = b.beyond(n)
	}
	return out
}

// far gives the end of the body that lies farther along n.
func (b *body) far(n geom.Vec3) *spot {
	if !b.block && n.Dot(b.axis) < 0 {
		return &b.a
	}
	return &b.b
}

// at gives where a spot is for values of the variables.
func (c *chain) at(s *spot, x []float64) geom.Vec3 {
	p := s.c
	if !s.with {
		if s.upto == goesAlong {
			p = p.Add(c.shift.Scale(x[c.vars]))
		}
		return p
	}
	p.X += x[varX] - c.below
	p.Y += x[varY] - c.below
	for i, k := range c.slot[:s.upto] {
		if k >= 0 {
			p = p.Add(c.dirs[i].Scale(x[k]))
		}
	}
	return p
}

// along adds f times n.s to a row and gives f n.c, the part of it that does not
// move.
func (c *chain) along(row []float64, s *spot, n geom.Vec3, f float64) float64 {
	fixed := f * n.Dot(s.c)
	if s.upto == goesAlong {
		row[c.vars] += f * n.Dot(c.shift)
	}
	if s.with {
		fixed -= f * c.below * (n.X + n.Y)
		row[varX] += f * n.X
		row[varY] += f * n.Y
		for i, k := range c.slot[:s.upto] {
			if k >= 0 {
				row[k] += f * n.Dot(c.dirs[i])
			}
		}
	}
	return fixed
}

// envelope gives the body where it stands, for the exact distance.
func (c *chain) envelope(b *body, x []float64) layout.Envelope {
	if b.block {
		return layout.Block{Centre: c.at(&b.a, x), U: b.u, V: b.v, W: b.w}.Envelope()
	}
	return layout.Cylinder{From: c.at(&b.a, x), To: c.at(&b.b, x), Radius: unit.Length(b.r)}.Envelope()
}
