package arrange

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// fill is which fittings are used in which order; where check valve and union
// stand among the legs is left open, and which way the legs run.
type fill struct {
	pipe   *Pipe
	start  []*piece
	elbows []*piece
	check  *piece
	union  *piece
	end    *piece
	tail   []*piece // glued on the wall's side
	opens  *piece   // the union, glued or not
	lines  lines

	head   float64 // of the fittings, m
	joints int
	cost   float64
	priced bool
	slide  float64 // that the pump needs in any case, off the union's lip
	lean   float64 // without end where only laying it tells
}

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

// parts gives the chain with the check valve in one leg and the union in
// another; in one leg the union comes first or last. A leg of -1 leaves it out.
func (f *fill) parts(check, union int, unionFirst bool) []*piece {
	out := append(make([]*piece, 0, len(f.start)+len(f.elbows)+len(f.tail)+3), f.start...)
	for leg := range len(f.elbows) + 1 {
		if leg > 0 {
			out = append(out, f.elbows[leg-1])
		}
		if leg == union && unionFirst {
			out = append(out, f.union)
		}
		if leg == check {
			out = append(out, f.check)
		}
		if leg == union && !unionFirst {
			out = append(out, f.union)
		}
	}
	if f.end != nil {
		out = append(out, f.end)
	}
	return append(out, f.tail...)
}

// least is what an assembly of the fill costs at least.
func (f *fill) least() worth {
	return worth{head: f.head, cost: f.cost, joints: f.joints, slide: f.slide, lean: f.lean}
}

// tally adds up what the fittings cost in every respect; the pipe is left out.
// It is false where two ends do not go together or there are not enough of one.
func (s *search) tally(f *fill, outlet layout.End) bool {
	bare := f.parts(-1, -1, false)
	chain := bare
	for _, p := range [...]*piece{f.check, f.union} {
		if p != nil {
			chain = append(chain[:len(chain):len(chain)], p)
			f.joints += 2 // in a leg it splits one joint with a pipe in two
		}
	}
	if !s.in.enough(chain) {
		return false
	}
	f.priced = true
	if f.opens != nil && s.in.Rules.Out {
		f.slide = float64(f.opens.part.Splits[0].Lip)
	}
	if s.in.Rules.Tilt { // how far it must be slid and leaned is seen when it is laid
		f.slide, f.lean = math.Inf(1), math.Inf(1)
	}
	for _, p := range chain {
		f.head += s.headOf(p)
		if p.fitting < 0 {
			continue
		}
		g := &s.in.Fittings[p.fitting]
		f.cost += g.Cost
		f.priced = f.priced && g.Priced
	}
	end := &outlet
	for _, p := range bare {
		switch {
		case p.made():
		case end.Kind == layout.Spigot && p.part.In.Kind == layout.Spigot:
			return false
		case end.Kind == layout.Socket && p.part.In.Kind == layout.Socket:
			f.joints += 2
		default:
			f.joints++
		}
		end = &p.part.Out
	}
	if bare[len(bare)-1].part.Kind != layout.Bulkhead {
		f.joints++ // the pipe that goes through
	}
	return true
}

// pattern is the turns of a sequence, as digits to the base of two.
func (c *compass) pattern(seq []int) uint64 {
	n := uint64(1)
	for i := range seq[1:] {
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
	fills    []*fill
	open     bool    // its sketch fits
	line     float64 // how long its centre line is at least
	trial    trial
	fates    *fates
}

// orders gives all orders with n elbows that nothing found beats already, the
// most promising first, and what came of sketching their ways.
func (s *search) orders(n int, front []Layout, tell func(Progress)) (out []order, t trial) {
	const sketches = 512 // between two tellings
	ways := s.waysOf(n, front)
	for from := 0; from < len(ways) && !s.halted(); from += sketches {
		if tell != nil {
			tell(Progress{Elbows: n, Layouts: len(front), Sketched: from, Ways: len(ways)})
		}
		some := ways[from:min(from+sketches, len(ways))]
		s.share(len(some), func(w *worker, i int) { w.sketch(&some[i]) })
	}
	if n < rolledFrom || len(front) == 0 {
		more, programs := s.rolled(ways)
		ways, t.tally.Programs = append(ways, more...), programs
	}
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
			have := [2]bool{len(k.elbows[turn90]) > 0, len(k.elbows[turn45]) > 0}
			fills := map[uint64][]*fill{}
			for _, turned := range st.turnsOf() {
				c := s.compassOf(i, turned)
				for _, seq := range c.sequences(n, have, s.halted) {
					turns := c.pattern(seq)
					list, known := fills[turns]
					if !known {
						list = s.fills(k, turns, n, st.Pump.Outlet, front)
						fills[turns] = list
					}
					if len(list) > 0 {
						out = append(out, way{standing: i, kit: k, turned: turned, compass: c, seq: seq, fills: list})
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
		return // glued parts are no bare pipe
	}
	c := w.legsOf(v.standing, v.kit, v.turned, v.compass, v.seq)
	if c == nil {
		return
	}
	ok, capped := w.within(&v.trial, c, false)
	if !c.through { // else the line ends at another point than a sketch does
		v.line = c.line().least + w.b.first
	}
	if v.open = ok || capped; v.open {
		v.trial.passed = stageWalls
	}
}

// fills gives each choice of fittings for a pattern of turns.
func (s *search) fills(k *kit, turns uint64, n int, outlet layout.End, front []Layout) []*fill {
	var out []*fill
	needCheck, needUnion := s.needs()
	option := func(list []*piece, wanted bool) []*piece {
		if !wanted {
			return []*piece{nil}
		}
		return list
	}
	var elbows func(chosen []*piece)
	elbows = func(chosen []*piece) {
		if i := len(chosen); i < n {
			for _, e := range k.elbows[turns>>(n-1-i)&1] {
				elbows(append(chosen[:i:i], e))
			}
			return
		}
		for _, start := range k.starts {
			for _, check := range option(k.checks, needCheck) {
				for _, union := range option(k.unions, needUnion) {
					for _, end := range option(k.ends, len(k.ends) > 0) {
						f := &fill{pipe: &k.pipe, start: start, elbows: chosen, check: check, union: union, end: end, tail: k.tail, opens: union}
						if union == nil {
							f.opens = s.glued.union
						}
						if s.tally(f, outlet) && !beaten(front, f.least()) {
							out = append(out, f)
						}
					}
				}
			}
		}
	}
	elbows(nil)
	return out
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
	if !w.s.glued.any() && !fits(w.legsOf(v.standing, v.kit, v.turned, v.compass, v.seq)) {
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
