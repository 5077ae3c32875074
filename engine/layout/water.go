package layout

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// water tells what stands in the pipe with the pump off and what comes down
// when the chain is opened at a split (its index; none where there is none).
// With the valve on the pump's side of the union, opening the union lets the
// whole column beyond it into the vault. With the valve beyond the union only
// the pipe between them empties, and the column stands. Without a valve it has
// run back through the pump at the stop.
//
// Volumes are bore area times the length of the axis; a valve's or union's
// body is taken as pipe of its size.
func (l *laying) water(k int) {
	valve := -1
	for i := range l.in.Parts {
		if l.in.Parts[i].Kind.IsCheck() {
			valve = i
			break
		}
	}
	w := &l.a.Water
	w.RunKnown = l.in.Beyond.Volume.Given
	run := float64(l.in.Beyond.Volume.Value)
	if valve < 0 {
		w.Order, w.Known = NoValve, true
		return
	}
	above, known := l.volumeBeyond(valve, 0)
	w.Known = known
	w.Standing = unit.Volume(above + run)
	switch {
	case k >= len(l.splits):
		w.Order = NoUnion
	default:
		s := l.splits[k]
		beyond, known := l.volumeBeyond(s.part, s.offset)
		w.Known = w.Known && known
		w.Between = unit.Volume(math.Abs(above - beyond))
		if s.part > valve || (s.part == valve && s.offset > 0) {
			w.Order, w.Released = ValveFirst, unit.Volume(beyond+run)
		} else {
			w.Order, w.Released = UnionFirst, w.Between
		}
	}
	if !w.Known {
		w.Standing, w.Released, w.Between = 0, 0, 0
		return
	}
	l.tellWater(valve, k)
}

func (l *laying) tellWater(valve, k int) {
	w := &l.a.Water
	volume := func(name string, v unit.Volume) trace.Arg { return trace.Num(name, v, unit.KindWater) }
	runKnown := trace.Str("runKnown", map[bool]string{true: "yes", false: "no"}[w.RunKnown])
	order := map[Order]string{ValveFirst: "valve first", UnionFirst: "union first", NoUnion: "no union"}[w.Order]
	if w.Order == ValveFirst {
		s := l.splits[k]
		l.note(trace.Caution, l.partPath(s.part), FindReleased,
			trace.Str("union", l.mark(s.part)), trace.Str("valve", l.mark(valve)), volume("released", w.Released), runKnown)
	}
	sev, code := trace.Info, FindStands
	if l.in.Beyond.Frost {
		sev, code = trace.Caution, FindFreezes
	}
	l.note(sev, l.partPath(valve), code, trace.Str("valve", l.mark(valve)), trace.Str("order", order),
		volume("standing", w.Standing), volume("between", w.Between), runKnown)
}

// volumeBeyond gives the water from a point of part i (offset from its centre,
// along the flow) to the wall; known is false where a bore is missing.
func (l *laying) volumeBeyond(i int, offset float64) (v float64, known bool) {
	known = true
	add := func(size string, length float64) {
		pipe, ok := l.in.pipeOf(size)
		if length != 0 && (!ok || pipe.Bore <= 0) {
			known = false
		}
		v += math.Pi / 4 * float64(pipe.Bore) * float64(pipe.Bore) * length
	}
	p := &l.in.Parts[i]
	if offset < 0 {
		add(p.inSize(), -offset)
		offset = 0
	}
	add(p.outSize(), float64(p.Out.TakeOff.Length)-offset)
	for k := i + 1; k < len(l.in.Parts); k++ {
		before, q, j := &l.in.Parts[k-1], &l.in.Parts[k], &l.joints[k]
		// The axis from centre to centre less both take-offs: the pipe with its
		// gaps, or nothing (threads count back what is screwed in).
		add(before.outSize(), j.span-float64(before.Out.TakeOff.Length+q.In.TakeOff.Length))
		add(q.inSize(), float64(q.In.TakeOff.Length))
		add(q.outSize(), float64(q.Out.TakeOff.Length))
	}
	if t := l.a.Tail; t != nil {
		add(t.Pipe.Size, float64(t.StopToStop))
	}
	return v, known
}
