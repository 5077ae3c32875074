package level

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plashet/engine/geom"
	"plashet/engine/unit"
)

// settled gives the falls of joined boxes.
func settled(j Joined) []Below {
	out := make([]Below, len(j.Vessels))
	j.Settle(out)
	return out
}

// twoBoxes is worked by hand: two boxes on a tee beyond the check valve. The
// upper one, 0.8 x 0.5 m and 400 mm deep (160 l), has its lip 200 mm above the
// lower one's; its pipe ends 50 mm over its floor. At a stop with the valve
// holding it falls 200 mm, half its depth, to the lower lip: 80 l run over that
// lip into the pond of 4 m2, which rises 20 mm. With the pipe open it falls 350
// mm, to its pipe's end: 140 l, and the lower one, 0.4 x 0.4 m and 300 mm deep
// (48 l), with its pipe at the floor, all of its 48.
func twoBoxes(t *testing.T) (Inputs, []Below) {
	t.Helper()
	j := Joined{
		Vessels: []Vessel{{Crest: 1.5, Depth: 0.4, Inlet: 0.05}, {Crest: 1.3, Depth: 0.3}},
		Ways:    []Way{{From: 3, To: 2, OneWay: true}, {From: 2, To: 0}, {From: 2, To: 1}}, Places: 4,
	}
	falls := settled(j)
	return Inputs{
		Pond: must(NewPond(Pond{Outline: must(geom.Rectangle(4, 1)), Section: []Step{{0.6, 0}}, Void: 1})), Rim: 0.1,
		Stand: Stand{Floor: -0.6}, Flow: 0.002, Valve: true,
		Stores: []Store{
			must(Run("pipe", "", 0.02, true)),
			must(Box("upper", "", BoxSize{Volume: 0.16, Depth: 0.4, Inlet: 0.05, Fall: falls[0].Fall})),
			must(Box("lower", "", BoxSize{Volume: 0.048, Depth: 0.3, Fall: falls[1].Fall})),
		},
	}, falls
}

// TestTwoBoxes: what stays, what a stop gives back and a restart draws.
func TestTwoBoxes(t *testing.T) {
	in, falls := twoBoxes(t)
	near(t, "fall", float64(falls[0].Fall), 0.2, 1e-12)
	if falls[0].To != 1 || falls[1].To != -1 || falls[1].Fall != 0 {
		t.Errorf("falls %+v", falls)
	}
	upper, lower := in.Stores[1], in.Stores[2]
	near(t, "upper keeps, l", float64(upper.Held)*1e3, 80, 1e-9)
	near(t, "upper keeps with the pipe open, l", float64(upper.HeldOpen)*1e3, 20, 1e-9)
	near(t, "lower keeps, l", float64(lower.Held)*1e3, 48, 1e-9)
	if !upper.Joined || lower.Joined {
		t.Errorf("joined: upper %v, lower %v", upper.Joined, lower.Joined)
	}
	l := must(Solve(in))
	near(t, "a restart draws, l", float64(l.Draw)*1e3, 80, 1e-9)
	near(t, "first start, mm", float64(state(t, l, CourseFirst, MomentRun).Change)*1e3, -228/4.0, 1e-9)
	near(t, "after a stop, mm", float64(state(t, l, CourseFirst, MomentHeld).Change)*1e3, (80-228)/4.0, 1e-9)
	near(t, "restart, mm", float64(state(t, l, CourseKept, MomentRun).Change)*1e3, -20, 1e-9)
	near(t, "after a stop of everyday, mm", float64(state(t, l, CourseKept, MomentHeld).Change)*1e3, 0, 1e-9)
	near(t, "pipe open, mm", float64(state(t, l, CourseKept, MomentOpen).Change)*1e3, (20+140+48-80)/4.0, 1e-9)

	// A vault behind a sill gets what comes back through the pump, not what comes
	// over the lower lip: with both below the sill each keeps its own.
	in.Vault = &Vault{Body: must(NewBox(1, 1, 1, 1, 1, -1)), Sill: &Sill{Crest: 0.05, Width: 0.3, C: 1.7}}
	in.Stand, in.Line, in.TopsUp = Stand{Floor: -1}, -0.1, false
	l = must(Solve(in))
	rest, stop := state(t, l, CourseKept, MomentRest), state(t, l, CourseKept, MomentHeld)
	run := state(t, l, CourseKept, MomentRun)
	near(t, "to the pond, l", float64(stop.PondVolume-run.PondVolume)*1e3, float64(run.InStores-stop.InStores)*1e3, 1e-9)
	near(t, "to the vault, l", float64(stop.VaultVolume-run.VaultVolume)*1e3, 0, 1e-9)
	near(t, "books", float64(rest.Total-stop.Total), 0, 1e-12)
}

// TestNothingSiphons: where a check valve stands in the branch of the higher
// box, or its pipe ends over the water, or the lower box takes water only above
// it, nothing falls.
func TestNothingSiphons(t *testing.T) {
	two := func() Joined {
		return Joined{
			Vessels: []Vessel{{Crest: 1.5, Depth: 0.4, Inlet: 0.05}, {Crest: 1.3, Depth: 0.3}},
			Ways:    []Way{{From: 2, To: 0}, {From: 2, To: 1}}, Places: 3,
		}
	}
	for name, change := range map[string]func(j *Joined){
		"valve in the higher branch":      func(j *Joined) { j.Ways[0].OneWay = true },
		"pours in from above":             func(j *Joined) { j.Vessels[0].Inlet = 0.4 },
		"lower one takes it higher up":    func(j *Joined) { j.Vessels[1].Inlet = 0.5 },
		"not joined":                      func(j *Joined) { j.Ways = j.Ways[:1] },
		"level":                           func(j *Joined) { j.Vessels[1].Crest = 1.5 },
		"valve against the way, in a run": func(j *Joined) { j.Ways[1] = Way{From: 1, To: 2, OneWay: true} },
	} {
		j := two()
		change(&j)
		if b := settled(j)[0]; b.Fall != 0 || b.To != -1 {
			t.Errorf("%s: %+v", name, b)
		}
	}
	// A valve in the lower branch lets it come: the way is with it.
	j := two()
	j.Ways[1].OneWay = true
	near(t, "valve in the lower branch", float64(settled(j)[0].Fall), 0.2, 1e-12)
	// A lower box whose pipe ends 100 mm over its lip takes water above that only.
	j = two()
	j.Vessels[1].Inlet = 0.4
	near(t, "lower one pours in from above", float64(settled(j)[0].Fall), 0.1, 1e-12)
	// An upper box of unknown depth is taken to empty.
	b := must(Box("", "", BoxSize{Volume: 0.1, Fall: 0.2}))
	near(t, "unknown depth", float64(b.Held), 0, 0)
}

// TestPartFull: after a start that starved, boxes that are not full take what
// comes. By hand, with the boxes of TestTwoBoxes on a pond of 1 m2 that holds
// 100 l over its floor: 20 of them fill the pipe, 80 half the upper box, which
// then stands just at the lower lip, 1.3 m, over an empty lower box of 0.16 m2 at
// 1.0 m. Both come to one level: 0.4 (1.3 - z) = 0.16 (z - 1.0), z = 1.21429: the
// lower box holds 34.286 l, the upper one 45.714, and nothing runs over.
func TestPartFull(t *testing.T) {
	in, falls := twoBoxes(t)
	in.Pond = must(NewPond(Pond{Outline: must(geom.Rectangle(1, 1)), Section: []Step{{0.1, 0}}, Void: 1}))
	in.Stand = Stand{Floor: -0.1}
	in.Boxes = &Boxes{&Joined{
		Vessels: []Vessel{{Crest: 1.5, Depth: 0.4, Inlet: 0.05}, {Crest: 1.3, Depth: 0.3}},
		Ways:    []Way{{From: 3, To: 2, OneWay: true}, {From: 2, To: 0}, {From: 2, To: 1}}, Places: 4,
	}, []int{1, 2}}
	l := must(Solve(in))
	run := state(t, l, CourseFirst, MomentRun)
	if !run.Starved {
		t.Fatalf("%+v", run)
	}
	near(t, "running, upper, l", float64(run.Stores[1])*1e3, 80, 1e-6)
	stop := state(t, l, CourseFirst, MomentHeld)
	near(t, "stopped, upper, l", float64(stop.Stores[1])*1e3, 45.714, 1e-3)
	near(t, "stopped, lower, l", float64(stop.Stores[2])*1e3, 34.286, 1e-3)
	near(t, "books", float64(stop.Total-run.Total), 0, 1e-12)
	near(t, "the pond", float64(stop.Change), float64(run.Change), 1e-9)

	// 160 l more: the upper box is full, the lower one has 32 of its 48 l. The
	// upper one gives 16 and then down to the lower lip, 80 in all, 64 over it.
	in.Pond = must(NewPond(Pond{Outline: must(geom.Rectangle(1, 1)), Section: []Step{{0.212, 0}}, Void: 1}))
	in.Stand = Stand{Floor: -0.212}
	l = must(Solve(in))
	run, stop = state(t, l, CourseFirst, MomentRun), state(t, l, CourseFirst, MomentHeld)
	near(t, "running, lower, l", float64(run.Stores[2])*1e3, 32, 1e-6)
	near(t, "stopped, lower, l", float64(stop.Stores[2])*1e3, 48, 1e-3)
	near(t, "stopped, upper, l", float64(stop.Stores[1])*1e3, 80, 1e-3)
	near(t, "the pond rises by, mm", float64(stop.Pond-run.Pond)*1e3, 64, 1e-3)
	_ = falls

	// From full boxes it ends where Settle says.
	have := []float64{0.02, 0.16, 0.048}
	near(t, "from full, over, l", in.Boxes.communicate(in.Stores, have)*1e3, 80, 1e-3)
}

// TestPartFullSettles: from full, random joined boxes come to where Settle says,
// and from part full none of the water is lost.
func TestPartFullSettles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJoined(t)
		falls := settled(j)
		b := Boxes{Joined: &j}
		var stores []Store
		full, have := []float64{}, []float64{}
		for i := range j.Vessels {
			v := &j.Vessels[i]
			area := rapid.Float64Range(0.1, 2).Draw(t, "area")
			stores = append(stores, must(Box("box", "", BoxSize{Volume: unit.Volume(area * float64(v.Depth)), Depth: v.Depth, Inlet: v.Inlet, Fall: falls[i].Fall})))
			b.Store = append(b.Store, i)
			full = append(full, float64(stores[i].Running))
			have = append(have, rapid.Float64Range(0, 1).Draw(t, "full")*float64(stores[i].Running))
		}
		b.communicate(stores, full)
		for i := range stores {
			if d := math.Abs(full[i] - float64(stores[i].Held)); d > 1e-5 {
				t.Fatalf("box %d holds %.7f, by Settle %.7f", i, full[i], float64(stores[i].Held))
			}
		}
		was := sum(have)
		over := b.communicate(stores, have)
		if math.Abs(was-over-sum(have)) > 1e-9 || over < 0 {
			t.Fatalf("%g lost", was-over-sum(have))
		}
		for i := range have {
			for k, reach := range b.reach()[i][:len(have)] {
				if reach && i != k && b.gives(stores, have, i) > 1e-7 && b.stands(stores, have, i)-max(b.stands(stores, have, k), b.end(k)) > 1e-5 {
					t.Fatalf("box %d still runs into %d", i, k)
				}
			}
			if have[i] < -1e-12 || have[i] > float64(stores[i].Running)+1e-9 {
				t.Fatalf("box %d holds %g of %g", i, have[i], float64(stores[i].Running))
			}
		}
	})
}

// drawJoined draws boxes on a random net of pipe.
func drawJoined(t *rapid.T) Joined {
	num := func(name string, lo, hi float64) unit.Length {
		return unit.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	n := rapid.IntRange(1, 5).Draw(t, "boxes")
	j := Joined{Places: n + rapid.IntRange(1, 3).Draw(t, "tees")}
	for range n {
		depth := num("depth", 0.1, 0.5)
		j.Vessels = append(j.Vessels, Vessel{Crest: num("crest", 0, 0.6), Depth: depth, Inlet: num("inlet", 0, 1.2) * depth})
	}
	for range rapid.IntRange(0, 8).Draw(t, "ways") {
		j.Ways = append(j.Ways, Way{
			From: rapid.IntRange(0, j.Places-1).Draw(t, "from"), To: rapid.IntRange(0, j.Places-1).Draw(t, "to"),
			OneWay: rapid.SampledFrom([]bool{false, false, true}).Draw(t, "valve"),
		})
	}
	return j
}

// TestCommunicating: boxes let run by small steps, from any that stands higher
// to any that it can come to, come to where Settle says, whatever the order.
func TestCommunicating(t *testing.T) {
	const step = 1e-3
	fell := 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawJoined(t)
		n := len(j.Vessels)
		// Who comes to whom, by Warshall's closure.
		reach := make([][]bool, j.Places)
		for i := range reach {
			reach[i] = make([]bool, j.Places)
		}
		for _, w := range j.Ways {
			reach[w.From][w.To] = true
			reach[w.To][w.From] = reach[w.To][w.From] || !w.OneWay
		}
		for k := range reach {
			for i := range reach {
				for m := range reach {
					reach[i][m] = reach[i][m] || reach[i][k] && reach[k][m]
				}
			}
		}
		z, area := make([]float64, n), make([]float64, n)
		for i := range z {
			z[i], area[i] = float64(j.Vessels[i].Crest), rapid.Float64Range(0.5, 2).Draw(t, "area")
		}
		pairs := rapid.Permutation(indices(n*n)).Draw(t, "order")
		for moved := true; moved; {
			moved = false
			for _, p := range pairs {
				i, k := p/n, p%n
				end := func(i int) float64 {
					return float64(j.Vessels[i].Crest - j.Vessels[i].Depth + j.Vessels[i].Inlet)
				}
				if i == k || !reach[i][k] || z[i] <= end(i) || z[i] <= max(z[k], end(k))+2.5*step {
					continue
				}
				z[i] -= step
				z[k] = min(z[k]+step*area[i]/area[k], float64(j.Vessels[k].Crest)) // the rest runs over
				moved = true
			}
		}
		for i, b := range settled(j) {
			v := &j.Vessels[i]
			want := float64(v.Crest) - float64(b.Fall)
			if v.Inlet < v.Depth {
				want = max(want, float64(v.Crest-v.Depth+v.Inlet))
			}
			if b.Fall > 0 {
				fell++
			}
			if math.Abs(z[i]-want) > 4*step {
				t.Fatalf("box %d stands at %.4f, should at %.4f: %+v", i, z[i], want, j)
			}
		}
	})
	if fell == 0 {
		t.Error("no box fell")
	}
}

func indices(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// TestSettleProperties: a lower lip anywhere never leaves more, raising all
// changes nothing, and the work allocates nothing after the first time.
func TestSettleProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJoined(t)
		was := settled(j)
		for i := range j.Vessels {
			j.Vessels[i].Crest += 7
		}
		for i, b := range settled(j) {
			if math.Abs(float64(b.Fall-was[i].Fall)) > level {
				t.Fatalf("raised by 7 m, box %d falls %v, was %v", i, b.Fall, was[i].Fall)
			}
		}
		k := rapid.IntRange(0, len(j.Vessels)-1).Draw(t, "lower")
		j.Vessels[k].Crest -= 0.1
		for i, b := range settled(j) {
			if i != k && b.Fall < was[i].Fall-level {
				t.Fatalf("with box %d lower, box %d falls %v, was %v", k, i, b.Fall, was[i].Fall)
			}
		}
	})
	j, out := Joined{Vessels: make([]Vessel, 3), Ways: []Way{{0, 3, false}, {1, 3, false}}, Places: 4}, make([]Below, 3)
	j.Settle(out)
	if n := testing.AllocsPerRun(10, func() { j.Settle(out) }); n > 0 {
		t.Errorf("%v allocations", n)
	}
}
