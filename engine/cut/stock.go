package cut

import "slices"

// stock is the problem in whole numbers: weights of the pieces (length + kerf),
// capacities of the bars (length + kerf).
type stock struct {
	w, d    []int
	ids     [][]int // by weight: the pieces, in the order of the problem
	c       []int   // capacities of all bars that hold a piece, largest first
	sticks  []stick
	offcuts []offcut // one entry for each, longest first
	kerf    int
	keep    int
}

// stick is a kind of stick: cheapest first among those of one capacity.
type stick struct {
	bar   int // into stock.c
	cost  int64
	limit int
	index int // into Problem.Sticks
}

type offcut struct {
	bar   int
	index int // into Problem.Offcuts
}

// arrange sorts a read problem into a stock. Lengths are in steps.
func arrange(r reading) stock {
	s := stock{kerf: r.kerf, keep: r.keep}
	order := indices(len(r.pieces))
	slices.SortStableFunc(order, func(a, b int) int { return r.pieces[b] - r.pieces[a] })
	for _, i := range order {
		w := r.pieces[i] + r.kerf
		if n := len(s.w); n == 0 || s.w[n-1] != w {
			s.w, s.d, s.ids = append(s.w, w), append(s.d, 0), append(s.ids, nil)
		}
		n := len(s.w) - 1
		s.d[n] += r.counts[i]
		for range r.counts[i] {
			s.ids[n] = append(s.ids[n], i)
		}
	}
	for _, l := range slices.Concat(r.sticks, r.offcuts) {
		if c := l + r.kerf; c >= s.w[len(s.w)-1] {
			s.c = append(s.c, c)
		}
	}
	slices.SortFunc(s.c, func(a, b int) int { return b - a })
	s.c = slices.Compact(s.c)
	all := total(s.d)
	for i, l := range r.sticks {
		limit := r.limits[i]
		if limit == 0 || limit > all {
			limit = all // a bar holds a piece at least
		}
		if bar := slices.Index(s.c, l+r.kerf); bar >= 0 {
			s.sticks = append(s.sticks, stick{bar: bar, cost: r.costs[i], limit: limit, index: i})
		}
	}
	slices.SortStableFunc(s.sticks, func(a, b stick) int {
		if a.bar != b.bar {
			return a.bar - b.bar
		}
		return compare(a.cost, b.cost)
	})
	for i, l := range r.offcuts {
		if bar := slices.Index(s.c, l+r.kerf); bar >= 0 {
			for range min(r.offcutCounts[i], all) {
				s.offcuts = append(s.offcuts, offcut{bar: bar, index: i})
			}
		}
	}
	slices.SortStableFunc(s.offcuts, func(a, b offcut) int { return a.bar - b.bar })
	return s
}

func indices(n int) []int {
	x := make([]int, n)
	for i := range x {
		x[i] = i
	}
	return x
}

func compare(a, b int64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// bars gives how many bars of each capacity there are with y sticks of each
// kind and the longest offcuts.
func (s *stock) bars(y []int, offcuts int) []int {
	n := make([]int, len(s.c))
	for i, k := range y {
		n[s.sticks[i].bar] += k
	}
	for _, o := range s.offcuts[:offcuts] {
		n[o.bar]++
	}
	return n
}

func (s *stock) cost(y []int) int64 {
	var sum int64
	for i, k := range y {
		sum += s.sticks[i].cost * int64(k)
	}
	return sum
}

// longestRemnant gives the longest remnant of a layout, zero when none is worth
// keeping.
func (s *stock) longestRemnant(fills []fill) int {
	longest := 0
	for _, f := range fills {
		longest = max(longest, s.room(f)-s.kerf)
	}
	if longest < s.keep {
		return 0
	}
	return longest
}

// room gives the capacity that a fill leaves.
func (s *stock) room(f fill) int {
	room := s.c[f.bar]
	for _, i := range f.pieces {
		room -= s.w[i]
	}
	return room
}
