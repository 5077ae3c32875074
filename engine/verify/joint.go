package verify

import (
	"math"
	"slices"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// link is what lies before a part.
type link struct {
	piece  *layout.Piece // nil where a spigot or a thread goes straight in
	length float64       // centre to centre
	stops  float64       // stop to stop, of a piece
	asCut  float64       // the same with the piece as cut and pushed in to its marks
	gap    float64       // between the hub faces; 0 without a piece
}

// pieceBefore finds the one piece before part i.
func (v *verifier) pieceBefore(i int) (p *layout.Piece, n int) {
	for k := range v.a.Pieces {
		if v.a.Pieces[k].After == i-1 {
			p, n = &v.a.Pieces[k], n+1
		}
	}
	return p, n
}

// join works out the links between the parts; ok is false where there is no
// chain to speak of.
func (v *verifier) join() (ok bool) {
	pieces := 0
	for i := range v.in.Parts {
		out, size, next := v.in.Pump.Outlet, v.in.Pump.Outlet.Size, v.in.Start
		if i > 0 {
			q := &v.in.Parts[i-1]
			out, size, next = q.Out, sizeOf(&q.Out, q.Size), q.Next
		}
		p := &v.in.Parts[i]
		fromTo := []trace.Arg{trace.Str("from", v.mark(i-1)), trace.Str("to", v.mark(i))}
		path := v.joinPath(i)
		fits := mate(&out, &p.In)
		v.holds(CheckJoint, path, fits && size == sizeOf(&p.In, p.Size) && threadsSeal(&out, &p.In), fromTo...)
		if !fits {
			return false
		}
		takeOffs := float64(out.TakeOff.Length + p.In.TakeOff.Length)
		var j link
		if out.Kind == layout.Socket && p.In.Kind == layout.Socket {
			piece, n := v.pieceBefore(i)
			if !v.holds(CheckWhole, path, n == 1, trace.Str("what", "pieces")) {
				return false
			}
			pieces++
			j = v.onePiece(i, piece, &out, &p.In, next)
			j.length = takeOffs + j.stops
			v.given(i, next, &j, fromTo)
		} else {
			j.length = takeOffs + stays(&out, &p.In) + stays(&p.In, &out) - screwed(&out) - screwed(&p.In)
		}
		v.joints = append(v.joints, j)
	}
	return v.holds(CheckWhole, v.in.Path, pieces == len(v.a.Pieces), trace.Str("what", "pieces"))
}

func sizeOf(e *layout.End, own string) string {
	if e.Size != "" {
		return e.Size
	}
	return own
}

// mate tells that two ends go together.
func mate(a, b *layout.End) bool {
	pair := func(x, y layout.EndKind) bool {
		return a.Kind == x && b.Kind == y || a.Kind == y && b.Kind == x
	}
	return pair(layout.Socket, layout.Socket) || pair(layout.Socket, layout.Spigot) || pair(layout.MaleThread, layout.FemaleThread)
}

// threadsSeal tells that two ends have threads of one family, or none.
func threadsSeal(a, b *layout.End) bool {
	return a.Kind == layout.Socket || a.Kind == layout.Spigot || a.Thread == b.Thread
}

// stays gives how far a spigot stays short of the stop of a deeper socket.
func stays(socket, spigot *layout.End) float64 {
	if socket.Kind != layout.Socket || spigot.Kind != layout.Spigot || spigot.Depth.Length <= 0 {
		return 0
	}
	return max(0, float64(socket.Depth.Length-spigot.Depth.Length))
}

// screwed gives what of a male thread disappears in the port.
func screwed(e *layout.End) float64 {
	if e.Kind != layout.MaleThread {
		return 0
	}
	return float64(e.Engage.Length)
}

// onePiece holds one piece against the two sockets that it goes into.
func (v *verifier) onePiece(i int, p *layout.Piece, out, in *layout.End, next layout.Join) link {
	gap := v.lim.makeUp
	if next.Closing {
		gap = v.lim.closing
	}
	depths := [2]float64{float64(out.Depth.Length), float64(in.Depth.Length)}
	stops, cut, path := float64(p.StopToStop), float64(p.Cut), v.joinPath(i)
	piece, step := trace.Str("piece", p.Mark), v.lim.step

	// The rest of rounding goes into the gaps: at most half a step, or more where
	// the next step up would be longer than from stop to stop.
	by := step / 2
	if cut+step > stops+sharp {
		by = max(by, step-2*gap)
	}
	v.equals(CheckCut, path, cut+2*gap, stops, by, piece, trace.Str("from", v.mark(i-1)), trace.Str("to", v.mark(i)))
	v.atMost(CheckCut, path, cut, stops, piece, trace.Str("from", v.mark(i-1)), trace.Str("to", v.mark(i)))
	steps := math.Round(cut/step) * step
	v.equals(CheckStep, path, cut, steps, 0, piece)
	exact := stops - 2*gap
	least := depths[0] + depths[1] - 2*gap
	v.atLeast(CheckLeast, path, exact, least, piece)
	v.atMost(CheckLeast, path, max(
		math.Abs(exact-float64(p.Exact)), math.Abs(cut-exact-float64(p.Residual)),
		math.Abs(least-float64(p.Least)), math.Abs(exact-least-float64(p.FaceGap)),
	), 0, piece)
	asCut := cut
	for k, to := range [2]int{i - 1, i} {
		e := &p.Ends[k]
		v.equals(CheckMark, path, float64(e.Mark), depths[k]-gap, 0, piece, trace.Str("to", v.mark(to)))
		v.atMost(CheckMark, path, max(math.Abs(float64(e.Socket)-depths[k]), math.Abs(float64(e.Gap)-gap)), 0, piece, trace.Str("to", v.mark(to)))
		asCut += depths[k] - float64(e.Mark)
	}
	return link{piece: p, stops: stops, asCut: asCut, gap: exact - least}
}

// given holds a joint against the distance typed for it.
func (v *verifier) given(i int, next layout.Join, j *link, fromTo []trace.Arg) {
	d, path := float64(next.Distance), v.joinPath(i)
	found := j.gap
	switch {
	case next.Closing && next.Measured.Given:
		d = float64(next.Measured.Value)
	case next.Closing:
		return // as long as it takes
	case next.By == layout.Touching:
		d = 0
	case next.By == layout.Centres:
		found = j.gap + v.touching(i)
	case next.By == layout.Faces:
	case next.By == layout.Stops:
		found = j.stops
	case next.By == layout.PipeLength:
		found = j.stops - 2*v.lim.makeUp
	default:
		found = math.NaN()
	}
	v.equals(CheckGiven, path, found, d, 0, fromTo...)
}

// touching gives the distance of the centres before and at part i with their
// faces touching.
func (v *verifier) touching(i int) float64 {
	before := v.in.Pump.Outlet
	if i > 0 {
		before = v.in.Parts[i-1].Out
	}
	return tip(&before) + tip(&v.in.Parts[i].In)
}

// pieces holds the place of each piece against the parts at its ends.
func (v *verifier) pieces() {
	for i := range v.joints {
		j := &v.joints[i]
		if j.piece == nil {
			continue
		}
		s, p := &v.stands[i], j.piece
		gap := (j.stops - float64(p.Exact)) / 2
		off := max(
			from(p.End).toward(s.inlet.at(s.in, -gap)), from(p.Start).toward(s.inlet.at(s.in, gap-j.stops)),
			from(p.Dir).toward(s.in),
		)
		if p.From != v.mark(i-1) || p.To != v.mark(i) || !slices.Contains(v.in.Pipes, p.Pipe) {
			off = math.Inf(1)
		}
		v.atMost(CheckPiece, v.joinPath(i), off, 0, trace.Str("piece", p.Mark))
	}
}

// sums adds up every straight stretch from its pieces as cut, and holds that
// against the places stated of the parts at its ends.
func (v *verifier) sums() {
	start, begin := -1, from(v.a.Port)
	sum, pieces := 0.0, 0
	for i := range v.joints {
		j := &v.joints[i]
		sum += j.length + j.asCut - j.stops
		if j.piece != nil {
			pieces++
		}
		if turnOf(&v.in.Parts[i].Part) == 0 && i < len(v.joints)-1 {
			continue
		}
		centre := from(v.a.Places[i].Centre)
		v.equals(CheckSum, v.partPath(i), sum, begin.toward(centre), float64(pieces)*v.rounding(), trace.Str("from", v.mark(start)), trace.Str("to", v.mark(i)))
		start, begin, sum, pieces = i, centre, 0, 0
	}
}

// rounding is what one piece may be off by because it is cut in whole steps.
func (v *verifier) rounding() float64 {
	if 2*min(v.lim.makeUp, v.lim.closing) < v.lim.step/2 {
		return v.lim.step
	}
	return v.lim.step / 2
}
