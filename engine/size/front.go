package size

import (
	"cmp"
	"slices"
)

// plain is a staircase of first cost against cost over the years.
type plain struct {
	first, years []Cost // first rising, years falling
}

// beats tells that something kept costs no more at first and no more over the
// years.
func (p *plain) beats(first, years Cost) bool {
	i, met := slices.BinarySearch(p.first, first)
	if !met {
		i--
	}
	return i >= 0 && p.years[i] <= years
}

// add keeps a pair of costs unless it is beaten, and drops what it beats.
func (p *plain) add(first, years Cost) {
	if p.beats(first, years) {
		return
	}
	i, _ := slices.BinarySearch(p.first, first)
	end := i
	for end < len(p.years) && p.years[end] >= years {
		end++
	}
	p.first = slices.Replace(p.first, i, end, first)
	p.years = slices.Replace(p.years, i, end, years)
}

// conclude sifts the candidates and fills the result.
func (s *search) conclude() {
	order := make([]int, len(s.found))
	for i := range order {
		order[i] = i
	}
	// What beats another one comes before it; of two alike the one found first.
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &s.found[a], &s.found[b]
		return cmp.Or(cmp.Compare(x.years, y.years), cmp.Compare(x.first, y.first), cmp.Compare(y.step, x.step))
	})
	least := make([]Cost, len(s.factors)) // first cost of what is kept with at least a step
	kept := make([]bool, len(s.factors))
	var front []int
	for _, i := range order {
		c := &s.found[i]
		if kept[c.step] && least[c.step] <= c.first {
			continue
		}
		front = append(front, i)
		for k := 0; k <= c.step; k++ {
			if !kept[k] || c.first < least[k] {
				kept[k], least[k] = true, c.first
			}
		}
	}
	shown := map[int]bool{} // pumps that stand alone on the front
	for _, i := range front {
		d := s.design(&s.found[i])
		d.Open = s.open(&d)
		s.result.Front = append(s.result.Front, d)
		if c := &s.found[i]; c.single {
			shown[c.pumps[0]] = true
		}
	}
	for i := range s.stands {
		if len(s.stands[i].serves) > 0 && !shown[i] {
			s.result.Lost = append(s.result.Lost, s.lost(i))
		}
	}
	slices.SortStableFunc(s.result.Lost, func(a, b Lost) int {
		return cmp.Or(cmp.Compare(a.Design.Years, b.Design.Years), cmp.Compare(a.Design.First, b.Design.First))
	})
}

// lost tells what beats a pump's cheapest design: of the designs of the front
// that are no worse on any criterion, the cheapest over the years.
func (s *search) lost(i int) Lost {
	own := s.stands[i].serves
	mine := &s.found[own[0]]
	for _, k := range own[1:] {
		if c := &s.found[k]; c.first == mine.first {
			mine = c // the same cost with more reserve
		}
	}
	for k := range s.result.Front {
		f := &s.result.Front[k]
		if f.Years <= mine.years && f.First <= mine.first && f.Step >= mine.step {
			return Lost{Design: s.design(mine), By: k, First: mine.first - f.First, Years: mine.years - f.Years, Steps: f.Step - mine.step}
		}
	}
	panic("size: a design that nothing beats is not on the front") // the sift keeps every such one
}
