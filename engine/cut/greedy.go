package cut

import "slices"

// greedy lays the pieces, longest first, each into the bar that it fills best;
// where no bar is open it opens a new stick. Each kind of stick is tried as the
// one to open, and afterwards each stick is changed for the cheapest that still
// holds its pieces. It gives the cheapest layout found, with its number of
// sticks of each kind, or none when limits stood in the way.
func (s *stock) greedy() (y []int, fills []fill) {
	var best int64
	for open := range max(1, len(s.sticks)) {
		used, laid := s.greedyWith(open)
		if laid == nil {
			continue
		}
		if cost := s.cost(used); fills == nil || cost < best {
			y, fills, best = used, laid, cost
		}
	}
	return y, fills
}

// greedyBar is a bar that greedy has opened; stick is -1 for an offcut.
type greedyBar struct {
	fill
	stick, room int
}

func (s *stock) greedyWith(open int) ([]int, []fill) {
	y := make([]int, len(s.sticks))
	var bars []greedyBar
	for _, o := range s.offcuts {
		bars = append(bars, greedyBar{fill{bar: o.bar}, -1, s.c[o.bar]})
	}
	for i, w := range s.w {
		for range s.d[i] {
			b := fittest(bars, w)
			if b < 0 {
				k := s.freshStick(y, open, w)
				if k < 0 {
					return nil, nil
				}
				y[k]++
				b = len(bars)
				bars = append(bars, greedyBar{fill{bar: s.sticks[k].bar}, k, s.c[s.sticks[k].bar]})
			}
			bars[b].room -= w
			bars[b].pieces = append(bars[b].pieces, i)
		}
	}
	var fills []fill
	for b := range bars {
		if len(bars[b].pieces) == 0 {
			continue
		}
		s.change(y, &bars[b])
		fills = append(fills, bars[b].fill)
	}
	return y, fills
}

// fittest gives the open bar that w fills best, or -1.
func fittest(bars []greedyBar, w int) int {
	best := -1
	for b := range bars {
		if r := bars[b].room; r >= w && (best < 0 || r < bars[best].room) {
			best = b
		}
	}
	return best
}

// freshStick gives the kind of stick to open for w: the one wanted if it holds
// w and is there, else the cheapest that does; -1 when none does.
func (s *stock) freshStick(y []int, wanted, w int) int {
	there := func(k int) bool { return y[k] < s.sticks[k].limit && s.c[s.sticks[k].bar] >= w }
	if wanted < len(y) && there(wanted) {
		return wanted
	}
	best := -1
	for k := range s.sticks {
		if there(k) && (best < 0 || s.sticks[k].cost < s.sticks[best].cost) {
			best = k
		}
	}
	return best
}

// change swaps the stick of a bar for the cheapest that holds its pieces.
func (s *stock) change(y []int, b *greedyBar) {
	if b.stick < 0 {
		return
	}
	y[b.stick]--
	k := s.freshStick(y, len(y), s.c[b.bar]-b.room)
	if s.sticks[k].cost >= s.sticks[b.stick].cost {
		k = b.stick
	}
	y[k]++
	b.stick, b.bar = k, s.sticks[k].bar
}

// unplaced gives, by weight, how many pieces find no place when everything in
// stock is used, longest first.
func (s *stock) unplaced() []int {
	y := make([]int, len(s.sticks))
	for k := range y {
		y[k] = s.sticks[k].limit
	}
	p := packing{s.w, s.d, s.c, s.bars(y, len(s.offcuts))}
	_, out := p.bestFit()
	return slices.Clone(out)
}
