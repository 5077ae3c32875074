package layout

import (
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// A hose is a piece of flexible pipe as thick as the pipe itself, which goes into
// the sockets at its ends as a spigot does. Between its straight ends it lies in
// an arc of a circle, so that its axes meet at its centre as an elbow's do:
//
//	from the centre to where the bend begins   T = R tan(turn/2)
//	length of the middle line                  in + out - 2 T + R turn
//
// with in and out its take-offs (plane geometry). It is taken to keep that form,
// also where it comes out with the pump: what it gives is not counted on.

// Curve is how a hose lies, and how it may.
type Curve struct {
	Turn     unit.Angle  // by which it bends, 0 up to MostTurn
	Radius   unit.Length // of its middle line in the bend
	Least    Measure     // least radius of its middle line by its maker
	Straight unit.Length // what stays straight at least beyond each socket
	Longest  unit.Length // that there is; 0: any
}

// MostTurn is the largest turn of a hose.
const MostTurn = 135 * unit.Degree

// TakeOff gives how far from the centre the bend begins: R tan(turn/2).
func (c *Curve) TakeOff() unit.Length {
	return c.Radius * unit.Length(math.Tan(float64(c.Turn)/2))
}

// Arc gives the length of the middle line in the bend: R turn.
func (c *Curve) Arc() unit.Length { return c.Radius * unit.Length(c.Turn) }

// HoseEnd makes an end of a hose: leg from the centre to its end, of which in
// goes into the socket; od its outside diameter.
func HoseEnd(leg, in unit.Length, od Measure) End {
	own := trace.Source{Title: "as the hose is cut", Basis: trace.BasisLibrary}
	return End{Kind: Spigot, TakeOff: Measure{Length: leg, Source: own}, Depth: Measure{Length: in, Source: own}, Hub: od}
}

// HoseCut is a hose to cut.
type HoseCut struct {
	Part      int // index in Input.Parts
	Mark      string
	From, To  string // marks of the parts at its ends
	Curve     Curve
	OD        unit.Length
	Size      string
	Sockets   [2]unit.Length // how deep it goes in, towards the pump and towards the wall
	Ends      [2]PipeEnd     // the same as marked on it: it is pushed home
	Straights [2]unit.Length // beyond them, up to where the bend begins
	Exact     unit.Length    // its length along the middle
	Cut       unit.Length    // rounded to the step
	Line      []geom.Vec3    // points of its middle line, from end to end
}

// CutList gives all that is cut for an assembly: its pieces of pipe, and its
// hoses as pieces that stand in no part's place.
func (a *Assembly) CutList() []Piece {
	out := slices.Clone(a.Pieces)
	for i := range a.Hoses {
		h := &a.Hoses[i]
		out = append(out, Piece{
			Mark: h.Mark, Pipe: Pipe{Kind: string(Hose), Size: h.Size, OD: h.OD}, After: NoPart, From: h.From, To: h.To,
			StopToStop: h.Exact, Exact: h.Exact, Cut: h.Cut, Residual: h.Cut - h.Exact, Ends: h.Ends,
		})
	}
	return out
}

// NoPart is what a piece in no part's place comes after.
const NoPart = -2

// lineStep is the turn between two points of a hose's middle line, at most.
const lineStep = 5 * unit.Degree

// hoses works out what to cut, and judges how each hose lies.
func (l *laying) hoses() {
	for i := range l.in.Parts {
		if l.in.Parts[i].Kind == Hose {
			l.oneHose(i)
		}
	}
}

func (l *laying) oneHose(i int) {
	p, pl := &l.in.Parts[i], &l.a.Places[i]
	c, path := p.Curve, l.partPath(i)
	h := HoseCut{
		Part: i, Mark: l.mark(i), From: l.mark(i - 1), To: l.mark(i + 1), Curve: c, OD: p.In.Hub.Length,
		Size: p.inSize(), Sockets: [2]unit.Length{p.In.Depth.Length, p.Out.Depth.Length},
	}
	for k, e := range [2]*End{&p.In, &p.Out} {
		h.Straights[k] = e.TakeOff.Length - e.Depth.Length - c.TakeOff()
		d := e.Depth
		h.Ends[k] = PipeEnd{Socket: d.Length, Mark: d.Length, Sure: d.Sure(), By: d.By(), Source: d.Source}
	}
	h.Exact = p.In.TakeOff.Length + p.Out.TakeOff.Length - 2*c.TakeOff() + c.Arc()
	if h.Cut = h.Exact; l.lim.step > 0 {
		h.Cut = round(h.Exact, l.lim.step)
	}
	h.Line = append(h.Line, pl.Inlet)
	arc := arcOf(&c, pl)
	n := int(math.Ceil(float64(c.Turn/lineStep) - 1e-9))
	for k := range n + 1 {
		at, _ := arc.at(float64(c.Turn) * float64(k) / math.Max(1, float64(n)))
		h.Line = append(h.Line, at)
	}
	h.Line = append(h.Line, pl.Outlet)
	l.a.Hoses = append(l.a.Hoses, h)

	part := trace.Str("part", h.Mark)
	if c.Turn > 0 && c.Radius < c.Least.Length-dust {
		l.find(trace.Danger, path, FindHoseTight, unit.Of(c.Radius, unit.KindTape), unit.Of(c.Least.Length, unit.KindTape), c.Least.Source,
			part, tape("found", c.Radius), tape("limit", c.Least.Length))
	}
	if s := min(h.Straights[0], h.Straights[1]); s < c.Straight-dust {
		l.find(trace.Danger, path, FindHoseStraight, unit.Of(s, unit.KindTape), unit.Of(c.Straight, unit.KindTape), practice,
			part, tape("found", s), tape("limit", c.Straight))
	}
	if c.Longest > 0 && h.Exact > c.Longest+dust {
		l.find(trace.Danger, path, FindHoseLong, unit.Of(h.Exact, unit.KindTape), unit.Of(c.Longest, unit.KindTape), trace.Source{},
			part, tape("found", h.Exact), tape("limit", c.Longest))
	}
	if i == len(l.in.Parts)-1 {
		l.note(trace.Danger, path, FindHoseWall, part)
	}
	args := []trace.Arg{part, tape("cut", h.Cut)}
	if c.Turn > 0 {
		args = append(args, tape("radius", c.Radius), trace.Num("turn", c.Turn, unit.KindAngle))
	}
	l.note(trace.Caution, path, FindHose, args...)
}

// arc is the middle line of a bend.
type arc struct {
	start     geom.Vec3 // where it begins
	flow, out geom.Vec3 // along it there, and from there to the middle of the circle; length 1
	r         float64
}

// arcOf gives the bend of a hose in its place.
func arcOf(c *Curve, pl *Place) arc {
	return arc{
		start: pl.Centre.Sub(pl.InDir.Scale(float64(c.TakeOff()))),
		flow:  pl.InDir, out: pl.Side, r: float64(c.Radius),
	}
}

// at gives the point at an angle into the bend, and the way away from the
// middle of the circle there.
func (a arc) at(t float64) (p, away geom.Vec3) {
	s, c := math.Sincos(t)
	away = a.flow.Scale(s).Sub(a.out.Scale(c))
	return a.start.Add(a.out.Scale(a.r)).Add(away.Scale(a.r)), away
}

// coverStep is the turn that one cylinder of a hose's envelope spans, at most.
const coverStep = 22.5 * unit.Degree

// hoseSolids encloses a hose: a cylinder for what shows of each straight end,
// and for each stretch of the bend one that holds it. A stretch of angle f of a
// tube of radius r lies, with the sagitta h = R (1 - cos(f/2)) of its middle
// line, within r + h/2 of the line half a sagitta outside its chord, and between
// the planes square to that line at (R + r) sin(f/2) on either side of its
// middle: every disc of the tube leans by no more than f/2. The stretches run
// along no leg, so that they are held against all that is not joined.
func hoseSolids(p *Laid, pl Place, leg int) []Solid {
	var out []Solid
	r := float64(max(p.In.Hub.Length, p.Out.Hub.Length)) / 2
	add := func(from, to geom.Vec3, r float64, leg int) {
		if to.Sub(from).Norm() > dust {
			out = append(out, Solid{Cylinder: Cylinder{From: from, To: to, Radius: unit.Length(r)}, Leg: leg})
		}
	}
	c, turn := &p.Curve, float64(p.Curve.Turn)
	along := func(dir geom.Vec3, by unit.Length) geom.Vec3 { return pl.Centre.Add(dir.Scale(float64(by))) }
	if turn == 0 {
		add(along(pl.InDir, p.In.Depth.Length-p.In.TakeOff.Length), along(pl.InDir, p.Out.TakeOff.Length-p.Out.Depth.Length), r, leg)
		return out
	}
	add(along(pl.InDir, p.In.Depth.Length-p.In.TakeOff.Length), along(pl.InDir, -c.TakeOff()), r, leg)
	a := arcOf(c, &pl)
	n := math.Ceil(turn/float64(coverStep) - 1e-9)
	half := turn / n / 2
	sagitta := a.r * (1 - math.Cos(half))
	for k := range int(n) {
		mid, away := a.at(half * float64(2*k+1))
		mid = mid.Sub(away.Scale(sagitta / 2))
		s, co := math.Sincos(half * float64(2*k+1))
		along := a.flow.Scale(co).Add(a.out.Scale(s)).Scale((a.r + r) * math.Sin(half))
		add(mid.Sub(along), mid.Add(along), r+sagitta/2, -1)
	}
	add(along(pl.OutDir, c.TakeOff()), along(pl.OutDir, p.Out.TakeOff.Length-p.Out.Depth.Length), r, leg+1)
	return out
}

// checkHose reports what no hose can be: only then its line can be drawn.
func (l *laying) checkHose(i int) bool {
	p := &l.in.Parts[i]
	if p.Kind != Hose {
		return true
	}
	c, path, ok := &p.Curve, l.partPath(i), true
	if p.In.Kind != Spigot || p.Out.Kind != Spigot {
		l.fault(path, FaultHose, trace.Str("part", l.mark(i)))
		ok = false
	}
	switch {
	case !finite(float64(c.Turn)):
		l.fault(path, FaultFinite, trace.Str("name", "turn"))
		return false
	case c.Turn < 0 || c.Turn > MostTurn+1e-9:
		l.fault(path, FaultRange, trace.Str("name", "turn"), trace.Num("found", c.Turn, unit.KindAngle), trace.Num("limit", max(0, min(c.Turn, MostTurn)), unit.KindAngle))
		return false
	}
	least := unit.Length(0)
	if c.Turn > 0 {
		least = p.In.Hub.Length / 2 // its inside would cross itself
	}
	for _, x := range [...]struct {
		name     string
		v, least unit.Length
	}{{"radius", c.Radius, least}, {"least radius", c.Least.Length, 0}, {"straight end", c.Straight, 0}, {"longest", c.Longest, 0}} {
		ok = l.ranged(path, x.name, x.v, x.least, largest) && ok
	}
	return ok
}
