package arrange

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// class is what happens to the water above when the union is opened.
type class uint8

const (
	stands class = iota // the valve beyond the union holds it, or there is none to hold
	drains              // the valve stands before the union: it comes down
)

func classOf(o layout.Order) class {
	if o == layout.ValveFirst {
		return drains
	}
	return stands
}

// worth is what decides whether a layout is beaten.
type worth struct {
	head, cost, slide float64
	lean              float64 // rad
	joints            int
	class             class
	hosed             bool
}

// Below these a difference is none: m, money, m, rad.
const alikeHead, alikeCost, alikeSlide, alikeLean = 1e-4, 5e-3, 1e-5, 1e-6

// beats tells that w is as good as v in every respect.
func (w worth) beats(v worth) bool {
	return w.joints <= v.joints && w.class <= v.class && (v.hosed || !w.hosed) &&
		w.head <= v.head+alikeHead && w.cost <= v.cost+alikeCost && w.slide <= v.slide+alikeSlide && w.lean <= v.lean+alikeLean
}

func (l *Layout) worth() worth {
	return worth{
		head: float64(l.Worth.Head), cost: l.Worth.Cost, slide: float64(l.Worth.Slide), lean: float64(l.Worth.Lean),
		joints: l.Worth.Joints, class: classOf(l.Laid.Water.Order), hosed: len(l.Laid.Hoses) > 0,
	}
}

// beaten tells that something found already is as good in every respect.
func beaten(front []Layout, v worth) bool {
	return slices.ContainsFunc(front, func(l Layout) bool { return l.worth().beats(v) })
}

// join adds a layout and drops those it beats.
func join(front []Layout, l Layout) []Layout {
	if beaten(front, l.worth()) {
		return front
	}
	front = slices.DeleteFunc(front, func(o Layout) bool { return l.worth().beats(o.worth()) })
	return append(front, l)
}

// best gives the layouts in the order in which they are shown: water that comes
// down when the union is opened weighs most, because it falls on who opens it. A
// hose comes after what is rigid, because it is what ages first; but the best with
// one is shown second.
func best(front []Layout, n int) []Layout {
	slices.SortStableFunc(front, func(a, b Layout) int {
		return cmp.Or(cmp.Compare(classOf(a.Laid.Water.Order), classOf(b.Laid.Water.Order)), cmp.Compare(len(a.Laid.Hoses), len(b.Laid.Hoses)), cmp.Compare(a.Worth.Lean, b.Worth.Lean), cmp.Compare(a.Worth.Slide, b.Worth.Slide), cmp.Compare(a.Worth.Joints, b.Worth.Joints), cmp.Compare(a.Worth.Head, b.Worth.Head), cmp.Compare(a.Worth.Cost, b.Worth.Cost))
	})
	if k := slices.IndexFunc(front, func(l Layout) bool { return len(l.Laid.Hoses) > 0 }); k > 1 {
		hosed := front[k]
		copy(front[2:k+1], front[1:k])
		front[1] = hosed
	}
	return front[:min(n, len(front))]
}

// pipeOf gives what the input has of a pipe.
func (s *search) pipeOf(p layout.Pipe, usual *Pipe) *Pipe {
	for i := range s.in.Pipes {
		if s.in.Pipes[i].Size == p.Size {
			return &s.in.Pipes[i]
		}
	}
	return usual
}

// weigh works out what a laid assembly costs in every respect.
func (s *search) weigh(o *order, c *chain, parts []*piece, a *layout.Assembly) Worth {
	w := Worth{Head: unit.Length(o.head), Cost: o.cost, Priced: o.priced && o.pipe.Priced && (o.then == nil || o.then.Priced), Released: a.Water.Released}
	for i := range c.in.Parts {
		if p := &c.in.Parts[i]; p.Kind == layout.Hose {
			w.Hoses++
		} else if turned, _ := p.Turn(); turned != 0 {
			w.Elbows++
		}
	}
	for _, p := range a.Pieces {
		q := s.pipeOf(p.Pipe, o.pipe)
		w.Head += p.StopToStop * unit.Length(q.Slope)
		if c.made[p.After+1] != nil {
			continue // it is there
		}
		w.Cost += float64(p.StopToStop) * q.Cost // not as cut, or two would differ by how they are rounded
	}
	if more := longerThan(a, parts); more > 0 {
		w.Head += unit.Length(more * s.in.Hose.Slope)
		w.Cost += more * s.in.Hose.Cost
	}
	for i, l := range c.frame.Links {
		if c.made[i] == nil {
			w.Joints += l.Joints
		}
	}
	if c.through {
		w.Joints++
	}
	if c.union >= 0 {
		w.Deep = s.in.Vault.Depth - unit.Length(a.Places[c.union].Centre.Z)
	}
	if n := len(a.LiftOut.Moves); n > 0 && s.in.Rules.Out {
		for _, m := range a.LiftOut.Moves[:n-1] {
			if w.Lean += m.Turn; math.Abs(m.Along.Z) < 0.5 {
				w.Slide += m.Distance
			}
		}
	}
	return w
}
