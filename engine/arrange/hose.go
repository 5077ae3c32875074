package arrange

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// Hose is a piece of flexible pipe that a chain may have one of: its first turn,
// glued into the sockets at its ends, bent to its least radius by any angle that
// lies between two of the directions. Its straight ends are as long as the chain
// asks. A rigid layout is never dropped for one with a hose.
type Hose struct {
	Part   layout.Part // of the kind hose: size, ends with its outside diameter, curve with no turn
	Bend   unit.Length // head that a bend of up to a quarter turn takes at the operating flow, beyond its length; of a larger one more in proportion
	Slope  float64     // head that a metre of it takes, m/m
	Cost   float64     // of a metre, in the job's currency
	Priced bool
	Stock  *Stock // all there is of it; nil: as long as wanted
}

// most gives how long a piece of it may be, by what is allowed and by what there is.
func (h *Hose) most() unit.Length {
	most := unit.Length(math.Inf(1))
	if h.Part.Curve.Longest > 0 {
		most = h.Part.Curve.Longest
	}
	if h.Stock == nil {
		return most
	}
	longest := unit.Length(0)
	for _, l := range h.Stock.Lengths {
		longest = max(longest, l)
	}
	return min(most, longest)
}

const (
	// hoseNear is how many turns from the pump on may be a hose's: it is to stand
	// between the pump and the rigid chain.
	hoseNear = 1
	// leastBent is the least that a hose is bent: less lies within what the trade
	// takes up by eye.
	leastBent = 5 * unit.Degree
)

// bent is what a piece of hose takes of head, cost and length without what it is
// longer than at its least, and without its ends in the sockets.
type bent struct {
	head, cost, length float64
	pipe               *Pipe // what a metre of it takes and costs; of no size
}

// hosePiece makes a hose with a turn, its straight ends at their least and
// nothing of it in a socket.
func (in *Input) hosePiece(turn unit.Angle) *piece {
	p, od := in.Hose.Part, in.Hose.Part.In.Hub
	p.Curve.Turn = turn
	leg := p.Curve.TakeOff() + p.Curve.Straight + pad
	p.In, p.Out = layout.HoseEnd(leg, 0, od), layout.HoseEnd(leg, 0, od)
	b := &bent{length: float64(p.Curve.Arc() + 2*p.Curve.Straight + 2*pad), pipe: &Pipe{Slope: in.Hose.Slope, Cost: in.Hose.Cost}}
	b.head = float64(in.Hose.Bend)*math.Max(1, float64(turn)/(math.Pi/2)) + in.Hose.Slope*b.length
	b.cost = in.Hose.Cost * b.length
	return &piece{fitting: -1, part: p, turns: turn != 0, hose: b}
}

// turnKey names an angle, the same for two that differ by the dust of arithmetic.
func turnKey(t unit.Angle) int64 { return int64(math.Round(float64(t) * 1e9)) }

// between gives the angle of two directions of a compass.
func (c *compass) between(a, b int) unit.Angle {
	p, q := c.dirs[a], c.dirs[b]
	return unit.Angle(math.Atan2(p.Cross(q).Norm(), p.Dot(q)))
}

// bowed lists, from each direction, those that a hose leads to which is not longer
// than it may be.
func (c *compass) bowed(in *Input) {
	c.byHose = make([][]int, len(c.dirs))
	most := in.Hose.most() + pad
	for i := range c.dirs {
		for k := range c.dirs {
			if t := c.between(i, k); bendable(t) && in.ShortestHose(t) <= most {
				c.byHose[i] = append(c.byHose[i], k)
			}
		}
	}
}

// bendable tells that a hose may turn by so much.
func bendable(t unit.Angle) bool { return t >= leastBent && t <= layout.MostTurn+1e-9 }

// bow puts hoses of all angles of a compass into the kits of a standing.
func (s *search) bow(kits []kit, c *compass) {
	if s.in.Hose == nil {
		return
	}
	c.bowed(&s.in)
	for k := range kits {
		q := &kits[k]
		if q.change != nil || size(s.in.Hose.Part.In, s.in.Hose.Part) != q.pipe.Size {
			continue // with a change of size there is none
		}
		if q.hoses == nil {
			q.hoses = map[int64]*piece{}
		}
		for i := range c.byHose {
			for _, to := range c.byHose[i] {
				t := c.between(i, to)
				if q.hoses[turnKey(t)] == nil {
					q.hoses[turnKey(t)] = s.in.hosePiece(t)
				}
			}
		}
	}
}

// hoseOf gives the piece of a way's hose; nil where it has none.
func (v *way) hoseOf() *piece {
	if v.hose == 0 {
		return nil
	}
	return v.kit.hoses[turnKey(v.compass.between(v.seq[v.hose-1], v.seq[v.hose]))]
}

// seated lets the ends of a part, where it is a hose of the search's, go as deep
// as the sockets at its ends are.
func (p *piece) seated(part *layout.Part, before, after *layout.End) {
	if p.hose == nil {
		return
	}
	for k, e := range [2]*layout.End{&part.In, &part.Out} {
		leg := part.Curve.TakeOff() + part.Curve.Straight + pad
		if o := [2]*layout.End{before, after}[k]; o != nil && o.Kind == layout.Socket {
			*e = layout.HoseEnd(leg+o.Depth.Length, 0, e.Hub)
			e.Depth = o.Depth
		}
	}
}

// seat does so for all hoses of a chain.
func seat(laid []layout.Laid, as []*piece, outlet layout.End) {
	for i, p := range as {
		if p.hose == nil {
			continue
		}
		before, after := &outlet, (*layout.End)(nil)
		if i > 0 {
			before = &laid[i-1].Out
		}
		if i+1 < len(laid) {
			after = &laid[i+1].In
		}
		p.seated(&laid[i].Part, before, after)
	}
}

// spacingOf gives the least distance between two pieces, one of which may be a hose.
func spacingOf(p, q *piece) (unit.Length, bool) {
	a, b := p.part, q.part
	p.seated(&a, nil, &b.In)
	q.seated(&b, &a.Out, nil)
	return layout.Spacing(a, b)
}

// hosed tells that the joint before a part lies between a hose of the search's
// and its neighbour, so that it is as long as is wanted.
func hosed(parts []*piece, i int) bool {
	return parts[i].hose != nil || i > 0 && parts[i-1].hose != nil
}

// weigh puts into the costs of a program what a metre of each joint counts for.
// In a chain whose joints are still to be parted, what is no pipe yet may become
// some: it counts the least.
func (b *branch) weigh(costs []float64) {
	c := b.c
	if b.of == nil || b.of.other() == nil {
		return
	}
	for i, k := range c.slot {
		if l := &c.frame.Links[i]; k >= 0 && (l.Piped || c.whole()) {
			costs[k] = b.of.weight(l.Pipe.Size)
		}
	}
}

// longest keeps a hose no longer than it may be.
func (b *branch) longest(p *program) {
	c := b.c
	if !c.whole() || c.hose < 0 || !(c.hoseMost < math.Inf(1)) {
		return
	}
	clear(b.row)
	for _, k := range c.slot[c.hose : c.hose+2] {
		b.row[k] = 1
	}
	p.row(b.row, c.hoseMost)
}

// longerThan gives what the hoses of a laid chain are longer than at their least.
func longerThan(a *layout.Assembly, parts []*piece) (sum float64) {
	for i := range a.Hoses {
		h := &a.Hoses[i]
		if b := parts[h.Part].hose; b != nil {
			sum += float64(h.Exact) - b.length
		}
	}
	return sum
}

// straightEnd makes a body, between the faces of a hose and its neighbour, what
// one straight end of the hose is longer than at its least.
func (s *search) straightEnd(c *chain, parts []*piece, b *body, i int) {
	k := i // the hose
	if parts[i].hose == nil {
		k = i - 1
	}
	b.item, b.exit, b.moves = 2*k, false, k < c.union
	b.r = float64(parts[k].part.In.Hub.Length) / 2
	if k != i {
		b.first = false
		return
	}
	before, after := s.in.outlet(c.standing), parts[i+1].part.In
	if i > 0 {
		before = parts[i-1].part.Out
	}
	c.hose, c.hoseIn, c.hoseMost = i, float64(before.Depth.Length+after.Depth.Length), math.Inf(1)
	if most := s.in.Hose.most(); most < unit.Length(math.Inf(1)) {
		if s.in.Hose.Stock != nil {
			most += s.lim.Step // a cut may be shorter by less than that, once it is rounded
		}
		c.hoseMost = float64(most) - c.hoseIn - parts[i].hose.length - pad
	}
}
