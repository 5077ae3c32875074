package verify

import (
	"math/rand/v2"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// chainMutations are of parts that stand otherwise than they are told, and what stands in their way.
var chainMutations = []mutation{
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
}
