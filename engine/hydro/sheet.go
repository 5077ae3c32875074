package hydro

import (
	"cmp"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// SheetAt says where the depth of a sheet is meant; the words are those of the
// job.
type SheetAt string

// The places.
const (
	AtUpstream SheetAt = "upstream" // head over the crest in the still water before it
	AtCritical SheetAt = "critical" // on the crest, where the flow is critical
	AtEdge     SheetAt = "edge"     // thickness as the water leaves the edge
)

// What the depths have to do with one another.
const (
	// CriticalShare is critical depth over upstream head, 2/3 on a broad crest
	// without loss. On a thin plate the depth (q²/g)^(1/3) of the same flow is
	// 5 percent more.
	CriticalShare = 2.0 / 3
	// EdgeShare is the depth at a free edge over the critical depth.
	EdgeShare = 0.715
)

// SourceEdge names where the depth at the edge comes from.
var SourceEdge = trace.Source{
	Title: "Rouse, Discharge characteristics of the free overfall, Civil Engineering 6 (1936): edge depth 0.715 of critical",
	Basis: trace.BasisMemory,
	Note:  "measured in smooth channels of mild slope; less on a rough lip",
}

// Sheets that the formulas are loose for.
const (
	// ClingHead is the upstream head under which water clings to the lip and
	// surface tension counts: take flows and heads as good to ClingBand.
	// Published calibrations start at larger heads yet (USBR: 0.2 ft).
	ClingHead = 12 * unit.Millimetre
	ClingBand = unit.Ratio(0.25)
	// TiltShare is the tilt, over the head, from which a sheet looks lopsided.
	TiltShare = unit.Ratio(0.25)
)

// SourceCling names where the limits of small sheets come from.
var SourceCling = trace.Source{
	Title: "common practice, no source",
	Basis: trace.BasisMemory,
	Note:  "about 1/2 in on the lip; 25 percent either way under it",
}

// share is the sheet's depth at a place over the upstream head.
func (at SheetAt) share() (float64, error) {
	switch at {
	case AtUpstream:
		return 1, nil
	case AtCritical:
		return CriticalShare, nil
	case AtEdge:
		return CriticalShare * EdgeShare, nil
	}
	return 0, fail(CodeWord, trace.Str("name", "sheetAt"), trace.Str("found", string(at)))
}

// SheetDepth is the depth of the sheet at a place for an upstream head: the
// head itself, 2/3 of it (critical), or 0.715 of that (edge). An unknown place
// gives CodeWord.
func SheetDepth(head unit.Head, at SheetAt) (unit.Length, error) {
	s, err := at.share()
	return head * unit.Length(s), err
}

// HeadForSheet is the upstream head that makes a sheet of a depth at a place:
// the inverse of SheetDepth. A depth that is not above zero gives CodeRange.
func HeadForSheet(depth unit.Length, at SheetAt) (unit.Head, error) {
	s, err := at.share()
	if err = cmp.Or(err, positive("sheet", depth, unit.KindDepth)); err != nil {
		return 0, err
	}
	return depth / unit.Length(s), nil
}

// FlowForSheet is the flow that gives a sheet of the wanted depth at a place.
// With a tilt the depth is meant in the middle of the crest, where the head is
// that over the low end less half the tilt.
func (l *Lip) FlowForSheet(depth unit.Length, at SheetAt) (unit.Flow, error) {
	h, err := HeadForSheet(depth, at)
	if err != nil {
		return 0, err
	}
	q, _ := l.Flow(h + l.Tilt/2)
	return q, nil
}

// FlowFor is the flow over the lip for a flow over each metre of it, as the
// trade's rules give it (gallons an hour for each inch): q L.
func (l *Lip) FlowFor(perWidth unit.FlowPerWidth) unit.Flow {
	return unit.Flow(float64(perWidth) * float64(l.Width))
}

// Sheet is what falls over a lip at a flow.
type Sheet struct {
	Head     unit.Head         // upstream, over the low end
	Middle   unit.Head         // upstream, over the middle of the crest; 0 when that is dry
	High     unit.Head         // upstream, over the high end; 0 when that is dry
	Critical unit.Length       // critical depth in the middle
	Edge     unit.Length       // thickness leaving the edge in the middle
	PerWidth unit.FlowPerWidth // flow over the width of the crest
	AtLow    unit.FlowPerWidth // flow for each metre at the low end
	AtHigh   unit.FlowPerWidth // the same at the high end
	DryWidth unit.Length       // part of the crest that stays dry
	Cautions []trace.Message   // clinging, tilted, partly dry
}

// Sheet describes the sheet at a flow of zero or more; a negative flow or one
// that is not finite gives CodeRange or CodeNotFinite. With no flow it is all
// zero with the whole width dry, and no caution.
func (l *Lip) Sheet(q unit.Flow) (Sheet, error) {
	if err := notNegative("flow", q, unit.KindFlow); err != nil {
		return Sheet{}, err
	}
	if q == 0 {
		return Sheet{DryWidth: l.Width}, nil
	}
	head, _ := l.Head(q)
	level := Lip{LipLaw: LipLaw{Width: 1, C: l.C}}
	perMetre := func(h unit.Head) unit.FlowPerWidth {
		v, _ := level.power(float64(h))
		return unit.FlowPerWidth(v)
	}
	s := Sheet{
		Head:     head,
		Middle:   max(head-l.Tilt/2, 0),
		High:     max(head-l.Tilt, 0),
		PerWidth: unit.FlowPerWidth(float64(q) / float64(l.Width)),
		AtLow:    perMetre(head),
		DryWidth: l.DryWidth(head),
	}
	s.AtHigh = perMetre(s.High)
	s.Critical = s.Middle * CriticalShare
	s.Edge = s.Critical * EdgeShare
	s.Cautions = l.cautions(s)
	return s, nil
}

func (l *Lip) cautions(s Sheet) []trace.Message {
	var out []trace.Message
	add := func(code string, args ...trace.Arg) {
		out = append(out, trace.Message{Code: code, Args: args})
	}
	switch limit := trace.Num("limit", ClingHead, unit.KindDepth); {
	case s.Middle < ClingHead:
		add(CautionCling, trace.Num("head", s.Middle, unit.KindDepth), limit, trace.Num("band", ClingBand, unit.KindPercent))
	case s.High < ClingHead:
		add(CautionClingHigh, trace.Num("head", s.High, unit.KindDepth), limit)
	}
	if limit := s.Head * unit.Length(TiltShare); l.Tilt > limit {
		add(CautionTilt, trace.Num("tilt", l.Tilt, unit.KindDepth), trace.Num("limit", limit, unit.KindDepth))
	}
	if s.DryWidth > 0 {
		add(CautionDry, trace.Num("width", s.DryWidth, unit.KindTape))
	}
	return out
}
