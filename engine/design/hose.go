package design

import (
	"math"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
	"plashet/takeoff"
)

// Codes of a hose.
const (
	// CodeHoseThick: a hose that is not as thick as the pipe, and so is not glued
	// into its sockets. Args: name, size; found and limit (outside diameters, where the
	// hose's is known).
	CodeHoseThick = "design.hose.thick"
	// CodeHoseRigid: what a hose is to be cut from is rigid pipe. Args: name, size.
	CodeHoseRigid = "design.hose.rigid"
	// CodeHoseLegs: the ends of a hose are not told, or too short for its bend. Args: part, limit.
	CodeHoseLegs = "design.hose.legs"

	// CodeHoseFolds: it is to bend so tightly that no tube can. Args: found (radius), limit
	// (half its outside diameter), od, usual.
	CodeHoseFolds = "design.hose.folds"

	// AssumeHoseKind: it is flexible PVC. Args: kind.
	AssumeHoseKind = "assume.hose.kind"
	// AssumeHoseRadius, AssumeHoseStraight, AssumeHoseLongest: the least radius, what
	// stays straight, the longest piece. Args: value.
	AssumeHoseRadius   = "assume.hose.radius"
	AssumeHoseStraight = "assume.hose.straight"
	AssumeHoseLongest  = "assume.hose.longest"
	// AssumeHoseBend: what a bend of it loses. Args: value (K).
	AssumeHoseBend = "assume.hose.bend"
)

// hoseName is the word of a hose in the job's assembly; no fitting has it.
const hoseName = string(layout.Hose)

// What a hose is taken to be where the job does not say: from memory of flexible
// PVC pipe, so that its maker's sheet goes before. A longest piece is a choice of
// ours: what is longer is no short hose.
const (
	usualHose       = "flexible PVC"
	radiusOfOD      = 5
	usualHoseLong   = 3 * unit.Foot
	usualHoseLongSI = 900 * unit.Millimetre
	bendLoss        = "swept bend 90"
)

// hose gives a straight hose of a size, and the flexible pipe that it is cut from;
// kind is that of the rigid pipe whose sockets it goes into.
func (m *model) hose(kind, size string) (p layout.Part, pipe catalog.Pipe, ok bool) {
	h := &m.job.Assembly.Hose
	name, path := job.PipeName{Kind: h.Kind, Size: size}, "/assembly/hose"
	once := func(field, code string, v unit.Value, args ...trace.Arg) {
		for _, a := range m.out.Assumptions {
			if a.Code == code {
				return
			}
		}
		m.assume(path+field, code, v, memory, args...)
	}
	if name.Kind == "" {
		name.Kind = usualHose
		once("/kind", AssumeHoseKind, unit.Value{}, trace.Str("kind", usualHose))
	}
	pipe, err := m.pipe(name)
	if err != nil {
		m.refuse(path+"/kind", err)
		return p, pipe, false
	}
	if pipe.Rigid {
		m.fault(path+"/kind", CodeHoseRigid, trace.Str("name", pipe.Kind), trace.Str("size", pipe.Size))
		return p, pipe, false
	}
	rigid, err := m.pipe(job.PipeName{Kind: kind, Size: size})
	if d := math.Abs(float64(pipe.OD - rigid.OD)); !pipe.SolventWeld || err == nil && rigid.OD > 0 && d > alikeOD {
		args := []trace.Arg{trace.Str("name", pipe.Kind), trace.Str("size", pipe.Size)}
		if pipe.OD > 0 && err == nil {
			args = append(args, trace.Num("found", pipe.OD, unit.KindTape), trace.Num("limit", rigid.OD, unit.KindTape))
		}
		m.fault(path+"/kind", CodeHoseThick, args...)
		return p, pipe, false
	}
	c := layout.Curve{
		Radius: h.LeastRadius.SI, Straight: h.Straight.SI, Longest: h.Longest.SI,
		Least: layout.Measure{Length: h.LeastRadius.SI, Source: typed(h.LeastRadius.Source)},
	}
	if h.LeastRadius.IsZero() {
		c.Radius = radiusOfOD * pipe.OD
		c.Least = layout.Measure{Length: c.Radius, Source: memory}
		once("/leastRadius", AssumeHoseRadius, unit.Of(c.Radius, unit.KindTape))
	}
	if !m.bends(path+"/leastRadius", c.Radius, pipe.OD) {
		return p, pipe, false
	}
	if h.Straight.IsZero() {
		c.Straight = pipe.OD
		once("/straight", AssumeHoseStraight, unit.Of(c.Straight, unit.KindTape))
	}
	if h.Longest.IsZero() {
		c.Longest = m.usualLongest()
		once("/longest", AssumeHoseLongest, unit.Of(c.Longest, unit.KindTape))
	}
	e := layout.End{Kind: layout.Spigot, Hub: layout.Measure{Length: pipe.OD, Source: pipe.Source}}
	return layout.Part{Kind: layout.Hose, Size: pipe.Size, In: e, Out: e, Curve: c}, pipe, true
}

// alikeOD is how far two outside diameters may differ that go into one socket.
const alikeOD = 5e-4 // m

// memory is the source of what is known of flexible pipe from memory.
var memory = trace.Source{Title: "from memory of flexible PVC pipe; its maker's sheet goes before", Basis: trace.BasisMemory}

// hosePart makes the hose that the assembly has as part i; its ends still want the
// depths of the sockets.
func (m *model) hosePart(i int, size string) (layout.Part, bool) {
	l, path := &m.job.Assembly.Parts[i], at("/assembly/parts", i)
	p, _, ok := m.hose(m.job.Assembly.Pipe.Kind, size)
	if !ok {
		return p, false
	}
	p.Mark, p.Curve.Turn = MarkOf(m.job.Assembly.Parts, i), l.Bend.SI
	if least := p.Curve.TakeOff(); l.Before.SI <= least || l.Behind.SI <= least {
		m.fault(path, CodeHoseLegs, trace.Str("part", p.Mark), trace.Num("limit", least, unit.KindTape))
		return p, false
	}
	p.In, p.Out = layout.HoseEnd(l.Before.SI, 0, p.In.Hub), layout.HoseEnd(l.Behind.SI, 0, p.Out.Hub)
	return p, true
}

// seatHoses lets the ends of hoses go as deep as the sockets at their ends are.
func seatHoses(in *layout.Input) {
	for i := range in.Parts {
		p := &in.Parts[i]
		if p.Kind != layout.Hose {
			continue
		}
		before := &in.Pump.Outlet
		if i > 0 {
			before = &in.Parts[i-1].Out
		}
		if before.Kind == layout.Socket {
			p.In.Depth = before.Depth
		}
		if i+1 < len(in.Parts) && in.Parts[i+1].In.Kind == layout.Socket {
			p.Out.Depth = in.Parts[i+1].In.Depth
		}
	}
}

// offeredHose gives the hose that a layout may have; nil where there can be none.
// What a bend loses beyond its length is taken whole up to a quarter turn, which
// is more than it takes.
func (m *model) offeredHose(a *Arranging, pipe catalog.Pipe) *arrange.Hose {
	part, tube, ok := m.hose(pipe.Kind, pipe.Size)
	if !ok {
		return nil
	}
	h := &arrange.Hose{Part: part, Slope: m.slopeOf(tube, a.Flow)}
	if l, err := m.loss(bendLoss, pipe.Size); err == nil {
		if head, ok := m.minorHead(l, tube.Bore, a.Flow); ok {
			h.Bend = head
			_, k := l.Split(smoothFactor, tube.Bore)
			m.assume("/assembly/hose", AssumeHoseBend, unit.Of(unit.Ratio(k), unit.KindRatio), l.Source)
		}
	}
	h.Cost, h.Priced = m.perMetre(job.PipeName{Kind: tube.Kind, Size: tube.Size})
	return h
}

// withHoses adds the hoses of the assembly that the stock has no pipe for, sold by length, to the pipe of the list.
func (m *model) withHoses(out []takeoff.Pipe) []takeoff.Pipe {
	a := m.out.Assembly
	if a == nil {
		return out
	}
	hoses, from := m.hosesToCut(a)
	for i, h := range hoses {
		n := from[i]
		if m.fromStock(n, h.Cut) {
			continue // with the cutting plan
		}
		out = append(out, takeoff.Pipe{Kind: n.Kind, Size: n.Size, Run: h.Cut, Path: "/assembly/hose"})
	}
	return out
}

// cuts lists what is cut for an assembly; a hose is made where it is glued already.
func (m *model) cuts(a *layout.Assembly) []layout.Piece {
	out := a.CutList()
	for i := range a.Hoses {
		out[len(a.Pieces)+i].Made = m.job.Assembly.Parts[a.Hoses[i].Part].Glued != ""
	}
	return out
}
