package takeoff

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Assumed tells the defaults that List takes for this input, each only where an
// item depends on it. The weight of the overlap is the liner at the book's
// smaller figure.
func Assumed(in Input) []trace.Assumption {
	if in.Book == nil {
		return nil
	}
	in.Prices = nil // the amounts do not depend on them
	items, _, _ := List(in)
	w := &work{in: in}
	common := trace.Source{Title: practice, Basis: trace.BasisPractice}
	var out []trace.Assumption
	assume := func(code, path string, v unit.Value, s trace.Source, weight []trace.Effect, args ...trace.Arg) {
		out = append(out, trace.Assumption{
			Message: trace.Message{Code: code, Args: append(args, trace.Arg{Name: "value", Value: v})}, Path: path, Value: v, Source: s, Weight: weight,
		})
	}
	if can, assumed := w.can(); assumed && has(items, CodeCement) {
		assume(AssumeCan, in.Paths.Can, unit.Of(can, unit.KindCement), common, nil)
	}
	if sticks := in.plain(); len(sticks) > 0 {
		assume(AssumePlainEnds, sticks[0].Path, unit.Value{}, common, nil)
	}
	if soil, assumed := w.ground(); assumed && has(items, CodeSoil) {
		other := in
		other.Soil = swellsMost
		swell, _ := in.Book.SoilSwell(soil)
		assume(AssumeSoil, in.Paths.Soil, unit.Of(swell.High, unit.KindPercent), swell.Source, moved(items, other), trace.Str("soil", soil))
	}
	if !has(items, CodeLiner) {
		return out
	}
	if over, source, assumed := w.overlap(); assumed {
		other := in
		other.Overlap = in.Book.LinerOverlap().Low
		assume(AssumeOverlap, in.Paths.Overlap, unit.Of(over, unit.KindPlan), source, moved(items, other))
	}
	if n, assumed := w.layers(); assumed {
		other := in
		other.Layers = int(in.Book.UnderlayLayers().High)
		assume(AssumeLayers, in.Paths.Layers, unit.Of(unit.Ratio(n), unit.KindCount), in.Book.UnderlayLayers().Source, moved(items, other))
	}
	for i := range in.Streams {
		if up, assumed := bank(in.Streams[i]); assumed && w.streamSizes(&in.Streams[i]) {
			assume(AssumeBank, in.Streams[i].BankPath, unit.Of(up, unit.KindPlan), common, nil)
			break // one field for all
		}
	}
	return out
}

func has(items []Item, code string) bool {
	for _, i := range items {
		if i.Code == code {
			return true
		}
	}
	return false
}

// moved lists the amounts that another input changes.
func moved(items []Item, other Input) (out []trace.Effect) {
	others, _, _ := List(other)
	byID := map[string]Item{}
	for _, o := range others {
		byID[o.ID] = o
	}
	for _, i := range items {
		o, ok := byID[i.ID]
		if ok && o.Buy != i.Buy {
			_, before := i.Buy.Values()
			_, after := o.Buy.Values()
			out = append(out, trace.Effect{Figure: i.ID, Before: before, After: after})
		}
	}
	return out
}
