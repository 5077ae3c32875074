package verify

import (
	"math"

	"plashet/engine/layout"
	"plashet/engine/trace"
)

// nearest keeps the least of several distances and what it is to.
type nearest struct {
	d    float64
	what string
}

func far() nearest { return nearest{d: math.Inf(1)} }

func (n *nearest) hold(d float64, what string) {
	if !(d >= n.d) { // so that what is not a number stays
		n.d, n.what = d, what
	}
}

// to holds two shapes against each other. Only what is nearer than anything
// before, or than want, needs to be known sharply.
func (n *nearest) to(a, b *shape, want float64, what string) {
	if math.IsNaN(n.d) || a.box.apart(b.box) >= max(n.d, want) {
		return
	}
	n.hold(distance(&a.body, &b.body, max(n.d, want)), what)
}

// clearances holds every item against walls, pump, obstacles and the rest of
// the chain. Each that fails is a check of its own; where all pass, the nearest
// is told.
func (v *verifier) clearances() {
	v.pumpClear()
	exit := v.in.Vault.Outlet.Wall
	if v.in.Vault.Round {
		exit = layout.Round
	}
	for i := range v.items {
		it := &v.items[i]
		if len(it.shapes) == 0 {
			continue
		}
		part := trace.Str("part", it.name)
		v.wallClear(it, exit, part)
		pump := far()
		for k := range it.shapes {
			s := &it.shapes[k]
			if it.first && s.leg == 0 {
				continue // it is screwed into the port
			}
			for m := range v.pump {
				pump.to(s, &v.pump[m], v.lim.pump, "pump")
			}
		}
		if pump.what != "" {
			v.atLeast(CheckPumpClear, it.path, pump.d, v.lim.pump, part)
		}
		v.each(CheckObstacle, it, v.lim.obstacle, "obstacle", len(v.obstacles), func(k int) nearest {
			n := far()
			for m := range it.shapes {
				n.to(&it.shapes[m], &v.obstacles[k], v.lim.obstacle, v.in.Vault.Obstacles[k].Name)
			}
			return n
		})
		v.each(CheckParts, it, v.lim.part, "other", i, func(k int) nearest { return it.between(&v.items[k], v.lim.part) })
	}
}

// each holds an item against n others: one check for each that is too near, or
// one for the nearest.
func (v *verifier) each(code string, it *item, limit float64, name string, n int, find func(int) nearest) {
	part, least, failed := trace.Str("part", it.name), far(), false
	for k := range n {
		d := find(k)
		least.hold(d.d, d.what)
		if !(d.d >= limit-grain) {
			failed = true
			v.atLeast(code, it.path, d.d, limit, part, trace.Str(name, d.what))
		}
	}
	if !failed && least.what != "" {
		v.atLeast(code, it.path, least.d, limit, part, trace.Str(name, least.what))
	}
}

// between gives the least distance of two items that must not meet. What is
// joined meets, and what runs along one straight stretch is held apart by the
// pieces' lengths.
func (it *item) between(o *item, want float64) nearest {
	n := far()
	if d := it.at - o.at; d <= 1 || d == 2 && it.at%2 == 0 && it.direct {
		return n
	}
	for i := range it.shapes {
		for k := range o.shapes {
			if s, t := &it.shapes[i], &o.shapes[k]; s.leg != t.leg || s.leg < 0 {
				n.to(s, t, want, o.name)
			}
		}
	}
	return n
}

func (v *verifier) wallClear(it *item, exit layout.Wall, part trace.Arg) {
	except := layout.Wall("")
	if it.exit {
		except = exit
	}
	var names [8]layout.Wall
	var least [8]float64
	n := 0
	for k := range it.shapes {
		i := 0
		v.inside.room(&it.shapes[k].body, except, func(d float64, w layout.Wall) {
			if k == 0 {
				names[i], least[i] = w, d
			} else {
				least[i] = min(least[i], d)
			}
			i++
			n = i
		})
	}
	worst, failed := 0, false
	for i := range n {
		if !(least[i] >= least[worst]) {
			worst = i
		}
		if !(least[i] >= v.lim.wall-grain) {
			failed = true
			v.atLeast(CheckWall, it.path, least[i], v.lim.wall, part, trace.Str("wall", string(names[i])))
		}
	}
	if !failed {
		v.atLeast(CheckWall, it.path, least[worst], v.lim.wall, part, trace.Str("wall", string(names[worst])))
	}
}

func (v *verifier) pumpClear() {
	wall := far()
	for i := range v.pump {
		d, name := v.inside.least(&v.pump[i].body)
		wall.hold(d, string(name))
	}
	v.atLeast(CheckPumpWall, v.in.Path, wall.d, 0, trace.Str("wall", wall.what))
	for k := range v.obstacles {
		n := far()
		for i := range v.pump {
			n.to(&v.pump[i], &v.obstacles[k], v.lim.obstacle, "")
		}
		v.atLeast(CheckPumpObstacle, v.in.Path, n.d, v.lim.obstacle, trace.Str("obstacle", v.in.Vault.Obstacles[k].Name))
	}
}
