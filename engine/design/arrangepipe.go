package design

import (
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/job"
)

// lend adds the pipe of a size: what a metre takes and costs, and what there is of it.
func (c *choice) lend(size string) {
	p, err := c.m.pipe(job.PipeName{Kind: c.pipe.Kind, Size: size})
	if err != nil {
		return // a thread's size, or one that this kind of pipe is not made in
	}
	x := arrange.Pipe{Pipe: layout.PipeOf(p), Slope: c.m.slopeOf(p, c.a.Flow), AtHand: -1}
	name := job.PipeName{Kind: p.Kind, Size: p.Size}
	if x.Cost, x.Priced = c.m.perMetre(name); !x.Priced {
		c.noPrice = append(c.noPrice, p.Kind+" "+p.Size)
	}
	if c.m.job.Stock.Only {
		x.Stock = c.m.inHand(name)
		x.AtHand = slices.Max(append(x.Stock.Lengths, 0))
	}
	c.a.Input.Pipes = append(c.a.Input.Pipes, x)
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
