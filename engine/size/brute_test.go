package size

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// vector is what a design counts by.
type vector struct {
	first, years Cost
	step         int
}

// brute enumerates all designs of a problem, one after the other, and sifts
// them by comparing each with each. It shares only the laws with the package.
func brute(p *Problem) (all []vector, count int) {
	choices := make([]int, len(p.Segments))
	var walk func(seg int)
	walk = func(seg int) {
		if seg == len(p.Segments) {
			if p.Uniform && !oneThroughout(p, choices) {
				return
			}
			all = append(all, bruteDesigns(p, choices)...)
			count++
			return
		}
		for choices[seg] = range p.Segments[seg].Choices {
			walk(seg + 1)
		}
	}
	walk(0)
	var front []vector
	for i, v := range all {
		beaten := false
		for k, w := range all {
			alike := v == w
			if !alike && w.first <= v.first && w.years <= v.years && w.step >= v.step || alike && k < i {
				beaten = true
				break
			}
		}
		if !beaten {
			front = append(front, v)
		}
	}
	slices.SortFunc(front, func(a, b vector) int { return cmp.Or(cmp.Compare(a.years, b.years), cmp.Compare(a.first, b.first)) })
	return front, count
}

func oneThroughout(p *Problem, choices []int) bool {
	one := -1
	for i, k := range choices {
		if len(p.Segments[i].Choices) == 1 {
			continue
		}
		if one >= 0 && k != one {
			return false
		}
		one = k
	}
	return true
}

// bruteNeed adds up the losses of one choice of pipe from the ends down.
func bruteNeed(p *Problem, choices []int, y unit.Ratio) float64 {
	flow := make([]unit.Flow, len(p.Segments))
	head := make([]float64, len(p.Segments))
	for i := range head {
		head[i] = -1e9
	}
	for _, o := range p.Outlets {
		for s := o.Segment; s >= 0; s = p.Segments[s].Parent {
			flow[s] += o.Wanted
		}
		q := unit.Flow(y) * o.Wanted
		h, _ := o.Lip.Loss(q)
		top := o.Level + h
		if o.Pours {
			top = max(top, o.Inlet)
		}
		head[o.Segment] = max(head[o.Segment], float64(top))
	}
	most := -1e9
	for i := len(p.Segments) - 1; i >= 0; i-- {
		c := &p.Segments[i].Choices[choices[i]]
		a, _ := c.Pipe.Loss(unit.Flow(y) * flow[i])
		b, _ := c.Fittings.Loss(unit.Flow(y) * flow[i])
		start := head[i] + float64(a+b)
		if parent := p.Segments[i].Parent; parent >= 0 {
			head[parent] = max(head[parent], start)
		} else {
			most = max(most, start)
		}
	}
	return most - float64(p.Level)
}

// bruteDesigns gives the vectors of every pump and pair on one choice of pipe.
func bruteDesigns(p *Problem, choices []int) (out []vector) {
	pipe, narrowest, total := Cost(0), unit.Length(1), unit.Flow(0)
	flow := make([]unit.Flow, len(p.Segments))
	for _, o := range p.Outlets {
		total += o.Wanted
		for s := o.Segment; s >= 0; s = p.Segments[s].Parent {
			flow[s] += o.Wanted
		}
	}
	for i, k := range choices {
		c := &p.Segments[i].Choices[k]
		pipe, narrowest = pipe+c.Cost, min(narrowest, c.Bore)
		if p.MostSpeed > 0 && hydro.Velocity(flow[i], c.Bore) > p.MostSpeed {
			return nil
		}
	}
	factors := append([]unit.Ratio{1}, p.Reserves...)
	need := make([]float64, len(factors))
	for k, y := range factors {
		need[k] = bruteNeed(p, choices, y)
	}
	counts := func(first Cost, w unit.Power, step int) vector {
		if p.Unpriced {
			return vector{first, p.Energy.cost(w), step}
		}
		return vector{first, first + p.Energy.cost(w), step}
	}
	legs := p.Legs
	if len(legs) == 0 {
		legs = []Choice{{Bore: 1}}
	}
	for i := range p.Pumps {
		a := &p.Pumps[i]
		if a.LeastBore > narrowest {
			continue
		}
		_, end, _, _ := a.Curve.Range()
		step := -1
		for k, y := range factors {
			q := unit.Flow(y) * total
			if h, _, _ := a.Curve.Head(q); q <= end && float64(h) >= need[k] && total >= a.Least {
				step = k
			}
		}
		if step >= 0 {
			w, _, _ := a.Curve.Power(total)
			out = append(out, counts(a.Price+pipe, w, step))
		}
		for j := i; j < len(p.Pumps) && p.Pairs != PairsNone; j++ {
			b := &p.Pumps[j]
			if b.LeastBore > narrowest || p.Pairs == PairsAlike && i != j {
				continue
			}
			for l := range legs {
				leg := &legs[l]
				if leg.Bore < max(a.LeastBore, b.LeastBore) {
					continue
				}
				step, split := -1, unit.Flow(0)
				for k, y := range factors {
					h, q1, ok := bruteSplit(a, b, leg, unit.Flow(y)*total)
					if !ok || h < need[k] {
						break
					}
					if k == 0 {
						split = q1
						if split < a.Least || total-split < b.Least || !(split > 0 && split < total) ||
							p.MostSpeed > 0 && len(p.Legs) > 0 && hydro.Velocity(max(split, total-split), leg.Bore) > p.MostSpeed {
							break
						}
					}
					step = k
				}
				if step >= 0 {
					w1, _, _ := a.Curve.Power(split)
					w2, _, _ := b.Curve.Power(total - split)
					out = append(out, counts(a.Price+b.Price+leg.Cost+pipe, w1+w2, step))
				}
			}
		}
	}
	return out
}

// bruteSplit halves on the flow of the first of two pumps until both give one
// head behind their legs; ok is false where that takes one of them outside its
// curve.
func bruteSplit(a, b *Pump, leg *Choice, total unit.Flow) (head float64, first unit.Flow, ok bool) {
	least1, end1, _, _ := a.Curve.Range()
	least2, end2, _, _ := b.Curve.Range()
	low, high := max(least1, total-end2), min(end1, total-least2)
	if low > high {
		return 0, 0, false
	}
	if a.Curve == b.Curve {
		h, _, _ := a.Curve.Head(total / 2)
		return float64(h) - bruteLeg(leg, total/2), total / 2, true
	}
	apart := func(q unit.Flow) float64 {
		h1, _, _ := a.Curve.Head(q)
		h2, _, _ := b.Curve.Head(total - q)
		return float64(h1-h2) - bruteLeg(leg, q) + bruteLeg(leg, total-q)
	}
	if apart(low) < 0 || apart(high) > 0 {
		return 0, 0, false // the weaker one stands behind its valve, or one runs beyond its curve
	}
	for range 200 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if apart(mid) >= 0 {
			low = mid
		} else {
			high = mid
		}
	}
	h, _, _ := a.Curve.Head(low)
	return float64(h) - bruteLeg(leg, low), low, true
}

// bruteLeg is what a leg takes, laws that are not there taking nothing.
func bruteLeg(leg *Choice, q unit.Flow) (sum float64) {
	if leg.Pipe != nil {
		h, _ := leg.Pipe.Loss(q)
		sum += float64(h)
	}
	if leg.Fittings != nil {
		h, _ := leg.Fittings.Loss(q)
		sum += float64(h)
	}
	return sum
}

// TestFrontIsThatOfAllDesigns holds the front against the enumeration. The
// costs are whole numbers; a pair's split is found in two ways, so its energy
// may differ by the last millionths.
func TestFrontIsThatOfAllDesigns(t *testing.T) {
	const cases, millionths = 400, 5
	designs, points, pairs, unpriced := 0, 0, 0, 0
	for seed := range uint64(cases) {
		r := rand.New(rand.NewPCG(seed, 1))
		p := randomProblem(t, r, 1+r.IntN(4), 1+r.IntN(3), 1+r.IntN(2), 2+r.IntN(7))
		want, n := brute(p)
		got, faults := toEnd(p)
		designs += n
		if len(faults) > 0 {
			if faults[0].Code == CodeChoice && len(want) == 0 {
				continue // no pipe keeps the limit on speed: the enumeration finds nothing either
			}
			t.Fatalf("seed %d: %v", seed, faults)
		}
		if p.Unpriced && p.Pairs == PairsAny {
			// The years are those of the energy alone, so that two designs can be
			// alike in them but for the last millionths of a pair's split, and
			// either front may show one more.
			have := vectors(got)
			if !covers(have, want, millionths) || !covers(want, have, millionths) {
				t.Errorf("seed %d: the front is %v, that of all designs %v", seed, have, want)
			}
			unpriced++
			verify(t, seed, p, got)
			continue
		}
		if len(got.Front) != len(want) {
			t.Errorf("seed %d: the front has %d designs, that of all %d", seed, len(got.Front), len(want))
			continue
		}
		for i, w := range want {
			g := &got.Front[i]
			allowed := Cost(0)
			if len(g.Pumps) == 2 {
				allowed = millionths
				pairs++
			}
			if g.First != w.first || g.Step != w.step || g.Years-w.years > allowed || w.years-g.Years > allowed {
				t.Errorf("seed %d: design %d is %d at first, %d over the years, step %d; of all designs it is %v", seed, i, g.First, g.Years, g.Step, w)
			}
			points++
		}
		verify(t, seed, p, got)
	}
	if points < cases || pairs < cases/20 || unpriced < cases/50 {
		t.Fatalf("%d designs on fronts, %d pairs among them: the cases show nothing", points, pairs)
	}
	t.Logf("%d problems, %d choices of pipe, %d designs on the fronts, %d of them pairs", cases, designs, points, pairs)
}

// covers tells that each vector of want is met or beaten by one of have, but for
// some millionths of the years.
func covers(have, want []vector, millionths Cost) bool {
	for _, w := range want {
		if !slices.ContainsFunc(have, func(h vector) bool { return h.first <= w.first && h.years <= w.years+millionths && h.step >= w.step }) {
			return false
		}
	}
	return true
}

// verify holds what a result says of its designs against the laws.
func verify(t *testing.T, seed uint64, p *Problem, r *Result) {
	t.Helper()
	const near = 1e-9
	check := func(d *Design, front bool) {
		need := bruteNeed(p, d.Choices, 1)
		cost, sum := Cost(0), unit.Flow(0)
		for i, k := range d.Choices {
			cost += p.Segments[i].Choices[k].Cost
		}
		leg := &Choice{}
		if d.Leg >= 0 {
			leg = &p.Legs[d.Leg]
			cost += leg.Cost
		}
		if (d.Leg >= 0) != (len(d.Pumps) == 2 && len(p.Legs) > 0) {
			t.Errorf("seed %d: %d pumps with leg %d of %d", seed, len(d.Pumps), d.Leg, len(p.Legs))
		}
		for n, i := range d.Pumps {
			cost += p.Pumps[i].Price
			sum += d.Each[n]
			h, _, inside := p.Pumps[i].Curve.Head(d.Each[n])
			if h -= unit.Head(bruteLeg(leg, d.Each[n])); !inside || h < d.Head-near || h > d.Head+near {
				t.Errorf("seed %d: pump %d gives %v at its flow, the design says %v", seed, i, h, d.Head)
			}
		}
		if cost != d.First || float64(d.Need)-need > near || need-float64(d.Need) > near || d.Surplus() < -near || sum < d.Flow-near || sum > d.Flow+near {
			t.Errorf("seed %d: cost %d, need %g, flow %v; the design says %+v", seed, cost, need, sum, d)
		}
		if front && d.Open.Factor < 1-near || front && d.Step > 0 && d.Open.Factor < p.Reserves[d.Step-1]-near {
			t.Errorf("seed %d: opened it gives %v of the wanted flows at step %d", seed, d.Open.Factor, d.Step)
		}
		least := unit.Head(1)
		for _, b := range d.Burns {
			least = min(least, b)
		}
		if least < -near || least > near {
			t.Errorf("seed %d: the neediest outlet's valve burns %v", seed, least)
		}
	}
	for i := range r.Front {
		check(&r.Front[i], true)
	}
	alone := map[int]bool{}
	for i := range r.Front {
		if d := &r.Front[i]; len(d.Pumps) == 1 {
			alone[d.Pumps[0]] = true
		}
	}
	for _, l := range r.Lost {
		check(&l.Design, false)
		f := &r.Front[l.By]
		if l.First < 0 || l.Years < 0 || l.Steps < 0 || l.Design.First-f.First != l.First || l.Design.Years-f.Years != l.Years {
			t.Errorf("seed %d: what beats pump %d does not beat it: %+v", seed, l.Design.Pumps[0], l)
		}
		alone[l.Design.Pumps[0]] = true
	}
	for _, o := range r.Out {
		alone[o.Pump] = true
	}
	if len(alone) != len(p.Pumps) {
		t.Errorf("seed %d: %d of %d pumps are told of", seed, len(alone), len(p.Pumps))
	}
}
