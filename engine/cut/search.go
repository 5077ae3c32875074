package cut

import (
	"encoding/binary"
	"slices"
)

// search looks for a packing bar by bar, depth first: it takes the heaviest
// piece left, tries every bar that holds it, and in each bar every completion
// that the budgets allow and no other completion dominates. States that failed
// are remembered by their full description. It is exhaustive: "never" is a
// proof.
type search struct {
	packing         // what is left; w and c stay
	effort  *effort //
	slack   int     // what the bars left hold beyond the pieces left
	bounds  []budget
	failed  map[string]struct{}
	levels  []level // scratch by depth
	done    []fill
	key     []byte
}

// budget is a price as the search uses it: by how much the bars left are worth
// more than the pieces left. A bar that is filled below its worth spends it.
type budget struct {
	u     []int64 // by piece
	v     []int64 // by bar
	spare int64
}

// level is the scratch of one depth.
type level struct {
	reach  []sums // by piece: the sums of the pieces left from it on
	pieces []int
	value  []int64 // by budget: worth of the pieces
}

// frame is the bar being filled at one depth.
type frame struct {
	*level
	depth  int
	bar    int
	lo, hi int    // room that may stay empty
	reach  []sums // this depth's or, where that costs too much, an earlier one's
}

const (
	maxFailed    = 1 << 17 // failed states remembered
	worthKeeping = 20      // steps that make a failed state worth remembering
	maxReach     = 1 << 14 // words of sums worked out afresh at each depth
)

// newSearch prepares the search for p; bounds are spent in place.
func newSearch(p packing, bounds []budget, e *effort) *search {
	return &search{
		packing: packing{p.w, slices.Clone(p.d), p.c, slices.Clone(p.n)},
		effort:  e, slack: p.slack(), bounds: bounds, failed: map[string]struct{}{},
	}
}

// run answers; when it is fits, s.done is the layout.
func (s *search) run() answer { return s.place(0, nil) }

// place lays the heaviest piece left, and with it all others.
func (s *search) place(depth int, reach []sums) answer {
	first := 0
	for first < len(s.d) && s.d[first] == 0 {
		first++
	}
	if first == len(s.d) {
		return fits
	}
	if s.slack < 0 {
		return never
	}
	key := s.state()
	if _, ok := s.failed[key]; ok {
		return never
	}
	f := s.frame(depth, first, reach)
	if s.unfillable(f.reach[first]) > s.slack {
		return never
	}
	start := s.effort.spent
	// tight fills first: they leave the slack to those that come later
	lo := 0
	for _, hi := range [...]int{0, s.slack / 8, s.slack} {
		if hi < lo {
			continue
		}
		f.lo, f.hi = lo, hi
		if a := s.eachBar(f, first); a != never {
			return a
		}
		lo = hi + 1
	}
	if s.effort.spent-start > worthKeeping && len(s.failed) < maxFailed {
		s.failed[key] = struct{}{}
	}
	return never
}

// eachBar tries the piece in every kind of bar left that holds it, shortest
// first.
func (s *search) eachBar(f *frame, first int) answer {
	for t := len(s.c) - 1; t >= 0; t-- {
		if s.n[t] == 0 || s.c[t] < s.w[first] {
			continue
		}
		f.bar = t
		s.n[t]--
		s.take(f, first)
		a := s.extend(f, first, s.c[t]-s.w[first])
		s.putBack(f, first)
		s.n[t]++
		if a != never {
			return a
		}
	}
	return never
}

// unfillable gives what the bars left waste at least, because no pieces left
// add up to it.
func (s *search) unfillable(reach sums) int {
	waste := 0
	for t, n := range s.n {
		if n > 0 {
			waste += n * (s.c[t] - reach.atMost(s.c[t]))
		}
	}
	return waste
}

// extend adds pieces from place from on to the bar, heaviest first, until no
// more go in, and then closes it.
func (s *search) extend(f *frame, from, room int) answer {
	if !s.effort.spend(1) {
		return unknown
	}
	for k := from; k < len(s.w); k++ {
		r := room - s.w[k]
		if s.d[k] == 0 || r < 0 || !f.reach[k].hits(r-f.hi, r-f.lo) {
			continue
		}
		s.take(f, k)
		a := s.extend(f, k, r)
		s.putBack(f, k)
		if a != never {
			return a
		}
	}
	if room < f.lo || room > f.hi || (room > 0 && s.dominated(f, room)) {
		return never
	}
	return s.closeBar(f, room)
}

// dominated tells whether the bar would be better with a piece more, or with a
// heavier piece in place of one of its own: any layout with the bar as it is
// gives one with the better bar, by swapping the two.
func (s *search) dominated(f *frame, room int) bool {
	for k := len(s.w) - 1; k >= 0 && s.w[k] <= room; k-- {
		if s.d[k] > 0 {
			return true
		}
	}
	for _, i := range f.pieces {
		for k := i - 1; k >= 0 && s.w[k] <= s.w[i]+room; k-- {
			if s.d[k] > 0 {
				return true
			}
		}
	}
	return false
}

// closeBar spends the budgets and goes on to the next bar.
func (s *search) closeBar(f *frame, room int) answer {
	for k := range s.bounds {
		if b := &s.bounds[k]; b.v[f.bar]-f.value[k] > b.spare {
			return never
		}
	}
	for k := range s.bounds {
		s.bounds[k].spare -= s.bounds[k].v[f.bar] - f.value[k]
	}
	s.slack -= room
	s.done = append(s.done, fill{bar: f.bar})
	a := s.place(f.depth+1, f.reach)
	if a == fits {
		s.done[f.depth].pieces = slices.Clone(f.pieces)
		return fits
	}
	s.done = s.done[:len(s.done)-1]
	s.slack += room
	for k := range s.bounds {
		s.bounds[k].spare += s.bounds[k].v[f.bar] - f.value[k]
	}
	return a
}

func (s *search) take(f *frame, i int) {
	s.d[i]--
	f.pieces = append(f.pieces, i)
	for k := range s.bounds {
		f.value[k] += s.bounds[k].u[i]
	}
}

func (s *search) putBack(f *frame, i int) {
	s.d[i]++
	f.pieces = f.pieces[:len(f.pieces)-1]
	for k := range s.bounds {
		f.value[k] -= s.bounds[k].u[i]
	}
}

// state describes what is left, in full: two states with one key are one.
func (s *search) state() string {
	s.key = s.key[:0]
	for _, x := range s.d {
		s.key = binary.AppendUvarint(s.key, uint64(x))
	}
	for _, x := range s.n {
		s.key = binary.AppendUvarint(s.key, uint64(x))
	}
	return string(s.key)
}

// frame gives the scratch of a depth, with the sums of the pieces left. Where
// working them out costs too much those of an earlier depth serve: they hold
// more than is left and so never rule out what is possible.
func (s *search) frame(depth, first int, earlier []sums) *frame {
	for len(s.levels) <= depth {
		s.levels = append(s.levels, level{})
	}
	// the levels may move when more are added, so each frame points to its own copy
	l := s.levels[depth]
	if l.value == nil {
		l.value = make([]int64, len(s.bounds))
	}
	l.pieces = l.pieces[:0]
	clear(l.value)
	words := s.c[0]/64 + 1
	kinds := 0
	for _, d := range s.d[first:] {
		kinds += min(d, 1)
	}
	reach := earlier
	if reach == nil || kinds*words <= maxReach {
		if l.reach == nil {
			l.reach = make([]sums, len(s.w)+1)
			for i := range l.reach {
				l.reach[i] = make(sums, words)
			}
		}
		reach = l.reach
		s.addUp(reach, first)
	}
	s.levels[depth] = l
	return &frame{level: &l, depth: depth, reach: reach}
}

// addUp works out the sums of the pieces left from each place on.
func (s *search) addUp(reach []sums, first int) {
	clear(reach[len(s.w)])
	reach[len(s.w)][0] = 1
	for i := len(s.w) - 1; i >= first; i-- {
		copy(reach[i], reach[i+1])
		reach[i].addPieces(s.w[i], s.d[i])
	}
}
