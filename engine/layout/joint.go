package layout

import (
	"math"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// joint is what lies between two parts: a piece of pipe, or nothing where a
// spigot or a thread goes straight into the next part.
type joint struct {
	piped     bool
	pipe      Pipe
	least     float64 // centre to centre with the hub faces touching; of a joint without pipe its fixed length
	span      float64 // centre to centre
	outDepth  float64 // socket towards the pump
	inDepth   float64 // socket towards the wall
	makeUp    float64
	closing   bool       // length worked out from what the others leave
	inPlace   bool       // gap measured in place
	sockets   [2]Measure // what is known of their depths, towards the pump and towards the wall
	glued     int        // sockets with cement in the joint
	noRoom    bool
	worked    bool
	typedSpan bool
	ready     bool // made already
}

func (j *joint) faceGap() float64 { return j.span - j.least }

// stops gives stop to stop, of a joint with a pipe.
func (j *joint) stops() float64 { return j.outDepth + j.faceGap() + j.inDepth }

// join works out the joints before each part from the ends that meet.
func (l *laying) join() {
	l.joints = make([]joint, len(l.in.Parts))
	for i := range l.in.Parts {
		out, size, next := l.in.Pump.Outlet, l.in.Pump.Outlet.Size, l.in.Start
		if i > 0 {
			p := l.in.Parts[i-1]
			out, size, next = p.Out, p.outSize(), p.Next
		}
		l.joints[i] = l.oneJoint(i, out, size, next)
	}
}

func (l *laying) oneJoint(i int, out End, outSize string, next Join) joint {
	part := l.in.Parts[i]
	in, path := part.In, l.joinPath(i)
	from, to := trace.Str("from", l.mark(i-1)), trace.Str("to", l.mark(i))
	if inSize := part.inSize(); inSize != outSize {
		l.fault(path, FaultSize, from, to, trace.Str("fromSize", outSize), trace.Str("toSize", inSize))
	}
	j := joint{sockets: [2]Measure{out.Depth, in.Depth}, ready: next.Made}
	takeOffs := float64(out.TakeOff.Length + in.TakeOff.Length)
	switch {
	case out.Kind == Socket && in.Kind == Socket:
		j.piped, j.glued = true, 2
		j.outDepth, j.inDepth = float64(out.Depth.Length), float64(in.Depth.Length)
		j.least = takeOffs + j.outDepth + j.inDepth
		var ok bool
		if j.pipe, ok = l.in.pipeOf(outSize); !ok {
			l.fault(path, FaultPipe, from, to, trace.Str("size", outSize))
		}
		l.span(&j, next)
		return j
	case out.Kind == Socket && in.Kind == Spigot:
		j.glued, j.least = 1, takeOffs+unseated(out, in)
	case out.Kind == Spigot && in.Kind == Socket:
		j.glued, j.least = 1, takeOffs+unseated(in, out)
	case out.Kind == FemaleThread && in.Kind == MaleThread:
		j.least = takeOffs - float64(in.Engage.Length)
		l.threads(i, out, in)
	case out.Kind == MaleThread && in.Kind == FemaleThread:
		j.least = takeOffs - float64(out.Engage.Length)
		l.threads(i, in, out)
	default:
		l.fault(path, FaultEnds, from, to, trace.Str("fromEnd", out.Kind.String()), trace.Str("toEnd", in.Kind.String()))
		l.broken = true
		return j
	}
	j.span = j.least
	if next.Closing {
		l.fault(path, FaultClosingDirect, from, to)
	}
	if next.Distance != 0 && (next.By != Centres || math.Abs(float64(next.Distance)-j.span) > float64(l.lim.step)/2) {
		l.find(trace.Caution, path, FindFixed, unit.Of(next.Distance, unit.KindTape), tapeOf(j.span), trace.Source{},
			from, to, tape("distance", next.Distance), tape("fixed", unit.Length(j.span)))
	}
	return j
}

// unseated gives how far a spigot's end stays short of the stop because its
// own shoulder meets the socket's face first.
func unseated(socket, spigot End) float64 {
	if spigot.Depth.Length <= 0 {
		return 0
	}
	return math.Max(0, float64(socket.Depth.Length-spigot.Depth.Length))
}

// threads compares the families. A taper male thread in a parallel female one
// is a joint that ISO 7-1 knows (R in Rp), but here the parallel one is an
// ISO 228-1 fastening thread, which seals on a ring and not in the thread.
func (l *laying) threads(i int, female, male End) {
	if female.Thread == male.Thread {
		return
	}
	path := l.joinPath(i)
	args := []trace.Arg{
		trace.Str("from", l.mark(i-1)), trace.Str("to", l.mark(i)),
		trace.Str("fromThread", l.threadOf(i-1)), trace.Str("toThread", l.in.Parts[i].In.Thread.String()),
	}
	if female.Thread == BSPP && male.Thread == BSPT {
		l.note(trace.Caution, path, FindParallel, args...)
		return
	}
	l.fault(path, FaultThread, args...)
}

func (l *laying) threadOf(i int) string {
	if i < 0 {
		return l.in.Pump.Outlet.Thread.String()
	}
	return l.in.Parts[i].Out.Thread.String()
}

// span sets the centre distance of a joint with a pipe. A closing piece starts
// with its hubs touching until its length is worked out.
func (l *laying) span(j *joint, next Join) {
	j.makeUp = float64(l.lim.makeUp)
	if next.Closing {
		j.makeUp = float64(l.lim.closingMakeUp)
	}
	d := float64(next.Distance)
	gap := 0.0
	switch {
	case next.Closing && next.Measured.Given:
		j.inPlace = true
		gap = float64(next.Measured.Value)
	case next.Closing:
		j.closing = true
		j.typedSpan = next.By != Touching
	case next.By == Centres:
		gap = d - j.least
	case next.By == Faces:
		gap = d
	case next.By == Stops:
		gap = d - j.outDepth - j.inDepth
	case next.By == PipeLength:
		gap = d + 2*j.makeUp - j.outDepth - j.inDepth
	}
	j.span = j.least + gap
}
