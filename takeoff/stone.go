package takeoff

import (
	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// RulesLimit is how far apart two rules may be, over the lower one, before the
// list says so. Common practice, no source.
const RulesLimit unit.Ratio = 0.30

// stone lists boulders and gravel, each from the one rule to the other.
func (w *work) stone() {
	if p := w.in.Pond; p != nil && p.Stone && w.whole(p.Length, p.Width) {
		cover, share := w.in.Book.RockCover(), w.in.Book.GravelShare()
		need := Range{float64(Boulders(p.Length, p.Width, cover.High)), float64(Boulders(p.Length, p.Width, cover.Low)), unit.KindMass}
		sizes := []trace.Term{term("L", float64(p.Length), unit.KindPlan, p.Path), term("W", float64(p.Width), unit.KindPlan, p.Path)}
		w.heap(Item{
			Code: CodeBoulders, Name: NameBoulders, Place: PlacePond, Path: p.Path, Need: need, Source: cover.Source,
			Formula: "1 short ton x L W / a, for both a",
			Terms:   append(sizes, span("a", cover, unit.KindArea)...),
		})
		w.heap(Item{
			Code: CodeGravel, Name: NameGravel, Place: PlacePond, Path: p.Path, Source: share.Source,
			Need:    Range{need.Low * float64(share.Low), need.High * float64(share.High), unit.KindMass},
			Formula: "boulders x g, the lower with the lower",
			Terms: append([]trace.Term{
				term("boulders low", need.Low, unit.KindMass, p.Path), term("boulders high", need.High, unit.KindMass, p.Path),
			}, span("g", share, unit.KindPercent)...),
		})
	}
	for _, s := range w.in.Streams {
		if !s.Stone || s.Length == 0 || !w.whole(s.Length, s.Width) {
			continue
		}
		w.along(s, CodeBoulders, NameBoulders, w.in.Book.StreamBoulders())
		w.along(s, CodeGravel, NameGravel, w.in.Book.StreamGravel())
	}
}

// along takes a mass for each catalog.StreamStretch of stream.
func (w *work) along(s Stream, code, name string, per catalog.Span[unit.Mass]) {
	n := float64(s.Length / catalog.StreamStretch)
	w.heap(Item{
		Code: code, Name: name, Place: s.Name, Path: s.Path, Source: per.Source,
		Need:    Range{n * float64(per.Low), n * float64(per.High), unit.KindMass},
		Formula: "m L / l, for both m",
		Terms: append([]trace.Term{
			term("L", float64(s.Length), unit.KindPlan, s.Path), ruled("l", float64(catalog.StreamStretch), unit.KindPlan, per.Source),
		}, span("m", per, unit.KindMass)...),
	})
}

// heap puts stone on the list, and a finding where its rules are far apart.
func (w *work) heap(it Item) {
	it.Buy = it.Need
	w.items = append(w.items, it)
	apart := unit.Ratio(it.Need.High/it.Need.Low - 1)
	if apart <= RulesLimit {
		return
	}
	low, high := it.Need.Values()
	w.findings = append(w.findings, trace.Finding{
		Message: trace.Message{Code: FindRules, Args: []trace.Arg{
			trace.Str("place", it.Place), trace.Str("material", it.Name), {Name: "low", Value: low}, {Name: "high", Value: high},
		}},
		Path: it.Path, Severity: trace.Caution,
		Found: unit.Of(apart, unit.KindPercent), Limit: unit.Of(RulesLimit, unit.KindPercent),
		LimitSource: trace.Source{Title: practice, Basis: trace.BasisPractice},
	})
}

// span makes the terms of both ends of a range.
func span[Q ~float64](symbol string, s catalog.Span[Q], k unit.Kind) []trace.Term {
	return []trace.Term{ruled(symbol+" low", float64(s.Low), k, s.Source), ruled(symbol+" high", float64(s.High), k, s.Source)}
}

// whole tells that a plan's sizes can be used; the liner has faulted those that
// cannot.
func (w *work) whole(length, width unit.Length) bool {
	return length >= unit.Millimetre && length <= mostLength && width >= unit.Millimetre && width <= mostLength
}

// pondSizes and streamSizes fault what cannot be used.
func (w *work) pondSizes() bool {
	p := w.in.Pond
	l, b, d := w.length(p.Path, "length", p.Length), w.length(p.Path, "width", p.Width), w.extent(p.Path, "depth", p.Depth)
	return l && b && d
}

func (w *work) basinSizes(p Basin) bool {
	l, b, d := w.length(p.Path, "length", p.Length), w.length(p.Path, "width", p.Width), w.extent(p.Path, "depth", p.Depth)
	return l && b && d
}

// streamSizes asks for a width, and for a bed, a pool or a fall to line.
func (w *work) streamSizes(s *Stream) bool {
	l, b, d := w.extent(s.Path, "length", s.Length), w.length(s.Path, "width", s.Width), w.extent(s.Path, "drop", s.Drop)
	if l && s.Length == 0 && s.Drop == 0 && len(s.Pools) == 0 {
		l = w.length(s.Path, "length", s.Length)
	}
	return l && b && d
}
