package layout

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// water tells what stands in the pipe with the pump off, what comes down when
// the chain is opened at a split (its index; none where there is none), and
// what runs back at a stop with nothing to hold it. With the valve on the
// pump's side of the union, opening the union lets down all that is beyond it:
// the pipe in the vault and the runs, and through them, as through a siphon,
// the boxes at the top down to their inlets. With the valve beyond the union
// only the pipe between them empties, and the rest stands. Without a valve all
// of it has run back through the pump at the stop.
//
// Volumes are bore area times the length of the axis; a valve's or union's
// body is taken as pipe of its size.
func (l *laying) water(k int) {
	w := &l.a.Water
	w.RunKnown = l.in.Beyond.Volume.Given
	run, boxes := l.beyondWall(), float64(l.in.Beyond.Boxes)
	valve, reversed := -1, false
	for i := range l.in.Parts {
		if l.in.Parts[i].Kind.IsCheck() {
			reversed = reversed || l.in.Parts[i].Reverse
			if valve < 0 {
				valve = i
			}
		}
	}
	switch {
	case reversed:
		w.Order, w.Known = Reversed, true
		return
	case valve < 0:
		inside, known := l.volumeBeyond(0, -float64(l.in.Parts[0].In.TakeOff.Length))
		if w.Order, w.Known = NoValve, known; known {
			w.Returns, w.Boxes = unit.Volume(inside+run+boxes), unit.Volume(boxes)
			l.tellReturns(k)
		}
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
			w.Order, w.Released, w.Boxes = ValveFirst, unit.Volume(beyond+run+boxes), unit.Volume(boxes)
		} else {
			w.Order, w.Released = UnionFirst, w.Between
		}
	}
	if !w.Known {
		w.Standing, w.Released, w.Between, w.Boxes = 0, 0, 0, 0
		return
	}
	l.tellWater(valve, k)
}

// beyondWall gives the water in the runs beyond the vault's wall. Of the run
// that starts at the pump that is all but the chain's own length:
//
//	V = first run x (1 - chain's axis / its length), at least 0, + other runs
func (l *laying) beyondWall() float64 {
	b := l.in.Beyond
	v := float64(b.Volume.Value)
	if b.First.Length > 0 {
		v += float64(b.First.Volume) * math.Max(0, 1-l.axis()/float64(b.First.Length))
	}
	return v
}

// axis gives the length of the chain's axis from the port to the wall.
func (l *laying) axis() float64 {
	sum := 0.0
	for i := range l.joints {
		sum += l.joints[i].span
	}
	if t := l.a.Tail; t != nil {
		sum += float64(l.in.Parts[len(l.in.Parts)-1].Out.TakeOff.Length + t.StopToStop)
	}
	return math.Max(0, sum)
}

func volume(name string, v unit.Volume) trace.Arg { return trace.Num(name, v, unit.KindWater) }

// counted gives the arguments that tell what comes down: all of it by name, with
// the boxes' share, or the vault's alone where no more is known.
func (l *laying) counted(name string, sum unit.Volume) []trace.Arg {
	w := &l.a.Water
	switch {
	case !w.RunKnown:
		return []trace.Arg{volume("inside", sum)}
	case w.Boxes > 0:
		return []trace.Arg{volume("boxes", w.Boxes), volume(name, sum)}
	}
	return []trace.Arg{volume(name, sum)}
}

// tellReturns warns of what runs back where no valve holds it.
func (l *laying) tellReturns(k int) {
	w := &l.a.Water
	if w.Returns <= 0 {
		return
	}
	args := l.counted("returned", w.Returns)
	if k < len(l.splits) {
		args = append(args, trace.Str("union", l.mark(l.splits[k].part)))
	}
	l.note(trace.Caution, l.in.Path, FindReturns, args...)
}

func (l *laying) tellWater(valve, k int) {
	w := &l.a.Water
	name := trace.Str("valve", l.mark(valve))
	if w.Order == ValveFirst {
		s := l.splits[k]
		l.note(trace.Caution, l.partPath(s.part), FindReleased,
			append(l.counted("released", w.Released), trace.Str("union", l.mark(s.part)), name)...)
	}
	sev, code := trace.Info, FindStands
	if l.in.Beyond.Frost {
		sev, code = trace.Caution, FindFreezes
	}
	args := []trace.Arg{name, volume("standing", w.Standing)}
	if !w.RunKnown {
		args = append(args, volume("inside", w.Standing))
	}
	if w.Order != NoUnion && l.splits[k].part != valve { // else they are one
		args = append(args, volume("between", w.Between))
	}
	l.note(sev, l.partPath(valve), code, args...)
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
