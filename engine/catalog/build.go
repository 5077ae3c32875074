package catalog

import (
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// build puts a fitting together from the tables and what was measured.
func (b *Book) build(p part, measured *Measured) (Fitting, error) {
	m := p.model
	f := Fitting{
		Name: m.name, Body: m.body, Size: p.size(), Series: p.series, Form: m.form, Turn: m.turn, Out: m.out,
		Socket: b.socketDepth(p, p.small()), ToStop: b.toStop(p), Hub: b.hub(p, p.large()),
		Arrow: m.arrow, Opens: m.opens, Attitudes: m.attitudes, Note: m.source.Note,
	}
	if !slices.Contains(m.ends, "socket") {
		f.Socket = Dimension{}
	}
	f.Widest = f.Hub
	od := b.bodyPipe(p.series, p.large()).OD
	if m.widest.given {
		f.Widest = m.estimated(m.widest, "body", od)
	}
	if m.face.given {
		f.ToWall = m.estimated(m.face, "face off the wall", od)
	}
	if m.attitudes != AttitudesNone {
		f.AttitudesFrom = m.source
	}
	if measured != nil {
		f.override(*measured)
	}
	f.MeasureFirst = f.Socket.MeasureFirst || f.ToStop.MeasureFirst
	for i, kind := range m.ends {
		f.Ends = append(f.Ends, b.end(p, f, i, kind))
	}
	if m.form == FormReducer && p.largeEnd() == 1 {
		f.Ends[0], f.Ends[1] = f.Ends[1], f.Ends[0]
	}
	return f, nil
}

// override puts measured values in place of the table's.
func (f *Fitting) override(o Measured) {
	source := trace.Source{Title: "measured by the fitter", Basis: trace.BasisMeasured, Note: o.Note}
	set := func(d *Dimension, v unit.Length) {
		if v > 0 && d.Known() {
			*d = Dimension{Length: v, Source: source}
		}
	}
	set(&f.Socket, o.Socket)
	set(&f.ToStop, o.ToStop)
	set(&f.Widest, o.Hub)
	if f.Widest.Source.Basis == trace.BasisMeasured && (f.plain() || f.Hub.Length > f.Widest.Length) {
		f.Hub = f.Widest
	}
	if o.Attitudes != AttitudesNone {
		f.Attitudes, f.AttitudesFrom = o.Attitudes, trace.Source{Title: "its sheet", Basis: trace.BasisSheet, Note: o.Note}
	}
}

// plain tells that nothing on the fitting is wider than its hubs, so that a
// measured outside diameter is the hub's.
func (f *Fitting) plain() bool {
	switch f.Form {
	case FormBend, FormTee, FormCross, FormWye, FormReducer, FormCap:
		return true
	}
	return f.Body == "coupling"
}

// end makes the end at index i of the model's list.
func (b *Book) end(p part, f Fitting, i int, kind string) End {
	s := p.large()
	if p.model.form == FormReducer && i == 1 {
		s = p.small()
	}
	e := End{Kind: EndKind(kind), Size: s.String(), Turn: turnOf(f, i), Stop: b.stopOf(p, f, i), Hub: f.Hub}
	switch kind {
	case "socket":
		e.Depth = f.Socket
		if s != p.small() {
			e.Depth = b.socketDepth(p, s)
		} else if p.model.form == FormReducer {
			e.Hub = b.hub(p, s)
		}
	case "spigot":
		e.Depth = b.socketDepth(p, s)
		e.Hub = pipeOutside(b.bodyPipe(p.series, s))
		if p.model.form == FormBend {
			e.Stop = Dimension{f.ToStop.Length + e.Depth.Length, true, trace.Source{
				Title: "estimate: laying length + socket depth", Basis: trace.BasisMemory, Note: f.Note,
			}}
		}
	case "male", "female":
		t := b.threadOf(p)
		e.Kind, e.Size, e.Depth, e.Hub = threadEnd(t.Standard, kind), t.Size, t.MakeUp(), f.Widest
	case "barb":
		e.Depth = Dimension{
			barbLength.at(b.bodyPipe(p.series, s).OD), true,
			trace.Source{Title: barbLength.formula("barb length"), Basis: trace.BasisMemory},
		}
		e.Hub = pipeOutside(b.bodyPipe(p.series, s))
	}
	return e
}

// barbLength is the length of a hose barb: an estimate from memory.
var barbLength = line{given: true, perOD: 0.6, plusIn: 0.5}

// threadEnd names the end: BSP adapters are tapered outside and parallel inside.
func threadEnd(standard, gender string) EndKind {
	switch {
	case standard == "NPT" && gender == "male":
		return NPTMale
	case standard == "NPT":
		return NPTFemale
	case gender == "male":
		return BSPTMale
	}
	return BSPPFemale
}

func pipeOutside(pipe Pipe) Dimension { return Dimension{Length: pipe.OD, Source: pipe.Source} }

// turnOf gives an end's direction: the first end is the way in, the second of a
// branched fitting goes straight on.
func turnOf(f Fitting, i int) unit.Angle {
	switch {
	case i == 0, f.Form != FormBend && i == 1:
		return 0
	case f.Form == FormCross && i == 3:
		return -f.Turn
	}
	return f.Turn
}

// stopOf gives an end's distance from the centre.
func (b *Book) stopOf(p part, f Fitting, i int) Dimension {
	d := f.ToStop
	switch f.Form {
	case FormBend, FormTee, FormCross:
	case FormWye:
		if i == 0 { // against the branch: the pipes meet at 135 degrees there
			od := b.bodyPipe(p.series, p.large()).OD
			d = Dimension{LayingFloor(od, 45*unit.Degree) * wyeSpare, true, trace.Source{
				Title: "estimate: OD/2 x tan 22.5 + 3 percent", Basis: trace.BasisMemory, Note: f.Note,
			}}
		}
	default:
		d.Length /= 2
	}
	return d
}
