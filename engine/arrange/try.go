package arrange

import (
	"math"
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
	work   int // linear programs spent on a measure that may grow
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
	line := o.line
	if o.facing == 0 { // else its elbows do not go together before valve and union stand among them
		bare := w.bareChain(o)
		if bare == nil {
			return t
		}
		least := bare.line(nil).least
		if ok, capped := w.possible(&t, bare, leaving{without: true}, s.in.Rules.Nodes); !ok && !capped {
			return t
		}
		line = math.Max(line, least+w.b.first)
		t.passed = stageClear
	}
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
	c := w.placed(o, &si.placement)
	if c == nil || w.s.in.Rules.Play && c.closing() < 0 && c.hose < 0 {
		return // nothing can be measured in place, and no hose gives way
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
			limit = math.Min(limit, had.length-si.line.sockets) // sockets are not as deep in every place
		}
		if out.line-si.line.least >= limit {
			continue
		}
		got := w.seek(t, o, c, out.leaving, limit)
		if got != nil {
			got.length += si.line.sockets
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
