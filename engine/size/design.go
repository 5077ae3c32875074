package size

import (
	"plashet/engine/hydro"
	"plashet/engine/unit"
)

// design fills in how a candidate runs.
func (s *search) design(c *candidate) Design {
	d := Design{
		Choices: make([]int, len(s.p.Segments)), First: c.first, Years: c.years, Step: c.step, Leg: -1,
		Flow: s.total, Head: c.head, Power: c.power,
	}
	n := 2
	if c.single {
		n = 1
	} else {
		d.Leg = c.leg
	}
	d.Pumps, d.Each = append(d.Pumps, c.pumps[:n]...), append(d.Each, c.each[:n]...)
	c.pipe.choices(d.Choices)
	s.run(&d)
	return d
}

// run works out need, sharing and speeds of the choices.
func (s *search) run(d *Design) {
	d.Need = unit.Head(s.need(d.Choices, 1))
	for o := range s.p.Outlets {
		d.Burns = append(d.Burns, d.Need-unit.Head(s.lift(d.Choices, o)))
	}
	for i, k := range d.Choices {
		d.Speeds = append(d.Speeds, hydro.Velocity(s.flow[i], s.p.Segments[i].Choices[k].Bore))
	}
}

// open finds the greatest flow factor that the pumps reach within their curves,
// by halving: their head less the need falls as the factor grows.
func (s *search) open(d *Design) Open {
	reaches := func(y unit.Ratio) bool {
		need, q := unit.Head(s.need(d.Choices, y)), unit.Flow(y)*s.total
		if len(d.Pumps) == 1 {
			h, _, _ := s.p.Pumps[d.Pumps[0]].Curve.Head(q)
			return h >= need
		}
		return s.pairing(d).together(need) >= q
	}
	low, high := unit.Ratio(1), s.greatest(d)
	out := Open{Factor: high, AtLeast: reaches(high)}
	if !out.AtLeast {
		for range 60 {
			mid := low + (high-low)/2
			if reaches(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		out.Factor = low
	}
	q := unit.Flow(out.Factor) * s.total
	if len(d.Pumps) == 1 {
		out.Power, _, _ = s.p.Pumps[d.Pumps[0]].Curve.Power(q)
		return out
	}
	h, pair := unit.Head(s.need(d.Choices, out.Factor)), s.pairing(d)
	if out.AtLeast {
		h = pair.low()
	}
	for n, i := range d.Pumps {
		w, _, _ := s.p.Pumps[i].Curve.Power(pair.gives(n, h))
		out.Power += w
	}
	return out
}

// greatest is the flow factor at which a pump comes to the end of its curve.
func (s *search) greatest(d *Design) unit.Ratio {
	if len(d.Pumps) == 1 {
		return unit.Ratio(s.stands[d.Pumps[0]].end / s.total)
	}
	pair := s.pairing(d)
	return unit.Ratio(pair.together(pair.low()) / s.total)
}

// pairing is the pair of a design.
func (s *search) pairing(d *Design) *pairing {
	return &pairing{s, [2]int{d.Pumps[0], d.Pumps[1]}, d.Leg}
}
