package design

import (
	"slices"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/hydro"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// bends and runs of the usual fittings, in the order in which they are told.
var usualFittings = []string{
	"elbow 90", "elbow 45", "street elbow 90", "street elbow 45", "union", "check valve swing", "check valve spring", atWall,
}

// atWall is the fitting in the hole.
const atWall = "bulkhead fitting"

// counter notes that every fitting is taken to be had where the job tells none.
func (m *model) counter() {
	if len(m.job.Stock.Fittings) == 0 && !m.job.Stock.Only {
		m.assume("/stock/fittings", AssumeCounter, unit.Value{}, leftEmpty)
	}
}

// mayUse fills the fittings and the pipe that a layout may be made of.
func (m *model) mayUse(a *Arranging, pump int, pipe catalog.Pipe) {
	var noLoss, noPrice []string
	sizes := []string{pipe.Size}
	add := func(name, size, path string) {
		f, err := m.book.Fitting(name, size, m.measured)
		if err != nil {
			m.refuse(path, err)
			return
		}
		p, ok := layout.PartOf(f, "")
		if !ok {
			m.remark(path, trace.Caution, trace.Message{Code: FindStockUnread, Args: []trace.Arg{trace.Str("fitting", f.Name), trace.Str("size", f.Size)}})
			return
		}
		for i := range a.Names {
			if a.Names[i] == f.Name && a.Input.Fittings[i].Part.Size == f.Size {
				return
			}
		}
		x := arrange.Fitting{Part: p, AtHand: m.atHand(f.Name, f.Size)}
		head, known := m.headOf(f.Name, f.Size, pipe, a.Flow)
		x.Head = head
		if x.AtHand == 0 {
			x.AtHand = -1
			a.excluded = append(a.excluded, excluded{f.Name, x})
			return
		}
		if !known && !slices.Contains(noLoss, f.Name) {
			noLoss = append(noLoss, f.Name)
		}
		if each, ok := priceOf(m.priced, job.PipeName{Kind: f.Body, Size: m.soldAs(f.Name, f.Size)}, unit.Value{}); ok {
			x.Cost, x.Priced = each.Amount.Amount.InexactFloat64(), true
		} else {
			noPrice = append(noPrice, f.Name+", "+m.soldAs(f.Name, f.Size))
		}
		a.Input.Fittings, a.Names = append(a.Input.Fittings, x), append(a.Names, f.Name)
		for _, e := range f.Ends {
			if (e.Kind == catalog.Socket || e.Kind == catalog.Spigot) && !slices.Contains(sizes, e.Size) {
				sizes = append(sizes, e.Size)
			}
		}
	}
	joins := m.portFittings(a, pump, pipe)
	for _, name := range joins {
		add(name.Kind, name.Size, "/pumps")
	}
	offer := m.offered(pipe, joins)
	for _, size := range offer.sizes {
		for _, name := range usualFittings {
			if name != atWall || offer.wall == "" || size == offer.wall {
				add(name, size, "/assembly/pipe")
			}
		}
	}
	for _, r := range m.reducers(&offer) {
		add(r.Kind, r.Size, "/assembly/pipe")
	}
	for i, s := range m.job.Stock.Fittings {
		if !s.None {
			add(s.Fitting, m.inFlow(s.Fitting, s.Size, offer.from), at("/stock/fittings", i))
		}
	}
	if s := &m.job.Stock; s.Only && s.Kerf.IsZero() {
		m.assume("/stock/kerf", AssumeKerf, unit.Of(s.Kerf.SI, unit.KindTape), leftEmpty)
	}
	for _, s := range sizes {
		m.lendTo(a, pipe, s, &noPrice)
	}
	if m.job.Assembly.Search.Hose {
		if a.Input.Hose = m.offeredHose(a, pipe); a.Input.Hose != nil && !a.Input.Hose.Priced {
			noPrice = append(noPrice, hoseName+", "+pipe.Size)
		}
	}
	if len(noLoss) > 0 {
		m.assume("/assembly", AssumeNoLoss, unit.Value{}, leftEmpty, trace.Str("fittings", strings.Join(noLoss, ", ")))
	}
	if len(noPrice) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindNoPrices, Args: []trace.Arg{trace.Str("items", strings.Join(noPrice, "; "))}}, Path: "/prices", Severity: trace.Info})
	}
	if !slices.ContainsFunc(a.Input.Fittings, func(f arrange.Fitting) bool { t, _ := f.Part.Turn(); return t != 0 }) && a.Input.Hose == nil {
		m.remark("/stock/fittings", trace.Caution, trace.Message{Code: FindNoElbow})
	}
	a.leavePrices(len(noPrice) == 0)
}

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

// portFittings names what joins the pump's port to the pipe: an adapter onto a
// thread, and a reducer where their sizes differ.
func (m *model) portFittings(a *Arranging, pump int, pipe catalog.Pipe) (out []job.PipeName) {
	end := a.Input.Standings[0].Pump.Outlet
	var adapter string
	switch end.Kind {
	case layout.FemaleThread:
		adapter = "male adapter"
	case layout.MaleThread:
		adapter = "female adapter"
	case layout.Spigot:
		return append(out, job.PipeName{Kind: "coupling", Size: pipe.Size})
	case layout.Socket:
		if end.Size != pipe.Size {
			return append(out, job.PipeName{Kind: "reducer bushing", Size: end.Size + " x " + pipe.Size})
		}
		return nil
	default:
		p := &m.job.Pumps[pump].Port
		m.fault(at("/pumps", pump)+"/port", CodeArrangePort, trace.Str("name", m.job.Pumps[pump].Name), trace.Str("size", p.Size), trace.Str("thread", p.Thread), trace.Str("pipe", pipe.Kind+" "+pipe.Size))
		return nil
	}
	for _, size := range m.book.FittingSizes(seriesOf(m.book, pipe)) {
		f, err := m.book.Fitting(adapter, size, m.measured)
		if err != nil || f.Ends[0].Size != end.Size {
			continue
		}
		if f.Ends[1].Size == pipe.Size {
			return []job.PipeName{{Kind: adapter, Size: size}}
		}
		// The first that screws on, with the reducer to the pipe.
		if reducer, err := m.book.Fitting("reducing coupling", f.Ends[1].Size+" x "+pipe.Size, m.measured); err == nil && len(out) == 0 {
			out = []job.PipeName{{Kind: adapter, Size: size}, {Kind: reducer.Name, Size: reducer.Size}}
		}
	}
	if len(out) == 0 {
		p := &m.job.Pumps[pump].Port
		m.fault(at("/pumps", pump)+"/port", CodeArrangePort, trace.Str("name", m.job.Pumps[pump].Name), trace.Str("size", p.Size), trace.Str("thread", p.Thread), trace.Str("pipe", pipe.Kind+" "+pipe.Size))
	}
	return out
}

// seriesOf gives the series of the fittings that go with a pipe.
func seriesOf(book *catalog.Book, pipe catalog.Pipe) string {
	if f, err := book.Fitting("elbow 90", pipe.Size, nil); err == nil {
		return f.Series
	}
	return ""
}

// atHand tells how many of a fitting there are: below zero as many as wanted.
func (m *model) atHand(name, size string) int {
	for _, s := range m.job.Stock.Fittings {
		n, err := m.book.Fitting(s.Fitting, s.Size, m.measured)
		if err != nil || n.Name != name || m.soldAs(n.Name, n.Size) != m.soldAs(name, size) {
			continue
		}
		switch {
		case s.None:
			return 0
		case m.job.Stock.Only:
			return max(1, s.Count)
		}
		return -1
	}
	if m.job.Stock.Only {
		return 0
	}
	return -1
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
	bore := m.bore(pipe, l.On)
	perRe, rest := l.Split(smoothFactor, bore)
	law, err := hydro.MinorLaw{Bore: bore, K: unit.Ratio(rest), K1: unit.Ratio(perRe)}.Prepare(m.water)
	if err != nil {
		return 0, false
	}
	head, _ := law.Loss(q)
	return unit.Length(head), true
}

// lendTo adds the pipe of a size: what a metre takes and costs, and what there is
// of it.
func (m *model) lendTo(a *Arranging, pipe catalog.Pipe, size string, noPrice *[]string) {
	p, err := m.pipe(job.PipeName{Kind: pipe.Kind, Size: size})
	if err != nil {
		return // a thread's size, or one that this kind of pipe is not made in
	}
	x := arrange.Pipe{Pipe: layout.PipeOf(p), AtHand: -1}
	name := job.PipeName{Kind: p.Kind, Size: p.Size}
	if law, err := (hydro.PipeLaw{Bore: p.Bore, Length: 1, Roughness: p.Roughness}).Prepare(m.water); err == nil {
		head, _ := law.Loss(a.Flow)
		x.Slope = float64(head)
	}
	if price, ok := priceOf(m.priced, name, unit.Of(unit.Length(1), unit.KindDistance)); ok {
		x.Cost, x.Priced = price.Amount.Amount.InexactFloat64()/price.Per.SI, true
	} else if cost, ok := m.perMetre(name); ok {
		x.Cost, x.Priced = cost, true
	} else {
		*noPrice = append(*noPrice, p.Kind+" "+p.Size)
	}
	if m.job.Stock.Only {
		x.Stock = m.inHand(name)
		x.AtHand = slices.Max(append(x.Stock.Lengths, 0))
	}
	a.Input.Pipes = append(a.Input.Pipes, x)
}

// perMetre gives what a metre of pipe costs where it is priced by the stick: that
// of the stick that is cheapest for its length.
func (m *model) perMetre(name job.PipeName) (cost float64, ok bool) {
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

// inHand gives all there is of a pipe where the counter has none: offcuts and
// counted sticks, and what else is to be cut from them.
func (m *model) inHand(name job.PipeName) *arrange.Stock {
	const most = 40 // pieces of a layout, and more
	s := arrange.Stock{Kerf: m.job.Stock.Kerf.SI, Grid: m.cutGrid()}
	for _, c := range m.job.Stock.Pieces {
		if m.named(c.Pipe) == name {
			s.Besides = append(s.Besides, slices.Repeat([]unit.Length{c.Length.SI}, max(1, c.Count))...)
		}
	}
	add := func(l unit.Length, count int) {
		s.Lengths = append(s.Lengths, slices.Repeat([]unit.Length{l}, min(count, most+len(s.Besides)))...)
	}
	for _, o := range m.job.Stock.Offcuts {
		if m.named(o.Pipe) == name {
			add(o.Length.SI, max(1, o.Count))
		}
	}
	for _, k := range m.job.Stock.Sticks {
		if m.named(k.Pipe) == name && k.Count > 0 {
			add(k.Length.SI, k.Count)
		}
	}
	return &s
}
