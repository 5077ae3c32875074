package size

import (
	"math"
	"math/rand/v2"
	"testing"

	"plashet/engine/unit"
)

// served tells by the enumeration's own arithmetic whether a pump serves.
func served(p *Problem, g Given) bool {
	total := unit.Flow(0)
	for _, o := range p.Outlets {
		total += o.Wanted
	}
	var h float64
	if len(g.Pumps) == 1 {
		head, _, _ := p.Pumps[g.Pumps[0]].Curve.Head(total)
		h = float64(head)
	} else {
		leg := &Choice{}
		if g.Leg >= 0 && len(p.Legs) > 0 {
			leg = &p.Legs[g.Leg]
		}
		h, _, _ = bruteSplit(&p.Pumps[g.Pumps[0]], &p.Pumps[g.Pumps[1]], leg, total)
	}
	return h >= bruteNeed(p, g.Choices, 1)
}

func TestInverse(t *testing.T) {
	const hair = 1e-6 // m, on either side of the answer
	rooms, short := 0, 0
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 11))
		p := randomProblem(t, r, 1+r.IntN(5), 3, 1, 6)
		p.MostSpeed = 0
		found, faults := toEnd(p)
		if len(faults) > 0 || len(found.Front) == 0 {
			continue
		}
		d := &found.Front[r.IntN(len(found.Front))]
		g := Given{Pumps: d.Pumps, Choices: d.Choices, Leg: d.Leg}
		up, faults := Highest(p, g)
		if len(faults) > 0 || len(up) != len(p.Outlets) {
			t.Fatal(seed, faults)
		}
		for i, room := range up {
			old := p.Outlets[i]
			for _, side := range []unit.Length{-hair, hair} {
				p.Outlets[i].Level, p.Outlets[i].Inlet = old.Level+room.More+side, old.Inlet+room.More+side
				if room.Why.Code != "" || served(p, g) != (side < 0) || math.Abs(float64(room.To-old.Level-room.More)) > 1e-12 {
					t.Errorf("seed %d: outlet %d up by %v %+g: served %v", seed, i, room.More, side, side >= 0)
				}
			}
			p.Outlets[i] = old
			rooms++
		}
		far, _ := Farthest(p, g)
		for i, room := range far {
			old := p.Segments[i].Choices[g.Choices[i]]
			for _, side := range []unit.Length{-hair * 1000, hair * 1000} {
				if room.More+side < -old.Length {
					continue
				}
				p.Segments[i].Choices[g.Choices[i]] = longer(t, old, room.More+side)
				if room.Why.Code != "" || served(p, g) != (side < 0) {
					t.Errorf("seed %d: segment %d longer by %v %+g: served %v", seed, i, room.More, side, side >= 0)
				}
			}
			p.Segments[i].Choices[g.Choices[i]] = old
		}
		// lifted out of reach, there is no answer
		p.Outlets[0].Level, p.Outlets[0].Inlet = p.Outlets[0].Level+100, p.Outlets[0].Inlet+100
		up, _ = Highest(p, g)
		far, _ = Farthest(p, g)
		if up[0].Why.Code != ReasonShort || far[p.Outlets[0].Segment].Why.Code != ReasonShort {
			t.Errorf("seed %d: 100 m up there is still an answer: %+v, %+v", seed, up[0], far)
		}
		short++
	}
	if rooms < 200 || short < 100 {
		t.Fatalf("%d rooms, %d without an answer: the cases show nothing", rooms, short)
	}
}

func TestInverseBeyondTheCurve(t *testing.T) {
	p := threeFalls(t, 30, true, PairsNone)
	for i := range p.Outlets {
		p.Outlets[i].Wanted *= 100
	}
	p.MostSpeed = 0
	up, faults := Highest(p, Given{Pumps: []int{3}, Choices: []int{5, 5, 5, 5, 5}})
	if len(faults) > 0 || up[0].Why.Code != ReasonEnd || up[0].More != 0 {
		t.Errorf("beyond the curve there is a figure: %+v %v", up, faults)
	}
	if _, faults := Highest(p, Given{Pumps: []int{30}, Choices: []int{5, 5, 5, 5, 5}}); len(faults) == 0 {
		t.Error("a pump that is not on the shelf is taken")
	}
	if _, faults := Farthest(p, Given{Pumps: []int{0}, Choices: []int{5, 5}}); len(faults) == 0 {
		t.Error("choices for some segments only are taken")
	}
	for i := range p.Segments {
		for k := range p.Segments[i].Choices {
			p.Segments[i].Choices[k].Pipe = nil
		}
	}
	for i := range p.Outlets {
		p.Outlets[i].Wanted /= 100
	}
	far, _ := Farthest(p, Given{Pumps: []int{3}, Choices: []int{5, 5, 5, 5, 5}})
	if far[0].Why.Code != ReasonSmooth && far[0].Why.Code != ReasonEnd {
		t.Errorf("pipe without loss could go %v", far[0])
	}
}

// TestChanges holds each change against the arithmetic of the enumeration.
func TestChanges(t *testing.T) {
	paying, saving := 0, 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 12))
		p := randomProblem(t, r, 2+r.IntN(3), 4, 2, 12)
		p.Uniform, p.MostSpeed = false, 0
		found, faults := toEnd(p)
		if len(faults) > 0 || len(found.Front) == 0 {
			continue
		}
		g := Given{Pumps: found.Front[0].Pumps, Choices: make([]int, len(p.Segments)), Leg: found.Front[0].Leg} // the narrowest pipe
		list, faults := Changes(p, g)
		if len(faults) > 0 {
			t.Fatal(seed, faults)
		}
		need, best := bruteNeed(p, g.Choices, 1), bruteBest(p, g.Choices)
		for n, c := range list {
			now := append([]int(nil), g.Choices...)
			now[c.Segment] = c.Choice
			head := need - bruteNeed(p, now, 1)
			if math.Abs(head-float64(c.Head)) > 1e-9 {
				t.Errorf("seed %d: change %d saves %v, by hand %g", seed, n, c.Head, head)
			}
			if after := bruteBest(p, now); best >= 0 && after >= 0 && c.Saved != best-after {
				t.Errorf("seed %d: change %d saves %d over the years, by hand %d", seed, n, c.Saved, best-after)
			}
			if n > 0 && c.PerCost > list[n-1].PerCost && c.group() == list[n-1].group() {
				t.Errorf("seed %d: change %d saves more per cost than the one before it", seed, n)
			}
			if c.PerCost > 0 {
				paying++
			}
			if c.Head > 0 {
				saving++
			}
		}
	}
	if saving < 100 || paying < 5 {
		t.Fatalf("%d changes save head, %d pay: the cases show nothing", saving, paying)
	}
}

// bruteBest is the least cost over the years of a single pump on a choice of
// pipe, with the pipe; -1 where none serves.
func bruteBest(p *Problem, choices []int) Cost {
	best := Cost(-1)
	one := *p
	one.Pairs = PairsNone
	for _, v := range bruteDesigns(&one, choices) {
		if best < 0 || v.years < best {
			best = v.years
		}
	}
	return best
}
