package verify

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// built is an assembly that passes every check.
type built struct {
	in layout.Input
	a  layout.Assembly
}

// copied makes what mutations change anew.
func (b built) copied() built {
	b.in.Parts = slices.Clone(b.in.Parts)
	for i := range b.in.Parts {
		b.in.Parts[i].Splits = slices.Clone(b.in.Parts[i].Splits)
	}
	b.in.Vault.Obstacles = slices.Clone(b.in.Vault.Obstacles)
	b.in.Pump.Blocks, b.in.Pump.Cylinders = slices.Clone(b.in.Pump.Blocks), slices.Clone(b.in.Pump.Cylinders)
	b.a.Body, b.a.Rounds = slices.Clone(b.a.Body), slices.Clone(b.a.Rounds)
	b.a.Places = slices.Clone(b.a.Places)
	for i := range b.a.Places {
		b.a.Places[i].Solids = slices.Clone(b.a.Places[i].Solids)
	}
	b.a.Pieces, b.a.Rolls = slices.Clone(b.a.Pieces), slices.Clone(b.a.Rolls)
	b.a.LiftOut.Moves = slices.Clone(b.a.LiftOut.Moves)
	b.a.Hoses = slices.Clone(b.a.Hoses)
	for i := range b.a.Hoses {
		b.a.Hoses[i].Line = slices.Clone(b.a.Hoses[i].Line)
	}
	b.a.Stubs, b.a.Room.Shorter = slices.Clone(b.a.Stubs), slices.Clone(b.a.Room.Shorter)
	b.a.Assumptions = slices.Clone(b.a.Assumptions)
	if b.a.Tail != nil {
		t := *b.a.Tail
		b.a.Tail = &t
	}
	return b
}

func (b *built) shiftPart(i int, v geom.Vec3) {
	p := &b.a.Places[i]
	for _, q := range []*geom.Vec3{&p.Centre, &p.Inlet, &p.Outlet, &p.InFace, &p.OutFace} {
		*q = q.Add(v)
	}
	for k := range p.Solids {
		p.Solids[k].From, p.Solids[k].To = p.Solids[k].From.Add(v), p.Solids[k].To.Add(v)
	}
}

func (b *built) find(test func(*layout.Laid) bool) int {
	return slices.IndexFunc(b.in.Parts, func(l layout.Laid) bool { return test(&l) })
}

// opensTwice tells that the part that opens has two nuts: by the other one the
// pump may come out with fewer moves.
func (b *built) opensTwice() bool {
	return b.find(func(l *layout.Laid) bool { return l.Mark == b.a.LiftOut.Union && len(l.Splits) > 1 }) >= 0
}

// many tells that the way out is none of a slide off the lip, a shift and a lift.
func (b *built) many() bool {
	moves := b.a.LiftOut.Moves
	return slices.ContainsFunc(moves[:len(moves)-1], func(m layout.Move) bool { return m.Turn != 0 || m.Along.Z > 0.5 })
}

func (b *built) verifier() *verifier {
	v := &verifier{in: &b.in, a: &b.a}
	v.resolve()
	v.placePump()
	v.placeHole()
	v.join()
	v.walk()
	v.solids()
	return v
}

func geomOf(v vec) geom.Vec3 { return geom.Vec3{X: v.x, Y: v.y, Z: v.z} }

// either sign, from least to most.
func amount(r *rand.Rand, least, most float64) float64 {
	return pick(r, -1.0, 1) * (least + (most-least)*r.Float64())
}

// mutation makes one fault; it gives the codes of which one must then fail, none
// where it does not apply.
type mutation struct {
	name string
	make func(r *rand.Rand, b *built) []string
}

var mutations = []mutation{
	{"shift a part", func(r *rand.Rand, b *built) []string {
		b.shiftPart(r.IntN(len(b.in.Parts)), geomOf(anyDirection(r).times(amount(r, 5e-6, 0.05))))
		return []string{CheckPlace}
	}},
	{"shift the chain from a part on", func(r *rand.Rand, b *built) []string {
		by, i := geomOf(anyDirection(r).times(amount(r, 5e-6, 0.05))), r.IntN(len(b.in.Parts))
		for k := i; k < len(b.in.Parts); k++ {
			b.shiftPart(k, by)
		}
		return []string{CheckPlace}
	}},
	{"shorten a pipe", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		step := 1.0 / 16 * 0.0254
		if b.in.Settings.Units.Is(unit.Metric) {
			step = 0.001
		}
		b.a.Pieces[r.IntN(len(b.a.Pieces))].Cut += unit.Length(float64(1+r.IntN(20)) * pick(r, -1.0, 1) * step)
		return []string{CheckCut}
	}},
	{"shorten a pipe in all that is told of it", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		by := unit.Length(amount(r, 2e-5, 0.03))
		p := &b.a.Pieces[r.IntN(len(b.a.Pieces))]
		p.Cut, p.Exact, p.StopToStop, p.FaceGap = p.Cut+by, p.Exact+by, p.StopToStop+by, p.FaceGap+by
		p.Start = p.Start.Sub(p.Dir.Scale(float64(by)))
		return []string{CheckPlace}
	}},
	{"shorten a pipe and move all beyond it", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		k := r.IntN(len(b.a.Pieces))
		p := &b.a.Pieces[k]
		step := 1.0 / 16 * 0.0254
		if b.in.Settings.Units.Is(unit.Metric) {
			step = 0.001
		}
		d := step * float64(3+r.IntN(20))
		by := unit.Length(pick(r, -1.0, 1) * d)
		along := p.Dir.Scale(float64(by))
		p.Cut, p.Exact, p.StopToStop, p.FaceGap = p.Cut+by, p.Exact+by, p.StopToStop+by, p.FaceGap+by
		p.End = p.End.Add(along)
		b.a.Places[p.After+1].Spacing += by
		for i := p.After + 1; i < len(b.in.Parts); i++ {
			b.shiftPart(i, along)
		}
		for i := k + 1; i < len(b.a.Pieces); i++ {
			b.a.Pieces[i].Start, b.a.Pieces[i].End = b.a.Pieces[i].Start.Add(along), b.a.Pieces[i].End.Add(along)
		}
		// Along the pipe that leaves through the wall only the typed distance tells.
		return []string{CheckClosure, CheckGiven, CheckLeast, CheckPiece}
	}},
	{"flip the valve", func(_ *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return isCheck(l.Kind) })
		if i < 0 {
			return nil
		}
		b.in.Parts[i].Reverse = true
		return []string{CheckArrow}
	}},
	{"a valve that may only stand up", func(_ *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return isCheck(l.Kind) })
		if i < 0 || b.a.Places[i].InDir.Z > 0.99 {
			return nil
		}
		b.in.Parts[i].Allowed = layout.AllowedUp
		return []string{CheckAttitude}
	}},
	{"turn the valve's cover", func(r *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return l.Kind == layout.CheckSwing })
		if i < 0 || b.a.Places[i].InDir.Z > 0.7 {
			return nil
		}
		b.in.Parts[i].Roll += unit.Angle(amount(r, 5, 175)) * unit.Degree
		return []string{CheckCover}
	}},
	{"an obstacle in a part", func(r *rand.Rand, b *built) []string {
		v := b.verifier()
		it := &v.items[r.IntN(len(v.items))]
		if len(it.shapes) == 0 {
			return nil
		}
		p := geomOf(inBody(r, &it.shapes[r.IntN(len(it.shapes))].body))
		h := geom.Vec3{X: 0.001 + 0.05*r.Float64(), Y: 0.001 + 0.05*r.Float64(), Z: 0.001 + 0.05*r.Float64()}
		b.in.Vault.Obstacles = append(b.in.Vault.Obstacles, layout.Obstacle{Name: "brick", Box: geom.BoxOf(p.Sub(h), p.Add(h))})
		return []string{CheckObstacle}
	}},
	{"an obstacle in the pump's way", func(r *rand.Rand, b *built) []string {
		v := b.verifier()
		s := &v.pump[r.IntN(len(v.pump))]
		p := geomOf(inBody(r, &s.body))
		n := r.IntN(len(b.a.LiftOut.Moves))
		for k, m := range b.a.LiftOut.Moves[:n+1] {
			part := 1.0
			if k == n {
				part = r.Float64()
			}
			p = p.Add(m.Along.Scale(float64(m.Distance) * part))
		}
		h := geom.Vec3{X: 0.001 + 0.03*r.Float64(), Y: 0.001 + 0.03*r.Float64(), Z: 0.001 + 0.03*r.Float64()}
		b.in.Vault.Obstacles = append(b.in.Vault.Obstacles, layout.Obstacle{Name: "brick", Box: geom.BoxOf(p.Sub(h), p.Add(h))})
		return []string{CheckMove, CheckPumpObstacle}
	}},
	{"an obstacle at the nut", func(r *rand.Rand, b *built) []string {
		v := b.verifier()
		i := b.find(func(l *layout.Laid) bool { return len(l.Splits) > 0 })
		s := v.items[slices.IndexFunc(v.items, func(it item) bool { return it.at == 2*i })].shapes[0]
		// From the shape's side off by less than a hand.
		d := s.axis.square(anyDirection(r))
		d, ok := d.one()
		if !ok {
			return nil
		}
		p := geomOf(s.c.at(d, s.r+0.8*v.lim.hand*r.Float64()))
		b.in.Vault.Obstacles = append(b.in.Vault.Obstacles, layout.Obstacle{Name: "brick", Box: geom.BoxOf(p, p)})
		return []string{CheckHand}
	}},
	{"turn an elbow", func(r *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return turnOf(&l.Part) != 0 })
		if i < 0 {
			return nil
		}
		b.in.Parts[i].Roll += unit.Angle(amount(r, 0.001, 180)) * unit.Degree
		return []string{CheckTurned}
	}},
	{"another elbow", func(_ *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return turnOf(&l.Part) != 0 })
		if i < 0 {
			return nil
		}
		swap := map[layout.Kind]layout.Kind{layout.Elbow90: layout.Elbow45, layout.Elbow45: layout.Elbow90, layout.Street90: layout.Street45, layout.Street45: layout.Street90}
		b.in.Parts[i].Kind = swap[b.in.Parts[i].Kind]
		return []string{CheckTurned}
	}},
	{"raise the hole", func(r *rand.Rand, b *built) []string {
		b.in.Vault.Outlet.Height += unit.Length(amount(r, 0.0034, 0.1))
		return []string{CheckClosure, CheckHole}
	}},
	{"shift the hole", func(r *rand.Rand, b *built) []string {
		b.in.Vault.Outlet.Along += unit.Length(amount(r, 0.0034, 0.1))
		return []string{CheckClosure, CheckHole}
	}},
	{"raise the hole in all that is told of it", func(r *rand.Rand, b *built) []string {
		by := amount(r, 0.0034, 0.1)
		if b.in.Vault.Round || b.in.Vault.FloorLength > 0 || float64(b.in.Vault.Outlet.Height)+by > float64(b.in.Vault.Depth) || float64(b.in.Vault.Outlet.Height)+by < 0 {
			return nil
		}
		b.in.Vault.Outlet.Height += unit.Length(by)
		b.a.Hole.At.Z += by
		return []string{CheckClosure}
	}},
	{"widen the pump", func(r *rand.Rand, b *built) []string {
		by := amount(r, 1e-5, 0.05)
		if len(b.in.Pump.Blocks) > 0 {
			b.in.Pump.Blocks[0].Max.Y += by
		} else {
			b.in.Pump.Cylinders[0].Radius += unit.Length(by)
		}
		return []string{CheckPump}
	}},
	{"widen the pump through the wall", func(r *rand.Rand, b *built) []string {
		// Both as typed and as told, by more than there is room.
		if b.in.Pose.Turn != 0 || len(b.in.Pump.Blocks) == 0 || b.in.Vault.FloorLength > b.in.Vault.Length {
			return nil
		}
		wide := float64(b.in.Vault.Length)
		by := wide - b.in.Pose.At.X - b.in.Pump.Blocks[0].Max.X + 1e-5 + 0.01*r.Float64()
		b.in.Pump.Blocks[0].Max.X += by
		b.a.Body[0].Centre.X += by / 2
		b.a.Body[0].U.X += by / 2
		return []string{CheckPumpWall}
	}},
	{"move the pump", func(r *rand.Rand, b *built) []string {
		b.in.Pose.At = b.in.Pose.At.Add(geomOf(anyDirection(r).times(amount(r, 5e-6, 0.1))))
		return []string{CheckPump}
	}},
	{"turn the pump", func(r *rand.Rand, b *built) []string {
		if len(b.in.Pump.Blocks) == 0 && b.in.Pump.Points.Z == 1 {
			return nil // a round pump with its port on top is the same all round
		}
		b.in.Pose.Turn += unit.Angle(amount(r, 0.01, 170)) * unit.Degree
		return []string{CheckPump}
	}},
	{"lower the lid", func(r *rand.Rand, b *built) []string {
		v := b.verifier()
		top := 0.0
		for _, it := range v.items {
			for _, s := range it.shapes {
				top = max(top, s.box.hi.z)
			}
		}
		b.in.Vault.Depth = unit.Length(top + v.lim.wall - 1e-5 - 0.05*r.Float64())
		return []string{CheckWall}
	}},
	{"shorten the vault", func(r *rand.Rand, b *built) []string {
		if b.in.Vault.Outlet.Wall == layout.Left || b.in.Vault.Round {
			return nil
		}
		v := b.verifier()
		far := 0.0
		for i := range v.pump {
			far = max(far, v.pump[i].box.hi.x)
		}
		b.in.Vault.Length = unit.Length(far - 1e-5 - 0.03*r.Float64())
		b.in.Vault.FloorLength = 0
		return []string{CheckPumpWall}
	}},
	{"a smaller hatch", func(r *rand.Rand, b *built) []string {
		v := b.verifier()
		pump := []named{{shape: v.pump[0]}}
		for k := range b.a.LiftOut.Moves {
			if m := &b.a.LiftOut.Moves[k]; m.Turn != 0 {
				pump = tilted(pump, m)
			} else {
				pump = shifted(pump, from(m.Along).times(float64(m.Distance)))
			}
		}
		p := pump[0].span().hi
		b.in.Vault.Opening = layout.Opening{ToX: unit.Length(p.x - 1e-4 - 0.05*r.Float64()), ToY: b.in.Vault.Length + b.in.Vault.Width}
		return []string{CheckRim}
	}},
	{"a longer lip", func(r *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return l.Mark == b.a.LiftOut.Union })
		for k := range b.in.Parts[i].Splits {
			// The first move may be along the union's axis and long enough as it is.
			b.in.Parts[i].Splits[k].Lip += b.a.LiftOut.Moves[0].Distance + unit.Length(1e-5+0.01*r.Float64())
		}
		return []string{CheckSlide}
	}},
	{"no union", func(_ *rand.Rand, b *built) []string {
		for i := range b.in.Parts {
			b.in.Parts[i].Splits = nil
		}
		return []string{CheckUnion}
	}},
	{"a move left out", func(r *rand.Rand, b *built) []string {
		n := len(b.a.LiftOut.Moves)
		if b.opensTwice() {
			return nil
		}
		k := r.IntN(n)
		b.a.LiftOut.Moves = slices.Delete(b.a.LiftOut.Moves, k, k+1)
		return []string{CheckWay, CheckMove, CheckRim, CheckOut, CheckSlide}
	}},
	{"a shorter move", func(r *rand.Rand, b *built) []string {
		n := len(b.a.LiftOut.Moves)
		if b.opensTwice() {
			return nil
		}
		k := r.IntN(n)
		if b.many() {
			k = n - 1 // of many moves one may be longer than it need be
		}
		b.a.LiftOut.Moves[k].Distance -= unit.Length(2e-5 + 0.02*r.Float64())
		return []string{CheckMove, CheckRim, CheckOut, CheckSlide}
	}},
	{"the lift aslant or down", func(r *rand.Rand, b *built) []string {
		m := &b.a.LiftOut.Moves[len(b.a.LiftOut.Moves)-1]
		m.Along = geomOf(from(m.Along).times(pick(r, -1.0, 1)).at(anyDirection(r), 1e-5+0.3*r.Float64()))
		return []string{CheckOut}
	}},
	{"another mark", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		b.a.Pieces[r.IntN(len(b.a.Pieces))].Ends[r.IntN(2)].Mark += unit.Length(amount(r, 2e-6, 0.02))
		return []string{CheckMark}
	}},
	{"a deeper socket", func(r *rand.Rand, b *built) []string {
		i := b.find(func(l *layout.Laid) bool { return l.Out.Kind == layout.Socket })
		if i < 0 || i+1 >= len(b.in.Parts) && b.a.Tail == nil {
			return nil
		}
		b.in.Parts[i].Out.Depth.Length += unit.Length(amount(r, 3e-6, 0.01))
		return []string{CheckMark, CheckPlace}
	}},
	{"another take-off", func(r *rand.Rand, b *built) []string {
		b.in.Parts[r.IntN(len(b.in.Parts))].In.TakeOff.Length += unit.Length(amount(r, 3e-6, 0.01))
		return []string{CheckPlace}
	}},
	{"another make-up gap", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		b.in.Settings.MakeUp = layout.Is(unit.Length(0.004 + 0.003*r.Float64()))
		b.in.Settings.ClosingMakeUp = b.in.Settings.MakeUp
		return []string{CheckMark}
	}},
	{"another roll mark", func(r *rand.Rand, b *built) []string {
		if len(b.a.Rolls) == 0 {
			return nil
		}
		m := &b.a.Rolls[r.IntN(len(b.a.Rolls))]
		switch by := unit.Angle(amount(r, 0.001, 90)) * unit.Degree; r.IntN(3) {
		case 0:
			m.Angle += by
			return []string{CheckRoll}
		case 1:
			if !m.HasTwist {
				return nil
			}
			m.Twist += by
			return []string{CheckRoll}
		}
		m.Arc += unit.Length(amount(r, 0.0033, 0.02))
		return []string{CheckArc}
	}},
	{"a thicker fitting", func(r *rand.Rand, b *built) []string {
		p := &b.in.Parts[r.IntN(len(b.in.Parts))]
		by := unit.Length(0.01 + 0.05*r.Float64())
		p.In.Hub.Length, p.Out.Hub.Length, p.Body.Diameter.Length = p.In.Hub.Length+by, p.Out.Hub.Length+by, p.Body.Diameter.Length+by
		return []string{CheckEnvelope}
	}},
	{"a piece left out", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		k := r.IntN(len(b.a.Pieces))
		b.a.Pieces = slices.Delete(b.a.Pieces, k, k+1)
		return []string{CheckWhole}
	}},
	{"a spigot of the wrong size in a socket", func(r *rand.Rand, b *built) []string {
		k := b.find(func(l *layout.Laid) bool { return l.In.Kind == layout.Spigot || l.Out.Kind == layout.Spigot })
		if k < 0 {
			return nil
		}
		e := &b.in.Parts[k].In
		if e.Kind != layout.Spigot {
			e = &b.in.Parts[k].Out
		}
		e.Size = pick(r, "1-1/4", "2-1/2", "3")
		return []string{CheckJoint}
	}},
	{"another thread", func(_ *rand.Rand, b *built) []string {
		b.in.Pump.Outlet.Thread = layout.BSPP
		return []string{CheckJoint}
	}},
	{"a setting lost", func(r *rand.Rand, b *built) []string {
		k := slices.IndexFunc(b.a.Assumptions, func(a trace.Assumption) bool { return a.Code == layout.AssumePumpClear })
		if k < 0 {
			return nil
		}
		b.a.Assumptions[k].Value.SI = pick(r, math.NaN(), math.Inf(1), 3)
		return []string{CheckPumpClear}
	}},
	{"not a number", func(r *rand.Rand, b *built) []string {
		n := math.NaN()
		switch r.IntN(8) {
		case 0:
			b.a.Places[r.IntN(len(b.a.Places))].Centre.Y = n
		case 1:
			b.in.Pump.Port.X = n
		case 2:
			b.in.Vault.Depth = unit.Length(n)
		case 3:
			b.in.Parts[r.IntN(len(b.in.Parts))].Roll = unit.Angle(n)
		case 4:
			b.a.LiftOut.Moves[0].Distance = unit.Length(n)
		case 5:
			b.in.Parts[0].In.Hub.Length = unit.Length(n)
		case 6:
			b.in.Vault.Obstacles = append(b.in.Vault.Obstacles, layout.Obstacle{Name: "x", Box: geom.Box{Min: geom.Vec3{X: n}}})
		case 7:
			b.a.Places[0].InDir = geom.Vec3{}
			b.a.Places[0].Side.X = n
		}
		return []string{
			CheckPlace, CheckPump, CheckHole, CheckTurned, CheckMove, CheckEnvelope, CheckObstacle, CheckPumpObstacle, CheckWall, CheckOut,
		}
	}},
}

// buildable draws assemblies that pass every check and lift out.
func buildable(t *testing.T, r *rand.Rand, n int) []built {
	t.Helper()
	out := []built{}
	for _, i := range []layout.Input{lifts(), sideways(), round30(), bushed()} {
		a, _, _ := layout.Lay(i)
		out = append(out, built{i, a})
	}
	for len(out) < n {
		i, ok := anyChain(r)
		if !ok {
			continue
		}
		a, _, faults := layout.Lay(i)
		if !a.Laid || len(faults) > 0 {
			continue
		}
		if report := Prove(i, a); len(report.Failed()) == 0 {
			out = append(out, built{i, a})
		}
	}
	return out
}

// Ten thousand faults, each by more than what is allowed for rounding: every
// one is caught by the check that is there for it.
func TestMutations(t *testing.T) {
	const seed = 88
	r := rand.New(rand.NewPCG(seed, 2))
	wanted := 10000
	if testing.Short() {
		wanted = 1000
	}
	bases, mutations := buildable(t, r, 60), slices.Concat(mutations, aside)
	for i, b := range bases {
		if report := Prove(b.in, b.a); len(report.Failed()) > 0 {
			t.Errorf("base %d does not pass", i)
			show(t, report.Failed())
		}
	}
	made := map[string]int{}
	missed := 0
	for n := 0; n < wanted; {
		m := mutations[r.IntN(len(mutations))]
		k := r.IntN(len(bases))
		b := bases[k].copied()
		codes := m.make(r, &b)
		if len(codes) == 0 {
			continue
		}
		n++
		made[m.name]++
		report := Prove(b.in, b.a)
		failed := report.Failed()
		if !slices.ContainsFunc(failed, func(c Check) bool { return slices.Contains(codes, c.Code) }) {
			if missed++; missed < 10 {
				t.Errorf("seed %d: %q of base %d passes %v", seed, m.name, k, codes)
				show(t, failed)
			}
		}
	}
	t.Logf("%d mutations of %d assemblies, %d missed: %v", wanted, len(bases), missed, made)
	for _, m := range mutations {
		if made[m.name] < wanted/1000 {
			t.Errorf("%q was made only %d times", m.name, made[m.name])
		}
	}
}
