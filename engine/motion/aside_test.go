package motion

import (
	"math"
	"testing"

	"plashet/engine/level"
	"plashet/engine/unit"
)

// pair is two feeds of one pump on a tee beyond the check valve: the upper
// box, 0.4 m2 and 400 mm deep, stands above the lower one, whose lip is wide and
// passes on what comes.
func pair(tb testing.TB, higher, inlet unit.Length) Inputs {
	tb.Helper()
	const q = 2e-3
	return Inputs{
		Pond: tank(tb, 4, 0.6, 0), NoRim: true, Low: -0.5, Flow: q, Supply: Constant{q / 2, q / 2},
		Feeds: []Feed{
			{
				Name: "upper", Pipe: 0.01, PipeHeld: 0.01, Crest: 1.3 + higher, Depth: 0.4, Inlet: inlet, Valve: true, Back: 5e5, Bore: 1e-3,
				Aside: &Aside{To: 1, Back: 1e6},
				Parts: []Part{{Name: "upper", Full: 0.16, Held: 0.16, HeldOpen: unit.Volume(0.4 * inlet)}},
			},
			{
				Name: "lower", Pipe: 0.01, PipeHeld: 0.01, Crest: 1.3, Depth: 0.3, Valve: true, Back: 5e5, Bore: 1e-3,
				Parts: []Part{{Name: "lower", Full: 0.048, Held: 0.048}},
			},
		},
	}
}

// TestAsideByHand: a box that falls from h1 to h2 over where the water goes
// takes 2 A sqrt(R) (sqrt h1 - sqrt h2), for A dh = -sqrt(h/R) dt. Down to its
// pipe's end, 250 mm under its lip and 50 mm over the lower one's: 2 * 0.4 *
// 1000 * (sqrt 0.3 - sqrt 0.05) = 259.29 s, 100 l; the pond of 4 m2 rises 25 mm.
func TestAsideByHand(t *testing.T) {
	s := system(t, pair(t, 0.3, 0.15))
	full := s.AtRest(Held)
	c := follow(t, s, Program{From: full, Valve: Works, Until: unit.Hour, Accuracy: 1e-8})
	if len(c.Events) < 2 || c.Events[0].Code != EventSiphonEnds || math.Abs(float64(c.Events[0].At)-259.29) > 0.01 {
		t.Errorf("events %+v", c.Events)
	}
	if math.Abs(float64(c.End.Pond)-0.025) > 1e-6 || math.Abs(float64(c.Down)-0.1) > 4e-6 || c.Back != 0 || !c.Still {
		t.Errorf("pond at %.6f, %.6f m³ down, %.6f back", float64(c.End.Pond), float64(c.Down), float64(c.Back))
	}
	// The pipe's end clear, rain on the upper box runs on through it: 50 mm on 0.4
	// m2 are 20 l of 220 with the pond's; a lower box without a surface gets none.
	in := pair(t, 0.3, 0.15)
	in.Feeds[0].Parts[0].Plan = 0.4
	s = system(t, in)
	end := follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour}).End
	wet := follow(t, s, Program{From: end, Valve: Works, Rain: Rain{Depth: 0.05, Over: 600}, Until: unit.Hour})
	if d := float64(wet.End.Pond - end.Pond); math.Abs(d-0.055) > 1e-5 {
		t.Errorf("rain raises the pond by %.5f", d)
	}
	// Levelled out, 200 mm down: half of the upper box.
	s = system(t, pair(t, 0.2, 0.05))
	c = follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour})
	if math.Abs(float64(c.End.Pond)-0.02) > 2e-4 || !c.Still {
		t.Errorf("pond at %.6f", float64(c.End.Pond))
	}
	// A valve that leaks brings all of it back in the end, aside or not.
	c = follow(t, s, Program{From: s.AtRest(Held), Valve: Leaking, Leak: Leak{0.05, 0.61}, Until: 10 * unit.Hour, Still: 1e-9})
	if got := float64(c.Back + c.Down); math.Abs(got-(0.14+0.048+0.02)) > 1e-5 || c.Down <= 0.01 {
		t.Errorf("%.5f m³ come back, %.5f of them aside", got, float64(c.Down))
	}
}

// TestNoAside: a valve stuck open, or no way, lets nothing into the lower box;
// neither does a pump that runs.
func TestNoAside(t *testing.T) {
	s := system(t, pair(t, 0.3, 0.15))
	if c := follow(t, s, Program{From: s.AtRest(Held), Valve: StuckOpen, Until: unit.Hour}); c.Down != 0 {
		t.Errorf("%.5f m³ come over the lower lip with the pipe open", float64(c.Down))
	}
	in := pair(t, 0.3, 0.15)
	in.Feeds[0].Aside = nil
	s = system(t, in)
	if c := follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour}); c.Down != 0 || c.StillAt != 0 {
		t.Errorf("%+v", c.Events)
	}
	in = pair(t, 0.3, 0.15)
	in.Feeds[0].Aside.To = 2
	if _, err := New(in); err == nil {
		t.Error("a way into a feed that is not there")
	}
}

// TestAsideShares holds the way of each box for itself against the pipe that
// three of them share, solved as a net at every instant: two boxes above run
// into a third through a tee. Both come to the same levels; told by
// itself each box is done sooner, by no more than the square root of the
// resistance that is shared at twice the flow.
func TestAsideShares(t *testing.T) {
	const r, shared = 4e5, 6e5
	in := pair(t, 0.3, 0.15)
	in.Feeds[0].Aside.Back = r + shared
	second := in.Feeds[0]
	second.Aside = &Aside{To: 1, Back: r + shared}
	in.Feeds = append(in.Feeds, second)
	in.Supply = Constant{1e-3, 1e-3, 1e-3}
	s := system(t, in)
	c := follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour})
	// Two alike: each drives q, the shared pipe 2q: h = (r + 4 shared) q².
	net := 2 * 0.4 * math.Sqrt(r+4*shared) * (math.Sqrt(0.3) - math.Sqrt(0.05))
	told := float64(c.Events[0].At)
	t.Logf("told %.0f s, as a net %.0f s", told, net)
	if told > net || told < net/math.Sqrt((r+4*shared)/(r+shared))-0.1 {
		t.Errorf("the siphon ends after %.1f s, as a net after %.1f s", told, net)
	}
	if math.Abs(float64(c.End.Pond)-0.05) > 1e-6 {
		t.Errorf("pond at %.6f", float64(c.End.Pond))
	}
}

// TestUnknownDepth: a box whose depth is not known empties all the same with
// the pipe open, as package level takes it.
func TestUnknownDepth(t *testing.T) {
	b, err := level.Box("box", "", level.BoxSize{Volume: 0.16})
	if err != nil {
		t.Fatal(err)
	}
	in := pair(t, 0.3, 0)
	in.Feeds[0].Depth = 0
	in.Feeds[0].Parts[0].HeldOpen = b.HeldOpen
	s := system(t, in)
	if c := follow(t, s, Program{From: s.AtRest(Held), Valve: StuckOpen, Until: unit.Hour}); math.Abs(float64(c.Back)-(0.16+0.048+0.02)) > 1e-5 {
		t.Errorf("%.5f m³ come back", float64(c.Back))
	}
}
