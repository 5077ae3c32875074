package motion

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"plashet/engine/level"
	"plashet/engine/unit"
)

// wide is a feature of about n stores in feeds of five, each of a pipe, a box,
// a stream and two pools of sizes of its own, on a pond and vault that grow with
// them. Sizes are invented; the seed is fixed.
func wide(tb testing.TB, n int) Inputs {
	tb.Helper()
	feeds, random := n/5, rand.New(rand.NewPCG(7, 7))
	about := func(v float64) float64 { return v * (0.6 + 0.8*random.Float64()) }
	const q = 1.2e-3
	all := float64(feeds)
	in := Inputs{
		Pond: tank(tb, unit.Area(8*all), 0.6, 0), Rim: 0.15, Low: -0.4, Flow: unit.Flow(q * all),
		Vault: &level.Vault{Body: box(tb, unit.Length(0.4*all), 0.4, 0.6, -0.55), Sill: &level.Sill{Crest: -0.1, Width: unit.Length(0.25 * all), C: 1.7}},
	}
	supply := Constant{}
	for range feeds {
		supply = append(supply, q)
		area, pipe := about(0.15), about(0.02)
		pool := func() Part {
			v := unit.Volume(about(0.06))
			return Part{Name: "pool", Full: v, Held: v, HeldOpen: v, Lip: lip(tb, unit.Length(about(0.4))), Area: unit.Area(about(0.5))}
		}
		in.Feeds = append(in.Feeds, Feed{
			Name: "feed", Pipe: unit.Volume(pipe), PipeHeld: unit.Volume(pipe), Crest: unit.Length(about(1)), Depth: 0.3, Valve: true, Back: 0.4 / (q * q), Bore: 1.6e-3,
			Parts: []Part{
				{Name: "box", Full: unit.Volume(0.3 * area), Held: unit.Volume(0.3 * area), Lip: lip(tb, 0.3), Area: unit.Area(area)},
				{Name: "stream", Reach: true, Full: unit.Volume(about(0.03)), Flow: q},
				pool(), pool(),
			},
		})
	}
	in.Supply = supply
	return in
}

// BenchmarkGrowth tells how a start of 15 minutes and a stop of 15 minutes with
// the valve open grow with the stores; beside it, as a floor, as many bare
// evaluations of the rates.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		s := system(b, wide(b, n))
		evals, steps := 0, 0
		b.Run(fmt.Sprintf("stores=%d/courses", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				a := follow(b, s, Program{From: s.AtRest(Held), Pump: true, RunUp: 1, Valve: Works, Until: 900, Whole: true})
				c := follow(b, s, Program{From: a.End, Valve: StuckOpen, Until: 900, Whole: true})
				evals, steps = a.Evals+c.Evals, a.Steps+c.Steps
			}
			b.ReportMetric(float64(evals), "evals")
			b.ReportMetric(float64(steps), "steps")
		})
		b.Run(fmt.Sprintf("stores=%d/floor", n), func(b *testing.B) {
			c := s.begin(Program{From: s.AtRest(Held), Pump: true, Valve: Works, Until: 900})
			if err := c.anew(); err != nil {
				b.Fatal(err)
			}
			dx := make([]float64, s.size)
			for b.Loop() {
				for range max(evals, 1) {
					c.rates(0, c.x, dx)
				}
			}
		})
	}
}
