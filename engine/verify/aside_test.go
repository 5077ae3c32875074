package verify

import (
	"math/rand/v2"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// aside are faults in what is told beside the chain, and parts exchanged.
var aside = []mutation{
	{"two parts exchanged", func(r *rand.Rand, b *built) []string {
		i := r.IntN(len(b.in.Parts) - 1)
		p, q := &b.in.Parts[i], &b.in.Parts[i+1]
		if p.Kind == q.Kind && p.Roll == q.Roll && p.In == q.In && p.Out == q.Out {
			return nil
		}
		p.Part, q.Part = q.Part, p.Part
		return []string{CheckWhole, CheckPlace, CheckTurned, CheckJoint, CheckMark}
	}},
	{"another stub", func(r *rand.Rand, b *built) []string {
		if len(b.a.Stubs) == 0 {
			return nil
		}
		s := &b.a.Stubs[r.IntN(len(b.a.Stubs))]
		s.Length += pick(r, unit.Length(amount(r, 0.002, 0.02)), unit.Length(amount(r, 1e-5, 3e-4)))
		return []string{CheckStub}
	}},
	{"a stub left out", func(r *rand.Rand, b *built) []string {
		if len(b.a.Stubs) == 0 {
			return nil
		}
		k := r.IntN(len(b.a.Stubs))
		b.a.Stubs = slices.Delete(b.a.Stubs, k, k+1)
		return []string{CheckStub}
	}},
	{"a stub too many", func(_ *rand.Rand, b *built) []string {
		b.a.Stubs = append(b.a.Stubs, layout.Stub{Piece: "P9", Length: 0.03})
		return []string{CheckStub}
	}},
	{"another make-up of the stub", func(r *rand.Rand, b *built) []string {
		if len(b.a.Stubs) == 0 {
			return nil
		}
		b.in.Settings.Stub = layout.Is(unit.Length(0.0254 + 0.003 + 0.02*r.Float64()))
		return []string{CheckStub}
	}},
	{"more error than there is", func(r *rand.Rand, b *built) []string {
		by := geomOf(anyDirection(r).times(amount(r, 1e-5, 0.01)))
		if r.IntN(2) == 0 {
			b.a.Stack.Worst = b.a.Stack.Worst.Add(by)
		} else {
			b.a.Stack.Likely = b.a.Stack.Likely.Add(by)
		}
		return []string{CheckStack}
	}},
	{"another error of the closing piece", func(r *rand.Rand, b *built) []string {
		b.a.Stack.Closing += unit.Length(amount(r, 1e-5, 0.003))
		return []string{CheckStack}
	}},
	{"another tilt", func(r *rand.Rand, b *built) []string {
		b.a.Stack.Tilt += unit.Angle(amount(r, 0.001, 3)) * unit.Degree
		return []string{CheckTilt}
	}},
	{"a coarser saw", func(r *rand.Rand, b *built) []string {
		if len(b.a.Pieces) == 0 {
			return nil
		}
		b.in.Settings.Saw = layout.Is(unit.Length(0.002 + 0.003*r.Float64()))
		return []string{CheckStack}
	}},
	{"a coarser roll", func(r *rand.Rand, b *built) []string {
		if len(b.a.Rolls) == 0 {
			return nil
		}
		b.in.Settings.Roll = layout.Is(unit.Angle(1.1+3*r.Float64()) * unit.Degree)
		return []string{CheckStack, CheckTilt}
	}},
	{"more or less room for the pump", func(r *rand.Rand, b *built) []string {
		m := &b.a.Room
		*pick(r, &m.Left, &m.Right, &m.Front, &m.Back) += unit.Length(amount(r, 2e-4, 0.1))
		return []string{CheckRoom}
	}},
	{"another share of an error", func(r *rand.Rand, b *built) []string {
		if len(b.a.Stack.Shares) == 0 {
			return nil
		}
		b.a.Stack.Shares = slices.Clone(b.a.Stack.Shares)
		k := r.IntN(len(b.a.Stack.Shares))
		switch r.IntN(3) {
		case 0:
			b.a.Stack.Shares[k].Of += unit.Ratio(amount(r, 1e-5, 0.5))
		case 1:
			b.a.Stack.Shares[k].Mark += "x"
		default:
			b.a.Stack.Shares = slices.Delete(b.a.Stack.Shares, k, k+1)
		}
		return []string{CheckShare}
	}},
	{"another play", func(r *rand.Rand, b *built) []string {
		if len(b.a.Room.Plays) == 0 {
			return nil
		}
		b.a.Room.Plays = slices.Clone(b.a.Room.Plays)
		p := &b.a.Room.Plays[r.IntN(len(b.a.Room.Plays))]
		*pick(r, &p.Needed, &p.Worst, &p.Available) += unit.Length(amount(r, 1e-5, 0.05))
		return []string{CheckNeeded}
	}},
	{"room told to be none", func(_ *rand.Rand, b *built) []string {
		b.a.Room.Stands = true
		return []string{CheckRoom}
	}},
	{"an obstacle beside the pump", func(r *rand.Rand, b *built) []string {
		// As near as half the room there is, across its whole side.
		room := float64(b.a.Room.Right)
		if room < 1e-3 {
			return nil
		}
		v := b.verifier()
		side := v.pump[0].box.hi.x
		for i := range v.pump {
			side = max(side, v.pump[i].box.hi.x)
		}
		x := side + room*(0.1+0.8*r.Float64())
		b.in.Vault.Obstacles = append(b.in.Vault.Obstacles, layout.Obstacle{Name: "brick", Box: geom.Box{
			Min: geom.Vec3{X: x}, Max: geom.Vec3{X: x + 0.01, Y: 20, Z: 20},
		}})
		return []string{CheckRoom}
	}},
	{"another spare of the closing piece", func(r *rand.Rand, b *built) []string {
		if len(b.a.Room.Shorter) == 0 {
			return nil
		}
		b.a.Room.Shorter[r.IntN(len(b.a.Room.Shorter))].Spare += unit.Length(amount(r, 1e-5, 0.05))
		return []string{CheckShorter}
	}},
	{"a spare left out", func(_ *rand.Rand, b *built) []string {
		if len(b.a.Room.Shorter) == 0 {
			return nil
		}
		b.a.Room.Shorter = b.a.Room.Shorter[1:]
		return []string{CheckShorter}
	}},
	{"valve and union the other way round", func(r *rand.Rand, b *built) []string {
		had := b.a.Water.Order
		b.a.Water.Order = pick(r, layout.NoValve, layout.ValveFirst, layout.UnionFirst, layout.NoUnion, layout.Reversed)
		if b.a.Water.Order == had || b.opensTwice() {
			return nil
		}
		return []string{CheckOrder}
	}},
	{"another volume of water", func(r *rand.Rand, b *built) []string {
		w := &b.a.Water
		*pick(r, &w.Standing, &w.Released, &w.Returns, &w.Between, &w.Boxes) += unit.Volume(amount(r, 5e-6, 0.01))
		return []string{CheckWater}
	}},
	{"another bore", func(r *rand.Rand, b *built) []string {
		if b.a.Water.Standing+b.a.Water.Returns == 0 {
			return nil
		}
		b.in.Pipes = slices.Clone(b.in.Pipes)
		for k := range b.in.Pipes {
			b.in.Pipes[k].Bore *= unit.Length(pick(r, 0.7, 0.9, 1.1))
		}
		return []string{CheckWater}
	}},
	{"more water beyond the wall", func(r *rand.Rand, b *built) []string {
		if b.a.Water.Standing+b.a.Water.Returns == 0 {
			return nil
		}
		b.in.Beyond.Volume = layout.Is(unit.Volume(1e-5 + 0.01*r.Float64()))
		return []string{CheckWater}
	}},
	{"a bore forgotten", func(_ *rand.Rand, b *built) []string {
		if b.a.Water.Standing+b.a.Water.Returns == 0 {
			return nil
		}
		b.in.Pipes = slices.Clone(b.in.Pipes)
		for k := range b.in.Pipes {
			b.in.Pipes[k].Bore = 0
		}
		return []string{CheckOrder}
	}},
	{"a pump with too little play", func(_ *rand.Rand, b *built) []string {
		// Both told and typed: errors as large as the vault.
		b.in.Settings.Saw = layout.Is(unit.Length(0.05))
		b.in.Settings.Roll = layout.Is(45 * unit.Degree)
		b.in.Settings.Tape = layout.Is(unit.Length(0.05))
		b.in.Settings.Seat = layout.Is(unit.Length(0.05))
		a, _, _ := layout.Lay(b.in)
		b.a = a
		if float64(min(a.Room.Left, a.Room.Right)) >= min(a.Stack.Likely.X, float64(a.Stack.Closing))-0.001 {
			return nil
		}
		return []string{CheckPlay}
	}},
	{"a closing piece with too little spare", func(_ *rand.Rand, b *built) []string {
		if len(b.a.Room.Shorter) == 0 || b.a.Room.Shorter[0].Spare > 0.08 {
			return nil // one cut and two seats alone make 0.086
		}
		b.in.Settings.Saw = layout.Is(unit.Length(0.05))
		b.in.Settings.Seat = layout.Is(unit.Length(0.05))
		b.in.Settings.Roll = layout.Is(45 * unit.Degree)
		b.a, _, _ = layout.Lay(b.in)
		return []string{CheckSpare}
	}},
}
