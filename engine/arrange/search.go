package arrange

import (
	"context"
	"math"
	"slices"
	"sync"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The usual limits.
const (
	usualElbows = 4
	usualBest   = 5
	usualNodes  = 4000
)

// search is the work on one input. Nothing in it but its workers changes once
// it runs, so that several orders can be looked at at once.
type search struct {
	in     Input
	lim    layout.InForce
	hole   layout.Hole
	across geom.Vec3 // level, along the wall
	seat   geom.Vec3 // square to the wall
	exit   layout.Wall
	walls  []wall
	rounds []roundWall
	kits   [][]kit // by standing
	ways   map[wayKey]*compass
	bares  map[wayKey]*layout.Frame
	glued  glued

	sound      bool // the input can be searched
	halted     func() bool
	unsketched bool               // sketches rule out nothing, for tests
	watch      func() bool        // asked in place of the context, for tests; nil: the context is
	judge      func(*Layout) bool // refuses layouts, for tests; nil: none
	workers    []*worker          // one for each core
}

type wayKey struct {
	standing int
	turned   unit.Angle
}

// roundWall is the wall of a round vault, or its rim.
type roundWall struct {
	layout.Cone
	wall layout.Wall
	slid bool
}

// Search finds the assemblies that no other beats in every respect: head,
// joints, cost, how far the pump must be slid, and whether the water above comes
// down when the union is opened; how deep the union lies and how much water
// comes down are told beside them. Of assemblies alike but for their lengths it
// takes the one with the least pipe, and it slides the pump only where the same
// fittings give no assembly that lifts straight out. One that must be slid counts
// as beaten by one that is slid no farther than its union asks and takes less of
// everything else even with three times its slide added to its pipe. Where nothing fits it says
// what failed. It never panics; what is wrong with the input comes back as
// faults. Cancelling the context ends it with what was found; tell may be nil.
//
// Method: depth first over the directions of the legs; for each order of
// fittings a bound on what it costs at least; branch and bound over the planes
// that keep bodies apart (A. H. Land and A. G. Doig, 1960), with a linear program
// for lengths and place (see program).
func Search(ctx context.Context, in Input, tell func(Progress)) Outcome {
	s, out := newSearch(in)
	if !s.sound {
		return out
	}
	return s.run(ctx, out, tell)
}

func newSearch(in Input) (*search, Outcome) {
	var out Outcome
	r := &in.Rules
	if r.Elbows <= 0 {
		r.Elbows = usualElbows
	}
	if r.Best <= 0 {
		r.Best = usualBest
	}
	if r.Nodes <= 0 {
		r.Nodes = usualNodes
	}
	s := &search{in: in, lim: in.Settings.InForce(), ways: map[wayKey]*compass{}, bares: map[wayKey]*layout.Frame{}}
	out.Faults = s.check()
	if s.sound = !slices.ContainsFunc(out.Faults, func(f trace.Fault) bool { return f.Code != FaultOverlap }); !s.sound {
		return s, out
	}
	s.hole, _ = in.Vault.Hole()
	s.across = geom.Vec3{Z: 1}.Cross(s.hole.Axis)
	if wrong := s.glue(); len(wrong) > 0 {
		s.sound, out.Faults = false, append(out.Faults, wrong...)
		return s, out
	}
	s.seat, s.exit = s.hole.Axis, in.Vault.Outlet.Wall
	planes, round := in.Vault.Inside()
	for _, p := range planes {
		s.walls = append(s.walls, wall{Plane: p}, wall{Plane: p, slid: true})
		if p.Wall == in.Vault.Outlet.Wall {
			s.seat = p.N
		}
	}
	if round != nil {
		s.exit = layout.Round
		s.rounds = append(s.rounds, roundWall{*round, layout.Round, false}, roundWall{*round, layout.Round, true})
	}
	planes, round = in.Vault.Way()
	for _, p := range planes {
		s.walls = append(s.walls, wall{Plane: p, slid: true, rim: true})
	}
	if round != nil {
		s.rounds = append(s.rounds, roundWall{*round, layout.Round, true})
	}
	for i := range in.Standings {
		st := &in.Standings[i]
		kits := s.hold(i, s.in.kits(in.outlet(i)))
		for k := range kits {
			if !s.glued.any() {
				kits[k].spaces = s.spaced(st, &kits[k])
			}
		}
		s.kits = append(s.kits, kits)
		for _, turned := range st.turnsOf() {
			port := st.Pump.Points.RotateAbout(geom.Vec3{Z: 1}, turned).Unit()
			s.bares[wayKey{i, turned}] = s.bareOf(st, turned)
			pre, from := s.turnedPre(square(port), turned)
			c := newCompass(square(from), square(s.glued.into), append(append(pre[:len(pre):len(pre)], s.glued.post...), port, s.hole.Axis)...)
			c.pre, c.post = pre, s.glued.post
			if f := s.bare(i, turned); f != nil {
				c.around = s.surroundings(f, c.apart)
			}
			s.ways[wayKey{i, turned}] = c
		}
	}
	return s, out
}

// square takes the dust off a direction along an axis.
func square(d geom.Vec3) geom.Vec3 {
	for _, f := range [...]*float64{&d.X, &d.Y, &d.Z} {
		if math.Abs(*f) < 1e-12 {
			*f = 0
		}
	}
	return d.Unit()
}

func (s *search) compassOf(standing int, turned unit.Angle) *compass {
	return s.ways[wayKey{standing, turned}]
}

// standing gives the attitude of a chain's pump.
func (s *search) standing(c *chain) *Standing { return &s.in.Standings[c.standing] }

// chunk is how many orders are looked at against one and the same front, so
// that the outcome does not hang on how many cores there are.
const chunk = 32

func (s *search) run(ctx context.Context, out Outcome, tell func(Progress)) Outcome {
	out.Proof.Claim, out.Proof.Elbows = Family, -1
	s.halt(ctx)
	passed, open, seen := stageNone, []worth(nil), [][]order(nil)
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		if s.beyond(out.Layouts, n) {
			out.Proof.Claim = Everything
			break
		}
		orders, sketched := s.orders(n, out.Layouts, tell)
		if s.in.Rules.Tilt && len(orders) > mostLeaned {
			for i := range orders[mostLeaned:] {
				open = append(open, orders[mostLeaned+i].least())
			}
			orders = orders[:mostLeaned]
		}
		out.Tally.add(sketched.tally)
		passed = max(passed, sketched.passed)
		for from := 0; from < len(orders); from += chunk {
			if tell != nil {
				tell(Progress{Elbows: n, Done: from, Of: len(orders), Layouts: len(out.Layouts)})
			}
			for _, t := range s.many(orders[from:min(from+chunk, len(orders))], out.Layouts) {
				for _, l := range t.found {
					out.Layouts = join(out.Layouts, l)
				}
				out.Tally.add(t.tally)
				open = append(open, t.open...)
				passed = max(passed, t.passed)
			}
			if ctx.Err() != nil || s.in.Rules.First && len(out.Layouts) > 0 {
				return s.stopped(out, open, orders[from:])
			}
		}
		if ctx.Err() != nil {
			return s.stopped(out, open, orders)
		}
		if len(out.Layouts) == 0 && passed < stageClear {
			seen = append(seen, orders)
		}
		out.Tally.Orders += len(orders)
		out.Proof.Elbows = n
	}
	if out.Proof.Claim == Family && s.beyond(out.Layouts, s.in.Rules.Elbows+1) {
		out.Proof.Claim = Everything
	}
	if out.Proof.gather(open, out.Layouts); out.Proof.Caps > 0 {
		out.Proof.Claim = Capped
	}
	if len(out.Layouts) == 0 && out.Proof.Claim != Stopped && !s.in.Rules.Tilt {
		if out.Uncut = s.uncut(ctx); out.Uncut != nil {
			out.Stage = StageStock
		} else {
			if passed < stageClear && s.clear(seen) {
				passed = stageClear
			}
			out.Stage = s.failed(ctx, passed)
			if out.Stage == StageOut && !s.in.Rules.Brief {
				if leaned := s.leaned(ctx, tell); leaned != nil {
					return *leaned
				}
			}
			if !s.in.Rules.Brief {
				out.Short = s.short(ctx, tell)
			}
		}
	}
	out.Layouts = best(out.Layouts, s.in.Rules.Best)
	return out
}

// halt has the work look at a context.
func (s *search) halt(ctx context.Context) {
	s.halted = s.watch
	if s.watch == nil {
		s.halted = func() bool { return ctx.Err() != nil }
	}
	for _, w := range s.workers {
		w.b.halt = s.halted
	}
}

// stopped ends a search that was cancelled: what it has is told, and what those
// orders take at least that were not decided.
func (s *search) stopped(out Outcome, open []worth, left []order) Outcome {
	for i := range left {
		open = append(open, left[i].least())
	}
	if h, c, j, ok := s.leastOf(out.Proof.Elbows + 1); ok && len(left) == 0 {
		open = append(open, worth{head: h, cost: c, joints: j, slide: s.lip(), lean: s.leanest()})
	}
	out.Proof.gather(open, out.Layouts)
	out.Proof.Claim = Stopped
	out.Layouts = best(out.Layouts, s.in.Rules.Best)
	return out
}

// gather counts what was left undecided and is not beaten by what was found since.
func (p *Proof) gather(open []worth, front []Layout) {
	for _, v := range open {
		if beaten(front, v) {
			continue
		}
		g := Gap{Head: unit.Length(v.head), Joints: v.joints, Cost: v.cost}
		if p.Caps++; p.Caps > 1 {
			g = Gap{Head: min(g.Head, p.Open.Head), Joints: min(g.Joints, p.Open.Joints), Cost: min(g.Cost, p.Open.Cost)}
		}
		p.Open = g
	}
}

// many looks at orders against one front.
func (s *search) many(orders []order, front []Layout) []trial {
	trials := make([]trial, len(orders))
	s.share(len(orders), func(w *worker, i int) { trials[i] = w.try(&orders[i], front) })
	return trials
}

// share has n pieces of work done on as many cores as there are.
func (s *search) share(n int, do func(w *worker, i int)) {
	cores := max(1, min(s.in.Rules.Cores, n))
	for len(s.workers) < cores {
		s.workers = append(s.workers, newWorker(s))
	}
	if cores == 1 {
		for i := range n {
			if s.halted() {
				return
			}
			do(s.workers[0], i)
		}
		return
	}
	var wait sync.WaitGroup
	next := make(chan int)
	for _, w := range s.workers[:cores] {
		wait.Go(func() {
			for i := range next {
				do(w, i)
			}
		})
	}
	for i := 0; i < n && !s.halted(); i++ {
		next <- i
	}
	close(next)
	wait.Wait()
}

func (t *Tally) add(o Tally) {
	t.Chains += o.Chains
	t.Programs += o.Programs
	t.Nodes += o.Nodes
	t.Refused += o.Refused
}

// beyond tells that no chain of n elbows or more can be better than what was
// found: with each elbow a chain has more joints, takes more head and costs
// more, and what it costs at least is beaten already.
func (s *search) beyond(front []Layout, n int) bool {
	if len(front) == 0 {
		return false
	}
	h, c, j, ok := s.leastOf(n)
	return !ok || beaten(front, worth{head: h, cost: c, joints: j, slide: s.lip(), lean: s.leanest(), class: stands})
}

// leastOf gives what a chain of n elbows takes at least of any kit.
func (s *search) leastOf(n int) (head, cost float64, joints int, ok bool) {
	head, cost, joints = math.Inf(1), math.Inf(1), math.MaxInt
	for _, kits := range s.kits {
		for i := range kits {
			if h, c, j, has := s.least(&kits[i], n); has {
				ok = true
				head, cost, joints = math.Min(head, h), math.Min(cost, c), min(joints, j)
			}
		}
	}
	return head, cost, joints, ok
}

// leanest bounds how far a pump is leaned over, as fill.least does.
func (s *search) leanest() float64 {
	if s.in.Rules.Tilt {
		return math.Inf(1)
	}
	return 0
}

// lip is the least that any pump must be slid: off the least lip of the unions
// at hand.
func (s *search) lip() float64 {
	if !s.in.Rules.Out {
		return 0 // it need not come out, so nothing is slid
	}
	least := math.Inf(1)
	if s.in.Rules.Tilt {
		return least // only laying it tells
	}
	if u := s.glued.union; u != nil {
		return float64(u.part.Splits[0].Lip)
	}
	for _, f := range s.in.Fittings {
		if f.Part.Kind == layout.Union && f.AtHand != 0 && len(f.Part.Splits) > 0 {
			least = math.Min(least, float64(f.Part.Splits[0].Lip))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// least gives what a chain of n elbows takes of a kit at least: every elbow
// without a pipe before it.
func (s *search) least(k *kit, n int) (head, cost float64, joints int, ok bool) {
	cheapest := func(lists ...[]*piece) {
		h, c := math.Inf(1), math.Inf(1)
		for _, l := range lists {
			for _, p := range l {
				f := &s.in.Fittings[p.fitting]
				h, c = math.Min(h, float64(f.Head)), math.Min(c, f.Cost)
			}
		}
		head, cost = head+h, cost+c
	}
	street := false
	for _, l := range k.elbows {
		for _, p := range l {
			street = street || p.part.In.Kind != p.part.Out.Kind
		}
	}
	for range n {
		cheapest(k.elbows[:]...)
		joints += 2
		if street {
			joints--
		}
	}
	needCheck, needUnion := s.needs()
	if needCheck {
		cheapest(k.checks)
		joints += 2
	}
	if needUnion {
		cheapest(k.unions)
		joints += 2
	}
	if len(k.ends) > 0 {
		cheapest(k.ends)
	}
	joints += 2 // at the port and at the wall, at least one each
	return head, cost, joints, len(k.starts) > 0 && !math.IsInf(head, 1)
}

// one searches for any layout at all, and ends with the first few.
func one(ctx context.Context, in Input) Outcome {
	in.Rules.Brief, in.Rules.First, in.Rules.Best = true, true, 1
	return Search(ctx, in, nil)
}

// clear tells that the elbows alone of any of these orders keep clear of
// everything.
func (s *search) clear(all [][]order) bool {
	for _, orders := range all {
		for from := 0; from < len(orders) && !s.halted(); from += chunk {
			some := orders[from:min(from+chunk, len(orders))]
			found := make([]bool, len(some))
			s.share(len(some), func(w *worker, i int) {
				if c := w.bareChain(&some[i]); c != nil {
					ok, capped := w.within(&trial{}, c, false)
					found[i] = ok || capped
				}
			})
			if slices.Contains(found, true) {
				return true
			}
		}
	}
	return false
}

// failed names the first thing that failed, by looking again with less to keep:
// at the walls alone, or without the way out.
func (s *search) failed(ctx context.Context, passed stage) Stage {
	switch passed {
	case stageClear, stageLaid:
		if !s.in.Rules.Out {
			return StageValve
		}
		in := s.in
		in.Rules.Out = false
		if len(one(ctx, in).Layouts) > 0 {
			return StageOut
		}
		return StageValve
	}
	goes := false
	for i := range s.in.Standings {
		goes = goes || s.goesIn(i)
	}
	if !goes {
		return StageBody
	}
	for n := 0; n <= s.in.Rules.Elbows; n++ {
		ways := s.waysOf(n, nil)
		for i := range ways {
			if !s.halted() && s.workers[0].walled(&ways[i]) {
				return StageClear
			}
		}
	}
	return StageWalls
}

// goesIn tells that the pump's box goes into the vault as it is turned, and where
// it is fixed to a place, that flat walls, floor and lid leave it room there.
func (s *search) goesIn(standing int) bool {
	st := &s.in.Standings[standing]
	for _, turned := range st.turnsOf() {
		_, _, faults := layout.Lay(layout.Input{Vault: s.in.Vault, Pump: st.Pump, Pose: layout.Pose{Turn: turned}, Settings: s.in.Settings})
		if slices.ContainsFunc(faults, func(f trace.Fault) bool { return f.Code == layout.FaultPumpLarger }) {
			continue // that it has no parts is told too, and does not count
		}
		if !st.Fixed || s.holds(standing, turned) {
			return true
		}
	}
	return false
}

// holds tells that a pump that is fixed to a place stands within the flat walls.
func (s *search) holds(standing int, turned unit.Angle) bool {
	at := geom.Vec3{X: s.in.Standings[standing].Pose.At.X, Y: s.in.Standings[standing].Pose.At.Y}
	for _, o := range s.compassOf(standing, turned).around {
		for i := range s.walls {
			w := &s.walls[i]
			if o.pump() && !w.slid && w.N.Dot(o.far(w.N).c.Add(at))+o.beyond(w.N) > w.B+1e-7 {
				return false
			}
		}
	}
	return true
}
