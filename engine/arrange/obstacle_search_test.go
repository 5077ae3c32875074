package arrange_test

import (
	"math"
	"slices"
	"testing"

	"plashet/engine/arrange"
	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/unit"
)

// ways are those in which an obstacle may be moved.
var ways = map[string]geom.Vec3{
	arrange.ChangeObstacleUp: {Z: 1}, arrange.ChangeObstacleDown: {Z: -1},
	arrange.ChangeObstacleLeft: {X: -1}, arrange.ChangeObstacleRight: {X: 1},
	arrange.ChangeObstacleFront: {Y: -1}, arrange.ChangeObstacleBack: {Y: 1},
}

// shifted moves the first obstacle of a vault; false where it would leave the vault.
func shifted(in arrange.Input, way geom.Vec3, by float64) (arrange.Input, bool) {
	v := &in.Vault
	v.Obstacles = append([]layout.Obstacle(nil), v.Obstacles...)
	b := v.Obstacles[0].Box.Shift(way.Scale(by))
	v.Obstacles[0].Box = b
	in.Rules.Brief = true
	return in, math.Min(b.Min.X, math.Min(b.Min.Y, b.Min.Z)) > -1e-9 && b.Max.X < float64(v.Length)+1e-9 && b.Max.Y < float64(v.Width)+1e-9 && b.Max.Z < float64(v.Depth)+1e-9
}

// noneStraight tells that there is no layout along the compass: between its directions the
// least move is not sought, and then not told as sure.
func noneStraight(list []arrange.Layout) bool {
	return !slices.ContainsFunc(list, func(l arrange.Layout) bool { return !l.Odd })
}

// Vaults in which nothing fits but for one block: each move that is told makes a
// layout fit and a hundredth of an inch less does not, both searched again; a way
// that is not told mends nothing, tried at every inch up to the wall; and where no
// move helps it is told to come out.
func TestObstacleMoved(t *testing.T) {
	t.Parallel()
	book := newBook(t)
	told, sure, out, held := 0, 0, 0, 0
	for seed := uint64(1); seed <= 4000 && held < ifFar(3, 24); seed++ {
		in := smallVault(t, book, seed)
		if len(in.Vault.Obstacles) == 0 {
			continue
		}
		if _, inside := shifted(in, geom.Vec3{}, 0); !inside {
			continue
		}
		brief, free := in, in
		brief.Rules.Brief, free.Rules.Brief = true, true
		free.Vault.Obstacles = nil
		if len(arrange.Search(t.Context(), free, nil).Layouts) == 0 || len(arrange.Search(t.Context(), brief, nil).Layouts) > 0 {
			continue
		}
		whole := arrange.Search(t.Context(), in, nil)
		if whole.Proof.Claim != arrange.Family {
			continue // that nothing fits is not proven
		}
		held++
		got := map[string]arrange.Change{}
		for _, c := range whole.Short {
			if c.Obstacle > 0 {
				got[c.What.Code] = c
			}
		}
		fits := func(way geom.Vec3, by float64) bool {
			moved, inside := shifted(in, way, by)
			return inside && !noneStraight(arrange.Search(t.Context(), moved, nil).Layouts)
		}
		for code, way := range ways {
			c, ok := got[code]
			if !ok {
				for by := 1.0; by <= 15; by++ {
					if fits(way, by*float64(unit.Inch)) {
						t.Errorf("seed %d: %s by %g in mends it and is not told", seed, code, by)
					}
				}
				continue
			}
			told++
			if c.Sure {
				sure++
			}
			if !fits(way, float64(c.By)) || fits(way, float64(c.By-0.01*unit.Inch)) {
				t.Errorf("seed %d: %s by %.3f in is not the least", seed, code, float64(c.By/unit.Inch))
			}
		}
		if c, ok := got[arrange.ChangeObstacleOut]; ok {
			if out++; len(got) > 1 || c.By != 0 {
				t.Errorf("seed %d: told to come out beside %d others", seed, len(got)-1)
			}
		} else if len(got) == 0 {
			t.Errorf("seed %d: a layout fits without the block, and nothing is told of it", seed)
		}
	}
	t.Logf("%d vaults, %d moves, %d of them sure, %d to come out", held, told, sure, out)
	if held == 0 || told == 0 || sure == 0 {
		t.Error("nothing was looked at")
	}
}
