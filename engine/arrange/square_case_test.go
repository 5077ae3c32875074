package arrange_test

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// anySquare draws a small case from a seed: invented sizes of the order of
// inch-and-a-half pipe, in quarters of an inch.
func anySquare(seed uint64) *squareCase {
	r := rand.New(rand.NewPCG(seed, 90))
	quarters := func(lo, hi float64) float64 { return lo + float64(r.IntN(int((hi-lo)*4)+1))/4 }
	c := &squareCase{
		seed: seed, radius: 1, clear: 0.25, adapter: 0.75, socket: 1, elbow: 1.25, bulkhead: 0.25,
		size: [3]float64{quarters(12, 24), quarters(12, 24), quarters(14, 28)},
		wall: [...]layout.Wall{layout.Left, layout.Right, layout.Front, layout.Back}[r.IntN(4)],
	}
	c.pump = [3]float64{quarters(5, 10), quarters(5, 7), quarters(5, 10)}
	if r.IntN(2) == 0 {
		c.port, c.looks = [3]float64{c.pump[0] / 2, c.pump[1] / 2, c.pump[2]}, [3]float64{0, 0, 1}
	} else {
		c.port, c.looks = [3]float64{c.pump[0], c.pump[1] / 2, quarters(1.5, c.pump[2]-1)}, [3]float64{1, 0, 0}
	}
	across := c.size[1]
	if c.wall == layout.Front || c.wall == layout.Back {
		across = c.size[0]
	}
	c.along, c.up = quarters(1.5, across-1.5), quarters(1.5, c.size[2]-1.5)
	for range r.IntN(3) {
		lo := [3]float64{quarters(0, c.size[0]-3), quarters(0, c.size[1]-3), quarters(0, c.size[2]-3)}
		hi := [3]float64{lo[0] + quarters(2, 8), lo[1] + quarters(2, 8), lo[2] + quarters(1, 6)}
		for a := range 3 {
			// A little smaller, so that nothing just goes in between: whether what
			// touches on both sides fits is a matter of rounding.
			lo[a], hi[a] = lo[a]+0.03, min(hi[a], c.size[a])-0.03
		}
		if !slices.ContainsFunc(c.obstacles, func(o [2][3]float64) bool { return overlap(o, lo, hi) }) {
			c.obstacles = append(c.obstacles, [2][3]float64{lo, hi})
		}
	}
	return c
}

// overlap tells that two boxes stand in each other, which the search refuses.
func overlap(o [2][3]float64, lo, hi [3]float64) bool {
	for a := range 3 {
		if o[1][a] <= lo[a] || hi[a] <= o[0][a] {
			return false
		}
	}
	return true
}

func typed(x float64) layout.Measure {
	return layout.Measure{Length: inches(x), Source: trace.Source{Title: "typed in for a test", Basis: trace.BasisMeasured}}
}

// input makes what the search is given: the same case, head as pipe alone takes
// it, no room asked for but to the walls.
func (c *squareCase) input(elbows int) arrange.Input {
	hub, socket := typed(2*c.radius), typed(c.socket)
	i := arrange.Input{
		Path: "/assembly",
		Vault: layout.Vault{
			Length: inches(c.size[0]), Width: inches(c.size[1]), Depth: inches(c.size[2]), Path: "/vault",
			Outlet: layout.Outlet{Wall: c.wall, Along: inches(c.along), Height: inches(c.up)},
		},
		Standings: []arrange.Standing{{Pump: layout.Pump{
			Name: "M", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, point(c.pump))},
			Port: point(c.port), Points: geom.Vec3{X: c.looks[0], Y: c.looks[1], Z: c.looks[2]},
			Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "1"},
		}}},
		Fittings: []arrange.Fitting{
			{Part: layout.ThreadedInlet("1", layout.NPT, typed(c.adapter), layout.Measure{}, socket, hub), AtHand: -1},
			{Part: layout.SocketElbow(layout.Elbow90, "1", typed(c.elbow), socket, hub), AtHand: -1},
			{Part: layout.WallFitting("1", typed(c.bulkhead), socket, hub), AtHand: -1},
		},
		Pipes: []arrange.Pipe{{
			Pipe:  layout.Pipe{Kind: "pipe", Size: "1", OD: inches(2 * c.radius), Bore: inches(1.5)},
			Slope: 1, AtHand: -1,
		}},
		Rules: arrange.Rules{Elbows: elbows, Best: 100},
	}
	for k, o := range c.obstacles {
		i.Vault.Obstacles = append(i.Vault.Obstacles, layout.Obstacle{Name: fmt.Sprintf("block %d", k+1), Box: geom.BoxOf(point(o[0]), point(o[1]))})
	}
	none := layout.Is(unit.Length(0))
	s := &i.Settings
	s.MakeUp, s.ClosingMakeUp, s.PumpClear, s.ObstacleClear, s.PartClear, s.LiftClear = none, none, none, none, none, none
	s.WallClear = layout.Is(inches(c.clear))
	return i
}
