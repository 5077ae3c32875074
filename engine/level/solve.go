package level

import (
	"slices"

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
// Where the water does not suffice for the flow, solver.run tells what becomes
// of it: such a state is marked as starved.
//
// Errors: an *Error for values out of range, a *hydro.Error for the sill's
// weir. Nothing is returned then.
func Solve(in Inputs) (Levels, error) {
	s, err := newSolver(in)
	if err != nil {
		return Levels{}, err
	}
	s.courses()
	s.lines()
	s.judge()
	return s.out, nil
}

func newSolver(in Inputs) (*solver, error) {
	if err := in.check(); err != nil {
		return nil, err
	}
	s := &solver{in: &in, basin: basin{in: &in}}
	if v := in.Vault; v != nil {
		s.screen = float64(v.ScreenLoss)
		if v.Sill != nil {
			s.weir = new(sillWeir)
			if err := v.Sill.prepare(in.Flow, s.weir); err != nil {
				return nil, err
			}
		}
	}
	s.ready()
	return s, nil
}

// ready sets what follows from the inputs at once.
func (s *solver) ready() {
	in := s.in
	s.part = 1
	s.out.HeadNeeded = 0
	if s.weir != nil {
		s.out.HeadNeeded = unit.Head(s.weir.head)
	}
	s.stand, s.low = in.heights()
	s.out.Transit, s.out.Draw, s.out.DrawOpen = 0, 0, 0
	for i := range in.Stores {
		v := &in.Stores[i]
		s.out.Transit += v.Running
		s.out.Draw += v.Running - v.Held
		s.out.DrawOpen += v.Running - v.HeldOpen
	}
	s.fill()
	s.out.in = *in
}

// fill lets a float valve top the pond up while running, where a start from the
// water line leaves it lower than the valve keeps it.
func (s *solver) fill() {
	in := s.in
	switch {
	case !in.Fills:
	case in.TopsUp:
		in.RunningLine = max(in.RunningLine, in.Fill)
	default:
		before := heldOpen
		if in.Valve {
			before = held
		}
		if natural := s.run(s.filled(float64(in.Line)).water, s.volumes(before)); natural.zPond < float64(in.Fill) {
			in.TopsUp, in.RunningLine = true, in.Fill
		}
	}
}

// solver carries one solution while it is made.
type solver struct {
	basin
	in    *Inputs
	stand float64 // what the pump stands on
	part  float64 // of its everyday flow that the pump gives
	out   Levels
	brief bool      // what Again tells, and no more
	room  []float64 // from which Again takes its lists
}

// floats gives a list of n numbers.
func (s *solver) floats(n int) []float64 {
	if len(s.room) < n {
		return make([]float64, n)
	}
	out := s.room[:n:n]
	s.room = s.room[n:]
	return out
}

// courses runs the courses through their moments. What only a check valve
// could bring about is left out where none is fitted.
func (s *solver) courses() {
	dry := func(*Store) unit.Volume { return 0 }
	start := s.filled(float64(s.in.Line))
	for _, c := range [...]struct {
		course Course
		before func(*Store) unit.Volume
		valve  bool
	}{{CourseFirst, dry, false}, {CourseKept, held, true}, {CourseOpen, heldOpen, false}} {
		if c.valve && !s.in.Valve || s.brief && c.course != CourseFirst && c.course != s.out.Everyday() {
			continue
		}
		h := s.history(c.course, running{place: start, stores: s.volumes(c.before)})
		h.add(MomentRest)
		h.run(MomentRun)
		h.stops(c.course != CourseOpen)
	}
	if s.in.TopsUp {
		h := s.history(CourseTopped, s.runningAt(float64(s.in.RunningLine)))
		h.add(MomentRun)
		h.stops(true)
	}
}

func held(v *Store) unit.Volume     { return v.Held }
func heldOpen(v *Store) unit.Volume { return v.HeldOpen }

func (s *solver) volumes(of func(*Store) unit.Volume) []float64 {
	out := s.floats(len(s.in.Stores))
	for i := range out {
		out[i] = float64(of(&s.in.Stores[i]))
	}
	return out
}

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

// history is a course under way.
type history struct {
	s         *solver
	course    Course
	reference float64
	last      running
	ran       running // the last time that the pump was let run
	part      float64 // of the everyday flow that it gave then
	hasRun    bool
}

func (s *solver) history(c Course, r running) *history {
	return &history{s: s, course: c, reference: r.zPond, last: r}
}

// run lets the pump run until nothing changes any more.
func (h *history) run(m Moment) {
	if h.hasRun && h.ran.missing <= 0 {
		h.last = h.ran // nothing is lost over a stop: the same water comes to the same state
	} else {
		if h.course == h.s.out.Everyday() {
			h.last = h.s.run(h.last.water, h.last.stores)
		} else {
			h.last = h.s.atLevel(h.last.water, h.last.stores)
		}
		h.ran, h.part, h.hasRun = h.last, h.s.part, true
	}
	h.s.gives(h.part)
	h.add(m)
	h.s.gives(1)
}

// stops goes through the stops that follow on running, and the starts after
// them.
func (h *history) stops(closing bool) {
	if closing && h.s.in.Valve {
		h.stop(MomentHeld, held)
		h.run(MomentRerun)
	}
	h.stop(MomentOpen, heldOpen)
	if !h.s.brief {
		h.run(MomentReopen)
	}
}

// stop lets the stores run down to what they keep: the pipe and the box through
// the pump into the vault, the rest into the pond, and with the valve holding a
// box that is joined with a lower one over that one's lip into the pond too. It
// starts from the last running state, so that a valve stuck open is judged from
// where the pump runs.
func (h *history) stop(m Moment, keep func(*Store) unit.Volume) {
	w := h.last.water
	left := h.s.floats(len(h.last.stores))
	have, boxes := h.last.stores, h.s.in.Boxes
	if boxes != nil && (m != MomentHeld || !boxes.part(h.s.in.Stores, have)) {
		boxes = nil
	}
	if boxes != nil {
		have = append([]float64(nil), have...)
		w.pond += boxes.communicate(h.s.in.Stores, have)
	}
	for i, v := range have {
		store := &h.s.in.Stores[i]
		left[i] = min(v, float64(keep(store)))
		switch {
		case boxes != nil && slices.Contains(boxes.Store, i):
			left[i] = v
		case store.backThroughPump() && h.s.in.Vault != nil && (!store.Joined || m != MomentHeld):
			w.vault += v - left[i]
		default:
			w.pond += v - left[i]
		}
	}
	h.last = running{place: h.s.rest(w), stores: left}
	h.add(m)
}

// add records the state the course has come to.
func (h *history) add(m Moment) {
	in, p := h.s.in, &h.last
	st := State{
		Course: h.course, Moment: m,
		Pond: lengthOf(p.zPond), Vault: lengthOf(p.zVault),
		PondVolume: volumeOf(p.pond), VaultVolume: volumeOf(p.vault),
		InStores: volumeOf(sum(p.stores)),
		Change:   lengthOf(p.zPond - h.reference),
	}
	if !h.s.brief {
		st.Stores = make([]unit.Volume, len(in.Stores))
		for i, v := range p.stores {
			st.Stores[i] = volumeOf(v)
		}
	}
	st.Total = st.PondVolume + st.VaultVolume + st.InStores
	if m.Running() {
		st.Starved = h.s.starved(p.missing)
		st.Flow = unit.Flow(h.s.flow())
		if st.Starved {
			st.Passes, st.Missing = unit.Flow(p.passes), volumeOf(p.missing)
		} else {
			st.Passes, st.Spare = st.Flow, volumeOf(max(0, -p.missing))
		}
		h.s.margins(&st, p)
	}
	if !in.NoRim {
		st.Edge = h.s.edge(m, p)
	}
	h.s.out.States = append(h.s.out.States, st)
}

func (s *solver) margins(st *State, r *running) {
	later := r.place
	if !s.brief {
		later = s.lessReserve(r)
	}
	if s.weir != nil {
		st.Sill = margin(r.zPond-s.weir.crest, later.zPond-s.weir.crest, s.weir.head)
	}
	if s.in.Stand.MinKnown && !s.in.Stand.Unknown {
		st.Pump = margin(r.zVault-s.stand, later.zVault-s.stand, float64(s.in.Stand.MinWater))
	}
}

func margin(present, later, needed float64) Margin {
	return Margin{true, lengthOf(present), lengthOf(needed), lengthOf(present - needed), lengthOf(later - needed)}
}

// edge gives the room under the rim, dry and after the design rain.
func (s *solver) edge(m Moment, r *running) Edge {
	rim := float64(s.in.Rim)
	after := r.place
	if rain := s.rain(); rain > 0 && !s.brief {
		w := water{r.pond + rain, r.vault}
		if m.Running() {
			after = s.run(w, r.stores).place
		} else {
			after = s.rest(w)
		}
	}
	return Edge{
		Known:     true,
		Freeboard: lengthOf(rim - r.zPond), Spill: volumeOf(s.spill(r.place)),
		RainRoom: lengthOf(rim - after.zPond), RainSpill: volumeOf(s.spill(after)),
	}
}

// rain is the volume of the design rain: its depth over the pond's surface,
// taken where it is widest, over the vault, whose lid need not be tight, and
// over the watercourses, of which it runs on to the pond.
func (s *solver) rain() float64 {
	z := max(s.in.Rim, s.in.Line)
	plan := s.in.Pond.Plan(z) + s.in.RainOn
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
			least = root(func(z float64) float64 {
				behind, _ := s.weir.behind(z)
				return behind - s.screen - need
			}, least, need+s.screen+s.weir.head+1)
		}
	}
	if s.in.Reserve > 0 {
		at := s.runningAt(least)
		least = s.steady(at.sum() + s.reserve()).zPond
	}
	s.out.Lines.Least = lengthOf(least)
	if s.in.NoRim {
		return
	}
	rim := float64(s.in.Rim)
	full := s.pondVolume(rim) + s.vaultVolume(rim) - s.rain()
	at := func(draw unit.Volume) unit.Length {
		return lengthOf(min(rim, s.steady(full-float64(draw)).zPond))
	}
	s.out.Lines.GreatestHeld, s.out.Lines.GreatestOpen = at(s.out.Draw), at(s.out.DrawOpen)
}
