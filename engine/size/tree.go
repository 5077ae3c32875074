package size

import (
	"math"
	"strconv"

	"plashet/engine/hydro"
	"plashet/engine/trace"
	"plashet/engine/unit"
)

// tree is a problem made ready: what hangs on what, and which choices keep the
// limit on speed.
type tree struct {
	p        *Problem
	children [][]int // of each segment, and in front those of the pump
	outlets  [][]int // at the end of each segment; in front none
	flow     []unit.Flow
	allowed  [][]int
	total    unit.Flow
	alike    int // number of choices that can run through; 0 unless Uniform
}

func fault(path, code string, args ...trace.Arg) trace.Fault {
	return trace.Fault{Message: trace.Message{Code: code, Args: args}, Path: path}
}

func at(path string, i int) string { return path + "/" + strconv.Itoa(i) }

// plant checks a problem and makes the tree.
func plant(p *Problem) (*tree, []trace.Fault) {
	n := len(p.Segments)
	t := &tree{p: p, children: make([][]int, n+1), outlets: make([][]int, n+1), flow: make([]unit.Flow, n), allowed: make([][]int, n)}
	faults := t.hang()
	if len(faults) > 0 {
		return nil, faults
	}
	for i := range p.Segments {
		faults = append(faults, t.choose(i)...)
	}
	faults = append(faults, p.money()...)
	for i, r := range p.Reserves {
		if !(r > 1 && r < 100) || i > 0 && r <= p.Reserves[i-1] {
			faults = append(faults, fault("/reserves", CodeReserve))
			break
		}
	}
	if len(p.Pumps) == 0 {
		faults = append(faults, fault("/pumps", CodePumps))
	}
	return t, faults
}

// hang puts the segments and outlets together and adds up the flows.
func (t *tree) hang() (faults []trace.Fault) {
	for i, s := range t.p.Segments {
		if s.Parent < -1 || s.Parent >= i {
			faults = append(faults, fault(at("/segments", i), CodeTree, trace.Str("name", s.Name)))
			continue
		}
		t.children[s.Parent+1] = append(t.children[s.Parent+1], i)
	}
	for i, o := range t.p.Outlets {
		path, name := at("/outlets", i), trace.Str("name", o.Name)
		switch {
		case o.Segment < 0 || o.Segment >= len(t.p.Segments):
			faults = append(faults, fault(path, CodeTree, name))
			continue
		case !(o.Wanted > 0 && o.Wanted < 1e3) || math.IsNaN(float64(o.Level+o.Inlet)) || math.IsInf(float64(o.Level+o.Inlet), 0):
			faults = append(faults, fault(path, CodeWanted, name))
			continue
		}
		t.outlets[o.Segment+1] = append(t.outlets[o.Segment+1], i)
		t.total += o.Wanted
		if len(faults) == 0 {
			for s := o.Segment; s >= 0; s = t.p.Segments[s].Parent {
				t.flow[s] += o.Wanted
			}
		}
	}
	if len(t.p.Outlets) == 0 {
		faults = append(faults, fault("/outlets", CodeNothing))
	}
	return faults
}

// choose finds the choices of a segment that keep the limit on speed.
func (t *tree) choose(i int) (faults []trace.Fault) {
	s := &t.p.Segments[i]
	slowest := unit.Speed(math.Inf(1))
	for k := range s.Choices {
		speed := hydro.Velocity(t.flow[i], s.Choices[k].Bore)
		slowest = min(slowest, speed)
		if t.p.MostSpeed <= 0 || speed <= t.p.MostSpeed {
			t.allowed[i] = append(t.allowed[i], k)
		}
	}
	if len(t.allowed[i]) == 0 {
		args := []trace.Arg{trace.Str("name", s.Name)}
		if len(s.Choices) > 0 {
			args = append(args, trace.Num("speed", slowest, unit.KindSpeed), trace.Num("limit", t.p.MostSpeed, unit.KindSpeed))
		}
		faults = append(faults, fault(at("/segments", i), CodeChoice, args...))
	}
	if n := len(s.Choices); t.p.Uniform && n > 0 {
		if t.alike > 1 && n > 1 && n != t.alike {
			faults = append(faults, fault(at("/segments", i), CodeUniform, trace.Str("name", s.Name)))
		}
		t.alike = max(t.alike, n)
	}
	return faults
}

// money checks that no sum of amounts can overflow.
func (p *Problem) money() (faults []trace.Fault) {
	wrong := func(c Cost) bool { return c < 0 || c > MostCost }
	for i, s := range p.Segments {
		for k := range s.Choices {
			if wrong(s.Choices[k].Cost) {
				faults = append(faults, fault(at(at("/segments", i)+"/choices", k), CodeAmount, trace.Str("name", s.Choices[k].Name)))
			}
		}
	}
	for i := range p.Legs {
		if wrong(p.Legs[i].Cost) {
			faults = append(faults, fault(at("/legs", i), CodeAmount, trace.Str("name", p.Legs[i].Name)))
		}
	}
	for i := range p.Pumps {
		if wrong(p.Pumps[i].Price) {
			faults = append(faults, fault(at("/pumps", i), CodeAmount, trace.Str("name", p.Pumps[i].Name)))
		}
	}
	if e := p.Energy; wrong(e.Tariff) || !(e.Worth >= 0 && e.Worth <= MostYears) || !(e.PerYear >= 0 && e.PerYear <= 366*unit.Day) {
		faults = append(faults, fault("/energy", CodeAmount, trace.Str("name", "energy")))
	}
	return faults
}

// covered is the number of choices of pipe.
func (t *tree) covered() float64 {
	if t.p.Uniform {
		return float64(t.alike)
	}
	n := 1.0
	for i := range t.p.Segments {
		n *= float64(len(t.p.Segments[i].Choices))
	}
	return n
}

// need is the head that a choice for every segment needs at a flow factor.
func (t *tree) need(choices []int, y unit.Ratio) float64 {
	return t.needFrom(-1, choices, y) - float64(t.p.Level)
}

func (t *tree) needFrom(seg int, choices []int, y unit.Ratio) float64 {
	top := t.highest(seg, y)
	for _, c := range t.children[seg+1] {
		top = max(top, t.needFrom(c, choices, y)+t.p.Segments[c].Choices[choices[c]].loss(unit.Flow(y)*t.flow[c]))
	}
	return top
}

// pipeCost is what a choice for every segment costs.
func (t *tree) pipeCost(choices []int) (sum Cost) {
	for i, k := range choices {
		sum += t.p.Segments[i].Choices[k].Cost
	}
	return sum
}

// lift is the head that every outlet needs at the wanted flows, from the pump on.
func (t *tree) lift(choices []int, o int) float64 {
	out := &t.p.Outlets[o]
	head := out.level(out.Wanted)
	for s := out.Segment; s >= 0; s = t.p.Segments[s].Parent {
		head += t.p.Segments[s].Choices[choices[s]].loss(t.flow[s])
	}
	return head - float64(t.p.Level)
}
