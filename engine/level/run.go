package level

import (
	"math"

	"plashet/engine/unit"
)

// running is pond, vault and stores as they come to a steady state while the
// pump runs.
type running struct {
	place
	stores  []float64
	passes  float64 // flow that lasts
	missing float64 // water to be added before all of the pump's flow lasts; below 0 what is to spare
}

// starved tells that the pump's flow does not last. The plan area of the pond
// turns the hair by which a level may be out into water.
func (s *solver) starved(missing float64) bool {
	return missing > hair*float64(s.in.Pond.Plan(s.in.Line))
}

// least is what pond and vault hold when the pump's flow is just steady: the
// pond at what the skimmer needs and the vault drawn down; without a sill both
// down to the pump's least level.
func (s *solver) least() float64 {
	if s.weir == nil {
		return s.pondVolume(s.low+s.screen) + s.vaultVolume(s.low)
	}
	return s.pondVolume(s.weir.needed()) + s.vaultVolume(s.drawn())
}

// run lets the pump run until nothing changes any more, from what pond, vault
// and stores hold at rest.
//
// Where there is water enough all stores are full and basin.steady tells the
// levels. Where there is not, the pump has drawn the vault down and gasps: from
// then on it passes, on the whole, only what comes to it. The pond stands where
// the sill passes just that flow q (without a sill, at the pump's least level),
// and lips and reaches hold what q makes them hold:
//
//	V_pond(sill + (q/(C L))^(2/3)) + V_vault(least) + sum of stores(q) = total
//
// The left side grows with q, so q is one root of it. Where even q = 0 takes
// more water than there is, nothing comes over the sill at the end: the pond
// stands at the sill (or below it, as it stood at rest), the vault is drawn
// down, and the stores are filled in their order as far as the water goes.
func (s *solver) run(w water, stores []float64) running {
	total := w.sum() + sum(stores)
	full := s.floats(len(stores))
	s.passing(full, 1)
	r := running{stores: full, passes: s.flow(), missing: s.least() + sum(full) - total}
	switch {
	case r.missing <= 0:
		r.place = s.steady(total - sum(full))
	case !s.trickle(&r, total):
		s.dry(&r, w, stores)
	}
	return r
}

// trickle finds the part of the flow that lasts; false where none does.
func (s *solver) trickle(r *running, total float64) bool {
	flow := s.flow()
	low := s.vaultVolume(s.drawn())
	pond := func(part float64) float64 {
		if s.weir == nil {
			return s.pondVolume(s.low + s.screen)
		}
		return s.pondVolume(s.weir.crest + s.weir.over(part*flow))
	}
	over := func(part float64) float64 { return pond(part) + low + s.passing(r.stores, part) - total }
	if flow == 0 || over(0) > 0 {
		return false
	}
	part := root(over, 0, 1)
	r.passes = part * flow
	// The rounding of the root goes to the pond.
	r.place = s.apart(water{total - low - s.passing(r.stores, part), low})
	return true
}

// passing fills in what the stores hold with a part of the flow, and sums it.
func (s *solver) passing(stores []float64, part float64) float64 {
	part *= s.part
	if part == 1 {
		for i := range stores {
			stores[i] = float64(s.in.Stores[i].Running)
		}
		return sum(stores)
	}
	d := depthsAt(part)
	for i := range stores {
		stores[i] = s.in.Stores[i].at(d)
	}
	return sum(stores)
}

// flow is what the pump gives at the vault's level.
func (s *solver) flow() float64 { return float64(s.in.Flow) * s.part }

// gives lets the pump give a part of its everyday flow.
func (s *solver) gives(part float64) {
	if s.part = part; s.weir == nil {
		return
	}
	s.weir.flow = s.flow()
	s.weir.head = s.weir.over(s.weir.flow)
}

// atLevel is run with the flow that the pump gives at the level that the vault
// comes to by it: less flow holds less on its way and leaves the vault higher, so
// what the flow is off by grows with it, by one at least, and has one root,
// looked for by secants.
func (s *solver) atLevel(w water, stores []float64) running {
	r := s.run(w, stores)
	k := s.in.FlowSlope
	if k == 0 || s.in.Flow <= 0 {
		return r
	}
	k /= float64(s.in.Flow)
	off := func() float64 {
		want := 1 + k*(r.zVault-float64(s.in.FlowAt))
		return s.part - min(max(want, leastPart), mostPart)
	}
	last, offLast := 0.0, 0.0
	slope := 1.0
	for n := range partRounds {
		now := off()
		if math.Abs(now) < partClose {
			break
		}
		if n > 0 {
			slope = max(1, (now-offLast)/(s.part-last))
		}
		last, offLast = s.part, now
		s.gives(s.part - now/slope)
		r = s.run(w, stores)
	}
	return r
}

// How far the flow is followed away from where it is known, and how near it must
// come to itself, as parts of it.
const (
	leastPart, mostPart = 0.2, 1.5
	partClose           = 1e-6
	partRounds          = 20
)

// share is a flow as a part of the pump's everyday one; a pump that gives none
// gives all it can.
func (s *solver) share(q float64) float64 {
	if s.in.Flow == 0 {
		return 1
	}
	return q / float64(s.in.Flow)
}

// dry fills in the end at which nothing comes to the pump any more.
func (s *solver) dry(r *running, w water, stores []float64) {
	r.passes = 0
	room := s.passing(r.stores, s.share(0)) // what the stores can take, with nothing running
	have := s.floats(len(stores))
	for i, v := range stores {
		have[i] = min(v, r.stores[i])
		w.pond += v - have[i]
	}
	whole := w.sum() + sum(have)
	if s.weir == nil {
		// Pond and vault are one: drawn to the pump's least level, or left where
		// they rest below it.
		least := s.least()
		left := max(min(w.sum(), least), whole-room)
		fill(r.stores, have, whole-left)
		if left < least {
			r.place = s.rest(water{left, 0})
		} else {
			r.place = s.steady(left)
		}
		return
	}
	sill := s.pondVolume(s.weir.crest)
	vault := min(w.vault, s.vaultVolume(s.drawn()))
	pond := max(min(w.pond, sill), min(sill, whole-vault-room))
	vault = max(vault, whole-pond-room) // a dry vault takes what comes over the sill
	fill(r.stores, have, whole-pond-vault)
	r.place = s.apart(water{pond, vault})
}

// fill takes water into the stores in their order, from what they have up to
// what they can take, which it turns into what they hold.
func fill(upTo, have []float64, water float64) {
	spare := water - sum(have)
	for i, v := range have {
		add := max(0, min(spare, upTo[i]-v))
		upTo[i] = v + add
		spare -= add
	}
}

func sum(v []float64) float64 {
	t := 0.0
	for _, x := range v {
		t += x
	}
	return t
}

// lessReserve is the pond and vault of steady running once the evaporation
// reserve is gone.
func (s *solver) lessReserve(r *running) place {
	if s.in.Reserve == 0 {
		return r.place
	}
	w := r.water
	w.pond -= min(s.reserve(), max(0, w.pond))
	return s.run(w, r.stores).place
}

// reserve is the volume that the evaporation reserve takes: its depth over the
// pond's surface at the water line.
func (s *solver) reserve() float64 {
	return float64(s.in.Reserve) * float64(s.in.Pond.Plan(s.in.Line))
}

// runningAt is steady running with the pond kept at a level: below what the
// skimmer needs only a part of the flow passes.
func (s *solver) runningAt(z float64) running {
	full := s.floats(len(s.in.Stores))
	r := running{stores: full, passes: float64(s.in.Flow)}
	switch {
	case s.weir == nil:
		r.place = s.placed(z, z-s.screen)
		if z-s.screen < s.low-hair {
			r.passes = 0
		}
	case z >= s.weir.needed()-hair:
		behind, _ := s.weir.behind(z)
		r.place = s.placed(z, behind-s.screen)
	default:
		r.place = s.placed(z, s.drawn())
		q, _ := s.weir.lip.Flow(unit.Head(max(0, z-s.weir.crest)))
		r.passes = min(float64(q), r.passes)
	}
	held := s.passing(full, s.share(r.passes))
	r.missing = s.least() + s.allFull() - r.sum() - held
	return r
}

// allFull is what the stores hold with all of the flow.
func (s *solver) allFull() float64 { return float64(s.out.Transit) }
