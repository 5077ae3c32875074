package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// placement is where check valve and union stand among the legs.
type placement struct {
	check, union int
	unionFirst   bool
	class        class
}

// placements gives all that the valve's data allow. A check valve with union ends
// may be opened at either nut: at that towards the pump it holds the water, at
// that towards the wall it comes out with the pump and lets the water down.
func (s *search) placements(o *order) []placement {
	out := s.placed(o)
	if o.check == nil || !o.check.opens {
		return out
	}
	for _, pl := range out {
		pl.class = drains
		out = append(out, pl)
	}
	return out
}

func (s *search) placed(o *order) []placement {
	var out []placement
	legs, free := len(o.elbows)+1, o.dirs[len(o.compass.pre):]
	checks, unions := []int{-1}, []int{-1}
	if o.check != nil {
		checks = nil
		for leg, d := range free[:legs] {
			if mayStand(&o.check.part, d) && o.may(o.check, leg) {
				checks = append(checks, leg)
			}
		}
	}
	if o.union != nil {
		unions = nil
		for leg := range legs {
			if o.may(o.union, leg) {
				unions = append(unions, leg)
			}
		}
	}
	if s.glued.any() {
		for _, u := range unions {
			for _, c := range checks {
				for _, first := range [2]bool{false, true} {
					if first && (u < 0 || u != c) || first && o.divided(u) {
						continue
					}
					cl := stands
					if drainsWith(o.parts(c, u, first)) {
						cl = drains
					}
					out = append(out, placement{c, u, first, cl})
				}
			}
		}
		return out
	}
	for _, u := range unions {
		for _, c := range checks {
			before := c >= 0 && u >= 0 && c < u
			switch {
			case c >= 0 && c == u && o.divided(c):
				cl := stands
				if o.beyond(o.union) {
					cl = drains
				}
				out = append(out, placement{c, u, cl == stands, cl})
			case c >= 0 && c == u:
				out = append(out, placement{c, u, true, stands}, placement{c, u, false, drains})
			case before:
				out = append(out, placement{c, u, false, drains})
			default:
				out = append(out, placement{c, u, false, stands})
			}
		}
	}
	return out
}

// placed makes the chain of an order with valve and union in their places; nil
// where the pieces do not go together.
func (w *worker) placed(o *order, pl *placement) *chain {
	w.parts = o.parts(pl.check, pl.union, pl.unionFirst)
	c := w.chain(o, w.parts)
	if c == nil || pl.class != drains || o.check == nil || !o.check.opens {
		return c
	}
	for i := range c.bodies { // opened at the nut towards the wall
		if b := &c.bodies[i]; b.item == 2*c.union {
			b.moves = b.opened <= 1
		}
	}
	return c
}

// mayStand tells that a check valve may stand with the flow along d, as package
// layout judges it: by its data, or by its kind.
func mayStand(p *layout.Part, d geom.Vec3) bool {
	allowed := p.Allowed
	if allowed == layout.AllowedUnknown {
		allowed = layout.AllowedAny
		if p.Kind == layout.CheckSwing {
			allowed = layout.AllowedLevelOrUp
		}
	}
	const plumb = 2 * unit.Degree
	rising := math.Asin(math.Max(-1, math.Min(1, d.Z)))
	switch allowed {
	case layout.AllowedUp:
		return rising >= math.Pi/2-float64(plumb)
	case layout.AllowedLevelOrUp:
		return rising >= -float64(plumb)
	}
	return true
}
