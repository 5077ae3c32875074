package size

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// label is a choice of pipe for a part of the tree: what it costs and the head
// that it needs, with the way back to its choices.
type label struct {
	cost   Cost
	need   float64
	choice int
	below  [2]*label // what hangs on it: the rest of the chain, and of a pair
	seg    int       // segment of choice; -1: only joins what is below
}

// choices writes the choices of a label and all below it.
func (l *label) choices(into []int) {
	if l == nil {
		return
	}
	if l.seg >= 0 {
		into[l.seg] = l.choice
	}
	l.below[0].choices(into)
	l.below[1].choices(into)
}

// prune sorts labels by cost and keeps those that need less head than every
// cheaper one: a staircase that falls.
func prune(ls []label) []label {
	slices.SortStableFunc(ls, func(a, b label) int {
		return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.need, b.need))
	})
	kept := ls[:0]
	for _, l := range ls {
		if len(kept) == 0 || l.need < kept[len(kept)-1].need {
			kept = append(kept, l)
		}
	}
	return kept
}

// join lays two staircases that start at one point side by side: costs add up
// and the greater need counts. The steps are met from the dearest head down;
// only the one that holds the greater need can lower it.
func join(a, b []label) []label {
	var out []label
	for i, j := 0, 0; i < len(a) && j < len(b); {
		out = append(out, label{cost: a[i].cost + b[j].cost, need: max(a[i].need, b[j].need), seg: -1, below: [2]*label{&a[i], &b[j]}})
		switch {
		case a[i].need > b[j].need:
			i++
		case a[i].need < b[j].need:
			j++
		default:
			i, j = i+1, j+1
		}
	}
	return out
}

// stairs is the least cost of pipe for every head at one flow factor.
type stairs struct {
	y    unit.Ratio
	step []label // cost rising, need falling
}

// cheapest gives the cheapest step that needs at most a head.
func (s *stairs) cheapest(head unit.Head) (*label, bool) {
	i, _ := slices.BinarySearchFunc(s.step, float64(head), func(l label, h float64) int {
		if l.need > h {
			return -1
		}
		return 1
	})
	if i == len(s.step) {
		return nil, false
	}
	return &s.step[i], true
}

// head that a choice takes at a flow.
func (c *Choice) loss(q unit.Flow) float64 {
	var sum unit.Head
	for _, l := range [2]hydro.Law{c.Pipe, c.Fittings} {
		if l != nil {
			h, _ := l.Loss(q)
			sum += h
		}
	}
	return float64(sum)
}

// level is the water that an outlet stands at, at a flow.
func (o *Outlet) level(q unit.Flow) float64 {
	level := o.Level
	if o.Lip != nil {
		h, _ := o.Lip.Loss(q)
		level += h
	}
	if o.Pours {
		level = max(level, o.Inlet)
	}
	return float64(level)
}

// stairs boils the pipe down for a flow factor, with the choices of at least a
// bore; no step where a segment has none. Steps that need more than most are
// left out: no pump lifts them.
func (t *tree) stairs(y unit.Ratio, bore unit.Length, most float64) *stairs {
	s := &stairs{y: y}
	most += float64(t.p.Level)
	if t.p.Uniform {
		s.step = t.uniform(y, bore, most)
	} else {
		s.step = t.below(-1, y, bore, most)
	}
	for i := range s.step {
		s.step[i].need -= float64(t.p.Level)
	}
	return s
}

// below is the staircase of all that hangs on the end of a segment (-1: on the
// pump): the levels that must be reached there.
func (t *tree) below(seg int, y unit.Ratio, bore unit.Length, most float64) []label {
	out := []label{{need: t.highest(seg, y), seg: -1}}
	for _, c := range t.children[seg+1] {
		out = join(out, t.through(c, y, bore, most))
	}
	return out
}

// highest is the highest water of the outlets at the end of a segment.
func (t *tree) highest(seg int, y unit.Ratio) float64 {
	top := math.Inf(-1)
	for _, o := range t.outlets[seg+1] {
		out := &t.p.Outlets[o]
		top = max(top, out.level(unit.Flow(y)*out.Wanted))
	}
	return top
}

// through is the staircase from the start of a segment on.
func (t *tree) through(seg int, y unit.Ratio, bore unit.Length, most float64) []label {
	rest := t.below(seg, y, bore, most)
	q := unit.Flow(y) * t.flow[seg]
	var out []label
	for _, k := range t.allowed[seg] {
		c := &t.p.Segments[seg].Choices[k]
		if c.Bore < bore {
			continue
		}
		loss := c.loss(q)
		for i := range rest {
			if need := rest[i].need + loss; need <= most {
				out = append(out, label{cost: rest[i].cost + c.Cost, need: need, choice: k, seg: seg, below: [2]*label{&rest[i]}})
			}
		}
	}
	return prune(out)
}

// uniform is the staircase of one choice throughout.
func (t *tree) uniform(y unit.Ratio, bore unit.Length, most float64) []label {
	var out []label
	for k := range t.alike {
		l, ok := t.alone(k, -1, y, bore)
		if ok && l.need <= most {
			out = append(out, l)
		}
	}
	return prune(out)
}

// alone is the label of one choice throughout, from the end of a segment on.
func (t *tree) alone(k, seg int, y unit.Ratio, bore unit.Length) (label, bool) {
	sum := label{need: t.highest(seg, y), seg: -1}
	for _, c := range t.children[seg+1] {
		n := k
		if len(t.p.Segments[c].Choices) == 1 {
			n = 0
		}
		rest, ok := t.alone(k, c, y, bore)
		choice := &t.p.Segments[c].Choices[n]
		if !ok || choice.Bore < bore || !slices.Contains(t.allowed[c], n) {
			return label{}, false
		}
		l := label{cost: rest.cost + choice.Cost, need: rest.need + choice.loss(unit.Flow(y)*t.flow[c]), choice: n, seg: c, below: [2]*label{&rest}}
		before := sum
		sum = label{cost: before.cost + l.cost, need: max(before.need, l.need), seg: -1, below: [2]*label{&before, &l}}
	}
	return sum, true
}
