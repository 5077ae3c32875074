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
		it.Buy, it.Spare = w.pieces(it.Need.Low)
		if len(it.Terms) > 1 {
			it.Formula = "(sum of n) (1 + s), rounded up"
		}
		it.Terms = append(it.Terms, w.spareTerm())
	}
}

func (w *work) spareTerm() trace.Term {
	return term("s", w.spare, unit.KindPercent, "/spare")
}

func (w *work) pipe() {
	for _, p := range w.in.Pipe {
		if !w.extent(p.Path, "length", p.Length) || !w.extent(p.Path, "stick", p.Stick) ||
			!w.extent(p.Path, "offcuts", p.Offcuts) || !w.count(p.Path, p.Sticks) || p.Length == 0 {
			continue
		}
		it := Item{
			Code: CodePipe, Name: p.Kind, Size: p.Size, Path: p.Path, Source: counted,
			Need:  Range{float64(p.Length), float64(p.Length), unit.KindDistance},
			Waste: Range{Kind: unit.KindDistance},
			Terms: []trace.Term{term("L", float64(p.Length), unit.KindDistance, p.Path)},
		}
		switch {
		case p.Sticks > 0 || p.Offcuts > 0:
			if !w.planned(p, &it) {
				continue
			}
		case p.Stick > 0:
			if !w.joined(p, &it) {
				continue
			}
		default:
			all := float64(p.Length) * (1 + w.spare)
			it.Buy = Range{all, all, unit.KindDistance}
			it.Spare = Range{all - it.Need.Low, all - it.Need.Low, unit.KindDistance}
			it.Formula = "L (1 + s)"
		}
		it.Terms = append(it.Terms, w.spareTerm())
		w.items = append(w.items, it)
	}
}

// planned takes the sticks of the cutting plan:
//
//	buy = N (1 + s), rounded up; waste = N l + offcuts - L (kerf and remnants)
func (w *work) planned(p Pipe, it *Item) bool {
	if p.Sticks > 0 && !w.length(p.Path, "stick", p.Stick) {
		return false
	}
	have := unit.Length(p.Sticks)*p.Stick + p.Offcuts
	if have < p.Length-unit.Millimetre/1000 {
		w.fault(p.Path, FaultSticks, trace.Str("name", p.Kind), trace.Str("size", p.Size),
			trace.Num("found", have, unit.KindDistance), trace.Num("limit", p.Length, unit.KindDistance))
		return false
	}
	it.Buy, it.Spare = w.pieces(float64(p.Sticks))
	it.Pack = unit.Of(p.Stick, unit.KindDistance)
	rest := max(0, float64(have-p.Length))
	it.Waste.Low, it.Waste.High = rest, rest
	it.Formula = "N (1 + s), rounded up, with N sticks by the cutting plan; waste = N l + offcuts - L"
	it.Terms = append(it.Terms, term("N", float64(p.Sticks), unit.KindCount, p.Path),
		term("l", float64(p.Stick), unit.KindDistance, p.Path), term("offcuts", float64(p.Offcuts), unit.KindDistance, p.Path))
	return true
}

// joined takes a run of sticks glued end to end:
//
//	N = L / l, rounded up; buy = N (1 + s), rounded up
func (w *work) joined(p Pipe, it *Item) bool {
	if !w.length(p.Path, "stick", p.Stick) {
		return false
	}
	n := wholes(float64(p.Length / p.Stick))
	it.Buy, it.Spare = w.pieces(n)
	it.Pack = unit.Of(p.Stick, unit.KindDistance)
	rest := max(0, n*float64(p.Stick)-float64(p.Length))
	it.Waste.Low, it.Waste.High = rest, rest
	it.Formula = "N (1 + s), rounded up, with N = L / l rounded up: sticks joined end to end, no cutting plan"
	it.Terms = append(it.Terms, term("l", float64(p.Stick), unit.KindDistance, p.Path))
	return true
}
