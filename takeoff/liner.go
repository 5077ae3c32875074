package takeoff

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// DefaultBank is how high the liner is taken up each side of a stream where the
// input does not tell. Common practice, no source.
const DefaultBank = unit.Foot

// PlacePond is the place of the pond's own items; a stream's place is its name.
const PlacePond = "pond"

// overlap gives the liner beyond the edge on each side; where the input has
// none, the larger figure of the book: a liner cut short is a new liner.
func (w *work) overlap() (overlap unit.Length, source trace.Source, assumed bool) {
	if w.in.Overlap == 0 && !w.in.Bare {
		span := w.in.Book.LinerOverlap()
		return span.High, span.Source, true
	}
	return w.in.Overlap, trace.Source{}, false
}

// bank gives how high a stream's liner goes up each side.
func bank(s Stream) (unit.Length, bool) {
	if s.Bank == 0 && !s.Banked {
		return DefaultBank, true
	}
	return s.Bank, false
}

// layers gives the layers of underlayment.
func (w *work) layers() (int, bool) {
	if w.in.Layers == 0 {
		return 1, true
	}
	return w.in.Layers, false
}

// sheet is one piece of liner.
type sheet struct {
	place, path   string
	length, width unit.Length
	formula       string
	terms         []trace.Term
}

// liners lists the sheets of liner, then the underlayment under them.
func (w *work) liners() {
	over, source, assumed := w.overlap()
	ok := w.extent(w.in.Paths.Overlap, "overlap", over)
	o := term("o", float64(over), unit.KindPlan, w.in.Paths.Overlap)
	if assumed {
		o = ruled("o", float64(over), unit.KindPlan, source)
	}
	sheets := w.sheets(over, o) // whatever the overlap: it tells of bad sizes too
	if !ok {
		return
	}
	rule := w.in.Book.LinerOverlapTotal().Source
	for _, s := range sheets {
		area := float64(s.length) * float64(s.width)
		w.items = append(w.items, Item{
			Code: CodeLiner, Name: NameLiner, Place: s.place, Length: s.length, Width: s.width,
			Need: Range{area, area, unit.KindArea}, Buy: Range{area, area, unit.KindArea},
			Formula: s.formula, Terms: s.terms, Source: rule, Path: s.path,
		})
	}
	n, _ := w.layers()
	if !w.number(w.in.Paths.Layers, "layers", float64(n), 1, 10, unit.KindCount) {
		return
	}
	under := w.in.Book.UnderlayLayers().Source
	for _, s := range sheets {
		area := float64(n) * float64(s.length) * float64(s.width)
		w.items = append(w.items, Item{
			Code: CodeUnderlay, Name: NameUnderlay, Place: s.place, Length: s.length, Width: s.width,
			Need: Range{area, area, unit.KindArea}, Buy: Range{area, area, unit.KindArea},
			Formula: "n " + s.formula, Terms: append([]trace.Term{term("n", float64(n), unit.KindCount, w.in.Paths.Layers)}, s.terms...),
			Source: under, Path: s.path,
		})
	}
}

func (w *work) sheets(over unit.Length, o trace.Term) (out []sheet) {
	if p := w.in.Pond; p != nil && w.pondSizes() {
		out = append(out, sheet{
			PlacePond, p.Path, LinerSide(p.Length, p.Depth, over), LinerSide(p.Width, p.Depth, over),
			"(L + 2 D + 2 o) x (W + 2 D + 2 o)",
			[]trace.Term{
				term("L", float64(p.Length), unit.KindPlan, p.Path), term("W", float64(p.Width), unit.KindPlan, p.Path),
				term("D", float64(p.Depth), unit.KindPlan, p.Path), o,
			},
		})
	}
	for i := range w.in.Streams {
		if s, ok := w.stream(&w.in.Streams[i], over, o); ok {
			out = append(out, s)
		}
	}
	for _, b := range w.in.Beds {
		if w.basinSizes(b) {
			out = append(out, sheet{
				b.Name, b.Path, LinerSide(b.Length, b.Depth, over), LinerSide(b.Width, b.Depth, over),
				"(L + 2 D + 2 o) x (W + 2 D + 2 o)", append(basinTerms(b, ""), o),
			})
		}
	}
	return out
}

// stream is the sheet under a watercourse: along its beds, down and up each pool,
// down its falls, up behind the topmost; as wide as the widest of all.
func (w *work) stream(s *Stream, over unit.Length, o trace.Term) (sheet, bool) {
	up, assumed := bank(*s)
	if !w.streamSizes(s) || !w.extent(s.BankPath, "bank", up) {
		return sheet{}, false
	}
	b := term("b", float64(up), unit.KindPlan, s.BankPath)
	if assumed {
		b = ruled("b", float64(up), unit.KindPlan, trace.Source{Title: practice, Basis: trace.BasisPractice})
	}
	length, wide := s.Length, s.Width+2*up
	terms := []trace.Term{
		term("L", float64(s.Length), unit.KindPlan, s.Path), term("drops", float64(s.Drop), unit.KindPlan, s.Path),
		term("W", float64(s.Width), unit.KindPlan, s.Path), b, o,
	}
	along, across := "L", "W + 2 b"
	for _, p := range s.Pools {
		if !w.basinSizes(p) {
			return sheet{}, false
		}
		length += p.Length + 2*p.Depth
		wide = max(wide, p.Width+2*p.Depth)
		terms = append(terms, basinTerms(p, " "+p.Name)...)
	}
	if len(s.Pools) > 0 {
		along, across = "L + sum over pools of (L + 2 D)", "the widest of W + 2 b and of each pool's W + 2 D"
	}
	return sheet{
		s.Name, s.Path, StreamLiner(length, s.Drop, up, over), LinerSide(wide, 0, over),
		"(" + along + " + drops + b + 2 o) x (" + across + " + 2 o)", terms,
	}, true
}

func basinTerms(b Basin, name string) []trace.Term {
	return []trace.Term{
		term("L"+name, float64(b.Length), unit.KindPlan, b.Path), term("W"+name, float64(b.Width), unit.KindPlan, b.Path),
		term("D"+name, float64(b.Depth), unit.KindPlan, b.Path),
	}
}
