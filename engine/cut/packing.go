package cut

import "slices"

// packing is the one question that all levels are made of: can these pieces be
// laid into these bars? A piece weighs its length plus a kerf and a bar holds
// its length plus a kerf, which is the rule of the saw in another form.
type packing struct {
	w, d []int // weights of the pieces, heaviest first, and how many of each
	c, n []int // what bars hold, largest first, and how many of each
}

// slack gives what the bars hold beyond the weight of the pieces.
func (p packing) slack() int {
	s := 0
	for t := range p.c {
		s += p.c[t] * p.n[t]
	}
	for i := range p.w {
		s -= p.w[i] * p.d[i]
	}
	return s
}

// total adds up counts.
func total(counts []int) int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}

// withRemnant gives the packing with one more piece, of weight w, and its place
// among the others.
func (p packing) withRemnant(w int) (packing, int) {
	at, _ := slices.BinarySearchFunc(p.w, w, func(a, b int) int { return b - a })
	p.w = slices.Insert(slices.Clone(p.w), at, w)
	p.d = slices.Insert(slices.Clone(p.d), at, 1)
	return p, at
}

// withoutRemnant turns the layout of a packing with a remnant at this place
// into one of the pieces alone.
func withoutRemnant(fills []fill, at int) []fill {
	for b := range fills {
		kept := fills[b].pieces[:0]
		for _, i := range fills[b].pieces {
			switch {
			case i < at:
				kept = append(kept, i)
			case i > at:
				kept = append(kept, i-1)
			}
		}
		fills[b].pieces = kept
	}
	return fills
}

// fill is one bar laid out: which kind of bar, and its pieces by their place in
// packing.w.
type fill struct {
	bar    int
	pieces []int
}

// bestFit lays the pieces, heaviest first, each into the bar that it fills
// best. It gives the bars used and how many pieces of each weight found no
// place.
func (p packing) bestFit() (fills []fill, out []int) {
	unopened := slices.Clone(p.n)
	out = make([]int, len(p.w))
	var room []int
	for i, w := range p.w {
		for range p.d[i] {
			best, left := -1, 0
			for b, r := range room {
				if r >= w && (best < 0 || r < left) {
					best, left = b, r
				}
			}
			fresh := -1
			for t, c := range p.c {
				if unopened[t] > 0 && c >= w && (best < 0 || c < left) {
					best, left, fresh = len(room), c, t
				}
			}
			if best < 0 {
				out[i]++
				continue
			}
			if fresh >= 0 {
				unopened[fresh]--
				room = append(room, p.c[fresh])
				fills = append(fills, fill{bar: fresh})
			}
			room[best] -= w
			fills[best].pieces = append(fills[best].pieces, i)
		}
	}
	return fills, out
}

// answer to a packing question.
type answer uint8

const (
	unknown answer = iota // the effort ran out
	fits
	never // proven impossible
)
