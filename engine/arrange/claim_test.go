package arrange

import (
	"context"
	"math"
	"testing"

	"plashet/engine/geom"
	"plashet/engine/layout"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// plain is a small vault with a pump that looks up; its sizes are invented, of the
// order of 1-1/2 inch fittings.
func plain() Input {
	const in = unit.Inch
	m := func(l unit.Length) layout.Measure {
		return layout.Measure{Length: l, Source: trace.Source{Title: "invented", Basis: trace.BasisMeasured}}
	}
	of := func(p layout.Part) Fitting { return Fitting{Part: p, Head: 0.05, Cost: 2, Priced: true, AtHand: -1} }
	i := Input{Path: "/assembly", Rules: Rules{Elbows: 1, Best: 100}}
	i.Vault = layout.Vault{Length: 20 * in, Width: 16 * in, Depth: 27 * in, Path: "/vault", Outlet: layout.Outlet{Wall: layout.Right, Along: 8 * in, Height: 20 * in}}
	i.Standings = []Standing{{Pump: layout.Pump{
		Name: "M", Path: "/pumps/0", Blocks: []geom.Box{geom.BoxOf(geom.Vec3{}, geom.Vec3{X: 0.2, Y: 0.16, Z: 0.2})},
		Port: geom.Vec3{X: 0.1, Y: 0.08, Z: 0.2}, Points: geom.Vec3{Z: 1},
		Outlet: layout.End{Kind: layout.FemaleThread, Thread: layout.NPT, Size: "1-1/2", Depth: layout.Measure{Length: 0.55 * in}},
	}}}
	i.Pipes = []Pipe{{Pipe: layout.Pipe{Kind: "PVC Sch 40", Size: "1-1/2", OD: 1.9 * in, Bore: 1.61 * in}, Slope: 0.05, Cost: 4, Priced: true, AtHand: -1}}
	i.Fittings = []Fitting{
		of(layout.ThreadedInlet("1-1/2", layout.NPT, m(1.3*in), m(0.55*in), m(0.7*in), m(2.3*in))),
		of(layout.SocketElbow(layout.Elbow90, "1-1/2", m(1.1*in), m(0.7*in), m(2.3*in))),
		of(layout.WallFitting("1-1/2", m(0.2*in), m(0.7*in), m(2.4*in))),
	}
	return i
}

func ran(i Input, judge func(*Layout) bool) Outcome {
	s, out := newSearch(i)
	s.judge = judge
	if s.sound {
		out = s.run(context.Background(), out, nil)
	}
	return out
}

// What layout or the verifier refuses ends a branch: there may have been another
// assembly in it, so that the claim falls, with what it would take at least.
func TestRefusedLowersTheClaim(t *testing.T) {
	whole := ran(plain(), nil)
	if len(whole.Faults) > 0 || len(whole.Layouts) == 0 || whole.Proof.Claim > Family || whole.Proof.Caps != 0 || whole.Proof.Open != (Gap{}) {
		t.Fatalf("not a case to plant a refusal in: %d layouts, %+v, faults %v", len(whole.Layouts), whole.Proof, whole.Faults)
	}
	none := ran(plain(), func(*Layout) bool { return false })
	if len(none.Layouts) != 0 || none.Proof.Claim != Capped || none.Proof.Caps == 0 {
		t.Errorf("all refused: %d layouts, %+v", len(none.Layouts), none.Proof)
	}
	if none.Proof.Open.Head <= 0 || none.Proof.Open.Head > whole.Layouts[0].Worth.Head || none.Proof.Open.Joints > whole.Layouts[0].Worth.Joints {
		t.Errorf("the gap %+v leaves out the layout that was refused: %+v", none.Proof.Open, whole.Layouts[0].Worth)
	}
	if none.Tally.Refused == 0 {
		t.Error("nothing refused is counted")
	}
	// One refusal alone: whatever comes in its place, the claim is not whole,
	// unless the same length is found in another branch.
	seen, shortest := 0, whole.Layouts[0].length
	one := ran(plain(), func(*Layout) bool { seen++; return seen > 1 })
	if one.Proof.Claim != Capped && (len(one.Layouts) == 0 || one.Layouts[0].length > shortest+alikeLength) {
		t.Errorf("one refused: %+v", one.Proof)
	}
}

// What is undecided counts only as long as nothing found beats it.
func TestGapAgainstFront(t *testing.T) {
	var p Proof
	front := []Layout{{Worth: Worth{Head: 1, Joints: 9, Cost: 10}}}
	p.gather([]worth{{head: 1.5, joints: 9, cost: 12}}, front)
	if p.Caps != 0 || p.Open != (Gap{}) {
		t.Errorf("beaten, but told: %+v", p)
	}
	p.gather([]worth{{head: 0.9, joints: 10, cost: 12}, {head: 2, joints: 8, cost: 11}}, front)
	if p.Caps != 2 || p.Open != (Gap{Head: 0.9, Joints: 8, Cost: 11}) {
		t.Errorf("%+v", p)
	}
}

// Water that comes down weighs before slide, joints, head and cost.
func TestOrderOfTheFront(t *testing.T) {
	down := Layout{Worth: Worth{Joints: 5, Head: 0.1}}
	down.Laid.Water.Order = layout.ValveFirst
	held := Layout{Worth: Worth{Joints: 9, Head: 0.4, Slide: 0.01}}
	shown := best([]Layout{down, held}, 5)
	if shown[0].Laid.Water.Order == layout.ValveFirst {
		t.Error("the first layout shown is one whose column comes down")
	}
}

// The play that is worked out along the chain is what package layout asks of it,
// and its tangent lies nowhere above it.
func TestPlayIsLayouts(t *testing.T) {
	i := plain()
	i.Rules.Play = true
	asked := 0
	var s *search
	judge := func(l *Layout) bool {
		w := newWorker(s)
		for _, o := range append(s.of(0), s.of(1)...) {
			parts := o.parts(-1, -1, false)
			if len(parts) != len(l.Chain.Parts) || o.turned != l.Chain.Pose.Turn {
				continue
			}
			c := w.chain(&o, parts)
			w.set(c, leaving{without: true}, false)
			w.b.start()
			for k, slot := range c.slot {
				if slot >= 0 {
					w.b.x[slot] = math.Max(0, l.Laid.Places[k].Centre.Sub(centreBefore(l, k)).Norm()-float64(c.frame.Links[k].Least))
				}
			}
			w.b.needed()
			for n, q := range l.Laid.Room.Plays {
				if p := &w.b.play[n]; math.Abs(p.now-float64(q.Needed)) > 1e-6 {
					t.Errorf("%s: %.6f m worked out, layout asks %.6f m", q.Axis, p.now, float64(q.Needed))
				} else {
					asked++
				}
			}
		}
		return true
	}
	s, out := newSearch(i)
	s.judge = judge
	if out = s.run(context.Background(), out, nil); len(out.Layouts) == 0 || asked == 0 {
		t.Fatalf("%d layouts, %d plays held against layout's", len(out.Layouts), asked)
	}
	for _, l := range out.Layouts {
		for _, q := range l.Laid.Room.Plays {
			if q.Available < q.Needed {
				t.Errorf("%s: %.4f m of play, %.4f m needed", q.Axis, float64(q.Available), float64(q.Needed))
			}
		}
	}
}

// of gives the orders with n elbows.
func (s *search) of(n int) []order {
	out, _ := s.orders(byCompass, n, nil, nil)
	return out
}

func centreBefore(l *Layout, k int) geom.Vec3 {
	if k == 0 {
		return l.Laid.Port
	}
	return l.Laid.Places[k-1].Centre
}

// A search that is stopped ends within a few nodes, whatever it is at.
func TestHaltedEverywhere(t *testing.T) {
	for _, after := range []int{1, 2, 5, 20, 100, 400} {
		ctx, stop := context.WithCancel(context.Background())
		s, out := newSearch(plain())
		n, since := 0, 0
		s.halt(ctx)
		counted := func() bool {
			if n++; n == after {
				stop()
			}
			if n > after {
				since++
			}
			return ctx.Err() != nil
		}
		s.watch = counted
		out = s.run(ctx, out, nil)
		stop()
		if n >= after && out.Proof.Claim != Stopped {
			t.Errorf("stopped at question %d, but the claim is %d", after, out.Proof.Claim)
		}
		if since > 60 {
			t.Errorf("asked %d times more after it was stopped at question %d", since, after)
		}
	}
}
