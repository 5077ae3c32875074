package verify

import (
	"math"
	"slices"
	"strconv"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// shape is one solid of an item.
type shape struct {
	body
	box     span
	leg     int // straight stretch it runs along; -1 for what stands out to one side
	opening int // which piece of its part it is with the nuts open, from the pump
}

func shapeOf(b body, leg, opening int) shape { return shape{b, b.span(), leg, opening} }

// item is a part (at 2i) or the pipe after it (at 2i+1), with its envelope.
type item struct {
	name, path string
	at         int
	direct     bool // no pipe between this part and the one before
	exit       bool // it passes through the wall of the hole
	first      bool // it stands on the pump's port
	shapes     []shape
}

// items gathers the envelope of the chain. Of a pipe only what shows between
// the hub faces counts.
func (v *verifier) gather() {
	last := len(v.in.Parts) - 1
	for i := range v.in.Parts {
		p, s, j := &v.in.Parts[i], &v.stands[i], &v.joints[i]
		bulkhead := p.Kind == layout.Bulkhead
		if j.piece != nil && j.gap > grain {
			b := cylinder(s.inFace.at(s.in, -j.gap), s.inFace, float64(j.piece.Pipe.OD)/2)
			v.items = append(v.items, item{
				name: j.piece.Mark, path: v.joinPath(i), at: 2*i - 1, exit: i == last && bulkhead, first: i == 0,
				shapes: []shape{shapeOf(b, s.leg, 0)},
			})
		}
		it := item{name: v.mark(i), path: v.partPath(i), at: 2 * i, direct: j.piece == nil, exit: bulkhead, first: i == 0 && j.piece == nil}
		if p.In.Hub.Length <= 0 || !bulkhead && p.Out.Hub.Length <= 0 {
			v.holds(CheckEnvelope, it.path, false, trace.Str("part", it.name))
		} else {
			it.shapes = v.envelope(p, s)
			v.atMost(CheckEnvelope, it.path, drawn(v.a.Places[i].Solids, it.shapes), 0, trace.Str("part", it.name))
			if p.Kind == layout.Hose {
				v.held(i)
			}
		}
		v.items = append(v.items, it)
	}
	if t := v.a.Tail; t != nil && float64(t.FaceGap) > grain {
		at, dir, _ := v.end()
		b := cylinder(v.stands[last].outFace, at.at(dir, v.hole.minus(at).along(v.axis)), float64(t.Pipe.OD)/2)
		v.items = append(v.items, item{
			name: t.Mark, path: v.partPath(last), at: 2*last + 1, exit: true, shapes: []shape{shapeOf(b, v.last, 0)},
		})
	}
}

// drawn gives how far the solids stated lie from the envelope's: each must be
// one of them.
func drawn(stated []layout.Solid, own []shape) (off float64) {
	if len(stated) != len(own) {
		return math.Inf(1)
	}
	for i := range stated {
		b, nearest := round(stated[i].Cylinder), math.Inf(1)
		for k := range own {
			if own[k].leg == stated[i].Leg && own[k].opening == stated[i].Opening {
				nearest = min(nearest, b.differs(&own[k].body))
			}
		}
		off = max(off, nearest)
	}
	return off
}

// envelope gives the solids that a part lies in.
func (v *verifier) envelope(p *layout.Laid, s *stand) []shape {
	widest := float64(max(p.In.Hub.Length, p.Out.Hub.Length, p.Body.Diameter.Length)) / 2
	if p.Kind == layout.Hose {
		return hoseShapes(p, s)
	}
	if turn := turnOf(&p.Part); turn != 0 {
		// Both legs go on past the centre to where a mitre would end.
		past := widest * math.Tan(turn/2)
		out := leg(&p.In, s.centre, s.in.times(-1), past, widest, s.leg)
		return append(out, leg(&p.Out, s.centre, s.out, past, widest, s.leg+1)...)
	}
	return append(straight(p, s, widest), cover(p, s, widest)...)
}

// leg draws one leg of an elbow from past its centre out to its end: as thick
// as the hub, a spigot as thick as it is.
func leg(e *layout.End, centre, dir vec, past, r float64, n int) (out []shape) {
	end := tip(e)
	if l := float64(e.Depth.Length); e.Kind == layout.Spigot && l > 0 {
		out = append(out, shapeOf(cylinder(centre.at(dir, end-l), centre.at(dir, end), float64(e.Hub.Length)/2), n, 0))
		end -= l
	}
	return append(out, shapeOf(cylinder(centre.at(dir, -past), centre.at(dir, max(end, past)), r), n, 0))
}

// straight cuts a part without a turn where its thickness changes and where it
// opens.
func straight(p *layout.Laid, s *stand, widest float64) (out []shape) {
	begin, end := -tip(&p.In), tip(&p.Out)
	if p.Kind == layout.Bulkhead {
		end = 0 // the rest is in the wall
	}
	half, middle := float64(p.Body.Length.Length)/2, float64(p.Body.Offset)
	cuts := []float64{begin, end}
	if half > 0 {
		cuts = append(cuts, middle-half, middle+half)
	}
	for _, o := range p.Splits {
		cuts = append(cuts, float64(o.Offset))
	}
	slices.Sort(cuts)
	for k := 1; k < len(cuts); k++ {
		a, b := max(cuts[k-1], begin), min(cuts[k], end)
		if !(b-a > 1e-7) {
			continue
		}
		mid, r, opening := (a+b)/2, widest, 0
		if half > 0 && mid < middle-half {
			r = float64(p.In.Hub.Length) / 2
		}
		if half > 0 && mid > middle+half {
			r = float64(p.Out.Hub.Length) / 2
		}
		for _, o := range p.Splits {
			if float64(o.Offset) < mid {
				opening++
			}
		}
		out = append(out, shapeOf(cylinder(s.centre.at(s.in, a), s.centre.at(s.in, b), r), s.leg, opening))
	}
	return out
}

// cover draws what stands out to one side of a part.
func cover(p *layout.Laid, s *stand, widest float64) []shape {
	reach := float64(p.Body.Reach.Length)
	if !(reach > 0) {
		return nil
	}
	opening := 0
	for _, o := range p.Splits {
		if o.Offset < 0 {
			opening++
		}
	}
	r := max(float64(p.Body.Width.Length)/2, widest/2)
	return []shape{shapeOf(cylinder(s.centre, s.centre.at(s.side, reach), r), -1, opening)}
}

// mark gives a part's mark, or its place in the chain where it has none.
func (v *verifier) mark(i int) string {
	switch {
	case i < 0:
		return "pump"
	case v.in.Parts[i].Mark != "":
		return v.in.Parts[i].Mark
	}
	return strconv.Itoa(i + 1)
}

func (v *verifier) partPath(i int) string { return v.in.Path + "/parts/" + strconv.Itoa(i) }

// joinPath is the path of the joint before part i.
func (v *verifier) joinPath(i int) string {
	if i == 0 {
		return v.in.Path
	}
	return v.partPath(i - 1)
}
