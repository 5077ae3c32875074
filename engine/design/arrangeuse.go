package design

import (
	"slices"
	"strings"

	"plashet/engine/arrange"
	"plashet/engine/catalog"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/job"
)

// usualFittings are those that a layout may be made of in every size, in the order
// in which they are told.
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

// choice is what a layout may be made of, as it is gathered.
type choice struct {
	m       *model
	a       *Arranging
	pipe    catalog.Pipe // the assembly's
	sizes   []string     // of the pipe that goes into the fittings
	noLoss  []string     // names of fittings without a loss in the tables
	noPrice []string     // what has no price
}

// mayUse fills the fittings and the pipe that a layout may be made of.
func (m *model) mayUse(a *Arranging, pump int, pipe catalog.Pipe) {
	c := &choice{m: m, a: a, pipe: pipe, sizes: []string{pipe.Size}}
	c.fittings(pump)
	if s := &m.job.Stock; s.Only && s.Kerf.IsZero() {
		m.assume("/stock/kerf", AssumeKerf, unit.Of(s.Kerf.SI, unit.KindTape), leftEmpty)
	}
	for _, s := range c.sizes {
		c.lend(s)
	}
	if m.job.Assembly.Search.Hose && m.knows(pipe) && m.hasHose(pipe.Size) {
		if a.Input.Hose = m.stockedHose(m.offeredHose(a, pipe)); a.Input.Hose != nil && !a.Input.Hose.Priced {
			c.noPrice = append(c.noPrice, hoseName+", "+pipe.Size)
		}
	}
	if len(c.noLoss) > 0 {
		m.assume("/assembly", AssumeNoLoss, unit.Value{}, leftEmpty, trace.Str("fittings", strings.Join(c.noLoss, ", ")))
	}
	if len(c.noPrice) > 0 {
		m.find(trace.Finding{Message: trace.Message{Code: FindNoPrices, Args: []trace.Arg{trace.Str("items", strings.Join(c.noPrice, "; "))}}, Path: "/prices", Severity: trace.Info})
	}
	if !slices.ContainsFunc(a.Input.Fittings, func(f arrange.Fitting) bool { t, _ := f.Part.Turn(); return t != 0 }) && a.Input.Hose == nil {
		m.remark("/stock/fittings", trace.Caution, trace.Message{Code: FindNoElbow})
	}
	a.leavePrices(len(c.noPrice) == 0)
}

// fittings adds what joins the port, the usual fittings of every size offered,
// those that lead from one size to another, and the stock's own.
func (c *choice) fittings(pump int) {
	joins := c.m.portFittings(c.a, pump, c.pipe)
	for _, name := range joins {
		c.fitting(name.Kind, name.Size, "/pumps")
	}
	offer := c.m.offered(c.pipe, joins)
	for _, size := range offer.sizes {
		for _, name := range usualFittings {
			if name != atWall || offer.wall == "" || size == offer.wall {
				c.fitting(name, size, "/assembly/pipe")
			}
		}
	}
	for _, r := range c.m.reducers(&offer) {
		c.fitting(r.Kind, r.Size, "/assembly/pipe")
	}
	for i, s := range c.m.job.Stock.Fittings {
		if !s.None {
			c.fitting(s.Fitting, c.m.inFlow(s.Fitting, s.Size, offer.from), at("/stock/fittings", i))
		}
	}
}

// fitting adds one fitting, once; one that cannot be had is kept for what would
// mend a vault.
func (c *choice) fitting(name, size, path string) {
	a := c.a
	f, err := c.m.book.Fitting(name, size, c.m.measured)
	if err != nil {
		c.m.refuse(path, err)
		return
	}
	p, ok := layout.PartOf(f, "")
	if !ok {
		c.m.remark(path, trace.Caution, trace.Message{Code: FindStockUnread, Args: []trace.Arg{trace.Str("fitting", f.Name), trace.Str("size", f.Size)}})
		return
	}
	for i := range a.Names {
		if a.Names[i] == f.Name && a.Input.Fittings[i].Part.Size == f.Size {
			return
		}
	}
	x := arrange.Fitting{Part: p, AtHand: c.m.atHand(f.Name, f.Size)}
	head, known := c.m.headOf(f.Name, f.Size, c.pipe, a.Flow)
	x.Head = head
	if x.AtHand == 0 {
		x.AtHand = -1
		a.excluded = append(a.excluded, excluded{f.Name, x})
		return
	}
	if !known && !slices.Contains(c.noLoss, f.Name) {
		c.noLoss = append(c.noLoss, f.Name)
	}
	if each, ok := priceOf(c.m.priced, job.PipeName{Kind: f.Body, Size: c.m.soldAs(f.Name, f.Size)}, unit.Value{}); ok {
		x.Cost, x.Priced = each.Amount.Amount.InexactFloat64(), true
	} else {
		c.noPrice = append(c.noPrice, f.Name+", "+c.m.soldAs(f.Name, f.Size))
	}
	a.Input.Fittings, a.Names = append(a.Input.Fittings, x), append(a.Names, f.Name)
	for _, e := range f.Ends {
		if (e.Kind == catalog.Socket || e.Kind == catalog.Spigot) && !slices.Contains(c.sizes, e.Size) {
			c.sizes = append(c.sizes, e.Size)
		}
	}
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
