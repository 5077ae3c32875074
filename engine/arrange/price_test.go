package arrange_test

import (
	"math"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// priceOf is what an assembly costs in every respect, worked out here from the
// parts and the places laid.
type priceOf struct {
	head, cost, slide float64
	joints            int
	drains            bool // what stands above comes down when the union is opened
	hosed             bool
	leans             bool // the pump comes out leaned over
}

func price(i *arrange.Input, chain *layout.Input, a *layout.Assembly) priceOf {
	w := priceOf{drains: a.Water.Order == layout.ValveFirst}
	before := chain.Pump.Outlet.Kind
	for k := range chain.Parts {
		p := &chain.Parts[k]
		for _, f := range i.Fittings {
			if f.Part.Kind == p.Kind && f.Part.Size == p.Size && len(f.Part.Splits) == len(p.Splits) && (p.Kind != layout.Reducer || f.Part.In.Kind == p.In.Kind && f.Part.Out.Kind == p.Out.Kind) {
				w.head += float64(f.Head)
				w.cost += f.Cost
			}
		}
		w.joints++
		if before == layout.Socket && p.In.Kind == layout.Socket {
			w.joints++
		}
		before = p.Out.Kind
	}
	for _, p := range a.Pieces {
		for _, q := range i.Pipes {
			if q.Size == p.Pipe.Size {
				w.head += float64(p.StopToStop) * q.Slope
				w.cost += float64(p.StopToStop) * q.Cost
			}
		}
	}
	for k := range a.Hoses {
		h := &a.Hoses[k]
		w.hosed = true
		w.head += float64(i.Hose.Bend)*math.Max(1, float64(h.Curve.Turn)/(math.Pi/2)) + float64(h.Exact)*i.Hose.Slope
		w.cost += float64(h.Exact) * i.Hose.Cost
	}
	const dust = 1e-9
	lip := unit.Length(0)
	for _, p := range chain.Parts {
		for _, s := range p.Splits {
			lip = max(lip, s.Lip)
		}
	}
	for _, m := range a.LiftOut.Moves {
		w.leans = w.leans || i.Rules.Out && m.Turn != 0
	}
	for k, m := range a.LiftOut.Moves {
		// Off a lip it may go askew, and no farther; else it is lifted between what it is slid.
		level := m.Along.Z < 0.5 && m.Along.Z > -0.5
		if i.Rules.Out && k < len(a.LiftOut.Moves)-1 && (level || k == 0 && m.Distance <= lip+dust) {
			w.slide += float64(m.Distance)
		}
	}
	return w
}

// Two prices nearer than this are one: head in metres of water, money (a piece
// is cut in whole steps: four pieces, a step each), slide in metres.
const (
	sameHead  = 2e-4
	sameCost  = 4 * 0.0254 / 16 * 4
	sameSlide = 1e-4
)

// asGood tells that w is as good as v in every respect.
func (w priceOf) asGood(v priceOf) bool {
	return w.head <= v.head+sameHead && w.cost <= v.cost+sameCost && w.slide <= v.slide+sameSlide &&
		w.joints <= v.joints && (!w.drains || v.drains) && (!w.hosed || v.hosed)
}

// toldPrice is the price that the search tells.
func toldPrice(l *arrange.Layout) priceOf {
	return priceOf{
		head: float64(l.Worth.Head), cost: l.Worth.Cost, slide: float64(l.Worth.Slide),
		joints: l.Worth.Joints, drains: l.Laid.Water.Order == layout.ValveFirst, hosed: len(l.Laid.Hoses) > 0,
	}
}

// strictly tells that w beats v: no worse in any respect, and better in one by
// more than what counts as the same.
func strictly(w, v priceOf) bool {
	return w.head <= v.head && w.cost <= v.cost && w.slide <= v.slide && w.joints <= v.joints && (!w.drains || v.drains) && (!w.hosed || v.hosed) && !v.asGood(w)
}
