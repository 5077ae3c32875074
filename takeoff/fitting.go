package takeoff

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// counted is the source of what is only counted.
var counted = trace.Source{Title: "count of the job's parts", Basis: trace.BasisLibrary}

// fittings adds up equal fittings: buy = n (1 + s), rounded up to whole ones.
func (w *work) fittings() {
	at := map[[2]string]int{}
	for _, f := range w.in.Fittings {
		if !w.count(f.Path, f.Count) || f.Count == 0 {
			continue
		}
		key := [2]string{f.Name, f.Size}
		i, ok := at[key]
		if !ok {
			i = len(w.items)
			at[key] = i
			w.items = append(w.items, Item{
				Code: CodeFitting, Name: f.Name, Size: f.Size, Need: Range{Kind: unit.KindCount},
				Formula: "n (1 + s), rounded up", Source: counted, Path: f.Path,
			})
		}
		it := &w.items[i]
		it.Need.Low += float64(f.Count)
		it.Need.High = it.Need.Low
		it.Terms = append(it.Terms, term("n", float64(f.Count), unit.KindCount, f.Path))
	}
	for i := range w.items {
		it := &w.items[i]
		all := wholes(it.Need.Low * (1 + w.spare))
		it.Buy = Range{all, all, unit.KindCount}
		it.Spare = Range{all - it.Need.Low, all - it.Need.Low, unit.KindCount}
		if len(it.Terms) > 1 {
			it.Formula = "(sum of n) (1 + s), rounded up"
		}
		it.Terms = append(it.Terms, term("s", w.spare, unit.KindPercent, w.in.Paths.Spare))
	}
}
