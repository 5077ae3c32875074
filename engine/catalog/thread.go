package catalog

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Thread is one size of a tapered pipe thread.
type Thread struct {
	Standard string // "NPT" or "BSPT"
	Size     string
	Diameter unit.Length // outside diameter of the pipe (NPT), gauge diameter (BSPT)

	PerInch     float64     // threads per inch
	Pitch       unit.Length //
	HandTight   unit.Length // L1: engagement by hand, by gauge
	Effective   unit.Length // L2: full useful thread
	Wrench      unit.Length // NPT: L3, three (two) turns past hand-tight; BSPT: the fitting allowance L2 - L1
	SmallPitch  unit.Length // E0, NPT only
	GaugePitch  unit.Length // E1, NPT only
	Vanish      unit.Length // V: incomplete thread past L2, NPT only
	Source      trace.Source
	makeUpTurns Span[float64]
}

// threadKey names a thread by standard and nominal inches.
type threadKey struct {
	standard string
	size     size
}

// FindThread gives a thread by standard ("NPT", "BSPT") and nominal size, in
// inches or as DN. Errors: CodeThreadUnknown, CodeSizeUnread, CodeSizeDN.
func (b *Book) FindThread(standard, sizeText string) (Thread, error) {
	s, err := b.readSize(sizeText, inch)
	if err != nil {
		return Thread{}, err
	}
	t, ok := b.threads[threadKey{standard, s}]
	if !ok {
		return Thread{}, fault(CodeThreadUnknown, trace.Str("thread", standard+" "+sizeText), nearest([]string{"NPT", "BSPT"}))
	}
	return t, nil
}

// Length = L2 + V: the whole external thread, as far as the table tells it (V
// is not given for BSPT).
func (t Thread) Length() unit.Length { return t.Effective + t.Vanish }

// Engage = L1 + turns x pitch: how deep the male thread stands in the female
// one after so many turns past hand-tight. Range turns >= 0; NaN outside.
func (t Thread) Engage(turns float64) unit.Length {
	if !(turns >= 0) {
		return nan[unit.Length]()
	}
	return t.HandTight + unit.Length(turns)*t.Pitch
}

// MakeUp gives the engagement of a plastic thread in the middle of the usual
// turns past hand-tight (Book.ThreadTurns). It decides no part's true place:
// screw the part in and measure.
func (t Thread) MakeUp() Dimension {
	return Dimension{
		Length: t.Engage(t.makeUpTurns.Mid()), MeasureFirst: true,
		Source: trace.Source{
			Title: t.Standard + " hand-tight length L1 plus 1-1/2 turns", Basis: t.makeUpTurns.Source.Basis,
			Note: "middle of hand-tight plus 1 to 2 turns; screw it in and measure",
		},
	}
}

// ThreadTurns gives the turns past hand-tight for plastic tapered threads.
// Tighten with a strap wrench; more splits the female part.
func (b *Book) ThreadTurns() Span[float64] { return b.turns }

// TapeWraps gives the wraps of thread tape on a plastic male thread. They go on
// clockwise seen facing the end of the thread. One published source forbids
// tape on PVC threads: the part's sheet decides.
func (b *Book) TapeWraps() Span[float64] { return b.tape }

func (b *Book) loadThreads(l *loader) {
	for r := range b.Rows("solventweld") {
		switch r.Get("item") {
		case "tightening of plastic tapered threads":
			low, high := l.span(r, "value")
			b.turns = Span[float64]{low, high, l.source(r)}
		case "PTFE tape on plastic male threads, wraps":
			low, high := l.span(r, "value")
			b.tape = Span[float64]{low, high, l.source(r)}
		}
	}
	b.threads = map[threadKey]Thread{}
	for r := range b.Rows("threads") {
		standard := "NPT"
		if r.Get("standard") != "ASME B1.20.1 NPT" {
			standard = "BSPT"
		}
		b.threads[threadKey{standard, l.size(r, "size")}] = Thread{
			Standard: standard, Size: r.Get("size"), Diameter: l.inches(r, "od_in"),
			PerInch: l.num(r, "tpi"), Pitch: unit.Inch / unit.Length(l.num(r, "tpi")),
			HandTight: l.inches(r, "L1_hand_tight_in"), Effective: l.inches(r, "L2_effective_in"), Wrench: l.inches(r, "L3_wrench_makeup_in"),
			SmallPitch: l.inches(r, "E0_pitch_dia_in"), GaugePitch: l.inches(r, "E1_pitch_dia_in"), Vanish: l.inches(r, "V_vanish_in"),
			Source: l.source(r), makeUpTurns: b.turns,
		}
	}
}
