package design

import (
	"math"
	"testing"

	"plashet/demo"
	"plashet/engine/size"
	"plashet/engine/unit"
	"plashet/job"
)

// TestLegsPricedAndCounted: a pair pays for both legs, two check valves and one
// tee by the job's prices, and each pump's head at its flow is that at the join
// and the loss of its own leg.
func TestLegsPricedAndCounted(t *testing.T) {
	book, j := read(t, "hillside-cascade")
	shelf, ill, _ := job.ReadShelf(demo.Shelf(), j)
	c := chooseAll(book, j, shelf, ill, Want{Pairs: PairsAny})
	pairs := 0
	for i := range c.Result.Front {
		d := &c.Result.Front[i]
		if len(d.Pumps) < 2 {
			continue
		}
		pairs++
		leg := &c.Problem.Legs[d.Leg]
		rest := leg.Cost
		for k, n := range d.Choices {
			rest += c.Problem.Segments[k].Choices[n].Cost
		}
		for n, p := range d.Pumps {
			rest += c.Problem.Pumps[p].Price
			h, _, _ := c.Problem.Pumps[p].Curve.Head(d.Each[n])
			a, _ := leg.Pipe.Loss(d.Each[n])
			b, _ := leg.Fittings.Loss(d.Each[n])
			if math.Abs(float64(h-a-b-d.Head)) > 1e-9 || a <= 0 || b <= 0 {
				t.Errorf("design %d, pump %d: head %v less %v and %v is not %v", i, n, h, a, b, d.Head)
			}
		}
		if rest != d.First {
			t.Errorf("design %d: %d at first, by hand %d", i, d.First, rest)
		}
	}
	if pairs == 0 {
		t.Fatal("no pair on the front")
	}
	// 2 m of pipe at 1.90 USD a foot, two valves at 38.00, one tee at 4.10, by hand.
	for _, l := range c.Problem.Legs {
		if want := 2/0.3048*1.90 + 2*38.00 + 4.10; l.Name == "PVC Sch 40 2" && math.Abs(float64(l.Cost)/float64(size.Whole)-want) > 0.005 {
			t.Errorf("leg of 2 in: %d, by hand %.2f", l.Cost, want)
		}
	}
}

// TestValveNotOpen: a check valve takes at no flow less than just open.
func TestValveNotOpen(t *testing.T) {
	_, _, c := chosen(t, Want{Pairs: PairsAlike}, asIs)
	for i := range c.Problem.Legs {
		f := c.Problem.Legs[i].Fittings
		creep, _ := f.Loss(1e-6)
		if open, _ := f.Loss(1e-2); creep <= 0 || open <= creep {
			t.Errorf("%s: %v at a drip, %v at 10 L/s", c.Problem.Legs[i].Name, creep, open)
		}
		last := unit.Head(0)
		for q := unit.Flow(0); q < 1e-2; q += 1e-4 {
			h, _ := f.Loss(q)
			if h < last {
				t.Errorf("%s: the loss falls at %v", c.Problem.Legs[i].Name, q)
			}
			last = h
		}
	}
}

// TestChooseWithoutPrices: where first costs cannot be known the pump that draws
// least comes first, on the smallest pipe that it reaches with, and a finding
// says what is missing.
func TestChooseWithoutPrices(t *testing.T) {
	for code, change := range map[string]func(j *job.Job){
		FindChooseCurrency: func(j *job.Job) { j.Site.Currency = "" },
		FindChooseRun:      func(j *job.Job) { j.Prices, j.Stock.Sticks = nil, nil },
		FindChoosePumps: func(j *job.Job) {
			for i := range j.Pumps {
				j.Pumps[i].Price = job.Money{}
			}
		},
	} {
		_, _, c := chosen(t, Want{}, change)
		if _, told := severity(c.Findings, code); !told || !c.Unpriced || len(c.Faults) > 0 || len(c.Result.Front) == 0 {
			t.Fatalf("%s: %+v, %v", code, c.Findings, c.Faults)
		}
		least := unit.Power(math.Inf(1))
		for i := range c.Problem.Pumps {
			p := &c.Problem.Pumps[i]
			serves := func(d *size.Design) bool { return d.Pumps[0] == i }
			for k := range c.Result.Front {
				if w, _, _ := p.Curve.Power(c.Result.Front[k].Flow); serves(&c.Result.Front[k]) {
					least = min(least, w)
				}
			}
		}
		if got := c.Result.Front[0].Power; got != least {
			t.Errorf("%s: first comes %v W, the least is %v", code, got, least)
		}
		if _, kwh := severity(c.Findings, FindChooseEnergy); kwh != (code == FindChooseCurrency) || c.Kilowatt != kwh {
			t.Errorf("%s: counted in kWh %v, told %v", code, c.Kilowatt, kwh)
		}
		if c.Kilowatt { // 0.640 kW x 24 h x 365 x 5 years = 28,032 kWh (by hand)
			for _, d := range c.Result.Front {
				if kWh := float64(c.Energy(d.Years)) / float64(unit.KilowattHour); c.Problem.Pumps[d.Pumps[0]].Name == "M" && math.Abs(kWh-28032) > 1e-3 {
					t.Errorf("%v kWh", kWh)
				}
			}
		}
	}
}
