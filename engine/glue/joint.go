package glue

import (
	"cmp"
	"strconv"

	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
)

// work is the work on one chain.
type work struct {
	in       Input
	plan     Plan
	findings []trace.Finding
	faults   []trace.Fault

	made  []bool // by joint number less 1
	nuts  []nut
	last  int // sub-assembly at the wall
	fixed []bool
	place place
}

func (w *work) mark(i int) string {
	switch {
	case i < 0:
		return "pump"
	case i >= len(w.in.Parts):
		return "wall"
	case w.in.Parts[i].Mark != "":
		return w.in.Parts[i].Mark
	}
	return strconv.Itoa(i + 1)
}

func (w *work) path(i int) string {
	if i < 0 {
		return w.in.Path
	}
	return w.in.Path + "/parts/" + strconv.Itoa(i)
}

func (w *work) fault(path, code string, args ...trace.Arg) {
	w.faults = append(w.faults, trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path})
}

func (w *work) note(sev trace.Severity, path, code string, args ...trace.Arg) {
	w.findings = append(w.findings, trace.Finding{Message: trace.Message{Code: code, Args: args}, Path: path, Severity: sev})
}

// joints walks the chain from the pump and lists every joint once. Sub-assemblies
// are counted as it goes: a union face and a closing piece begin a new one.
func (w *work) joints() bool {
	pieces := map[int]*layout.Piece{}
	for i := range w.in.Assembly.Pieces {
		pieces[w.in.Assembly.Pieces[i].After] = &w.in.Assembly.Pieces[i]
	}
	sub, ok := 0, true
	before := End{Part: Pump, Mark: "pump", Out: true}
	for i := range w.in.Parts {
		p := &w.in.Parts[i]
		into := End{Part: i, Mark: w.mark(i)}
		if piece := pieces[i-1]; piece != nil && p.In.Kind == layout.Socket {
			next := sub
			if piece.Closing && !piece.Made {
				next++
			}
			w.piped(before, 0, piece, sub, next)
			w.piped(into, 1, piece, sub, next)
			sub = next
		} else if !w.direct(before, into, sub) {
			w.fault(w.path(i), FaultEnds, trace.Str("from", before.Mark), trace.Str("to", into.Mark))
			ok = false
		}
		for q := range p.Splits {
			w.add(Joint{Kind: Face, Size: p.Size, Ends: []End{
				{Part: i, Mark: w.mark(i), Out: true, Opening: q}, {Part: i, Mark: w.mark(i), Opening: q + 1},
			}, sub: [2]int{sub, sub + 1}})
			w.nut(i, q)
			sub++
		}
		before = End{Part: i, Mark: w.mark(i), Out: true, Opening: len(p.Splits)}
	}
	w.last = sub
	if t := w.in.Assembly.Tail; t != nil {
		w.piped(before, 0, t, sub, sub)
	} else if n := len(w.in.Parts) - 1; w.in.Parts[n].Kind == layout.Bulkhead {
		w.add(Joint{Kind: Seal, Size: w.in.Parts[n].Size, Ends: []End{before, {Part: Wall, Mark: "wall"}}, Made: w.ready(n), sub: [2]int{sub, sub}})
	}
	w.made = make([]bool, len(w.plan.Joints))
	for k := range w.plan.Joints {
		w.made[k] = w.plan.Joints[k].Made
	}
	w.fixed = make([]bool, sub+1)
	w.fixed[sub] = true
	w.whereabouts()
	return ok
}

// ready tells that the joint behind a part is made already.
func (w *work) ready(part int) bool {
	if part < 0 {
		return w.in.PortMade
	}
	return w.in.Parts[part].Next.Made
}

// stays tells that a part has no joint that is still to be made.
func (w *work) stays(part int) bool { return w.ready(part-1) && w.ready(part) }

func (w *work) add(j Joint) {
	j.Number = len(w.plan.Joints) + 1
	for _, e := range j.Ends {
		if j.Kind != Cement || e.Part < 0 {
			continue
		}
		if p := &w.in.Parts[e.Part]; isValve(p.Kind) && e.Opening == body(p) {
			j.Valve = true
			j.Check = j.Check || p.Kind.IsCheck()
		}
	}
	w.plan.Joints = append(w.plan.Joints, j)
}

// piped adds the joint between a socket and one end of a piece.
func (w *work) piped(e End, end int, p *layout.Piece, pumpSide, wallSide int) {
	w.add(Joint{
		Kind: Cement, Size: p.Pipe.Size, Ends: []End{e}, Piece: p.Mark, Insertion: p.Ends[end],
		Closing: p.Closing && !p.Made, Made: p.Made, sub: [2]int{pumpSide, wallSide},
	})
}

// direct adds the joint between two parts that meet without pipe. What the
// pump's port is follows from what goes into it.
func (w *work) direct(a, b End, sub int) bool {
	in := w.in.Parts[b.Part].In
	out := layout.End{}
	switch {
	case a.Part >= 0:
		out = w.in.Parts[a.Part].Out
	case in.Kind == layout.Spigot:
		out.Kind = layout.Socket
	case in.Kind == layout.Socket:
		out.Kind = layout.Spigot
	case in.Kind == layout.MaleThread:
		out = layout.End{Kind: layout.FemaleThread, Thread: in.Thread}
	case in.Kind == layout.FemaleThread:
		out = layout.End{Kind: layout.MaleThread, Thread: in.Thread}
	}
	size := cmp.Or(in.Size, w.in.Parts[b.Part].Size)
	j := Joint{Size: size, Ends: []End{a, b}, Made: w.ready(a.Part), sub: [2]int{sub, sub}}
	switch {
	case out.Kind == layout.Socket && in.Kind == layout.Spigot, out.Kind == layout.Spigot && in.Kind == layout.Socket:
		j.Kind = Cement
	case out.Kind == layout.FemaleThread && in.Kind == layout.MaleThread, out.Kind == layout.MaleThread && in.Kind == layout.FemaleThread:
		j.Kind = Thread
		j.Thread = w.threading(a, b, out, in)
	default:
		return false
	}
	w.add(j)
	return true
}

// threading tells tape from ring: a joint with a parallel thread on either side
// that is no taper thread in a taper thread seals on its ring.
func (w *work) threading(a, b End, out, in layout.End) *Threading {
	t := &Threading{Family: in.Thread, Inward: in.Kind == layout.MaleThread}
	if out.Thread == layout.BSPP || in.Thread == layout.BSPP {
		t.Family = layout.BSPP
	}
	t.Tape = t.Family == layout.NPT || t.Family == layout.BSPT
	t.Clockwise = t.Tape
	if t.Tape {
		t.Wraps = catalog.Span[float64]{Low: 3, High: 4, Source: practice}
		if w.in.Book != nil {
			t.Published = w.in.Book.TapeWraps()
		}
	}
	if t.Tape && w.in.Book != nil {
		t.Turns = w.in.Book.ThreadTurns()
	}
	if t.Family == layout.NoThread {
		w.note(trace.Caution, w.path(b.Part), FindThreadUnknown, trace.Str("from", a.Mark), trace.Str("to", b.Mark))
	}
	for _, e := range []End{a, b} {
		if e.Part < 0 {
			continue
		}
		if turn, _ := w.in.Parts[e.Part].Turn(); turn != 0 {
			w.note(trace.Caution, w.path(e.Part), FindRollThread, trace.Str("part", e.Mark))
		}
	}
	return t
}

func isValve(k layout.Kind) bool {
	return k.IsCheck() || k == layout.BallValve || k == layout.GateValve
}

// body gives the opening in which a valve's own body lies: the one that holds
// its centre.
func body(p *layout.Laid) int {
	n := 0
	for _, s := range p.Splits {
		if s.Offset < 0 {
			n++
		}
	}
	return n
}

// nut is a union nut: it must be on the pipe before the tail it holds is joined.
type nut struct{ part, opening int }

// nut puts the nut of face q on the half that is no valve's body, on the
// pump's half of a plain union. The offsets' order along the flow decides.
func (w *work) nut(part, q int) {
	p := &w.in.Parts[part]
	opening, side := q, "pump"
	if isValve(p.Kind) && q >= body(p) {
		opening, side = q+1, "wall"
	}
	sure := isValve(p.Kind) && len(p.Splits) > 1
	w.nuts = append(w.nuts, nut{part: part, opening: opening})
	if !sure {
		w.plan.Assumptions = append(w.plan.Assumptions, trace.Assumption{
			Message: trace.Message{Code: AssumeNut, Args: []trace.Arg{trace.Str("part", w.mark(part)), trace.Str("side", side)}},
			Path:    w.path(part), Source: practice,
		})
	}
}
