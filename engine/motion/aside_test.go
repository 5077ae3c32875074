package motion

import (
	"math"
	"testing"

	"pgregory.net/rapid"

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
		Ways: []Way{{level.Way{From: 0, To: 1}, 1e6}}, Places: 2,
		Feeds: []Feed{
			{
				Name: "upper", Pipe: 0.01, PipeHeld: 0.01, Crest: 1.3 + higher, Depth: 0.4, Inlet: inlet, Valve: true, Back: 5e5, Bore: 1e-3,
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
	in.Ways = nil
	s = system(t, in)
	if c := follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour}); c.Down != 0 || c.StillAt != 0 {
		t.Errorf("%+v", c.Events)
	}
	in = pair(t, 0.3, 0.15)
	in.Ways[0].To = 2
	if _, err := New(in); err == nil {
		t.Error("a way into a feed that is not there")
	}
}

// TestAsideShares: two boxes above run into a third through a tee, and share the
// pipe from there. By hand: two alike drive q each and 2q together, so h = (r +
// 4 shared) q², and the siphon ends after 2 A sqrt(r + 4 shared) (sqrt h1 - sqrt
// h2), 434 s; each for itself would be done in 259.
func TestAsideShares(t *testing.T) {
	const r, shared = 4e5, 6e5
	in := pair(t, 0.3, 0.15)
	in.Feeds = append(in.Feeds, in.Feeds[0])
	in.Supply = Constant{1e-3, 1e-3, 1e-3}
	in.Places, in.Ways = 5, []Way{
		{level.Way{From: 3, To: 0}, r},
		{level.Way{From: 2, To: 3}, r},
		{level.Way{From: 3, To: 1}, shared},
		{level.Way{From: 4, To: 3, OneWay: true}, r}, // the way from the pump, which the valve holds
	}
	s := system(t, in)
	c := follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour, Accuracy: 1e-8})
	net := 2 * 0.4 * math.Sqrt(r+4*shared) * (math.Sqrt(0.3) - math.Sqrt(0.05))
	if told := float64(c.Events[0].At); math.Abs(told-net) > 0.01 {
		t.Errorf("the siphon ends after %.2f s, by hand %.2f s", told, net)
	}
	if math.Abs(float64(c.End.Pond)-0.05) > 1e-6 {
		t.Errorf("pond at %.6f, events %v", float64(c.End.Pond), c.Events)
	}
	// Alone on the same pipe, the box has both resistances to itself.
	in.Ways[1].OneWay, in.Ways[1].From, in.Ways[1].To = true, 3, 2
	in.Feeds[2].Inlet, in.Feeds[2].Parts = 0.4, []Part{{Name: "third", Full: 0.16, Held: 0.16, HeldOpen: 0.16}} // pours in from above
	s = system(t, in)
	c = follow(t, s, Program{From: s.AtRest(Held), Valve: Works, Until: unit.Hour, Accuracy: 1e-8})
	if one := 2 * 0.4 * math.Sqrt(r+shared) * (math.Sqrt(0.3) - math.Sqrt(0.05)); math.Abs(float64(c.Events[0].At)-one) > 0.01 {
		t.Errorf("alone the siphon ends after %.2f s, by hand %.2f s", float64(c.Events[0].At), one)
	}
}

// TestAsideFills: after a start that starved, a box that is not full takes what
// comes, and a full one of a lower lip runs into it where it stands lower still.
// By hand: the upper box of 0.4 m² is empty at 900 + 300 mm; the lower one, 0.16
// m² and full at 1300, its pipe's end at 1000, gives until both stand level: 0.4
// (z - 1.2) = 0.16 (1.3 - z), z = 1.22857.
func TestAsideFills(t *testing.T) {
	in := pair(t, 0.3, 0)
	s := system(t, in)
	m := s.AtRest(Held)
	m.x[s.feeds[0].parts[0].at] = 0
	c := follow(t, s, Program{From: m, Valve: Works, Until: unit.Hour, Still: 1e-9})
	z := 0.16 * (1.3 - 1.2) / (0.4 + 0.16)
	if got := c.End.x[s.feeds[0].parts[0].at] / 0.4; math.Abs(got-z) > 1e-4 || c.Down != 0 {
		t.Errorf("the upper box stands %.5f m over its floor, by hand %.5f; %v down", got, z, c.Down)
	}
	// The other way round the lower one fills first, and what is over goes on.
	m = s.AtRest(Held)
	m.x[s.feeds[1].parts[0].at] = 0.008
	c = follow(t, s, Program{From: m, Valve: Works, Until: unit.Hour, Still: 1e-9})
	if want := 0.4*0.3 - 0.04; math.Abs(float64(c.Down)-want) > 1e-4 {
		t.Errorf("%.5f m³ come down, by hand %.5f", float64(c.Down), want)
	}
}

// TestBeyondByBisection holds the net of pipe against each fork's balance: on
// random trees and loops nothing is lost at a fork, every way carries what the
// heads at its ends make it, and it does so with the boxes in any order.
func TestBeyondByBisection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, forks := rapid.IntRange(2, 5).Draw(t, "boxes"), rapid.IntRange(1, 4).Draw(t, "forks")
		b := &beyond{boxes: n, head: make([]float64, n+forks), known: make([]float64, n), lost: make([]float64, forks), from: make([]float64, forks), way: make([]float64, forks)}
		gives, takes := make([]bool, n), make([]bool, n)
		for range forks {
			b.matrix = append(b.matrix, make([]float64, forks))
		}
		way := func(from, to int) {
			valve := rapid.SampledFrom([]bool{false, false, false, true}).Draw(t, "valve")
			b.ways = append(b.ways, leg{from: from, to: to, back: rapid.Float64Range(1e5, 3e6).Draw(t, "back"), quiet: rapid.Float64Range(1e-6, 1e-4).Draw(t, "quiet"), on: true, off: !valve})
		}
		for i := range n {
			gives[i], takes[i] = rapid.Bool().Draw(t, "gives"), true
			b.head[i] = rapid.Float64Range(0, 1).Draw(t, "head")
			way(n+rapid.IntRange(0, forks-1).Draw(t, "fork"), i)
		}
		for k := range forks - 1 {
			way(n+k, n+k+1)
		}
		if forks > 2 && rapid.Bool().Draw(t, "loop") {
			way(n+forks-1, n)
		}
		flows := b.solve(gives, takes)
		all, most := 0.0, 0.0
		for i, q := range flows {
			all, most = all+q, max(most, math.Abs(q))
			if q < 0 && !gives[i] {
				t.Fatalf("box %d gives %g", i, -q)
			}
		}
		lost := make([]float64, forks)
		for k := range b.ways {
			l := &b.ways[k]
			on, off := b.bears(l, gives, takes)
			q, _ := l.flow(b.head[l.from]-b.head[l.to], on, off)
			if l.from >= n {
				lost[l.from-n] -= q
			}
			if l.to >= n {
				lost[l.to-n] += q
			}
		}
		for i, v := range lost {
			if math.Abs(v) > 1e-10 {
				t.Fatalf("%g m³/s lost at fork %d: %+v", v, i, b.head)
			}
		}
		if math.Abs(all) > 1e-9 {
			t.Fatalf("%g m³/s won, %v", all, flows)
		}
	})
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
