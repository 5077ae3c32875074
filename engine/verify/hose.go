package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// bow is the bend of a hose as this package draws it: a circle in the plane of
// the two legs.
type bow struct {
	middle, arm, bend vec // of the circle, from there to where the bend begins, normal of the plane
	turn, r           float64
}

// bowOf gives the bend of a hose in its place. The circle touches both legs, so
// that its middle lies on the line that halves the angle between them, at
// R / cos(turn/2) from where they meet.
func bowOf(c *layout.Curve, s *stand) bow {
	b := bow{turn: float64(c.Turn), r: float64(c.Radius)}
	b.bend, _ = s.in.square(s.side).one()
	inward, _ := s.out.minus(s.in).one()
	b.middle = s.centre.at(inward, b.r/math.Cos(b.turn/2))
	b.arm = s.side.times(-b.r)
	return b
}

// at gives the point of the middle line at an angle into the bend.
func (b *bow) at(t float64) vec { return b.middle.plus(about(b.arm, vec{}, b.bend, t)) }

// slices of the bend in which its length is added up, and its surface looked at.
const (
	fine   = 4000
	coarse = 60
	ring   = 24
)

// length adds up the middle line in chords, each short of its arc by a part of
// 10^8.
func (b *bow) length() float64 {
	sum, before := 0.0, b.at(0)
	for k := range fine {
		p := b.at(b.turn * float64(k+1) / fine)
		sum += before.toward(p)
		before = p
	}
	return sum
}

// hoses holds each hose against how it may lie, and what is told of it.
func (v *verifier) hoses() {
	n := 0
	for i := range v.in.Parts {
		if v.in.Parts[i].Kind != layout.Hose {
			continue
		}
		if n++; n > len(v.a.Hoses) || v.a.Hoses[n-1].Part != i {
			v.holds(CheckHoseCut, v.partPath(i), false, trace.Str("part", v.mark(i)))
			continue
		}
		v.oneHose(i, &v.a.Hoses[n-1])
	}
	v.holds(CheckWhole, v.in.Path, n == len(v.a.Hoses), trace.Str("what", "hoses"))
}

func (v *verifier) oneHose(i int, h *layout.HoseCut) {
	p, s, path, part := &v.in.Parts[i], &v.stands[i], v.partPath(i), trace.Str("part", v.mark(i))
	c := &p.Curve
	b := bowOf(c, s)
	if c.Turn > 0 {
		v.atLeast(CheckHoseRadius, path, float64(c.Radius), float64(c.Least.Length), part)
	}
	v.holds(CheckHoseWall, path, i < len(v.in.Parts)-1, part)
	begin, end := s.centre, s.centre
	if c.Turn > 0 {
		begin, end = b.at(0), b.at(b.turn)
	}
	depths := [2]float64{v.socketTowards(i, -1), v.socketTowards(i, 1)}
	whole := begin.toward(s.inlet) + end.toward(s.outlet)
	if c.Turn > 0 {
		whole += b.length()
	}
	off := 0.0
	for k, to := range [2]int{i - 1, i + 1} {
		straight := [2]float64{begin.minus(s.inlet).along(s.in), s.outlet.minus(end).along(s.out)}[k] - depths[k]
		if c.Turn == 0 {
			// Of a hose without a bend all lies on one line: counted from its centre.
			straight = [2]float64{float64(p.In.TakeOff.Length), float64(p.Out.TakeOff.Length)}[k] - depths[k]
		}
		name := "wall"
		if to < len(v.in.Parts) {
			name = v.mark(to)
		}
		v.atLeast(CheckHoseStraight, path, straight, float64(c.Straight), part, trace.Str("to", name))
		off = max(off, math.Abs(straight-float64(h.Straights[k])), math.Abs(depths[k]-float64(h.Sockets[k])), math.Abs(depths[k]-float64(h.Ends[k].Mark)))
		if name != [2]string{h.From, h.To}[k] {
			off = math.Inf(1)
		}
	}
	if c.Longest > 0 {
		v.atMost(CheckHoseLong, path, whole, float64(c.Longest), part)
	}
	off = max(off, math.Abs(whole-float64(h.Exact)), math.Abs(float64(h.OD-p.In.Hub.Length)))
	if h.Mark != v.mark(i) || h.Curve != *c {
		off = math.Inf(1)
	}
	v.atMost(CheckHoseCut, path, off, 0, part)
	v.equals(CheckHoseCut, path, float64(h.Cut), whole, v.lim.step/2, part)
	v.equals(CheckHoseCut, path, float64(h.Cut), math.Round(float64(h.Cut)/v.lim.step)*v.lim.step, 0, part)
	v.line(i, h, &b, begin, end, part)
}

// socketTowards gives how deep a hose goes into the part before (-1) or after
// it (1): to the stop of the socket there.
func (v *verifier) socketTowards(i, by int) float64 {
	e := &v.in.Pump.Outlet
	switch k := i + by; {
	case k >= len(v.in.Parts):
		return math.NaN()
	case k >= 0 && by < 0:
		e = &v.in.Parts[k].Out
	case k >= 0:
		e = &v.in.Parts[k].In
	}
	if e.Kind != layout.Socket {
		return math.NaN()
	}
	return float64(e.Depth.Length)
}

// line holds the middle line drawn: from stop to stop, every point on the true
// one, none far from the next.
func (v *verifier) line(i int, h *layout.HoseCut, b *bow, begin, end vec, part trace.Arg) {
	s, path := &v.stands[i], v.partPath(i)
	if len(h.Line) < 3 {
		v.holds(CheckHoseLine, path, false, part)
		return
	}
	off := max(s.inlet.toward(from(h.Line[0])), s.outlet.toward(from(h.Line[len(h.Line)-1])))
	for k, q := range h.Line {
		p := from(q)
		near := min(beside(p, s.inlet, begin), beside(p, end, s.outlet))
		if b.turn > 0 {
			d := p.minus(b.middle)
			near = min(near, math.Hypot(d.along(b.bend), d.flat(b.bend).length()-b.r))
		}
		off = max(off, near)
		if k == 0 || b.turn == 0 {
			continue
		}
		// Of two points in the bend the chord must not cut off much.
		if d := from(h.Line[k-1]).toward(p); k > 1 && k < len(h.Line)-1 && !(d <= b.r*widest) {
			off = math.Inf(1)
		}
	}
	v.atMost(CheckHoseLine, path, off, 0, part)
}

// widest is the turn between two points of a middle line, at most: ten degrees.
const widest = math.Pi / 18

// beside gives the distance of a point from what lies between two others.
func beside(p, a, b vec) float64 {
	d, ok := b.minus(a).one()
	if !ok {
		return a.toward(p)
	}
	t := min(max(p.minus(a).along(d), 0), a.toward(b))
	return p.toward(a.at(d, t))
}

// hoseShapes gives the solids that a hose lies in, as engine/layout describes
// them: what shows of the straight ends, and for each stretch of at most 22.5
// degrees of the bend a cylinder along its chord, half a sagitta outside it.
func hoseShapes(p *layout.Laid, s *stand) (out []shape) {
	r, c := float64(max(p.In.Hub.Length, p.Out.Hub.Length))/2, &p.Curve
	add := func(a, e vec, r float64, leg int) {
		if a.toward(e) > 1e-7 {
			out = append(out, shapeOf(cylinder(a, e, r), leg, 0))
		}
	}
	shows := s.centre.at(s.in, float64(p.In.Depth.Length-p.In.TakeOff.Length))
	ends := s.centre.at(s.out, float64(p.Out.TakeOff.Length-p.Out.Depth.Length))
	if c.Turn == 0 {
		add(shows, ends, r, s.leg)
		return out
	}
	b := bowOf(c, s)
	add(shows, b.at(0), r, s.leg)
	n := int(math.Ceil(b.turn/(math.Pi/8) - 1e-9))
	for k := range n {
		a, e := b.at(b.turn*float64(k)/float64(n)), b.at(b.turn*float64(k+1)/float64(n))
		top := b.at(b.turn * (float64(k) + 0.5) / float64(n))
		chord := a.plus(e).times(0.5)
		mid, sagitta := chord.plus(top).times(0.5), chord.toward(top)
		dir, _ := e.minus(a).one()
		reach := a.toward(e) / 2 * (1 + r/b.r)
		add(mid.at(dir, -reach), mid.at(dir, reach), r+sagitta/2, -1)
	}
	add(b.at(b.turn), ends, r, s.leg+1)
	return out
}

// held looks at points all over a hose, in rings along its middle line: each must
// lie in one of the solids stated.
func (v *verifier) held(i int) {
	p, s := &v.in.Parts[i], &v.stands[i]
	stated := v.a.Places[i].Solids
	b, r := bowOf(&p.Curve, s), float64(max(p.In.Hub.Length, p.Out.Hub.Length))/2
	worst := 0.0
	around := func(at, along vec) {
		for k := range ring {
			q := at.plus(clock(along, 2*math.Pi*float64(k)/ring).times(r))
			least := math.Inf(1)
			for m := range stated {
				least = min(least, outside(q, from(stated[m].From), from(stated[m].To), float64(stated[m].Radius)))
			}
			worst = max(worst, least)
		}
	}
	shows := s.centre.at(s.in, float64(p.In.Depth.Length-p.In.TakeOff.Length))
	ends := s.centre.at(s.out, float64(p.Out.TakeOff.Length-p.Out.Depth.Length))
	begin, end := s.centre, s.centre
	if b.turn > 0 {
		begin, end = b.at(0), b.at(b.turn)
		for k := range coarse + 1 {
			t := b.turn * float64(k) / coarse
			along, _ := b.bend.square(b.at(t).minus(b.middle)).one()
			around(b.at(t), along)
		}
	}
	for k := range coarse + 1 {
		f := float64(k) / coarse
		around(shows.plus(begin.minus(shows).times(f)), s.in)
		around(end.plus(ends.minus(end).times(f)), s.out)
	}
	v.atMost(CheckHoseHeld, v.partPath(i), worst, 0, trace.Str("part", v.mark(i)))
}

// outside gives how far a point stands out of a cylinder, along its axis or
// square to it; 0 inside.
func outside(p, a, e vec, r float64) float64 {
	dir, ok := e.minus(a).one()
	if !ok {
		return math.Inf(1)
	}
	d := p.minus(a)
	t := d.along(dir)
	return max(0, -t, t-a.toward(e), d.flat(dir).length()-r)
}
