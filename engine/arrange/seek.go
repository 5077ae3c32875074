package arrange

import (
	"math"

	"plashet/engine/geom"
)

// nets is how many nets there are, each finer than the one before: what no assembly
// of a chain can keep by the last one leaves out nothing that has a twentieth of
// what keeps the middles of two bodies apart to spare (see net.go).
const nets = 3

// hair is by how much shorter a chain's pipe must be than what beats it, for finer
// nets to be asked, in metres.
const hair = 5e-4

// seek runs branch and bound: first whether there can be anything at all, exact
// distances let pass, then with the planes of the list. Where the two differ it
// asks the next finer net.
func (w *worker) seek(t *trial, o *order, c *chain, out leaving, limit float64) *Layout {
	b := &w.b
	for net := 1; ; net++ {
		if !w.s.listed && w.none(t, o, c, out, limit-hair) {
			return nil
		}
		got, some := w.shortest(t, o, c, out, limit)
		if some || b.capped || w.s.in.Rules.Tilt || w.s.listed {
			return got
		}
		if net == nets {
			t.tally.Tight++
			return nil
		}
		finer := *o
		finer.compass = w.s.finer(o)
		if o, c = &finer, w.chain(&finer, w.parts); c == nil {
			return nil
		}
	}
}

// none tells that a chain has no assembly with a value below a limit, not even
// with what the list of planes may lose let off.
func (w *worker) none(t *trial, o *order, c *chain, out leaving, limit float64) bool {
	b, some := &w.b, false
	w.set(c, out, false)
	b.of, b.outer = o.fill, true
	b.cap *= o.compass.patience()
	b.leaf = func([]float64) bool {
		some = true
		b.best, b.capped = math.Inf(-1), true // one is enough
		return false
	}
	b.run(limit)
	none := !some && !b.capped
	b.capped, b.refused = false, 0
	w.count(t)
	return none
}

// shortest gives the shortest assembly of a chain that planes of the list keep
// apart, laid and proved; some, that there is one, laid or refused. Only where the
// first one is refused it runs again, with each assembly laid as it is found: one
// that was refused bounds nothing.
func (w *worker) shortest(t *trial, o *order, c *chain, out leaving, limit float64) (got *Layout, some bool) {
	s, b := w.s, &w.b
	lay := func(x []float64) bool {
		l, ok := s.lay(o, w.parts, x)
		if ok = ok && (s.judge == nil || s.judge(l)); ok {
			got = l
		}
		return ok
	}
	w.found = w.found[:0]
	w.set(c, out, false)
	b.of = o.fill
	b.cap *= o.compass.patience()
	b.leaf = func(x []float64) bool {
		w.found = append(w.found[:0], x...)
		return true
	}
	b.run(limit)
	w.count(t)
	switch {
	case len(w.found) == 0:
		return nil, false
	case lay(w.found):
	case s.in.Rules.Tilt:
		b.capped = true // one look is dear enough
	default:
		w.set(c, out, false)
		b.of = o.fill
		b.leaf = lay
		b.run(limit)
		w.count(t)
	}
	if got != nil {
		got.length, got.Odd = b.best, o.way.odd
	}
	return got, true
}

// within tells that a chain has an assembly, whether or not it comes apart and has
// its play; walled, whether or not it keeps clear of anything but the walls.
func (w *worker) within(t *trial, c *chain, walled bool) (ok, capped bool) {
	w.set(c, leaving{without: true}, true)
	w.b.walled = walled
	return w.any(t, w.s.in.Rules.Nodes)
}

// possible tells that a chain has an assembly that keeps all that is asked of it.
func (w *worker) possible(t *trial, c *chain, out leaving, nodes int) (ok, capped bool) {
	w.set(c, out, false)
	return w.any(t, nodes)
}

// any seeks one assembly.
func (w *worker) any(t *trial, nodes int) (ok, capped bool) {
	w.b.leaf = func([]float64) bool {
		ok = true
		w.b.best = math.Inf(-1) // one is enough
		w.b.capped = true
		return false
	}
	w.b.cap = nodes
	w.b.first = 0
	w.b.run(math.Inf(1))
	capped = w.b.capped && !ok
	w.b.capped, w.b.refused = false, 0
	w.count(t)
	return ok, capped
}

// set makes a chain ready for branch and bound; lax, without asking for play.
func (w *worker) set(c *chain, out leaving, lax bool) {
	b := &w.b
	b.s, b.c, b.out, b.lax, b.give, b.of = w.s, c, out, lax, nil, nil
	b.outer = !c.whole() && !w.s.listed // what stands for several rules out only what none of them can have
	b.plays()
	b.keeps, b.kept, b.walled = b.keeps[:0], false, false
	b.walls = b.walls[:0]
	for _, wl := range w.s.walls {
		if !wl.slid || !out.without {
			b.walls = append(b.walls, wl)
		}
	}
	b.nodes, b.programsN, b.capped, b.cap = 0, 0, false, w.s.in.Rules.Nodes
	b.refused, b.least = 0, math.Inf(1)
}

func (w *worker) count(t *trial) {
	t.tally.Chains++
	t.tally.Nodes += w.b.nodes
	t.tally.Programs += w.b.programsN
	t.tally.Refused += w.b.refused
}

// leavings gives the ways out to look at, by which way the union's first half
// comes off and what its faces reach into each other.
func (s *search) leavings(back geom.Vec3, lip float64) []leaving {
	if !s.in.Rules.Out || s.in.Rules.Tilt || back == (geom.Vec3{}) {
		return []leaving{{without: true}}
	}
	level := math.Abs(back.Z) < 1e-9
	if lip > 0 {
		if !level {
			return nil // the pump stands on the floor and cannot go down, nor up along a lip that is not upright
		}
		return []leaving{{slides: true, u: back, least: lip}}
	}
	var out []leaving
	if back.Z >= -1e-9 {
		out = append(out, leaving{}) // a nut on an upright pipe with the pump below it holds it down
	}
	for _, u := range [4]geom.Vec3{{X: -1}, {X: 1}, {Y: -1}, {Y: 1}} {
		out = append(out, leaving{slides: true, u: u})
	}
	return out
}
