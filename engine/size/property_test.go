package size

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

func vectors(r *Result) (out []vector) {
	for i := range r.Front {
		d := &r.Front[i]
		out = append(out, vector{d.First, d.Years, d.Step})
	}
	return out
}

// noWorse tells that each vector of old is met or beaten by one of now.
func noWorse(now, old []vector) bool {
	for _, o := range old {
		if !slices.ContainsFunc(now, func(n vector) bool { return n.first <= o.first && n.years <= o.years && n.step >= o.step }) {
			return false
		}
	}
	return true
}

// each runs random problems that have a front.
func each(t *testing.T, stream uint64, do func(seed uint64, r *rand.Rand, p *Problem, front []vector)) {
	t.Helper()
	met := 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, stream))
		p := randomProblem(t, r, 1+r.IntN(6), 2+r.IntN(4), 1+r.IntN(3), 3+r.IntN(20))
		if got, faults := toEnd(p); len(faults) == 0 && len(got.Front) > 0 {
			do(seed, r, p, vectors(got))
			met++
		}
	}
	if met < 50 {
		t.Fatalf("only %d problems have a front: the cases show nothing", met)
	}
}

func find(t *testing.T, p *Problem) []vector {
	t.Helper()
	r, faults := toEnd(p)
	if len(faults) > 0 {
		return nil
	}
	return vectors(r)
}

func TestMoreOnTheShelfIsNeverWorse(t *testing.T) {
	each(t, 2, func(seed uint64, r *rand.Rand, p *Problem, front []vector) {
		p.Pumps = append(p.Pumps, randomPump(t, r, "another", 2+10*r.Float64(), 0.005))
		if !noWorse(find(t, p), front) {
			t.Errorf("seed %d: one more pump made the front worse", seed)
		}
	})
}

func TestOrderOfTheShelfIsOfNoAccount(t *testing.T) {
	each(t, 3, func(seed uint64, r *rand.Rand, p *Problem, front []vector) {
		r.Shuffle(len(p.Pumps), func(i, j int) { p.Pumps[i], p.Pumps[j] = p.Pumps[j], p.Pumps[i] })
		if p.Pairs == PairsAny {
			p.Pairs = PairsAlike // a pair's split is found from the other side then, to the last digits only
			front = find(t, p)
			slices.Reverse(p.Pumps)
		}
		if got := find(t, p); !slices.Equal(got, front) {
			t.Errorf("seed %d: another order of the shelf changed the front: %v, %v", seed, got, front)
		}
	})
}

func TestLooserLimitsAreNeverWorse(t *testing.T) {
	each(t, 4, func(seed uint64, _ *rand.Rand, p *Problem, front []vector) {
		p.MostSpeed *= 2
		for i := range p.Pumps {
			p.Pumps[i].LeastBore, p.Pumps[i].Least = 0, 0
		}
		if !noWorse(find(t, p), front) {
			t.Errorf("seed %d: without limits the front is worse", seed)
		}
		p.Uniform = false
		if !noWorse(find(t, p), front) {
			t.Errorf("seed %d: with a size for each segment the front is worse", seed)
		}
	})
}

func TestLowerLipsAreNeverWorse(t *testing.T) {
	each(t, 5, func(seed uint64, r *rand.Rand, p *Problem, front []vector) {
		for i := range p.Outlets {
			d := unit.Length(r.Float64())
			p.Outlets[i].Level, p.Outlets[i].Inlet = p.Outlets[i].Level-d, p.Outlets[i].Inlet-d
		}
		if !noWorse(find(t, p), front) {
			t.Errorf("seed %d: lower lips made the front worse", seed)
		}
	})
}

func TestMoneyTwiceIsTheFrontTwice(t *testing.T) {
	each(t, 6, func(seed uint64, _ *rand.Rand, p *Problem, front []vector) {
		for i := range p.Segments {
			for k := range p.Segments[i].Choices {
				p.Segments[i].Choices[k].Cost *= 2
			}
		}
		for i := range p.Legs {
			p.Legs[i].Cost *= 2
		}
		for i := range p.Pumps {
			p.Pumps[i].Price *= 2
		}
		p.Energy.Tariff *= 2
		got := find(t, p)
		const rounding = 1 // millionths, doubled or not
		same := len(got) == len(front)
		for i := range min(len(got), len(front)) {
			off := got[i].years - 2*front[i].years
			same = same && got[i].first == 2*front[i].first && got[i].step == front[i].step && off >= -rounding && off <= rounding
		}
		if !same {
			t.Errorf("seed %d: all money twice gives %v, not twice %v", seed, got, front)
		}
	})
}

func TestPresentWorth(t *testing.T) {
	const abs = 5e-5 // the tables' last digit
	for _, c := range []struct{ years, rate, want unit.Ratio }{
		{10, 0.05, 7.7217}, {5, 0.04, 4.4518}, {20, 0.03, 14.8775}, {1, 0.10, 0.9091}, // compound interest tables, from memory
		{7, 0, 7}, {0, 0.05, 0},
	} {
		if got, ok := PresentWorth(c.years, c.rate); !ok || math.Abs(float64(got-c.want)) > abs {
			t.Errorf("%v years at %v: %v, want %v", c.years, c.rate, got, c.want)
		}
	}
	// the sum it stands for, by adding up
	sum, d := 0.0, 0.037
	for k := range 12 {
		sum += math.Pow(1+d, -float64(k+1))
	}
	if got, _ := PresentWorth(12, unit.Ratio(d)); math.Abs(float64(got)-sum) > 1e-12 {
		t.Errorf("12 years at 3.7 %%: %v, by adding up %v", got, sum)
	}
	tiny, _ := PresentWorth(30, 1e-12)
	if math.Abs(float64(tiny)-30) > 1e-9 {
		t.Errorf("next to no discount: %v, want 30", tiny)
	}
	for _, c := range [][2]unit.Ratio{{-1, 0}, {101, 0}, {5, -0.01}, {5, 1.1}, {unit.Ratio(math.NaN()), 0}, {5, unit.Ratio(math.NaN())}} {
		if _, ok := PresentWorth(c[0], c[1]); ok {
			t.Errorf("%v years at %v is taken", c[0], c[1])
		}
	}
}

func TestFaults(t *testing.T) {
	pipe := func(bore unit.Length) []Choice { return []Choice{{Name: "x", Bore: bore}} }
	sound := func() *Problem {
		r := rand.New(rand.NewPCG(1, 9))
		return &Problem{
			Segments: []Segment{{Name: "main", Parent: -1, Choices: pipe(0.05)}},
			Outlets:  []Outlet{{Name: "fall", Wanted: 0.001}},
			Pumps:    []Pump{randomPump(t, r, "p", 5, 0.004)},
		}
	}
	if _, faults := toEnd(sound()); len(faults) > 0 {
		t.Fatal(faults)
	}
	for code, spoil := range map[string]func(p *Problem){
		CodeNothing: func(p *Problem) { p.Outlets = nil },
		CodeWanted:  func(p *Problem) { p.Outlets[0].Wanted = unit.Flow(math.NaN()) },
		CodeTree:    func(p *Problem) { p.Segments[0].Parent = 0 },
		CodeChoice:  func(p *Problem) { p.MostSpeed = 0.1 },
		CodeUniform: func(p *Problem) {
			p.Uniform = true
			p.Segments[0].Choices = append(pipe(0.05), pipe(0.06)...)
			p.Segments = append(p.Segments, Segment{Name: "more", Choices: append(append(pipe(0.05), pipe(0.06)...), pipe(0.07)...)})
			p.Outlets[0].Segment = 1
		},
		CodeAmount:  func(p *Problem) { p.Pumps[0].Price = -1 },
		CodeReserve: func(p *Problem) { p.Reserves = []unit.Ratio{1.1, 1.05} },
		CodePumps:   func(p *Problem) { p.Pumps = nil },
	} {
		p := sound()
		spoil(p)
		r, faults := toEnd(p)
		if len(faults) == 0 || faults[0].Code != code || len(r.Front) > 0 {
			t.Errorf("%s is not told: %v", code, faults)
		}
	}
}

// TestBrokenPumpOnTheShelf: the rest of the shelf is still computed.
func TestBrokenPumpOnTheShelf(t *testing.T) {
	p := threeFalls(t, 40, false, PairsAny)
	before := find(t, p)
	p.Pumps = append(p.Pumps, Pump{Name: "no curve"})
	r, faults := toEnd(p)
	if len(faults) > 0 || !slices.Equal(vectors(r), before) {
		t.Errorf("a pump without a curve changes the front of the others: %v", faults)
	}
	last := r.Out[len(r.Out)-1]
	if last.Pump != 40 || last.Code != ReasonCurve {
		t.Errorf("the pump without a curve is told as %v", last)
	}
}

// lawOf makes the choice's pipe longer, for the questions asked backwards.
func longer(t *testing.T, c Choice, more unit.Length) Choice {
	t.Helper()
	old, ok := c.Pipe.(*hydro.Pipe)
	if !ok {
		t.Fatal("not a pipe of known roughness")
	}
	law := old.PipeLaw
	law.Length += more
	pipe, err := law.Prepare(water)
	if err != nil {
		t.Fatal(err)
	}
	c.Pipe, c.Length = pipe, c.Length+more
	return c
}

// toEnd is Find to its end.
func toEnd(p *Problem) (*Result, []trace.Fault) { return Find(context.Background(), p, nil) }
