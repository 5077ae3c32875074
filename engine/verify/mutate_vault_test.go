package verify

import (
	"math/rand/v2"
	"slices"

	"plashet/engine/layout"
	"plashet/engine/unit"
)

// vaultMutations are of the hole, the pump, the vault and the pump's way out.
var vaultMutations = []mutation{
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
}
