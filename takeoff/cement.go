package takeoff

import (
	"errors"
	"math"

	"plashet/engine/catalog"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// cement adds up over the sizes, by both ends of the table:
//
//	cement = sum of n / k x 1 US quart; primer = cement / f
//	cans = amount / can, rounded up
func (w *work) cement() {
	can, _ := w.can()
	if !w.number(w.in.Paths.Can, "can", float64(can), float64(unit.Litre)/100, float64(unit.CubicMetre), unit.KindCement) {
		return
	}
	need := Range{Kind: unit.KindCement}
	var terms []trace.Term
	var source trace.Source
	for _, j := range w.in.Joints {
		if !w.count(j.Path, j.Count) || j.Count == 0 {
			continue
		}
		per, err := w.in.Book.JointsPerQuart(j.Size)
		if err != nil || !(per.Low > 0) {
			w.fault(j.Path, FaultJoints, trace.Str("size", j.Size), trace.Str("cause", cause(err)))
			continue
		}
		n := float64(j.Count)
		need.Low += n / per.High * float64(unit.USQuart)
		need.High += n / per.Low * float64(unit.USQuart)
		source = per.Source
		terms = append(terms, term("n "+j.Size, n, unit.KindCount, j.Path),
			ruled("k high "+j.Size, per.High, unit.KindRatio, per.Source), ruled("k low "+j.Size, per.Low, unit.KindRatio, per.Source))
	}
	if need.High == 0 {
		return
	}
	it := Item{Code: CodeCement, Name: NameCement, Need: need, Terms: terms, Source: source}
	w.packed(&it, float64(can), w.in.Paths.Can, "(sum over sizes of n / k x 1 US quart)")
	w.items = append(w.items, it)

	f := w.in.Book.PrimerFactor()
	if !above(f.Value) {
		return
	}
	low, high := need.Values()
	primer := Item{
		Code: CodePrimer, Name: NamePrimer, Source: f.Source,
		Need: Range{need.Low / float64(f.Value), need.High / float64(f.Value), unit.KindCement},
		Terms: []trace.Term{
			{Symbol: "cement low", Value: low, From: CodeCement + ".0"},
			{Symbol: "cement high", Value: high, From: CodeCement + ".0"},
			ruled("f", float64(f.Value), unit.KindRatio, f.Source),
		},
	}
	w.packed(&primer, float64(can), w.in.Paths.Can, "cement / f")
	w.items = append(w.items, primer)
}

// can gives the size of a can; assumed where the input has none.
func (w *work) can() (can unit.Volume, assumed bool) {
	switch {
	case w.in.Can != 0:
	case w.in.Metric:
		return unit.Litre, true
	default:
		return unit.USQuart, true
	}
	return w.in.Can, false
}

// tape adds up the tape on male threads: length = sum of n pi D wraps.
func (w *work) tape() {
	wraps := w.in.Book.TapeWraps()
	it := Item{Code: CodeTape, Name: NameTape, Need: Range{Kind: unit.KindDistance}, Source: wraps.Source}
	for _, t := range w.in.Threads {
		if !w.count(t.Path, t.Count) || t.Count == 0 {
			continue
		}
		thread, err := w.in.Book.FindThread(t.Standard, t.Size)
		if err != nil {
			w.fault(t.Path, FaultThread, trace.Str("thread", t.Standard), trace.Str("size", t.Size), trace.Str("cause", cause(err)))
			continue
		}
		round := float64(t.Count) * math.Pi * float64(thread.Diameter)
		it.Need.Low += round * wraps.Low
		it.Need.High += round * wraps.High
		it.Terms = append(it.Terms, term("n "+t.Size, float64(t.Count), unit.KindCount, t.Path),
			ruled("D "+t.Size, float64(thread.Diameter), unit.KindBore, thread.Source))
	}
	if it.Need.High == 0 || !w.extent(w.in.Paths.TapeRoll, "roll", w.in.TapeRoll) {
		return
	}
	it.Terms = append(it.Terms, ruled("wraps low", wraps.Low, unit.KindRatio, wraps.Source), ruled("wraps high", wraps.High, unit.KindRatio, wraps.Source))
	const formula = "sum over threads of n pi D wraps"
	if w.in.TapeRoll > 0 {
		if w.number(w.in.Paths.TapeRoll, "roll", float64(w.in.TapeRoll), 0.1, float64(mostLength), unit.KindDistance) {
			w.packed(&it, float64(w.in.TapeRoll), w.in.Paths.TapeRoll, "("+formula+")")
			w.items = append(w.items, it)
		}
		return
	}
	it.Buy, it.Formula = it.Need, formula
	w.items = append(w.items, it)
}

// packed sells an item by whole packs: buy = need / pack, rounded up. Waste is
// the rest of the last pack.
func (w *work) packed(it *Item, pack float64, path, formula string) {
	it.Pack = unit.Value{SI: pack, Kind: it.Need.Kind}
	it.Buy = Range{wholes(it.Need.Low / pack), wholes(it.Need.High / pack), unit.KindCount}
	it.Waste = Range{max(0, it.Buy.Low*pack-it.Need.Low), max(0, it.Buy.High*pack-it.Need.High), it.Need.Kind}
	it.Formula = formula + " / pack, rounded up"
	it.Terms = append(it.Terms, term("pack", pack, it.Need.Kind, path))
}

// cause gives the code of what the catalogue refused.
func cause(err error) string {
	if e := (*catalog.Error)(nil); errors.As(err, &e) {
		return e.Code
	}
	return ""
}
