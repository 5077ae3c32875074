package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// column is the water from a place in the chain up to the wall, in m3.
type column struct {
	v     float64
	known bool // every bore in it is known
}

// filled adds pipe of a size to a column.
func (v *verifier) filled(c column, size string, length float64) column {
	if length == 0 {
		return c
	}
	bore := 0.0
	for _, p := range v.in.Pipes {
		if p.Size == size {
			bore = float64(p.Bore)
			break
		}
	}
	return column{c.v + bore*bore*length*math.Pi/4, c.known && bore > 0}
}

// columns gives the water from the centre of each part up to the wall, added up
// from there.
func (v *verifier) columns() []column {
	n := len(v.in.Parts)
	out := make([]column, n)
	for i := n - 1; i >= 0; i-- {
		p := &v.in.Parts[i]
		c := column{known: true}
		if t := v.a.Tail; i == n-1 && t != nil {
			at, _, _ := v.end()
			c = v.filled(c, t.Pipe.Size, v.hole.minus(at).along(v.axis))
		}
		if i < n-1 {
			q := &v.in.Parts[i+1]
			c = v.filled(out[i+1], sizeOf(&q.In, q.Size), float64(q.In.TakeOff.Length))
			// What lies between the two ends: the pipe, or less than nothing
			// where one is screwed or pushed into the other.
			c = v.filled(c, sizeOf(&p.Out, p.Size), v.joints[i+1].length-float64(p.Out.TakeOff.Length)-float64(q.In.TakeOff.Length))
		}
		out[i] = v.filled(c, sizeOf(&p.Out, p.Size), float64(p.Out.TakeOff.Length))
	}
	return out
}

// beyond gives the water beyond a face of a part.
func (v *verifier) beyond(all []column, part int, offset float64) column {
	p := &v.in.Parts[part]
	size := sizeOf(&p.Out, p.Size)
	if offset < 0 {
		size = sizeOf(&p.In, p.Size)
	}
	return v.filled(all[part], size, -offset)
}

// outside gives the water in the runs beyond the wall: of the first one what the
// chain has not taken up.
func (v *verifier) outside() float64 {
	b := &v.in.Beyond
	sum := float64(b.Volume.Value)
	if b.First.Length > 0 {
		chain := 0.0
		for i := range v.joints {
			chain += v.joints[i].length
		}
		if v.a.Tail != nil {
			last := &v.in.Parts[len(v.in.Parts)-1]
			at, _, _ := v.end()
			chain += float64(last.Out.TakeOff.Length) + v.hole.minus(at).along(v.axis)
		}
		left := min(1, max(0, chain)/float64(b.First.Length))
		sum += float64(b.First.Volume) - float64(b.First.Volume)*left
	}
	return sum
}

// water holds what is told of the water in the pipe. Where the part that opens
// has two nuts, the one that agrees counts.
func (v *verifier) water() {
	stated := &v.a.Water
	var nuts []layout.Split
	at := -1
	for i := range v.in.Parts {
		p := &v.in.Parts[i]
		if len(p.Splits) > 0 && (v.a.LiftOut.Union == "" && at < 0 || v.mark(i) == v.a.LiftOut.Union) {
			at, nuts = i, p.Splits
		}
	}
	want := v.opened(at, layout.Split{}, len(nuts) > 0)
	for _, s := range nuts {
		if want = v.opened(at, s, true); want.Order == stated.Order && math.Abs(float64(want.Released-stated.Released)) < grain {
			break
		}
	}
	path := v.in.Path
	v.holds(CheckOrder, path, want.Order == stated.Order && want.Known == stated.Known && want.RunKnown == stated.RunKnown)
	for _, x := range [...]struct {
		what        string
		found, want unit.Volume
	}{
		{"standing", stated.Standing, want.Standing},
		{"released", stated.Released, want.Released},
		{"returns", stated.Returns, want.Returns},
		{"boxes", stated.Boxes, want.Boxes},
		{"between", stated.Between, want.Between},
	} {
		v.add(CheckWater, path, float64(x.found), float64(x.want), -math.Abs(float64(x.found-x.want)), unit.KindWater, []trace.Arg{trace.Str("what", x.what)})
	}
}

// opened works out the water for one nut.
func (v *verifier) opened(part int, nut layout.Split, opens bool) layout.Water {
	w := layout.Water{RunKnown: v.in.Beyond.Volume.Given}
	valve := -1
	for i := range v.in.Parts {
		if !isCheck(v.in.Parts[i].Kind) {
			continue
		}
		if v.in.Parts[i].Reverse {
			w.Order, w.Known = layout.Reversed, true
			return w
		}
		if valve < 0 {
			valve = i
		}
	}
	all, run, boxes := v.columns(), v.outside(), float64(v.in.Beyond.Boxes)
	if valve < 0 {
		c := v.beyond(all, 0, -float64(v.in.Parts[0].In.TakeOff.Length))
		if w.Known = c.known; c.known {
			w.Returns, w.Boxes = unit.Volume(c.v+run+boxes), unit.Volume(boxes)
		}
		w.Order = layout.NoValve
		return w
	}
	held := all[valve]
	w.Order, w.Known, w.Standing = layout.NoUnion, held.known, unit.Volume(held.v+run)
	if opens {
		let := v.beyond(all, part, float64(nut.Offset))
		w.Known = w.Known && let.known
		w.Between = unit.Volume(math.Abs(held.v - let.v))
		if part > valve || part == valve && nut.Offset > 0 {
			w.Order, w.Released, w.Boxes = layout.ValveFirst, unit.Volume(let.v+run+boxes), unit.Volume(boxes)
		} else {
			w.Order, w.Released = layout.UnionFirst, w.Between
		}
	}
	if !w.Known {
		w.Standing, w.Released, w.Between, w.Boxes = 0, 0, 0, 0
	}
	return w
}
