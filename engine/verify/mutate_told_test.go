package verify

import (
	"math"
	"math/rand/v2"
	"slices"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// toldMutations are of what is told of marks, sizes, pieces and settings.
var toldMutations = []mutation{
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
