package arrange

import (
	"cmp"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// order is a fill along one way of the legs.
type order struct {
	*fill
	way      *way
	standing int
	turned   unit.Angle
	dirs     []geom.Vec3 // of the legs
	line     float64     // how long its centre line is at least
	compass  *compass
}

// pattern is the turns of a sequence, as digits to the base of two.
func (c *compass) pattern(seq []int) uint64 {
	n := uint64(1)
	for i := range seq[1:] { // of a hose's turn it is one of the two, and means nothing
		n = n<<1 | uint64(turnOf(c.dirs[seq[i]], c.dirs[seq[i+1]]))
	}
	return n
}

// way is one way of the legs and what it can be filled with.
type way struct {
	standing int
	kit      *kit
	turned   unit.Angle
	compass  *compass
	seq      []int
	hose     int // which of its turns is a hose, from 1; 0: none
	fills    []*fill
	odd      bool    // found between the directions of the compass
	open     bool    // its sketch fits
	closes   bool    // and does by planes of the list, where a leg of it could be rolled
	line     float64 // how long its centre line is at least
	trial    trial
	fates    *fates
}

// orders gives all orders with n elbows that nothing found beats already, the
// most promising first, and what came of sketching their ways.
func (s *search) orders(p pass, n int, front []Layout, tell func(Progress)) (out []order, t trial) {
	const sketches = 512 // between two tellings
	if p > byCompass {
		ways, programs := s.unlock(s.limbersOf(p, n, front))
		t.tally.Programs += programs
		return s.filled(ways, t)
	}
	ways := s.waysOf(n, front)
	for from := 0; from < len(ways) && !s.halted(); from += sketches {
		if tell != nil {
			tell(Progress{Elbows: n, Layouts: len(front), Sketched: from, Ways: len(ways)})
		}
		some := ways[from:min(from+sketches, len(ways))]
		s.share(len(some), func(w *worker, i int) { w.sketch(&some[i]) })
	}
	if !s.in.straight && (n < rolledFrom || len(front) == 0) {
		more, programs := s.unlock(rolled(ways))
		ways, t.tally.Programs = append(ways, more...), programs
	}
	return s.filled(ways, t)
}

// filled gives the orders of ways that are open, the most promising first.
func (s *search) filled(ways []way, t trial) (out []order, _ trial) {
	for i := range ways {
		v := &ways[i]
		t.add(&v.trial)
		if !v.open {
			continue
		}
		dirs := v.dirs()
		v.fates = &fates{of: map[fateKey][]fate{}}
		for _, f := range v.fills {
			out = append(out, order{fill: f, way: v, standing: v.standing, turned: v.turned, dirs: dirs, compass: v.compass, line: v.line})
		}
	}
	slices.SortStableFunc(out, func(a, b order) int {
		return cmp.Or(cmp.Compare(a.joints, b.joints), cmp.Compare(a.head, b.head), cmp.Compare(a.cost, b.cost), cmp.Compare(a.line, b.line))
	})
	return out, t
}

// waysOf gives all ways with n elbows that can be filled.
func (s *search) waysOf(n int, front []Layout) []way {
	var out []way
	for i := range s.in.Standings {
		st := &s.in.Standings[i]
		for ki := range s.kits[i] {
			k := &s.kits[i][ki]
			have, ok := k.has(n)
			if !ok || s.in.coupled && !k.joined() {
				continue
			}
			type key struct {
				turns uint64
				hose  *piece
			}
			fills := map[key][]*fill{}
			for _, turned := range st.turnsOf() {
				c := s.compassOf(i, turned)
				for hose := 0; hose <= hoseNear && (hose == 0 || hose <= n && k.hoses != nil); hose++ {
					for _, seq := range c.sequences(n, have, hose, s.halted) {
						v := way{standing: i, kit: k, turned: turned, compass: c, seq: seq, hose: hose}
						key := key{c.pattern(seq), v.hoseOf()}
						list, known := fills[key]
						if !known {
							list = s.fills(&v, key.turns, n, st.Pump.Outlet, front)
							fills[key] = list
						}
						if v.fills = list; len(list) > 0 {
							out = append(out, v)
						}
					}
				}
			}
		}
	}
	return out
}

func (v *way) dirs() []geom.Vec3 {
	c := v.compass
	dirs := make([]geom.Vec3, 0, len(c.pre)+len(v.seq)+len(c.post))
	dirs = append(dirs, c.pre...)
	for _, d := range v.seq {
		dirs = append(dirs, c.dirs[d])
	}
	return append(dirs, c.post...)
}

// sketch tells whether a way has room for bare pipe at all.
func (w *worker) sketch(v *way) {
	if v.open = w.s.glued.any(); v.open {
		v.closes = true
		return // glued parts are no bare pipe
	}
	c := w.legsOf(v)
	if c == nil {
		return
	}
	ok, capped := w.within(&v.trial, c, false)
	if !c.through { // else the line ends at another point than a sketch does
		v.line = c.line(nil).least + w.b.first
	}
	if v.open = ok || capped; v.open {
		v.trial.passed = stageWalls
		v.closes = !v.rolls() || w.firm(&v.trial, c)
	}
}

// walled tells whether a way has room for pipe and elbows between the walls,
// whatever stands in the vault.
func (w *worker) walled(v *way) bool {
	fits := func(c *chain) bool {
		if c == nil {
			return false
		}
		ok, capped := w.within(&v.trial, c, true)
		return ok || capped
	}
	if !w.s.glued.any() && !fits(w.legsOf(v)) {
		return false // not even bare pipe
	}
	dirs := v.dirs()
	for _, f := range v.fills {
		if fits(w.bareChain(&order{fill: f, standing: v.standing, turned: v.turned, dirs: dirs, compass: v.compass})) {
			return true
		}
	}
	return false
}
