package arrange

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// spacings are the least distances between what a kit holds, by the turns of the
// elbows, in metres: less than any choice of fittings can have.
type spacings struct {
	start [2]float64    // from the pump's port to the first elbow's centre
	mid   [2][2]float64 // between two elbows' centres
	last  [2]float64    // from the last elbow's centre to the wall
	only  float64       // from the port to the wall, without an elbow
}

// spaced works out the spacings of a kit.
func (s *search) spaced(st *Standing, k *kit) spacings {
	inf := math.Inf(1)
	d := spacings{start: [2]float64{inf, inf}, mid: [2][2]float64{{inf, inf}, {inf, inf}}, last: [2]float64{inf, inf}, only: inf}
	for t, elbows := range k.elbows {
		for _, e := range elbows {
			for _, start := range k.starts {
				d.start[t] = math.Min(d.start[t], s.fromPort(st, k, start, e))
			}
			for u, others := range k.elbows {
				for _, o := range others {
					if g, ok := layout.Spacing(e.part, o.part); ok {
						d.mid[t][u] = math.Min(d.mid[t][u], float64(g))
					}
				}
			}
			for _, end := range k.ends {
				if g, ok := layout.Spacing(e.part, end.part); ok {
					d.last[t] = math.Min(d.last[t], float64(g))
				}
			}
			if len(k.ends) == 0 {
				d.last[t] = math.Min(d.last[t], float64(e.part.Out.TakeOff.Length))
			}
		}
	}
	d.only = 0
	return d
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
	for _, p := range append(start[:len(start):len(start)], e) {
		in.Parts = append(in.Parts, layout.Laid{Part: p.part})
	}
	f, faults := layout.FrameOf(in)
	if len(faults) > 0 {
		return math.Inf(1)
	}
	return f.Places[len(f.Places)-1].Centre.Sub(f.Port).Dot(f.Points)
}

// legsOf makes the chain of all fillings of one way at once: its legs as bare
// pipe from centre to centre, each no longer than any choice of fittings needs.
// What does not fit so does not fit filled. Nil where a joint cannot be made.
func (w *worker) legsOf(standing int, k *kit, turned unit.Angle, way *compass, seq []int) *chain {
	f, d, st := w.s.bare(standing, turned), &k.spaces, w.stampsOf(way)
	if f == nil {
		return nil
	}
	n := len(seq) - 1
	c := &chain{union: -1, sketch: true, through: len(k.ends) == 0, standing: standing, normals: way.apart, minus: way.minus, frame: layout.Frame{Links: make([]layout.Link, n+1)}}
	at := f.Port
	for leg, dir := range seq {
		least := d.only
		var before, after turn
		if leg > 0 {
			before = turnOf(way.dirs[seq[leg-1]], way.dirs[dir])
		}
		if leg < n {
			after = turnOf(way.dirs[dir], way.dirs[seq[leg+1]])
		}
		switch {
		case n == 0:
		case leg == 0:
			least = d.start[after]
		case leg == n:
			least = d.last[before]
		default:
			least = d.mid[before][after]
		}
		if math.IsInf(least, 1) {
			return nil
		}
		c.slot, c.dirs, c.made = append(c.slot, varJoints+leg), append(c.dirs, way.dirs[dir]), append(c.made, nil)
		c.frame.Links[leg] = layout.Link{Piped: true, Pipe: layout.Pipe{Size: " "}, Least: unit.Length(least)}
		to := at.Add(way.dirs[dir].Scale(least))
		c.bodies = append(c.bodies, body{
			a: spot{at, leg, true}, b: spot{to, leg + 1, true}, axis: way.dirs[dir], r: float64(k.pipe.OD) / 2, over: st.over(way.dirs[dir], float64(k.pipe.OD)/2),
			item: 8 * leg, leg: leg, first: leg == 0, exit: leg == n,
		})
		if at = to; leg < n {
			c.bends = append(c.bends, bend{at.Sub(f.Port), leg + 1, way.dirs[dir], way.dirs[seq[leg+1]]})
		}
	}
	c.vars = varJoints + n + 2
	c.end = spot{at, n + 1, true}
	c.rest(way.around)
	return c
}

// bare gives the pump alone in a standing, turned; nil where it cannot be placed.
func (s *search) bare(standing int, turned unit.Angle) *layout.Frame {
	return s.bares[wayKey{standing, turned}]
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
