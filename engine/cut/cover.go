package cut

import (
	"cmp"
	"slices"
)

// cover lays pieces by picking fillings from a listing so that each piece is
// cut as often as it is wanted and each bar is used: an exact cover. It takes
// up the piece or bar with the fewest fillings first (Knuth, "Dancing links",
// 2000), lets the bounds' spares rule out more fillings as they are spent, and
// remembers states that failed. "Never" is a proof.
//
// Where the fillings of long bars are too many to list, the bars listed are
// covered first and the rest is a question of its own: the longer the bars, the
// fewer pieces are left by then.
type cover struct {
	*listing
	decider *decider
	limit   int
	all     bool // every bar is listed
	some    bool // one is
	left    coverLeft
	order   []int32   // the fillings as they are tried
	alive   [][]int32 // by depth: the fillings that still fit
	count   []int     // by piece, then bar, then the remnant: the fillings alive
	failed  map[string]struct{}
	key     []byte
	picked  []int32
	rest    []fill // the layout of bars that are not listed
	turn    int    // restarts so far
	portion int    // effort of the next turn
}

const (
	restSteps    = 20_000 // effort for the bars that are not listed, each time
	firstTurn    = 20_000 // effort until the first restart
	shuffleShare = 2      // a restart moves a filling by up to 1/2 of the spare
	aliveStep    = 16     // fillings looked at that count as one step
)

// newCover prepares a cover from a listing with at most limit fillings of each
// bar; nil when there is no listing.
func (x *decider) newCover(q question, limit int) *cover {
	l := x.list(q, limit)
	if l == nil {
		return nil
	}
	v := &cover{
		listing: l, decider: x, limit: limit, all: true, left: newCoverLeft(l),
		count: make([]int, len(x.w)+len(x.c)+1), failed: map[string]struct{}{}, portion: firstTurn,
	}
	for t, n := range q.n {
		v.all = v.all && (n == 0 || l.listed[t])
		v.some = v.some || (n > 0 && l.listed[t])
	}
	for k := range l.fillings {
		v.order = append(v.order, int32(k))
	}
	return v
}

// run answers the question. After the effort ran out it may be run again: what
// has failed is passed by. With restarts it begins anew after ever longer
// portions of effort, each time in another order: a search that took a bad turn
// early comes out of it (Gomes, Selman and Kautz, AAAI 1998).
func (v *cover) run(restarts bool) (a answer, fills []fill) {
	if v == nil {
		return unknown, nil
	}
	e := v.decider.effort
	if !v.some {
		e.portion(quickSteps, func() { a, fills = v.decider.search(v.question) })
		return a, fills
	}
	for {
		v.arrange()
		if !restarts {
			a = v.place(0, v.order)
			break
		}
		e.portion(v.portion, func() { a = v.place(0, v.order) })
		v.turn++
		v.portion += v.portion / 2
		if a != unknown || !e.spend(1) {
			break
		}
	}
	if a != fits {
		return a, nil
	}
	fills = v.rest
	for _, k := range v.picked {
		f := fill{bar: int(v.fillings[k].bar)}
		for _, i := range v.placesOf(k) {
			f.pieces = append(f.pieces, int(i))
		}
		fills = append(fills, f)
	}
	return fits, fills
}

// arrange puts the fillings that fall least short first; from the second turn
// on they are moved about, by the number of the turn alone.
func (v *cover) arrange() {
	spread := int64(1)
	if v.turn > 0 {
		spread += v.bounds[0].spare / shuffleShare
	}
	keys := make([]int64, len(v.order))
	x := uint64(v.turn)*0x9e3779b97f4a7c15 + 1 // xorshift (Marsaglia 2003)
	for k := range keys {
		x ^= x << 13
		x ^= x >> 7
		x ^= x << 17
		keys[k] = v.loss(int32(k))[0] + int64(x>>1)%spread
	}
	slices.SortFunc(v.order, func(a, b int32) int { return cmp.Or(cmp.Compare(keys[a], keys[b]), cmp.Compare(a, b)) })
}

// place lays what is left from the fillings above.
func (v *cover) place(depth int, above []int32) answer {
	if v.left.nothing() {
		return fits
	}
	v.key = v.left.state(v.key[:0])
	key := string(v.key)
	if _, ok := v.failed[key]; ok {
		return never
	}
	e := v.decider.effort
	if !e.spend(1 + len(above)/aliveStep) {
		return unknown
	}
	start := e.spent
	alive, on := v.filter(depth, above)
	var a answer
	switch on {
	case nothingFits:
		return never
	case othersOnly:
		a = v.others()
	default:
		a = v.each(depth, alive, on)
	}
	if a == never && e.spent-start > worthKeeping && len(v.failed) < maxFailed {
		v.failed[key] = struct{}{}
	}
	return a
}

// each tries the fillings that serve the piece or bar taken up.
func (v *cover) each(depth int, alive []int32, on int) answer {
	a := never
	for k := 0; k < len(alive); {
		f := alive[k]
		if !v.serves(f, on) {
			k++
			continue
		}
		v.take(f)
		v.picked = append(v.picked, f)
		below := v.place(depth+1, alive)
		if below == fits {
			return fits
		}
		v.picked = v.picked[:len(v.picked)-1]
		v.putBack(f)
		if below == never {
			// No layout from here has it, so none of the states below need try
			// it. One left undecided stays: what fails without it is not proven.
			alive = slices.Delete(alive, k, k+1)
			continue
		}
		if a = unknown; !v.decider.effort.spend(0) {
			return unknown
		}
		k++
	}
	return a
}

// others lays what is left into the bars that are not listed. A bound that
// refutes it serves the next ones too.
func (v *cover) others() (a answer) {
	x := v.decider
	q := question{slices.Clone(v.left.d), slices.Clone(v.left.n), v.left.w}
	if x.refuted(q) {
		return never
	}
	x.effort.portion(restSteps, func() { a, _ = x.relaxed(q) })
	if a != never {
		x.effort.portion(restSteps, func() { a, v.rest = x.newCover(q, v.limit).run(false) })
	}
	return a
}

// What filter gives when there is no piece or bar to take up.
const (
	nothingFits = -1 - iota // one of them has no filling left
	othersOnly              // only bars that are not listed are left
)

// filter gives the fillings that still fit and what to take up.
func (v *cover) filter(depth int, above []int32) ([]int32, int) {
	for len(v.alive) <= depth {
		v.alive = append(v.alive, nil)
	}
	alive := v.alive[depth][:0]
	clear(v.count)
	for _, k := range above {
		if !v.fitsIn(k) {
			continue
		}
		alive = append(alive, k)
		last := int32(-1)
		for _, i := range v.placesOf(k) {
			if i != last {
				v.count[i]++
			}
			last = i
		}
		f := v.fillings[k]
		v.count[len(v.d)+int(f.bar)]++
		if f.remnant {
			v.count[len(v.d)+len(v.n)]++
		}
	}
	v.alive[depth] = alive
	on := othersOnly
	for i, n := range v.count {
		if !v.wanted(i) {
			continue
		}
		if n == 0 {
			return alive, nothingFits
		}
		if on < 0 || n < v.count[on] {
			on = i
		}
	}
	return alive, on
}
