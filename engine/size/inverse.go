package size

import (
	"cmp"
	"math"
	"slices"

	"plashet/engine/trace"
	"plashet/engine/unit"
)

// Codes of the questions asked backwards that have no answer.
const (
	// ReasonShort: a wanted flow is not served as it is, so nothing may be higher or farther. Args: name, found (head missing).
	ReasonShort = "size.inverse.short"
	// ReasonSmooth: the pipe loses nothing, so its length does not count. Args: name.
	ReasonSmooth = "size.inverse.smooth"
)

// Given is one pump or pair and one choice of pipe: what is asked backwards.
type Given struct {
	Pumps   []int // one or two of the shelf
	Choices []int // of every segment
	Leg     int   // of a pair, among Problem.Legs
}

// Room is how far one thing may go with everything else as it is, every wanted
// flow still served by setting valves. Where Why has a code there is no answer.
type Room struct {
	Name string
	More unit.Length // beyond what is: a lip higher, a segment longer
	To   unit.Length // the level, or the length, that it comes to
	Why  trace.Message
}

// headAt is the head that pumps give together at a flow within their curves.
func (s *search) headAt(pumps []int, leg int) (head unit.Head, why trace.Message, ok bool) {
	for _, i := range pumps {
		// A limit that bars it from the shelf does not change what it can lift.
		if p := &s.p.Pumps[i]; p.Curve == nil {
			return 0, trace.Message{Code: ReasonCurve, Args: []trace.Arg{trace.Str("name", p.Name)}}, false
		}
	}
	if len(pumps) == 1 {
		p := &s.p.Pumps[pumps[0]]
		if m, ok := s.within(pumps[0]); !ok {
			return 0, m, false
		}
		h, _, _ := p.Curve.Head(s.total)
		return h, trace.Message{}, true
	}
	i, j := pumps[0], pumps[1]
	if len(s.p.Legs) == 0 {
		leg = -1
	}
	pair := &pairing{s, [2]int{i, j}, leg}
	most := pair.together(pair.low())
	name := trace.Str("name", s.p.Pumps[i].Name+" + "+s.p.Pumps[j].Name)
	if most < s.total {
		return 0, trace.Message{Code: ReasonEnd, Args: []trace.Arg{name, trace.Num("found", s.total, unit.KindFlow), trace.Num("limit", most, unit.KindFlow)}}, false
	}
	c, shared := pair.share()
	if !shared {
		return 0, trace.Message{Code: ReasonLeast, Args: []trace.Arg{name, trace.Num("found", s.total, unit.KindFlow), trace.Num("limit", max(s.stands[i].least, s.stands[j].least), unit.KindFlow)}}, false
	}
	return c.head, trace.Message{}, true
}

// Highest tells how high each lip could go. Its way needs lift = level + losses
// - level drawn from, and the level counts in full, so with H the pumps' head at
// the sum of the wanted flows
//
//	More = H - lift
//
// exactly; the losses do not change with the level. A pipe that pours in from
// over the water goes up with its lip. It is a length of pipe more as well: that
// is Farthest's. The list has one entry for each outlet.
func Highest(p *Problem, g Given) ([]Room, []trace.Fault) {
	s, head, why, faults := ask(p, g)
	if len(faults) > 0 {
		return nil, faults
	}
	out := make([]Room, 0, len(p.Outlets))
	for i := range p.Outlets {
		r := Room{Name: p.Outlets[i].Name, Why: why}
		if why.Code == "" {
			r.More = head - unit.Head(s.lift(g.Choices, i))
			if r.To = p.Outlets[i].Level + r.More; r.More < 0 {
				r.Why = trace.Message{Code: ReasonShort, Args: []trace.Arg{trace.Str("name", r.Name), trace.Num("found", -r.More, unit.KindHead)}}
			}
		}
		out = append(out, r)
	}
	return out, nil
}

// Farthest tells how much longer each segment's pipe could be; for one from the
// pump, how far away the pump could stand. Friction goes with the length, so
// with L the length, h its friction at the wanted flows, H the pumps' head and
// lift that of the neediest outlet beyond the segment
//
//	More = (H - lift) L/h
//
// exactly. Fittings and levels stay as they are.
func Farthest(p *Problem, g Given) ([]Room, []trace.Fault) {
	s, head, why, faults := ask(p, g)
	if len(faults) > 0 {
		return nil, faults
	}
	spare := make([]float64, len(p.Segments))
	for i := range spare {
		spare[i] = math.Inf(1)
	}
	for i := range p.Outlets {
		left := float64(head) - s.lift(g.Choices, i)
		for k := p.Outlets[i].Segment; k >= 0; k = p.Segments[k].Parent {
			spare[k] = min(spare[k], left)
		}
	}
	out := make([]Room, 0, len(p.Segments))
	for i := range p.Segments {
		c := &p.Segments[i].Choices[g.Choices[i]]
		r := Room{Name: p.Segments[i].Name, Why: why}
		friction := unit.Head(0)
		if c.Pipe != nil {
			friction, _ = c.Pipe.Loss(s.flow[i])
		}
		switch {
		case why.Code != "":
		case !(friction > 0 && c.Length > 0):
			r.Why = trace.Message{Code: ReasonSmooth, Args: []trace.Arg{trace.Str("name", r.Name)}}
		case spare[i] < 0:
			r.Why = trace.Message{Code: ReasonShort, Args: []trace.Arg{trace.Str("name", r.Name), trace.Num("found", unit.Head(-spare[i]), unit.KindHead)}}
		default:
			r.More = unit.Length(spare[i]) * c.Length / friction
			r.To = c.Length + r.More
		}
		out = append(out, r)
	}
	return out, nil
}

func ask(p *Problem, g Given) (s *search, head unit.Head, why trace.Message, faults []trace.Fault) {
	if s, faults = newSearch(p); len(faults) > 0 {
		return nil, 0, why, faults
	}
	if faults = s.given(g); len(faults) > 0 {
		return nil, 0, why, faults
	}
	head, why, _ = s.headAt(g.Pumps, g.Leg)
	return s, head, why, nil
}

// given checks that a Given names what there is.
func (s *search) given(g Given) (faults []trace.Fault) {
	for _, i := range g.Pumps {
		if i < 0 || i >= len(s.p.Pumps) {
			return []trace.Fault{fault("/given/pumps", CodePumps)}
		}
	}
	if len(g.Pumps) < 1 || len(g.Pumps) > 2 {
		return []trace.Fault{fault("/given/pumps", CodePumps)}
	}
	if len(g.Pumps) == 2 && len(s.p.Legs) > 0 && (g.Leg < 0 || g.Leg >= len(s.p.Legs)) {
		return []trace.Fault{fault("/given/leg", CodeChoice)}
	}
	for i := range s.p.Segments {
		if len(g.Choices) != len(s.p.Segments) || g.Choices[i] < 0 || g.Choices[i] >= len(s.p.Segments[i].Choices) {
			return []trace.Fault{fault(at("/given/choices", i), CodeChoice, trace.Str("name", s.p.Segments[i].Name))}
		}
	}
	return nil
}

// Change is another pipe for one segment.
type Change struct {
	Segment, Choice int
	More            Cost      // that the pipe costs more; below zero: less
	Head            unit.Head // that the pumps need less at the wanted flows; below zero: more
	// PerHead is the money for each metre of head saved; 0 where none is.
	PerHead Cost
	// With this pipe the cheapest single pump over the years is Pump, and pump,
	// pipe and energy together cost Saved less than with the cheapest one on the
	// pipe as given; Pump is -1 where no pump of the shelf serves one of the two.
	Pump  int
	Saved Cost
	// PerCost is Saved for each unit of money of More, where both are above zero:
	// the pipe that saves most per dollar has the greatest.
	PerCost unit.Ratio
}

// Changes tries every other pipe in every one segment, with the rest as given.
// The list has every change that keeps the limit on speed and saves head or
// money: those that pay (Saved above zero) first, by PerCost falling, those that
// save at no cost in front; then the others by PerHead. An empty one is an
// answer: no single pipe helps.
func Changes(p *Problem, g Given) ([]Change, []trace.Fault) {
	s, _, _, faults := ask(p, g)
	if len(faults) > 0 {
		return nil, faults
	}
	need, pipe := s.need(g.Choices, 1), s.pipeCost(g.Choices)
	_, before, serves := s.bestPump(g.Choices)
	paid := pipe // what pipe counts for over the years
	if p.Unpriced {
		paid = 0
	}
	before += paid
	choices := slices.Clone(g.Choices)
	var out []Change
	for i := range p.Segments {
		for _, k := range s.allowed[i] {
			if k == g.Choices[i] {
				continue
			}
			choices[i] = k
			cost := s.pipeCost(choices)
			c := Change{Segment: i, Choice: k, More: cost - pipe, Head: unit.Head(need - s.need(choices, 1)), Pump: -1}
			if c.Head > 0 && c.More > 0 && !p.Unpriced {
				c.PerHead = Cost(math.Round(min(float64(c.More)/float64(c.Head), float64(MostCost))))
			}
			if pump, after, ok := s.bestPump(choices); ok && serves {
				if paid = cost; p.Unpriced {
					paid = 0
				}
				c.Pump, c.Saved = pump, before-after-paid
				if !p.Unpriced && c.Saved > 0 && c.More > 0 {
					c.PerCost = unit.Ratio(c.Saved) / unit.Ratio(c.More)
				}
			}
			if c.Head > 0 || c.Saved > 0 {
				out = append(out, c)
			}
			choices[i] = g.Choices[i]
		}
	}
	slices.SortStableFunc(out, func(a, b Change) int {
		return cmp.Or(cmp.Compare(a.group(), b.group()), cmp.Compare(b.PerCost, a.PerCost), cmp.Compare(b.rest(), a.rest()), cmp.Compare(a.PerHead, b.PerHead))
	})
	return out, nil
}

// group puts what saves money at no cost first, then what pays, then the rest.
func (c *Change) group() int {
	switch {
	case c.Saved > 0 && c.More <= 0:
		return 0
	case c.Saved > 0:
		return 1
	}
	return 2
}

// rest orders what saves at no cost by what it saves.
func (c *Change) rest() Cost {
	if c.group() == 0 {
		return c.Saved
	}
	return 0
}

// bestPump is the single pump of the shelf that serves a choice of pipe at the
// least cost over the years, and that cost without the pipe.
func (s *search) bestPump(choices []int) (best int, cost Cost, ok bool) {
	need, narrowest := s.need(choices, 1), unit.Length(math.Inf(1))
	for i, k := range choices {
		narrowest = min(narrowest, s.p.Segments[i].Choices[k].Bore)
	}
	for i := range s.p.Pumps {
		p, st := &s.p.Pumps[i], &s.stands[i]
		if !st.usable || s.total > st.end || s.total < st.least || p.LeastBore > narrowest {
			continue
		}
		if h, _, _ := p.Curve.Head(s.total); float64(h) < need {
			continue
		}
		w, _, _ := p.Curve.Power(s.total)
		if c := s.years(p.Price, s.p.Energy.cost(w)); !ok || c < cost {
			best, cost, ok = i, c, true
		}
	}
	return best, cost, ok
}
