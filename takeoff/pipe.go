package takeoff

import (
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// pipe lists pipe in sticks and pipe sold by length.
func (w *work) pipe() {
	for _, p := range w.in.Pipe {
		need := p.Length + p.Run
		if !w.extent(p.Path, "length", p.Length) || !w.extent(p.Path, "run", p.Run) || !w.extent(p.Path, "stick", p.Stick) ||
			!w.extent(p.Path, "offcuts", p.Offcuts) || !w.extent(p.Path, "rest", p.Rest) || !w.count(p.Path, p.Sticks) || need == 0 {
			continue
		}
		it := Item{
			Code: CodePipe, Name: p.Kind, Size: p.Size, Path: p.Path, Source: counted,
			Need:  Range{float64(need), float64(need), unit.KindDistance},
			Waste: Range{Kind: unit.KindDistance},
		}
		switch {
		case p.Stick > 0 || p.Sticks > 0 || p.Offcuts > 0:
			if !w.sticks(p, &it) {
				continue
			}
		default:
			it.Buy, it.Formula = it.Need, "L + R"
			it.Terms = []trace.Term{term("L", float64(p.Length), unit.KindDistance, p.Path), term("R", float64(p.Run), unit.KindDistance, p.Path)}
		}
		w.items = append(w.items, it)
	}
}

// laid gives how many pieces of sticks lie end to end in the runs.
func (p *Pipe) laid() int {
	rest := min(p.Rest, p.Run)
	if !above(p.Stick) || !from(p.Run) || !from(rest) || p.Run/p.Stick > mostCount {
		return 0
	}
	n := 0
	if p.Run > rest {
		n = int(Sticks(p.Run-rest, p.Stick))
	}
	if rest > 0 {
		n++
	}
	return n
}

// plain lists the pipe whose sticks are joined by couplings.
func (in *Input) plain() (out []Pipe) {
	for i := range in.Pipe {
		p := &in.Pipe[i]
		if p.Welded && !p.Bell && in.Book != nil && Couplings(p.laid()) > 0 {
			if _, err := in.Book.Fitting(NameCoupling, p.Size, nil); err == nil {
				out = append(out, *p)
			}
		}
	}
	return out
}

// ends adds what joins the sticks of the runs end to end: a coupling and its two
// sockets, or the one socket of a bell.
func (w *work) ends() {
	fittings, joints := w.in.Fittings, w.in.Joints
	for _, p := range w.in.plain() {
		n := Couplings(p.laid())
		fittings = append(fittings[:len(fittings):len(fittings)], Fitting{NameCoupling, p.Size, n, p.Path})
		joints = append(joints[:len(joints):len(joints)], Joints{p.Size, 2 * n, p.Path})
	}
	for i := range w.in.Pipe {
		if p := &w.in.Pipe[i]; p.Welded && p.Bell && Couplings(p.laid()) > 0 {
			joints = append(joints[:len(joints):len(joints)], Joints{p.Size, Couplings(p.laid()), p.Path})
		}
	}
	w.in.Fittings, w.in.Joints = fittings, joints
}

// sticks counts whole sticks: those of the cutting plan, and for the rest of
// the runs as many as reach when joined end to end.
//
//	buy = N + (R - r) / l, the second part rounded up
//	waste = buy l + offcuts - L - R (kerf and remnants)
func (w *work) sticks(p Pipe, it *Item) bool {
	if (p.Sticks > 0 || p.Run > 0) && !w.length(p.Path, "stick", p.Stick) {
		return false
	}
	have := unit.Length(p.Sticks)*p.Stick + p.Offcuts
	if need := p.Length + p.Rest; have < need-unit.Millimetre/1000 {
		w.fault(p.Path, FaultSticks, append(named(p.Kind, p.Size),
			trace.Num("found", have, unit.KindDistance), trace.Num("limit", need, unit.KindDistance))...)
		return false
	}
	rest := min(p.Rest, p.Run)
	joined := 0.0
	if p.Run > rest {
		joined = Sticks(p.Run-rest, p.Stick)
	}
	all := float64(p.Sticks) + joined
	over := max(0, float64(have-p.Length-p.Run)+joined*float64(p.Stick))
	it.Buy = Range{all, all, unit.KindCount}
	it.Pack = unit.Of(p.Stick, unit.KindDistance)
	it.Waste.Low, it.Waste.High = over, over
	it.Laid = Laid{Planned: p.Sticks, Joined: int(joined), Run: p.Run, Rest: rest}
	it.Formula = "N by the cutting plan + (R - r) / l rounded up, joined end to end; waste = all l + offcuts - L - R"
	it.Terms = []trace.Term{
		term("N", float64(p.Sticks), unit.KindCount, p.Path), term("R", float64(p.Run), unit.KindDistance, p.Path),
		term("r", float64(rest), unit.KindDistance, p.Path), term("l", float64(p.Stick), unit.KindDistance, p.Path),
		term("offcuts", float64(p.Offcuts), unit.KindDistance, p.Path), term("L", float64(p.Length), unit.KindDistance, p.Path),
	}
	if p.Price.Currency != "" {
		w.stickPrice(p, it)
	}
	return true
}

// stickPrice puts a stick's own price on its item.
func (w *work) stickPrice(p Pipe, it *Item) {
	if p.Price.Currency != w.in.Currency {
		w.fault(p.Path, FaultPriceCurrency, trace.Str("name", p.Kind), trace.Str("currency", p.Price.Currency), trace.Str("wanted", w.in.Currency))
		return
	}
	it.price(Price{Amount: p.Price})
}
