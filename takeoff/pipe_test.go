package takeoff

import (
	"math"
	"testing"

	"plashet/engine/unit"
)

func TestPipe(t *testing.T) {
	const by10 = 10 * unit.Foot
	for _, c := range []struct {
		name      string
		p         Pipe
		buy       float64
		joined    int
		wasteFeet float64
		why       string
	}{
		{"plan", Pipe{Length: 15 * unit.Foot, Stick: by10, Sticks: 1, Offcuts: 6 * unit.Foot}, 1, 0, 1, "hand: 10 + 6 ft for 15 ft of pieces"},
		{"run", Pipe{Run: 45 * unit.Foot, Stick: by10}, 5, 5, 5, "hand: 45 ft in 10 ft sticks"},
		{"run of whole sticks", Pipe{Run: 60 * unit.Foot, Stick: 20 * unit.Foot}, 3, 3, 0, "hand: 60 ft in 20 ft sticks"},
		{"both", Pipe{Length: 18 * unit.Foot, Run: 36 * unit.Foot, Stick: 20 * unit.Foot, Sticks: 1}, 3, 2, 6, "hand: 54 ft in 20 ft sticks"},
		{"rest shared", Pipe{Length: 12 * unit.Foot, Run: 26 * unit.Foot, Stick: by10, Sticks: 2, Rest: 8 * unit.Foot}, 4, 2, 2, "hand: 18 ft in two sticks, 8 ft lie in the plan's"},
		{"rest is enough", Pipe{Length: 12 * unit.Foot, Run: 5 * unit.Foot, Stick: by10, Sticks: 2, Rest: 8 * unit.Foot}, 2, 0, 3, "hand: 17 ft in two sticks"},
	} {
		items, _, faults := List(Input{Book: book, Pipe: []Pipe{c.p}, Spare: 0.10})
		if len(items) != 1 || len(faults) > 0 {
			t.Errorf("%s: %+v, faults %+v", c.name, items, faults)
			continue
		}
		i := items[0]
		if i.Buy != (Range{c.buy, c.buy, unit.KindCount}) || i.Laid.Joined != c.joined || i.Spare.High != 0 ||
			!same(i.Need.Low, float64(c.p.Length+c.p.Run)) || math.Abs(i.Waste.Low-c.wasteFeet*float64(unit.Foot)) > 1e-9 {
			t.Errorf("%s: %+v, want %+v", c.name, i, c)
		}
		how, ok := i.How()
		if !ok || how.Code != CodeSticks || len(how.Args) == 0 {
			t.Errorf("%s: how is not told: %+v", c.name, how)
		}
	}
	items, _, _ := List(full())
	for _, i := range items {
		if _, ok := i.How(); i.Size == "1-1/4" && (ok || i.Buy.Kind != unit.KindDistance || !same(i.Buy.Low, float64(30*unit.Foot)) || i.Spare.High != 0) {
			t.Errorf("30 ft of hose by length: %+v", i)
		}
		if i.Spare.High > 0 && i.Code != CodeFitting {
			t.Errorf("spare is for fittings: %+v", i)
		}
	}
}
