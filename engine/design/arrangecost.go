package design

import (
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
)

// leavePrices keeps the costs, and takes them out of the search's input where not
// all are known: a fitting without a price must not win by costing nothing.
func (a *Arranging) leavePrices(all bool) {
	a.fittings, a.pipes = slices.Clone(a.Input.Fittings), slices.Clone(a.Input.Pipes)
	if h := a.Input.Hose; h != nil {
		a.hose = *h
	}
	if all {
		return
	}
	if h := a.Input.Hose; h != nil {
		bare := *h
		bare.Cost, bare.Priced = 0, false
		a.Input.Hose = &bare
	}
	for i := range a.Input.Fittings {
		a.Input.Fittings[i].Cost, a.Input.Fittings[i].Priced = 0, false
	}
	for i := range a.Input.Pipes {
		a.Input.Pipes[i].Cost, a.Input.Pipes[i].Priced = 0, false
	}
}

// cost adds up what a layout costs; false where a part of it has no price.
func (a *Arranging) cost(l *arrange.Layout) (sum float64, known bool) {
	known = true
	for i := range l.Chain.Parts {
		if l.Chain.Parts[i].Kind == layout.Hose {
			continue // by its length
		}
		k := a.fittingOf(&l.Chain.Parts[i].Part)
		if k < 0 {
			return 0, false
		}
		sum, known = sum+a.fittings[k].Cost, known && a.fittings[k].Priced
	}
	for _, c := range l.Laid.Pieces {
		k := slices.IndexFunc(a.pipes, func(p arrange.Pipe) bool { return p.Pipe == c.Pipe })
		if k < 0 {
			return 0, false
		}
		sum, known = sum+float64(c.Cut)*a.pipes[k].Cost, known && a.pipes[k].Priced
	}
	for i := range l.Laid.Hoses {
		sum, known = sum+float64(l.Laid.Hoses[i].Cut)*a.hose.Cost, known && a.hose.Priced
	}
	return sum, known
}

// bore gives the inside diameter on which a fitting's loss counts.
func (m *model) bore(pipe catalog.Pipe, size string) unit.Length {
	if p, err := m.pipe(job.PipeName{Kind: pipe.Kind, Size: size}); err == nil {
		return p.Bore
	}
	return pipe.Bore
}

// headOf gives the head that a fitting takes at a flow, K v²/2g with K of its own
// size, the smaller one where it reduces; 0 and false for one without a loss in
// the tables.
func (m *model) headOf(name, size string, pipe catalog.Pipe, q unit.Flow) (unit.Length, bool) {
	l, err := m.loss(name, size)
	if err != nil {
		return 0, false
	}
	return m.minorHead(l, m.bore(pipe, l.On), q)
}

// minorHead gives the head that a loss takes at a flow, K v²/2g on a bore; false
// where the bore is none.
func (m *model) minorHead(l catalog.Loss, bore unit.Length, q unit.Flow) (unit.Length, bool) {
	perRe, rest := l.Split(smoothFactor, bore)
	law, err := hydro.MinorLaw{Bore: bore, K: unit.Ratio(rest), K1: unit.Ratio(perRe)}.Prepare(m.water)
	if err != nil {
		return 0, false
	}
	head, _ := law.Loss(q)
	return unit.Length(head), true
}

// slopeOf gives the head that a metre of pipe takes at a flow, in metres; 0 for a
// pipe without a bore.
func (m *model) slopeOf(p catalog.Pipe, q unit.Flow) float64 {
	law, err := hydro.PipeLaw{Bore: p.Bore, Length: 1, Roughness: p.Roughness}.Prepare(m.water)
	if err != nil {
		return 0
	}
	head, _ := law.Loss(q)
	return float64(head)
}

// perMetre gives what a metre of pipe costs, in the job's currency: by its length,
// or where it is priced by the stick that of the stick that is cheapest for its own.
func (m *model) perMetre(name job.PipeName) (cost float64, ok bool) {
	if price, ok := priceOf(m.priced, name, unit.Of(unit.Length(1), unit.KindDistance)); ok {
		return price.Amount.Amount.InexactFloat64() / price.Per.SI, true
	}
	_, sticks := m.stock(name)
	for _, s := range sticks {
		if s.price.Currency == "" || s.long <= 0 {
			continue
		}
		if c := s.price.Amount.InexactFloat64() / float64(s.long); !ok || c < cost {
			cost, ok = c, true
		}
	}
	return cost, ok
}
