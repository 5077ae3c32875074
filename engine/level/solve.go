package level

import (
	"math"

	"plashet/engine/unit"
)

func lengthOf(z float64) unit.Length { return unit.Length(z) }
func volumeOf(v float64) unit.Volume { return unit.Volume(v) }

// Solve works out the levels of every course and moment, the margins, the
// running lines that serve, and the findings.
//
// Formula, for every state: V_pond(z_pond) + V_vault(z_vault) = total - sum of
// what the stores hold, with the total fixed for the course; at rest above the
// sill z_vault = z_pond; running z_vault follows from the skimmer's weir (H =
// (Q/(C L))^(2/3) needed over the sill, Villemonte's drowned weir above that)
// less the screen's loss. Without a vault z_vault = z_pond.
//
// Errors: an *Error for values out of range, a *hydro.Error for the sill's
// weir. Nothing is returned then.
func Solve(in Inputs) (Levels, error) {
	if err := in.check(); err != nil {
		return Levels{}, err
	}
	s := &solver{in: &in, basin: basin{in: &in}}
	if v := in.Vault; v != nil {
		s.screen = float64(v.ScreenLoss)
		if v.Sill != nil {
			w, err := v.Sill.prepare(in.Flow)
			if err != nil {
				return Levels{}, err
			}
			s.weir = w
			s.out.HeadNeeded = unit.Head(w.head)
		}
	}
	s.low = float64(in.Stand.Floor)
	if in.Stand.MinKnown {
		s.low += float64(in.Stand.MinWater)
	}
	if in.Vault != nil {
		s.low = max(s.low, float64(in.Vault.Body.Floor()))
	}
	for _, v := range in.Stores {
		s.out.Transit += v.Running
		s.out.Draw += v.Running - v.Held
		s.out.DrawOpen += v.Running - v.HeldOpen
	}
	s.out.in = in
	s.courses()
	s.lines()
	s.judge()
	return s.out, nil
}

// solver carries one solution while it is made.
type solver struct {
	basin
	in  *Inputs
	out Levels
}

// courses runs the courses through their moments.
func (s *solver) courses() {
	dry := func(*Store) unit.Volume { return 0 }
	start := s.filled(float64(s.in.Line))
	for _, c := range [...]struct {
		course Course
		before func(*Store) unit.Volume
	}{{CourseFirst, dry}, {CourseKept, held}, {CourseOpen, heldOpen}} {
		h := s.history(c.course, start, c.before)
		h.add(MomentRest, start, c.before)
		h.run(MomentRun)
		if c.course != CourseOpen {
			h.stop(MomentHeld, held)
			h.run(MomentRerun)
		}
		h.stop(MomentOpen, heldOpen)
		h.run(MomentReopen)
	}
	if s.in.TopsUp {
		h := s.history(CourseTopped, s.runningAt(float64(s.in.RunningLine)), runs)
		h.add(MomentRun, h.last, runs)
		h.stop(MomentHeld, held)
		h.run(MomentRerun)
		h.stop(MomentOpen, heldOpen)
		h.run(MomentReopen)
	}
}

func runs(v *Store) unit.Volume     { return v.Running }
func held(v *Store) unit.Volume     { return v.Held }
func heldOpen(v *Store) unit.Volume { return v.HeldOpen }

// filled is the pond filled to a level at rest: the vault shares it when it
// lies above the sill, otherwise the vault is dry.
func (s *solver) filled(z float64) place {
	switch {
	case s.in.Vault == nil:
		return s.placed(z, z)
	case s.weir != nil && z <= s.weir.crest:
		return s.placed(z, float64(s.in.Vault.Body.Floor()))
	}
	return s.placed(z, z)
}

// runningAt is steady running with the pond at a level.
func (s *solver) runningAt(z float64) place {
	switch {
	case s.weir == nil:
		return s.placed(z, z-s.screen)
	case z >= s.weir.needed():
		return s.placed(z, s.weir.behind(z)-s.screen)
	}
	return s.placed(z, min(s.low, s.weir.crest-s.screen))
}

// history is a course under way.
type history struct {
	s         *solver
	course    Course
	total     float64 // of all water
	reference float64
	last      place
	holds     func(*Store) unit.Volume // what the stores hold now
}

func (s *solver) history(c Course, p place, holds func(*Store) unit.Volume) *history {
	return &history{s: s, course: c, total: p.sum() + s.sum(holds), reference: p.zPond, last: p, holds: holds}
}

func (s *solver) sum(holds func(*Store) unit.Volume) float64 {
	t := 0.0
	for i := range s.in.Stores {
		t += float64(holds(&s.in.Stores[i]))
	}
	return t
}

// run lets the pump run until all stores are full.
func (h *history) run(m Moment) {
	p := h.s.running(h.total-h.s.sum(runs), h.last.vault)
	h.add(m, p, runs)
}

// stop lets the stores run down to what they keep: the pipe and the box through
// the pump into the vault, the rest into the pond. It starts from the last
// running state, so that a valve stuck open is judged from where the pump runs.
func (h *history) stop(m Moment, keep func(*Store) unit.Volume) {
	w := h.last.water
	w.pond -= h.last.missing
	for i := range h.s.in.Stores {
		v := &h.s.in.Stores[i]
		back := float64(h.holds(v) - keep(v))
		if v.backThroughPump() && h.s.in.Vault != nil {
			w.vault += back
		} else {
			w.pond += back
		}
	}
	h.add(m, h.s.rest(w), keep)
}

// add records a state.
func (h *history) add(m Moment, p place, holds func(*Store) unit.Volume) {
	h.last, h.holds = p, holds
	in := h.s.in
	st := State{
		Course: h.course, Moment: m,
		Pond: lengthOf(p.zPond), Vault: lengthOf(p.zVault),
		PondVolume: volumeOf(p.pond), VaultVolume: volumeOf(p.vault), Missing: volumeOf(p.missing),
		Stores: make([]unit.Volume, len(in.Stores)),
		Change: lengthOf(p.zPond - h.reference),
	}
	for i := range in.Stores {
		st.Stores[i] = holds(&in.Stores[i])
		st.InStores += st.Stores[i]
	}
	st.Total = st.PondVolume + st.VaultVolume + st.InStores - st.Missing
	if m.Running() {
		h.s.margins(&st, p)
	}
	st.Edge = h.s.edge(m, p)
	h.s.out.States = append(h.s.out.States, st)
}

// reserve is the volume that the evaporation reserve takes: its depth over the
// pond's surface at the water line.
func (s *solver) reserve() float64 {
	return float64(s.in.Reserve) * float64(s.in.Pond.Plan(s.in.Line))
}

// lessReserve is the place once the reserve is gone.
func (s *solver) lessReserve(p place) place {
	if s.in.Reserve == 0 {
		return p
	}
	return s.running(p.sum()-p.missing-s.reserve(), p.vault)
}

func (s *solver) margins(st *State, p place) {
	dry := s.lessReserve(p)
	if s.weir != nil {
		st.Sill = margin(p.zPond-s.weir.crest, dry.zPond-s.weir.crest, s.weir.head)
	}
	if s.in.Stand.MinKnown {
		floor := float64(s.in.Stand.Floor)
		st.Pump = margin(p.zVault-floor, dry.zVault-floor, float64(s.in.Stand.MinWater))
	}
}

func margin(present, later, needed float64) Margin {
	return Margin{true, lengthOf(present), lengthOf(needed), lengthOf(present - needed), lengthOf(later - needed)}
}

// edge gives the room under the rim, dry and after the design rain.
func (s *solver) edge(m Moment, p place) Edge {
	rim := float64(s.in.Rim)
	after := p
	if rain := s.rain(); rain > 0 {
		w := water{p.pond - p.missing + rain, p.vault}
		if m.Running() {
			after = s.running(w.sum(), p.vault)
		} else {
			after = s.rest(w)
		}
	}
	return Edge{
		Freeboard: lengthOf(rim - p.zPond), Spill: volumeOf(s.spill(p)),
		RainRoom: lengthOf(rim - after.zPond), RainSpill: volumeOf(s.spill(after)),
	}
}

// rain is the volume of the design rain: its depth over the pond's surface,
// taken where it is widest, and over the vault, whose lid need not be tight.
func (s *solver) rain() float64 {
	z := max(s.in.Rim, s.in.Line)
	plan := s.in.Pond.Plan(z)
	if s.in.Vault != nil {
		plan += s.in.Vault.Body.Plan(max(z, s.in.Vault.Body.Top()))
	}
	return float64(s.in.DesignRain) * float64(plan)
}

// spill is the water above the rim in pond and vault.
func (s *solver) spill(p place) float64 {
	rim := float64(s.in.Rim)
	over := max(0, p.pond-s.pondVolume(rim))
	if p.zVault > rim {
		over += p.vault - s.vaultVolume(rim)
	}
	return over
}

// lines finds the running lines that serve.
func (s *solver) lines() {
	need := s.low // the pump's least level, in the vault or pond
	least := need + s.screen
	if s.weir != nil {
		least = s.weir.needed()
		if top := s.weir.crest - s.screen; need > top {
			// The pump needs more than the sill's height gives: the weir must be
			// drowned that far.
			least = root(func(z float64) float64 { return s.weir.behind(z) - s.screen - need }, least, need+s.screen+s.weir.head+1)
		}
	}
	if s.in.Reserve > 0 {
		least = s.running(s.runningAt(least).sum()+s.reserve(), math.Inf(1)).zPond
	}
	rim := float64(s.in.Rim)
	full := s.pondVolume(rim) + s.vaultVolume(rim) - s.rain()
	at := func(draw unit.Volume) unit.Length {
		return lengthOf(min(rim, s.running(full-float64(draw), math.Inf(1)).zPond))
	}
	s.out.Lines = Lines{lengthOf(least), at(s.out.Draw), at(s.out.DrawOpen)}
}
