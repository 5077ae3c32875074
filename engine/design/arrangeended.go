package design

import (
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/job"
)

// endedNames are the check valves with union ends that the tables have.
var endedNames = []string{string(layout.CheckSwing) + unionEnded, string(layout.CheckSpring) + unionEnded}

// endedValves gives the fittings of a search with the check valves with union ends
// in place of valve and union, which are known not to do; none where such a valve is
// on offer already, or no valve or no union is to be put in. What cannot be had,
// nobody is sent for.
func (m *model) endedValves(a *Arranging) []arrange.Fitting {
	in := &a.Input
	glued := slices.Concat(in.Glued.FromPort, in.Glued.FromWall)
	has := func(p *layout.Part) bool { return p.Kind == layout.Union || p.Kind.IsCheck() }
	if !in.Rules.Check || !in.Rules.Union || slices.ContainsFunc(glued, func(l layout.Laid) bool { return has(&l.Part) }) {
		return nil
	}
	list := slices.Clone(in.Fittings)
	var sizes []string
	for i := range list {
		p := &list[i].Part
		if p.Kind.IsCheck() && len(p.Splits) > 1 {
			return nil
		}
		if has(p) {
			list[i].AtHand = 0
		}
		if p.Kind == layout.Union && !slices.Contains(sizes, p.Size) {
			sizes = append(sizes, p.Size)
		}
	}
	before := len(list)
	for _, name := range endedNames {
		for _, size := range sizes {
			f, err := m.book.Fitting(name, size, m.measured)
			if err != nil || m.noneOf(f.Name, f.Size) {
				continue
			}
			if p, ok := layout.PartOf(f, ""); ok {
				list = append(list, arrange.Fitting{Part: p, AtHand: -1})
			}
		}
	}
	if len(list) == before {
		return nil
	}
	return list
}

// noneOf tells that the stock says of a fitting that none can be had.
func (m *model) noneOf(name, size string) bool {
	return slices.ContainsFunc(m.job.Stock.Fittings, func(s job.StockFitting) bool {
		n := m.fitted(s.Fitting, s.Size, job.PipeName{})
		return s.None && n.Fitting == name && n.Size == m.soldAs(name, size)
	})
}

// endedIn names the check valve with union ends in a chain.
func endedIn(c *layout.Input) (name, size string) {
	for i := range c.Parts {
		if p := &c.Parts[i].Part; p.Kind.IsCheck() && len(p.Splits) > 1 {
			return string(p.Kind) + unionEnded, p.Size
		}
	}
	return "", ""
}
