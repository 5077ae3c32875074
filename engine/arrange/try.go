package arrange

import (
	"math"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// stage is how far an order came.
type stage uint8

const (
	stageNone  stage = iota
	stageWalls       // elbows reach the hole within the walls
	stageClear       // and keep clear of everything
	stageLaid        // with valve and union, but without the way out
)

// trial is what came of one order.
type trial struct {
	found  []Layout
	tally  Tally
	open   []worth // what was left undecided takes at least
	passed stage
	looks  int // assemblies laid with the pump leaned over
}

// add takes the work of another trial in.
func (t *trial) add(o *trial) {
	t.tally.add(o.tally)
	t.open = append(t.open, o.open...)
	t.passed = max(t.passed, o.passed)
}

// worker tries orders, one after the other, with the same store.
type worker struct {
	s      *search
	b      branch
	stamps map[*compass]*stamps
	parts  []*piece // of the chain that is looked at
	found  []float64
}

func newWorker(s *search) *worker {
	return &worker{s: s, stamps: map[*compass]*stamps{}, b: branch{halt: s.halted}}
}

// try looks at one order: first where sketches of its way leave room for valve and
// union, then at its elbows alone, which have no less room than with these among
// them (see bareChain), then at every place for these.
func (w *worker) try(o *order, front []Layout) (t trial) {
	s := w.s
	least := o.least()
	if beaten(front, least) {
		return t
	}
	var sites []site
	for _, f := range w.fates(&t, o) {
		least.class = f.class
		if beaten(front, least) {
			continue
		}
		l := w.line(o, &f.placement)
		if l == nil {
			continue
		}
		if limit := s.limit(front, o.fill, *l, least); f.below(limit + l.least) {
			sites = append(sites, site{f, l, limit})
		}
	}
	if len(sites) == 0 {
		return t
	}
	bare := w.bareChain(o)
	if bare == nil {
		return t
	}
	line := bare.line().least
	if ok, capped := w.possible(&t, bare, leaving{without: true}, s.in.Rules.Nodes); !ok && !capped {
		return t
	}
	line = math.Max(o.line, line+w.b.first)
	t.passed = stageClear
	var best [2]*Layout // by class
	for i := range sites {
		si := &sites[i]
		least.class = si.class
		if beaten(front, least) || best[si.class] != nil && !slides(best[si.class], o) && beaten([]Layout{*best[si.class]}, least) {
			continue
		}
		if line-si.line.least >= si.limit {
			continue
		}
		w.place(&t, o, si, least, &best)
	}
	for _, l := range best {
		if l != nil {
			t.found = append(t.found, *l)
			t.passed = stageLaid
		}
	}
	return t
}

// site is a place for valve and union that an order may have room for.
type site struct {
	fate
	line  *line
	limit float64 // of the gaps between the hubs, from which on it is beaten
}

// below tells that a way out of a place may leave the centre line shorter than
// that.
func (f *fate) below(line float64) bool {
	for i := range f.outs {
		if o := &f.outs[i]; o.line < line+slideWeight*o.least {
			return true
		}
	}
	return false
}

// place seeks the shortest assembly of one chain, straight out first, then with
// a slide along each wall. Where it was left undecided, at a limit of work or
// because an assembly was refused that was the shortest of its branch, that is
// told with what the chain takes at least.
func (w *worker) place(t *trial, o *order, si *site, least worth, best *[2]*Layout) {
	w.parts = o.parts(si.check, si.union, si.unionFirst)
	c := w.chain(o, w.parts)
	if c == nil || w.s.in.Rules.Play && c.closing() < 0 {
		return // nothing can be measured in place
	}
	for _, out := range si.outs {
		if w.s.in.Rules.Tilt {
			if t.looks++; t.looks > mostLooks {
				t.open = append(t.open, least)
				return
			}
		}
		had := best[least.class]
		if out.slides && out.least == 0 && had != nil && !slides(had, o) {
			return // nobody slides a pump that lifts straight out
		}
		limit := si.limit + slideWeight*out.least
		if had != nil && slides(had, o) == (out.slides && out.least == 0) {
			limit = math.Min(limit, had.length)
		}
		if out.line-si.line.least >= limit {
			continue
		}
		got := w.seek(t, o, c, out.leaving, limit)
		if got != nil {
			best[least.class] = got
		}
		if w.b.capped || w.b.refused > 0 && w.b.least < math.Min(w.b.best, limit)-alikeLength {
			t.open = append(t.open, least)
		}
	}
}

// alikeLength is a length of pipe that makes no difference: far less than a cut
// is rounded to.
const alikeLength = 1e-5 // m

// slides tells that the pump must be slid farther than off the union's lip.
func slides(l *Layout, o *order) bool { return float64(l.Worth.Slide) > o.slide+alikeSlide }

// seek runs branch and bound, and lays what it ends with. Only where that is
// refused it runs again, with each assembly laid as it is found: one that was
// refused bounds nothing.
func (w *worker) seek(t *trial, o *order, c *chain, out leaving, limit float64) (got *Layout) {
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
	b.leaf = func(x []float64) bool {
		w.found = append(w.found[:0], x...)
		return true
	}
	b.run(limit)
	w.count(t)
	switch {
	case len(w.found) == 0 || lay(w.found):
	case s.in.Rules.Tilt:
		b.capped = true // one look is dear enough
	default:
		w.set(c, out, false)
		b.leaf = lay
		b.run(limit)
		w.count(t)
	}
	if got != nil {
		got.length = b.best
	}
	return got
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
	b.s, b.c, b.out, b.lax, b.give = w.s, c, out, lax, nil
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

// closing gives the joint whose piece is measured in place: an upright one,
// because the pump has no play in height, the nearest to the pump; -1 where the
// chain has none.
func (c *chain) closing() int {
	for i, k := range c.slot {
		if k >= 0 && c.made[i] == nil && math.Abs(c.dirs[i].Z) > 0.7 {
			return i
		}
	}
	return -1
}

// lay makes the assembly of a solution, has it judged by package layout and
// proved by package verify; false where one of them refuses it.
func (s *search) lay(o *order, parts []*piece, x []float64) (*Layout, bool) {
	c, ok := s.newChain(o, parts)
	if !ok {
		return nil, false
	}
	in := c.in
	in.Vault = s.in.Vault
	in.Pose = s.in.Standings[o.standing].poseAt(o.turned, x[varX], x[varY])
	in.Parts = append([]layout.Laid(nil), c.in.Parts...)
	marks(in.Parts, parts)
	for i, k := range c.slot {
		j := layout.Join{}
		if k >= 0 {
			j.By, j.Distance = layout.Faces, unit.Length(math.Max(0, x[k]))
			if i == c.closing() {
				j = layout.Join{Closing: true}
			}
		}
		if m := c.made[i]; m != nil {
			j = m.before
		}
		if i == 0 {
			in.Start = j
		} else {
			in.Parts[i-1].Next = j
		}
	}
	s.drill(&in, c, x)
	a, findings, faults := layout.Lay(in)
	if len(faults) > 0 {
		return nil, false
	}
	for i := range findings {
		if f := &findings[i]; s.refuses(f) && !s.past(f.Code, f.Args) {
			return nil, false
		}
	}
	if !s.cuttable(&a) {
		return nil, false
	}
	report := verify.Prove(in, a)
	for _, c := range report.Failed() {
		if s.counts(c.Code) && !s.past(c.Code, c.Args) {
			return nil, false
		}
	}
	l := &Layout{Chain: in, Standing: o.standing, Laid: a, Proved: report, Way: a.LiftOut.Moves}
	l.Worth = s.weigh(o, c, &a)
	return l, true
}

// counts tells that a failed check refutes an assembly under the rules.
func (s *search) counts(code string) bool {
	switch code {
	case verify.CheckPlay, verify.CheckSpare:
		return s.in.Rules.Play
	case verify.CheckUnion:
		return s.in.Rules.Union
	case verify.CheckWay, verify.CheckMove, verify.CheckMoveWall, verify.CheckRim, verify.CheckOut, verify.CheckSlide:
		return s.in.Rules.Out
	}
	return true
}

// refuses tells that an assembly with this finding is none.
func (s *search) refuses(f *trace.Finding) bool {
	switch f.Code {
	case layout.FindPlay, layout.FindClosingSpare:
		return s.in.Rules.Play
	case layout.FindNoUnion:
		return s.in.Rules.Union
	case layout.FindBlocked, layout.FindLip:
		return s.in.Rules.Out
	case layout.FindWall, layout.FindPump, layout.FindObstacle, layout.FindParts, layout.FindPumpWall, layout.FindPumpObstacle,
		layout.FindHand, layout.FindClosure, layout.FindTurned:
		return true
	case layout.FindReturns, layout.FindReleased, layout.FindNoCheck:
		return false
	}
	return f.Severity == trace.Danger
}

// drill sets the hole where the chain ends, where it is not drilled yet.
func (s *search) drill(in *layout.Input, c *chain, x []float64) {
	if s.in.Reach == (Reach{}) {
		return
	}
	at := c.at(&c.end, x)
	in.Vault.Outlet.Height = unit.Length(at.Z)
	switch in.Vault.Outlet.Wall {
	case layout.Left, layout.Right:
		in.Vault.Outlet.Along = unit.Length(at.Y)
	default:
		in.Vault.Outlet.Along = unit.Length(at.X)
	}
}

// marks names the parts as a drawing does.
func marks(parts []layout.Laid, as []*piece) {
	n, had := map[string]int{}, map[string]bool{}
	for _, p := range as {
		if p.held != nil {
			had[p.part.Mark] = true
		}
	}
	for i := range parts {
		if as[i].held != nil && parts[i].Mark != "" {
			continue // it is written on it
		}
		letter := "F"
		turned, _ := parts[i].Kind.Turn()
		switch {
		case turned != 0:
			letter = "E"
		case parts[i].Kind.IsCheck():
			letter = "V"
		case parts[i].Kind == layout.Union:
			letter = "U"
		case parts[i].Kind == layout.Bulkhead:
			letter = "B"
		}
		for parts[i].Mark = ""; parts[i].Mark == "" || had[parts[i].Mark]; {
			n[letter]++
			parts[i].Mark = letter + digits(n[letter])
		}
	}
}

func digits(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return digits(n/10) + digits(n%10)
}
