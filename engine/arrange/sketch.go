package arrange

import (
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// spacings are the least distances between what a kit holds, from centre to
// centre, by what stands at both ends, in metres: less than any choice of
// fittings can have.
type spacings [sites][sites]float64

// What stands at an end of a stretch of a leg; an elbow by its turn.
const (
	atUnion = int(turn45) + 1 + iota
	atCheck
	atHose
	atEnd    // the port or the wall
	atChange // of the size
	sites
)

// leg gives how long a leg is at least between two sites, with valve or union, or
// both in whichever order is the shorter.
func (d *spacings) leg(before, after int, check, union bool) float64 {
	least := math.Inf(1)
	for _, between := range [2][2]int{{atUnion, atCheck}, {atCheck, atUnion}} {
		at, sum := before, 0.0
		for _, m := range between {
			if m == atUnion && union || m == atCheck && check {
				sum, at = sum+d[at][m], m
			}
		}
		least = math.Min(least, sum+d[at][after])
	}
	return least
}

// spaced works out the spacings of a kit, with the reducers that may come before
// it and after it.
func (s *search) spaced(st *Standing, k *kit, before, after []*piece) (d spacings) {
	from := [sites][]*piece{k.elbows[turn90], k.elbows[turn45], k.unions, k.checks, atChange: before}
	if s.in.Hose != nil {
		// Without a turn: what its bend takes off is added where it is known.
		from[atHose] = []*piece{s.in.hosePiece(0)}
	}
	to := from
	to[atEnd], to[atChange] = k.ends, after
	for i := range sites {
		for j := range sites {
			d[i][j] = s.spacing(st, k, from[i], to[j], i, j)
		}
	}
	return d
}

// spacing gives the least between the centres of what may stand at two sites.
func (s *search) spacing(st *Standing, k *kit, before, after []*piece, i, j int) float64 {
	least := math.Inf(1)
	switch {
	case i == atEnd && j == atEnd:
		return 0
	case i == atEnd:
		for _, p := range after {
			for _, start := range k.starts {
				least = math.Min(least, s.fromPort(st, k, start, p))
			}
		}
	case j == atEnd && len(after) == 0:
		for _, p := range before {
			if p.hose != nil {
				continue // it does not go through the wall
			}
			least = math.Min(least, float64(p.part.Out.TakeOff.Length))
		}
	default:
		for _, p := range before {
			for _, q := range after {
				if g, ok := spacingOf(p, q); ok {
					least = math.Min(least, float64(g))
				}
			}
		}
	}
	return least
}

// fromPort gives how far an elbow's centre stands before the port with the
// fittings between them at their least.
func (s *search) fromPort(st *Standing, k *kit, start []*piece, e *piece) float64 {
	in := layout.Input{Vault: s.in.Vault, Pump: st.Pump, Pipes: []layout.Pipe{k.pipe.Pipe}, Settings: s.in.Settings}
	for _, p := range s.in.Pipes {
		if p.Size != k.pipe.Size {
			in.Pipes = append(in.Pipes, p.Pipe)
		}
	}
	all := append(slices.Clone(start), e)
	for _, p := range all {
		in.Parts = append(in.Parts, layout.Laid{Part: p.part})
	}
	seat(in.Parts, all, st.Pump.Outlet)
	f, faults := layout.FrameOf(in)
	if len(faults) > 0 {
		return math.Inf(1)
	}
	return f.Places[len(f.Places)-1].Centre.Sub(f.Port).Dot(f.Points)
}

// legsOf makes the chain of all fillings of one way at once: its legs as bare
// pipe from centre to centre, each no longer than any choice of fittings needs.
// What does not fit so does not fit filled. Nil where a joint cannot be made.
func (w *worker) legsOf(v *way) *chain {
	standing, k, way, seq := v.standing, v.kit, v.compass, v.seq
	f, st := way.pump, w.stampsOf(way)
	if f == nil {
		return nil
	}
	n := len(seq) - 1
	c := &chain{union: -1, hose: -1, sketch: true, through: len(k.ends) == 0, standing: standing, normals: way.apart, lost: st.lost, frame: layout.Frame{Links: make([]layout.Link, n+1)}}
	at := f.Port
	for leg, dir := range seq {
		least := v.leg(leg, false, false)
		if math.IsInf(least, 1) {
			return nil
		}
		c.slot, c.dirs, c.made = append(c.slot, varJoints+leg), append(c.dirs, way.dirs[dir]), append(c.made, nil)
		c.frame.Links[leg] = layout.Link{Piped: true, Pipe: layout.Pipe{Size: " "}, Least: unit.Length(least)}
		to := at.Add(way.dirs[dir].Scale(least))
		from, end, r := v.shown(w.s, leg, at, to, way.dirs[dir])
		c.bodies = append(c.bodies, body{
			a: spot{from, leg, true}, b: spot{end, leg + 1, true}, axis: way.dirs[dir], r: r, over: st.over(way.dirs[dir], r),
			item: 8 * leg, leg: leg, first: leg == 0, exit: leg == n,
		})
		if at = to; leg < n {
			c.bends = append(c.bends, bend{at.Sub(f.Port), leg + 1, way.dirs[dir], way.dirs[seq[leg+1]]})
		}
	}
	c.vars = varJoints + n + 2
	c.end = spot{at, n + 1, true}
	c.bodies = append(c.bodies, w.atWall(st, k, c.dirs[n], c.end, n)...)
	c.rest(way.around)
	return c
}

// atWall gives the bodies of the fitting at the wall, which is the same in every
// filling where there is but one; without an elbow it may stand on the port.
func (w *worker) atWall(st *stamps, k *kit, dir geom.Vec3, at spot, leg int) []body {
	if len(k.ends) != 1 || leg == 0 {
		return nil
	}
	key := stampKey{k.ends[0], dir, dir}
	one := st.parts[key]
	if one == nil {
		pl := w.s.alone(dir, layout.Laid{Part: k.ends[0].part})
		if pl == nil {
			return nil
		}
		one = st.of(pl, 0)
		st.parts[key] = one
	}
	out := slices.Clone(one.bodies)
	for i := range out {
		b := &out[i]
		b.a, b.b = spot{at.c.Add(b.a.c), at.upto, true}, spot{at.c.Add(b.b.c), at.upto, true}
		b.item, b.leg, b.exit = 8*leg+3, leg, true
	}
	return out
}

// ends gives what stands at both ends of a leg.
func (v *way) ends(leg int) (before, after int) {
	before, after = atEnd, atEnd
	at := func(turn int) int { // counted from 1
		if turn == v.hose {
			return atHose
		}
		return int(turnOf(v.compass.dirs[v.seq[turn-1]], v.compass.dirs[v.seq[turn]]))
	}
	if leg > 0 {
		before = at(leg)
	}
	if leg < len(v.seq)-1 {
		after = at(leg + 1)
	}
	return before, after
}

// leg gives how long one of its legs is at least.
func (v *way) leg(leg int, check, union bool) float64 {
	before, after := v.ends(leg)
	least := v.kit.span(leg, before, after, check, union)
	if before == atHose || after == atHose {
		least += float64(v.hoseOf().part.Curve.TakeOff())
	}
	return least
}

// shown gives what of a leg is pipe, or as straight as it: at a hose it ends where
// the bend begins. What bends is left out of a sketch.
func (v *way) shown(s *search, leg int, at, to, dir geom.Vec3) (from, end geom.Vec3, r float64) {
	before, after := v.ends(leg)
	from, end, r = at, to, v.kit.radius(leg)
	if before != atHose && after != atHose {
		return from, end, r
	}
	off := dir.Scale(float64(v.hoseOf().part.Curve.TakeOff()))
	if before == atHose {
		from = from.Add(off)
	}
	if after == atHose {
		end = end.Sub(off)
	}
	return from, end, math.Min(r, float64(s.in.Hose.Part.In.Hub.Length)/2)
}

// longer makes the legs of a sketch long enough for valve and union, each in a
// leg of its own or both in one; -1 is no leg. False where one cannot be made.
func (v *way) longer(c *chain, check, union int) bool {
	c.longer = c.longer[:0]
	for leg := range v.seq {
		if leg != check && leg != union {
			continue
		}
		by := v.leg(leg, leg == check, leg == union) - float64(c.frame.Links[leg].Least)
		if math.IsInf(by, 1) {
			return false
		}
		if by > 0 {
			c.longer = append(c.longer, atLeast{c.slot[leg], by})
		}
	}
	return true
}

// bareOf places a pump without a chain.
func (s *search) bareOf(st *Standing, turned unit.Angle) *layout.Frame {
	for _, p := range s.in.Fittings {
		in := layout.Input{Vault: s.in.Vault, Pump: st.Pump, Pose: st.poseAt(turned, 0, 0), Settings: s.in.Settings, Parts: []layout.Laid{{Part: p.Part}}}
		for _, q := range s.in.Pipes {
			in.Pipes = append(in.Pipes, q.Pipe)
		}
		if f, faults := layout.FrameOf(in); len(faults) == 0 {
			return &f
		}
	}
	return nil
}
