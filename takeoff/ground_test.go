package takeoff

import (
	"slices"
	"testing"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// The courtyard rill of the trade's notes: 6 m of rill 0.30 m wide and a pool of
// 1.2 x 0.7 m between falls of 0.45 and 0.35 m. By hand, with the pool 0.25 m
// deep, 0.30 m up at the sides and behind, 0.30 m beyond the edge:
//
//	length 6 + (1.2 + 2 x 0.25) + 0.8 + 0.3 + 0.6 = 9.4 m
//	width  max(0.3 + 0.6, 0.7 + 0.5) + 0.6 = 1.8 m
func TestStreamSheet(t *testing.T) {
	const o = 0.3
	in := Input{Book: book, Overlap: o, Layers: 1, Soil: "loam", Streams: []Stream{{
		Name: "rill", Length: 6, Width: 0.3, Drop: 0.8, Bank: 0.3, Pools: []Basin{{Name: "mid", Length: 1.2, Width: 0.7, Depth: 0.25}},
	}}}
	sheet := func(in Input) Item {
		items, _, faults := List(in)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		return find(t, items, CodeLiner, "rill")
	}
	if s := sheet(in); !same(float64(s.Length), 9.4) || !same(float64(s.Width), 1.8) {
		t.Errorf("%v x %v", float64(s.Length), float64(s.Width))
	}
	// Falls alone, from a box over a lip, need a sheet too: 0.8 + 0.3 + 0.6 m.
	in.Streams[0].Length, in.Streams[0].Pools = 0, nil
	if s := sheet(in); !same(float64(s.Length), 1.7) || !same(float64(s.Width), 1.5) {
		t.Errorf("falls alone: %v x %v", float64(s.Length), float64(s.Width))
	}
	in.Beds = []Basin{{Name: "bed", Length: 2, Width: 1, Depth: 0.3}}
	items, _, _ := List(in)
	if b := find(t, items, CodeLiner, "bed"); !same(float64(b.Length), 3.2) || !same(float64(b.Width), 2.2) { // L + 2 D + 2 o
		t.Errorf("bed: %v x %v", float64(b.Length), float64(b.Width))
	}
	in.Streams[0].Drop = 0
	if _, _, faults := List(in); len(faults) != 1 || faults[0].Code != FaultRange {
		t.Errorf("nothing to line: %+v", faults)
	}
}

// A bank given as 0 is one of 0, not one that is not given.
func TestBankOfNothing(t *testing.T) {
	for _, c := range []struct {
		given bool
		width float64 // 0.3 + 2 b + 2 x 0.3 m, with b a foot or nothing
	}{{false, 0.3 + 2*0.3048 + 0.6}, {true, 0.9}} {
		in := Input{Book: book, Overlap: 0.3, Layers: 1, Soil: "loam", Streams: []Stream{{Name: "rill", Length: 6, Width: 0.3, Drop: 0.8, Banked: c.given}}}
		items, _, faults := List(in)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if s := find(t, items, CodeLiner, "rill"); !same(float64(s.Width), c.width) {
			t.Errorf("given %v: %v wide", c.given, float64(s.Width))
		}
		if told := slices.ContainsFunc(Assumed(in), func(a trace.Assumption) bool { return a.Code == AssumeBank }); told == c.given {
			t.Errorf("given %v, assumed %v", c.given, told)
		}
	}
}

// What is filled in again is dug and not left over.
func TestFilledInAgain(t *testing.T) {
	in := Input{Book: book, Soil: "clay", Holes: []Hole{{Name: "vault", Volume: 3, Back: 1}, {Name: "trench", Volume: 2, Back: 2}}}
	items, _, faults := List(in)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	dig, left := find(t, items, CodeDig, ""), find(t, items, CodeSoil, "")
	// Table 4-1 as quoted: clay 30 to 60 percent. By hand: 5 m³ dug, 2 m³ left.
	if !same(dig.Buy.Low, 5) || !same(left.Buy.Low, 2*1.3) || !same(left.Buy.High, 2*1.6) {
		t.Errorf("dug %+v, left %+v", dig.Buy, left.Buy)
	}
	in.Holes[0].Back = 4
	if _, _, faults := List(in); len(faults) != 1 || faults[0].Code != FaultRange {
		t.Errorf("more filled in than dug: %+v", faults)
	}
}

// Sticks laid end to end: 56 ft in sticks of 20 ft are three, with two couplings
// and four sockets between them; sticks with a bell need no coupling and have one
// socket each. Hose has neither.
func TestCouplings(t *testing.T) {
	pipe := Pipe{Kind: "PVC Sch 40", Size: "2", Run: 56 * unit.Foot, Stick: 20 * unit.Foot, Welded: true}
	for _, c := range []struct {
		name         string
		change       func(p *Pipe)
		couplings    float64
		sockets      float64
		assumedPlain bool
	}{
		{"plain", func(*Pipe) {}, 2, 4, true},
		{"bell", func(p *Pipe) { p.Bell = true }, 0, 2, false},
		{"not welded", func(p *Pipe) { p.Welded = false }, 0, 0, false},
		{"one stick", func(p *Pipe) { p.Run = 20 * unit.Foot }, 0, 0, false},
		{"a rest of the plan", func(p *Pipe) { p.Length, p.Sticks, p.Rest = 4*unit.Foot, 1, 16*unit.Foot }, 2, 4, true}, // 16 ft, then 40 in two
		{"by length", func(p *Pipe) { p.Stick = 0 }, 0, 0, false},
	} {
		p := pipe
		c.change(&p)
		in := Input{Book: book, Pipe: []Pipe{p}}
		items, _, faults := List(in)
		if len(faults) > 0 {
			t.Fatal(c.name, faults)
		}
		couplings, sockets := 0.0, 0.0
		for _, i := range items {
			switch i.Code {
			case CodeFitting:
				couplings += i.Need.High
			case CodeCement:
				for _, x := range i.Terms {
					if x.Symbol == "n 2" {
						sockets += x.Value.SI
					}
				}
			}
		}
		plain := false
		for _, a := range Assumed(in) {
			plain = plain || a.Code == AssumePlainEnds
		}
		if couplings != c.couplings || sockets != c.sockets || plain != c.assumedPlain {
			t.Errorf("%s: %g couplings, %g sockets, plain ends told: %v", c.name, couplings, sockets, plain)
		}
	}
}
