package arrange_test

import (
	"fmt"
	"math"
	"testing"

	"plashet/engine/layout"
	"plashet/engine/unit"
	"plashet/engine/verify"
)

// A case worked by hand: pump 6 x 6 x 6 in with its port in the middle of its
// top, in a vault of 20 x 20 x 30 in, hole in the right wall 20 in up. One
// elbow: 20 - 6 = 14 in up, and 3-1/2 in across, the least that elbow (1-1/4 + 1)
// and bulkhead fitting (1/4 + 1) take; the pump moves up to that. Two elbows
// put 4-1/2 in along the wall between them, face to face.
func byHand() *squareCase {
	return &squareCase{
		size: [3]float64{20, 20, 30}, wall: layout.Right, along: 10, up: 20,
		pump: [3]float64{6, 6, 6}, port: [3]float64{3, 3, 6}, looks: [3]float64{0, 0, 1},
		radius: 1, clear: 0.25, adapter: 0.75, socket: 1, elbow: 1.25, bulkhead: 0.25,
	}
}

// The layout worked by hand, as the search's input has the parts, is laid and
// proved: the program and engine/layout speak of the same things.
func TestByHandIsLaid(t *testing.T) {
	i := byHand().input(4)
	part := func(k int, roll unit.Angle, next layout.Join) layout.Laid {
		p := i.Fittings[k].Part
		p.Mark = fmt.Sprint(k)
		return layout.Laid{Part: p, Roll: roll, Next: next}
	}
	chain := layout.Input{
		Vault: i.Vault, Pump: i.Standings[0].Pump, Pipes: []layout.Pipe{i.Pipes[0].Pipe}, Settings: i.Settings, Path: i.Path,
		Pose: layout.Pose{At: point([3]float64{13.5, 7, 0})},
		Parts: []layout.Laid{
			part(0, 0, layout.Join{Closing: true}), part(1, 270*unit.Degree, layout.Join{}), part(2, 0, layout.Join{}),
		},
	}
	a, ok := sound(chain, i.Rules)
	if !ok {
		report := verify.Prove(chain, a)
		t.Fatalf("not sound: %+v", refused(&report, i.Rules))
	}
	length := a.Places[0].Spacing + a.Places[1].Spacing + a.Places[2].Spacing
	if math.Abs(float64(length)/in-17.5) > 1e-6 {
		t.Errorf("%g in, want 17.5", float64(length)/in)
	}
}

func TestProgramByHand(t *testing.T) {
	needGLPK(t)
	c := byHand()
	for _, inner := range []bool{false, true} {
		if v, ok := c.least(t, 0, inner); ok {
			t.Errorf("a straight chain of %g in", v)
		}
		if v, ok := c.least(t, 1, inner); !ok || math.Abs(v-17.5) > 1e-6 {
			t.Errorf("one elbow: %g in, %v; want 17.5", v, ok)
		}
		if v, ok := c.least(t, 2, inner); !ok || math.Abs(v-22) > 1e-6 {
			t.Errorf("two elbows: %g in, %v; want 22", v, ok)
		}
	}
	// A slab over all of the vault between pump and hole.
	c.obstacles = [][2][3]float64{{{0, 0, 12}, {20, 20, 13}}}
	for n := range 4 {
		if v, ok := c.least(t, n, true); ok {
			t.Errorf("%d elbows pass a slab in %g in", n, v)
		}
	}
}

// The two programs stand on either side of the truth, so that the inner one is
// never above the outer one.
func TestProgramsInOrder(t *testing.T) {
	needGLPK(t)
	solved := 0
	for seed := uint64(1); seed <= 6; seed++ {
		c := anySquare(seed)
		for n := range 4 {
			outer, fits := c.least(t, n, false)
			inner, may := c.least(t, n, true)
			if fits && (!may || inner > outer+1e-6) {
				t.Errorf("seed %d, %d elbows: inner %g %v above outer %g", seed, n, inner, may, outer)
			}
			if fits {
				solved++
			}
		}
	}
	if solved == 0 {
		t.Error("no case has a layout: nothing was compared")
	}
}
